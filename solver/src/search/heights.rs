//! The heights of the lead axis at which grooves stay open and the seam keeps its bond.
//!
//! With a groove radius ρ and a least bond width b, the glue has to reach `R = ρ + b` to both sides
//! of a lead whose axis lies at a above the glue plane. So an outline at a turn θ bears the height a
//! where none of it comes between the points `(−R, −a)` and `(R, −a)` from the axis. With its nearest
//! distance D it bears |a| ≤ √(D² − R²) at every turn, and at some turns more.
//!
//! At one turn the heights change where the outline crosses x = ±R, and where a hollow or a corner of
//! it comes level with the glue: between these what holds in the middle holds throughout, so they
//! are known exactly ([`Heights::at`]).
//!
//! Over a range of turns no such height is a sinusoid. On a convex outline the two ends of the glue
//! decide: the outline crosses x = R at a height that only grows or only falls with the turn, between
//! turns at which a joint, or a point whose normal passes through the axis, lies on that line, or the
//! line only touches the outline. With the ranges cut there, the heights that hold at both ends of a
//! range hold at every turn of it, and no other does ([`Heights::throughout`]). On an outline with
//! hollows only the heights that hold at every turn at all, or the level axis where there is none,
//! and the height in the rules are taken over a range.
//!
//! All this is asked of the check that a layout is held against; in the middle between two ends
//! without the slack that it forgives, for a bond that is short by less there may be short by more at
//! an end.

use super::wave::Wave;
use crate::field::Field;
use crate::layout;
use crate::outline::{Outline, Reach, Segment};
use crate::quantity::{Angle, Direction, Length, greater, lesser, norm};
use crate::rules::Rules;
use crate::search_rules::AxisChoice;

/// Where the lead axis may lie above the glue plane, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct AxisRange {
    pub(super) least: f64,
    pub(super) most: f64,
}

impl AxisRange {
    const fn only(height: f64) -> Self {
        Self {
            least: height,
            most: height,
        }
    }

    const fn up_to(most: f64) -> Self {
        Self { least: -most, most }
    }

    /// Whether no height of another lies outside.
    pub(super) fn contains(&self, other: &Self) -> bool {
        self.least <= other.least && other.most <= self.most
    }
}

/// Far above the rounding of the ends of a chord, and far below [`Length::SLACK`].
const ROUNDING: Length = Length::millimetres(1e-12);

/// Nearer to the glue plane than this wood counts as touching it, mm: twice what rounding forgives.
const TOUCH: f64 = 2.0 * Length::SLACK.in_millimetres();

/// The heights that may be taken.
#[derive(Debug)]
pub(super) struct Heights<'a> {
    wood: &'a Outline,
    /// How far the glue must reach beside the lead, mm.
    reach: f64,
    /// Where the groove stays open and the height can be typed, and the whole of it is searched.
    open: Option<AxisRange>,
    /// Heights that are taken over a range of turns wherever they hold throughout.
    steady: Vec<AxisRange>,
    /// Whether the first of these holds at every turn and is all there is.
    settled: bool,
    convex: bool,
}

impl<'a> Heights<'a> {
    /// For the wood of a barrel as drawn and half the width of a groove.
    pub(super) fn new(
        wood: &'a Outline,
        groove: Length,
        rules: &Rules,
        choice: AxisChoice,
    ) -> Self {
        let own = rules.axis_height.in_millimetres();
        let reach = (groove + rules.bond).in_millimetres();
        let near = wood.least_distance().in_millimetres();
        let free = (near >= reach).then(|| (near * near - reach * reach).sqrt());
        let own_is_open = rules.axis_height.abs().fits_in(groove);
        let new = |open, steady, settled| Self {
            wood,
            reach,
            open,
            steady,
            settled,
            convex: wood.is_convex(),
        };
        match choice {
            AxisChoice::AsInRules if own_is_open => {
                let settled = free.is_some_and(|free| own.abs() <= free);
                new(None, vec![AxisRange::only(own)], settled)
            }
            AxisChoice::AsInRules => new(None, Vec::new(), true),
            AxisChoice::Any => {
                let highest = lesser(groove.in_millimetres(), Field::AxisHeight.spec().most);
                let everywhere = AxisRange::up_to(lesser(free.unwrap_or(0.0), highest));
                let (mut open, mut steady) = (AxisRange::up_to(highest), vec![everywhere]);
                if own_is_open && !everywhere.contains(&AxisRange::only(own)) {
                    // Rounding may leave it a hair outside.
                    open.least = lesser(open.least, own);
                    open.most = greater(open.most, own);
                    steady.push(AxisRange::only(own));
                }
                let settled = free.is_some() && everywhere.contains(&open);
                new(Some(open), steady, settled)
            }
        }
    }

