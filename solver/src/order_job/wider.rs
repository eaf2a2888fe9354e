//! What wider slats of a stock would save: the same orders are planned with them once more.

use super::reading::OrderEnd;
use crate::field::{Field, Typed};
use crate::order_plan::{OrderPlanLimits, PlanAim};
use crate::project::ProjectDraft;
use crate::quantity::Length;
use crate::unit::LengthUnit;

/// What the orders come to when the slats of a stock are wider, at the same price. Amounts in the units
/// of the aim.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WiderSlats {
    /// What the stock is called.
    pub stock: String,
    /// What is made small.
    pub aim: PlanAim,
    /// What the plan comes to, and what no plan comes below, as they are.
    pub now: [i64; 2],
    /// The same with wider slats; none where no plan was found.
    pub then: Option<[i64; 2]>,
}

impl ProjectDraft {
    /// The orders planned once more with slats of a stock that are wider by a length, at the same
    /// price; `now` is what the plan comes to as they are, and what no plan comes below.
    ///
    /// Nothing where the stock has gone, its width cannot be read, or the wider slats cannot be planned
    /// with.
    #[must_use]
    pub fn with_wider_slats(
        &self,
        stock: usize,
        by: Length,
        now: [i64; 2],
        limits: &OrderPlanLimits,
    ) -> Option<WiderSlats> {
        let mut wider = self.clone();
        let slat = &mut wider.slats.get_mut(stock)?.draft;
        let width = slat.width.read(Field::SlatWidth).ok()?;
        slat.width = Typed::Number(width + by.in_millimetres());
        let job = wider.check_order_plan().ok()?;
        let answer = job.answer(limits, &mut |_| true).ok()?;
        let then = match answer.end {
            OrderEnd::Proved => answer.value.map(|value| [value, value]),
            _ => answer
                .value
                .zip(answer.bound)
                .map(|(value, bound)| [value, bound]),
        };
        Some(WiderSlats {
            stock: job.stock(stock).to_owned(),
            aim: answer.aim,
            now,
            then,
        })
    }
}

impl WiderSlats {
    /// All of it in a sentence, which claims no more than is proved.
    ///
    /// ```
    /// use solver::{LengthUnit, WiderSlats};
    /// use solver::order_plan::PlanAim;
    /// let wider = WiderSlats {
    ///     stock: "74 × 5".to_owned(), aim: PlanAim::Cost,
    ///     now: [500_000_00, 500_000_00], then: Some([450_000_00, 450_000_00]),
    /// };
    /// let told = wider.sentence(LengthUnit::Millimetre);
    /// assert_eq!(told.replace('\u{202f}', " "), "74 × 5 would save 50.00, and come to 450.00; both are proved best");
    /// ```
    #[must_use]
    pub fn sentence(&self, unit: LengthUnit) -> String {
        let shown = |amount: i64| self.aim.shown(amount, unit);
        let stock = &self.stock;
        let [value, bound] = self.now;
        let Some([wider, least]) = self.then else {
            return format!("{stock}: no plan was found with the wider slats");
        };
        let comes_to = shown(wider);
        let change = value - wider;
        let found = match change {
            0 => format!("{stock} would change nothing: {comes_to}"),
            1.. => format!(
                "{stock} would save {}, and come to {comes_to}",
                shown(change)
            ),
            _ => format!(
                "{stock}: the best plan found comes to {comes_to}, {} more",
                shown(-change)
            ),
        };
        if value == bound && wider == least {
            return format!("{found}; both are proved best");
        }
        // What is saved lies between the worst and the best that are not ruled out.
        let most = (value - least).max(0);
        format!(
            "{found}; not both are proved best, so it saves at most {}",
            shown(most)
        )
    }
}
