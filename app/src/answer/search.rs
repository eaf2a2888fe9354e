//! The best layouts of the barrel over slats, cutter sets, turns and heights of the axis.

use std::collections::HashMap;

use solver::{
    Angle, Barrel, CutterSet, Found, Goal, LengthUnit, Obstacle, Place, Problem, ProjectDraft,
    Question, Rules, SearchRules, Spacing, Way,
};

use super::parts::{Stocks, barrel, placed};
use super::sparing::is_told;
use super::wording::sentence;
use crate::project_file::WayWord;
use crate::protocol::{FoundRow, JobId, Progress, Reply, Searched};

/// The most rows of an answer; more than these are counted.
const MOST_ROWS: usize = 100;

/// Searches with the stocks and cutter sets that can be worked with, and says what keeps out the
/// others.
pub(super) fn answer(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    tell: &mut dyn FnMut(Reply),
) -> Reply {
    let (barrel, rules, search) = match checked(draft, unit) {
        Ok(parts) => parts,
        Err(problems) => return Reply::Refused { job, problems },
    };
    let stocks = Stocks::new(draft, unit);
    let (set_places, sets, sets_left_out) = cutter_sets(draft, unit);
    let accuracy = draft.check_accuracy();
    let question = Question {
        barrel: &barrel,
        slats: &stocks.slats,
        sets: &sets,
        rules: &rules,
        search: &search,
        accuracy: accuracy.as_ref().ok(),
    };
    let mut answer = solver::search(&question, &mut |done, of| {
        // The lists of a project are short: their square is within u32 by far.
        let (done, of) = (done as u32, of as u32);
        if is_told(done, of) {
            let progress = Progress::Laid { done, of };
            tell(Reply::Progress { job, progress });
        }
    });
    let names = Names {
        draft,
        barrel: &barrel,
        slats: &stocks.places,
        sets: &set_places,
    };
    let unconfirmed = question.keep_confirmed(&mut answer) as u32;
    let without_good = match &accuracy {
        Err(problems) => Some(no_line(problems, draft, unit)),
        Ok(line) if answer.best[Goal::Good as usize].is_empty() => Some(format!(
            "No pencil comes out good with the errors of “{}”",
            line.name()
        )),
        Ok(_) => None,
    };
    let (rows, more) = names.rows(&answer);
    let obstacle = answer
        .obstacle
        .map(|obstacle| names.obstacle(&obstacle, unit));
    let searched = Searched {
        rows,
        more,
        unconfirmed,
        without_good,
        compared: (answer.compared as u64).into(),
        left_out: stocks.left_out,
        sets_left_out,
        obstacle,
    };
    Reply::Searched { job, searched }
}

/// Why the line of machines cannot be worked with.
fn no_line(problems: &[Problem], draft: &ProjectDraft, unit: LengthUnit) -> String {
    let told: Vec<String> = (problems.iter())
        .map(|problem| sentence(problem, draft, unit))
        .collect();
    if told.is_empty() {
        "Good pencils are not told: the line of machines is not in the project: choose one in the place of good pencils".to_owned()
    } else {
        format!("Good pencils are not told. {}", told.join("; "))
    }
}

/// What every layout needs, or everything that is wrong with it.
fn checked(
    draft: &ProjectDraft,
    unit: LengthUnit,
) -> Result<(Barrel, Rules, SearchRules), Vec<String>> {
    let mut problems = Vec::new();
    let barrel = barrel(draft, unit).map_err(|found| problems.extend(found));
    let mut refuse = |found: Vec<Problem>| {
        problems.extend(found.iter().map(|problem| sentence(problem, draft, unit)));
    };
    let mut asked = draft.clone();
    // The search finds the spacing, so what stands there has no say.
    asked.rules.spacing = Spacing::Closest;
    let rules = asked.check_rules().map_err(&mut refuse);
    let search = draft.search.check();
    let search = search.map_err(|found| refuse(placed(Place::Search, found)));
    match (barrel, rules, search) {
        (Ok(barrel), Ok(rules), Ok(search)) => Ok((barrel, rules, search)),
        _ => Err(problems),
    }
}

/// The cutter sets that serve the barrel of the layout, each with its place in the project, and
/// what is wrong with those that cannot be worked with.
fn cutter_sets(
    draft: &ProjectDraft,
    unit: LengthUnit,
) -> (Vec<usize>, Vec<CutterSet>, Vec<String>) {
    let (mut places, mut sets, mut left_out) = (Vec::new(), Vec::new(), Vec::new());
    for (at, entry) in draft.cutter_sets.iter().enumerate() {
        match entry.draft.check() {
            Ok(set) if set.serves(draft.layout.barrel) => {
                places.push(at);
                sets.push(set);
            }
            Ok(_) => {}
            Err(found) => {
                let found = placed(Place::CutterSet(at), found);
                left_out.extend(found.iter().map(|problem| sentence(problem, draft, unit)));
            }
        }
    }
    (places, sets, left_out)
}

