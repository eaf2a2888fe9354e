//! Times order plans of invented books, and hands the books out for others to time.
//!
//! ```text
//! orders 20x3x1 seed steps seconds   ──▶   seconds value bound gap steps
//! orders 20x3x1 seed                 ──▶   the book, as JSON
//! ```

#![expect(
    clippy::print_stdout,
    reason = "the answers are for a program that reads them"
)]

use std::process::ExitCode;
use std::time::Instant;

use solver::order_plan::{OrderPlanDraft, OrderPlanLimits, OrderPlanOutcome, plan_orders};
use tests::orders::{BookSize, order_book};

/// Set-ups, stocks and periods, as in `20x3x1`.
fn size(word: &str) -> Option<BookSize> {
    let mut numbers = word.split('x').map(|number| number.parse().ok());
    let mut number = || numbers.next().flatten();
    Some(BookSize {
        setups: number()?,
        stocks: number()?,
        periods: number()?,
    })
}

fn timed(draft: OrderPlanDraft, steps: u64, most_seconds: f64) -> Option<String> {
    let data = draft.check().ok()?;
    let begun = Instant::now();
    let mut lines = Vec::new();
    let mut last = (None, 0);
    let limits = OrderPlanLimits { steps, gap: 0 };
    let outcome = plan_orders(&data, &limits, &mut |progress| {
        let now = (progress.value, progress.bound);
        let seconds = begun.elapsed().as_secs_f64();
        if now != last {
            last = now;
            lines.push(format!(
                "{seconds:.3} {:?} {} {:.5} {}",
                progress.value,
                progress.bound,
                progress.gap().unwrap_or(1.0),
                progress.steps
            ));
        }
        seconds < most_seconds
    });
    let seconds = begun.elapsed().as_secs_f64();
    let word = match outcome.ok()? {
        OrderPlanOutcome::Proved { plan, bound } => {
            format!("proved {} {bound}", plan.value(data.aim()))
        }
        OrderPlanOutcome::WithinGap { plan, bound } => {
            format!("within {} {bound}", plan.value(data.aim()))
        }
        OrderPlanOutcome::NoPlan { clash } => format!("no plan {clash:?}"),
        OrderPlanOutcome::NoneFound { bound } => format!("none found {bound}"),
    };
    lines.push(format!("{seconds:.3} {word}"));
    Some(lines.join("\n"))
}

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize| words.get(at).and_then(|word| word.parse::<u64>().ok());
    let book = words.first().and_then(|word| size(word)).zip(number(1));
    let Some(draft) = book.map(|(size, seed)| order_book(seed, size)) else {
        println!("orders 20x3x1 seed [steps seconds]");
        return ExitCode::FAILURE;
    };
    let answer = match number(2) {
        Some(steps) => timed(draft, steps, number(3).unwrap_or(10) as f64),
        None => Some(tests::orders::json(&draft)),
    };
    match answer {
        Some(answer) => {
            println!("{answer}");
            ExitCode::SUCCESS
        }
        None => ExitCode::FAILURE,
    }
}
