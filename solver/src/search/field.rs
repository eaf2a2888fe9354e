//! What all pairs of slats share, and what can be laid on each.

use super::choosable::Choosable;
use super::found::{Found, Obstacle};
use super::heights::Heights;
use super::question::Question;
use super::room::{Lie, Pitches, Room};
use super::sound::Sound;
use super::turns::{self, Choice, Range};
use crate::cutter_set::CutterSet;
use crate::layout::{self, Outcome, Setup, lay_out};
use crate::quantity::{Angle, Length, Volume};
use crate::ranking::GROSS;
use crate::rules::{PitchRule, Rules};
use crate::search_rules::{Pairs, Turns};
use crate::sequence::in_order;

/// What all pairs of slats share.
pub(super) struct Field<'a> {
    question: &'a Question<'a>,
    pub(super) ranges: Vec<Range>,
    /// The same ranges by their least width.
    pub(super) narrow_first: Vec<Range>,
    groove: Length,
    /// The pitches of every set, and those of a new one where it may be bought.
    pub(super) pitches: Vec<Pitches>,
    /// Good pencils, where the errors are known.
    pub(super) sound: Option<Sound<'a>>,
}

impl<'a> Field<'a> {
    pub(super) fn new(question: &'a Question<'a>) -> Self {
        let Question {
            barrel,
            rules,
            search,
            ..
        } = *question;
        let wood = barrel.bare(Angle::ZERO);
        let groove = barrel.lead_diameter() / 2.0 + rules.clearance;
        let usual = barrel.usual_turns();
        let choice = match search.turns {
            Turns::Usual => Choice::These(&usual),
            Turns::Any => Choice::Every {
                period: barrel.period().in_degrees(),
                usual: &usual,
            },
        };
        // What no turn and no slat changes.
        let wall = rules
            .wall
            .fits_in(wood.least_distance() - groove - rules.eccentricity);
        let ranges = if wall {
            let heights = Heights::new(&wood, groove, rules, search.axis);
            turns::ranges(&wood, &choice, rules.relief, &heights)
        } else {
            Vec::new()
        };
        let owned = question.sets.iter().map(|set| Pitches::only(set.pitch()));
        let bought = search.new_set_price.map(|_| Pitches::typed());
        let pitches = owned.chain(bought).collect();
        let narrow_first = in_order(ranges.clone(), |one, other| {
            one.least.width.total_cmp(&other.least.width)
        });
        Self {
            question,
            ranges,
            narrow_first,
            groove,
            pitches,
            sound: question
                .accuracy
                .map(|accuracy| Sound::new(question, accuracy)),
        }
    }

