//! The least money for a gross of the pencils that errors leave good.
//!
//! The same layouts are searched as under the other goals, with every number of pencils across. A
//! layout that keeps its wall check has a good pencil inside the row with one chance q, whatever its
//! pair, set, pitch, turn or height of the axis: a lead within the eccentricity limit has its wall, and
//! the errors lie along the axes of the machine, not of the pencil. An outer pencil may reach over an
//! edge too, and the more wood lies outside it, the less often. So of a pair, a set and a number
//! across nothing is better than the narrowest width at the closest pitch, which leaves the most wood
//! outside: `(W − (n − 1)·p − w)/2`. That one layout is known exactly, and its good pencils are sums of
//! integrals ([`Goodness`]), exact for the expectation under the model of the errors. No dice are
//! thrown and nothing is sampled.
//!
//! Money falls with good pencils, and these lie between bounds that take no integral over the edges. So
//! what costs more at its upper bound than another at its lower one cannot be best; the others are
//! looked at exactly, the least at their upper bound first, until none can be better.
//!
//! Among equals the layout with the widest margin is taken where it costs as little as the tightest,
//! otherwise the tightest.

use super::choosable::Choosable;
use super::field::Field;
use super::pareto::{least_of, with_equals};
use super::room::SLACK;
use super::{Found, Question};
use crate::accuracy::Accuracy;
use crate::quantity::{Length, lesser};
use crate::sequence::in_order;
use crate::tolerance::{Edges, Goodness};
use std::cell::RefCell;

/// The share by which equal money for good pencils may differ.
const SAME: f64 = 1e-6;

/// Good pencils of rows on pairs of slats.
pub(super) struct Sound<'a> {
    question: &'a Question<'a>,
    accuracy: &'a Accuracy,
    goodness: Goodness,
    /// What was worked out, by count and edges.
    known: RefCell<Vec<(u32, Edges, f64)>>,
}

impl<'a> Sound<'a> {
    pub(super) fn new(question: &'a Question<'a>, accuracy: &'a Accuracy) -> Self {
        Self {
            question,
            accuracy,
            goodness: Goodness::of(question.barrel, question.rules, accuracy),
            known: RefCell::new(Vec::new()),
        }
    }

    /// Expected good pencils side by side.
    pub(super) fn good(&self, pair: (usize, usize), across: u32, pitch: f64, width: f64) -> f64 {
        let edges = self.edges(pair, across, pitch, width);
        let mut known = self.known.borrow_mut();
        let same = known.iter().find(|one| (one.0, one.1) == (across, edges));
        if let Some((.., good)) = same {
            return *good;
        }
        let good = self.goodness.of_row(across, edges);
        known.push((across, edges, good));
        good
    }

    fn edges(&self, (top, bottom): (usize, usize), across: u32, pitch: f64, width: f64) -> Edges {
        let slats = self.question.slats;
        let offsets = self.accuracy.offsets();
        let guaranteed = slats[top]
            .guaranteed_width()
            .min(slats[bottom].guaranteed_width());
        let gaps = f64::from(across.saturating_sub(1));
        let taken = Length::millimetres(gaps * pitch + width);
        let datum = (guaranteed - taken) / 2.0;
        let far = guaranteed - datum;
        Edges {
            datum: datum.in_millimetres(),
            bottom: (slats[bottom].grooved_width() + offsets.bottom_width - far).in_millimetres(),
            top: (slats[top].grooved_width() + offsets.top_width - far).in_millimetres(),
        }
    }
}

/// A choice with a number of pencils across, and the least money that it may take.
struct Offer<'a> {
    /// Where it comes by the order of the lists.
    place: usize,
    choice: &'a Choosable,
    across: u32,
    pitch: f64,
    least: f64,
}

/// All that take the least money for a gross of good pencils.
pub(super) fn best(field: &Field<'_>, choices: &[Choosable]) -> Vec<Found> {
    let Some(sound) = &field.sound else {
        return Vec::new();
    };
    let exact = |offer: &Offer<'_>| {
        let Offer {
            choice,
            across,
            pitch,
            ..
        } = *offer;
        let good = sound.good(choice.pair(), across, pitch, choice.narrowest);
        choice.money_for_good(good)
    };
    let mut lowest = f64::INFINITY;
    let mut equals: Vec<(f64, Offer<'_>)> = Vec::new();
    for offer in offers(field, sound, choices) {
        if offer.least > lowest * (1.0 + SAME) {
            break;
        }
        let money = exact(&offer);
        lowest = lesser(lowest, money);
        if money.is_finite() {
            equals.push((money, offer));
        }
    }
    let limit = lowest * (1.0 + SAME);
    equals.retain(|(money, _)| *money <= limit);
    // Equals come in the order of the lists.
    let equals = in_order(equals, |(_, one), (_, other)| one.place.cmp(&other.place));
    let equals: Vec<Offer<'_>> = equals.into_iter().map(|(_, offer)| offer).collect();
    let wood = |offer: &&Offer<'_>| offer.choice.wood_with(offer.across);
    let laid: Vec<Found> = least_of(equals.iter(), wood, with_equals)
        .into_iter()
        .filter_map(|offer| {
            let widest = field.lay(offer.choice, offer.across, f64::NEG_INFINITY);
            widest
                .map(|found| field.with_good(found))
                .filter(|found| found.good_money.is_some_and(|money| money <= limit))
                .or_else(|| field.lay_tightest(offer.choice, offer.across))
        })
        .collect();
    let narrowness = |found: &Found| -found.margin.in_millimetres();
    least_of(laid.into_iter(), narrowness, |least| least + SLACK)
}

/// Every choice with every number across that may be best, the least money that it may take first.
fn offers<'a>(field: &Field<'_>, sound: &Sound<'_>, choices: &'a [Choosable]) -> Vec<Offer<'a>> {
    let inside = sound.goodness.inside();
    let mut lowest = f64::INFINITY;
    let mut offers = Vec::new();
    for choice in choices {
        let room = field.room(choice.top, choice.bottom);
        let pitch = room.closest(choice.narrowest, field.pitches[choice.set]);
        for across in (1..=choice.most).rev() {
            // Fewer are no better than this either.
            let at_best = choice.money_for_good(inside * f64::from(across));
            if at_best > lowest * (1.0 + SAME) {
                break;
            }
            let edges = sound.edges(choice.pair(), across, pitch, choice.narrowest);
            let (fewest, most) = sound.goodness.bounds_of_row(across, edges);
            let [most_money, least] = [fewest, most].map(|good| choice.money_for_good(good));
            lowest = lesser(lowest, most_money);
            if least <= lowest * (1.0 + SAME) {
                offers.push(Offer {
                    place: offers.len(),
                    choice,
                    across,
                    pitch,
                    least,
                });
            }
        }
    }
    offers.retain(|offer| offer.least <= lowest * (1.0 + SAME));
    in_order(offers, |one, other| one.least.total_cmp(&other.least))
}
