//! What is asked of an outline: extents, area, perimeter, centroid, distances.

use super::{Arc, Line, Outline, Segment};
use crate::quantity::{Angle, Area, Direction, Length, Point, greater, lesser};

/// How far an outline reaches from the lead axis on the four sides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extents {
    /// Towards the datum edge.
    pub left: Length,
    /// Away from the datum edge.
    pub right: Length,
    /// Into the top slat.
    pub up: Length,
    /// Into the bottom slat.
    pub down: Length,
}

impl Extents {
    /// Width across the slat.
    #[must_use]
    pub fn width(&self) -> Length {
        self.left + self.right
    }

    /// Height of the box round the outline.
    #[must_use]
    pub fn height(&self) -> Length {
        self.up + self.down
    }
}

impl Outline {
    /// Support: the farthest the outline reaches from the axis in a direction.
    ///
    /// ```
    /// use solver::{Angle, Direction, Length, Outline};
    /// let hexagon = Outline::regular(6, Length::millimetres(3.5), Length::ZERO, Angle::ZERO);
    /// assert_eq!(hexagon.support(Direction::UP).in_millimetres(), 3.5);
    /// ```
    #[must_use]
    pub fn support(&self, direction: Direction) -> Length {
        let reach = |segment: &Segment| {
            let ends = greater(
                segment.start().along(direction),
                segment.end().along(direction),
            );
            match segment {
                Segment::Arc(arc) if !arc.is_hollow() && arc.faces(direction) => {
                    greater(ends, arc.centre.along(direction) + arc.radius)
                }
                _ => ends,
            }
        };
        Length::millimetres(
            self.segments
                .iter()
                .map(reach)
                .fold(f64::NEG_INFINITY, greater),
        )
    }

    /// The support on the four sides of the cross-section.
    #[must_use]
    pub fn extents(&self) -> Extents {
        Extents {
            left: self.support(Direction::LEFT),
            right: self.support(Direction::RIGHT),
            up: self.support(Direction::UP),
            down: self.support(Direction::DOWN),
        }
    }

    /// Enclosed area, by Green's theorem ½∮(x dy − y dx), exact for lines and arcs.
    #[must_use]
    pub fn area(&self) -> Area {
        let twice = |segment: &Segment| {
            let (from, to) = (segment.start(), segment.end());
            match segment {
                Segment::Line(_) => from.x * to.y - from.y * to.x,
                Segment::Arc(arc) => {
                    arc.radius * arc.radius * arc.sweep() + arc.centre.x * (to.y - from.y)
                        - arc.centre.y * (to.x - from.x)
                }
            }
        };
        Area::square_millimetres(self.segments.iter().map(twice).sum::<f64>() / 2.0)
    }

