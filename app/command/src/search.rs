//! The best layouts of the barrel: the answer of `search`.

use app::project_file::Opened;
use solver::{
    Answer as Best, CutterSet, Found, Goal, LengthUnit, Obstacle, Pairs, Place, Problem,
    ProjectDraft, Question, RulesDraft, Slat, Spacing, figure,
};

use crate::answer::Answer;
use crate::document::{self, SearchDocument};
use crate::ending::Ending;
use crate::findings::{Findings, Told};
use crate::names;
use crate::note::{Column, Note};

/// The most pairs of slats with cutter sets that are compared: some seconds of work.
const MOST_COMPARED: usize = 250_000;

/// What a search found, with the project it was made in.
pub(crate) struct Searched<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// The place of its barrel of the layout.
    pub(crate) barrel: usize,
    /// The places in the project of the cutter sets that fit the barrel.
    sets: Vec<usize>,
    /// What was found.
    pub(crate) answer: Best,
}

/// Searches all slat stocks and the cutter sets that fit the barrel.
///
/// # Errors
/// Everything that is wrong with the barrel of the layout, a slat stock, a cutter set, the rules
/// or the search; and when there are more pairs than [`MOST_COMPARED`].
pub(crate) fn find(opened: &Opened) -> Result<Searched<'_>, Findings> {
    let draft = &opened.draft;
    let mut problems = Vec::new();
    let mut refuse = |place: Place, found: Vec<solver::FieldProblem>| {
        problems.extend(found.into_iter().map(|problem| Problem { place, problem }));
    };
    let at = draft.barrel_place(draft.layout.barrel);
    let barrel = at.and_then(|at| {
        let checked = draft.barrels[at].draft.check();
        checked
            .map_err(|found| refuse(Place::Barrel(at), found))
            .ok()
    });
    let mut sets: Vec<CutterSet> = Vec::new();
    let mut set_places = Vec::new();
    for (at, set) in draft.cutter_sets.iter().enumerate() {
        match set.draft.check() {
            Ok(set) if set.serves(draft.layout.barrel) => {
                sets.push(set);
                set_places.push(at);
            }
            Ok(_) => {}
            Err(found) => refuse(Place::CutterSet(at), found),
        }
    }
    // The search spaces the grooves itself.
    let spacing = Spacing::Closest;
    let rules = RulesDraft {
        spacing,
        ..draft.rules.clone()
    };
    let rules = rules.check().map_err(|found| refuse(Place::Rules, found));
    let search = (draft.search.check()).map_err(|found| refuse(Place::Search, found));
    let slats: Vec<Slat> = (0..draft.slats.len())
        .filter_map(|at| {
            let slat = draft.check_slat(at);
            // A species that several stocks are of is told once.
            slat.map_err(|found| {
                let new: Vec<Problem> =
                    (found.into_iter().filter(|one| !problems.contains(one))).collect();
                problems.extend(new);
            })
            .ok()
        })
        .collect();
    let (Some(at), Some(barrel), Ok(rules), Ok(search), true) =
        (at, barrel, rules, search, problems.is_empty())
    else {
        return Err(Findings::with(opened, problems));
    };
    let pairs = match search.pairs {
        Pairs::Same => slats.len(),
        Pairs::Any => slats.len() * slats.len(),
    };
    let compared = pairs * (sets.len() + usize::from(search.new_set_price.is_some()));
    if compared > MOST_COMPARED {
        let mut findings = Findings::with(opened, problems);
        findings.problems.push(too_many(compared));
        return Err(findings);
    }
    let question = Question {
        barrel: &barrel,
        slats: &slats,
        sets: &sets,
        rules: &rules,
        search: &search,
    };
    Ok(Searched {
        draft,
        barrel: at,
        sets: set_places,
        answer: solver::search(&question, &mut |_, _| ()),
    })
}

fn too_many(compared: usize) -> Told {
    let told = Told::whole(
        format!(
            "{} pairs of slats with cutter sets are too many, {} are the most that are compared",
            figure::count(compared as u64),
            figure::count(MOST_COMPARED as u64)
        ),
        "search pairs of one stock, or take slat stocks or cutter sets out of the file",
    );
    Told {
        path: "search.pairs".to_owned(),
        ..told
    }
}

impl Searched<'_> {
    /// The place in the project of a cutter set, by its place in the list that was searched.
    pub(crate) fn set_place(&self, at: usize) -> usize {
        self.sets[at]
    }

    fn table(&self, note: &mut Note, found: &[Found], unit: LengthUnit) {
        let head = [
            "Pencils",
            "Top slat",
            "Bottom slat",
            "Cutter set",
            "Turn",
            "Axis",
            "Pitch",
            "Margin",
            "Wood",
            "Money",
        ];
        let rows: Vec<[String; 10]> = [head.map(str::to_owned)]
            .into_iter()
            .chain(found.iter().map(|found| self.row(found, unit)))
            .collect();
        let (words, figures) = (Column::Words, Column::Figures);
        let columns = [
            figures, words, words, words, figures, figures, figures, figures, figures, figures,
        ];
        note.table(columns, &rows);
    }

    fn row(&self, found: &Found, unit: LengthUnit) -> [String; 10] {
        let slat = |at: usize| names::slat(self.draft, at);
        let length = |length: solver::Length| figure::length(length.in_millimetres(), unit);
        let set = (found.set).map(|at| names::cutter_set(self.draft, self.set_place(at)));
        [
            figure::count(found.pencils.into()),
            slat(found.top),
            slat(found.bottom),
            set.unwrap_or_else(|| "made to measure".to_owned()),
            figure::angle(found.turn.in_degrees()),
            length(found.axis_height),
            length(found.pitch),
            length(found.margin),
            figure::volume(found.wood.in_cubic_millimetres(), unit),
            figure::money_rounded(found.money),
        ]
    }

    fn obstacle(&self, note: &mut Note, obstacle: &Obstacle, unit: LengthUnit) {
        match obstacle {
            Obstacle::NoSlats => note.line("Nothing fits: there is no slat stock in the project"),
            Obstacle::NoCutters => note.line(
                "Nothing fits: no cutter set is for this barrel; add one, or a price of a new one",
            ),
            Obstacle::Nearest {
                top,
                bottom,
                checks,
            } => {
                let [top, bottom] = [top, bottom].map(|at| names::slat(self.draft, *at));
                note.line(&format!(
                    "Nothing fits; nearest come {top} on top and {bottom} below, which fail"
                ));
                for check in checks {
                    let (rule, statement) = (check.rule.label(), check.statement(unit));
                    note.line(&format!("{rule}: {statement}"));
                }
            }
        }
    }
}

impl Answer for Searched<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        note.title(&self.draft.name);
        note.line(&names::barrel(self.draft, self.barrel));
        note.line(&format!(
            "{} pairs of slats with cutter sets compared; lengths in {}, wood in {} and money for a gross",
            figure::count(self.answer.compared as u64),
            unit.label(),
            unit.volume_label()
        ));
        if let Some(obstacle) = &self.answer.obstacle {
            self.obstacle(&mut note, obstacle, unit);
            return note.finish();
        }
        for goal in Goal::ALL {
            note.title(goal.label());
            self.table(&mut note, &self.answer.best[goal as usize], unit);
        }
        note.title("None has both less wood and a wider margin");
        self.table(&mut note, &self.answer.frontier, unit);
        note.finish()
    }

    fn json(&self) -> String {
        document::write(&SearchDocument::from(self))
    }

    fn ending(&self) -> Ending {
        match self.answer.obstacle {
            None => Ending::Fine,
            Some(_) => Ending::NothingFits,
        }
    }
}
