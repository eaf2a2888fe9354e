//! A proof as a list, so that a reader need not nest as deep as the proof does.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use solver::sawing::{Certificate, Proof};

/// Certificates for all plans, case by case. The first case is that of all plans; a case stands
/// before the two that it is parted into.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub(super) struct ProofPart(Vec<CasePart>);

/// A certificate for the plans of a case, or the two cases that they are parted into.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum CasePart {
    /// For all plans of the case.
    Certified(CertificatePart),
    /// By how many planks of a kind they saw.
    Parted {
        /// Place of the plank in the list of the project, from 0.
        plank: usize,
        /// At most so many, or more.
        at_most: u64,
        /// Place in this list, from 0, of the case of at most so many.
        fewer: usize,
        /// Place in this list, from 0, of the case of more.
        more: usize,
    },
}

/// Values of blanks and tolls of planks at which no plank holds more than it counts for. Whole numbers
/// of up to 19 digits, written as texts, as many programs read numbers to 15 digits only.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
pub(super) struct CertificatePart {
    /// Of each kind of blank, in the order of the project.
    values: Vec<String>,
    /// Of each kind of plank, in the order of the project.
    tolls: Vec<String>,
    /// By what amounts are multiplied.
    scale: String,
}

impl From<&Proof> for ProofPart {
    fn from(proof: &Proof) -> Self {
        let mut proofs = vec![proof];
        let mut cases = Vec::new();
        while let Some(proof) = proofs.get(cases.len()) {
            cases.push(match proof {
                Proof::Certified(certificate) => CasePart::Certified(certificate.into()),
                Proof::Parted {
                    plank,
                    at_most,
                    fewer,
                    more,
                } => {
                    let place = proofs.len();
                    proofs.extend([&**fewer, &**more]);
                    CasePart::Parted {
                        plank: *plank,
                        at_most: *at_most,
                        fewer: place,
                        more: place + 1,
                    }
                }
            });
        }
        Self(cases)
    }
}

impl From<&Certificate> for CertificatePart {
    fn from(certificate: &Certificate) -> Self {
        let texts = |numbers: &[i64]| numbers.iter().map(ToString::to_string).collect();
        Self {
            values: texts(&certificate.values),
            tolls: texts(&certificate.tolls),
            scale: certificate.scale.to_string(),
        }
    }
}

impl ProofPart {
    /// The proof; nothing where a number cannot be read, or a case is not parted into two others
    /// behind it.
    pub(super) fn proof(&self) -> Option<Proof> {
        let mut proofs: Vec<Option<Proof>> = self.0.iter().map(|_| None).collect();
        // From the end, so that the two cases of a case are there before it.
        for (at, case) in self.0.iter().enumerate().rev() {
            let mut take = |place: usize| proofs.get_mut(place)?.take().map(Box::new);
            let proof = match case {
                CasePart::Certified(certificate) => Proof::Certified(certificate.certificate()?),
                CasePart::Parted {
                    plank,
                    at_most,
                    fewer,
                    more,
                } => Proof::Parted {
                    plank: *plank,
                    at_most: *at_most,
                    fewer: take(*fewer)?,
                    more: take(*more)?,
                },
            };
            proofs[at] = Some(proof);
        }
        proofs.first_mut()?.take()
    }
}

impl CertificatePart {
    /// The certificate; nothing where a number cannot be read.
    pub(super) fn certificate(&self) -> Option<Certificate> {
        let numbers = |texts: &[String]| {
            let numbers = texts.iter().map(|text| text.parse().ok());
            numbers.collect::<Option<_>>()
        };
        Some(Certificate {
            values: numbers(&self.values)?,
            tolls: numbers(&self.tolls)?,
            scale: self.scale.parse().ok()?,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn certified(scale: i64) -> Box<Proof> {
        Box::new(Proof::Certified(Certificate {
            values: vec![45, 36],
            tolls: vec![-3],
            scale,
        }))
    }

    fn parted(at_most: u64, fewer: Box<Proof>, more: Box<Proof>) -> Box<Proof> {
        let plank = 0;
        Box::new(Proof::Parted {
            plank,
            at_most,
            fewer,
            more,
        })
    }

    #[track_caller]
    fn check(proof: &Proof) {
        let text = serde_json::to_string(&ProofPart::from(proof)).unwrap();
        let part: ProofPart = serde_json::from_str(&text).unwrap();
        assert!(part.proof().as_ref() == Some(proof), "{text}");
    }

    #[test]
    fn a_proof_is_read_back_as_it_was() {
        check(&certified(9_007_199_254_740_993));
        let low = parted(3, certified(1), certified(2));
        check(&parted(7, low, parted(9, certified(3), certified(4))));
    }

    #[test]
    fn a_proof_nested_deeper_than_any_reader_goes_is_read_back() {
        let mut proof = certified(0);
        for depth in 1..30_000 {
            proof = parted(depth, certified(depth.cast_signed()), proof);
        }
        let text = serde_json::to_string(&ProofPart::from(&*proof)).unwrap();
        let part: ProofPart = serde_json::from_str(&text).unwrap();
        let back = part.proof().unwrap();
        // To compare the proofs would take as many calls as they have levels.
        assert!(serde_json::to_string(&ProofPart::from(&back)).unwrap() == text);
    }

    #[test]
    fn a_list_that_is_no_tree_is_no_proof() {
        let certified = r#"{"certified":{"values":["1"],"tolls":["0"],"scale":"1"}}"#;
        let parted = |fewer: usize, more: usize| {
            format!(r#"{{"parted":{{"plank":0,"at_most":3,"fewer":{fewer},"more":{more}}}}}"#)
        };
        let is_proof = |first: &str| {
            let text = format!("[{first},{certified},{certified}]");
            let part: ProofPart = serde_json::from_str(&text).unwrap();
            part.proof().is_some()
        };
        assert!(is_proof(&parted(1, 2)));
        assert!(is_proof(&parted(2, 1)));
        for (fewer, more) in [(0, 1), (1, 1), (1, 0), (1, 3), (usize::MAX, 2)] {
            assert!(!is_proof(&parted(fewer, more)), "{fewer} {more}");
        }
        let wrong = r#"{"certified":{"values":["1.5"],"tolls":["0"],"scale":"1"}}"#;
        assert!(!is_proof(wrong));
        let none: ProofPart = serde_json::from_str("[]").unwrap();
        assert!(none.proof().is_none());
    }
}