    /// The turns at which the heights over a range may change, degrees.
    pub(super) fn ends<'b>(&self, reaches: impl Iterator<Item = &'b Reach>) -> Vec<f64> {
        if self.settled {
            return Vec::new();
        }
        let steady = self.steady.iter();
        let mut ends: Vec<f64> = steady
            .flat_map(|axis| [axis.least, axis.most])
            .flat_map(|height| self.glue_ends(height))
            .collect();
        if self.open.is_some() && self.convex {
            ends.extend(self.bends());
            ends.extend(self.touches(reaches));
        }
        ends
    }

    /// The heights at a turn, the lowest first: exactly at a usual turn or on a convex outline.
    pub(super) fn at(&self, turn: Angle, is_usual: bool) -> Vec<AxisRange> {
        match self.open {
            _ if self.settled => self.steady.clone(),
            Some(open) if is_usual || self.convex => {
                self.between(&self.wood.turned(turn.direction()), open)
            }
            _ => self.steady_at(turn, Length::SLACK),
        }
    }

    /// The heights that hold at every turn of a range, of which those at its ends are known.
    pub(super) fn throughout(
        &self,
        (from, at_from): (Angle, &[AxisRange]),
        (to, at_to): (Angle, &[AxisRange]),
    ) -> Vec<AxisRange> {
        if self.settled {
            return self.steady.clone();
        }
        if self.open.is_some()
            && self.convex
            && let ([one], [other]) = (at_from, at_to)
        {
            let common = AxisRange {
                least: greater(one.least, other.least),
                most: lesser(one.most, other.most),
            };
            // Of a convex outline what lies between two heights that hold holds too.
            let hold = |height| self.holds_throughout(height, from, to);
            if common.least <= common.most && hold(common.least) && hold(common.most) {
                return vec![common];
            }
        }
        self.steady_at(middle(from, to), ROUNDING)
    }

    fn steady_at(&self, turn: Angle, forgiven: Length) -> Vec<AxisRange> {
        let lying = self.wood.turned(turn.direction());
        let holds = |height| self.holds(&lying, height, forgiven);
        let mut steady = self.steady.clone();
        steady.retain(|axis| holds(axis.least) && holds(axis.most));
        steady
    }

    /// Whether the ends of a range of heights hold at a turn, by the check that a layout is held
    /// against.
    pub(super) fn hold_at(&self, turn: Angle, axis: AxisRange) -> bool {
        let lying = self.wood.turned(turn.direction());
        let holds = |height| self.holds(&lying, height, Length::SLACK);
        self.settled || holds(axis.least) && holds(axis.most)
    }

    /// Whether the bond holds at a height, but for so much.
    fn holds(&self, lying: &Outline, height: f64, forgiven: Length) -> bool {
        let reach = layout::glue_reach(lying, Length::millimetres(-height));
        reach.is_some_and(|reach| Length::millimetres(self.reach) <= reach + forgiven)
    }

    fn holds_throughout(&self, height: f64, from: Angle, to: Angle) -> bool {
        let (from, to) = (from.in_degrees(), to.in_degrees());
        let ends = self.glue_ends(height).into_iter();
        let inside = ends.map(|end| end.rem_euclid(360.0));
        let mut ends: Vec<f64> = inside.filter(|end| from < *end && *end < to).collect();
        ends.extend([from, to]);
        ends.sort_by(f64::total_cmp);
        ends.windows(2).all(|pair| {
            let turn = middle(Angle::degrees(pair[0]), Angle::degrees(pair[1]));
            self.holds(&self.wood.turned(turn.direction()), height, ROUNDING)
        })
    }

    /// The heights at which the bond holds on an outline as it lies.
    fn between(&self, lying: &Outline, open: AxisRange) -> Vec<AxisRange> {
        // Laid on its left side, what was at x = R is at the level R, and what was at −a is at a.
        let on_side = lying.turned(Direction::UP);
        let mut ends = on_side.level_crossings(Length::millimetres(self.reach));
        ends.extend(on_side.level_crossings(Length::millimetres(-self.reach)));
        ends.extend(self.steady.iter().flat_map(|axis| [axis.least, axis.most]));
        if !self.convex {
            for segment in on_side.segments() {
                ends.push(segment.start().x);
                if let Segment::Arc(arc) = segment {
                    ends.extend([arc.centre.x - arc.radius, arc.centre.x + arc.radius]);
                }
            }
        }
        ends.retain(|end| open.least < *end && *end < open.most);
        ends.extend([open.least, open.most]);
        ends.sort_by(f64::total_cmp);
        ends.dedup();
        let holds = |height: f64| self.holds(lying, height, Length::SLACK);
        let mut held: Vec<AxisRange> = Vec::new();
        let mut keep = |next: AxisRange| match held.last_mut() {
            Some(last) if last.most == next.least => last.most = next.most,
            _ => held.push(next),
        };
        // Each end by itself, and what lies from it to the next. An end may fail beside heights that
        // hold, where the wood only touches the glue plane; then they begin where rounding ends.
        for (k, &end) in ends.iter().enumerate() {
            let end_holds = holds(end);
            if end_holds {
                keep(AxisRange::only(end));
            }
            let Some(&next) = ends.get(k + 1) else {
                break;
            };
            let gap = AxisRange {
                least: if end_holds { end } else { end + TOUCH },
                most: if holds(next) { next } else { next - TOUCH },
            };
            let middle = f64::midpoint(gap.least, gap.most);
            if gap.least < gap.most && self.holds(lying, middle, ROUNDING) {
                keep(gap);
            }
        }
        held
    }

    /// Turns at which an end of the glue may come to lie inside or outside the wood, or a hollow to
    /// touch the glue plane, with the axis at a height; degrees.
    fn glue_ends(&self, height: f64) -> Vec<f64> {
        let (across, level) = (self.reach, -height);
        let mut ends = Vec::new();
        // While the outline turns, the ends of the glue line run round it on a circle.
        let circle = Length::millimetres(norm(across, level));
        let places = self.wood.crossings_with_circle(circle);
        for side in [across, -across] {
            let own = libm::atan2(level, side).to_degrees();
            ends.extend(places.iter().map(|place| own - place.in_degrees()));
        }
        if self.convex {
            return ends;
        }
        // A hollow or a corner that comes to touch the glue plane may cut the glue line in two.
        for segment in self.wood.segments() {
            let mut heights = vec![(segment.start(), 0.0)];
            if let Segment::Arc(arc) = segment {
                heights.extend([(arc.centre, arc.radius), (arc.centre, -arc.radius)]);
            }
            for (centre, radius) in heights {
                let height = Wave {
                    constant: radius - level,
                    cosine: centre.y,
                    sine: centre.x,
                };
                let zeros = height.zeros().into_iter().flatten();
                ends.extend(zeros.map(|turn| turn.angle().in_degrees()));
            }
        }
        ends
    }

    /// Turns at which the outline crosses x = ±R in a point where its distance from the axis may turn
    /// from growing to falling or back, degrees.
    fn bends(&self) -> Vec<f64> {
        let mut ends = Vec::new();
        for point in self.wood.turning_distances() {
            let square = point.x * point.x + point.y * point.y - self.reach * self.reach;
            if square >= 0.0 {
                let own = libm::atan2(point.y, point.x).to_degrees();
                let up = libm::atan2(square.sqrt(), self.reach).to_degrees();
                ends.extend([up, -up, 180.0 - up, 180.0 + up].map(|place| place - own));
            }
        }
        ends
    }

    /// Turns at which x = ±R touches the outline from outside, degrees.
    fn touches<'b>(&self, reaches: impl Iterator<Item = &'b Reach>) -> Vec<f64> {
        let directions = reaches.flat_map(|reach| {
            let beyond = Wave {
                constant: reach.radius - self.reach,
                cosine: reach.centre.x,
                sine: reach.centre.y,
            };
            beyond.zeros().into_iter().flatten()
        });
        directions
            .map(|direction| direction.angle().in_degrees())
            .flat_map(|own| [-own, 180.0 - own])
            .collect()
    }
}

