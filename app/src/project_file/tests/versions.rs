//! Files of every version, and of none.

use super::*;
use solver::order_plan::{PlanAim, Pricing};
use solver::sawing::SawingAim;
use solver::{
    AccuracyDraft, AxisChoice, BarrelDraft, Colour, ConditionsDraft, CutDraft, FinishDraft,
    HeadDraft, Id, MoistureSource, Pairs, Reading, RunDraft, SawShopDraft, Sawing, SearchDraft,
    Shape, Spacing, Stage, SupplyDraft, TitleBlock, Turns, Typed, Way,
};

#[test]
fn a_file_of_version_1_still_opens() {
    let Opened { draft, notes } = read(VERSION_1).unwrap();
    assert_eq!(notes, []);
    assert_eq!(draft.name, "Made-up works");
    assert_eq!(draft.barrels[1].draft.shape, Shape::Triangular);
    assert_eq!(
        draft.barrels[1].draft.corner_radius,
        Typed::Text("1,".into())
    );
    assert_eq!(draft.slats[0].draft.pack_limit, Typed::empty());
    assert_eq!(draft.slats[1].draft.pack_price, Typed::Number(137.5));
    assert_eq!(draft.rules.spacing, Spacing::Given);
    assert_eq!(draft.rules.axis_height, Typed::Number(-0.1));
    assert_eq!(draft.layout.way, Way::Turned);
    assert_eq!(draft.layout.bottom, Id(3));
    assert_eq!(draft.orders[1].gross, Typed::Number(0.5));
}

#[test]
fn what_version_1_does_not_know_is_as_in_a_new_project() {
    let draft = read(VERSION_1).unwrap().draft;
    assert_eq!((draft.species.len(), draft.cutter_sets.len()), (0, 0));
    assert_eq!(draft.conditions, ConditionsDraft::new());
    assert_eq!(draft.search, SearchDraft::new());
    let (barrel, new) = (
        &draft.barrels[0].draft,
        BarrelDraft::new("", Shape::Hexagonal),
    );
    assert_eq!(
        (
            &barrel.sides,
            &barrel.height,
            &barrel.face_radius,
            &barrel.path
        ),
        (&new.sides, &new.height, &new.face_radius, &new.path)
    );
    let slat = &draft.slats[1].draft;
    assert_eq!((slat.species, slat.sawing), (None, Sawing::Flat));
    assert_eq!(draft.rules.most, Typed::empty());
    assert_eq!(draft.rules.pencil_rejects, Typed::Number(0.0));
}

#[test]
fn a_file_of_version_2_still_opens() {
    let Opened { draft, notes } = read(VERSION_2).unwrap();
    assert_eq!(notes, []);
    assert_eq!(draft.name, "Made-up works");
    let barrel = &draft.barrels[1].draft;
    assert_eq!(barrel.sides, Typed::Number(5.0));
    assert_eq!(barrel.face_radius, Typed::Number(25.0));
    assert_eq!(barrel.path, "M 0 0 H 9 V 7 H 0 Z");
    assert_eq!(barrel.axis_up, Typed::Number(-0.5));
    let slat = &draft.slats[0].draft;
    assert_eq!((slat.species, slat.sawing), (Some(Id(21)), Sawing::Quarter));
    assert_eq!(slat.moisture, Typed::Number(10.5));
    assert_eq!(draft.slats[1].draft.species, None);
    assert_eq!(
        draft.species[1].draft.fibre_saturation,
        Typed::Text("dry".into())
    );
    assert_eq!(draft.conditions.source, MoistureSource::Air);
    assert_eq!(draft.conditions.humidity, Typed::Number(45.0));
    assert_eq!(draft.cutter_sets[0].draft.barrel, Some(Id(4)));
    assert_eq!(draft.cutter_sets[1].draft.price, Typed::Number(640.0));
    assert_eq!(draft.rules.spacing, Spacing::Set);
    assert_eq!(draft.rules.cutter_set, Some(Id(31)));
    assert_eq!(draft.rules.pencil_rejects, Typed::Number(2.5));
    let search = &draft.search;
    let choices = (search.turns, search.axis, search.pairs);
    assert_eq!(choices, (Turns::Any, AxisChoice::AsInRules, Pairs::Any));
    assert_eq!(search.new_set_price, Typed::empty());
}

#[test]
fn what_version_2_does_not_know_is_as_in_a_new_project() {
    let draft = read(VERSION_2).unwrap().draft;
    assert_eq!(
        draft.accuracies[0].draft,
        AccuracyDraft::new(crate::demo::FIRST_LINE)
    );
    assert_eq!(draft.layout.accuracy, draft.accuracies[0].id);
    assert_eq!(draft.set_aside, None);
}

