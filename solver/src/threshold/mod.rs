//! What the next pencil costs: for each size of a layout, the nearest values at which the count
//! or a check changes.
//!
//! **What is searched.** A layout answers with atoms, each a yes or no: *at least m lie side by
//! side*, *this check passes*, *the barrel can be made*. Its count and its failed checks follow
//! from them, so between two neighbouring places where an atom turns nothing changes, and it is
//! enough to find where each atom turns.
//!
//! **Why bisection cannot miss one.** Every atom compares margins that rise or fall with an
//! input without ever turning back, so it holds on one side of a single value:
//!
//! - A wider slat has more room and a thicker one more wood; more land, edge or planing
//!   allowance asks for more; a given pitch that grows takes more room and leaves more land; a
//!   larger clearance makes the groove wider and deeper, and opens it.
//! - A larger barrel and a thinner coat make a bare outline that contains the one before: its
//!   extents, its least wall and its chord on the glue plane grow together. Both make a barrel
//!   easier to make, up to the size that its corners or faces allow. This holds for every shape
//!   but a free outline.
//! - A check that is only there at some counts (width, edge, land) is that comparison and one on
//!   the count; the two are followed apart.
//!
//! What can be made is where a few such atoms hold together, an interval round today's value;
//! beyond its end nothing is laid.
//!
//! **Where an atom can turn back.** A rounder corner shrinks a hexagon, but a triangle of given
//! height grows as a whole while its corners are cut off. Its support h in a direction is, with
//! finished size s, corner radius r, coat c (mm) and σ the support of the sharp core of inradius
//! 1, `h = ((s + r)/3 − c)·σ − max(r − c, 0)·(σ − 1)`: straight in r on either side of `r = c`.
//! The range is cut there. The chord on the glue plane may still turn back: outlines whose
//! supports are straight in r make half chords that are concave in r (the mean of two points of
//! two of them lies in the one halfway), so the bond width has one summit on each part.
//!
//! So have the extents of a triangle with bulged faces of radius R. With the corner centres at
//! the distance q from the axis and the face centres at `f = R + r − s + q` behind it, a direction
//! at the angle θ from a face has the support `R − c − f·cos θ` as long as it meets the face, and
//! at the angle α from a corner `q·cos α + r − c` when it meets the corner. The root that makes
//! `6q + 3(R + r − s) = √(12(R − r)² − 3(R + r − s)²)` is concave in r, and f falls with r: the
//! first support rises, the second is concave, and the one runs smoothly into the other. The width
//! is straight and then concave. Below `r = c` the corners of the wood are sharp, and all of it
//! grows with r. The range is cut at the summits of width, both heights and bond width too.
//! (Derived; the bond width of bulged faces is tried out, not proved.)
//!
//! **Free outlines** keep none of this: a larger one need not contain a smaller one, which grows
//! from its centre of area and not from the lead axis, and a coat may part a neck that a thicker
//! coat has eaten away. For the width and the coat of a free outline the way to each end of the
//! range is gone in 200 equal steps, and what differs between two neighbours is bisected. A change
//! that turns back within one step can be missed: of 0.19 mm at most in width, of 0.005 mm in coat.
//!
//! A rounded polygon becomes a circle at one single value, the end of what can be made; what
//! holds only there is not told as a change.

mod gain;
mod input;
#[cfg(test)]
mod premises;
mod search;
#[cfg(test)]
mod tests;

pub use gain::{Gain, GainKind, GainLimits, GainProof, GainStep, PAIR_STEPS, nearest_gains};
pub use input::Input;

use crate::field::Problem;
use crate::layout::{Outcome, Rule};
use crate::project::ProjectDraft;
use search::{Found, Laid, Search};

/// One input of a layout with the nearest values at which something changes.
#[derive(Debug, Clone, PartialEq)]
pub struct Threshold {
    /// The input.
    pub input: Input,
    /// What stands there today, mm.
    pub today: f64,
    /// Changes below today's value, the nearest first: at most one of the count and one of the
    /// checks.
    pub down: Vec<Change>,
    /// Changes above today's value, likewise.
    pub up: Vec<Change>,
}

/// What is different from today at a value of an input.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// The first value at which it is so, to 1e-7 mm: the answer described here holds at it.
    /// Of a free outline, the first that lasts for more than a step, as told at [`thresholds`].
    pub at: f64,
    /// How far that is from today's value, mm; negative below it.
    pub step: f64,
    /// Grooves side by side today, whatever the checks say.
    pub across_before: u32,
    /// Grooves side by side there; 0 where the barrel cannot be made.
    pub across_after: u32,
    /// Pencils from one sandwich today; 0 where a check fails.
    pub pencils_before: u32,
    /// Pencils from one sandwich there; 0 where a check fails or the barrel cannot be made.
    pub pencils_after: u32,
    /// Checks that fail today and not there, or the other way round, with how they come out
    /// there. A check that has nothing left to compare counts as passed.
    pub flipped: Vec<(Rule, Outcome)>,
    /// Whether the barrel cannot be made there.
    pub unmade: bool,
    /// What it saves; nothing where no pencil is made today or there.
    pub worth: Option<Worth>,
}

