//! One more cutter set, and what it would save.

use super::{CutterQuestion, OrderNow, SetUse, best_use, use_of};
use crate::field::Field;
use crate::project::Project;
use crate::quantity::Length;
use crate::sequence::in_order;

/// A set that could be had.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NewSet {
    /// One that is offered, by its place in the list.
    Offered {
        /// Its place.
        set: usize,
    },
    /// One made to measure.
    MadeToMeasure {
        /// The barrel it is for, by its place in the list.
        barrel: usize,
        /// The closest pitch at which it saves so much.
        pitch: Length,
        /// The largest pitch at which it saves as much: with it the land is widest.
        widest: Length,
        /// Grooves side by side.
        most: u32,
    },
}

/// One more set, and what it would save.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposal {
    /// The set.
    pub set: NewSet,
    /// Its price, in hundredths of the currency.
    pub price: i64,
    /// What it saves in slats over the order book, in hundredths of the currency; never below 0.
    pub saving: f64,
    /// Gross of the order book that no owned set makes and this one would.
    pub newly_served: f64,
    /// How the lines of the order book that it changes would be made.
    pub lines: Vec<(usize, SetUse)>,
}

impl Proposal {
    /// How many times the order book must be made until it has paid for itself; none where it saves
    /// nothing.
    #[must_use]
    pub fn books_to_pay_back(&self) -> Option<f64> {
        (self.saving > 0.0).then(|| self.price as f64 / self.saving)
    }
}

/// Every set that could be had and changes something, the one that saves most first; of equals the
/// one that newly serves most, then the cheaper one.
pub(super) fn all(
    question: &CutterQuestion<'_>,
    uses: &[Vec<Option<SetUse>>],
    orders: &[OrderNow],
) -> Vec<Proposal> {
    let offered = question.sets.iter().enumerate();
    let mut proposals: Vec<Proposal> = offered
        .filter(|(_, set)| set.price() > 0)
        .map(|(at, set)| {
            let by = |barrel: usize| uses[at][barrel];
            proposal(NewSet::Offered { set: at }, set.price(), orders, &by)
        })
        .collect();
    if let Some(price) = question.new_price {
        let ordered = |barrel: &usize| orders.iter().any(|order| order.barrel == *barrel);
        let barrels = (0..question.project.barrels.len()).filter(ordered);
        proposals.extend(barrels.filter_map(|barrel| {
            let (set, made) = made_to_measure(question.project, barrel)?;
            let by = |other: usize| (other == barrel).then_some(made);
            Some(proposal(set, price, orders, &by))
        }));
    }
    proposals.retain(|proposal| !proposal.lines.is_empty());
    in_order(proposals, |one, other| {
        let saving = other.saving.total_cmp(&one.saving);
        let served = other.newly_served.total_cmp(&one.newly_served);
        saving.then(served).then(one.price.cmp(&other.price))
    })
}

/// What a set changes, that makes a barrel in a way.
fn proposal(
    set: NewSet,
    price: i64,
    orders: &[OrderNow],
    by: &dyn Fn(usize) -> Option<SetUse>,
) -> Proposal {
    /// A share of the cost that rounding may make.
    const SLACK: f64 = 1e-12;
    let mut proposal = Proposal {
        set,
        price,
        saving: 0.0,
        newly_served: 0.0,
        lines: Vec::new(),
    };
    for (at, order) in orders.iter().enumerate() {
        let Some(new) = by(order.barrel).filter(|_| order.gross > 0.0) else {
            continue;
        };
        match order.made {
            None => {
                proposal.newly_served += order.gross;
                proposal.lines.push((at, new));
            }
            Some((_, now)) if new.gross_cost < now.gross_cost * (1.0 - SLACK) => {
                proposal.saving += (now.gross_cost - new.gross_cost) * order.gross;
                proposal.lines.push((at, new));
            }
            Some(_) => {}
        }
    }
    proposal
}

/// The set that makes a barrel most cheaply of all pitches a set can have; of equals the closest one.
fn made_to_measure(project: &Project, at: usize) -> Option<(NewSet, SetUse)> {
    let barrel = &project.barrels[at];
    let spec = Field::SetPitch.spec();
    let range = spec.least..=spec.most;
    let most = Field::SetMost.spec().most as u32;
    let closest = barrel.shape().seams().iter().map(|&seam| {
        let width = barrel.bare(barrel.turn(seam)).extents().width();
        let pitch = width + project.rules.land;
        // A pencil narrower than any set is closest at the closest set there is.
        pitch.max(Length::millimetres(spec.least))
    });
    let closest = in_order(closest.collect(), |one: &Length, other| {
        one.in_millimetres().total_cmp(&other.in_millimetres())
    });
    let mut best: Option<(Length, SetUse)> = None;
    for pitch in closest {
        if range.contains(&pitch.in_millimetres())
            && let Some(found) = best_use(project, barrel, pitch, most)
            && best.is_none_or(|(_, best)| found.gross_cost < best.gross_cost)
        {
            best = Some((pitch, found));
        }
    }
    let (pitch, made) = best?;
    let widest = widest(project, at, pitch, &made);
    let set = NewSet::MadeToMeasure {
        barrel: at,
        pitch,
        widest,
        most: made.across,
    };
    Some((set, made))
}

/// The largest pitch at which as many grooves fit: with room r between the outer centres, r/(n − 1).
fn widest(project: &Project, at: usize, pitch: Length, made: &SetUse) -> Length {
    let most = Length::millimetres(Field::SetPitch.spec().most);
    let gaps = made.across.saturating_sub(1);
    if gaps == 0 {
        return most;
    }
    let barrel = &project.barrels[at];
    let width = barrel.bare(barrel.turn(made.seam)).extents().width();
    let room = project.slats[made.stock].guaranteed_width() - project.rules.edge * 2.0 - width;
    let widest = (room / f64::from(gaps)).min(most).max(pitch);
    // Laid once more, so that what is told holds.
    let way = (made.stock, made.seam);
    let holds = use_of(project, barrel, way, widest, made.across)
        .is_some_and(|again| again.across == made.across);
    if holds { widest } else { pitch }
}
