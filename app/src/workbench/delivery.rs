//! Slats of a delivery as they were measured. They are not kept: what is used of them is.

use super::Workbench;
use leptos::prelude::*;
use solver::measured::{
    AgreedProblem, MeasuredSize, Readings, ReadingsProblem, Sample, read, read_agreed,
};
use solver::{Id, Length, ProjectDraft, Slat};

/// A list of measurements, and how far a slat may be off. A handle.
#[derive(Clone, Copy)]
pub struct Delivery {
    /// The list as it was pasted or opened.
    pub text: RwSignal<String>,
    /// What was agreed as ±, as it is typed; empty for what the stock may lack.
    pub agreed_text: RwSignal<String>,
    agreed: Memo<Result<Option<Length>, AgreedProblem>>,
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

impl Measured {
    /// The measurements of a size, where there are any.
    #[must_use]
    pub const fn sample(&self, size: MeasuredSize) -> Option<&Sample> {
        match size {
            MeasuredSize::Width => self.widths.as_ref(),
            MeasuredSize::Thickness => self.thicknesses.as_ref(),
        }
    }
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
        let agreed_text = RwSignal::new(String::new());
        Self {
            text,
            agreed_text,
            agreed: Memo::new(move |_| read_agreed(&agreed_text.read(), bench.unit.get())),
            measured,
        }
    }

    /// What was agreed as ±, or what is wrong with what was typed.
    #[must_use]
    pub const fn agreed(&self) -> Memo<Result<Option<Length>, AgreedProblem>> {
        self.agreed
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

/// Puts the spread and the mean of what was measured in the place of what is assumed of the line,
/// as far as the measurements tell them.
pub fn use_measured(project: &mut ProjectDraft, measured: &Measured) {
    let Some(stock) = stock(project) else {
        return;
    };
    let line: Id = project.layout.accuracy;
    let Some(at) = project.accuracy_place(line) else {
        return;
    };
    let draft = &mut project.accuracies[at].draft;
    for size in MeasuredSize::ALL {
        if let Some(sample) = measured.sample(size) {
            draft.take_measured(size, sample, &stock);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use solver::{LengthUnit, Term};

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
}