    /// Length of the closed curve.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        let length = |segment: &Segment| match segment {
            Segment::Line(line) => line.from.distance(line.to),
            Segment::Arc(arc) => Length::millimetres(arc.radius * arc.sweep()),
        };
        self.segments.iter().map(length).sum()
    }

    /// Centre of the enclosed area, by Green's theorem (½∮x² dy, −½∮y² dx), exact for lines and arcs.
    #[must_use]
    pub fn centroid(&self) -> Point {
        let (mut x, mut y) = (0.0, 0.0);
        for segment in &self.segments {
            let (from, to) = (segment.start(), segment.end());
            match segment {
                Segment::Line(_) => {
                    x += (to.y - from.y) * (from.x * from.x + from.x * to.x + to.x * to.x) / 6.0;
                    y -= (to.x - from.x) * (from.y * from.y + from.y * to.y + to.y * to.y) / 6.0;
                }
                Segment::Arc(arc) => {
                    let moment = arc_moment(arc);
                    x += moment.x;
                    y += moment.y;
                }
            }
        }
        let area = self.area().in_square_millimetres();
        Point {
            x: x / area,
            y: y / area,
        }
    }

    /// Distance from the lead axis to the nearest point of the outline.
    #[must_use]
    pub fn least_distance(&self) -> Length {
        let nearest = |segment: &Segment| {
            let ends = Point::AXIS
                .distance(segment.start())
                .min(Point::AXIS.distance(segment.end()));
            match segment {
                // A side beyond a hollow looks back at the axis.
                Segment::Line(line) => {
                    foot(line).map_or(ends, |foot| Length::millimetres(foot.abs()))
                }
                Segment::Arc(arc) => ends.min(nearest_of_arc(arc)),
            }
        };
        self.segments
            .iter()
            .map(nearest)
            .fold(Length::millimetres(f64::INFINITY), Length::min)
    }

    /// Where a level line at `height` above the axis leaves the outline on the left and on the
    /// right of the axis, or nothing where it misses the outline.
    ///
    /// Where the line lies wholly on one side of the axis, its two ends are given.
    #[must_use]
    pub fn chord(&self, height: Length) -> Option<(Length, Length)> {
        let crossings = self.level_crossings(height);
        let (mut left, mut right) = (f64::NEG_INFINITY, f64::INFINITY);
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for &x in &crossings {
            (least, most) = (lesser(least, x), greater(most, x));
            if x <= 0.0 {
                left = greater(left, x);
            }
            if x >= 0.0 {
                right = lesser(right, x);
            }
        }
        let (left, right) = if left.is_finite() && right.is_finite() {
            (left, right)
        } else {
            (least, most)
        };
        (left <= right).then(|| (Length::millimetres(left), Length::millimetres(right)))
    }

    /// Every x at which the outline meets a level line at `height` above the axis, mm, in the order
    /// of the segments; a joint may come twice.
    pub(crate) fn level_crossings(&self, height: Length) -> Vec<f64> {
        let level = height.in_millimetres();
        let mut crossings = Vec::new();
        for segment in &self.segments {
            // A joint on the line is a crossing, even where rounding leaves a gap in it.
            let joint = segment.start();
            if (joint.y - level).abs() <= Length::SLACK.in_millimetres() {
                crossings.push(joint.x);
            }
            match segment {
                Segment::Line(line) => crossings.extend(line_crossing(line.from, line.to, level)),
                Segment::Arc(arc) => crossings.extend(arc_crossings(arc, level)),
            }
        }
        crossings
    }

    /// Every point between which the distance from the lead axis only grows or only falls along
    /// the outline: the joints, and the points whose normal passes through the axis.
    pub(crate) fn turning_distances(&self) -> Vec<Point> {
        let mut points = Vec::with_capacity(2 * self.segments.len());
        for segment in &self.segments {
            points.push(segment.start());
            match segment {
                Segment::Line(line) => {
                    points.extend(foot(line).map(|foot| Point::AXIS.towards(line.normal, foot)));
                }
                Segment::Arc(arc) => points.extend(level_with_axis(arc)),
            }
        }
        points
    }

    /// The directions from the axis in which the outline crosses a circle round it.
    #[must_use]
    pub fn crossings_with_circle(&self, radius: Length) -> Vec<Angle> {
        let radius = radius.in_millimetres();
        let mut places = Vec::new();
        for segment in &self.segments {
            match segment {
                Segment::Line(line) => {
                    let foot = line.from.along(line.normal);
                    let run = (radius * radius - foot * foot).max(0.0).sqrt();
                    let along = line.normal.quarter_turn();
                    let within =
                        |run: &f64| *run >= line.from.along(along) && *run <= line.to.along(along);
                    if foot.abs() <= radius {
                        let runs = [-run, run].into_iter().filter(within);
                        places.extend(
                            runs.map(|run| {
                                Point::AXIS.towards(line.normal, foot).towards(along, run)
                            }),
                        );
                    }
                }
                Segment::Arc(arc) => places.extend(circle_crossings(arc, radius)),
            }
        }
        places
            .into_iter()
            .filter_map(|place| Direction::between(Point::AXIS, place))
            .map(Direction::angle)
            .collect()
    }

    /// The straight sides that lean less than an angle from upright.
    pub(crate) fn sides_within(&self, lean: Angle) -> impl Iterator<Item = Line> {
        self.segments
            .iter()
            .filter_map(move |segment| match segment {
                Segment::Line(line) if Angle::radians(libm::asin(line.normal.y.abs())) < lean => {
                    Some(*line)
                }
                _ => None,
            })
    }

    /// The least angle between a straight side and the upright, or nothing where no side is straight.
    #[must_use]
    pub fn least_lean(&self) -> Option<Angle> {
        let lean = |segment: &Segment| match segment {
            Segment::Line(line) => Some(Angle::radians(libm::asin(line.normal.y.abs()))),
            Segment::Arc(_) => None,
        };
        self.segments
            .iter()
            .filter_map(lean)
            .fold(None, |least, lean| match least {
                Some(least) if least <= lean => Some(least),
                _ => Some(lean),
            })
    }
}

