//! How accurately a shop works: the standard deviation of each error.

mod term;

pub use term::Term;

use crate::field::{Field, FieldProblem, Typed};
use crate::measured::{MeasuredSize, Sample};
use crate::quantity::Length;
use crate::slat::Slat;

/// How the size of an error is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Reading {
    /// One standard deviation.
    Deviation,
    /// ± limits, which stand for a number of standard deviations.
    Limits,
}

impl Reading {
    /// Every reading.
    pub const ALL: [Self; 2] = [Self::Deviation, Self::Limits];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Deviation => "Standard deviation",
            Self::Limits => "± limits",
        }
    }
}

/// The size of one error as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct ErrorDraft {
    /// How large it is.
    pub size: Typed,
    /// What that size is.
    pub reading: Reading,
}

impl ErrorDraft {
    /// The first value of a field, as a standard deviation.
    #[must_use]
    pub const fn initial(field: Field) -> Self {
        Self {
            size: Typed::initial(field),
            reading: Reading::Deviation,
        }
    }
}

/// The accuracy of a shop as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct AccuracyDraft {
    /// What it is called: a line of machines, a shift, a state after an overhaul.
    pub name: String,
    /// Place of each groove.
    pub groove_position: ErrorDraft,
    /// Place of each shaping cutter.
    pub shaping_position: ErrorDraft,
    /// Diameter of each lead.
    pub lead_diameter: ErrorDraft,
    /// Groove head against the fence.
    pub groove_head: ErrorDraft,
    /// Groove depth.
    pub groove_depth: ErrorDraft,
    /// Width of each slat.
    pub slat_width: ErrorDraft,
    /// Thickness of the bottom slat.
    pub bottom_thickness: ErrorDraft,
    /// Shift of the top slat on the bottom slat.
    pub glue_shift: ErrorDraft,
    /// Shaping head sideways.
    pub shaping_across: ErrorDraft,
    /// Shaping head up and down.
    pub shaping_up: ErrorDraft,
    /// Standard deviations that all ± limits stand for.
    pub sigmas: Typed,
    /// How far the mean width of the slats lies above nominal.
    pub width_offset: Typed,
    /// How far the mean thickness of the bottom slat lies above nominal.
    pub thickness_offset: Typed,
}

/// The accuracy of a shop that can be worked with.
///
/// Invariant: every standard deviation is finite and at least 0, every offset is finite.
#[derive(Debug, Clone, PartialEq)]
pub struct Accuracy {
    name: String,
    deviations: [Length; Term::COUNT],
    offsets: Offsets,
}

/// How far the mean of a size lies above its nominal, as measured; 0 where nothing was measured.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Offsets {
    /// Width of the top slat.
    pub top_width: Length,
    /// Width of the bottom slat.
    pub bottom_width: Length,
    /// Thickness of the bottom slat.
    pub bottom_thickness: Length,
}

