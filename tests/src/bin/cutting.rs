//! Times cutting stock along one length: instances on standard input, one to a row.
//!
//! ```text
//! length kerf size:demand,size:demand,…   ──▶   planks bound seconds
//! ```

#![expect(
    clippy::print_stdout,
    reason = "the answers are for a program that reads them"
)]

use std::io::{self, BufRead};
use std::time::Instant;

use solver::sawing::{SawingDraft, SawingLimits, SawingOutcome, saw};

/// One row, solved; nothing where it cannot be read.
fn solved(row: &str) -> Option<String> {
    let mut words = row.split_whitespace();
    let length = words.next()?.parse().ok()?;
    let kerf = words.next()?.parse().ok()?;
    let pieces = words.next()?.split(',').map(|piece| {
        let (size, demand) = piece.split_once(':')?;
        Some((size.parse().ok()?, demand.parse().ok()?))
    });
    let pieces: Vec<(i64, u64)> = pieces.collect::<Option<_>>()?;
    let data = SawingDraft::along(length, kerf, &pieces).check().ok()?;
    let begun = Instant::now();
    let outcome = saw(&data, &SawingLimits::default(), &mut |_| {
        begun.elapsed().as_secs() < 10
    });
    let seconds = begun.elapsed().as_secs_f64();
    let (planks, bound) = match outcome.ok()? {
        SawingOutcome::Proved { plan, .. } => (plan.cost, plan.cost),
        SawingOutcome::WithinGap { plan, bound, .. } => (plan.cost, bound),
        SawingOutcome::Short { .. } | SawingOutcome::NoneFound { .. } => return None,
    };
    Some(format!("{planks} {bound} {seconds:.6}"))
}

fn main() -> io::Result<()> {
    for row in io::stdin().lock().lines() {
        println!("{}", solved(&row?).unwrap_or_else(|| "unread".to_owned()));
    }
    Ok(())
}
