//! What lies between two bounds, and how sure one can be of it.

/// A range from one bound to another, both included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval<T> {
    /// The lower bound.
    pub from: T,
    /// The upper bound.
    pub to: T,
}

/// How often an interval made this way holds the true value: 95 % unless something else is asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Confidence(f64);

impl Confidence {
    /// The usual one, 95 %.
    pub const USUAL: Self = Self(0.95);

    /// A confidence given as a share from 0.5 to 0.9999; nothing beyond that.
    ///
    /// ```
    /// use solver::measured::Confidence;
    /// assert_eq!(Confidence::new(0.99).unwrap().level(), 0.99);
    /// assert!(Confidence::new(1.0).is_none());
    /// ```
    #[must_use]
    pub fn new(level: f64) -> Option<Self> {
        (0.5..=0.9999).contains(&level).then_some(Self(level))
    }

    /// The share, 0.5 to 0.9999.
    #[must_use]
    pub const fn level(self) -> f64 {
        self.0
    }

    /// The share left out on each side.
    pub(super) fn tail(self) -> f64 {
        (1.0 - self.0) / 2.0
    }
}

impl Default for Confidence {
    fn default() -> Self {
        Self::USUAL
    }
}
