//! What measurements of a delivered lot tell: how the slats lie and spread, whether they keep the
//! agreed limits, and how many more to measure before that is known.
//!
//! Where a sample tells nothing, the answer says why instead of a number.
//!
//! ```
//! use solver::LengthUnit;
//! use solver::measured::{Sample, read};
//! let readings = read("Width (mm);Thickness\n74,02;5,01\n73,98;5,03", LengthUnit::Millimetre).unwrap();
//! let widths = Sample::new(&readings.widths).unwrap();
//! assert!((widths.mean().in_millimetres() - 74.0).abs() < 1e-9);
//! ```

mod capability;
mod distribution;
mod histogram;
mod interval;
mod limits;
mod needed;
mod normality;
mod outliers;
mod reading;
mod sample;
mod size;
#[cfg(test)]
mod tests;

pub use capability::{Capability, Outside, Ratio};
pub use histogram::Histogram;
pub use interval::{Confidence, Interval};
pub use limits::{Limits, LimitsProblem};
pub use needed::Needed;
pub use normality::Normality;
pub use outliers::Outliers;
pub use reading::{BadCell, CellProblem, Readings, ReadingsProblem, read};
pub use sample::{Sample, Untold};
pub use size::{AgreedProblem, MeasuredSize, read_agreed};
