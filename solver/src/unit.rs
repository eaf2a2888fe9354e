//! The units a length is typed and shown in; inside, every length is in millimetres.

use crate::decimal::Decimal;

/// The unit lengths are typed and shown in. A view only: nothing is stored in it.
///
/// ```
/// use solver::LengthUnit;
///
/// assert_eq!(LengthUnit::Inch.label(), "in");
/// assert_eq!(LengthUnit::Inch.millimetres(), 25.4);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum LengthUnit {
    /// Millimetres, as the trade works.
    #[default]
    Millimetre,
    /// Inches of exactly 25.4 mm.
    Inch,
}

impl LengthUnit {
    /// The sign that stands beside a length.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }

    /// The sign that stands beside an area.
    #[must_use]
    pub fn area_label(self) -> &'static str {
        match self {
            Self::Millimetre => "mm²",
            Self::Inch => "in²",
        }
    }

    /// The sign that stands beside a volume: wood is measured in cubic centimetres, not in
    /// cubic millimetres.
    #[must_use]
    pub fn volume_label(self) -> &'static str {
        match self {
            Self::Millimetre => "cm³",
            Self::Inch => "in³",
        }
    }

    /// How many millimetres one of this unit is.
    #[must_use]
    pub fn millimetres(self) -> f64 {
        self.scale().to_f64()
    }

    /// The same as [`millimetres`](Self::millimetres), to the last decimal.
    pub(crate) fn scale(self) -> Decimal {
        match self {
            Self::Millimetre => Decimal::ONE,
            Self::Inch => Decimal::INCH,
        }
    }
}
