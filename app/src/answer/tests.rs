//! Counts that were worked out elsewhere, and what stands in the way of an answer.

mod cutters;
mod good_pencils;
mod measured;
mod sawing;
mod search;

use proptest::prelude::*;
use solver::{
    BarrelDraft, ConditionsDraft, CutterSetDraft, Entry, Id, LayoutDraft, OrderDraft, ProjectDraft,
    RulesDraft, Seam, SearchDraft, Shape, SlatDraft, Spacing, SpeciesDraft, Typed, Way,
};

use super::answer;
use crate::project_file::{self, WayWord};
use crate::protocol::{
    AimWord, JobId, Progress, Purchase, PurchaseList, RankedRow, Ranking, Reply, Request, UnitWord,
};

const JOB: JobId = JobId(7);

/// Hexagon 7.0 and round 7.3, corner 0.5, coat 0.08, lead 2.2, on three stocks; clearance 0.05,
/// land 0.4, edge 1, planing 0.25.
fn project() -> ProjectDraft {
    let slat = |id, name: &str, width, thickness| {
        let mut draft = SlatDraft::new(name);
        draft.width = Typed::Number(width);
        draft.thickness = Typed::Number(thickness);
        Entry { id: Id(id), draft }
    };
    let barrel = |id, name: &str, shape| Entry {
        id: Id(id),
        draft: BarrelDraft::new(name, shape),
    };
    ProjectDraft {
        name: "Trial".to_owned(),
        barrels: vec![
            barrel(1, "Office", Shape::Hexagonal),
            barrel(2, "Sketch", Shape::Round),
        ],
        slats: vec![
            slat(11, "Wide", 78.0, 5.2),
            slat(12, "Usual", 74.0, 5.0),
            slat(13, "Narrow", 69.85, 4.76),
        ],
        species: vec![Entry {
            id: Id(21),
            draft: SpeciesDraft::new("Cedar"),
        }],
        conditions: ConditionsDraft::new(),
        cutter_sets: vec![Entry {
            id: Id(31),
            draft: CutterSetDraft::new("Tens"),
        }],
        rules: RulesDraft::new(),
        search: SearchDraft::new(),
        layout: LayoutDraft {
            barrel: Id(1),
            top: Id(11),
            bottom: Id(11),
            way: Way::Usual(Seam::ThroughCorners),
            turn: Typed::Number(15.0),
            accuracy: Id(0),
        },
        orders: vec![OrderDraft {
            gross: Typed::Number(10.0),
            ..OrderDraft::new(Id(1))
        }],
        accuracies: Vec::new(),
        saw_shop: solver::SawShopDraft::new(),
        heads: [const { solver::HeadDraft::new() }; 3],
        cut: solver::CutDraft::new(),
        run: solver::RunDraft::new(),
        supply: solver::SupplyDraft::new(),
        title_block: solver::TitleBlock::new(),
        set_aside: None,
    }
}

fn ask_ranking(project: &ProjectDraft, aim: AimWord) -> (Reply, Vec<Reply>) {
    let mut heard = Vec::new();
    let request = Request::Rank {
        job: JOB,
        project: project_file::write(project),
        aim,
        unit: UnitWord::Millimetre,
    };
    let reply = answer(request, &mut |reply| heard.push(reply));
    (reply, heard)
}

