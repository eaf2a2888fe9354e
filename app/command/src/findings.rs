//! What is wrong with a project, and what is worth knowing: the answer of `check`, and of every
//! other command that the file keeps from its work.

use app::project_file::{FileCause, FileProblem, Opened};
use solver::{LengthUnit, Problem, figure};

use crate::answer::Answer;
use crate::document::{self, CheckDocument};
use crate::ending::Ending;
use crate::note::Note;
use crate::path;

/// Everything that was found in a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Findings {
    /// What the project is called; nothing where the file is no project.
    pub(crate) project: Option<String>,
    /// What has to be mended.
    pub(crate) problems: Vec<Told>,
    /// What is worth knowing.
    pub(crate) notes: Vec<Told>,
}

/// Something that was found, and where.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Told {
    /// The place in the file; empty for the whole file.
    pub(crate) path: String,
    /// What is there.
    pub(crate) matter: Matter,
    /// What to try, where the matter does not say it.
    pub(crate) hint: Option<&'static str>,
}

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Matter {
    /// A broken rule of a field, whose bounds are told in the unit asked for.
    Field(solver::FieldProblem),
    /// Anything else, in words.
    Words(String),
}

impl Findings {
    /// Everything in a project: each broken rule, and each name that the layout lacks.
    pub(crate) fn of(opened: &Opened) -> Self {
        Self::with(opened, opened.draft.check().err().unwrap_or_default())
    }

    /// Problems of a project beside its notes. Of the notes, a missing part of the layout is a
    /// problem: nothing can be laid without it.
    pub(crate) fn with(opened: &Opened, problems: Vec<Problem>) -> Self {
        let mut problems: Vec<Told> = problems.into_iter().map(Told::from).collect();
        let mut notes = Vec::new();
        for note in &opened.notes {
            let is_lacking = matches!(note.cause, FileCause::UnknownId { .. });
            if is_lacking && note.path.starts_with("layout.") {
                problems.push(note.into());
            } else if !problems.iter().any(|problem| problem.path == note.path) {
                notes.push(note.into());
            }
        }
        Self {
            project: Some(opened.draft.name.clone()),
            problems,
            notes,
        }
    }

    /// What keeps a file from being a project.
    pub(crate) fn unopened(problems: Vec<Told>) -> Self {
        Self {
            problems,
            ..Self::default()
        }
    }
}

impl Told {
    /// About the whole file.
    pub(crate) const fn whole(message: String, hint: &'static str) -> Self {
        Self {
            path: String::new(),
            matter: Matter::Words(message),
            hint: Some(hint),
        }
    }

    /// About the whole file, in words that say what to try.
    pub(crate) const fn plain(message: String) -> Self {
        Self {
            path: String::new(),
            matter: Matter::Words(message),
            hint: None,
        }
    }

    /// What is wrong, with lengths in a unit.
    pub(crate) fn message(&self, unit: LengthUnit) -> String {
        match &self.matter {
            Matter::Field(problem) => problem.message(unit),
            Matter::Words(words) => words.clone(),
        }
    }
}

impl From<&FileProblem> for Told {
    fn from(problem: &FileProblem) -> Self {
        let hint = match problem.cause {
            // The page is not at hand.
            FileCause::UnknownId { .. } => "name one of the file",
            FileCause::NewerVersion { .. } => "read it with a newer Slatwright",
            _ => problem.hint(),
        };
        Self {
            path: problem.path.clone(),
            matter: Matter::Words(problem.cause.to_string()),
            hint: Some(hint),
        }
    }
}

impl From<Problem> for Told {
    fn from(problem: Problem) -> Self {
        Self {
            path: path::of_problem(&problem),
            matter: Matter::Field(problem.problem),
            hint: None,
        }
    }
}

impl Answer for Findings {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        if let Some(project) = &self.project {
            note.title(project);
        }
        for told in &self.problems {
            note.line(&line(told, unit));
        }
        for told in &self.notes {
            note.line(&format!("note: {}", line(told, unit)));
        }
        note.line(&match self.problems.len() {
            0 => "no problems".to_owned(),
            1 => "1 problem".to_owned(),
            many => format!("{} problems", figure::count(many as u64)),
        });
        note.finish()
    }

    fn json(&self) -> String {
        document::write(&CheckDocument::from(self))
    }

    fn ending(&self) -> Ending {
        if self.problems.is_empty() {
            Ending::Fine
        } else {
            Ending::Problems
        }
    }
}

/// The place, what is wrong there, and what to try.
pub(crate) fn line(told: &Told, unit: LengthUnit) -> String {
    let message = told.message(unit);
    let hint = told
        .hint
        .map_or_else(String::new, |hint| format!("; {hint}"));
    if told.path.is_empty() {
        format!("{message}{hint}")
    } else {
        format!("{}: {message}{hint}", told.path)
    }
}

#[cfg(test)]
mod tests {
    use app::demo;
    use app::project_file::{read, write};
    use solver::{Id, Typed};

    use super::*;

    fn paths(told: &[Told]) -> Vec<&str> {
        told.iter().map(|told| told.path.as_str()).collect()
    }

    #[test]
    fn the_demo_has_neither_problems_nor_notes() {
        let findings = Findings::of(&read(&write(&demo::project())).unwrap());
        assert_eq!((findings.problems, findings.notes), (vec![], vec![]));
    }

    #[test]
    fn a_layout_without_its_slat_is_a_problem() {
        let mut draft = demo::project();
        draft.layout.top = Id(99);
        let findings = Findings::of(&read(&write(&draft)).unwrap());
        assert_eq!(paths(&findings.problems), ["layout.top"]);
    }

    #[test]
    fn an_order_without_its_barrel_is_told_once() {
        let mut draft = demo::project();
        draft.orders[1].barrel = Id(99);
        let findings = Findings::of(&read(&write(&draft)).unwrap());
        assert_eq!(paths(&findings.problems), ["orders[1].barrel"]);
        assert_eq!(paths(&findings.notes), [""; 0]);
    }

    #[test]
    fn bounds_are_told_in_the_unit_asked_for() {
        let mut draft = demo::project();
        draft.slats[2].draft.width = Typed::Number(500.0);
        let text = Findings::of(&read(&write(&draft)).unwrap()).text(LengthUnit::Inch);
        assert!(
            text.contains(
                "slats[2].width_mm: Slat width must be between 0.787 and 7.874\u{202f}in"
            )
        );
    }
}
