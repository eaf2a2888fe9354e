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

mod heights;
mod pareto;
mod room;
#[cfg(test)]
mod tests;
mod turns;
mod verify;
mod wave;

use crate::barrel::Barrel;
use crate::cutter_set::CutterSet;
use crate::layout::{self, Check, Outcome, Setup, lay_out};
use crate::quantity::{Angle, Length, Volume, lesser};
use crate::ranking::GROSS;
use crate::rules::{PitchRule, Rules};
use crate::search_rules::{Pairs, SearchRules, Turns};
use crate::sequence::in_order;
use crate::slat::Slat;
use heights::Heights;
use room::{Lie, Pitches, Room};
use turns::{Choice, Range};

/// What is to be laid, and from what may be chosen.
#[derive(Debug, Clone, Copy)]
pub struct Question<'a> {
    /// The pencil.
    pub barrel: &'a Barrel,
    /// The stocks.
    pub slats: &'a [Slat],
    /// The cutter sets that fit the barrel.
    pub sets: &'a [CutterSet],
    /// The machining rules; spacing, axis height and the cap on the count are searched or taken as said below.
    pub rules: &'a Rules,
    /// How far the search goes.
    pub search: &'a SearchRules,
}

/// What makes one layout better than another; equals go by the order given, then by the order of the
/// lists.
///
/// Wood and money are equal to the least of all where they exceed it by no more than one part in
/// 10¹², margins where they miss the widest by no more than [`Length::SLACK`]: rounding makes as much.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Goal {
    /// Most pencils from a sandwich; then least wood, least money, widest margin.
    Pencils,
    /// Least wood bought for a gross; then least money, widest margin.
    Wood,
    /// Least money for a gross; then least wood, widest margin.
    Money,
    /// Widest margin for error; then least wood, least money.
    Margin,
}

impl Goal {
    /// Every goal.
    pub const ALL: [Self; 4] = [Self::Pencils, Self::Wood, Self::Money, Self::Margin];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Pencils => "Most pencils",
            Self::Wood => "Least wood",
            Self::Money => "Least money",
            Self::Margin => "Widest margin",
        }
    }
}

/// A layout that was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Found {
    /// The stock above the glue plane, by its place in the list.
    pub top: usize,
    /// The stock below the glue plane.
    pub bottom: usize,
    /// The cutter set, by its place in the list; none for a new one.
    pub set: Option<usize>,
    /// The turn of the barrel, from its drawn position.
    pub turn: Angle,
    /// Height of the lead axis above the glue plane.
    pub axis_height: Length,
    /// Distance between groove centres.
    pub pitch: Length,
    /// Pencils side by side.
    pub across: u32,
    /// Pencils from one sandwich.
    pub pencils: u32,
    /// The least margin of edge, land, thicknesses and floors: by so much each of them may be off.
    pub margin: Length,
    /// Wood bought for a gross of good pencils.
    pub wood: Volume,
    /// Price of that wood, and of a cutter set still to be paid spread over the gross of a year, in
    /// hundredths of the currency.
    pub money: f64,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// All that are best under each goal, in the order of [`Goal::ALL`]; empty when nothing fits.
    pub best: [Vec<Found>; 4],
    /// The layouts of which none has both less wood and a wider margin, least wood first.
    pub frontier: Vec<Found>,
    /// Pairs of slats with cutter sets that were compared.
    pub compared: usize,
    /// Why nothing fits, when nothing does.
    pub obstacle: Option<Obstacle>,
}

/// Why nothing fits.
#[derive(Debug, Clone, PartialEq)]
pub enum Obstacle {
    /// There is no slat stock.
    NoSlats,
    /// No cutter set fits the barrel, and none may be bought.
    NoCutters,
    /// The pair that comes nearest fails these checks, at its best turn or else as drawn.
    Nearest {
        /// The stock above the glue plane.
        top: usize,
        /// The stock below the glue plane.
        bottom: usize,
        /// The checks that fail.
        checks: Vec<Check>,
    },
}

impl Found {
    /// The rules that lay this layout.
    #[must_use]
    pub fn rules(&self, rules: &Rules) -> Rules {
        Rules {
            spacing: PitchRule::Given(self.pitch),
            most: Some(self.across),
            axis_height: self.axis_height,
            ..*rules
        }
    }
}

/// A pair of slats with a cutter set, and the most pencils it gives.
#[derive(Debug, Clone, Copy)]
struct Choosable {
    top: usize,
    bottom: usize,
    /// The place of the set; the number of sets for a new one.
    set: usize,
    most: u32,
    /// Pencils in the length of the slats.
    lengths: u32,
    /// Narrowest width at which the pencil fits, mm.
    narrowest: f64,
    /// Widest margin upright, mm.
    upright: f64,
    /// Wood of a sandwich over the good pencils of one groove row, times a gross, mm³.
    wood: f64,
    money: f64,
    fee: f64,
}

