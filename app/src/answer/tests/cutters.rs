//! What cutter sets serve, and the one more that saves most.

use super::JOB;
use crate::answer::answer;
use crate::demo;
use crate::project_file;
use crate::protocol::{CutterPlan, NewSetKind, Reply, Request, UnitWord};
use solver::{ProjectDraft, Typed};

fn ask(project: &ProjectDraft) -> Reply {
    let request = Request::Cutters {
        job: JOB,
        project: project_file::write(project),
        unit: UnitWord::Millimetre,
    };
    answer(request, &mut |_| ())
}

#[track_caller]
fn planned(project: &ProjectDraft) -> CutterPlan {
    match ask(project) {
        Reply::Cutters { job: JOB, plan } => plan,
        other => panic!("{other:?}"),
    }
}

#[test]
fn every_barrel_is_told_with_the_sets_that_make_it() {
    let project = demo::project();
    let plan = planned(&project);
    assert_eq!(plan.barrels.len(), project.barrels.len());
    let writer = &plan.barrels[0];
    assert_eq!((writer.barrel, writer.gross), (1, 400.0));
    // That of the tens is ground for this barrel, and the cheapest slats come first.
    assert_eq!(writer.sets[0].name, "Writer head, tens");
    let costs: Vec<f64> = writer.sets.iter().map(|set| set.gross_cost).collect();
    assert!(costs.is_sorted(), "{costs:?}");
}

#[test]
fn a_set_made_to_measure_is_proposed_only_where_it_has_a_price() {
    let mut project = demo::project();
    // One set too wide for tens is all there is, and only writers are ordered.
    project.cutter_sets.truncate(1);
    project.cutter_sets[0].draft.pitch = Typed::Number(8.0);
    project.cutter_sets[0].draft.most = Typed::Number(8.0);
    project.orders.truncate(1);
    assert_eq!(planned(&project).best, None, "none has a price");
    project.search.new_set_price = Typed::Number(480.0);
    let best = planned(&project).best.unwrap();
    assert_eq!(best.price.hundredths(), 48_000);
    assert!(matches!(best.kind, NewSetKind::MadeToMeasure { most, .. } if most > 8));
    let back = best.books_to_pay_back.unwrap();
    assert!((back * best.saving - 48_000.0).abs() < 1e-6);
}

#[test]
fn a_project_that_cannot_be_worked_with_is_refused_but_for_what_makes_no_difference() {
    let mut project = demo::project();
    project.heads[0].speed = Typed::Text("fast".to_owned());
    assert!(matches!(ask(&project), Reply::Cutters { .. }));
    project.cutter_sets[0].draft.pitch = Typed::Text("wide".to_owned());
    let Reply::Refused { problems, .. } = ask(&project) else {
        panic!("not refused");
    };
    assert!(problems[0].contains("Writer head, tens"), "{problems:?}");
}
