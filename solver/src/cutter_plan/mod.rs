//! Which one new cutter set saves most over the order book.

mod proposal;
mod question;
#[cfg(test)]
mod tests;

pub use proposal::{NewSet, Proposal};

use crate::barrel::Barrel;
use crate::cutter_set::CutterSet;
use crate::layout::{Layout, Setup, lay_out};
use crate::project::{Id, Project};
use crate::quantity::Length;
use crate::ranking::{GROSS, GrossNeeds};
use crate::rules::{PitchRule, Rules};
use crate::seam::Seam;

/// What cutter sets are planned for, and what there is to choose from.
#[derive(Debug, Clone, Copy)]
pub struct CutterQuestion<'a> {
    /// Barrels, stocks, rules and the order book.
    pub project: &'a Project,
    /// The names of the barrels of the project, in their order: sets name barrels by them.
    pub barrels: &'a [Id],
    /// The sets that are owned (nothing to be paid for them) or offered.
    pub sets: &'a [CutterSet],
    /// Price of a set made to measure, in hundredths of the currency; none when none can be had.
    pub new_price: Option<i64>,
}

/// The cheapest way to make a barrel with a set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SetUse {
    /// The stock of both slats, by its place in the list.
    pub stock: usize,
    /// The way round.
    pub seam: Seam,
    /// Grooves side by side.
    pub across: u32,
    /// Pencils of a sandwich.
    pub pencils: u32,
    /// Price of the slats of a gross of good pencils, in hundredths of the currency.
    pub gross_cost: f64,
}

/// How a line of the order book is made with the sets that are owned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OrderNow {
    /// The barrel, by its place in the list.
    pub barrel: usize,
    /// Gross ordered.
    pub gross: f64,
    /// The place of the cheapest set that is owned, and how it is used; none when no owned set makes
    /// this barrel.
    pub made: Option<(usize, SetUse)>,
}

/// What the sets that are owned make, and what one more would save.
#[derive(Debug, Clone, PartialEq)]
pub struct CutterPlan {
    /// `uses[set][barrel]`: the cheapest way to make a barrel with a set; none when it does not serve
    /// the barrel, or no check of any layout with it passes.
    pub uses: Vec<Vec<Option<SetUse>>>,
    /// The lines of the order book.
    pub orders: Vec<OrderNow>,
    /// One more set, the one that saves most first. Sets that change nothing are left out.
    pub proposals: Vec<Proposal>,
}

impl CutterPlan {
    /// The set that saves most over the order book, where any does.
    #[must_use]
    pub fn best(&self) -> Option<&Proposal> {
        self.proposals
            .first()
            .filter(|proposal| proposal.saving > 0.0)
    }

    /// The sets that make a barrel, by their places, the cheapest first.
    #[must_use]
    pub fn serving(&self, barrel: usize) -> Vec<usize> {
        let cost = |set: usize| {
            let made = self.uses.get(set)?.get(barrel)?.as_ref()?;
            Some(made.gross_cost)
        };
        let mut sets: Vec<(usize, f64)> = (0..self.uses.len())
            .filter_map(|set| Some((set, cost(set)?)))
            .collect();
        sets = crate::sequence::in_order(sets, |one, other| one.1.total_cmp(&other.1));
        sets.into_iter().map(|(set, _)| set).collect()
    }
}

