//! What a search and the table of thresholds answer, held against laying it out.

use proptest::prelude::*;
use solver::{AxisChoice, Field, Pairs, ProjectDraft, Spacing, Turns, Typed, Way, figure, lay_out};

use super::{JOB, project, refused, typed};
use crate::answer::answer;
use crate::demo;
use crate::project_file::{self, WayWord};
use crate::protocol::{
    ChangeLine, FoundRow, GoalWord, OwnerWord, Progress, Reply, Request, Searched, ThresholdRow,
    UnitWord,
};
use crate::workbench::{is_laid, lay_found};

fn ask(project: &ProjectDraft) -> (Reply, Vec<Reply>) {
    let mut heard = Vec::new();
    let request = Request::Search {
        job: JOB,
        project: project_file::write(project),
        unit: UnitWord::Millimetre,
    };
    let reply = answer(request, &mut |reply| heard.push(reply));
    (reply, heard)
}

#[track_caller]
fn searched(project: &ProjectDraft) -> Searched {
    match ask(project).0 {
        Reply::Searched { job: JOB, searched } => searched,
        other => panic!("{other:?}"),
    }
}

fn ask_thresholds(project: &ProjectDraft, unit: UnitWord) -> Reply {
    let project = project_file::write(project);
    let job = JOB;
    answer(Request::Thresholds { job, project, unit }, &mut |_| ())
}

#[track_caller]
fn thresholds(project: &ProjectDraft, unit: UnitWord) -> Vec<ThresholdRow> {
    match ask_thresholds(project, unit) {
        Reply::Thresholds { job: JOB, rows } => rows,
        other => panic!("{other:?}"),
    }
}

/// The invented scenario with everything that may be searched.
fn wide_search() -> ProjectDraft {
    let mut project = demo::project();
    project.search.turns = Turns::Any;
    project.search.axis = AxisChoice::Any;
    project.search.pairs = Pairs::Any;
    project.search.new_set_price = Typed::Number(480.0);
    project
}

/// The least margin of a laid layout that the room of the slats decides, mm.
fn margin(project: &ProjectDraft) -> (u32, f64) {
    let layout = lay_out(&project.check_layout().unwrap().setup());
    let margins = layout.checks().iter();
    let margins = margins
        .filter(|check| check.rule.counts_in_margin())
        .filter_map(|check| match check.margin() {
            solver::Measure::Length(margin) => Some(margin.in_millimetres()),
            solver::Measure::Angle(_) => None,
        });
    (layout.pencils(), margins.fold(f64::INFINITY, f64::min))
}

fn best(searched: &Searched, goal: GoalWord) -> &FoundRow {
    let mut rows = searched.rows.iter();
    rows.find(|row| row.best_under.contains(&goal)).unwrap()
}

#[track_caller]
fn every_row_is_laid_as_found(project: &ProjectDraft) {
    let searched = searched(project);
    assert_eq!(searched.unconfirmed, 0);
    assert!(!searched.rows.is_empty());
    for row in &searched.rows {
        let mut laid = project.clone();
        lay_found(&mut laid, row);
        assert!(is_laid(&laid, row), "{row:?}");
        let (pencils, margin) = margin(&laid);
        assert_eq!(pencils, row.pencils, "{row:?}");
        assert!((margin - row.margin_mm).abs() < 1e-6, "{margin} {row:?}");
        let others = searched.rows.iter().filter(|other| *other != row);
        assert_eq!(
            others.filter(|other| is_laid(&laid, other)).count(),
            0,
            "{row:?}"
        );
    }
}

#[test]
fn every_found_row_is_laid_as_it_says() {
    every_row_is_laid_as_found(&demo::project());
    every_row_is_laid_as_found(&wide_search());
    for barrel in 2..=4 {
        let mut project = wide_search();
        project.layout.barrel = solver::Id(barrel);
        every_row_is_laid_as_found(&project);
    }
}

#[test]
fn a_wider_search_is_never_worse() {
    let (narrow, wide) = (searched(&demo::project()), searched(&wide_search()));
    let pencils = |found| best(found, GoalWord::Pencils).pencils;
    let wood = |found| best(found, GoalWord::Wood).wood_per_gross_mm3;
    let money = |found| best(found, GoalWord::Money).money_per_gross;
    let margin = |found| best(found, GoalWord::Margin).margin_mm;
    assert!(pencils(&wide) >= pencils(&narrow));
    assert!(wood(&wide) <= wood(&narrow) && money(&wide) <= money(&narrow));
    assert!(margin(&wide) >= margin(&narrow));
    // Five stocks with two of the sets; then all pairs, and a new set as well.
    assert_eq!((narrow.compared.pieces(), wide.compared.pieces()), (10, 75));
}

