//! The best layouts of one barrel over every pair of slats, cutter set, turn and height of the axis.
//!
//! Nothing is sampled. Of a pair of slats and a cutter set the number of pencils, the wood and the
//! money depend on the turn only through the width of the wood, and more pencils are never worse;
//! so the narrowest width at which the pencil fits the slats decides them (`Room::narrowest`). The
//! margin for error is the least of some sinusoids of the turn, once the height of the axis and
//! the share of spare width have been taken at their best in closed form (`Room::best`), between
//! turns at which another corner of the outline comes to the fore or a check flips (`turns::ranges`).
//!
//! The axis is searched over |a| ≤ ρ, so that grooves stay open, as far as the seam keeps its least
//! bond width (`Heights`). At the usual turns, and on outlines without hollows at the ends of all
//! ranges, that is every height at which the bond holds. Within a range of turns it is every height
//! at which the bond holds over the whole range, and the level axis and the height in the rules
//! wherever they hold. So what is left out are, where the bond is so wide that it decides, heights at
//! a turn within a range that do not hold at all of its turns; and on outlines with hollows, at other
//! than usual turns, heights that do not hold at every turn, but for the level one and the one in the
//! rules. Nothing is worse for asking for any height rather than the one in the rules.

mod choosable;
mod field;
mod found;
mod heights;
mod pareto;
mod question;
mod room;
mod sound;
#[cfg(test)]
mod tests;
mod turns;
mod verify;
mod wave;

pub use found::{Answer, Found, Obstacle};
pub use question::{Goal, Question};

use field::Field;

/// Finds all that are best under each goal, and the frontier of wood and margin. Without the errors of
/// a line of machines nothing is told under [`Goal::Good`].
///
/// `each` hears how many pairs of slats of how many are done.
///
/// ```
/// use solver::{AxisChoice, BarrelDraft, Goal, Pairs, Question, RulesDraft, SearchDraft, Shape, SlatDraft, Turns, search};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slats = [SlatDraft::new("74 × 5").check().unwrap()];
/// let rules = RulesDraft::new().check().unwrap();
/// let mut draft = SearchDraft::new();
/// draft.turns = Turns::Usual;
/// draft.new_set_price = solver::Typed::Number(0.0);
/// let found = search(
///     &Question { barrel: &barrel, slats: &slats, sets: &[], rules: &rules, search: &draft.check().unwrap(), accuracy: None },
///     &mut |_, _| (),
/// );
/// assert_eq!(found.best[Goal::Pencils as usize][0].pencils, 10);
/// ```
#[must_use]
pub fn search(question: &Question<'_>, each: &mut dyn FnMut(usize, usize)) -> Answer {
    let Question {
        slats,
        sets,
        search,
        ..
    } = *question;
    if slats.is_empty() {
        return Answer::nothing(0, Obstacle::NoSlats);
    }
    if sets.is_empty() && search.new_set_price.is_none() {
        return Answer::nothing(0, Obstacle::NoCutters);
    }
    let field = Field::new(question);
    let choices = field.choices(each);
    let compared = field.pairs().count() * field.set_places().count();
    if choices.is_empty() {
        return Answer::nothing(compared, field.nearest());
    }
    let frontier = pareto::frontier(&field, &choices);
    let with_good = |found: Vec<Found>| {
        found
            .into_iter()
            .map(|found| field.with_good(found))
            .collect()
    };
    let best = Goal::ALL.map(|goal| with_good(pareto::best(&field, &choices, goal, &frontier)));
    Answer {
        best,
        frontier: with_good(frontier.into_iter().map(|step| step.found).collect()),
        compared,
        obstacle: None,
    }
}
