//! What measurements are held against.

use solver::entry::{self, Dimension};
use solver::measured::{Confidence, Limits};
use solver::{Length, LengthUnit};

use crate::arguments::{AskedMeasured, Side};

/// What measurements are held against, and how sure the answer has to be.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Against {
    /// How sure bounds are.
    pub(super) confidence: Confidence,
    /// The agreed limits, where there are any.
    pub(super) limits: Option<Limits>,
    /// The size that they are of.
    pub(super) of: Side,
    /// How closely the mean is to be known.
    pub(super) mean_within: Option<Length>,
    /// How closely the standard deviation is to be known, as a share of it.
    pub(super) deviation_within: Option<f64>,
}

impl Against {
    /// Reads what was asked.
    ///
    /// # Errors
    /// What is wrong with each length, or with the limits that they make, a line for each.
    pub(crate) fn read(asked: &AskedMeasured) -> Result<Self, String> {
        let unit: LengthUnit = asked.unit.into();
        let mut wrong = Vec::new();
        let mut length = |name, text: &Option<String>| {
            let read = entry::read(text.as_ref()?, Dimension::Length, unit);
            let read = read.map_err(|problem| wrong.push(format!("{name} {problem}")));
            read.ok().map(Length::millimetres)
        };
        let nominal = length("--nominal", &asked.nominal);
        let lower = length("--lower", &asked.lower);
        let upper = length("--upper", &asked.upper);
        let mean_within = length("--mean-within", &asked.mean_within);
        if mean_within.is_some_and(|within| within <= Length::ZERO) {
            wrong.push("--mean-within must be above 0".to_owned());
        }
        let limits = match nominal {
            Some(nominal) if wrong.is_empty() => {
                let limits = Limits::new(nominal, lower, upper);
                limits
                    .map_err(|problem| wrong.push(problem.message(unit)))
                    .ok()
            }
            _ => None,
        };
        if wrong.is_empty() {
            Ok(Self {
                confidence: asked.confidence,
                limits,
                of: asked.of,
                mean_within,
                deviation_within: asked.deviation_within,
            })
        } else {
            Err(wrong.join("\n"))
        }
    }
}
