//! What a little more of a limit, or less of a demand, would save, in words.

use super::job::OrderJob;
use crate::order_plan::{PlanAim, Worths};
use crate::unit::LengthUnit;

/// What a small change would save.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WorthLine {
    /// The change, as in "One more machine hour in March".
    pub change: String,
    /// What it would save, in the units of the aim, above 0.
    pub saves: i64,
}

impl WorthLine {
    /// All of it in a sentence.
    ///
    /// ```
    /// use solver::{LengthUnit, WorthLine};
    /// use solver::order_plan::PlanAim;
    /// let worth = WorthLine { change: "One more machine hour in May".to_owned(), saves: 1_240_000 };
    /// let told = worth.sentence(PlanAim::Cost, LengthUnit::Millimetre);
    /// assert_eq!(told, "One more machine hour in May would save 12.40");
    /// ```
    #[must_use]
    pub fn sentence(&self, aim: PlanAim, unit: LengthUnit) -> String {
        format!("{} would save {}", self.change, aim.shown(self.saves, unit))
    }

    /// All changes that would save anything.
    pub(super) fn of(job: &OrderJob, worths: &Worths) -> Vec<Self> {
        let mut lines = Vec::new();
        let mut tell = |change: String, saves: i64| {
            if saves > 0 {
                lines.push(Self { change, saves });
            }
        };
        for (period, hour) in job.periods.iter().zip(&worths.machine_hour) {
            tell(
                format!("One more machine hour in {period}"),
                hour.unwrap_or(0),
            );
        }
        for (place, packs) in worths.packs.iter().enumerate() {
            let change = format!("One more pack in the limits of {}", job.offer(place));
            tell(change, packs.pack_more);
        }
        for (pencil, &saves) in job.pencils.iter().zip(&worths.gross_less) {
            tell(
                format!("One gross less of {pencil}, of what is due last"),
                saves,
            );
        }
        lines
    }
}

impl OrderJob {
    /// What an offer is called.
    pub(super) fn offer(&self, place: usize) -> String {
        let stock = self.data.offers()[place].stock;
        format!("{} for {}", self.suppliers[place], self.stocks[stock])
    }
}