#[test]
fn a_file_of_version_3_still_opens() {
    let Opened { draft, notes } = read(VERSION_3).unwrap();
    assert_eq!(notes, []);
    assert_eq!(draft.layout.accuracy, Id(51));
    let [first, second] = [0, 1].map(|at| &draft.accuracies[at].draft);
    assert_eq!(first.groove_position.size, Typed::Number(0.01));
    assert_eq!(first.thickness_offset, Typed::Number(0.05));
    assert_eq!(second.glue_shift.reading, Reading::Limits);
    assert_eq!(second.lead_diameter.size, Typed::Text("0,0".into()));
    assert_eq!(second.sigmas, Typed::Text("three".into()));
}

#[test]
fn what_version_3_does_not_know_is_as_in_a_new_project() {
    assert_eq!(read(VERSION_3).unwrap().draft.saw_shop, SawShopDraft::new());
}

#[test]
fn a_file_of_version_4_still_opens() {
    let Opened { draft, notes } = read(VERSION_4).unwrap();
    assert_eq!(notes, []);
    let shop = &draft.saw_shop;
    let [long, short] = [0, 1].map(|at| &shop.planks[at].draft);
    assert_eq!(
        (&long.price, &long.on_hand),
        (&Typed::Number(21.4), &Typed::empty())
    );
    assert_eq!(short.width, Typed::Text("wide".into()));
    assert_eq!(short.thickness, Typed::Number(79.375));
    let [of_stock, typed] = [0, 1].map(|at| &shop.blanks[at].draft);
    assert_eq!((of_stock.slat, typed.slat), (Some(Id(2)), None));
    assert_eq!(of_stock.demand, Typed::Number(4800.0));
    assert_eq!(of_stock.over_worth, Typed::Number(0.02));
    assert_eq!(typed.width_dressing, Typed::Text("little".into()));
    assert_eq!(shop.moisture, Typed::Number(14.5));
    assert_eq!(shop.shortest_offcut, Typed::Number(450.0));
    assert_eq!(shop.aim, SawingAim::Volume);
}

#[test]
fn what_version_4_does_not_know_is_as_in_a_new_project() {
    let draft = read(VERSION_4).unwrap().draft;
    assert_eq!(draft.heads, [const { HeadDraft::new() }; 3]);
    assert_eq!((draft.cut, draft.run), (CutDraft::new(), RunDraft::new()));
}

#[test]
fn a_file_of_version_5_still_opens() {
    let Opened { draft, notes } = read(VERSION_5).unwrap();
    assert_eq!(notes, []);
    let [groove, top, bottom] = &draft.heads;
    assert_eq!(groove.diameter, Typed::Number(125.5));
    assert_eq!(groove.hook, Typed::Number(12.5));
    assert_eq!(top.knives, Typed::Text("four".into()));
    assert_eq!(bottom.speed, Typed::Number(7200.0));
    assert_eq!(bottom.marked, Typed::Number(9000.0));
    assert_eq!(draft.cut.feed, Typed::Number(18.0));
    assert_eq!(draft.cut.overcut, Typed::Text("".into()));
    assert_eq!(draft.cut.draft, Typed::Number(7.5));
    let run = &draft.run;
    assert_eq!(run.grade.label(), "2B");
    assert_eq!(run.gross, Typed::Number(420.0));
    assert_eq!(run.glue_spread, Typed::Number(185.0));
    assert_eq!(run.volumetric_shrinkage, Typed::Text("little".into()));
    assert_eq!(run.yields[Stage::Gluing as usize], Typed::Number(98.5));
    assert_eq!(run.yields[Stage::Finishing as usize], Typed::empty());
}