#[test]
fn a_layout_is_told_once_with_all_it_is_best_under() {
    let found = searched(&wide_search());
    for (at, row) in found.rows.iter().enumerate() {
        assert!(row.on_frontier || !row.best_under.is_empty());
        assert!(!found.rows[..at].contains(row));
    }
    let frontier: Vec<&FoundRow> = found.rows.iter().filter(|row| row.on_frontier).collect();
    assert!(frontier.len() > 1);
    for one in &frontier {
        let better = |other: &&&FoundRow| {
            other.wood_per_gross_mm3 < one.wood_per_gross_mm3 && other.margin_mm > one.margin_mm
        };
        assert!(frontier.iter().find(better).is_none());
    }
}

#[test]
fn a_usual_turn_is_told_by_its_word() {
    let mut project = demo::project();
    project.search.new_set_price = Typed::Number(480.0);
    let found = searched(&project);
    assert!(found.rows.iter().all(|row| row.way != WayWord::Turned));
    assert_eq!(best(&found, GoalWord::Pencils).way, WayWord::ThroughFaces);
}

#[test]
fn the_spacing_that_stands_there_has_no_say() {
    let mut project = wide_search();
    let before = searched(&project);
    project.rules.spacing = Spacing::Set;
    project.rules.cutter_set = Some(solver::Id(99));
    project.rules.pitch = Typed::Text("wide".to_owned());
    assert_eq!(searched(&project), before);
}

#[test]
fn a_set_for_another_barrel_is_not_tried_and_a_wrong_one_is_told() {
    let mut project = demo::project();
    let sets = |found: &Searched| {
        found
            .rows
            .iter()
            .filter_map(|row| row.set)
            .collect::<Vec<_>>()
    };
    assert!(!sets(&searched(&project)).contains(&32));
    project.cutter_sets[0].draft.pitch = Typed::Text("wide".to_owned());
    let found = searched(&project);
    assert!(!sets(&found).contains(&31));
    assert!(
        found.sets_left_out[0].starts_with("Cutter set “Writer head, tens”: Set pitch"),
        "{:?}",
        found.sets_left_out
    );
}

#[test]
fn a_stock_that_is_wrong_is_left_out_of_the_search() {
    let mut project = demo::project();
    project.slats[0].draft.width = Typed::Text("wide".to_owned());
    let found = searched(&project);
    assert_eq!((found.left_out.len(), found.left_out[0].slat), (1, 11));
    assert!(
        found
            .rows
            .iter()
            .all(|row| row.top != 11 && row.bottom != 11)
    );
}

#[test]
fn what_stands_in_the_way_is_told_in_words() {
    let mut project = demo::project();
    project.cutter_sets.clear();
    let obstacle = |project: &ProjectDraft| searched(project).obstacle.unwrap();
    assert!(obstacle(&project).starts_with("No cutter set serves this barrel"));
    project.search.new_set_price = Typed::Number(480.0);
    for slat in &mut project.slats {
        slat.draft.thickness = Typed::Number(2.0);
    }
    let words = obstacle(&project);
    assert!(words.starts_with("Nothing fits. Two of “"), "{words}");
    assert!(words.contains("Top slat thickness: 2.00"), "{words}");
    project.slats.clear();
    assert!(obstacle(&project).starts_with("There is no slat stock"));
}

#[test]
fn everything_that_keeps_from_searching_is_told_at_once() {
    let mut project = demo::project();
    project.barrels[0].draft.coat = Typed::Text("thick".to_owned());
    project.rules.land = Typed::Number(99.0);
    project.search.year_gross = Typed::Text("many".to_owned());
    let problems = refused(ask(&project).0);
    assert_eq!(problems.len(), 3, "{problems:?}");
    assert!(problems[2].starts_with("Search: "), "{problems:?}");
}

#[test]
fn good_pencils_are_told_with_every_row_and_have_a_goal() {
    let found = searched(&wide_search());
    assert_eq!(found.without_good, None);
    let cheapest = best(&found, GoalWord::Good);
    for row in &found.rows {
        assert!(row.good.unwrap() <= f64::from(row.pencils));
        let money = row.money_per_good_gross.unwrap();
        assert!(money >= cheapest.money_per_good_gross.unwrap() * (1.0 - 1e-6));
    }
}

