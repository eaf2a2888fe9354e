//! Choices of `solver` as they are said.

use serde::{Deserialize, Serialize};

/// What makes one layout better than another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum AimWord {
    /// Most pencils from a sandwich.
    Pencils,
    /// Least wood bought for a gross.
    Wood,
}

impl From<AimWord> for solver::Aim {
    fn from(word: AimWord) -> Self {
        match word {
            AimWord::Pencils => Self::Pencils,
            AimWord::Wood => Self::Wood,
        }
    }
}

/// What makes one found layout better than another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum GoalWord {
    /// Most pencils from a sandwich.
    Pencils,
    /// Least wood bought for a gross.
    Wood,
    /// Least money for a gross.
    Money,
    /// Widest margin for error.
    Margin,
    /// Least money for a gross of the pencils that errors leave good.
    Good,
}

impl From<solver::Goal> for GoalWord {
    fn from(goal: solver::Goal) -> Self {
        match goal {
            solver::Goal::Pencils => Self::Pencils,
            solver::Goal::Wood => Self::Wood,
            solver::Goal::Money => Self::Money,
            solver::Goal::Margin => Self::Margin,
            solver::Goal::Good => Self::Good,
        }
    }
}

impl From<GoalWord> for solver::Goal {
    fn from(word: GoalWord) -> Self {
        match word {
            GoalWord::Pencils => Self::Pencils,
            GoalWord::Wood => Self::Wood,
            GoalWord::Money => Self::Money,
            GoalWord::Margin => Self::Margin,
            GoalWord::Good => Self::Good,
        }
    }
}

/// The unit of the lengths in texts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum UnitWord {
    /// Millimetres.
    Millimetre,
    /// Inches.
    Inch,
}

impl From<UnitWord> for solver::LengthUnit {
    fn from(word: UnitWord) -> Self {
        match word {
            UnitWord::Millimetre => Self::Millimetre,
            UnitWord::Inch => Self::Inch,
        }
    }
}

impl From<solver::LengthUnit> for UnitWord {
    fn from(unit: solver::LengthUnit) -> Self {
        match unit {
            solver::LengthUnit::Millimetre => Self::Millimetre,
            solver::LengthUnit::Inch => Self::Inch,
        }
    }
}