#[track_caller]
fn ranking(project: &ProjectDraft, aim: AimWord) -> Ranking {
    match ask_ranking(project, aim).0 {
        Reply::Ranked { job: JOB, ranking } => ranking,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_text_that_is_no_project_is_refused_with_its_reasons() {
    let project = r#"{"format": "slatwright-project", "version": 7}"#.to_owned();
    let (job, unit) = (JOB, UnitWord::Millimetre);
    match answer(Request::Search { job, project, unit }, &mut |_| ()) {
        Reply::Refused { job: JOB, problems } => assert!(problems[0].starts_with("version: ")),
        other => panic!("{other:?}"),
    }
}

fn ask_purchase(project: &ProjectDraft) -> (Reply, Vec<Reply>) {
    let mut heard = Vec::new();
    let request = Request::Purchase {
        job: JOB,
        project: project_file::write(project),
        seconds: 20,
        unit: UnitWord::Millimetre,
    };
    let reply = answer(request, &mut |reply| heard.push(reply));
    (reply, heard)
}

#[track_caller]
fn purchase(project: &ProjectDraft) -> Purchase {
    match ask_purchase(project).0 {
        Reply::Purchased { job: JOB, purchase } => purchase,
        other => panic!("{other:?}"),
    }
}

#[track_caller]
fn cheapest(project: &ProjectDraft) -> PurchaseList {
    match purchase(project) {
        Purchase::Cheapest { list, .. } => list,
        other => panic!("{other:?}"),
    }
}

#[track_caller]
fn refused(reply: Reply) -> Vec<String> {
    match reply {
        Reply::Refused { job: JOB, problems } => problems,
        other => panic!("{other:?}"),
    }
}

fn row(ranking: &Ranking, slat: u32, way: WayWord) -> &RankedRow {
    let mut rows = ranking.rows.iter();
    rows.find(|row| (row.slat, row.way) == (slat, way)).unwrap()
}

// Counts of the published cases that the solver is held against as well.

#[test]
fn a_hexagon_on_78_by_5_2() {
    let ranking = ranking(&project(), AimWord::Pencils);
    assert_eq!(row(&ranking, 11, WayWord::ThroughCorners).pencils, 9);
    assert_eq!(row(&ranking, 11, WayWord::ThroughFaces).pencils, 10);
}

#[test]
fn a_hexagon_on_74_by_5_0() {
    let ranking = ranking(&project(), AimWord::Pencils);
    let row = row(&ranking, 12, WayWord::ThroughFaces);
    assert_eq!((row.pencils, row.across), (10, 10));
    assert!((row.pitch_mm - 7.24).abs() < 1e-12, "{}", row.pitch_mm);
    assert_eq!(row.slats_per_gross, Some(28.8));
    assert_eq!(row.turn_degrees, 30.0);
    assert_eq!(row.failing, None);
}

#[test]
fn a_round_pencil_on_69_85_by_4_76() {
    let mut project = project();
    project.layout.barrel = Id(2);
    let ranking = ranking(&project, AimWord::Pencils);
    assert_eq!(row(&ranking, 13, WayWord::AnyWay).pencils, 9);
    assert_eq!(ranking.rows.len(), 3);
}

#[test]
fn most_pencils_come_first_and_of_those_the_least_wood() {
    let ranking = ranking(&project(), AimWord::Pencils);
    let first = &ranking.rows[0];
    assert_eq!((first.slat, first.way), (12, WayWord::ThroughFaces));
    let wood = ranking.rows.iter().filter(|row| row.pencils == 10);
    let wood: Vec<f64> = wood.filter_map(|row| row.wood_per_gross_mm3).collect();
    assert!(wood.is_sorted() && wood.len() > 1, "{wood:?}");
}

#[test]
fn the_typed_turn_is_ranked_only_where_the_layout_is_turned() {
    let mut project = project();
    assert_eq!(ranking(&project, AimWord::Wood).rows.len(), 6);
    project.layout.way = Way::Turned;
    let turned = ranking(&project, AimWord::Wood);
    assert_eq!(turned.rows.len(), 9);
    assert_eq!(row(&turned, 12, WayWord::Turned).turn_degrees, 15.0);
}

#[test]
fn a_stock_that_is_wrong_is_left_out_and_told() {
    let mut project = project();
    project.slats[0].draft.width = Typed::Text("wide".to_owned());
    project.slats[0].draft.thickness = Typed::Number(-1.0);
    let ranking = ranking(&project, AimWord::Pencils);
    assert_eq!(ranking.rows.len(), 4);
    assert_eq!((ranking.left_out[0].slat, ranking.left_out.len()), (11, 1));
    assert_eq!(ranking.left_out[0].problems.len(), 2);
    assert!(ranking.left_out[0].problems[0].starts_with("Slat width"));
}

#[test]
fn a_stock_that_shrinks_is_ranked_as_it_is_grooved() {
    let mut project = project();
    project.slats[1].draft.species = Some(Id(21));
    project.slats[1].draft.moisture = Typed::Number(12.0);
    let shrunk = ranking(&project, AimWord::Pencils);
    assert_eq!(row(&shrunk, 12, WayWord::ThroughFaces).pencils, 9);
}

#[test]
fn a_wrong_species_leaves_its_stocks_out_by_name() {
    let mut project = project();
    project.slats[1].draft.species = Some(Id(21));
    project.species[0].draft.radial = Typed::empty();
    let ranking = ranking(&project, AimWord::Pencils);
    assert_eq!((ranking.left_out.len(), ranking.left_out[0].slat), (1, 12));
    let told = &ranking.left_out[0].problems;
    assert!(
        told[0].starts_with("Species “Cedar”: Radial shrinkage"),
        "{told:?}"
    );
}

#[test]
fn a_cutter_set_sets_the_pitch_of_every_row() {
    let mut project = project();
    project.rules.spacing = Spacing::Set;
    project.rules.cutter_set = Some(Id(31));
    let first = ranking(&project, AimWord::Pencils);
    assert!(first.rows.iter().all(|row| row.pitch_mm == 7.5));
    project.cutter_sets[0].draft.barrel = Some(Id(2));
    let problems = refused(ask_ranking(&project, AimWord::Pencils).0);
    assert!(
        problems[0].starts_with("Machining rules: The cutter set"),
        "{problems:?}"
    );
}

#[test]
fn what_does_not_fit_stands_last_with_its_reason() {
    let mut project = project();
    project.slats[1].draft.thickness = Typed::Number(3.0);
    let ranking = ranking(&project, AimWord::Pencils);
    let last = ranking.rows.last().unwrap();
    assert_eq!((last.slat, last.pencils, last.yielded), (12, 0, None));
    let failing = last.failing.as_deref().unwrap();
    assert!(
        failing.starts_with("Top slat thickness: 3.00\u{202f}mm, "),
        "{failing}"
    );
}

#[test]
fn everything_that_keeps_from_ranking_is_told_at_once() {
    let mut project = project();
    project.barrels[0].draft.coat = Typed::Text("thick".to_owned());
    project.rules.land = Typed::Number(99.0);
    project.layout.way = Way::Turned;
    project.layout.turn = Typed::Text("half".to_owned());
    let problems = refused(ask_ranking(&project, AimWord::Pencils).0);
    assert_eq!(problems.len(), 3, "{problems:?}");
    assert!(problems[0].starts_with("Barrel “Office”: Coat"));
    assert!(problems[1].starts_with("Machining rules: Land"));
    assert!(problems[2].starts_with("Layout: Turn"));
}

#[test]
fn a_missing_barrel_is_told() {
    let mut project = project();
    project.layout.barrel = Id(99);
    let problems = refused(ask_ranking(&project, AimWord::Pencils).0);
    assert_eq!(
        problems,
        ["Layout: its barrel is not in the project any more: choose another"]
    );
}

#[test]
fn no_stocks_give_an_empty_ranking() {
    let mut project = project();
    project.slats.clear();
    let (reply, heard) = ask_ranking(&project, AimWord::Pencils);
    let (rows, left_out) = (Vec::new(), Vec::new());
    let ranking = Ranking { rows, left_out };
    assert_eq!(reply, Reply::Ranked { job: JOB, ranking });
    assert_eq!(heard, []);
}

#[test]
fn two_thousand_stocks_take_fifty_messages() {
    let mut project = project();
    project.slats = (0..2_000)
        .map(|id| Entry {
            id: Id(id),
            draft: SlatDraft::new(""),
        })
        .collect();
    let (reply, heard) = ask_ranking(&project, AimWord::Pencils);
    assert!(matches!(reply, Reply::Ranked { .. }));
    assert_eq!(heard.len(), 50);
    let progress = Progress::Laid {
        done: 4_000,
        of: 4_000,
    };
    assert_eq!(heard[49], Reply::Progress { job: JOB, progress });
}

#[test]
fn ten_gross_take_one_pack() {
    let list = cheapest(&project());
    // 1440 pencils at ten a sandwich: 144 sandwiches, 288 slats; all packs cost 100.00 for 600.
    assert_eq!(list.runs.len(), 1);
    assert_eq!(list.runs[0].sandwiches.pieces(), 144);
    assert_eq!(list.runs[0].way, WayWord::ThroughFaces);
    assert_eq!(list.runs[0].barrel_name, "Office");
    assert_eq!(list.stocks[0].slats_left.pieces(), 312);
    assert_eq!(list.totals.cost.hundredths(), 10_000);
    assert_eq!(list.totals.cost_per_gross, Some(1_000.0));
}

#[test]
fn an_empty_book_costs_nothing() {
    let mut project = project();
    project.orders.clear();
    let list = cheapest(&project);
    assert_eq!((list.stocks.len(), list.runs.len()), (0, 0));
    assert_eq!(list.totals.cost.hundredths(), 0);
    assert_eq!(list.totals.cost_per_gross, None);
}

#[test]
fn orders_without_stocks_are_impossible() {
    let mut project = project();
    project.slats.clear();
    let Purchase::Impossible { obstacles } = purchase(&project) else {
        panic!("there is nothing to buy");
    };
    assert_eq!(
        obstacles,
        ["“Office” of order 1 cannot be made, as there is no slat stock: add one"]
    );
}

#[test]
fn the_layout_looked_at_has_no_say_in_a_purchase() {
    let mut project = project();
    project.layout.way = Way::Turned;
    project.layout.turn = Typed::Text("half".to_owned());
    project.layout.barrel = Id(99);
    project.search.year_gross = Typed::Text("many".to_owned());
    assert_eq!(cheapest(&project).totals.cost.hundredths(), 10_000);
}

#[test]
fn a_wrong_order_is_refused_with_its_number() {
    let mut project = project();
    project.orders[0].gross = Typed::Text("some".to_owned());
    let problems = refused(ask_purchase(&project).0);
    assert_eq!(problems.len(), 1);
    assert!(problems[0].starts_with("Order 1: Ordered"), "{problems:?}");
}

#[test]
fn too_many_orders_are_refused() {
    let mut project = project();
    project.orders = vec![project.orders[0].clone(); 65];
    let problems = refused(ask_purchase(&project).0);
    assert_eq!(
        problems,
        ["the book has 65 orders, at most 64 can be planned at once"]
    );
}

#[test]
fn a_purchase_tells_how_far_it_has_come() {
    let (_, heard) = ask_purchase(&project());
    let cost = Some(10_000_i64.into());
    let progress = Progress::FirstPlan { cost };
    assert_eq!(heard[0], Reply::Progress { job: JOB, progress });
}

#[test]
fn the_first_project_is_answered() {
    let project = crate::demo::project();
    assert!(!ranking(&project, AimWord::Wood).rows.is_empty());
    assert!(matches!(
        purchase(&project),
        Purchase::Cheapest { .. } | Purchase::WithinGap { .. }
    ));
}

#[test]
fn what_is_said_survives_the_way_as_json() {
    let (reply, heard) = ask_purchase(&project());
    for said in heard.into_iter().chain([reply]) {
        let text = serde_json::to_string(&said).unwrap();
        assert_eq!(serde_json::from_str::<Reply>(&text).unwrap(), said);
    }
}

fn typed() -> impl Strategy<Value = Typed> {
    prop_oneof![
        4 => (0.0..100.0).prop_map(Typed::Number),
        1 => any::<f64>().prop_map(Typed::Number),
        1 => ".{0,8}".prop_map(Typed::Text),
    ]
}

fn is_ranked_or_refused(reply: &Reply) -> bool {
    matches!(reply, Reply::Ranked { .. } | Reply::Refused { .. })
}

fn is_purchased_or_refused(reply: &Reply) -> bool {
    matches!(reply, Reply::Purchased { .. } | Reply::Refused { .. })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Whatever is typed, there is a last word of the right kind and no panic.
    #[test]
    fn anything_typed_is_answered(
        size in typed(), corner in typed(), lead in typed(), width in typed(), land in typed(),
        turn in typed(), price in typed(), hand in typed(), barrel in 0_u32..4,
    ) {
        let mut project = project();
        project.barrels[0].draft.size = size;
        project.barrels[0].draft.corner_radius = corner;
        project.barrels[0].draft.lead_diameter = lead;
        project.slats[0].draft.width = width;
        project.slats[1].draft.pack_price = price;
        project.slats[2].draft.on_hand = hand;
        project.rules.land = land;
        project.layout.way = Way::Turned;
        project.layout.turn = turn;
        project.layout.barrel = Id(barrel);
        project.orders[0].barrel = Id(barrel);
        project.orders[0].gross = Typed::Number(0.5);
        let ranked = ask_ranking(&project, AimWord::Wood).0;
        prop_assert!(is_ranked_or_refused(&ranked), "{:?}", ranked);
        let purchased = ask_purchase(&project).0;
        prop_assert!(is_purchased_or_refused(&purchased), "{:?}", purchased);
    }
}