#[test]
fn one_pencil_more_on_a_tight_edge_is_not_the_cheapest_good_one() {
    // Ten touch both edges of 72.02: 10 · 6.84 + 9 · 0.4.
    let mut project = demo::project();
    project.slats.truncate(1);
    project.slats[0].draft.width = Typed::Number(72.02);
    project.rules.edge = Typed::Number(0.0);
    project.cutter_sets.clear();
    project.search.new_set_price = Typed::Number(0.0);
    let found = searched(&project);
    assert_eq!(best(&found, GoalWord::Money).across, 10);
    assert_eq!(best(&found, GoalWord::Good).across, 9);
}

#[test]
fn what_is_wrong_with_the_line_keeps_only_good_pencils_from_being_told() {
    let mut project = demo::project();
    project.accuracies[0].draft.glue_shift.size = Typed::Text("little".to_owned());
    let mut lacking = demo::project();
    lacking.layout.accuracy = solver::Id(99);
    let mut hopeless = demo::project();
    hopeless.accuracies[0].draft.thickness_offset = Typed::Number(2.0);
    for (project, words) in [
        (project, "Good pencils are not told. Line “"),
        (
            lacking,
            "Good pencils are not told: the line of machines is not",
        ),
        (hopeless, "No pencil comes out good with the errors of “"),
    ] {
        let found = searched(&project);
        let why = found.without_good.clone().unwrap();
        assert!(why.starts_with(words), "{why}");
        assert_eq!(best(&found, GoalWord::Pencils).pencils, 10);
        let mut rows = found.rows.iter();
        assert!(rows.all(|row| !row.best_under.contains(&GoalWord::Good)));
    }
}

#[test]
fn many_pairs_take_few_messages_and_few_rows() {
    let mut project = wide_search();
    let stock = project.slats[0].clone();
    project.slats = (0..40)
        .map(|at| solver::Entry {
            id: solver::Id(100 + at),
            draft: stock.draft.clone(),
        })
        .collect();
    let (reply, heard) = ask(&project);
    let Reply::Searched { searched, .. } = reply else {
        panic!("{reply:?}");
    };
    assert_eq!((searched.rows.len(), searched.more > 0), (100, true));
    assert!(heard.len() <= 50, "{}", heard.len());
    let progress = Progress::Laid {
        done: 1_600,
        of: 1_600,
    };
    assert_eq!(heard.last(), Some(&Reply::Progress { job: JOB, progress }));
}

fn row_of(rows: &[ThresholdRow], owner: OwnerWord, field: Field) -> &ThresholdRow {
    let is_it = |row: &&ThresholdRow| {
        row.input.owner == owner && Field::ALL[row.input.field as usize] == field
    };
    rows.iter().find(is_it).unwrap()
}

fn counted(lines: &[ChangeLine]) -> &ChangeLine {
    let counts = |line: &&ChangeLine| line.across_after != line.across_before;
    lines.iter().find(counts).unwrap()
}

#[test]
fn the_eleventh_pencil_asks_for_a_pitch_more_of_slat() {
    // 2 × 1.0 edge + 6.84 bare + 10 × 7.24 pitch.
    let rows = thresholds(&demo::project(), UnitWord::Millimetre);
    let width = row_of(&rows, OwnerWord::Slat(11), Field::SlatWidth);
    let up = counted(&width.up);
    assert_eq!((up.pencils_before, up.pencils_after), (10, 11));
    assert_eq!((up.at_mm, up.shown_mm), (81.24, 81.24));
    let down = counted(&width.down);
    assert_eq!((down.pencils_after, down.shown_mm), (9, 73.99));
    assert!(down.at_mm < 74.0 && down.at_mm > 73.999_999);
    assert!(up.saved_per_gross.unwrap() > 0.0 && down.saved_per_gross.unwrap() < 0.0);
}

#[test]
fn what_is_worth_in_a_year_goes_by_its_gross() {
    let mut project = demo::project();
    project.search.year_gross = Typed::Number(2_000.0);
    let rows = thresholds(&project, UnitWord::Millimetre);
    for line in rows.iter().flat_map(|row| row.up.iter().chain(&row.down)) {
        let year = line.saved_per_gross.map(|saved| saved * 2_000.0);
        assert_eq!(line.saved_per_year, year);
    }
    project.search.year_gross = Typed::Text("many".to_owned());
    let problems = refused(ask_thresholds(&project, UnitWord::Millimetre));
    assert!(problems[0].starts_with("Search: "), "{problems:?}");
}

