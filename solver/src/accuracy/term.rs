//! The errors that are told apart.

use crate::field::Field;

/// One independent error of the machines, the slats or the leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Term {
    /// Place of each groove of each slat across the slat.
    GroovePosition,
    /// Place of each shaping cutter across the sandwich, one for each pencil.
    ShapingPosition,
    /// Diameter of each lead.
    LeadDiameter,
    /// Groove head against the fence, common to one slat.
    GrooveHead,
    /// Groove depth, common to one slat.
    GrooveDepth,
    /// Width of each slat.
    SlatWidth,
    /// Thickness of the bottom slat, from whose outer face the sandwich is shaped.
    BottomThickness,
    /// Shift of the top slat on the bottom slat at gluing.
    GlueShift,
    /// Shaping head sideways, common to the sandwich.
    ShapingAcross,
    /// Shaping head up and down, common to the sandwich.
    ShapingUp,
}

impl Term {
    /// How many there are.
    pub const COUNT: usize = 10;

    /// Every error, in the order in which the machines make them.
    pub const ALL: [Self; Self::COUNT] = [
        Self::GroovePosition,
        Self::ShapingPosition,
        Self::LeadDiameter,
        Self::GrooveHead,
        Self::GrooveDepth,
        Self::SlatWidth,
        Self::BottomThickness,
        Self::GlueShift,
        Self::ShapingAcross,
        Self::ShapingUp,
    ];

    /// The field that asks for it.
    ///
    /// ```
    /// use solver::Term;
    /// assert_eq!(Term::GlueShift.field().spec().label, "Shift at gluing");
    /// ```
    #[must_use]
    pub const fn field(self) -> Field {
        match self {
            Self::GroovePosition => Field::GroovePosition,
            Self::ShapingPosition => Field::ShapingPosition,
            Self::LeadDiameter => Field::LeadSpread,
            Self::GrooveHead => Field::GrooveHead,
            Self::GrooveDepth => Field::GrooveDepth,
            Self::SlatWidth => Field::WidthSpread,
            Self::BottomThickness => Field::ThicknessSpread,
            Self::GlueShift => Field::GlueShift,
            Self::ShapingAcross => Field::ShapingAcross,
            Self::ShapingUp => Field::ShapingUp,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_is_in_the_order_of_the_places() {
        for (place, term) in Term::ALL.into_iter().enumerate() {
            assert_eq!(term as usize, place);
        }
    }
}
