//! How fast one layout and a whole ranking are, beside a plain way to the same numbers.
//!
//! The plain way draws each outline as a polygon of 3600 points and scans it: extents, area and
//! nearest distance from the points, the count by trying one pencil more. Both ways must find
//! the same pencils; the ratio of their times is printed at the end.

#![expect(clippy::print_stdout, reason = "a benchmark speaks to the terminal")]

use criterion::{BenchmarkId, Criterion};
use solver::{
    Aim, Angle, Barrel, BarrelDraft, Rules, RulesDraft, Setup, Shape, Slat, SlatDraft, Typed,
    lay_out, rank,
};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Stocks in the ranking.
const STOCKS: u32 = 1000;
/// Ways round in the ranking, degrees.
const WAYS: [f64; 4] = [0.0, 10.0, 17.3, 30.0];
/// Points of a scanned outline.
const POINTS: u32 = 3600;

/// What one barrel is laid by: 7.0 across flats, corners 0.5, coat 0.08 mm.
struct Shop {
    barrel: Barrel,
    rules: Rules,
    slats: Vec<Slat>,
}

impl Shop {
    fn new() -> Self {
        let sizes = (0..STOCKS).map(|k| {
            (
                33.0 + f64::from(k % 100) * 0.5,
                4.5 + f64::from(k / 100) * 0.1,
            )
        });
        let slats = sizes.map(|(width, thickness)| {
            let mut draft = SlatDraft::new("");
            draft.width = Typed::Number(width);
            draft.thickness = Typed::Number(thickness);
            draft.check().expect("a usual size")
        });
        Self {
            barrel: BarrelDraft::new("", Shape::Hexagonal)
                .check()
                .expect("first values are sound"),
            rules: RulesDraft::new().check().expect("first values are sound"),
            slats: slats.collect(),
        }
    }

    /// Pencils of one layout.
    fn laid(&self, slat: &Slat, turn: f64) -> u32 {
        let setup = Setup {
            barrel: &self.barrel,
            turn: Angle::degrees(turn),
            top: slat,
            bottom: slat,
            rules: &self.rules,
        };
        lay_out(black_box(&setup)).pencils()
    }

    /// Pencils of the whole ranking.
    fn ranked(&self) -> u32 {
        let ways = WAYS.map(Angle::degrees);
        let aim = Aim::Pencils;
        let found = rank(
            &self.barrel,
            &self.slats,
            &ways,
            &self.rules,
            aim,
            &mut |_| (),
        );
        found
            .iter()
            .map(|candidate| candidate.layout.pencils())
            .sum()
    }

    /// Pencils of one layout, the plain way.
    fn scanned(&self, slat: &Slat, turn: f64) -> u32 {
        let polygon = polygon(turn.to_radians());
        let (mut left, mut right, mut down, mut up) = (0.0_f64, 0.0_f64, 0.0_f64, 0.0_f64);
        let (mut twice_area, mut nearest) = (0.0, f64::MAX);
        for (k, &[x, y]) in polygon.iter().enumerate() {
            let [next_x, next_y] = polygon[(k + 1) % polygon.len()];
            (left, right) = (left.min(x), right.max(x));
            (down, up) = (down.min(y), up.max(y));
            twice_area += x * next_y - next_x * y;
            nearest = nearest.min(x * x + y * y);
        }
        let millimetres = |length: solver::Length| length.in_millimetres();
        let rules = &self.rules;
        let radius = millimetres(self.barrel.lead_diameter() / 2.0 + rules.clearance);
        let thickness = millimetres(slat.thickness());
        let planing = millimetres(rules.planing);
        let wall = nearest.sqrt() - radius - millimetres(rules.eccentricity);
        let fits = thickness >= up + planing
            && thickness >= -down + planing
            && thickness - radius >= millimetres(rules.floor)
            && wall >= millimetres(rules.wall);
        let room = millimetres(slat.width() - rules.edge * 2.0) + 1e-6;
        let (box_width, land) = (right - left, millimetres(rules.land));
        let mut count = 0;
        while f64::from(count) * (box_width + land) + box_width <= room {
            count += 1;
        }
        black_box(twice_area);
        if fits { count } else { 0 }
    }