#[test]
fn rejects_make_a_change_worth_more() {
    let worth = |project: &ProjectDraft| {
        let rows = thresholds(project, UnitWord::Millimetre);
        let width = row_of(&rows, OwnerWord::Slat(11), Field::SlatWidth);
        counted(&width.up).saved_per_gross.unwrap()
    };
    let mut project = demo::project();
    let all_good = worth(&project);
    project.rules.pencil_rejects = Typed::Number(50.0);
    assert!((worth(&project) - 2.0 * all_good).abs() < 1e-9);
}

/// What is shown is never nearer to today's value than where the change is.
#[track_caller]
fn shown_is_true(project: &ProjectDraft, unit: UnitWord) {
    for row in thresholds(project, unit) {
        let lines = row.down.iter().chain(&row.up);
        for line in lines {
            let exact = (line.at_mm - row.today_mm).abs();
            let shown = (line.shown_mm - row.today_mm).abs();
            assert!(shown >= exact - 1e-9, "{row:?}");
            let text = |mm| figure::length(mm, unit.into());
            assert!(
                text(line.shown_mm) != text(row.today_mm) || exact < 1e-6,
                "{row:?}"
            );
        }
    }
}

#[test]
fn values_are_shown_rounded_away_from_today() {
    shown_is_true(&demo::project(), UnitWord::Millimetre);
    shown_is_true(&demo::project(), UnitWord::Inch);
}

#[test]
fn a_missing_slat_is_told_to_the_thresholds() {
    let mut project = demo::project();
    project.layout.top = solver::Id(99);
    project.layout.bottom = solver::Id(99);
    let problems = refused(ask_thresholds(&project, UnitWord::Millimetre));
    assert_eq!(problems.len(), 1, "{problems:?}");
}

#[test]
fn found_rows_and_thresholds_survive_the_way_as_json() {
    let project = wide_search();
    for said in [ask(&project).0, ask_thresholds(&project, UnitWord::Inch)] {
        let text = serde_json::to_string(&said).unwrap();
        assert_eq!(serde_json::from_str::<Reply>(&text).unwrap(), said);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Whatever is typed, there is a last word of the right kind and no panic.
    #[test]
    fn anything_typed_is_searched_or_refused(
        size in typed(), lead in typed(), width in typed(), land in typed(), axis in typed(),
        pitch in typed(), most in typed(), price in typed(), year in typed(), barrel in 0_u32..4,
        any in any::<bool>(),
    ) {
        let mut project = if any { wide_search() } else { project() };
        project.barrels[0].draft.size = size;
        project.barrels[0].draft.lead_diameter = lead;
        project.slats[0].draft.width = width;
        project.rules.land = land;
        project.rules.axis_height = axis;
        project.rules.most = most;
        project.cutter_sets[0].draft.pitch = pitch;
        project.search.new_set_price = price;
        project.search.year_gross = year;
        project.layout.barrel = solver::Id(barrel);
        project.layout.way = Way::Turned;
        let found = ask(&project).0;
        let is_answer = matches!(found, Reply::Searched { .. } | Reply::Refused { .. });
        prop_assert!(is_answer, "{:?}", found);
        let stepped = ask_thresholds(&project, UnitWord::Inch);
        let is_answer = matches!(stepped, Reply::Thresholds { .. } | Reply::Refused { .. });
        prop_assert!(is_answer, "{:?}", stepped);
    }
}

#[test]
fn what_is_best_under_a_goal_is_not_lost_behind_ties_under_another() {
    let mut project = wide_search();
    let wide = project.slats[0].clone();
    project.slats.truncate(1);
    for id in 60..72 {
        let mut slat = wide.clone();
        slat.id = solver::Id(id);
        project.slats.push(slat);
    }
    let cheap = &mut project.slats[1].draft;
    cheap.width = Typed::Number(60.0);
    cheap.pack_price = Typed::Number(1.0);
    let searched = searched(&project);
    assert!(searched.more > 0, "there are too many ties to be shown");
    for goal in [
        GoalWord::Pencils,
        GoalWord::Wood,
        GoalWord::Money,
        GoalWord::Margin,
        GoalWord::Good,
    ] {
        best(&searched, goal);
    }
}
