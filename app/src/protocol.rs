//! Everything the page and a worker say to each other.
//!
//! The types are the conversation's own. Numbers are `u32` or `f64`, which a browser's messages
//! carry as they are; amounts that can pass `u32` are [`Whole`] numbers.

mod measured;
mod outlook;

pub use measured::{ChartLabel, Fact, LotChart, MeasuredList, MeasuredLot, SheetSizes, SizeWord};
pub use outlook::{Curve, CurvePoint, Expected, Halving, Outlook, Thrown};

use serde::{Deserialize, Serialize};

use crate::project_file::WayWord;

/// Tells one job from the others of the same worker.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct JobId(pub u32);

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
    /// The good pencils that are expected of a sandwich of the layout.
    Expect {
        /// The job.
        job: JobId,
        /// The project as it stands on the page, as the text of a file.
        project: String,
        /// The unit of the lengths in the texts of the reply.
        unit: UnitWord,
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

/// The time limit of a purchase unless another is asked for, in seconds.
pub const USUAL_SECONDS: u32 = 20;

/// The longest time limit of a purchase, in seconds.
pub const MOST_SECONDS: u32 = 600;

/// What a worker says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Reply {
    /// The worker listens from now on.
    Ready {
        /// The build it belongs to; empty when the build was not finished by the task runner.
        build: String,
    },
    /// How far a job has come.
    Progress {
        /// The job.
        job: JobId,
        /// How far.
        progress: Progress,
    },
    /// The end of [`Request::Rank`].
    Ranked {
        /// The job.
        job: JobId,
        /// The ranking.
        ranking: Ranking,
    },
    /// The end of [`Request::Search`].
    Searched {
        /// The job.
        job: JobId,
        /// What was found.
        searched: Searched,
    },
    /// The end of [`Request::Thresholds`].
    Thresholds {
        /// The job.
        job: JobId,
        /// A row for each input of the layout, slats first, then rules, then the barrel.
        rows: Vec<ThresholdRow>,
    },
    /// The end of [`Request::Throw`].
    Thrown {
        /// The job.
        job: JobId,
        /// The sandwiches, counted.
        thrown: Thrown,
    },
    /// The end of [`Request::Outlook`].
    Outlook {
        /// The job.
        job: JobId,
        /// What can be told.
        outlook: Outlook,
    },
    /// The end of [`Request::Expect`].
    Expected {
        /// The job.
        job: JobId,
        /// What is expected.
        expected: Expected,
    },
    /// The end of [`Request::Measure`].
    Measured {
        /// The job.
        job: JobId,
        /// What the list says.
        measured: MeasuredList,
    },
    /// The end of [`Request::Purchase`].
    Purchased {
        /// The job.
        job: JobId,
        /// What came out.
        purchase: Purchase,
    },
    /// The project cannot be worked with.
    Refused {
        /// The job.
        job: JobId,
        /// Everything that is wrong, each a sentence that says where and what to try.
        problems: Vec<String>,
    },
    /// Something broke that is no fault of the project. Asking again is safe: if the worker is
    /// gone, the next request starts another.
    Fault {
        /// The job it happened to, if one was under way.
        job: Option<JobId>,
        /// What is known of it, and what to try.
        reason: String,
    },
}

/// How far a job has come. Amounts of money in hundredths of the currency.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Progress {
    /// Layouts that are laid out, or pairs of slats that are compared.
    Laid {
        /// So many are done.
        done: u32,
        /// So many there are.
        of: u32,
    },
    /// A first plan is made.
    FirstPlan {
        /// Its cost; `None` when the quick way fills not every order.
        cost: Option<Whole>,
    },
    /// No plan costs less than this.
    Bound {
        /// The bound.
        bound: Whole,
    },
    /// A better plan is found.
    BetterPlan {
        /// Its cost.
        cost: Whole,
    },
    /// The cost is settled; now fewer slats are sought.
    FewerSlats {
        /// The cost.
        cost: Whole,
    },
}

/// A whole number as an `f64`: exact up to 2⁵³, beyond that the nearest there is.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
pub struct Whole(f64);