/// Finds all that are best under each goal, and the frontier of wood and margin.
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
///     &Question { barrel: &barrel, slats: &slats, sets: &[], rules: &rules, search: &draft.check().unwrap() },
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
    let best = Goal::ALL.map(|goal| pareto::best(&field, &choices, goal, &frontier));
    Answer {
        best,
        frontier: frontier.into_iter().map(|group| group.found).collect(),
        compared,
        obstacle: None,
    }
}

impl Answer {
    fn nothing(compared: usize, obstacle: Obstacle) -> Self {
        Self {
            best: [const { Vec::new() }; 4],
            frontier: Vec::new(),
            compared,
            obstacle: Some(obstacle),
        }
    }
}

/// What all pairs of slats share.
struct Field<'a> {
    question: &'a Question<'a>,
    ranges: Vec<Range>,
    /// The same ranges by their least width.
    narrow_first: Vec<Range>,
    groove: Length,
    /// The pitches of every set, and those of a new one where it may be bought.
    pitches: Vec<Pitches>,
}

impl<'a> Field<'a> {
    fn new(question: &'a Question<'a>) -> Self {
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
        }
    }

    fn pairs(&self) -> impl Iterator<Item = (usize, usize)> + use<'a> {
        let (count, any) = (
            self.question.slats.len(),
            self.question.search.pairs == Pairs::Any,
        );
        (0..count)
            .flat_map(move |top| (0..count).map(move |bottom| (top, bottom)))
            .filter(move |(top, bottom)| any || top == bottom)
    }

    /// The places of the sets, one more where a new one may be bought.
    fn set_places(&self) -> std::ops::Range<usize> {
        0..self.pitches.len()
    }

    fn room(&self, top: usize, bottom: usize) -> Room {
        let Question { slats, rules, .. } = self.question;
        Room::new(&slats[top], &slats[bottom], self.groove, rules)
    }

    /// Every pair with every set that gives at least one pencil.
    fn choices(&self, each: &mut dyn FnMut(usize, usize)) -> Vec<Choosable> {
        let Question {
            barrel,
            slats,
            sets,
            rules,
            search,
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
            let good =
                (1.0 - rules.pencil_rejects) * (1.0 - rules.slat_rejects) * f64::from(lengths);
            let per_gross = f64::from(GROSS) / good;
            let wood =
                (slats[top].volume() + slats[bottom].volume()).in_cubic_millimetres() * per_gross;
            let price =
                |slat: &Slat| slat.supply().pack_price as f64 / f64::from(slat.supply().pack_slats);
            let money = (price(&slats[top]) + price(&slats[bottom])) * per_gross;
            for set in self.set_places() {
                let owned = sets.get(set);
                let cap = [rules.most, owned.map(CutterSet::most)]
                    .into_iter()
                    .flatten()
                    .min();
                let most = room
                    .most_across(narrowest, self.pitches[set])
                    .min(cap.unwrap_or(u32::MAX));
                let fee = owned.map_or(search.new_set_price.unwrap_or(0), CutterSet::price);
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
                        fee: fee as f64 / search.year_gross,
                    });
                }
            }
        }
        choices
    }

    /// A choice with so many pencils across, laid with the widest margin; nothing where that is
    /// less than `floor`, mm.
    fn lay(&self, choice: &Choosable, across: u32, floor: f64) -> Option<Found> {
        let room = self.room(choice.top, choice.bottom);
        let pitches = self.pitches[choice.set];
        let Lie {
            turn,
            margin,
            axis_height,
            width,
        } = room.best(&self.ranges, across, pitches, floor)?;
        Some(Found {
            top: choice.top,
            bottom: choice.bottom,
            set: (choice.set < self.question.sets.len()).then_some(choice.set),
            turn,
            axis_height: Length::millimetres(axis_height),
            pitch: Length::millimetres(room.pitch(width, across, pitches)),
            across,
            pencils: across * choice.lengths,
            margin: Length::millimetres(margin.max(0.0)),
            wood: Volume::cubic_millimetres(choice.wood_with(across)),
            money: choice.money_with(across),
        })
    }

    /// The pair that comes nearest to holding one pencil, and what it fails.
    fn nearest(&self) -> Obstacle {
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

impl Choosable {
    const fn pair(&self) -> (usize, usize) {
        (self.top, self.bottom)
    }

    fn wood_with(&self, across: u32) -> f64 {
        self.wood / f64::from(across)
    }

    fn money_with(&self, across: u32) -> f64 {
        self.money / f64::from(across) + self.fee
    }

    /// No margin with so many pencils is wider than this, mm.
    fn bound(&self, room: &Room, across: u32, pitches: Pitches) -> f64 {
        lesser(
            room.bound_across(self.narrowest, across, pitches),
            self.upright,
        )
    }
}
