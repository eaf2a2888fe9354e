//! Slats that the works saws itself, as a source of an order plan.

use super::check::hundredths;
use crate::field::{Field, FieldProblem, Typed};
use crate::order_plan::OwnSawing;
use crate::project::Id;

/// What sawing slats of one stock costs, and how many can be sawn. It may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct SawnSlatsDraft {
    /// The slat stock.
    pub slat: Id,
    /// Cost of a thousand slats, with the planks.
    pub thousand_cost: Typed,
    /// Most slats sawn in a period.
    pub most_slats: Typed,
    /// Whether the wood is certified.
    pub is_certified: bool,
}

impl SawnSlatsDraft {
    /// A new source of slats of a stock, with the first value in every field.
    #[must_use]
    pub const fn new(slat: Id) -> Self {
        Self {
            slat,
            thousand_cost: Typed::initial(Field::SawnCost),
            most_slats: Typed::initial(Field::SawnMost),
            is_certified: false,
        }
    }

    /// The source in whole slats and hundredths, or every rule it breaks.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range.
    ///
    /// ```
    /// use solver::{Id, SawnSlatsDraft};
    /// let sawn = SawnSlatsDraft::new(Id(1)).check().unwrap();
    /// assert_eq!((sawn.thousand_cost, sawn.most_slats), (10_000, 10_000));
    /// ```
    pub fn check(&self) -> Result<OwnSawing, Vec<FieldProblem>> {
        let cost = self.thousand_cost.read(Field::SawnCost);
        let most = self.most_slats.read(Field::SawnMost);
        match (cost, most) {
            (Ok(cost), Ok(most)) => Ok(OwnSawing {
                thousand_cost: hundredths(cost),
                // Within its range a number of pieces is whole and far within u64.
                most_slats: most as u64,
                certified: self.is_certified,
            }),
            (cost, most) => Err(cost.err().into_iter().chain(most.err()).collect()),
        }
    }
}