/// Price of slats saved by a change, at unchanged prices; negative where it costs more.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worth {
    /// For a gross of pencils, in hundredths of the currency.
    pub per_gross: f64,
    /// For the gross of a year, in hundredths of the currency.
    pub per_year: f64,
}

/// The thresholds of every input of the layout that is looked at, in the order of the table:
/// slats, rules, barrel. `year_gross` is how many gross are made in a year.
///
/// Each is found to 1e-7 mm within the range of its field, for the outline as it is computed: an
/// oval or a curve is made of arcs within a millionth of its width, and where a coat parts a free
/// outline is known to 1e-5 mm. Along the width and the coat of a free outline a change that turns
/// back within a two-hundredth of the way to the end of the range can be missed. Both slats are
/// one input where they are one stock.
///
/// # Errors
/// What stands in the way of the layout of today, as [`ProjectDraft::check_layout`].
///
/// ```
/// # use solver::{BarrelDraft, Entry, Id, LayoutDraft, ProjectDraft, RulesDraft, Seam, Shape, SlatDraft, Typed, Way};
/// use solver::{Field, thresholds};
/// # let project = ProjectDraft {
/// #     name: String::new(),
/// #     barrels: vec![Entry { id: Id(1), draft: BarrelDraft::new("Office", Shape::Hexagonal) }],
/// #     slats: vec![Entry { id: Id(2), draft: SlatDraft::new("74 × 5") }],
/// #     rules: RulesDraft::new(),
/// #     layout: LayoutDraft { barrel: Id(1), top: Id(2), bottom: Id(2), way: Way::Usual(Seam::ThroughFaces), turn: Typed::Number(0.0), accuracy: Id(0) },
/// #     orders: Vec::new(),
/// #     species: Vec::new(),
/// #     conditions: solver::ConditionsDraft::new(),
/// #     cutter_sets: Vec::new(),
/// #     search: solver::SearchDraft::new(),
/// #     saw_shop: solver::SawShopDraft::new(),
/// #     heads: [const { solver::HeadDraft::new() }; 3],
/// #     cut: solver::CutDraft::new(),
/// #     run: solver::RunDraft::new(), supply: solver::SupplyDraft::new(),
/// #     title_block: solver::TitleBlock::new(), set_aside: None,
/// #     accuracies: Vec::new(),
/// # };
/// // Ten hexagons of 6.84 mm bare at a land of 0.4 mm: the eleventh asks for 7.24 mm more slat.
/// let table = thresholds(&project, 5000.0).unwrap();
/// let width = table.iter().find(|row| row.input.field == Field::SlatWidth).unwrap();
/// assert_eq!((width.up[0].pencils_before, width.up[0].pencils_after), (10, 11));
/// assert!((width.up[0].at - 81.24).abs() < 1e-6);
/// ```
pub fn thresholds(project: &ProjectDraft, year_gross: f64) -> Result<Vec<Threshold>, Vec<Problem>> {
    let today = Laid::new(project.check_layout()?);
    let mut draft = project.clone();
    let inputs = Input::of_layout(project, today.parts());
    let threshold = |input: Input| {
        // A size of a layout that can be laid out reads as a number.
        let value = input.typed_mut(&mut draft)?.read(input.field).ok()?;
        let spec = input.field.spec();
        let mut search = Search::new(&mut draft, input, value, &today);
        let [down, up] = [spec.least, spec.most].map(|bound| {
            let found = search.towards(bound);
            first_of_each(&found, value, &today, year_gross)
        });
        search.put_back();
        Some(Threshold {
            input,
            today: value,
            down,
            up,
        })
    };
    Ok(inputs.into_iter().filter_map(threshold).collect())
}

/// The first change of the count and the first of the checks, told once where they are one.
fn first_of_each(found: &[Found], today: f64, before: &Laid, year_gross: f64) -> Vec<Change> {
    let counted = found.iter().position(|found| found.changes_count(before));
    let checked = found.iter().position(|found| found.changes_checks(before));
    let mut firsts: Vec<usize> = counted.into_iter().chain(checked).collect();
    firsts.sort_unstable();
    firsts.dedup();
    let change = |k: usize| Change::new(&found[k], today, before, year_gross);
    firsts.into_iter().map(change).collect()
}

impl Change {
    fn new(found: &Found, today: f64, before: &Laid, year_gross: f64) -> Self {
        let after = found.laid.as_ref();
        let prices = before
            .price_of_gross()
            .zip(after.and_then(Laid::price_of_gross));
        Self {
            at: found.at,
            step: found.at - today,
            across_before: before.layout().across(),
            across_after: after.map_or(0, |after| after.layout().across()),
            pencils_before: before.layout().pencils(),
            pencils_after: after.map_or(0, |after| after.layout().pencils()),
            flipped: after.map_or_else(Vec::new, |after| before.flipped(after)),
            unmade: after.is_none(),
            worth: prices.map(|(before, after)| Worth {
                per_gross: before - after,
                per_year: (before - after) * year_gross,
            }),
        }
    }
}
