//! What clashes where there is no plan, in words.

use super::job::OrderJob;
use crate::figure;
use crate::order_plan::{Clash, MILLION, PlanAim, Wish};
use crate::unit::LengthUnit;

/// One of the demands and limits that cannot be kept together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClashLine {
    wish: String,
    kind: Wish,
    given: u64,
    needed: Option<u64>,
    /// Whether the pencil that is due fits no slats.
    fits_nothing: bool,
}

impl ClashLine {
    pub(super) fn of(job: &OrderJob, clash: &Clash) -> Self {
        let Clash {
            wish: kind,
            given,
            needed,
        } = *clash;
        let mut fits_nothing = false;
        let wish = match kind {
            Wish::Due { pencil } => {
                let barrel = job.barrels[pencil];
                fits_nothing = !job.setups.iter().any(|setup| setup.barrel == barrel);
                format!("Due of {}", job.pencils[pencil])
            }
            Wish::Machine { period } => format!("Machine hours in {}", job.periods[period]),
            Wish::Packs { offer } => format!("Most packs of {}", job.offer(offer)),
            Wish::Sawing { stock } => {
                format!(
                    "Most usable slats sawn in a period for {}",
                    job.stocks[stock]
                )
            }
            Wish::PencilStore => "Most pencils stored".to_owned(),
            Wish::SlatStore => "Most slats stored".to_owned(),
            Wish::Certified => "Least certified share".to_owned(),
            Wish::Limit { aim } => match aim {
                PlanAim::Cost => "Most cost",
                PlanAim::Timber => "Most timber",
                PlanAim::Changeovers => "Most change-overs",
            }
            .to_owned(),
        };
        Self {
            wish,
            kind,
            given,
            needed,
            fits_nothing,
        }
    }

    /// What it is.
    #[must_use]
    pub fn wish(&self) -> &str {
        &self.wish
    }

    /// The demand or limit.
    #[must_use]
    pub const fn kind(&self) -> Wish {
        self.kind
    }

    /// What it is set to: see [`Clash::given`].
    #[must_use]
    pub const fn given(&self) -> u64 {
        self.given
    }

    /// What it has to be: see [`Clash::needed`].
    #[must_use]
    pub const fn needed(&self) -> Option<u64> {
        self.needed
    }

    /// All of it in a sentence.
    #[must_use]
    pub fn sentence(&self, unit: LengthUnit) -> String {
        let shown = |amount| self.shown(amount, unit);
        let start = format!("{}: {}", self.wish, shown(self.given));
        let asks_for_less = matches!(self.kind, Wish::Due { .. } | Wish::Certified);
        match self.needed {
            _ if self.fits_nothing => format!(
                "{start}, and no slats hold it in any of its usual ways round: add a larger stock or a cutter set that serves it"
            ),
            Some(needed) if asks_for_less => {
                format!("{start}; with all else as it is, at most {}", shown(needed))
            }
            Some(needed) => format!(
                "{start}; with all else as it is, at least {}",
                shown(needed)
            ),
            None => format!("{start}; to change it alone is not enough"),
        }
    }

    fn shown(&self, amount: u64, unit: LengthUnit) -> String {
        let pieces = |of| format!("{} {of}", figure::count(amount));
        match self.kind {
            Wish::Due { .. } | Wish::PencilStore => pieces("pencils"),
            Wish::Packs { .. } => pieces("packs"),
            Wish::Sawing { .. } | Wish::SlatStore => pieces("slats"),
            // A tenth of an hour more than needed is still enough.
            Wish::Machine { .. } => {
                let hours = (amount as f64 / 360.0).ceil() / 10.0;
                format!("{} h", figure::plain(hours, 1))
            }
            Wish::Certified => figure::ratio(amount as f64 / f64::from(MILLION)),
            Wish::Limit { aim } => {
                let amount = i64::try_from(amount).unwrap_or(i64::MAX);
                match aim {
                    // A limit of the cost is in hundredths.
                    PlanAim::Cost => figure::money(amount),
                    aim => aim.shown(amount, unit),
                }
            }
        }
    }
}
