//! Where the answers of a layout turn as one input moves away from today's value.

use super::Input;
use crate::field::{Field, Typed};
use crate::layout::{Check, Layout, Outcome, Rule, lay_out};
use crate::project::{LayoutParts, ProjectDraft};
use crate::ranking::GROSS;
use crate::sequence::in_order;
use crate::shape::Shape;

/// How near the two sides of a turn are brought, mm: far below what a shop can set, and far above
/// the rounding that a comparison forgives.
const BRACKET: f64 = 1e-7;
/// The steps of round values, mm: a value that a step meets within the bracket is told as that.
const ROUND: f64 = 1e-4;
/// The steps from today's value to the end of the range of a field in which the turns of a free
/// outline are looked for. What turns and turns back within one step is missed.
const STEPS: u32 = 200;
/// How much of a bracket is kept in a step towards a summit: the golden section.
const GOLDEN: f64 = 0.618_033_988_749_894_9;
/// Below every bond width, mm: where the glue plane misses the pencil.
const MISSED: f64 = 1e3;

/// Something a layout answers with yes or no.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Atom {
    /// At least so many lie side by side.
    AtLeast(u32),
    /// A check does not fail.
    Passes(Rule),
}

/// A layout with the parts it was made of.
#[derive(Debug, Clone)]
pub(super) struct Laid {
    parts: LayoutParts,
    layout: Layout,
}

/// A value that was looked at, and what is laid there; nothing where the barrel cannot be made.
#[derive(Debug)]
pub(super) struct Found {
    pub(super) at: f64,
    pub(super) laid: Option<Laid>,
}

/// The search along one input of a project.
#[derive(Debug)]
pub(super) struct Search<'a> {
    draft: &'a mut ProjectDraft,
    input: Input,
    today: f64,
    before: &'a Laid,
}

impl Laid {
    pub(super) fn new(parts: LayoutParts) -> Self {
        let layout = lay_out(&parts.setup());
        Self { parts, layout }
    }

    pub(super) const fn parts(&self) -> &LayoutParts {
        &self.parts
    }

    pub(super) const fn layout(&self) -> &Layout {
        &self.layout
    }

    /// Price of the slats of a gross of good pencils, in hundredths of the currency, where pencils
    /// are made.
    pub(super) fn price_of_gross(&self) -> Option<f64> {
        let pencils = self.layout.pencils();
        let LayoutParts { top, bottom, .. } = &self.parts;
        let sandwich = top.supply().slat_price() + bottom.supply().slat_price();
        let good = f64::from(pencils) * self.parts.rules.good_share();
        (pencils > 0).then(|| sandwich * f64::from(GROSS) / good)
    }

    /// The checks that come out differently in another layout, with how they do there.
    pub(super) fn flipped(&self, after: &Self) -> Vec<(Rule, Outcome)> {
        let there = after
            .layout
            .checks()
            .iter()
            .filter(|check| self.fails(check.rule) != (check.outcome == Outcome::Failed))
            .map(|check| (check.rule, check.outcome));
        let gone = self
            .layout
            .checks()
            .iter()
            .filter(|check| check.outcome == Outcome::Failed && after.check(check.rule).is_none())
            .map(|check| (check.rule, Outcome::Passed));
        there.chain(gone).collect()
    }

    fn check(&self, rule: Rule) -> Option<&Check> {
        self.layout.checks().iter().find(|check| check.rule == rule)
    }

    fn fails(&self, rule: Rule) -> bool {
        self.check(rule)
            .is_some_and(|check| check.outcome == Outcome::Failed)
    }

    fn holds(&self, atom: Atom) -> bool {
        match atom {
            Atom::AtLeast(count) => self.layout.across() >= count,
            // Followed whatever the count, so that it does not turn back where a row gets so
            // short that it has no land.
            Atom::Passes(Rule::Land) => self.parts.rules.land.fits_in(self.layout.parting()),
            Atom::Passes(rule) => !self.fails(rule),
        }
    }