/// What tells a layout from all others.
fn key(found: &Found) -> (usize, usize, Option<usize>, u32, [u64; 3]) {
    let sizes = [
        found.turn.in_degrees(),
        found.axis_height.in_millimetres(),
        found.pitch.in_millimetres(),
    ];
    let sizes = sizes.map(f64::to_bits);
    (found.top, found.bottom, found.set, found.across, sizes)
}

/// Puts names in the place of places in lists.
struct Names<'a> {
    draft: &'a ProjectDraft,
    barrel: &'a Barrel,
    slats: &'a [usize],
    sets: &'a [usize],
}

impl Names<'_> {
    /// Each layout once, with what it is best under; and how many are left out. First comes the
    /// first of each goal, then the frontier, then what is as good as the first.
    fn rows(&self, answer: &solver::Answer) -> (Vec<FoundRow>, u32) {
        let best = || Goal::ALL.into_iter().zip(&answer.best);
        let firsts = best().filter_map(|(goal, found)| Some((Some(goal), found.first()?)));
        let frontier = answer.frontier.iter().map(|found| (None, found));
        let ties = best().flat_map(|(goal, found)| {
            let ties = found.iter().skip(1);
            ties.map(move |found| (Some(goal), found))
        });
        let mut places = HashMap::new();
        let mut found: Vec<(&Found, Vec<Goal>, bool)> = Vec::new();
        for (goal, next) in firsts.chain(frontier).chain(ties) {
            let at = *places.entry(key(next)).or_insert_with(|| {
                found.push((next, Vec::new(), false));
                found.len() - 1
            });
            match goal {
                Some(goal) => found[at].1.push(goal),
                None => found[at].2 = true,
            }
        }
        let more = found.len().saturating_sub(MOST_ROWS);
        let rows = found.iter().take(MOST_ROWS);
        let rows = rows.map(|(found, goals, on_frontier)| self.row(found, goals, *on_frontier));
        (rows.collect(), more as u32)
    }

    fn row(&self, found: &Found, goals: &[Goal], on_frontier: bool) -> FoundRow {
        let top = &self.draft.slats[self.slats[found.top]];
        let bottom = &self.draft.slats[self.slats[found.bottom]];
        let set = found.set.map(|set| &self.draft.cutter_sets[self.sets[set]]);
        FoundRow {
            top: top.id.0,
            top_name: top.draft.name.clone(),
            bottom: bottom.id.0,
            bottom_name: bottom.draft.name.clone(),
            set: set.map(|set| set.id.0),
            set_name: set.map(|set| set.draft.name.clone()),
            way: way(self.barrel, found.turn),
            turn_degrees: found.turn.in_degrees(),
            axis_height_mm: found.axis_height.in_millimetres(),
            pitch_mm: found.pitch.in_millimetres(),
            across: found.across,
            pencils: found.pencils,
            margin_mm: found.margin.in_millimetres(),
            wood_per_gross_mm3: found.wood.in_cubic_millimetres(),
            money_per_gross: found.money,
            good: found.good,
            money_per_good_gross: found.good_money,
            best_under: goals.iter().map(|&goal| goal.into()).collect(),
            on_frontier,
        }
    }

    fn obstacle(&self, obstacle: &Obstacle, unit: LengthUnit) -> String {
        match obstacle {
            Obstacle::NoSlats => {
                "There is no slat stock to search: add one, or mend one that is left out".to_owned()
            }
            Obstacle::NoCutters => "No cutter set serves this barrel: add one, or give the price \
                                    of a new one"
                .to_owned(),
            Obstacle::Nearest {
                top,
                bottom,
                checks,
            } => {
                let name = |at: usize| self.draft.slats[self.slats[at]].draft.name.as_str();
                let pair = if top == bottom {
                    format!("Two of “{}”", name(*top))
                } else {
                    format!("“{}” over “{}”", name(*top), name(*bottom))
                };
                let checks = checks
                    .iter()
                    .map(|check| format!("{}: {}", check.rule.label(), check.statement(unit)));
                let checks: Vec<String> = checks.collect();
                if checks.is_empty() {
                    format!("Nothing fits. {pair} comes nearest: its turn or axis is ruled out")
                } else {
                    format!("Nothing fits. {pair} comes nearest. {}", checks.join("; "))
                }
            }
        }
    }
}

/// The usual way that a turn is, whichever of the like faces is down; otherwise turned.
fn way(barrel: &Barrel, turn: Angle) -> WayWord {
    /// Two turns closer than this lie the same, degrees: a corner a metre away moves by a hundredth
    /// of a micrometre.
    const SAME: f64 = 1e-6;
    let period = barrel.period().in_degrees();
    let lies_so = |usual: Angle| {
        let between = turn.in_degrees() - usual.in_degrees();
        let steps = if period > 0.0 {
            (between / period).round()
        } else {
            0.0
        };
        (between - steps * period).abs() <= SAME
    };
    let mut usual = barrel.shape().seams().iter();
    let usual = usual.find(|&&seam| lies_so(barrel.turn(seam)));
    usual.map_or(WayWord::Turned, |&seam| Way::Usual(seam).into())
}