impl Whole {
    /// As a number of pieces; below 0 it is 0.
    #[must_use]
    pub const fn pieces(self) -> u64 {
        self.0 as u64
    }

    /// As hundredths of the currency.
    #[must_use]
    pub const fn hundredths(self) -> i64 {
        self.0 as i64
    }
}

impl From<u64> for Whole {
    fn from(pieces: u64) -> Self {
        Self(pieces as f64)
    }
}

impl From<i64> for Whole {
    fn from(hundredths: i64) -> Self {
        Self(hundredths as f64)
    }
}

/// What makes one layout better than another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum AimWord {
    /// Most pencils from a sandwich.
    Pencils,
    /// Least wood bought for a gross.
    Wood,
}

/// The unit of the lengths in texts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum UnitWord {
    /// Millimetres.
    Millimetre,
    /// Inches.
    Inch,
}

/// One barrel on the slat stocks, best first; what does not fit stands last.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Ranking {
    /// A row for each stock and way round.
    pub rows: Vec<RankedRow>,
    /// The stocks that cannot be ranked, in the order of the list.
    pub left_out: Vec<LeftOut>,
}

/// One stock with one way round.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RankedRow {
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// The way round.
    pub way: WayWord,
    /// The turn of the barrel from standing on a face.
    pub turn_degrees: f64,
    /// Pencils from one sandwich; 0 when a check fails.
    pub pencils: u32,
    /// Grooves that fit side by side, whatever the other checks say.
    pub across: u32,
    /// Distance between neighbouring groove centres.
    pub pitch_mm: f64,
    /// Finished wood over wood bought, 0 to 1; `None` when a check fails.
    pub yielded: Option<f64>,
    /// Wood of the slats for a gross as bought; `None` when a check fails.
    pub wood_per_gross_mm3: Option<f64>,
    /// Slats for a gross, not rounded; `None` when a check fails.
    pub slats_per_gross: Option<f64>,
    /// Price of the slats for a gross in hundredths, not rounded; `None` when a check fails.
    pub price_per_gross: Option<f64>,
    /// The first check that fails, as a statement with its name.
    pub failing: Option<String>,
}

/// A stock that cannot be ranked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LeftOut {
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// Everything that is wrong with it.
    pub problems: Vec<String>,
}

/// What makes one found layout better than another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum GoalWord {
    /// Most pencils from a sandwich.
    Pencils,
    /// Least wood bought for a gross.
    Wood,
    /// Least money for a gross.
    Money,
    /// Widest margin for error.
    Margin,
    /// Least money for a gross of the pencils that errors leave good.
    Good,
}

/// What a search found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Searched {
    /// The first of those that are best under each goal; then the layouts of which none has both
    /// less wood and a wider margin, least wood first; then those as good as the first; each once.
    pub rows: Vec<FoundRow>,
    /// Layouts that are as good as some of the rows, left out as there are too many to show.
    pub more: u32,
    /// Layouts that did not come out as found when they were laid out once more, and are left out.
    /// There should be none.
    pub unconfirmed: u32,
    /// Why nothing is told of good pencils, when nothing is.
    pub without_good: Option<String>,
    /// Pairs of slats with cutter sets that were compared.
    pub compared: Whole,
    /// The stocks that could not be searched, in the order of the list.
    pub left_out: Vec<LeftOut>,
    /// The cutter sets that could not be searched, each with what is wrong with it.
    pub sets_left_out: Vec<String>,
    /// Why nothing fits, when nothing does.
    pub obstacle: Option<String>,
}

