//! The best layouts of the barrel: the answer of `search`.

use app::project_file::Opened;
use solver::{
    Answer as Best, CutterSet, Found, Goal, LengthUnit, Obstacle, Pairs, Place, Problem,
    ProjectDraft, Question, RulesDraft, Slat, Spacing, figure,
};

use crate::answer::Answer;
use crate::document::{self, SearchDocument};
use crate::ending::Ending;
use crate::findings::{self, Findings, Told};
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
    /// What was found, and comes out as found.
    pub(crate) answer: Best,
    /// Layouts that did not come out as found when they were laid out once more.
    pub(crate) unconfirmed: usize,
    /// Why nothing is told of good pencils; empty where it is.
    pub(crate) without_good: Vec<Told>,
}

/// Searches all slat stocks and the cutter sets that fit the barrel. What is wrong with the line of
/// machines keeps only good pencils from being told.
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
    let accuracy = draft.check_accuracy();
    let question = Question {
        barrel: &barrel,
        slats: &slats,
        sets: &sets,
        rules: &rules,
        search: &search,
        accuracy: accuracy.as_ref().ok(),
    };
    let mut answer = solver::search(&question, &mut |_, _| ());
    let unconfirmed = question.keep_confirmed(&mut answer);
    let nothing_good = answer.obstacle.is_none() && answer.best[Goal::Good as usize].is_empty();
    let without_good = match accuracy {
        Err(problems) if problems.is_empty() => vec![no_line()],
        Err(problems) => problems.into_iter().map(Told::from).collect(),
        Ok(_) if nothing_good => vec![Told::plain("no pencil comes out good".to_owned())],
        Ok(_) => Vec::new(),
    };
    Ok(Searched {
        draft,
        barrel: at,
        sets: set_places,
        answer,
        unconfirmed,
        without_good,
    })
}

fn no_line() -> Told {
    let told = Told::whole(
        "the line of machines is not in the file".to_owned(),
        "name one of the file",
    );
    Told {
        path: "layout.accuracy".to_owned(),
        ..told
    }
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

/// A figure, or a dash where there is none.
fn told(figure: Option<String>) -> String {
    figure.unwrap_or_else(|| "-".to_owned())
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
            "Good",
            "Good money",
        ];
        let rows: Vec<[String; 12]> = [head.map(str::to_owned)]
            .into_iter()
            .chain(found.iter().map(|found| self.row(found, unit)))
            .collect();
        let (words, figures) = (Column::Words, Column::Figures);
        let columns = [
            figures, words, words, words, figures, figures, figures, figures, figures, figures,
            figures, figures,
        ];
        note.table(columns, &rows);
    }

    fn row(&self, found: &Found, unit: LengthUnit) -> [String; 12] {
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
            told(found.good.map(|good| figure::plain(good, 3))),
            told(found.good_money.map(figure::money_rounded)),
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
        if self.unconfirmed > 0 {
            note.line(&format!(
                "Not proved: {} layouts did not come out when they were laid out once more, and are left out; what is listed holds, a better one may be missing",
                figure::count(self.unconfirmed as u64)
            ));
        }
        for goal in Goal::ALL {
            note.title(goal.label());
            if goal == Goal::Good && !self.without_good.is_empty() {
                for told in &self.without_good {
                    note.line(&findings::line(told, unit));
                }
            } else {
                self.table(&mut note, &self.answer.best[goal as usize], unit);
            }
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

#[cfg(test)]
mod tests {
    use app::demo;
    use app::project_file::{read, write};
    use solver::{Id, Typed};

    use super::*;

    fn opened(change: impl FnOnce(&mut ProjectDraft)) -> Opened {
        let mut draft = demo::project();
        change(&mut draft);
        read(&write(&draft)).unwrap()
    }

    fn json(searched: &Searched<'_>) -> serde_json::Value {
        serde_json::from_str(&searched.json()).unwrap()
    }

    #[test]
    fn a_layout_that_did_not_come_out_is_told_and_nothing_is_proved() {
        let opened = opened(|_| ());
        let mut searched = find(&opened).unwrap();
        assert_eq!(json(&searched)["unconfirmed"], 0);
        let words = "Not proved: 3 layouts did not come out";
        assert!(!searched.text(LengthUnit::Millimetre).contains(words));
        searched.unconfirmed = 3;
        assert!(searched.text(LengthUnit::Millimetre).contains(words));
        assert_eq!(json(&searched)["unconfirmed"], 3);
    }

    #[test]
    fn good_pencils_are_told_with_their_money() {
        let opened = opened(|_| ());
        let searched = find(&opened).unwrap();
        let best = &json(&searched)["best"]["good"][0];
        let [good, money, all] = ["good_pencils", "money_per_good_gross_hundredths", "pencils"]
            .map(|name| best[name].as_f64().unwrap());
        assert!(good > 0.99 * all && good < all, "{good}");
        assert!(money > best["money_per_gross_hundredths"].as_f64().unwrap());
    }

    #[test]
    fn what_is_wrong_with_the_line_keeps_only_good_pencils_from_being_told() {
        let wrong = |project: &mut ProjectDraft| {
            project.accuracies[0].draft.glue_shift.size = Typed::Text("little".to_owned());
        };
        let nowhere = |project: &mut ProjectDraft| project.layout.accuracy = Id(99);
        for (opened, path) in [
            (opened(wrong), "accuracies[0].glue_shift.size_mm"),
            (opened(nowhere), "layout.accuracy"),
        ] {
            let searched = find(&opened).unwrap();
            let answer = json(&searched);
            assert_eq!(answer["without_good"][0]["path"], path);
            assert_eq!(answer["best"]["good"].as_array().unwrap().len(), 0);
            assert!(!answer["best"]["wood"].as_array().unwrap().is_empty());
            assert!(answer["frontier"][0]["good_pencils"].is_null());
            assert!(searched.text(LengthUnit::Millimetre).contains(path));
        }
    }
}
