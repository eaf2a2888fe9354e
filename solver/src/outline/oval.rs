//! Oval outlines: ellipses.

use super::{Outline, curve};
use crate::quantity::{Angle, Direction, Length, Point, norm};

/// Pairs of arcs in a quarter of an oval. They are the same in number whatever its size, so that
/// an outline that grows has no jumps.
const PAIRS: u32 = 32;

impl Outline {
    /// An ellipse lying flat, as arcs that follow it within half a millionth of its longer axis.
    ///
    /// With half axes a and b (mm) the arcs meet in pairs at the points `(a·cos t, b·sin t)` with
    /// `tan t = (b/a)^⅓·tan ψ` and ψ in equal steps. A pair strays from a curve by about
    /// `|dκ/ds|·s³/324`, with its curvature κ and the length s of the pair; the cube root makes
    /// that as large at the tips as on the long sides, about a·Δψ³/324 (derived).
    ///
    /// ```
    /// use solver::{Length, Outline};
    /// let oval = Outline::oval(Length::millimetres(9.0), Length::millimetres(6.0));
    /// let area = std::f64::consts::PI * 4.5 * 3.0;
    /// assert!((oval.area().in_square_millimetres() - area).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn oval(width: Length, height: Length) -> Self {
        if width == height {
            return Self::round(width / 2.0);
        }
        let (a, b) = (width.in_millimetres() / 2.0, height.in_millimetres() / 2.0);
        let ends: Vec<(Point, Direction)> = (0..4 * PAIRS).map(|k| end(a, b, k)).collect();
        let next = ends.iter().cycle().skip(1);
        // Both ends lie in one quarter, so that there are always two arcs between them.
        let pairs = ends
            .iter()
            .zip(next)
            .filter_map(|(&from, &to)| curve::biarc(from, to));
        Self {
            segments: pairs.flatten().collect(),
        }
    }
}

/// The point of an ellipse where a pair of arcs starts, and its tangent there.
fn end(a: f64, b: f64, k: u32) -> (Point, Direction) {
    let psi = Angle::degrees(90.0 * f64::from(k) / f64::from(PAIRS)).direction();
    let (x, y) = (psi.x * libm::cbrt(a), psi.y * libm::cbrt(b));
    let size = norm(x, y);
    let (cos, sin) = (x / size, y / size);
    let (across, up) = (cos * b, sin * a);
    let size = norm(across, up);
    let normal = Direction {
        x: across / size,
        y: up / size,
    };
    let point = Point {
        x: a * cos,
        y: b * sin,
    };
    (point, normal.quarter_turn())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::f64::consts::PI;

    proptest! {
        /// The support of an ellipse is √(a²cos² + b²sin²).
        #[test]
        fn an_oval_reaches_as_far_as_the_ellipse(
            width in 3.0_f64..30.0, share in 0.2_f64..1.0, view in 0.0_f64..360.0,
        ) {
            let outline = Outline::oval(Length::millimetres(width), Length::millimetres(width * share));
            prop_assert!(outline.is_convex());
            let d = crate::quantity::Angle::degrees(view).direction();
            let (a, b) = (width / 2.0, width * share / 2.0);
            let expected = libm::hypot(a * d.x, b * d.y);
            let found = outline.support(d).in_millimetres();
            prop_assert!((found - expected).abs() < 2e-5, "{found} {expected}");
            prop_assert!((outline.area().in_square_millimetres() - PI * a * b).abs() < 2e-5 * width * 3.0);
        }

        /// The support grows with a; arcs that are fitted anew to every size would jump.
        #[test]
        fn an_oval_that_grows_reaches_no_less_far_in_any_direction(
            width in 3.0_f64..40.0, height in 3.0_f64..30.0, view in 0.0_f64..360.0,
            step in prop_oneof![1e-7_f64..1e-5, 1e-4_f64..1e-1],
        ) {
            let oval = |width| Outline::oval(Length::millimetres(width), Length::millimetres(height));
            let d = Angle::degrees(view).direction();
            let grows = oval(width + step).support(d) - oval(width).support(d);
            prop_assert!(grows.in_millimetres() > -1e-12, "{grows:?}");
        }

        #[test]
        fn an_oval_strays_from_the_ellipse_by_a_millionth_at_most(
            width in 3.0_f64..40.0, height in 3.0_f64..40.0,
        ) {
            let outline = Outline::oval(Length::millimetres(width), Length::millimetres(height));
            let (a, b) = (width / 2.0, height / 2.0);
            let mut worst = 0.0_f64;
            for k in 0..3600 {
                let d = Angle::degrees(f64::from(k) / 10.0).direction();
                worst = worst.max((outline.support(d).in_millimetres() - libm::hypot(a * d.x, b * d.y)).abs());
            }
            prop_assert!(worst <= 1e-6 * width.max(height), "{worst}");
        }
    }
}