    /// Pencils of the whole ranking, the plain way.
    fn ranked_by_scanning(&self) -> u32 {
        let mut found: Vec<(u32, f64)> = Vec::new();
        for slat in &self.slats {
            for turn in WAYS {
                let wood = slat.volume().in_cubic_millimetres();
                found.push((self.scanned(slat, turn), wood));
            }
        }
        found.sort_by(|one, other| other.0.cmp(&one.0).then(one.1.total_cmp(&other.1)));
        found.iter().map(|(pencils, _)| pencils).sum()
    }
}

/// The bare outline, a core hexagon grown by its corner radius, from points at equal steps of
/// its normal.
fn polygon(turn: f64) -> Vec<[f64; 2]> {
    const CORE: f64 = 3.0;
    const CORNER: f64 = 0.42;
    let sixth = std::f64::consts::FRAC_PI_3;
    let reach = CORE / libm::cos(sixth / 2.0);
    let point = |k: u32| {
        let side = f64::from(k / (POINTS / 6));
        let normal = std::f64::consts::TAU * f64::from(k) / f64::from(POINTS);
        let (sine, cosine) = libm::sincos(turn + sixth * (side + 0.5));
        let (rise, run) = libm::sincos(turn + normal);
        [reach * cosine + CORNER * run, reach * sine + CORNER * rise]
    };
    // Turned so that it stands on a face: its normals then point at −90° and every 60° on.
    (0..POINTS).map(point).map(|[x, y]| [y, -x]).collect()
}

/// The shortest of some runs: what the machine can do when nothing else disturbs it.
fn shortest(mut work: impl FnMut() -> u32) -> Duration {
    let run = |_| {
        let start = Instant::now();
        black_box(work());
        start.elapsed()
    };
    (0..5).map(run).min().unwrap_or_default()
}

fn tell(name: &str, ours: Duration, plain: Duration) {
    let ratio = plain.as_secs_f64() / ours.as_secs_f64().max(1e-9);
    println!("{name}: {ours:?}, scanning {plain:?}, {ratio:.0} times as long");
}

fn main() {
    let shop = Shop::new();
    let slat = &shop.slats[82];
    assert_eq!(shop.laid(slat, 30.0), shop.scanned(slat, 30.0));
    assert_eq!(shop.ranked(), shop.ranked_by_scanning());

    let mut criterion = Criterion::default()
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(1))
        .sample_size(10)
        .configure_from_args();
    let mut group = criterion.benchmark_group("one layout");
    group.bench_function(BenchmarkId::from_parameter("solver"), |bencher| {
        bencher.iter(|| shop.laid(slat, black_box(17.3)));
    });
    group.bench_function(BenchmarkId::from_parameter("scanning"), |bencher| {
        bencher.iter(|| shop.scanned(slat, black_box(17.3)));
    });
    group.finish();
    let mut group = criterion.benchmark_group("ranking of 1000 stocks, 4 ways");
    group.bench_function(BenchmarkId::from_parameter("solver"), |bencher| {
        bencher.iter(|| shop.ranked());
    });
    group.bench_function(BenchmarkId::from_parameter("scanning"), |bencher| {
        bencher.iter(|| shop.ranked_by_scanning());
    });
    group.finish();

    let layouts = |lay: &dyn Fn() -> u32| (0..200).map(|_| lay()).sum();
    let ours = shortest(|| layouts(&|| shop.laid(slat, black_box(17.3)))) / 200;
    let plain = shortest(|| layouts(&|| shop.scanned(slat, black_box(17.3)))) / 200;
    tell("one layout", ours, plain);
    let ours = shortest(|| shop.ranked());
    let plain = shortest(|| shop.ranked_by_scanning());
    tell("ranking of 1000 stocks, 4 ways", ours, plain);
}
