//! How fast sandwiches are made by throwing dice, and what the integrals take.
//!
//! Ten hexagonal pencils in a sandwich with every error of a common shop, on one core. The plain
//! program of `tests/reference/tolerance.py` makes the same sandwiches with vectors of numpy; run
//! both in the same minutes to compare them.

#![expect(clippy::print_stdout, reason = "a benchmark speaks to the terminal")]

use criterion::{Criterion, Throughput};
use solver::tolerance::{BLOCK, Trial, Varied, choices};
use solver::{
    Accuracy, AccuracyDraft, Barrel, BarrelDraft, Rules, RulesDraft, Seam, Setup, Shape, Slat,
    SlatDraft, lay_out,
};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Blocks of one measurement.
const BLOCKS: u64 = 64;

struct Shop {
    barrel: Barrel,
    slat: Slat,
    rules: Rules,
    accuracy: Accuracy,
}

impl Shop {
    fn new() -> Self {
        let barrel = BarrelDraft::new("", Shape::Hexagonal).check();
        Self {
            barrel: barrel.expect("first values are sound"),
            slat: SlatDraft::new("").check().expect("first values are sound"),
            rules: RulesDraft::new().check().expect("first values are sound"),
            accuracy: AccuracyDraft::new("")
                .check()
                .expect("first values are sound"),
        }
    }

    fn setup(&self) -> Setup<'_> {
        Setup {
            barrel: &self.barrel,
            turn: self.barrel.turn(Seam::ThroughFaces),
            top: &self.slat,
            bottom: &self.slat,
            rules: &self.rules,
        }
    }

    fn trial(&self) -> Trial {
        let setup = self.setup();
        Trial::new(&setup, &lay_out(&setup), &self.accuracy)
    }
}

/// The shortest of some runs: what the machine can do when nothing else disturbs it.
fn shortest(mut work: impl FnMut() -> f64) -> Duration {
    let run = |_| {
        let start = Instant::now();
        black_box(work());
        start.elapsed()
    };
    (0..9).map(run).min().unwrap_or_default()
}

fn main() {
    let shop = Shop::new();
    let (setup, trial) = (shop.setup(), shop.trial());
    assert_eq!(trial.across(), 10, "the sandwich is of ten pencils");
    let made = || {
        trial
            .simulate(1, 0..black_box(BLOCKS), &mut |_| true)
            .good()
            .mean
    };
    let counts = || {
        let choices = choices(
            &setup,
            &shop.accuracy,
            Varied::Count,
            1,
            0..black_box(BLOCKS),
            &mut |_| true,
        );
        choices.list.len() as f64
    };
    let chances = || black_box(&trial).prospect().centred;

    let mut criterion = Criterion::default()
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(2))
        .sample_size(10)
        .configure_from_args();
    let mut group = criterion.benchmark_group("tolerance");
    group.throughput(Throughput::Elements(BLOCKS * BLOCK));
    group.bench_function("sandwiches of ten", |bencher| bencher.iter(made));
    group.bench_function("sandwiches with one to ten", |bencher| bencher.iter(counts));
    group.finish();
    criterion.bench_function("chances of a sandwich", |bencher| bencher.iter(chances));

    let sandwiches = (BLOCKS * BLOCK) as f64;
    let (one, all) = (shortest(made), shortest(counts));
    let each = |time: Duration| time.as_secs_f64() / sandwiches;
    println!(
        "{:.0} ns a sandwich of ten, {:.1} million a second",
        each(one) * 1e9,
        1e-6 / each(one)
    );
    println!(
        "{:.0} ns a sandwich with every count from one to ten",
        each(all) * 1e9
    );
    println!("chances of a sandwich: {:?}", shortest(chances));
}
