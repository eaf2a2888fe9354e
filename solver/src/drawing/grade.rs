//! How good the pencils of a position are, in three steps that can be told apart at a glance.

use crate::figure;

/// A step of the share of good pencils.
///
/// Where the steps lie is our own choice, no source: one pencil lost in a hundred, and one in
/// twenty.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Grade {
    /// At least 99 % are good: drawn whole.
    Sound,
    /// At least 95 % are good: struck through once.
    Fair,
    /// Fewer are good: crossed out.
    Poor,
}

impl Grade {
    /// Every step, the best first.
    pub const ALL: [Self; 3] = [Self::Sound, Self::Fair, Self::Poor];

    /// The step of a share of good pencils, a fraction. It is held against the steps as it is shown,
    /// to a tenth of a per cent.
    ///
    /// ```
    /// use solver::Grade;
    /// assert_eq!(Grade::of(0.992), Grade::Sound);
    /// assert_eq!(Grade::of(0.9896), Grade::Sound); // shown as 99.0 %
    /// assert_eq!(Grade::of(0.98), Grade::Fair);
    /// assert_eq!(Grade::of(0.5), Grade::Poor);
    /// ```
    #[must_use]
    pub fn of(share: f64) -> Self {
        let shown = (share * 1000.0).round();
        let reached = Self::ALL
            .into_iter()
            .find(|grade| shown >= grade.least() * 10.0);
        reached.unwrap_or(Self::Poor)
    }

    /// The least share of good pencils, per cent.
    pub(super) const fn least(self) -> f64 {
        match self {
            Self::Sound => 99.0,
            Self::Fair => 95.0,
            Self::Poor => 0.0,
        }
    }

    /// What its mark on a pencil says; nothing for a pencil without one.
    pub(super) fn legend(self) -> Option<String> {
        let (mark, better) = match self {
            Self::Sound => return None,
            Self::Fair => ("One stroke", Self::Sound),
            Self::Poor => ("Crossed", Self::Fair),
        };
        Some(format!("{mark}: below {}", figure::percent(better.least())))
    }
}