/// The turn half way from one to another.
pub(super) fn middle(from: Angle, to: Angle) -> Angle {
    Angle::degrees(f64::midpoint(from.in_degrees(), to.in_degrees()))
}

#[cfg(test)]
mod tests {
    //! Against trying out heights and turns one by one, by the check of a layout.

    use super::*;
    use crate::field::Typed;
    use crate::rules::RulesDraft;
    use proptest::prelude::*;

    const HOLLOWED: &str = "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z";

    fn outline(kind: usize, width: f64, height: f64) -> Outline {
        let size = Length::millimetres(width);
        match kind {
            0 => Outline::flat(size, Length::millimetres(height), Length::millimetres(0.4)),
            1 => Outline::oval(size, Length::millimetres(height)),
            2 => Outline::regular(3, size / 4.0, Length::millimetres(0.3), Angle::ZERO),
            3 => Outline::regular(4, size / 3.0, Length::ZERO, Angle::ZERO),
            _ => Outline::from_path(HOLLOWED, size, Length::ZERO, Length::ZERO).unwrap(),
        }
    }

    fn holds_with(wood: &Outline, turn: f64, height: f64, reach: f64) -> bool {
        let lying = wood.turned(Angle::degrees(turn).direction());
        layout::glue_reach(&lying, Length::millimetres(-height))
            .is_some_and(|found| found.in_millimetres() >= reach)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]

