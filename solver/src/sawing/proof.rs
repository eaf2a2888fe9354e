//! A bound by cases, in whole numbers, that anyone can check.

use super::certificate::Certificate;
use super::data::SawingData;
use super::needs::Needs;

/// Why no plan costs less than a bound.
///
/// Either a certificate says so of all plans, or the plans are parted by how many planks of one kind
/// they saw, at most so many or more, and there is a proof for each part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Proof {
    /// All plans of the case at once.
    Certified(Certificate),
    /// The plans that saw at most so many planks of a kind, and those that saw more.
    Parted {
        /// The kind of plank.
        plank: usize,
        /// At most so many, or more.
        at_most: u64,
        /// Proof for at most so many.
        fewer: Box<Proof>,
        /// Proof for more.
        more: Box<Proof>,
    },
}

impl Proof {
    /// No plan costs less; nothing where the proof is wrong. Every plank is priced anew, in whole
    /// numbers.
    ///
    /// ```
    /// use solver::sawing::{Certificate, Proof, SawingDraft};
    /// // Each piece is worth its length, a plank its own: the bound of the volume.
    /// let data = SawingDraft::along(100, 0, &[(45, 97), (36, 610), (31, 395), (14, 211)]).check().unwrap();
    /// let proof = |scale| Proof::Certified(Certificate { values: vec![45, 36, 31, 14], tolls: vec![0], scale });
    /// assert_eq!(proof(100).bound(&data), Some(416));
    /// assert_eq!(proof(99).bound(&data), None);
    /// ```
    #[must_use]
    pub fn bound(&self, data: &SawingData) -> Option<i64> {
        self.bound_for(data, &Needs::of(data))
    }

    fn bound_for(&self, data: &SawingData, needs: &Needs) -> Option<i64> {
        match self {
            Self::Certified(certificate) => certificate.proved(data, needs),
            Self::Parted {
                plank,
                at_most,
                fewer,
                more,
            } => {
                let (below, above) = needs.parted(*plank, *at_most)?;
                let bounds = [
                    below.map_or(Some(i64::MAX), |needs| fewer.bound_for(data, &needs))?,
                    above.map_or(Some(i64::MAX), |needs| more.bound_for(data, &needs))?,
                ];
                bounds.into_iter().min()
            }
        }
    }

    /// Certificates in it.
    #[must_use]
    pub fn certificates(&self) -> usize {
        match self {
            Self::Certified(_) => 1,
            Self::Parted { fewer, more, .. } => fewer.certificates() + more.certificates(),
        }
    }
}