impl AccuracyDraft {
    /// The first value in every field, each a standard deviation.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            groove_position: ErrorDraft::initial(Field::GroovePosition),
            shaping_position: ErrorDraft::initial(Field::ShapingPosition),
            lead_diameter: ErrorDraft::initial(Field::LeadSpread),
            groove_head: ErrorDraft::initial(Field::GrooveHead),
            groove_depth: ErrorDraft::initial(Field::GrooveDepth),
            slat_width: ErrorDraft::initial(Field::WidthSpread),
            bottom_thickness: ErrorDraft::initial(Field::ThicknessSpread),
            glue_shift: ErrorDraft::initial(Field::GlueShift),
            shaping_across: ErrorDraft::initial(Field::ShapingAcross),
            shaping_up: ErrorDraft::initial(Field::ShapingUp),
            sigmas: Typed::initial(Field::Sigmas),
            width_offset: Typed::initial(Field::WidthOffset),
            thickness_offset: Typed::initial(Field::ThicknessOffset),
        }
    }

    /// What stands there for an error.
    #[must_use]
    pub const fn error(&self, term: Term) -> &ErrorDraft {
        match term {
            Term::GroovePosition => &self.groove_position,
            Term::ShapingPosition => &self.shaping_position,
            Term::LeadDiameter => &self.lead_diameter,
            Term::GrooveHead => &self.groove_head,
            Term::GrooveDepth => &self.groove_depth,
            Term::SlatWidth => &self.slat_width,
            Term::BottomThickness => &self.bottom_thickness,
            Term::GlueShift => &self.glue_shift,
            Term::ShapingAcross => &self.shaping_across,
            Term::ShapingUp => &self.shaping_up,
        }
    }

    /// What stands there for an error, to be changed.
    pub const fn error_mut(&mut self, term: Term) -> &mut ErrorDraft {
        match term {
            Term::GroovePosition => &mut self.groove_position,
            Term::ShapingPosition => &mut self.shaping_position,
            Term::LeadDiameter => &mut self.lead_diameter,
            Term::GrooveHead => &mut self.groove_head,
            Term::GrooveDepth => &mut self.groove_depth,
            Term::SlatWidth => &mut self.slat_width,
            Term::BottomThickness => &mut self.bottom_thickness,
            Term::GlueShift => &mut self.glue_shift,
            Term::ShapingAcross => &mut self.shaping_across,
            Term::ShapingUp => &mut self.shaping_up,
        }
    }

    /// Puts the spread and the mean of a measured size of a stock in the place of what is assumed,
    /// as far as the sample tells them.
    ///
    /// ```
    /// use solver::measured::{MeasuredSize, Sample};
    /// use solver::{AccuracyDraft, Length, SlatDraft, Term};
    /// let stock = SlatDraft::new("74 × 5").check().unwrap();
    /// let widths = Sample::new(&[74.1, 74.2, 74.3].map(Length::millimetres)).unwrap();
    /// let mut draft = AccuracyDraft::new("Line 1");
    /// draft.take_measured(MeasuredSize::Width, &widths, &stock);
    /// let line = draft.check().unwrap();
    /// assert!((line.deviation(Term::SlatWidth).in_millimetres() - 0.1).abs() < 1e-9);
    /// assert!((line.offsets().top_width.in_millimetres() - 0.2).abs() < 1e-9);
    /// ```
    pub fn take_measured(&mut self, size: MeasuredSize, sample: &Sample, stock: &Slat) {
        self.take_moments(size, sample.mean(), sample.deviation().ok(), stock);
    }

    /// The same with a mean and a standard deviation that are known already.
    pub fn take_moments(
        &mut self,
        size: MeasuredSize,
        mean: Length,
        deviation: Option<Length>,
        stock: &Slat,
    ) {
        if let Some(deviation) = deviation {
            *self.error_mut(size.term()) = ErrorDraft {
                size: Typed::Number(deviation.in_millimetres()),
                reading: Reading::Deviation,
            };
        }
        let offset = mean - size.nominal(stock);
        let field = match size {
            MeasuredSize::Width => &mut self.width_offset,
            MeasuredSize::Thickness => &mut self.thickness_offset,
        };
        *field = Typed::Number(offset.in_millimetres());
    }

    /// The accuracy, or everything that is wrong with it. An error of ± t with limits at k
    /// standard deviations has the standard deviation t / k.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range. The number of
    /// sigmas is not read where no error is given by limits.
    ///
    /// ```
    /// use solver::{AccuracyDraft, Length, Reading, Term, Typed};
    /// let mut draft = AccuracyDraft::new("Line 1");
    /// draft.glue_shift.size = Typed::Number(0.06);
    /// draft.glue_shift.reading = Reading::Limits; // at 3 standard deviations
    /// let shift = draft.check().unwrap().deviation(Term::GlueShift);
    /// assert_eq!(shift, Length::millimetres(0.02));
    /// ```
    pub fn check(&self) -> Result<Accuracy, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let limited = |term: Term| self.error(term).reading == Reading::Limits;
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let sizes = Term::ALL.map(|term| read(&self.error(term).size, term.field()));
        let sigmas = if Term::ALL.into_iter().any(limited) {
            read(&self.sigmas, Field::Sigmas)
        } else {
            1.0
        };
        let width = Length::millimetres(read(&self.width_offset, Field::WidthOffset));
        let thickness = Length::millimetres(read(&self.thickness_offset, Field::ThicknessOffset));
        if !problems.is_empty() {
            return Err(problems);
        }
        let deviation = |term: Term| {
            let size = sizes[term as usize];
            Length::millimetres(if limited(term) { size / sigmas } else { size })
        };
        Ok(Accuracy {
            name: self.name.clone(),
            deviations: Term::ALL.map(deviation),
            offsets: Offsets {
                top_width: width,
                bottom_width: width,
                bottom_thickness: thickness,
            },
        })
    }
}

