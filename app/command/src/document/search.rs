//! What `search` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::{Found, Goal, Obstacle};

use super::check::Finding;
use super::words::CheckLine;
use super::{Named, VERSION};
use crate::search::Searched;

/// What `slatwright search` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct SearchDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-search"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// The barrel of the layout.
    barrel: Named,
    /// Pairs of slats with cutter sets that were compared.
    compared: usize,
    /// Layouts that did not come out as found when they were laid out once more, and are left out.
    /// Where it is not 0, a better layout than those told may be missing.
    unconfirmed: usize,
    /// Why nothing is told of good pencils; empty where it is.
    without_good: Vec<Finding>,
    /// All that are best under each goal; empty lists where nothing fits.
    best: Best,
    /// The layouts of which none has both less wood and a wider margin, least wood first.
    frontier: Vec<FoundLine>,
    /// Why nothing fits; `null` where something does.
    obstacle: Option<ObstacleLine>,
}

/// All that are best under each goal.
#[derive(Debug, Serialize, JsonSchema)]
struct Best {
    /// Most pencils from a sandwich; then least wood, least money, widest margin.
    pencils: Vec<FoundLine>,
    /// Least wood bought for a gross; then least money, widest margin.
    wood: Vec<FoundLine>,
    /// Least money for a gross; then least wood, widest margin.
    money: Vec<FoundLine>,
    /// Widest margin for error; then least wood, least money.
    margin: Vec<FoundLine>,
    /// Least money for a gross of the pencils that the errors of the line leave good; then least
    /// wood, widest margin. Empty where nothing is told of good pencils.
    good: Vec<FoundLine>,
}

/// A layout that was found.
#[derive(Debug, Serialize, JsonSchema)]
struct FoundLine {
    /// The slat stock above the glue plane.
    top: Named,
    /// The slat stock below the glue plane.
    bottom: Named,
    /// The cutter set; `null` for a new one made to measure.
    cutter_set: Option<Named>,
    /// The turn of the barrel, degrees counter-clockwise from standing on a face or as drawn.
    turn_degrees: f64,
    /// Height of the lead axis above the glue plane, mm.
    axis_height_mm: f64,
    /// Distance between groove centres, mm.
    pitch_mm: f64,
    /// Pencils side by side.
    across: u32,
    /// Pencils from one sandwich.
    pencils: u32,
    /// How far every size may be off at once, mm.
    margin_mm: f64,
    /// Wood bought for a gross of good pencils, mm³.
    wood_per_gross_mm3: f64,
    /// Price of that wood, and the share of a gross of the year in a cutter set that is still to
    /// be paid, in hundredths of the currency.
    money_per_gross_hundredths: f64,
    /// Pencils of one sandwich that are expected to be good; `null` where nothing is told of them.
    good_pencils: Option<f64>,
    /// Price of the wood of a gross of those, and the share of a cutter set as above, in hundredths;
    /// `null` where no pencil is good.
    money_per_good_gross_hundredths: Option<f64>,
}

/// Why nothing fits.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum ObstacleLine {
    /// There is no slat stock.
    NoSlats,
    /// No cutter set fits the barrel, and none may be bought.
    NoCutters,
    /// The pair that comes nearest fails these checks.
    Nearest {
        /// The slat stock above the glue plane.
        top: Named,
        /// The slat stock below the glue plane.
        bottom: Named,
        /// The checks that fail.
        checks: Vec<CheckLine>,
    },
}

impl From<&Searched<'_>> for SearchDocument {
    fn from(searched: &Searched<'_>) -> Self {
        let answer = &searched.answer;
        let lines = |found: &[Found]| found.iter().map(|found| line(searched, found)).collect();
        let best = |goal: Goal| lines(&answer.best[goal as usize]);
        Self {
            format: "slatwright-search",
            version: VERSION,
            project: searched.draft.name.clone(),
            barrel: Named::of(&searched.draft.barrels[searched.barrel], |barrel| {
                &barrel.name
            }),
            compared: answer.compared,
            unconfirmed: searched.unconfirmed,
            without_good: searched.without_good.iter().map(Finding::from).collect(),
            best: Best {
                pencils: best(Goal::Pencils),
                wood: best(Goal::Wood),
                money: best(Goal::Money),
                margin: best(Goal::Margin),
                good: best(Goal::Good),
            },
            frontier: lines(&answer.frontier),
            obstacle: (answer.obstacle.as_ref()).map(|obstacle| told(searched, obstacle)),
        }
    }
}

fn slat(searched: &Searched<'_>, at: usize) -> Named {
    Named::of(&searched.draft.slats[at], |slat| &slat.name)
}

fn cutter_set(searched: &Searched<'_>, at: usize) -> Named {
    let at = searched.set_place(at);
    Named::of(&searched.draft.cutter_sets[at], |set| &set.name)
}

fn line(searched: &Searched<'_>, found: &Found) -> FoundLine {
    FoundLine {
        top: slat(searched, found.top),
        bottom: slat(searched, found.bottom),
        cutter_set: (found.set).map(|at| cutter_set(searched, at)),
        turn_degrees: found.turn.in_degrees(),
        axis_height_mm: found.axis_height.in_millimetres(),
        pitch_mm: found.pitch.in_millimetres(),
        across: found.across,
        pencils: found.pencils,
        margin_mm: found.margin.in_millimetres(),
        wood_per_gross_mm3: found.wood.in_cubic_millimetres(),
        money_per_gross_hundredths: found.money,
        good_pencils: found.good,
        money_per_good_gross_hundredths: found.good_money,
    }
}

fn told(searched: &Searched<'_>, obstacle: &Obstacle) -> ObstacleLine {
    match obstacle {
        Obstacle::NoSlats => ObstacleLine::NoSlats,
        Obstacle::NoCutters => ObstacleLine::NoCutters,
        Obstacle::Nearest {
            top,
            bottom,
            checks,
        } => ObstacleLine::Nearest {
            top: slat(searched, *top),
            bottom: slat(searched, *bottom),
            checks: checks.iter().map(CheckLine::from).collect(),
        },
    }
}
