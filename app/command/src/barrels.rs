//! The barrels of a project side by side, and each as the end of an address: the answer of `barrels`.

use app::project_file::{Opened, barrel_fragment};
use solver::{BarrelTable, Id, LengthUnit, MOST_COMPARED, ProjectDraft, Verdict, compare_barrels};

use crate::answer::Answer;
use crate::document::{self, BarrelsDocument};
use crate::ending::Ending;
use crate::findings::Findings;
use crate::names;
use crate::note::{Column, Note};

/// Barrels side by side.
pub(crate) struct Compared<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// The table of those that can be made.
    pub(crate) table: BarrelTable,
    /// Every barrel of the project by its place, with the end of an address that holds it.
    pub(crate) fragments: Vec<(usize, String)>,
}

/// Holds the barrel of the layout against up to three others, in the order of the project.
///
/// # Errors
/// Everything that is wrong with the barrels and the rules, where not one barrel can be made.
pub(crate) fn compare(opened: &Opened) -> Result<Compared<'_>, Findings> {
    let draft = &opened.draft;
    let base = draft.layout.barrel;
    let sound = |id: &Id| {
        let at = draft.barrel_place(*id);
        at.is_some_and(|at| draft.barrels[at].draft.check().is_ok())
    };
    let others = draft.barrels.iter().map(|entry| entry.id);
    let others = others.filter(|id| *id != base);
    let ids = std::iter::once(base).chain(others).filter(sound);
    let ids: Vec<Id> = ids.take(MOST_COMPARED).collect();
    if ids.is_empty() {
        let problems = draft.check().err().unwrap_or_default();
        return Err(Findings::with(opened, problems));
    }
    let fragments = draft.barrels.iter().enumerate();
    Ok(Compared {
        draft,
        table: compare_barrels(draft, &ids),
        fragments: fragments
            .map(|(at, entry)| (at, barrel_fragment(&entry.draft)))
            .collect(),
    })
}

impl Answer for Compared<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        note.title(&self.draft.name);
        note.line("Each barrel, and how it differs from the first");
        note.line("");
        // One table for each of the others keeps the lines short.
        let count = self.table.barrels.len();
        let name = |at: usize| self.table.barrels[at].1.name().to_owned();
        let (words, figures) = (Column::Words, Column::Figures);
        if count == 1 {
            let mut rows = vec![["Compared".to_owned(), name(0)]];
            let lines = self.table.lines.iter();
            rows.extend(lines.map(|line| [line.title(), line.text(0, unit)]));
            note.table([words, figures], &rows);
        }
        for at in 1..count {
            let head = [
                "Compared".to_owned(),
                name(0),
                name(at),
                "Difference".to_owned(),
                String::new(),
            ];
            let mut rows = vec![head];
            for line in &self.table.lines {
                let verdict = line.verdict(at, unit).map_or("", Verdict::label);
                rows.push([
                    line.title(),
                    line.text(0, unit),
                    line.text(at, unit),
                    line.change(at, unit).unwrap_or_default(),
                    verdict.to_owned(),
                ]);
            }
            note.table([words, figures, figures, figures, words], &rows);
            note.line("");
        }
        note.line("To open one elsewhere, put behind the address of the page:");
        for (at, fragment) in &self.fragments {
            note.line(&format!("{}  {fragment}", names::barrel(self.draft, *at)));
        }
        note.finish()
    }

    fn json(&self) -> String {
        document::write(&BarrelsDocument::from(self))
    }

    fn ending(&self) -> Ending {
        Ending::Fine
    }
}
