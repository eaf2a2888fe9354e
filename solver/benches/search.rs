//! How fast the search for the best layouts is, beside sampling the turns.
//!
//! One pencil, 40 stocks of which any two make a sandwich, 20 cutter sets, any turn and any height
//! of the axis. The plain way lays out every pair of stocks with every cutter set at every tenth of
//! a degree over one period of the outline, with the axis in the glue plane: it knows neither other
//! heights of the axis nor fewer pencils than fit, and still it does far more. It is run on a part
//! of the pairs and sets and its time is scaled to all of them. On that part the search must find as
//! many pencils or more.

#![expect(clippy::print_stdout, reason = "a benchmark speaks to the terminal")]

use criterion::{BenchmarkId, Criterion};
use solver::{
    Accuracy, AccuracyDraft, Angle, Answer, AxisChoice, Barrel, BarrelDraft, CutterSet,
    CutterSetDraft, Goal, Pairs, PitchRule, Question, Rules, RulesDraft, SearchDraft, SearchRules,
    Setup, Shape, Slat, SlatDraft, Term, Turns, Typed, lay_out, search,
};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Stocks and cutter sets of the full search.
const STOCKS: usize = 40;
const SETS: usize = 20;
/// Stocks and cutter sets of the part that is sampled: 16 pairs with 2 sets.
const SAMPLED_STOCKS: usize = 4;
const SAMPLED_SETS: usize = 2;
/// Steps of the sampled turn, to a degree.
const STEPS: f64 = 10.0;

/// What a pencil may be laid on, and with.
struct Shop {
    rules: Rules,
    search: SearchRules,
    slats: Vec<Slat>,
    sets: Vec<CutterSet>,
    accuracy: Accuracy,
}

impl Shop {
    /// With an edge allowance and errors so many times the usual ones.
    fn new(edge: f64, errors: f64) -> Self {
        let slat = |k: usize| {
            // Neighbours in the list differ in width and thickness.
            let (width, thickness) = (k * 7 % STOCKS, k * 3 % STOCKS);
            let mut draft = SlatDraft::new("");
            draft.width = Typed::Number(66.0 + 0.5 * width as f64);
            draft.thickness = Typed::Number(4.0 + 0.08 * thickness as f64);
            draft.pack_price = Typed::Number(80.0 + k as f64);
            draft.check().expect("a usual size")
        };
        let set = |k: usize| {
            let mut draft = CutterSetDraft::new("");
            draft.pitch = Typed::Number(7.3 + 0.2 * (k * 7 % SETS) as f64);
            draft.most = Typed::Number(10.0);
            draft.price = Typed::Number(40.0 * (k % 3) as f64);
            draft.check().expect("a usual pitch")
        };
        let mut rules = RulesDraft::new();
        rules.edge = Typed::Number(edge);
        let mut accuracy = AccuracyDraft::new("");
        for term in Term::ALL {
            let size = term.field().spec().initial;
            accuracy.error_mut(term).size = Typed::Number(size * errors);
        }
        let mut search = SearchDraft::new();
        (search.turns, search.axis, search.pairs) = (Turns::Any, AxisChoice::Any, Pairs::Any);
        Self {
            rules: rules.check().expect("an allowance in its range"),
            search: search.check().expect("first values are sound"),
            slats: (0..STOCKS).map(slat).collect(),
            sets: (0..SETS).map(set).collect(),
            accuracy: accuracy.check().expect("errors in their ranges"),
        }
    }

    fn searched(&self, barrel: &Barrel, stocks: usize, sets: usize) -> Answer {
        let question = Question {
            barrel,
            slats: &self.slats[..stocks],
            sets: &self.sets[..sets],
            rules: &self.rules,
            search: &self.search,
            accuracy: Some(&self.accuracy),
        };
        search(black_box(&question), &mut |_, _| ())
    }

    /// The most pencils of the part that is sampled, the plain way.
    fn sampled(&self, barrel: &Barrel) -> u32 {
        let steps = (barrel.period().in_degrees() * STEPS).round() as u32;
        let mut most = 0;
        for top in &self.slats[..SAMPLED_STOCKS] {
            for bottom in &self.slats[..SAMPLED_STOCKS] {
                for set in &self.sets[..SAMPLED_SETS] {
                    let rules = Rules {
                        spacing: PitchRule::Given(set.pitch()),
                        most: Some(set.most()),
                        ..self.rules
                    };
                    for step in 0..steps {
                        let setup = Setup {
                            barrel,
                            turn: Angle::degrees(f64::from(step) / STEPS),
                            top,
                            bottom,
                            rules: &rules,
                        };
                        most = most.max(lay_out(black_box(&setup)).pencils());
                    }
                }
            }
        }
        most
    }
}

/// The most pencils of a search.
fn most_pencils(answer: &Answer) -> u32 {
    let best = answer.best[Goal::Pencils as usize].first();
    best.map_or(0, |found| found.pencils)
}

/// The shortest of some runs: what the machine can do when nothing else disturbs it.
fn shortest(runs: u32, mut work: impl FnMut() -> u32) -> Duration {
    let run = |_| {
        let start = Instant::now();
        black_box(work());
        start.elapsed()
    };
    (0..runs).map(run).min().unwrap_or_default()
}

fn main() {
    let shop = Shop::new(1.0, 1.0);
    let oval = |draft: &mut BarrelDraft| {
        draft.size = Typed::Number(7.6);
        draft.height = Typed::Number(6.8);
    };
    let barrel = |shape, change: &dyn Fn(&mut BarrelDraft)| {
        let mut draft = BarrelDraft::new("", shape);
        change(&mut draft);
        draft.check().expect("usual sizes are sound")
    };
    let barrels = [
        ("hexagon", barrel(Shape::Hexagonal, &|_| ())),
        ("oval", barrel(Shape::Oval, &oval)),
    ];
    let mut criterion = Criterion::default()
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(1))
        .sample_size(10)
        .configure_from_args();
    let mut group = criterion.benchmark_group("search of 1600 pairs, 20 sets");
    for (name, barrel) in &barrels {
        group.bench_function(BenchmarkId::from_parameter(name), |bencher| {
            bencher.iter(|| shop.searched(barrel, STOCKS, SETS));
        });
    }
    // Where pencils are lost at the edges, good ones are told by integrals.
    let tight = Shop::new(0.0, 3.0);
    group.bench_function("hexagon on tight edges", |bencher| {
        bencher.iter(|| tight.searched(&barrels[0].1, STOCKS, SETS));
    });
    group.finish();

    let part = SAMPLED_STOCKS * SAMPLED_STOCKS * SAMPLED_SETS;
    let share = (STOCKS * STOCKS * SETS) as f64 / part as f64;
    for (name, barrel) in &barrels {
        let found = most_pencils(&shop.searched(barrel, SAMPLED_STOCKS, SAMPLED_SETS));
        let sampled = shop.sampled(barrel);
        assert!(
            found >= sampled,
            "{name}: {found} pencils, sampled {sampled}"
        );
        assert!(sampled > 0, "{name}: the part gives something to find");
        let ours = shortest(5, || most_pencils(&shop.searched(barrel, STOCKS, SETS)));
        let plain = shortest(1, || shop.sampled(barrel)).mul_f64(share);
        let ratio = plain.as_secs_f64() / ours.as_secs_f64().max(1e-9);
        println!(
            "{name}: {ours:?}; every 0.1° {plain:?}, scaled from 1/{share:.0} of the pairs and \
             sets, {ratio:.0} times as long"
        );
    }
}