/// A layout that was found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FoundRow {
    /// The `id` of the stock above the glue plane.
    pub top: u32,
    /// What that stock is called.
    pub top_name: String,
    /// The `id` of the stock below the glue plane.
    pub bottom: u32,
    /// What that stock is called.
    pub bottom_name: String,
    /// The `id` of the cutter set; none for a new one.
    pub set: Option<u32>,
    /// What the cutter set is called; none for a new one.
    pub set_name: Option<String>,
    /// The way round: a usual one, or turned by the angle.
    pub way: WayWord,
    /// The turn of the barrel from standing on a face.
    pub turn_degrees: f64,
    /// Height of the lead axis above the glue plane.
    pub axis_height_mm: f64,
    /// Distance between neighbouring groove centres.
    pub pitch_mm: f64,
    /// Pencils side by side.
    pub across: u32,
    /// Pencils from one sandwich.
    pub pencils: u32,
    /// How far every size may be off at once: the least margin of edge, land, thicknesses and
    /// floors.
    pub margin_mm: f64,
    /// Wood bought for a gross of good pencils.
    pub wood_per_gross_mm3: f64,
    /// Price of that wood and share of the cutter set in hundredths, not rounded.
    pub money_per_gross: f64,
    /// Pencils of one sandwich that are expected to be good; none where no errors are known.
    pub good: Option<f64>,
    /// Price of the wood of a gross of those and share of the cutter set in hundredths; none where
    /// no pencil is good.
    pub money_per_good_gross: Option<f64>,
    /// The goals under which no other is better.
    pub best_under: Vec<GoalWord>,
    /// Whether none has both less wood and a wider margin.
    pub on_frontier: bool,
}

/// An input of the layout with the nearest values at which something changes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ThresholdRow {
    /// Where the input stands.
    pub input: InputAddress,
    /// What stands there today, mm.
    pub today_mm: f64,
    /// Changes below today's value, the nearest first.
    pub down: Vec<ChangeLine>,
    /// Changes above today's value, the nearest first.
    pub up: Vec<ChangeLine>,
}

/// Where an input of the layout stands in the project.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct InputAddress {
    /// What it belongs to.
    pub owner: OwnerWord,
    /// Its place in [`solver::Field::ALL`]: page and worker are of one build.
    pub field: u32,
}

/// What an input belongs to, by its `id`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum OwnerWord {
    /// A slat stock.
    Slat(u32),
    /// The machining rules.
    Rules,
    /// A cutter set.
    CutterSet(u32),
    /// The barrel.
    Barrel(u32),
}

/// What is different from today at a value of an input.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ChangeLine {
    /// The first value at which it is so, mm.
    pub at_mm: f64,
    /// That value as it is shown, mm: rounded away from today's where the same is true there.
    pub shown_mm: f64,
    /// Pencils from one sandwich today; 0 where a check fails.
    pub pencils_before: u32,
    /// Pencils from one sandwich there.
    pub pencils_after: u32,
    /// Grooves side by side today, whatever the checks say.
    pub across_before: u32,
    /// Grooves side by side there.
    pub across_after: u32,
    /// The checks that pass there and not today, by name.
    pub mended: Vec<String>,
    /// The checks that fail there and not today, by name.
    pub broken: Vec<String>,
    /// Whether the barrel cannot be made there.
    pub unmade: bool,
    /// Price of slats saved for a gross in hundredths, below 0 where it costs more.
    pub saved_per_gross: Option<f64>,
    /// The same for the gross of a year.
    pub saved_per_year: Option<f64>,
}

/// What came out of a purchase. The four cases never stand for each other.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Purchase {
    /// No plan costs less.
    Cheapest {
        /// What to buy and to run.
        list: PurchaseList,
        /// Whether no plan of this cost takes fewer slats either.
        fewest_slats: bool,
    },
    /// A plan that can be carried out; a cheaper one is not ruled out.
    WithinGap {
        /// What to buy and to run.
        list: PurchaseList,
        /// No plan costs less than this, in hundredths.
        bound: Whole,
        /// What could be saved at most, over the cost: above 0, at most 1.
        gap: f64,
    },
    /// The time ran out before any plan was found; there may be one.
    NoneFound {
        /// No plan costs less than this, in hundredths.
        bound: Whole,
    },
    /// No plan fills the book.
    Impossible {
        /// Why, in sentences that name barrels and stocks.
        obstacles: Vec<String>,
    },
}

/// What to buy and to run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PurchaseList {
    /// The stocks that are bought or used, in the order of the project.
    pub stocks: Vec<StockLine>,
    /// What is made from what, in the order of the book, then of the stocks.
    pub runs: Vec<RunLine>,
    /// The sums.
    pub totals: Totals,
}

