//! Slats of a delivery as they were measured. They are not kept: what is used of them is.

use super::Workbench;
use super::jobs::{Asker, JobState, take};
use super::pause::Pause;
use crate::project_file;
use crate::protocol::{MeasuredList, MeasuredLot, Reply, Request, SheetSizes, SizeWord};
use leptos::prelude::*;
use solver::measured::{AgreedProblem, read_agreed};
use solver::{Id, Length, ProjectDraft, Slat};

/// A list of measurements, and how far a slat may be off. A worker reads it, as it may be long. A
/// handle.
#[derive(Clone, Copy)]
pub struct Delivery {
    bench: Workbench,
    /// The list as it was pasted, opened or typed.
    pub list: RwSignal<String>,
    /// The file that it was opened from, where it is too long to be shown.
    pub opened: RwSignal<Option<String>>,
    /// The sheet that charts are drawn for, once it stands on the page.
    pub sheet: RwSignal<Option<SheetSizes>>,
    /// What was agreed as ±, as it is typed; empty for what the stock may lack.
    pub agreed_text: RwSignal<String>,
    agreed: Memo<Result<Option<Length>, AgreedProblem>>,
    state: RwSignal<JobState<MeasuredList>>,
    busy: RwSignal<bool>,
    asker: Asker,
}

impl Delivery {
    /// Nothing is measured yet.
    #[must_use]
    pub fn new(bench: Workbench) -> Self {
        let (state, busy) = (RwSignal::new(JobState::Waiting), RwSignal::new(false));
        let asker = Asker::at_rest(move |reply| {
            busy.set(false);
            match reply {
                Reply::Measured { measured, .. } => state.set(JobState::Done(measured)),
                other => take(state, other),
            }
        });
        let agreed_text = RwSignal::new(String::new());
        let delivery = Self {
            bench,
            list: RwSignal::new(String::new()),
            opened: RwSignal::new(None),
            sheet: RwSignal::new(None),
            agreed_text,
            agreed: Memo::new(move |_| read_agreed(&agreed_text.read(), bench.unit.get())),
            state,
            busy,
            asker,
        };
        delivery.ask_when_changed();
        delivery
    }

    /// What was agreed as ±, or what is wrong with what was typed.
    #[must_use]
    pub const fn agreed(&self) -> Memo<Result<Option<Length>, AgreedProblem>> {
        self.agreed
    }

    /// What the list says, or why it says nothing; the last answer while the next is looked for.
    #[must_use]
    pub fn state(&self) -> ReadSignal<JobState<MeasuredList>> {
        self.state.read_only()
    }

    /// Whether a list is being read.
    #[must_use]
    pub fn busy(&self) -> ReadSignal<bool> {
        self.busy.read_only()
    }

    /// The sizes that were measured.
    #[must_use]
    pub fn sizes(&self) -> Vec<SizeWord> {
        self.state.with(|state| match state {
            JobState::Done(measured) => measured.lots.iter().map(|lot| lot.size).collect(),
            _ => Vec::new(),
        })
    }

    /// What the measurements of a size say, where there are any.
    #[must_use]
    pub fn lot(&self, size: SizeWord) -> Option<MeasuredLot> {
        self.state.with(|state| match state {
            JobState::Done(measured) => measured.lots.iter().find(|lot| lot.size == size).cloned(),
            _ => None,
        })
    }

    /// Stops reading; the next change of the list starts it again.
    pub fn stop(&self) {
        self.asker.stop();
        self.busy.set(false);
        self.state.set(JobState::Stopped);
    }

    fn ask_when_changed(self) {
        let project = self.bench.project();
        // What the limits rest on.
        let stock = Memo::new(move |_| stock(&project.read()));
        // Being measured once more is no change.
        let sheet = Memo::new(move |_| self.sheet.get());
        let unit = self.bench.unit;
        let pause = Pause::new();
        Effect::new(move |_| {
            self.list.track();
            stock.track();
            unit.track();
            // With a ± that cannot be read, what was told still holds.
            if sheet.get().is_some() && self.agreed.read().is_ok() {
                pause.then(move || self.ask());
            }
        });
    }

    fn ask(self) {
        let (Some(sheet), Ok(agreed)) = (self.sheet.get_untracked(), self.agreed.get_untracked())
        else {
            return;
        };
        if self.busy.get_untracked() {
            // A worker that reads hears nothing: the old list ends with it.
            self.asker.stop();
            self.busy.set(false);
        }
        let list = self.list.get_untracked();
        if list.trim().is_empty() {
            self.state.set(JobState::Waiting);
            return;
        }
        let project = project_file::write(&self.bench.project().read_untracked());
        let unit = self.bench.unit.get_untracked().into();
        self.busy.set(true);
        self.asker.ask(|job| Request::Measure {
            job,
            project,
            unit,
            list,
            agreed_mm: agreed.map(Length::in_millimetres),
            sheet,
        });
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
pub fn use_measured(project: &mut ProjectDraft, lots: &[MeasuredLot]) {
    let Some(stock) = stock(project) else {
        return;
    };
    let line: Id = project.layout.accuracy;
    let Some(at) = project.accuracy_place(line) else {
        return;
    };
    let draft = &mut project.accuracies[at].draft;
    for lot in lots {
        let mean = Length::millimetres(lot.mean_mm);
        let deviation = lot.deviation_mm.map(Length::millimetres);
        draft.take_moments(lot.size.into(), mean, deviation, &stock);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::answer;
    use crate::demo;
    use crate::protocol::{JobId, UnitWord};
    use solver::Term;

    fn measured(list: &str) -> Vec<MeasuredLot> {
        let request = Request::Measure {
            job: JobId(1),
            project: project_file::write(&demo::project()),
            unit: UnitWord::Millimetre,
            list: list.to_owned(),
            agreed_mm: None,
            sheet: SheetSizes {
                width: 600.0,
                row: 26.0,
                text: 66.0,
            },
        };
        match answer(request, &mut |_| ()) {
            Reply::Measured { measured, .. } => measured.lots,
            other => panic!("{other:?}"),
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
