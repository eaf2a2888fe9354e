//! Plans of cuts.

use super::*;
use crate::protocol::{Cuts, Sawn, SawnSoFar};
use solver::sawing::SawingList;
use solver::{BlankDraft, PlankDraft};

/// Ten blanks from planks that could give twelve each, 2 sections of 6.
fn sawable() -> ProjectDraft {
    let mut project = project();
    let mut plank = PlankDraft::new("Short");
    (plank.length, plank.width) = (Typed::Number(420.0), Typed::Number(54.0));
    let mut blank = BlankDraft::new("Blank");
    blank.demand = Typed::Number(10.0);
    project.saw_shop.planks = vec![Entry {
        id: Id(51),
        draft: plank,
    }];
    project.saw_shop.blanks = vec![Entry {
        id: Id(61),
        draft: blank,
    }];
    project
}

fn ask(project: &ProjectDraft) -> (Reply, Vec<Reply>) {
    let mut heard = Vec::new();
    let request = Request::Saw {
        job: JOB,
        project: project_file::write(project),
        unit: UnitWord::Millimetre,
    };
    let reply = answer(request, &mut |reply| heard.push(reply));
    (reply, heard)
}

fn sawn(project: &ProjectDraft) -> Sawn {
    match ask(project).0 {
        Reply::Sawn { job: JOB, sawn } => sawn,
        other => panic!("{other:?}"),
    }
}

#[test]
fn one_plank_is_proved_enough() {
    let project = sawable();
    let Sawn::Proved { cuts, .. } = sawn(&project) else {
        panic!("proved");
    };
    // 2·(186 + 4) fit in 380 + 4 of length, 6·(6 + 1.6) in 46 + 1.6 of width.
    let data = project.check_sawing().unwrap();
    let list = SawingList::of(&data, &cuts.plan(&data).unwrap()).unwrap();
    assert_eq!(list.planks, 1);
    assert!((10..=12).contains(&list.cuts[0].blanks[0].made));
}

#[test]
fn what_is_told_on_the_way_holds_every_better_plan() {
    let (last, heard) = ask(&demo());
    let Reply::Sawn { sawn, .. } = last else {
        panic!("{last:?}");
    };
    let (Sawn::Proved { cuts, .. } | Sawn::WithinGap { cuts, .. }) = sawn else {
        panic!("{sawn:?}");
    };
    let data = demo().check_sawing().unwrap();
    let told: Vec<SawnSoFar> = (heard.into_iter())
        .map(|reply| match reply {
            Reply::Sawing { job: JOB, so_far } => so_far,
            other => panic!("{other:?}"),
        })
        .collect();
    let costs: Vec<i64> = (told.iter())
        .filter_map(|so_far| Some(so_far.better.as_ref()?.plan(&data)?.cost))
        .collect();
    assert!(
        !costs.is_empty() && costs.is_sorted_by(|one, next| one > next),
        "{costs:?}"
    );
    assert!(cuts.plan(&data).unwrap().cost <= costs[costs.len() - 1]);
    assert!(told.iter().any(|so_far| so_far.bound.is_some()));
}

fn demo() -> ProjectDraft {
    crate::demo::project()
}

#[test]
fn a_plan_of_other_planks_is_none() {
    let Sawn::Proved { cuts, .. } = sawn(&sawable()) else {
        panic!("proved");
    };
    let data = solver::sawing::SawingDraft::along(100, 0, &[])
        .check()
        .unwrap();
    let plan = |cuts: &Cuts| cuts.plan(&data);
    assert_eq!(plan(&cuts), None);
}

#[test]
fn a_shop_without_planks_is_refused_in_words() {
    let mut project = sawable();
    project.saw_shop.planks.clear();
    let (reply, _) = ask(&project);
    let Reply::Refused { problems, .. } = reply else {
        panic!("{reply:?}");
    };
    assert_eq!(
        problems,
        ["Saw shop: There is no plank to saw from: add one"]
    );
}

#[test]
fn what_is_wrong_is_told_with_its_place() {
    let mut project = sawable();
    project.saw_shop.blanks[0].draft.demand = Typed::Text("many".into());
    let (reply, _) = ask(&project);
    let Reply::Refused { problems, .. } = reply else {
        panic!("{reply:?}");
    };
    assert_eq!(
        problems,
        ["Blank “Blank”: Blanks wanted must be a whole number, like 10"]
    );
}

#[test]
fn a_saw_shop_that_is_wrong_does_not_keep_from_buying() {
    let mut project = sawable();
    project.saw_shop.rip_kerf = Typed::Text("thin".into());
    let request = Request::Purchase {
        job: JOB,
        project: project_file::write(&project),
        seconds: 5,
        unit: UnitWord::Millimetre,
    };
    let reply = answer(request, &mut |_| {});
    assert!(matches!(reply, Reply::Purchased { .. }), "{reply:?}");
}
