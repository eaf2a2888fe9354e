//! Which size of a slat was measured, and the limits that it is held against.

use super::Limits;
use crate::accuracy::Term;
use crate::entry::{self, Dimension, EntryProblem};
use crate::figure;
use crate::quantity::Length;
use crate::slat::Slat;
use crate::unit::LengthUnit;

/// A size that is measured on the slats of a delivery.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum MeasuredSize {
    /// Width, from the datum edge.
    Width,
    /// Thickness.
    Thickness,
}

/// Why what was agreed as ± cannot be worked with.
#[derive(Debug, Clone, PartialEq)]
pub enum AgreedProblem {
    /// It cannot be read.
    Unreadable(EntryProblem),
    /// It is no room at all, or more than any delivery is off.
    OutOfRange(Length),
}

impl AgreedProblem {
    /// What is wrong, against what, and what to try.
    #[must_use]
    pub fn message(&self, unit: LengthUnit) -> String {
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        match self {
            Self::Unreadable(problem) => format!("Agreed as ± {problem}"),
            Self::OutOfRange(agreed) => format!(
                "Agreed as ± must be more than 0 and at most {}; it is {}. Leave it empty for what the stock may lack",
                length(MOST_AGREED),
                length(*agreed)
            ),
        }
    }
}

/// More is not agreed of slats: common practice with room to spare, no source.
const MOST_AGREED: Length = Length::millimetres(5.0);

impl MeasuredSize {
    /// Every size, in the order of the columns of a list.
    pub const ALL: [Self; 2] = [Self::Width, Self::Thickness];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Width => "Width",
            Self::Thickness => "Thickness",
        }
    }

    /// The error of the line that its spread is: that of the slat from whose face the sandwich is
    /// shaped.
    #[must_use]
    pub const fn term(self) -> Term {
        match self {
            Self::Width => Term::SlatWidth,
            Self::Thickness => Term::BottomThickness,
        }
    }

    /// The size that was ordered.
    #[must_use]
    pub const fn nominal(self, stock: &Slat) -> Length {
        match self {
            Self::Width => stock.width(),
            Self::Thickness => stock.thickness(),
        }
    }

    /// The limits of a size of a stock: what was agreed as ±, or else what the stock may lack; none
    /// where it may lack nothing.
    ///
    /// ```
    /// use solver::{Length, SlatDraft, Typed, measured::MeasuredSize};
    /// let mut draft = SlatDraft::new("74 × 5");
    /// draft.width_tolerance = Typed::Number(0.5);
    /// let stock = draft.check().unwrap();
    /// let mm = Length::millimetres;
    /// let lacking = MeasuredSize::Width.limits(&stock, None).unwrap();
    /// assert_eq!((lacking.lower(), lacking.upper()), (Some(mm(73.5)), None));
    /// let agreed = MeasuredSize::Width.limits(&stock, Some(mm(0.2))).unwrap();
    /// assert_eq!((agreed.lower(), agreed.upper()), (Some(mm(73.8)), Some(mm(74.2))));
    /// assert_eq!(MeasuredSize::Thickness.limits(&stock, None), None);
    /// ```
    #[must_use]
    pub fn limits(self, stock: &Slat, agreed: Option<Length>) -> Option<Limits> {
        let lacks = match self {
            Self::Width => stock.grooved_width() - stock.guaranteed_width(),
            Self::Thickness => stock.grooved_thickness() - stock.guaranteed_thickness(),
        };
        let (lower, upper) = match agreed {
            Some(agreed) => (-agreed, Some(agreed)),
            None if lacks > Length::ZERO => (-lacks, None),
            None => return None,
        };
        Limits::new(self.nominal(stock), Some(lower), upper).ok()
    }
}

/// What was agreed with the supplier as ±, as it is typed; nothing where nothing stands.
///
/// # Errors
/// When it is no length, or not above 0 and at most 5 mm.
///
/// ```
/// use solver::{Length, LengthUnit::Millimetre, measured::read_agreed};
/// assert_eq!(read_agreed("0,2", Millimetre), Ok(Some(Length::millimetres(0.2))));
/// assert_eq!(read_agreed(" ", Millimetre), Ok(None));
/// let problem = read_agreed("2 ft", Millimetre).unwrap_err();
/// assert!(problem.message(Millimetre).starts_with("Agreed as ± has a unit that is not known here, “ft”"));
/// ```
pub fn read_agreed(text: &str, unit: LengthUnit) -> Result<Option<Length>, AgreedProblem> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let agreed = entry::read(text, Dimension::Length, unit).map_err(AgreedProblem::Unreadable)?;
    let agreed = Length::millimetres(agreed);
    if agreed <= Length::ZERO || agreed > MOST_AGREED {
        return Err(AgreedProblem::OutOfRange(agreed));
    }
    Ok(Some(agreed))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_have_been_agreed_is_told_with_its_bounds() {
        for (typed, shown) in [("0", "0.00"), ("-0.2", "−0.20"), ("7", "7.00")] {
            let problem = read_agreed(typed, LengthUnit::Millimetre).unwrap_err();
            let message = problem.message(LengthUnit::Millimetre);
            let message = message.replace(figure::THIN_SPACE, " ");
            assert_eq!(
                message,
                format!(
                    "Agreed as ± must be more than 0 and at most 5.00 mm; it is {shown} mm. Leave it empty for what the stock may lack"
                )
            );
        }
    }
}
