//! What a little more of a limit, or less of a demand, would save, in words.

use super::job::OrderJob;
use crate::order_plan::Worths;

/// What a small change would save.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WorthLine {
    /// The change, as in "One more machine hour in March".
    pub change: String,
    /// What it would save, in the units of the aim, above 0.
    pub saves: i64,
}

impl WorthLine {
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