#[test]
fn a_file_of_version_6_still_opens() {
    let Opened { draft, notes } = read(VERSION_6).unwrap();
    assert_eq!(notes, []);
    assert_eq!(draft.orders[0].due, Typed::Number(1.0));
    assert_eq!(draft.orders[1].due, Typed::Text("next".into()));
    assert_eq!(draft.orders[1].on_hand, Typed::Number(720.0));
    assert_eq!(draft.supply.chip_price, Typed::Number(12.5));
    let supply = &draft.supply;
    assert_eq!(supply.periods[0].name, "March");
    assert_eq!(supply.periods[1].hours, Typed::empty());
    let [first, second] = [0, 1].map(|at| &supply.offers[at].draft);
    assert_eq!(first.tiers[1].from_packs, Typed::Number(15.0));
    assert_eq!(first.tiers[1].pack_price, Typed::Text("ask".into()));
    assert_eq!((first.slat, first.is_certified), (draft.slats[0].id, true));
    assert_eq!(second.pricing, Pricing::Incremental);
    assert_eq!(second.most_packs, Typed::Number(40.0));
    assert_eq!(supply.sawn[0].most_slats, Typed::Number(1500.0));
    assert_eq!(supply.aim, PlanAim::Timber);
    assert_eq!(supply.timber_limit, Typed::Number(2.5));
    let finish = &draft.barrels[0].draft.finish;
    assert_eq!(finish.point_angle, Typed::Number(24.0));
    assert_eq!(finish.coat_colour, Colour::new(0x8a, 0x1c, 0x2b));
    assert_eq!(finish.imprint, "Made up 2B");
    assert_eq!(finish.end_margin, Typed::Text("1,".into()));
    assert_eq!(finish.tin_length, Typed::Number(182.0));
}

#[test]
fn a_colour_that_is_none_is_told_of() {
    let problems = read(&changed("/barrels/0/finish/coat_colour", json!("teal"))).unwrap_err();
    assert_eq!(
        lines(&problems),
        [
            "barrels[0].finish.coat_colour: the text \"teal\" stands here, expected a colour in quotes, like \"#1f5f6b\""
        ]
    );
}

#[test]
fn before_version_6_pencils_are_finished_as_in_a_new_project() {
    for text in [VERSION_1, VERSION_2, VERSION_3, VERSION_4, VERSION_5] {
        let draft = read(text).unwrap().draft;
        let mut barrels = draft.barrels.iter();
        assert!(barrels.all(|barrel| barrel.draft.finish == FinishDraft::new()));
    }
}

#[test]
fn before_version_6_there_is_one_period_and_an_offer_for_each_stock() {
    for text in [VERSION_1, VERSION_2, VERSION_3, VERSION_4, VERSION_5] {
        let draft = read(text).unwrap().draft;
        let supply = &draft.supply;
        let nothing_offered = SupplyDraft {
            offers: Vec::new(),
            ..supply.clone()
        };
        assert_eq!(nothing_offered, SupplyDraft::new());
        assert_eq!(supply.periods.len(), 1);
        assert_eq!(supply.offers.len(), draft.slats.len());
        for (offer, slat) in supply.offers.iter().zip(&draft.slats) {
            assert_eq!(offer.draft.slat, slat.id);
            assert_eq!(offer.draft.pack_slats, slat.draft.pack_slats);
            assert_eq!(offer.draft.tiers[0].pack_price, slat.draft.pack_price);
            assert_eq!(offer.draft.pack_limit, slat.draft.pack_limit);
        }
        let first = Typed::Number(1.0);
        assert!(draft.orders.iter().all(|order| order.due == first));
        let none = Typed::Number(0.0);
        assert!(draft.orders.iter().all(|order| order.on_hand == none));
    }
}

#[test]
fn a_file_of_version_6_keeps_what_the_title_block_tells() {
    let block = read(VERSION_6).unwrap().draft.title_block;
    assert_eq!(block.number, "S-0117");
    assert_eq!(block.issued, "26 Nov");
    assert_eq!(block.title, "");
    let older = read(VERSION_5).unwrap().draft.title_block;
    assert_eq!(older, TitleBlock::new());
}

#[test]
fn what_is_written_is_what_the_fixture_holds() {
    assert_eq!(write(&read(VERSION_6).unwrap().draft), VERSION_6);
}

#[test]
fn a_newer_version_asks_for_an_update() {
    let problems = read(&changed("/version", json!(7))).unwrap_err();
    assert_eq!(
        lines(&problems),
        ["version: made by a newer Slatwright, version 7 of the file; this one reads up to 6"]
    );
    assert!(problems[0].hint().starts_with("update Slatwright"));
}

#[test]
fn a_version_that_never_was() {
    let told = "is not a version of the file; versions count from 1 to 6";
    for (version, found) in [
        (json!(0), "0"),
        (json!(-1), "-1"),
        (json!(1.5), "1.5"),
        (json!("1"), "the text \"1\""),
        (json!(null), "nothing (null)"),
    ] {
        refuses(
            &changed("/version", version),
            &[&format!("version: {found} {told}")],
        );
    }
    refuses(
        &without("", "version"),
        &["version: missing, expected the version of the file, a whole number from 1"],
    );
}