    /// The width of the wood across the slat, mm.
    fn width(&self) -> f64 {
        self.layout.extents().width().in_millimetres()
    }

    /// How far the wood reaches into the top slat, mm.
    fn up(&self) -> f64 {
        self.layout.extents().up.in_millimetres()
    }

    /// How far the wood reaches into the bottom slat, mm.
    fn down(&self) -> f64 {
        self.layout.extents().down.in_millimetres()
    }

    /// The bond width, mm, and below anything else, the farther the less, where the glue plane
    /// misses the pencil: rises up to its summit and falls from there.
    fn bond(&self) -> f64 {
        let (extents, axis) = (self.layout.extents(), self.parts.rules.axis_height);
        let beside = (-axis - extents.up)
            .max(axis - extents.down)
            .in_millimetres();
        if beside > 0.0 {
            return -MISSED - beside;
        }
        self.layout
            .bare()
            .chord(-axis)
            .map_or(-MISSED, |(left, right)| (-left).min(right).in_millimetres())
    }
}

impl Found {
    /// Whether another number lies side by side than before.
    pub(super) fn changes_count(&self, before: &Laid) -> bool {
        let is_another = |laid: &Laid| laid.layout.across() != before.layout.across();
        self.laid.as_ref().is_some_and(is_another)
    }

    /// Whether a check comes out differently than before, or the barrel cannot be made.
    pub(super) fn changes_checks(&self, before: &Laid) -> bool {
        let is_flipped = |laid: &Laid| !before.flipped(laid).is_empty();
        self.laid.as_ref().is_none_or(is_flipped)
    }
}

impl<'a> Search<'a> {
    /// `before` is what is laid at `today`, the value that stands in the draft.
    pub(super) const fn new(
        draft: &'a mut ProjectDraft,
        input: Input,
        today: f64,
        before: &'a Laid,
    ) -> Self {
        Self {
            draft,
            input,
            today,
            before,
        }
    }

    /// The values from today's towards a bound at which an atom has turned, and those at which the
    /// barrel can be made no more, or again; the nearest first. It ends with the step in which both
    /// the count and a check have changed.
    pub(super) fn towards(&mut self, bound: f64) -> Vec<Found> {
        let mut found = Vec::new();
        let mut near = Found {
            at: self.today,
            laid: Some(self.before.clone()),
        };
        for at in self.places_towards(bound) {
            let far = self.look(at);
            let edge = self.edge(&near, &far);
            let (from, to) = sound_part(&near, &far, edge.as_ref());
            self.turns(from, to, &mut found);
            found.extend(edge.map(|[_, after]| after));
            let before = self.before;
            let is_told = found.iter().any(|found| found.changes_count(before))
                && found.iter().any(|found| found.changes_checks(before));
            if is_told {
                break;
            }
            near = far;
        }
        let today = self.today;
        in_order(found, |one, other| {
            let distance = |found: &Found| (found.at - today).abs();
            distance(one).total_cmp(&distance(other))
        })
    }

    /// The value nearest to today's, towards a bound, at which at least so many lie side by side and
    /// every check passes, and what is laid there.
    ///
    /// Between two places where nothing turns back each of them holds up to a value, or from one on, so
    /// that all hold together over an interval: it begins at the last value from which one holds.
    pub(super) fn first_sound(&mut self, bound: f64, count: u32) -> Option<(f64, Laid)> {
        let mut near = Found {
            at: self.today,
            laid: Some(self.before.clone()),
        };
        for at in self.places_towards(bound) {
            let far = self.look(at);
            let edge = self.edge(&near, &far);
            let (from, to) = sound_part(&near, &far, edge.as_ref());
            let bends = self.bends(from.at, to.at).into_iter();
            let between: Vec<Found> = bends.map(|at| self.look(at)).collect();
            let mut from = from;
            for to in between.iter().chain([to]) {
                if let Some(found) = self.first_sound_between(from, to, count) {
                    return Some(found);
                }
                from = to;
            }
            near = far;
        }
        None
    }

