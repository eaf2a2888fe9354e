//! What is shared by all that leaves the office: the paper, and what of it is printed.

use super::live::live;
use crate::preference;
use crate::workbench::{Machined, Workbench};
use leptos::prelude::*;
use solver::{Drawing, Paper, PaperProblem, PaperSize};

/// What is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Print {
    /// The setting sheet.
    Sheet,
    /// The gauge.
    Gauge,
    /// The knives.
    Knives,
}

impl Print {
    /// Its name in the style sheet.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Gauge => "gauge",
            Self::Knives => "knives",
        }
    }
}

/// The setting, the paper in the printer, and what of it is printed. A handle.
#[derive(Clone, Copy)]
pub(crate) struct Office {
    /// What the machines are set to.
    pub(crate) machined: Memo<Option<Machined>>,
    /// The paper.
    pub(crate) paper: RwSignal<PaperSize>,
    /// What is printed by the browser's own command.
    pub(crate) print: RwSignal<Print>,
}

/// A drawing and the paper it fits on; or why it fits on none; or nothing to draw.
pub(crate) type OnPaper = Memo<Option<Result<(Paper, Drawing), PaperProblem>>>;

impl Office {
    pub(crate) fn new(machined: Memo<Option<Machined>>) -> Self {
        let paper = RwSignal::new(preference::paper());
        Effect::new(move |_| preference::keep_paper(paper.get()));
        Self {
            machined,
            paper,
            print: RwSignal::new(Print::Sheet),
        }
    }

    /// Whether there is no setting.
    pub(crate) fn is_empty(self) -> bool {
        let machined = self.machined.read();
        machined.as_ref().and_then(Machined::setting).is_none()
    }

    /// A line that tells what keeps the setting from being made, and what is missing without it; nothing
    /// where there is one.
    pub(crate) fn wanting(self, without: &'static str) -> AnyView {
        let bench = expect_context::<Workbench>();
        let words = move || {
            let machined = self.machined.read();
            let Some(machined) = machined.as_ref() else {
                return Some(format!("{without}: mend what is listed first."));
            };
            let problems = machined.setting.as_ref().err()?;
            let unit = bench.unit.get();
            let problems = problems.iter().map(|problem| problem.message(unit));
            let problems = problems.collect::<Vec<_>>().join(". ");
            Some(format!("{without}: {problems}."))
        };
        view! { <p class="empty" hidden=move || !self.is_empty()>{live(words)}</p> }.into_any()
    }

    /// Prints a part, as soon as the page shows it.
    pub(crate) fn print(self, print: Print) {
        self.print.set(print);
        request_animation_frame(|| {
            // A page that may not print leaves it to the browser's own command.
            let _ = window().print();
        });
    }
}

/// The drawing alone.
pub(crate) fn drawing_of(on_paper: OnPaper) -> Memo<Option<Drawing>> {
    Memo::new(move |_| {
        on_paper.with(|drawn| match drawn {
            Some(Ok((_, drawing))) => Some(drawing.clone()),
            _ => None,
        })
    })
}

/// The class of the paper that a drawing lies on, by which it is printed.
pub(crate) fn paper_class(on_paper: OnPaper) -> &'static str {
    on_paper.with(|drawn| match drawn {
        Some(Ok((paper, _))) => page_of(*paper),
        _ => "",
    })
}

/// The class of a sheet of paper.
pub(crate) const fn page_of(paper: Paper) -> &'static str {
    match (paper.size, paper.landscape) {
        (PaperSize::A4, false) => "a4",
        (PaperSize::A4, true) => "a4-long",
        (PaperSize::Letter, false) => "letter",
        (PaperSize::Letter, true) => "letter-long",
    }
}
