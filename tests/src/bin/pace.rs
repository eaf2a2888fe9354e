//! Prints how long each kind of work takes on this machine, as JSON: the shortest of some runs, ms.

#![expect(clippy::print_stdout, reason = "its output is what it is for")]

use std::hint::black_box;
use std::time::Instant;

/// Runs of each kind; the shortest is what the machine can do when nothing else disturbs it.
const RUNS: u32 = 15;

fn main() {
    let kinds = tests::KINDS.iter().map(|(name, work)| {
        let run = |_| {
            let start = Instant::now();
            black_box(work());
            start.elapsed().as_secs_f64() * 1000.0
        };
        let shortest = (0..RUNS).map(run).fold(f64::INFINITY, f64::min);
        format!("{name:?}: {shortest}")
    });
    println!("{{{}}}", kinds.collect::<Vec<_>>().join(", "));
}
