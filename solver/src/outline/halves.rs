//! An outline parted into what is seen from above and what is seen from below.

use super::{Arc, Line, Outline, Segment};
use crate::quantity::{Direction, Length, Point};

/// The two halves of an outline that two level heads can shape, both run through from its leftmost
/// to its rightmost point.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Halves {
    /// What is seen from above.
    pub(crate) upper: Vec<Segment>,
    /// What is seen from below.
    pub(crate) lower: Vec<Segment>,
}

impl Halves {
    /// Where the halves part on the left.
    pub(crate) fn left(&self) -> Point {
        self.lower.first().map_or(Point::AXIS, Segment::start)
    }

    /// Where the halves part on the right.
    pub(crate) fn right(&self) -> Point {
        self.lower.last().map_or(Point::AXIS, Segment::end)
    }
}

impl Outline {
    /// The outline parted at its leftmost and at its rightmost point; an upright side that lies there
    /// is parted halfway up, so that each head cuts half of it.
    ///
    /// It must be without an [`undercut`](Self::undercut).
    pub(crate) fn halves(&self) -> Halves {
        let extents = self.extents();
        let mut pieces: Vec<Segment> = self.segments.iter().flat_map(parted_upright).collect();
        // The right one first: the lower half ends there, and the upper one begins.
        let right = part_at(&mut pieces, |point| {
            point.x - extents.right.in_millimetres()
        });
        pieces.rotate_left(right);
        let left = part_at(&mut pieces, |point| {
            -point.x - extents.left.in_millimetres()
        });
        let lower = pieces.split_off(left);
        let upper = pieces.iter().rev().map(Segment::reversed).collect();
        Halves { upper, lower }
    }
}

/// A segment, an arc cut where it stands upright.
fn parted_upright(segment: &Segment) -> Vec<Segment> {
    let Segment::Arc(arc) = segment else {
        return vec![*segment];
    };
    let mut from = arc.from;
    let ends = arc.passed([Direction::LEFT, Direction::RIGHT]);
    let parts = ends.into_iter().chain([arc.to]).filter_map(|to| {
        let part = Arc { from, to, ..*arc };
        from = to;
        let length = (part.radius * part.sweep()).abs();
        (length > Length::SLACK.in_millimetres()).then_some(Segment::Arc(part))
    });
    parts.collect()
}

/// The place of the piece that begins where the outline is parted: halfway up between the lowest and
/// the highest joint that lie as far out as any, `beyond` the extent by no less than the slack.
fn part_at(pieces: &mut Vec<Segment>, beyond: impl Fn(Point) -> f64) -> usize {
    let slack = Length::SLACK.in_millimetres();
    let outermost = |point: Point| beyond(point) >= -slack;
    let heights = pieces.iter().map(Segment::start).filter(|p| outermost(*p));
    let (least, most) = heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), p| {
        (least.min(p.y), most.max(p.y))
    });
    let half = f64::midpoint(least, most);
    let side = pieces.iter().position(|piece| {
        let (from, to) = (piece.start(), piece.end());
        let spans = (from.y - half) * (to.y - half) < 0.0;
        most - least > slack && outermost(from) && outermost(to) && spans
    });
    if let Some(at) = side
        && let Segment::Line(line) = pieces[at]
    {
        let share = (half - line.from.y) / (line.to.y - line.from.y);
        let cut = Point {
            x: line.from.x + (line.to.x - line.from.x) * share,
            y: half,
        };
        pieces[at] = Segment::Line(Line { to: cut, ..line });
        pieces.insert(at + 1, Segment::Line(Line { from: cut, ..line }));
        return at + 1;
    }
    let distance = |k: &usize| {
        let start = pieces[*k].start();
        let height = if half.is_finite() { half } else { start.y };
        (beyond(start).abs() > slack, (start.y - height).abs())
    };
    let nearest = (0..pieces.len()).reduce(|best, k| {
        if distance(&k) < distance(&best) {
            k
        } else {
            best
        }
    });
    nearest.unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Angle;
    use proptest::prelude::*;

    /// Both halves run to the right without a gap, share their ends and lie one over the other.
    fn check(outline: &Outline) {
        let halves = outline.halves();
        for half in [&halves.upper, &halves.lower] {
            for pair in half.windows(2) {
                let gap = pair[0].end().distance(pair[1].start());
                assert!(gap.fits_in(Length::SLACK), "{half:?}");
            }
            for piece in half {
                assert!(piece.end().x >= piece.start().x - 1e-8, "{piece:?}");
            }
        }
        let extents = outline.extents();
        let ends = [
            (halves.upper.first().map(Segment::start), halves.left()),
            (halves.upper.last().map(Segment::end), halves.right()),
        ];
        for (end, of_lower) in ends {
            assert!(end.unwrap().distance(of_lower).fits_in(Length::SLACK));
        }
        assert!((halves.left().x + extents.left.in_millimetres()).abs() < 1e-8);
        assert!((halves.right().x - extents.right.in_millimetres()).abs() < 1e-8);
    }

    #[test]
    fn a_hexagon_on_a_corner_is_parted_halfway_up_its_upright_faces() {
        let turn = Angle::degrees(30.0);
        let hexagon = Outline::regular(6, Length::millimetres(3.5), Length::ZERO, turn);
        let halves = hexagon.halves();
        assert!(halves.left().y.abs() < 1e-12 && halves.right().y.abs() < 1e-12);
        assert_eq!((halves.upper.len(), halves.lower.len()), (4, 4));
        check(&hexagon);
    }

    #[test]
    fn a_circle_is_parted_at_its_sides() {
        let circle = Outline::round(Length::millimetres(3.5));
        let halves = circle.halves();
        assert_eq!(halves.left(), Point { x: -3.5, y: 0.0 });
        check(&circle);
    }

    proptest! {
        #[test]
        fn any_regular_outline_is_parted_in_two(
            sides in 3_u32..12, share in 0.0_f64..1.0, turn in prop_oneof![
                0.0_f64..360.0, (0_u32..24).prop_map(|k| f64::from(k) * 15.0)
            ],
        ) {
            let corner = Length::millimetres(3.5 * share);
            check(&Outline::regular(sides, Length::millimetres(3.5), corner, Angle::degrees(turn)));
        }
    }
}