    /// The same between two places between which nothing turns back.
    fn first_sound_between(
        &mut self,
        near: &Found,
        far: &Found,
        count: u32,
    ) -> Option<(f64, Laid)> {
        let (from, to) = (near.laid.as_ref()?, far.laid.as_ref()?);
        let mut atoms = vec![Atom::AtLeast(count)];
        let passes = |atom: &Atom| matches!(atom, Atom::Passes(_));
        atoms.extend(self.atoms(from, to).into_iter().filter(passes));
        let mut at = near.at;
        for atom in atoms {
            match (from.holds(atom), to.holds(atom)) {
                (true, _) => {}
                (false, false) => return None,
                (false, true) => {
                    let holds = |laid: Option<&Laid>| laid.is_some_and(|laid| laid.holds(atom));
                    let (_, from_here) = self.bisect(near.at, far.at, &holds);
                    if (from_here - near.at).abs() > (at - near.at).abs() {
                        at = from_here;
                    }
                }
            }
        }
        // Where one of them holds no more, or another is asked there, it is found out here.
        let laid = self.laid(at)?;
        let is_sound = laid.layout.pencils() > 0 && laid.layout.across() >= count;
        is_sound.then_some((at, laid))
    }

    /// The two sides of the place between two values at which the barrel can be made no more, or
    /// again, if there is one.
    fn edge(&mut self, near: &Found, far: &Found) -> Option<[Found; 2]> {
        let will_be_made = far.laid.is_some();
        if near.laid.is_some() == will_be_made {
            return None;
        }
        let changed = |laid: Option<&Laid>| laid.is_some() == will_be_made;
        let (before, after) = self.bisect(near.at, far.at, &changed);
        Some([self.look(before), self.look(after)])
    }

    /// The values between two at which atoms turn; none where nothing is laid.
    fn turns(&mut self, near: &Found, far: &Found, found: &mut Vec<Found>) {
        let between: Vec<Found> = self
            .bends(near.at, far.at)
            .into_iter()
            .map(|at| self.look(at))
            .collect();
        let mut near = near;
        for far in between.iter().chain([far]) {
            if let (Some(from), Some(to)) = (&near.laid, &far.laid) {
                for atom in self.atoms(from, to) {
                    let holds = from.holds(atom);
                    let changed =
                        |laid: Option<&Laid>| laid.is_some_and(|laid| laid.holds(atom) != holds);
                    if to.holds(atom) != holds {
                        let (_, at) = self.bisect(near.at, far.at, &changed);
                        found.push(self.look(at));
                    }
                }
            }
            near = far;
        }
    }

    /// Leaves today's value in the draft.
    pub(super) fn put_back(&mut self) {
        self.put(self.today);
    }

    fn put(&mut self, value: f64) {
        if let Some(typed) = self.input.typed_mut(self.draft) {
            *typed = Typed::Number(value);
        }
    }

    /// What is laid at a value; nothing where the barrel cannot be made.
    fn laid(&mut self, value: f64) -> Option<Laid> {
        self.put(value);
        self.draft.check_layout().ok().map(Laid::new)
    }

    /// A value with what is laid there.
    fn look(&mut self, at: f64) -> Found {
        let laid = self.laid(at);
        Found { at, laid }
    }

    /// Brings the two sides of a turn together: `changed` is false at `near` and true at `far`,
    /// and so it is at the two values returned. The far one is round where a round value will do.
    fn bisect(
        &mut self,
        mut near: f64,
        mut far: f64,
        changed: &dyn Fn(Option<&Laid>) -> bool,
    ) -> (f64, f64) {
        while (far - near).abs() > BRACKET {
            let middle = f64::midpoint(near, far);
            if changed(self.laid(middle).as_ref()) {
                far = middle;
            } else {
                near = middle;
            }
        }
        let round = (far / ROUND).round() * ROUND;
        // Written as the shop would, without what the product leaves in the last bit.
        let round = (round * 1e6).round() / 1e6;
        let is_near = round != near && (round - far).abs() <= BRACKET;
        if is_near && changed(self.laid(round).as_ref()) {
            far = round;
        }
        (near, far)
    }

