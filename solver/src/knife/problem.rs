//! What keeps a knife from being made, with numbers and what to try.

use super::Blade;
use crate::figure;
use crate::outline::Undercut;
use crate::quantity::{Angle, Length};
use crate::unit::LengthUnit;
use std::fmt;

/// What keeps a knife from being made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum KnifeProblem {
    /// There is no pencil to cut.
    NoPencils,
    /// Two level heads cannot shape it.
    Undercut(Undercut),
    /// Cuts stand too close side by side: grooves, or pencils with the overcut between them.
    LandTooNarrow {
        /// The knife.
        blade: Blade,
        /// Wood between two neighbours; below 0 they overlap.
        land: Length,
        /// What the leaning sides of the overcut take up.
        needed: Length,
    },
    /// The edge is deeper than a knife at this hook angle can be.
    DeeperThanHead {
        /// The knife.
        blade: Blade,
        /// Its depth, square to the table.
        depth: Length,
        /// Depth that it must stay below: R·(1 − sin γ).
        most: Length,
        /// Cutting radius R.
        radius: Length,
        /// Hook angle γ.
        hook: Angle,
    },
}

impl KnifeProblem {
    /// What is wrong, where, against what, and what to try.
    ///
    /// ```
    /// use solver::{KnifeProblem, LengthUnit};
    /// let told = KnifeProblem::NoPencils.message(LengthUnit::Millimetre);
    /// assert!(told.starts_with("No pencil fits"));
    /// ```
    #[must_use]
    pub fn message(self, unit: LengthUnit) -> String {
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        match self {
            Self::NoPencils => {
                "No pencil fits on these slats, so there is no knife to make: choose wider slats, or a smaller barrel"
                    .to_owned()
            }
            Self::Undercut(undercut) => format!(
                "No level head reaches a hollow {} deep in the side of the pencil: turn the barrel, or choose another outline",
                length(undercut.depth)
            ),
            Self::LandTooNarrow {
                blade,
                land,
                needed,
            } => format!(
                "{} needs {} between two cuts and has {}: make the pitch wider, or overcut, draft and clearance smaller",
                blade.label(),
                length(needed),
                length(land)
            ),
            Self::DeeperThanHead {
                blade,
                depth,
                most,
                radius,
                hook,
            } => format!(
                "{} is {} deep, and in a head of {} cutting radius at a hook angle of {} it can be less than {}: take a larger head or a smaller hook angle",
                blade.label(),
                length(depth),
                length(radius),
                figure::angle(hook.in_degrees()),
                length(most)
            ),
        }
    }
}

impl fmt::Display for KnifeProblem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message(LengthUnit::Millimetre))
    }
}

impl std::error::Error for KnifeProblem {}
