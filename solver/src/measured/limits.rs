//! What was agreed with the supplier: a nominal size and how far a slat may lie from it.

use crate::entry::LARGEST_ENTRY;
use crate::figure;
use crate::quantity::Length;
use crate::unit::LengthUnit;

/// Agreed limits of a size: one of them at least.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    nominal: Length,
    lower: Option<Length>,
    upper: Option<Length>,
}

/// Why limits cannot be worked with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LimitsProblem {
    /// Neither a lower nor an upper deviation is given.
    None,
    /// A size or a deviation is not a number strictly between ±10¹² mm.
    NotASize,
    /// The lower deviation is not below the upper one.
    Crossed {
        /// The lower deviation.
        lower: Length,
        /// The upper deviation.
        upper: Length,
    },
}

impl LimitsProblem {
    /// What is wrong, and what to try.
    #[must_use]
    pub fn message(self, unit: LengthUnit) -> String {
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        match self {
            Self::None => "There are no limits: give a lower or an upper deviation".to_owned(),
            Self::NotASize => {
                "A limit is no number that a length can have: type one, like −0.20".to_owned()
            }
            Self::Crossed { lower, upper } => format!(
                "The lower deviation {} is not below the upper one, {}: type a smaller one",
                length(lower),
                length(upper)
            ),
        }
    }
}

impl Limits {
    /// Limits as they stand on a drawing: a nominal size with its lower and upper deviation, each
    /// with its sign, so `−0.4` and `+0.1`. Without one of them that side is free.
    ///
    /// # Errors
    /// When there is no deviation, one is no size that can be measured, or the lower is not below the
    /// upper.
    ///
    /// ```
    /// use solver::{Length, measured::Limits};
    /// let mm = Length::millimetres;
    /// let limits = Limits::new(mm(74.0), Some(mm(-0.2)), Some(mm(0.3))).unwrap();
    /// assert_eq!(limits.lower(), Some(mm(73.8)));
    /// assert!(Limits::new(mm(74.0), Some(mm(0.2)), Some(mm(0.2))).is_err());
    /// ```
    pub fn new(
        nominal: Length,
        lower: Option<Length>,
        upper: Option<Length>,
    ) -> Result<Self, LimitsProblem> {
        let mut sizes = [Some(nominal), lower, upper].into_iter().flatten();
        if !sizes.all(|size| size.in_millimetres().abs() < LARGEST_ENTRY) {
            return Err(LimitsProblem::NotASize);
        }
        match (lower, upper) {
            (None, None) => return Err(LimitsProblem::None),
            (Some(lower), Some(upper)) if upper.fits_in(lower) => {
                return Err(LimitsProblem::Crossed { lower, upper });
            }
            _ => {}
        }
        Ok(Self {
            nominal,
            lower: lower.map(|deviation| nominal + deviation),
            upper: upper.map(|deviation| nominal + deviation),
        })
    }

    /// The size that was ordered.
    #[must_use]
    pub const fn nominal(&self) -> Length {
        self.nominal
    }

    /// The least size that was agreed, if there is one.
    #[must_use]
    pub const fn lower(&self) -> Option<Length> {
        self.lower
    }

    /// The greatest size that was agreed, if there is one.
    #[must_use]
    pub const fn upper(&self) -> Option<Length> {
        self.upper
    }
}
