//! Amounts that can pass `u32`.

use serde::{Deserialize, Serialize};

/// A whole number as an `f64`: exact up to 2⁵³, beyond that the nearest there is.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
pub struct Whole(f64);

impl Whole {
    /// As a number of pieces; below 0 it is 0.
    #[must_use]
    pub const fn pieces(self) -> u64 {
        self.0 as u64
    }

    /// As hundredths of the currency.
    #[must_use]
    pub const fn hundredths(self) -> i64 {
        self.0 as i64
    }
}

impl From<u64> for Whole {
    fn from(pieces: u64) -> Self {
        Self(pieces as f64)
    }
}

impl From<i64> for Whole {
    fn from(hundredths: i64) -> Self {
        Self(hundredths as f64)
    }
}
