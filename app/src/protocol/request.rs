//! The half of the conversation that the page says.

use serde::{Deserialize, Serialize};

use super::job::JobId;
use super::measured::SheetSizes;

use super::whole::Whole;
use super::words::{AimWord, UnitWord};

/// What the page asks for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Request {
    /// The barrel of the layout on every slat stock, every usual way round, and at the angle of
    /// the layout when it has one.
    Rank {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// What makes one layout better than another.
        aim: AimWord,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
    },
    /// The best layouts of the barrel over every pair of slats, cutter set, turn and height of the
    /// axis that the search of the project may try.
    Search {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
    },
    /// The nearest values of each input of the layout at which the count or a check changes.
    Thresholds {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit in which the values are shown, to which they are rounded.
        unit: UnitWord,
    },
    /// Sandwiches of the layout made by dice.
    Throw {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
        /// Which dice.
        seed: u32,
        /// The first block of sandwiches.
        first: u32,
        /// How many blocks.
        blocks: u32,
    },
    /// What can be told of good pencils beside their count.
    Outlook {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
    },
    /// The plan that saws the blanks of the saw shop from its planks.
    Saw {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
    },
    /// The plan that fills the order book: what to run, to buy and to saw in each period.
    Plan {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the texts of the reply.
        unit: UnitWord,
    },
    /// The prices at which stocks that a plan does not buy begin to pay.
    PayingPrices {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the texts of the reply.
        unit: UnitWord,
        /// What the plan costs, thousandths of a hundredth of the currency.
        cost: Whole,
        /// The stocks, by their places in the project.
        stocks: Vec<u32>,
    },
    /// What slats one millimetre wider would save, stock by stock.
    WiderSlats {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the texts of the reply.
        unit: UnitWord,
        /// What the plan comes to as the slats are, and what no plan comes below, as the aim counts.
        now: [Whole; 2],
        /// The stocks, by their places in the project.
        stocks: Vec<u32>,
    },
    /// The good pencils that are expected of a sandwich of the layout.
    Expect {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
    },
    /// Which cutter sets make which barrels, and the one more that saves most over the order book.
    Cutters {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
    },
    /// The nearest changes of the barrel that gain a pencil or a cheaper stock.
    Gains {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit in which sizes are shown, to which they are rounded.
        unit: UnitWord,
        /// How far size, corner radius and coat may move either way, mm.
        limits_mm: [f64; 3],
    },
    /// What a list of measured slats says of its lot.
    Measure {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of bare numbers in the list, and of the lengths in the texts of the reply.
        unit: UnitWord,
        /// The list as it was pasted or opened.
        list: String,
        /// What was agreed as ±, mm; none for what the stock of the bottom slat may lack.
        agreed_mm: Option<f64>,
        /// The sheet that charts are drawn for.
        sheet: SheetSizes,
    },
    /// The packs that fill the order book at least cost.
    Purchase {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// Seconds after which the best plan so far is told, 1 to [`MOST_SECONDS`]; what lies
        /// outside is moved to the nearest of the two.
        seconds: u32,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
    },
}

impl Request {
    /// The job that is asked for.
    #[must_use]
    pub const fn job(&self) -> JobId {
        match self {
            Self::Rank { job, .. }
            | Self::Search { job, .. }
            | Self::Thresholds { job, .. }
            | Self::Throw { job, .. }
            | Self::Outlook { job, .. }
            | Self::Saw { job, .. }
            | Self::Plan { job, .. }
            | Self::PayingPrices { job, .. }
            | Self::WiderSlats { job, .. }
            | Self::Measure { job, .. }
            | Self::Expect { job, .. }
            | Self::Cutters { job, .. }
            | Self::Gains { job, .. }
            | Self::Purchase { job, .. } => *job,
        }
    }
}

/// The time limit of a purchase unless another is asked for, in seconds.
pub const USUAL_SECONDS: u32 = 20;

/// The longest time limit of a purchase, in seconds.
pub const MOST_SECONDS: u32 = 600;