        #[test]
        fn a_height_lies_within_where_the_bond_holds_and_nowhere_else(
            kind in 0_usize..5, width in 6.0_f64..12.0, height in 3.5_f64..6.0,
            groove in 0.4_f64..1.3, bond in 0.2_f64..2.0, own in -0.5_f64..0.5,
            from in 0.0_f64..350.0, run in 0.1_f64..20.0,
        ) {
            /// Nearer to the bond than this rounding decides, mm.
            const HAIR: f64 = 1e-6;
            let wood = outline(kind, width, height);
            prop_assume!(wood.least_distance().in_millimetres() > groove);
            let mut draft = RulesDraft::new();
            draft.bond = Typed::Number(bond);
            draft.axis_height = Typed::Number(own);
            let rules = draft.check().unwrap();
            let groove = Length::millimetres(groove);
            let heights = Heights::new(&wood, groove, &rules, AxisChoice::Any);
            let corners = wood.reaches();
            let mut ends: Vec<f64> = heights
                .ends(corners.iter())
                .into_iter()
                .map(|end| end.rem_euclid(360.0))
                .filter(|end| from < *end && *end < from + run)
                .chain([from, from + run])
                .collect();
            ends.sort_by(f64::total_cmp);
            let samples: Vec<f64> = (-40..=40).map(|k| groove.in_millimetres() * (f64::from(k) / 40.0)).collect();
            let within = |axes: &[AxisRange], height: f64| {
                axes.iter().any(|axis| axis.least <= height && height <= axis.most)
            };
            for pair in ends.windows(2) {
                let (from, to) = (Angle::degrees(pair[0]), Angle::degrees(pair[1]));
                let (at_from, at_to) = (heights.at(from, true), heights.at(to, true));
                for &height in &samples {
                    if within(&at_from, height) {
                        prop_assert!(holds_with(&wood, pair[0], height, heights.reach - HAIR));
                    } else {
                        prop_assert!(!holds_with(&wood, pair[0], height, heights.reach + HAIR));
                    }
                }
                let throughout = heights.throughout((from, &at_from), (to, &at_to));
                let turns: Vec<f64> = (0..=20).map(|k| pair[0] + (pair[1] - pair[0]) * f64::from(k) / 20.0).collect();
                let ends = throughout.iter().flat_map(|axis| [axis.least, axis.most]);
                for height in samples.iter().copied().chain(ends) {
                    let all = |reach: f64| turns.iter().all(|turn| holds_with(&wood, *turn, height, reach));
                    if within(&throughout, height) {
                        prop_assert!(all(heights.reach - HAIR), "{} at {:?}", height, pair);
                    } else if wood.is_convex() {
                        prop_assert!(!all(heights.reach + HAIR), "{} at {:?}", height, pair);
                    }
                }
            }
        }
    }

    #[test]
    fn a_square_on_its_corner_bears_heights_up_to_its_flanks() {
        // |x| + |y| ≤ 3·√2 at x = 2.5.
        let wood = Outline::regular(4, Length::millimetres(3.0), Length::ZERO, Angle::ZERO);
        let mut draft = RulesDraft::new();
        draft.bond = Typed::Number(0.5);
        let rules = draft.check().unwrap();
        let heights = Heights::new(&wood, Length::millimetres(2.0), &rules, AxisChoice::Any);
        let [axis] = heights.at(Angle::degrees(45.0), true)[..] else {
            panic!("one range of heights");
        };
        let expected = 3.0 * 2.0_f64.sqrt() - 2.5;
        assert!((axis.most - expected).abs() < 1e-12, "{axis:?}");
        assert!((axis.least + expected).abs() < 1e-12, "{axis:?}");
    }

    #[test]
    fn a_bond_short_by_a_hair_between_two_turns_does_not_hold_over_the_range() {
        // On its corner, with the axis 0.5 mm up, this square reaches 3·√2 − 0.5 mm to both sides;
        // turned either way less to one of them. So a bond that asks for 6·10⁻¹⁰ mm more is short by
        // what is forgiven at 45°, and by twice as much at the turns at which the other side holds.
        let wood = Outline::regular(4, Length::millimetres(3.0), Length::ZERO, Angle::ZERO);
        let mut draft = RulesDraft::new();
        draft.axis_height = Typed::Number(0.5);
        draft.bond = Typed::Number(3.0 * 2.0_f64.sqrt() - 0.5 + 6e-10 - 1.0);
        let rules = draft.check().unwrap();
        let heights = Heights::new(
            &wood,
            Length::millimetres(1.0),
            &rules,
            AxisChoice::AsInRules,
        );
        // Any quarter turn shows the same square.
        let ends = heights.ends(wood.reaches().iter()).into_iter();
        let mut ends: Vec<f64> = ends.map(|end| end.rem_euclid(90.0)).collect();
        ends.retain(|end| (end - 45.0).abs() < 1e-6);
        ends.push(45.0);
        ends.sort_by(f64::total_cmp);
        let at = |turn: f64| (Angle::degrees(turn), heights.at(Angle::degrees(turn), true));
        assert_eq!(
            at(45.0).1,
            [AxisRange::only(0.5)],
            "the turn itself is forgiven"
        );
        let mut cut = 0;
        for pair in ends.windows(2).filter(|pair| pair[1] - pair[0] > 1e-9) {
            let ((from, at_from), (to, at_to)) = (at(pair[0]), at(pair[1]));
            let throughout = heights.throughout((from, &at_from), (to, &at_to));
            assert!(throughout.is_empty(), "{pair:?}: {throughout:?}");
            cut += 1;
        }
        assert!(cut >= 2, "{ends:?}");
    }
}
