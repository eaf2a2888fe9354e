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
        // A list of the cases to come, as a proof read from a file may be nested deeper than calls.
        let mut cases = vec![(self, Needs::of(data))];
        let mut bound = i64::MAX;
        while let Some((proof, needs)) = cases.pop() {
            match proof {
                Self::Certified(certificate) => {
                    bound = bound.min(certificate.proved(data, &needs)?);
                }
                Self::Parted {
                    plank,
                    at_most,
                    fewer,
                    more,
                } => {
                    let (below, above) = needs.parted(*plank, *at_most)?;
                    // Nothing is to be proved of a case that no plan can be in.
                    let parts = [(more, above), (fewer, below)];
                    cases.extend(
                        parts
                            .into_iter()
                            .filter_map(|(proof, needs)| Some((&**proof, needs?))),
                    );
                }
            }
        }
        Some(bound)
    }

    /// Certificates in it.
    #[must_use]
    pub fn certificates(&self) -> usize {
        let mut parts = vec![self];
        let mut certificates = 0;
        while let Some(proof) = parts.pop() {
            match proof {
                Self::Certified(_) => certificates += 1,
                Self::Parted { fewer, more, .. } => parts.extend([&**fewer, &**more]),
            }
        }
        certificates
    }

    /// A proof that proves nothing.
    const fn none() -> Self {
        Self::Certified(Certificate {
            values: Vec::new(),
            tolls: Vec::new(),
            scale: 0,
        })
    }
}

/// Part by part: left to itself, a deep proof would be dropped in calls as deep.
impl Drop for Proof {
    fn drop(&mut self) {
        let mut parts = Vec::new();
        self.give_up_parts(&mut parts);
        while let Some(mut proof) = parts.pop() {
            proof.give_up_parts(&mut parts);
        }
    }
}

impl Proof {
    /// Puts the parts that have parts of their own in a list.
    fn give_up_parts(&mut self, parts: &mut Vec<Self>) {
        if let Self::Parted { fewer, more, .. } = self {
            let deep = [fewer, more]
                .into_iter()
                .filter(|part| matches!(***part, Self::Parted { .. }));
            parts.extend(deep.map(|part| std::mem::replace(&mut **part, Self::none())));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sawing::SawingDraft;

    #[test]
    fn a_proof_of_any_depth_is_checked_and_dropped() {
        const DEPTH: usize = 20_000;
        // Each piece is worth its length: 416 planks, as in the example of a bound.
        let pieces = [(45, 97), (36, 610), (31, 395), (14, 211)];
        let data = SawingDraft::along(100, 0, &pieces).check().unwrap();
        let certified = || {
            Box::new(Proof::Certified(Certificate {
                values: vec![45, 36, 31, 14],
                tolls: vec![0],
                scale: 100,
            }))
        };
        for is_deep_in_fewer in [true, false] {
            let mut proof = certified();
            for depth in (0..DEPTH).rev() {
                let at_most = if is_deep_in_fewer {
                    2 * DEPTH - depth
                } else {
                    depth
                } as u64;
                let (fewer, more) = if is_deep_in_fewer {
                    (proof, certified())
                } else {
                    (certified(), proof)
                };
                proof = Box::new(Proof::Parted {
                    plank: 0,
                    at_most,
                    fewer,
                    more,
                });
            }
            assert_eq!(proof.certificates(), DEPTH + 1);
            assert_eq!(proof.bound(&data), Some(416));
        }
    }
}