/// The distance of a side from the axis, mm, where it lies beside it.
fn foot(line: &Line) -> Option<f64> {
    let along = line.normal.quarter_turn();
    let beside = line.from.along(along) <= 0.0 && line.to.along(along) >= 0.0;
    beside.then(|| line.from.along(line.normal))
}

/// The nearest of the points of an arc whose normal passes through the axis, beyond everything
/// where there is none.
fn nearest_of_arc(arc: &Arc) -> Length {
    if Direction::between(Point::AXIS, arc.centre).is_none() {
        return Length::millimetres(arc.radius.abs());
    }
    level_with_axis(arc)
        .map(|point| Point::AXIS.distance(point))
        .fold(Length::millimetres(f64::INFINITY), Length::min)
}

/// The points of an arc whose normal passes through the axis; none where all do.
fn level_with_axis(arc: &Arc) -> impl Iterator<Item = Point> {
    Direction::between(Point::AXIS, arc.centre)
        .into_iter()
        .flat_map(|outwards| [outwards, -outwards])
        .filter(|normal| arc.faces(*normal))
        .map(|normal| arc.centre.towards(normal, arc.radius))
}

/// First moments of area that an arc contributes, from the integrals of the powers of sine and cosine.
fn arc_moment(arc: &Arc) -> Point {
    let Arc {
        centre,
        radius,
        from,
        to,
    } = *arc;
    let sweep = arc.sweep();
    let overlap = to.x * to.y - from.x * from.y;
    let (cosines, sines) = (to.y - from.y, from.x - to.x);
    let cosines_cubed = cosines - (to.y * to.y * to.y - from.y * from.y * from.y) / 3.0;
    let sines_cubed = sines - (from.x * from.x * from.x - to.x * to.x * to.x) / 3.0;
    let (cosines_squared, sines_squared) = ((sweep + overlap) / 2.0, (sweep - overlap) / 2.0);
    Point {
        x: radius / 2.0
            * (centre.x * centre.x * cosines
                + 2.0 * centre.x * radius * cosines_squared
                + radius * radius * cosines_cubed),
        y: radius / 2.0
            * (centre.y * centre.y * sines
                + 2.0 * centre.y * radius * sines_squared
                + radius * radius * sines_cubed),
    }
}

/// The x at which a side meets a level line; both ends of a level side.
fn line_crossing(from: Point, to: Point, level: f64) -> Vec<f64> {
    if from.y == to.y {
        return if from.y == level {
            vec![from.x, to.x]
        } else {
            Vec::new()
        };
    }
    let share = (level - from.y) / (to.y - from.y);
    if (0.0..=1.0).contains(&share) {
        vec![from.x + (to.x - from.x) * share]
    } else {
        Vec::new()
    }
}

/// The x at which an arc meets a level line.
fn arc_crossings(arc: &Arc, level: f64) -> Vec<f64> {
    let rise = (level - arc.centre.y) / arc.radius;
    if rise.abs() > 1.0 {
        return Vec::new();
    }
    let run = (1.0 - rise * rise).sqrt();
    [-run, run]
        .into_iter()
        .filter(|x| arc.faces(Direction { x: *x, y: rise }))
        .map(|x| arc.centre.x + arc.radius * x)
        .collect()
}

