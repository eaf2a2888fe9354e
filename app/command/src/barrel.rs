//! The finished pencil of a barrel: the answer of `barrel`.

use app::project_file::Opened;
use solver::{
    FinishedPencil, Id, LengthUnit, Paper, PaperSize, PencilFacts, ProjectDraft, draw_pencil,
};

use crate::answer::Answer;
use crate::arguments::AskedBarrel;
use crate::document::{self, BarrelDocument};
use crate::ending::Ending;
use crate::findings::{Findings, Told};
use crate::names;
use crate::note::{Column, Note};
use crate::setting::{Unwritten, Written, put};

/// A finished pencil, with the project it is of.
pub(crate) struct Finished<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// The place of the barrel in the project.
    pub(crate) barrel: usize,
    /// The pencil.
    pub(crate) pencil: FinishedPencil,
    /// What is told of it.
    pub(crate) facts: PencilFacts,
    /// The file that was asked for.
    pub(crate) files: Vec<Written>,
}

/// Tells of the finished pencil of a barrel, that of the layout where none is named, and writes the
/// drawing that is asked for.
///
/// # Errors
/// Everything that stands in the way of the pencil; the rest of the project may be wrong.
pub(crate) fn finish<'a>(
    opened: &'a Opened,
    asked: &AskedBarrel,
) -> Result<Finished<'a>, Findings> {
    let draft = &opened.draft;
    let id = asked.barrel.map_or(draft.layout.barrel, Id);
    let Some(barrel) = draft.barrel_place(id) else {
        let message = format!("the project has no barrel {}", id.0);
        let hint = "give the id of one of its barrels";
        return Err(Findings::unopened(vec![Told::whole(message, hint)]));
    };
    let pencil = draft.check_pencil(id);
    let pencil = pencil.map_err(|problems| Findings::with(opened, problems))?;
    let paper = Paper {
        size: PaperSize::A4,
        landscape: false,
    };
    let name = names::barrel(draft, barrel);
    let files = asked.svg.iter().map(|folder| {
        let drawn = draw_pencil(&pencil, paper, asked.asked.unit.into());
        put(folder, "pencil.svg", Ok(drawn.drawing.to_svg(&name)))
    });
    Ok(Finished {
        files: files.collect(),
        facts: pencil.facts(),
        draft,
        barrel,
        pencil,
    })
}

impl Answer for Finished<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        note.title(&self.draft.name);
        note.line(&names::barrel(self.draft, self.barrel));
        note.line(&self.pencil.described(unit));
        note.title("Facts");
        let mut rows = vec![["Fact", "As made", "Sharpened"].map(str::to_owned)];
        rows.extend(self.facts.rows().iter().map(|fact| {
            [
                fact.name.to_owned(),
                fact.text(fact.made, unit),
                fact.text(fact.sharpened, unit),
            ]
        }));
        note.table([Column::Words, Column::Figures, Column::Figures], &rows);
        for written in &self.files {
            let outcome = match &written.outcome {
                Ok(()) => "written".to_owned(),
                Err(problem) => problem.message(unit),
            };
            note.line(&format!("{}: {outcome}", written.file.display()));
        }
        note.finish()
    }

    fn json(&self) -> String {
        document::write(&BarrelDocument::from(self))
    }

    fn ending(&self) -> Ending {
        let is_unwritten = |file: &Written| matches!(file.outcome, Err(Unwritten::Unwritable(_)));
        if self.files.iter().any(is_unwritten) {
            Ending::Unread
        } else {
            Ending::Fine
        }
    }
}