    /// Where a measure is greatest between two values, by golden section.
    fn summit(&mut self, near: f64, far: f64, measure: fn(&Laid) -> f64) -> f64 {
        let mut height = |value| {
            let laid = self.laid(value);
            laid.map_or(f64::NEG_INFINITY, |laid| measure(&laid))
        };
        let (mut from, mut to) = (near, far);
        let (mut low, mut high) = (to - (to - from) * GOLDEN, from + (to - from) * GOLDEN);
        let (mut at_low, mut at_high) = (height(low), height(high));
        while (to - from).abs() > BRACKET {
            if at_low >= at_high {
                (to, high, at_high) = (high, low, at_low);
                low = to - (to - from) * GOLDEN;
                at_low = height(low);
            } else {
                (from, low, at_low) = (low, high, at_high);
                high = from + (to - from) * GOLDEN;
                at_high = height(high);
            }
        }
        if at_low >= at_high { low } else { high }
    }

    /// The ends of the steps in which turns are looked for, up to a bound: one where what can be
    /// made is an interval and every measure follows the input without turning back but at a few
    /// known places, many where nothing of the kind can be said.
    fn places_towards(&self, bound: f64) -> Vec<f64> {
        let (today, steps) = (self.today, if self.is_drawn() { STEPS } else { 1 });
        if today == bound {
            return Vec::new();
        }
        let place = |step| today + (bound - today) * (f64::from(step) / f64::from(steps));
        (1..steps).map(place).chain([bound]).collect()
    }

    /// Whether the input changes an outline that may have any shape.
    fn is_drawn(&self) -> bool {
        self.before.parts.barrel.shape() == Shape::Free
            && matches!(self.input.field, Field::BarrelWidth | Field::Coat)
    }

    /// The values between two at which some measure may turn back, from the near one on.
    fn bends(&mut self, near: f64, far: f64) -> Vec<f64> {
        if self.input.field != Field::CornerRadius {
            return Vec::new();
        }
        let coat = self.before.parts.barrel.coat().in_millimetres();
        let is_between = near.min(far) < coat && coat < near.max(far);
        let coat = is_between.then_some(coat);
        let ends: Vec<f64> = [Some(near), coat, Some(far)]
            .into_iter()
            .flatten()
            .collect();
        let mut bends: Vec<f64> = coat.into_iter().collect();
        for part in ends.windows(2) {
            for measure in [Laid::width, Laid::up, Laid::down, Laid::bond] {
                bends.push(self.summit(part[0], part[1], measure));
            }
        }
        in_order(bends, |one, other| {
            (one - near).abs().total_cmp(&(other - near).abs())
        })
    }

    /// The atoms of two layouts that decide whether the count or a check differs from today's.
    fn atoms(&self, from: &Laid, to: &Laid) -> Vec<Atom> {
        let today = self.before.layout.across();
        // A row of two is the shortest that has land.
        let mut counts = vec![2, today, today + 1];
        counts.sort_unstable();
        counts.dedup();
        let mut rules = vec![Rule::Land];
        for check in [self.before, from, to]
            .iter()
            .flat_map(|laid| laid.layout.checks())
        {
            if !rules.contains(&check.rule) {
                rules.push(check.rule);
            }
        }
        let counts = counts.into_iter().map(Atom::AtLeast);
        counts.chain(rules.into_iter().map(Atom::Passes)).collect()
    }
}

/// The ends of the part of a stretch in which the barrel can be made, or of the whole stretch where that
/// does not change within it.
fn sound_part<'a>(
    near: &'a Found,
    far: &'a Found,
    edge: Option<&'a [Found; 2]>,
) -> (&'a Found, &'a Found) {
    match edge {
        Some([last, _]) if near.laid.is_some() => (near, last),
        Some([_, first]) => (first, far),
        None => (near, far),
    }
}