/// Where an arc crosses a circle round the axis.
fn circle_crossings(arc: &Arc, radius: f64) -> Vec<Point> {
    let away = Point::AXIS.distance(arc.centre).in_millimetres();
    if away == 0.0 || arc.radius == 0.0 {
        return Vec::new();
    }
    // With |c + r n| = R, the normals n lie at n·c = (R² − c² − r²)/(2r).
    let along =
        (radius * radius - away * away - arc.radius * arc.radius) / (2.0 * arc.radius * away);
    if along.abs() > 1.0 {
        return Vec::new();
    }
    let beside = (1.0 - along * along).sqrt();
    let outwards = Direction {
        x: arc.centre.x / away,
        y: arc.centre.y / away,
    };
    [-beside, beside]
        .into_iter()
        .map(|beside| {
            outwards.turned(Direction {
                x: along,
                y: beside,
            })
        })
        .filter(|normal| arc.faces(*normal))
        .map(|normal| arc.centre.towards(normal, arc.radius))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn close(found: f64, expected: f64) {
        assert!(
            (found - expected).abs() < 1e-12,
            "found {found}, expected {expected}"
        );
    }

    fn regular(sides: u32, inradius: f64, corner: f64, turn: f64) -> Outline {
        Outline::regular(
            sides,
            Length::millimetres(inradius),
            Length::millimetres(corner),
            Angle::degrees(turn),
        )
    }

    #[test]
    fn a_half_disc_has_its_centroid_at_four_thirds_of_radius_over_pi() {
        let half = Arc {
            centre: Point::AXIS,
            radius: 3.0,
            from: Direction::RIGHT,
            to: Direction::LEFT,
        };
        close(
            arc_moment(&half).y / (std::f64::consts::PI * 4.5),
            4.0 / std::f64::consts::PI,
        );
        close(arc_moment(&half).x, 0.0);
    }

    #[test]
    fn the_chord_of_a_hexagon_at_the_axis_runs_from_corner_to_corner() {
        let (left, right) = regular(6, 3.5, 0.0, 0.0).chord(Length::ZERO).unwrap();
        close(
            right.in_millimetres() - left.in_millimetres(),
            7.0 * 2.0 / 3.0_f64.sqrt(),
        );
    }

    #[test]
    fn the_chord_of_an_oval_is_found_at_its_tips_too() {
        for width in [12.0, 39.64, 39.72] {
            let oval = Outline::oval(Length::millimetres(width), Length::millimetres(7.0));
            let bare = oval
                .inset(Length::millimetres(0.571_262_267_051_003_9))
                .unwrap();
            let (left, right) = bare.chord(Length::ZERO).unwrap();
            let expected = width - 2.0 * 0.571_262_267_051_003_9;
            assert!(
                ((right - left).in_millimetres() - expected).abs() < 1e-6,
                "{width}"
            );
        }
    }

    #[test]
    fn a_level_line_beside_the_outline_has_no_chord() {
        assert_eq!(
            regular(6, 3.5, 0.5, 0.0).chord(Length::millimetres(3.6)),
            None
        );
    }

    #[test]
    fn upright_faces_have_no_lean_at_all() {
        assert_eq!(regular(6, 3.5, 0.5, 30.0).least_lean(), Some(Angle::ZERO));
        close(
            regular(6, 3.5, 0.5, 0.0).least_lean().unwrap().in_degrees(),
            30.0,
        );
        assert_eq!(Outline::round(Length::millimetres(3.0)).least_lean(), None);
    }

    #[test]
    fn a_hook_that_reaches_behind_the_axis_is_as_near_as_its_nearest_side() {
        let path = "M0 0 H8 V10 H3 V8.5 H6 V7 H0 Z";
        let width = Length::millimetres(8.0);
        let hook = Outline::from_path(path, width, Length::ZERO, Length::ZERO).unwrap();
        // Its centre of area lies 288.625/66.5 above its foot, 2.66 below the first side over it.
        close(hook.least_distance().in_millimetres(), 7.0 - 288.625 / 66.5);
    }

    proptest! {
        #[test]
        fn the_centroid_of_a_regular_outline_is_its_axis(
            sides in 3_u32..12, inradius in 0.5_f64..10.0, share in 0.0_f64..1.0, turn in -400.0_f64..400.0,
        ) {
            let centroid = regular(sides, inradius, inradius * share, turn).centroid();
            prop_assert!(Point::AXIS.distance(centroid).in_millimetres() < 1e-11);
        }

        #[test]
        fn turning_changes_neither_area_nor_perimeter_nor_the_nearest_distance(
            sides in 3_u32..12, inradius in 0.5_f64..10.0, share in 0.0_f64..1.0, turn in -400.0_f64..400.0,
        ) {
            let (straight, turned) =
                (regular(sides, inradius, inradius * share, 0.0), regular(sides, inradius, inradius * share, turn));
            prop_assert!((straight.area() - turned.area()).abs().in_square_millimetres() < 1e-10);
            prop_assert!((straight.perimeter() - turned.perimeter()).abs().in_millimetres() < 1e-11);
            prop_assert!((turned.least_distance().in_millimetres() - inradius).abs() < 1e-12);
        }

        #[test]
        fn every_point_of_the_outline_lies_within_its_support(
            sides in 3_u32..12, share in 0.0_f64..1.0, turn in 0.0_f64..360.0, view in 0.0_f64..360.0,
        ) {
            let outline = regular(sides, 3.5, 3.5 * share, turn);
            let direction = Angle::degrees(view).direction();
            let support = outline.support(direction).in_millimetres();
            for segment in outline.segments() {
                prop_assert!(segment.start().along(direction) <= support + 1e-12);
            }
            prop_assert!(support >= 3.5 - 1e-12);
        }
    }
}
