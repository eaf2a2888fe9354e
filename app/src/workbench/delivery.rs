//! Slats of a delivery as they were measured. They are not kept: what is used of them is.

use super::Workbench;
use leptos::prelude::*;
use solver::measured::{Limits, Readings, ReadingsProblem, Sample, read};
use solver::{Field, Id, Length, ProjectDraft, Slat, Term, Typed};

/// A list of measurements, and how far a slat may be off. A handle.
#[derive(Clone, Copy)]
pub struct Delivery {
    /// The list as it was pasted or opened.
    pub text: RwSignal<String>,
    /// What was agreed as ±, as it is typed; empty for what the stock may lack.
    pub agreed: RwSignal<String>,
    measured: Memo<Option<Result<Measured, ReadingsProblem>>>,
}

/// What was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// The cells.
    pub readings: Readings,
    /// The widths, where there are any.
    pub widths: Option<Sample>,
    /// The thicknesses, where there are any.
    pub thicknesses: Option<Sample>,
}

impl Delivery {
    /// Nothing is measured yet.
    #[must_use]
    pub fn new(bench: Workbench) -> Self {
        let text = RwSignal::new(String::new());
        let measured = Memo::new(move |_| {
            let text = text.read();
            if text.trim().is_empty() {
                return None;
            }
            Some(read(&text, bench.unit.get()).map(|readings| Measured {
                widths: Sample::new(&readings.widths),
                thicknesses: Sample::new(&readings.thicknesses),
                readings,
            }))
        });
        Self {
            text,
            agreed: RwSignal::new(String::new()),
            measured,
        }
    }

    /// What was read, or why nothing was.
    #[must_use]
    pub const fn measured(&self) -> Memo<Option<Result<Measured, ReadingsProblem>>> {
        self.measured
    }
}

/// The stock of the bottom slat, from whose face the sandwich is shaped.
#[must_use]
pub fn stock(project: &ProjectDraft) -> Option<Slat> {
    let at = project.slat_place(project.layout.bottom)?;
    project.slats[at].draft.check().ok()
}

/// The limits of a size: its nominal and what was agreed as ±, or else what the stock may lack.
#[must_use]
pub fn limits(nominal: Length, lacks: Length, agreed: &Typed) -> Option<Limits> {
    let (lower, upper) = match agreed.read(Field::WidthTolerance) {
        Ok(agreed) if agreed > 0.0 => {
            let agreed = Length::millimetres(agreed);
            (-agreed, Some(agreed))
        }
        _ if lacks > Length::ZERO => (-lacks, None),
        _ => return None,
    };
    Limits::new(nominal, Some(lower), upper).ok()
}

/// Puts the spread and the mean of what was measured in the place of what is assumed of the line,
/// as far as the measurements tell them.
pub fn use_measured(project: &mut ProjectDraft, measured: &Measured) {
    let Some(stock) = stock(project) else {
        return;
    };
    let sizes = [
        (&measured.widths, Term::SlatWidth, stock.width()),
        (
            &measured.thicknesses,
            Term::BottomThickness,
            stock.thickness(),
        ),
    ];
    let line: Id = project.layout.accuracy;
    let Some(at) = project.accuracy_place(line) else {
        return;
    };
    let draft = &mut project.accuracies[at].draft;
    for (sample, term, nominal) in sizes {
        let Some(sample) = sample else {
            continue;
        };
        if let Ok(deviation) = sample.deviation() {
            let error = draft.error_mut(term);
            error.size = Typed::Number(deviation.in_millimetres());
            error.reading = solver::Reading::Deviation;
        }
        let offset = Typed::Number((sample.mean() - nominal).in_millimetres());
        match term {
            Term::SlatWidth => draft.width_offset = offset,
            _ => draft.thickness_offset = offset,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use solver::LengthUnit;

    fn measured(text: &str) -> Measured {
        let readings = read(text, LengthUnit::Millimetre).unwrap();
        Measured {
            widths: Sample::new(&readings.widths),
            thicknesses: Sample::new(&readings.thicknesses),
            readings,
        }
    }

    #[test]
    fn what_was_measured_takes_the_place_of_what_is_assumed() {
        let mut project = demo::project();
        use_measured(&mut project, &measured("74.1;5.00\n74.3;5.02\n74.2;5.04\n"));
        let accuracy = project.check_accuracy().unwrap();
        let near =
            |length: Length, expected: f64| (length.in_millimetres() - expected).abs() < 1e-9;
        assert!(near(accuracy.deviation(Term::SlatWidth), 0.1));
        assert!(near(accuracy.deviation(Term::BottomThickness), 0.02));
        assert!(near(accuracy.offsets().top_width, 0.2));
        assert!(near(accuracy.offsets().bottom_thickness, 0.02));
    }

    #[test]
    fn widths_alone_leave_the_thickness_as_it_is_assumed() {
        let mut project = demo::project();
        let before = project.check_accuracy().unwrap();
        use_measured(&mut project, &measured("74.1\n"));
        let after = project.check_accuracy().unwrap();
        // One slat tells where the mean may be, and nothing of the spread.
        assert_eq!(
            after.deviation(Term::SlatWidth),
            before.deviation(Term::SlatWidth)
        );
        assert!((after.offsets().top_width.in_millimetres() - 0.1).abs() < 1e-9);
        assert_eq!(
            after.offsets().bottom_thickness,
            before.offsets().bottom_thickness
        );
    }

    #[test]
    fn limits_are_what_was_agreed_or_what_the_stock_may_lack() {
        let mm = Length::millimetres;
        let agreed = limits(mm(74.0), mm(0.3), &Typed::Number(0.2)).unwrap();
        assert_eq!(
            (agreed.lower(), agreed.upper()),
            (Some(mm(73.8)), Some(mm(74.2)))
        );
        let lacking = limits(mm(74.0), mm(0.5), &Typed::empty()).unwrap();
        assert_eq!((lacking.lower(), lacking.upper()), (Some(mm(73.5)), None));
        assert_eq!(limits(mm(74.0), Length::ZERO, &Typed::empty()), None);
    }
}
