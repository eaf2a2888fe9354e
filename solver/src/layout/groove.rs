//! Where each groove goes and what shape it has.

use crate::quantity::{Area, Length};

/// One groove of the row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Groove {
    /// Its number, from 1 at the datum edge.
    pub number: u32,
    /// Its centre, from the datum edge.
    pub centre: Length,
}

/// The shape of a groove in both slats.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GrooveShape {
    radius: Length,
    axis_height: Length,
}

impl GrooveShape {
    /// A groove of a radius round an axis at a height above the glue plane.
    #[must_use]
    pub const fn new(radius: Length, axis_height: Length) -> Self {
        Self {
            radius,
            axis_height,
        }
    }

    /// Radius of the groove: half the lead and the clearance.
    #[must_use]
    pub const fn radius(&self) -> Length {
        self.radius
    }

    /// Height of the lead axis above the glue plane.
    #[must_use]
    pub const fn axis_height(&self) -> Length {
        self.axis_height
    }

    /// Depth in the top slat, from the glue plane; nothing when the axis lies so low that
    /// the top slat is not reached.
    #[must_use]
    pub fn top_depth(&self) -> Length {
        (self.radius + self.axis_height).max(Length::ZERO)
    }

    /// Depth in the bottom slat, from the glue plane.
    #[must_use]
    pub fn bottom_depth(&self) -> Length {
        (self.radius - self.axis_height).max(Length::ZERO)
    }

    /// Section of both grooves of one pencil together.
    ///
    /// A cutter cannot reach under an edge, so the slat that holds the larger part has a groove
    /// with upright sides between the axis and the glue plane: half a disc and a rectangle
    /// 2ρ·|a|; the other slat has the segment ρ²·acos(|a|/ρ) − |a|·√(ρ² − a²). For a = 0 the
    /// two are the whole disc. Derived; valid for |a| ≤ ρ.
    #[must_use]
    pub fn section(&self) -> Area {
        let radius = self.radius.in_millimetres();
        let height = self.axis_height.abs().in_millimetres().min(radius);
        let deeper = std::f64::consts::FRAC_PI_2 * radius * radius + 2.0 * radius * height;
        let shallower = if radius > 0.0 {
            radius * radius * libm::acos(height / radius)
                - height * (radius * radius - height * height).max(0.0).sqrt()
        } else {
            0.0
        };
        Area::square_millimetres(deeper + shallower)
    }
}

/// Equal steps from the first groove.
pub(super) fn row(first: Length, pitch: Length, count: u32) -> Vec<Groove> {
    (0..count)
        .map(|k| Groove {
            number: k + 1,
            centre: first + pitch * f64::from(k),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn section(radius: f64, height: f64) -> f64 {
        GrooveShape::new(Length::millimetres(radius), Length::millimetres(height))
            .section()
            .in_square_millimetres()
    }

    #[test]
    fn a_level_axis_makes_the_whole_disc() {
        assert!((section(1.15, 0.0) - std::f64::consts::PI * 1.15 * 1.15).abs() < 1e-14);
    }

    #[test]
    fn sunk_whole_it_is_half_a_disc_under_a_slot() {
        let expected = std::f64::consts::FRAC_PI_2 + 2.0;
        assert!((section(1.0, 1.0) - expected).abs() < 1e-14);
        assert_eq!(section(1.0, -1.0), section(1.0, 1.0));
    }
}