/// Plans cutter sets for the order book of a project.
///
/// A line of the book costs the slats that its good pencils take, at pack price, on the stock and in
/// the usual way round that are cheapest with a set, both slats of one stock. What is saved is the
/// sum over all lines that an owned set makes already; lines that none makes count as newly served.
///
/// A set made to measure is for one barrel at one pitch. For the barrel of width w, a way round s
/// and a land k, a pitch serves from w(s) + k on, and on a stock with room r between the centres of
/// the outer grooves n grooves fit up to r/(n − 1). With a growing pitch counts only fall, and ways
/// round only become possible at w(s) + k; so the least cost of all pitches is had at one of these,
/// which are all tried. The proposal names it and the largest pitch with the same answer.
///
/// ```
/// use solver::{BarrelDraft, CutterQuestion, CutterSetDraft, Id, NewSet, Order, Project, RulesDraft, Shape, SlatDraft, Typed, plan_cutters};
/// let project = Project {
///     barrels: vec![BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap()],
///     slats: vec![SlatDraft::new("74 × 5").check().unwrap()],
///     rules: RulesDraft::new().check().unwrap(),
///     orders: vec![Order { barrel: 0, pencils: 1_000 * 144, on_hand: 0 }],
/// };
/// let mut nines = CutterSetDraft::new("Nines");
/// nines.pitch = Typed::Number(8.0);
/// nines.most = Typed::Number(9.0);
/// let sets = [nines.check().unwrap()];
/// let question = CutterQuestion { project: &project, barrels: &[Id(1)], sets: &sets, new_price: Some(120_000) };
/// let plan = plan_cutters(&question);
/// // Ten of a sandwich instead of nine save a tenth of the slats.
/// let best = plan.best().unwrap();
/// let now = plan.orders[0].made.unwrap().1.gross_cost * 1_000.0;
/// assert!((best.saving / now - 0.1).abs() < 1e-9);
/// assert!(matches!(best.set, NewSet::MadeToMeasure { most: 10, .. }));
/// ```
#[must_use]
pub fn plan_cutters(question: &CutterQuestion<'_>) -> CutterPlan {
    let project = question.project;
    let barrels = &project.barrels;
    let uses: Vec<Vec<Option<SetUse>>> = question
        .sets
        .iter()
        .map(|set| {
            let of = |(at, barrel): (usize, &Barrel)| {
                let serves = question.barrels.get(at).is_some_and(|id| set.serves(*id));
                serves.then(|| best_use(project, barrel, set.pitch(), set.most()))?
            };
            barrels.iter().enumerate().map(of).collect()
        })
        .collect();
    let owned = |set: usize| question.sets[set].price() == 0;
    let made = |barrel: usize| {
        let sets = (0..uses.len()).filter(|set| owned(*set));
        let made = sets.filter_map(|set| Some((set, uses[set][barrel]?)));
        // Of equals the first stays.
        made.reduce(|best, other| {
            if other.1.gross_cost < best.1.gross_cost {
                other
            } else {
                best
            }
        })
    };
    let orders: Vec<OrderNow> = project
        .orders
        .iter()
        .map(|order| OrderNow {
            barrel: order.barrel,
            gross: f64::from(order.pencils) / f64::from(GROSS),
            made: made(order.barrel),
        })
        .collect();
    let proposals = proposal::all(question, &uses, &orders);
    CutterPlan {
        uses,
        orders,
        proposals,
    }
}

/// The cheapest way to make a barrel at a pitch with at most so many grooves, over all stocks and all
/// usual ways round; of equals the first.
fn best_use(project: &Project, barrel: &Barrel, pitch: Length, most: u32) -> Option<SetUse> {
    let mut best: Option<SetUse> = None;
    for stock in 0..project.slats.len() {
        for &seam in barrel.shape().seams() {
            let found = use_of(project, barrel, (stock, seam), pitch, most);
            if let Some(found) = found
                && best.is_none_or(|best| found.gross_cost < best.gross_cost)
            {
                best = Some(found);
            }
        }
    }
    best
}

/// A barrel on a stock, a way round, at a pitch with at most so many grooves; nothing where a check
/// fails.
fn use_of(
    project: &Project,
    barrel: &Barrel,
    (stock, seam): (usize, Seam),
    pitch: Length,
    most: u32,
) -> Option<SetUse> {
    let rules = Rules {
        spacing: PitchRule::OfSet(pitch),
        most: Some(most),
        ..project.rules
    };
    let slat = &project.slats[stock];
    let setup = Setup {
        barrel,
        turn: barrel.turn(seam),
        top: slat,
        bottom: slat,
        rules: &rules,
    };
    let layout: Layout = lay_out(&setup);
    let needs = GrossNeeds::of(&setup, &layout)?;
    Some(SetUse {
        stock,
        seam,
        across: layout.across(),
        pencils: layout.pencils(),
        gross_cost: needs.price,
    })
}