    pub(super) fn pairs(&self) -> impl Iterator<Item = (usize, usize)> + use<'a> {
        let (count, any) = (
            self.question.slats.len(),
            self.question.search.pairs == Pairs::Any,
        );
        (0..count)
            .flat_map(move |top| (0..count).map(move |bottom| (top, bottom)))
            .filter(move |(top, bottom)| any || top == bottom)
    }

    /// The places of the sets, one more where a new one may be bought.
    pub(super) fn set_places(&self) -> std::ops::Range<usize> {
        0..self.pitches.len()
    }

    pub(super) fn room(&self, top: usize, bottom: usize) -> Room {
        let Question { slats, rules, .. } = self.question;
        Room::new(&slats[top], &slats[bottom], self.groove, rules)
    }

    /// Every pair with every set that gives at least one pencil.
    pub(super) fn choices(&self, each: &mut dyn FnMut(usize, usize)) -> Vec<Choosable> {
        let Question {
            barrel,
            slats,
            sets,
            rules,
            ..
        } = *self.question;
        let of = self.pairs().count();
        let mut choices = Vec::new();
        for (done, (top, bottom)) in self.pairs().enumerate() {
            each(done + 1, of);
            let length = slats[top].length().min(slats[bottom].length());
            let long_enough = (barrel.length() + rules.end_trim * 2.0).fits_in(length);
            let lengths = layout::lengths(barrel.length(), length, rules);
            let room = self.room(top, bottom);
            let Some(narrowest) = room.narrowest(&self.narrow_first).filter(|_| long_enough) else {
                continue;
            };
            let upright = room.widest_upright(&self.ranges).unwrap_or(0.0);
            let per_gross = f64::from(GROSS) / (rules.good_share() * f64::from(lengths));
            let wood =
                (slats[top].volume() + slats[bottom].volume()).in_cubic_millimetres() * per_gross;
            let sandwich = slats[top].supply().slat_price() + slats[bottom].supply().slat_price();
            let money = sandwich * per_gross;
            let money_good = money * (1.0 - rules.pencil_rejects);
            for set in self.set_places() {
                let owned = sets.get(set);
                let cap = [rules.most, owned.map(CutterSet::most)]
                    .into_iter()
                    .flatten()
                    .min();
                let most = room
                    .most_across(narrowest, self.pitches[set])
                    .min(cap.unwrap_or(u32::MAX));
                if most > 0 {
                    choices.push(Choosable {
                        top,
                        bottom,
                        set,
                        most,
                        lengths,
                        narrowest,
                        upright,
                        wood,
                        money,
                        money_good,
                        fee: self.fee(owned.map(|_| set)),
                    });
                }
            }
        }
        choices
    }

    /// A choice with so many pencils across, laid with the widest margin; nothing where that is
    /// less than `floor`, mm.
    pub(super) fn lay(&self, choice: &Choosable, across: u32, floor: f64) -> Option<Found> {
        let room = self.room(choice.top, choice.bottom);
        let pitches = self.pitches[choice.set];
        let lie = room.best(&self.ranges, across, pitches, floor)?;
        let pitch = room.pitch(lie.width, across, pitches);
        Some(self.found(choice, across, pitch, lie))
    }

    /// A choice with so many pencils across, laid with the most wood outside the outer ones.
    pub(super) fn lay_tightest(&self, choice: &Choosable, across: u32) -> Option<Found> {
        let room = self.room(choice.top, choice.bottom);
        let pitches = self.pitches[choice.set];
        let lie = room.tightest(&self.narrow_first, choice.narrowest, across, pitches)?;
        let pitch = room.closest(lie.width, pitches);
        Some(self.found(choice, across, pitch, lie))
    }

    fn found(&self, choice: &Choosable, across: u32, pitch: f64, lie: Lie) -> Found {
        let Lie {
            turn,
            margin,
            axis_height,
            ..
        } = lie;
        Found {
            top: choice.top,
            bottom: choice.bottom,
            set: (choice.set < self.question.sets.len()).then_some(choice.set),
            turn,
            axis_height: Length::millimetres(axis_height),
            pitch: Length::millimetres(pitch),
            across,
            pencils: across * choice.lengths,
            margin: Length::millimetres(margin.max(0.0)),
            wood: Volume::cubic_millimetres(choice.wood_with(across)),
            money: choice.money_with(across),
            good: None,
            good_money: None,
        }
    }

    /// A layout with its good pencils, where the errors are known.
    pub(super) fn with_good(&self, found: Found) -> Found {
        let Some(sound) = &self.sound else {
            return found;
        };
        let width = self.question.barrel.bare(found.turn).extents().width();
        let pair = (found.top, found.bottom);
        let good = sound.good(
            pair,
            found.across,
            found.pitch.in_millimetres(),
            width.in_millimetres(),
        );
        let fee = self.fee(found.set);
        let kept = (1.0 - self.question.rules.pencil_rejects) * f64::from(found.across);
        Found {
            good: Some(good * f64::from(found.pencils / found.across.max(1))),
            // So few may be good that no amount is left that can be counted.
            good_money: Some((found.money - fee) * kept / good + fee)
                .filter(|money| money.is_finite()),
            ..found
        }
    }

    /// What a cutter set still costs for a gross, in hundredths.
    fn fee(&self, set: Option<usize>) -> f64 {
        let Question { sets, search, .. } = *self.question;
        let price = set.map_or(search.new_set_price, |set| {
            sets.get(set).map(CutterSet::price)
        });
        price.unwrap_or(0) as f64 / search.year_gross
    }

    /// The pair that comes nearest to holding one pencil, and what it fails.
    pub(super) fn nearest(&self) -> Obstacle {
        let Question {
            barrel,
            slats,
            rules,
            ..
        } = *self.question;
        let usual = barrel.usual_turns();
        let mut best: Option<(f64, usize, usize, Lie)> = None;
        for (top, bottom) in self.pairs() {
            let room = self.room(top, bottom);
            if let Some(lie) = room.best(&self.ranges, 1, Pitches::typed(), f64::NEG_INFINITY)
                && best.is_none_or(|(margin, ..)| lie.margin > margin)
            {
                best = Some((lie.margin, top, bottom, lie));
            }
        }
        let (top, bottom, turn, axis_height) = best.map_or_else(
            || {
                (
                    0,
                    0,
                    usual.first().copied().unwrap_or(Angle::ZERO),
                    rules.axis_height,
                )
            },
            |(_, top, bottom, lie)| (top, bottom, lie.turn, Length::millimetres(lie.axis_height)),
        );
        let rules = Rules {
            spacing: PitchRule::Closest,
            most: Some(1),
            axis_height,
            ..*rules
        };
        let setup = Setup {
            barrel,
            turn,
            top: &slats[top],
            bottom: &slats[bottom],
            rules: &rules,
        };
        let mut checks = lay_out(&setup).checks().to_vec();
        checks.retain(|check| check.outcome == Outcome::Failed);
        Obstacle::Nearest {
            top,
            bottom,
            checks,
        }
    }
}