impl Accuracy {
    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The standard deviation of an error, at least 0.
    #[must_use]
    pub const fn deviation(&self, term: Term) -> Length {
        self.deviations[term as usize]
    }

    /// The same accuracy with another standard deviation of one error, as measured; nothing
    /// where it is below 0 or not finite.
    #[must_use]
    pub fn with_deviation(mut self, term: Term, deviation: Length) -> Option<Self> {
        let size = deviation.in_millimetres();
        self.deviations[term as usize] = deviation;
        (size.is_finite() && size >= 0.0).then_some(self)
    }

    /// How far the means of measured sizes lie above nominal.
    #[must_use]
    pub const fn offsets(&self) -> Offsets {
        self.offsets
    }

    /// The same accuracy with slats whose means lie off nominal, as measured; nothing where an
    /// offset is not finite.
    #[must_use]
    pub fn with_offsets(mut self, offsets: Offsets) -> Option<Self> {
        let all = [
            offsets.top_width,
            offsets.bottom_width,
            offsets.bottom_thickness,
        ];
        self.offsets = offsets;
        all.iter()
            .all(|offset| offset.in_millimetres().is_finite())
            .then_some(self)
    }

    /// The same accuracy with one error halved.
    #[must_use]
    pub fn halved(mut self, term: Term) -> Self {
        self.deviations[term as usize] = self.deviation(term) / 2.0;
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn accuracy() -> Accuracy {
        AccuracyDraft::new("").check().unwrap()
    }

    #[test]
    fn every_bad_field_is_reported_at_once() {
        let mut draft = AccuracyDraft::new("");
        draft.groove_head.size = Typed::Number(-0.01);
        draft.shaping_up.size = Typed::Text("little".into());
        draft.shaping_up.reading = Reading::Limits;
        draft.sigmas = Typed::Number(0.5);
        draft.thickness_offset = Typed::Text("thick".into());
        let problems = draft.check().unwrap_err();
        let fields: Vec<Field> = problems.iter().map(|problem| problem.field).collect();
        let expected = [
            Field::GrooveHead,
            Field::ShapingUp,
            Field::Sigmas,
            Field::ThicknessOffset,
        ];
        assert_eq!(fields, expected);
    }

    #[test]
    fn sigmas_that_nothing_is_divided_by_may_hold_anything() {
        let mut draft = AccuracyDraft::new("");
        draft.sigmas = Typed::Text("many".into());
        assert!(draft.check().is_ok());
    }

    #[test]
    fn each_error_has_a_place_of_its_own() {
        for term in Term::ALL {
            let mut draft = AccuracyDraft::new("");
            draft.error_mut(term).size = Typed::Number(1.5);
            let changed = draft.check().unwrap();
            for other in Term::ALL {
                let expected = if other == term {
                    Length::millimetres(1.5)
                } else {
                    accuracy().deviation(other)
                };
                assert_eq!(changed.deviation(other), expected);
            }
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let with = |size| accuracy().with_deviation(Term::SlatWidth, Length::millimetres(size));
        assert!(with(-0.1).is_none() && with(f64::NAN).is_none() && with(0.0).is_some());
        let offsets = Offsets {
            bottom_width: Length::millimetres(f64::INFINITY),
            ..Offsets::default()
        };
        assert!(accuracy().with_offsets(offsets).is_none());
    }

    #[test]
    fn halving_changes_one_error_only() {
        let (whole, half) = (accuracy(), accuracy().halved(Term::GlueShift));
        for term in Term::ALL {
            let share = if term == Term::GlueShift { 0.5 } else { 1.0 };
            assert_eq!(half.deviation(term), whole.deviation(term) * share);
        }
    }
}