/// One stock that is bought or used.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StockLine {
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// Packs to buy.
    pub packs: Whole,
    /// Slats in those packs.
    pub slats_bought: Whole,
    /// Price of those packs, in hundredths.
    pub cost: Whole,
    /// Slats that the runs take.
    pub slats_used: Whole,
    /// Of these, taken from what was on hand.
    pub slats_from_hand: Whole,
    /// Slats in store when the runs are done.
    pub slats_left: Whole,
}

/// One order made from one stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RunLine {
    /// The line of the order book, counted from 0.
    pub order: u32,
    /// The `id` of the barrel.
    pub barrel: u32,
    /// What the barrel is called.
    pub barrel_name: String,
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// The way round that gives the most pencils.
    pub way: WayWord,
    /// Pencils from one sandwich.
    pub pencils_per_sandwich: u32,
    /// Sandwiches to glue.
    pub sandwiches: Whole,
    /// Pencils from those sandwiches, before any are thrown out.
    pub pencils: Whole,
}

/// The sums of a purchase.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Totals {
    /// Price of all packs, in hundredths.
    pub cost: Whole,
    /// Slats in all packs.
    pub slats_bought: Whole,
    /// Slats that the runs take.
    pub slats_used: Whole,
    /// Wood of the slats bought.
    pub wood_bought_mm3: f64,
    /// Pencils ordered.
    pub pencils_ordered: Whole,
    /// Good pencils beyond the orders, to be expected.
    pub pencils_over: Whole,
    /// Cost over the gross ordered, in hundredths, not rounded; `None` when none is ordered.
    pub cost_per_gross: Option<f64>,
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
            | Self::Measure { job, .. }
            | Self::Expect { job, .. }
            | Self::Purchase { job, .. } => *job,
        }
    }
}

impl Reply {
    /// The job that is spoken of, if any.
    #[must_use]
    pub const fn job(&self) -> Option<JobId> {
        match self {
            Self::Ready { .. } => None,
            Self::Progress { job, .. }
            | Self::Ranked { job, .. }
            | Self::Searched { job, .. }
            | Self::Thresholds { job, .. }
            | Self::Thrown { job, .. }
            | Self::Outlook { job, .. }
            | Self::Measured { job, .. }
            | Self::Expected { job, .. }
            | Self::Purchased { job, .. }
            | Self::Refused { job, .. } => Some(*job),
            Self::Fault { job, .. } => *job,
        }
    }

    /// Whether this is the last word on its job.
    #[must_use]
    pub const fn is_last(&self) -> bool {
        !matches!(self, Self::Ready { .. } | Self::Progress { .. })
    }
}

impl From<AimWord> for solver::Aim {
    fn from(word: AimWord) -> Self {
        match word {
            AimWord::Pencils => Self::Pencils,
            AimWord::Wood => Self::Wood,
        }
    }
}

impl From<solver::Goal> for GoalWord {
    fn from(goal: solver::Goal) -> Self {
        match goal {
            solver::Goal::Pencils => Self::Pencils,
            solver::Goal::Wood => Self::Wood,
            solver::Goal::Money => Self::Money,
            solver::Goal::Margin => Self::Margin,
            solver::Goal::Good => Self::Good,
        }
    }
}

impl From<GoalWord> for solver::Goal {
    fn from(word: GoalWord) -> Self {
        match word {
            GoalWord::Pencils => Self::Pencils,
            GoalWord::Wood => Self::Wood,
            GoalWord::Money => Self::Money,
            GoalWord::Margin => Self::Margin,
            GoalWord::Good => Self::Good,
        }
    }
}

impl From<UnitWord> for solver::LengthUnit {
    fn from(word: UnitWord) -> Self {
        match word {
            UnitWord::Millimetre => Self::Millimetre,
            UnitWord::Inch => Self::Inch,
        }
    }
}

impl From<solver::LengthUnit> for UnitWord {
    fn from(unit: solver::LengthUnit) -> Self {
        match unit {
            solver::LengthUnit::Millimetre => Self::Millimetre,
            solver::LengthUnit::Inch => Self::Inch,
        }
    }
}
