use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::layout::lay_out;
use crate::quantity::Angle;
use crate::rules::RulesDraft;
use crate::seam::Seam;
use crate::shape::Shape;
use crate::slat::SlatDraft;

const MM: LengthUnit = LengthUnit::Millimetre;

/// Ten hexagons of 6.84 mm bare on slats of 74 × 5, at a pitch of 7.24.
fn hexagons() -> LayoutParts {
    let barrel = BarrelDraft::new("Office", Shape::Hexagonal)
        .check()
        .unwrap();
    let slat = SlatDraft::new("Usual").check().unwrap();
    LayoutParts {
        turn: barrel.turn(Seam::ThroughFaces),
        top: slat.clone(),
        bottom: slat,
        rules: RulesDraft::new().check().unwrap(),
        cutter_set: None,
        barrel,
    }
}

fn compared(change: impl FnOnce(&mut LayoutParts)) -> Vec<Line> {
    let first = hexagons();
    let mut second = first.clone();
    change(&mut second);
    let layouts = [&first, &second].map(|parts| lay_out(&parts.setup()));
    let [one, other] = &layouts;
    let laid = |parts, layout| Laid { parts, layout };
    compare(laid(&first, one), laid(&second, other))
}

fn different(lines: &[Line]) -> Vec<&Line> {
    lines.iter().filter(|line| line.differs(MM)).collect()
}

#[track_caller]
fn line<'a>(lines: &'a [Line], part: Part, label: &str) -> &'a Line {
    let mut found = lines.iter();
    found
        .find(|line| (line.part, line.label) == (part, label))
        .unwrap_or_else(|| panic!("no line {label}"))
}

/// The texts of a line, the change, and whether it is better.
#[track_caller]
fn reads(
    lines: &[Line],
    (part, label): (Part, &str),
    texts: [&str; 2],
    change: Option<&str>,
    verdict: Option<Verdict>,
) {
    let line = line(lines, part, label);
    assert_eq!(line.texts(MM), texts);
    assert_eq!(line.change(MM).as_deref(), change);
    assert_eq!(line.verdict(MM), verdict);
}

#[test]
fn a_layout_does_not_differ_from_itself() {
    let lines = compared(|_| {});
    assert_eq!(different(&lines), Vec::<&Line>::new());
    for line in &lines {
        assert_eq!((line.change(MM), line.verdict(MM)), (None, None));
    }
}

#[test]
fn a_larger_edge_allowance_costs_a_pencil_and_its_wood() {
    let lines = compared(|parts| parts.rules.edge = Length::millimetres(2.0));
    let labels: Vec<&str> = different(&lines).iter().map(|line| line.label).collect();
    for label in ["Pitch", "Land", "Stock", "Wall, lead off centre"] {
        assert!(!labels.contains(&label), "{label} has not changed");
    }
    let worse = Some(Verdict::Worse);
    reads(
        &lines,
        (Part::Result, "Pencils from a sandwich"),
        ["10", "9"],
        Some("−1"),
        worse,
    );
    // (74 − 6.84 − 8 · 7.24) / 2 = 4.62.
    reads(
        &lines,
        (Part::Result, "Edge at the datum"),
        ["1.00\u{202f}mm", "4.62\u{202f}mm"],
        Some("+3.62\u{202f}mm"),
        None,
    );
    // 2 · 144 / 10 and 2 · 144 / 9.
    reads(
        &lines,
        (Part::Gross, "Slats"),
        ["28.80", "32.00"],
        Some("+3.20"),
        worse,
    );
    reads(
        &lines,
        (Part::Machining, "Edge allowance"),
        ["1.00\u{202f}mm", "2.00\u{202f}mm"],
        Some("+1.00\u{202f}mm"),
        None,
    );
}

#[test]
fn a_check_that_fails_is_told_with_its_margin_and_takes_the_balance_with_it() {
    let lines = compared(|parts| parts.rules.bond = Length::millimetres(9.0));
    let bond = line(&lines, Part::Checks, "Bond width beside the lead");
    let [first, second] = bond.texts(MM);
    assert!(!first.contains("fails") && second.contains("fails"));
    assert_eq!(bond.verdict(MM), Some(Verdict::Worse));
    let wood = line(&lines, Part::Gross, "Wood");
    assert_eq!(wood.texts(MM)[1], figure::NO_FIGURE);
    assert_eq!((wood.change(MM), wood.verdict(MM)), (None, None));
    assert!(wood.differs(MM));
}

#[test]
fn two_checks_that_pass_are_as_good_as_each_other() {
    let lines = compared(|parts| parts.rules.bond = Length::millimetres(0.5));
    let bond = line(&lines, Part::Checks, "Bond width beside the lead");
    assert!(bond.differs(MM) && bond.change(MM).is_some());
    assert_eq!(bond.verdict(MM), None);
}

#[test]
fn slats_are_told_apart_where_one_of_the_layouts_has_two_kinds() {
    let parts_of = |lines: &[Line]| {
        let both = lines.iter().any(|line| line.part == Part::Slats);
        let apart = lines.iter().any(|line| line.part == Part::TopSlat);
        (both, apart)
    };
    assert_eq!(parts_of(&compared(|_| {})), (true, false));
    let mut thick = SlatDraft::new("Thick");
    thick.thickness = Typed::Number(6.8);
    let thick = thick.check().unwrap();
    let lines = compared(|parts| parts.top = thick);
    assert_eq!(parts_of(&lines), (false, true));
    reads(
        &lines,
        (Part::TopSlat, "Stock"),
        ["Usual", "Thick"],
        None,
        None,
    );
    assert!(!line(&lines, Part::BottomSlat, "Stock").differs(MM));
}

#[test]
fn what_only_one_has_is_a_dash_in_the_other() {
    let lines = compared(|parts| {
        parts.barrel = BarrelDraft::new("Sketch", Shape::Round).check().unwrap();
        parts.cutter_set = Some("Nines".to_owned());
    });
    let radius = line(&lines, Part::Pencil, "Corner radius");
    assert_eq!(radius.texts(MM), ["0.50\u{202f}mm", "–"]);
    let set = line(&lines, Part::Machining, "Cutter set");
    assert_eq!(set.texts(MM), ["–", "Nines"]);
    assert_eq!((set.change(MM), set.verdict(MM)), (None, None));
}

#[test]
fn a_difference_too_small_to_be_shown_is_none() {
    let lines = compared(|parts| parts.rules.land = Length::millimetres(0.4 + 1e-7));
    let land = line(&lines, Part::Machining, "Land");
    assert!(!land.differs(MM));
    assert_eq!(land.change(MM), None);
}

#[test]
fn a_change_that_is_only_rounding_is_neither_better_nor_worse() {
    let lines = compared(|parts| parts.rules.edge = Length::millimetres(0.999));
    let margin = line(&lines, Part::Result, "Margin for error");
    let [first, second] = [0.004_9, 0.005_1].map(|mm| Some(Value::Length(Length::millimetres(mm))));
    let rounded = Line {
        values: [first, second],
        ..margin.clone()
    };
    assert!(rounded.differs(MM));
    assert_eq!((rounded.change(MM), rounded.verdict(MM)), (None, None));
}

#[test]
fn lengths_are_compared_in_the_unit_that_is_shown() {
    let lines = compared(|parts| parts.rules.land = Length::millimetres(0.65));
    let land = line(&lines, Part::Machining, "Land");
    let inch = LengthUnit::Inch;
    assert_eq!(land.texts(inch), ["0.016\u{202f}in", "0.026\u{202f}in"]);
    assert_eq!(land.change(inch).unwrap(), "+0.010\u{202f}in");
}

#[test]
fn the_other_way_round_every_change_and_verdict_is_turned_round() {
    let first = hexagons();
    let mut second = first.clone();
    second.rules.edge = Length::millimetres(2.0);
    second.turn = Angle::degrees(12.0);
    let layouts = [&first, &second].map(|parts| lay_out(&parts.setup()));
    let one = Laid {
        parts: &first,
        layout: &layouts[0],
    };
    let other = Laid {
        parts: &second,
        layout: &layouts[1],
    };
    let (there, back) = (compare(one, other), compare(other, one));
    assert_eq!(there.len(), back.len());
    for (there, back) in there.iter().zip(&back) {
        assert_eq!(there.label, back.label);
        let turned = |verdict| match verdict {
            Verdict::Better => Verdict::Worse,
            Verdict::Worse => Verdict::Better,
        };
        assert_eq!(
            there.verdict(MM),
            back.verdict(MM).map(turned),
            "{}",
            there.label
        );
        let unsigned = |change: Option<String>| change.map(|text| text.replace(['+', '−'], ""));
        assert_eq!(unsigned(there.change(MM)), unsigned(back.change(MM)));
        assert!(there.change(MM).is_none() || there.change(MM) != back.change(MM));
    }
}

/// Barrels against each other, by formulas and by laying out.
mod barrels {
    use crate::comparison::{BarrelLine, BarrelTable, Value, Verdict, compare_barrels};
    use crate::{
        BarrelDraft, Entry, Id, LengthUnit, ProjectDraft, Seam, Shape, SlatDraft, Typed, Way,
        lay_out,
    };

    const MM: LengthUnit = LengthUnit::Millimetre;

    fn project() -> ProjectDraft {
        let mut small = BarrelDraft::new("Small, 6.3", Shape::Hexagonal);
        small.size = Typed::Number(6.3);
        let mut wide = SlatDraft::new("78 × 5");
        wide.width = Typed::Number(78.0);
        wide.pack_price = Typed::Number(300.0);
        let entry = |id, draft| Entry { id: Id(id), draft };
        let slat = |id, draft| Entry { id: Id(id), draft };
        let mut round = BarrelDraft::new("Round, 7.0", Shape::Round);
        round.size = Typed::Number(7.0);
        let mut broken = BarrelDraft::new("Broken", Shape::Round);
        broken.coat = Typed::Text("thick".to_owned());
        ProjectDraft {
            name: String::new(),
            barrels: vec![
                entry(1, BarrelDraft::new("Usual, 7.0", Shape::Hexagonal)),
                entry(2, small),
                entry(3, round),
                entry(4, broken),
            ],
            slats: vec![slat(11, SlatDraft::new("74 × 5")), slat(12, wide)],
            title_block: crate::TitleBlock::new(),
            rules: crate::RulesDraft::new(),
            layout: crate::LayoutDraft {
                barrel: Id(1),
                top: Id(11),
                bottom: Id(11),
                way: Way::Usual(Seam::ThroughFaces),
                turn: Typed::Number(0.0),
                accuracy: Id(0),
            },
            orders: Vec::new(),
            species: Vec::new(),
            conditions: crate::ConditionsDraft::new(),
            cutter_sets: vec![Entry {
                id: Id(21),
                draft: {
                    let mut set = crate::CutterSetDraft::new("Head, =1+1");
                    set.pitch = Typed::Number(7.24);
                    set.most = Typed::Number(12.0);
                    set
                },
            }],
            search: crate::SearchDraft::new(),
            saw_shop: crate::SawShopDraft::new(),
            heads: [const { crate::HeadDraft::new() }; 3],
            cut: crate::CutDraft::new(),
            run: crate::RunDraft::new(),
            supply: crate::SupplyDraft::new(),
            set_aside: None,
            accuracies: Vec::new(),
        }
    }

    fn line<'a>(table: &'a BarrelTable, label: &str) -> &'a BarrelLine {
        let mut lines = table.lines.iter();
        lines.find(|line| line.label == label).unwrap()
    }

    #[test]
    fn the_sizes_are_those_of_the_formulas() {
        let table = compare_barrels(&project(), &[Id(1), Id(3), Id(2)]);
        // Over corners 2/√3 of the size, less r(2/√3 − 1) at either end, with r = 0.5.
        let over = 2.0 / 3.0_f64.sqrt();
        let expected = 7.0 * over - 2.0 * 0.5 * (over - 1.0);
        let Some(Value::Length(width)) = &line(&table, "Width over the coat").values[0] else {
            panic!("a length");
        };
        assert!((width.in_millimetres() - expected).abs() < 1e-12);
        // A side of the core of inradius 3: 2·3·tan 30°.
        let Some(Value::Length(face)) = &line(&table, "Widest flat face").values[0] else {
            panic!("a length");
        };
        assert!((face.in_millimetres() - 6.0 / 3.0_f64.sqrt()).abs() < 1e-12);
        assert_eq!(line(&table, "Widest flat face").values[1], None);
        // π·3.42²·175 mm³ of a round pencil of 7.0 under a coat of 0.08.
        let volume = std::f64::consts::PI * 3.42 * 3.42 * 175.0;
        let Some(Value::Volume(wood)) = &line(&table, "Wood and lead in a pencil").values[1] else {
            panic!("a volume");
        };
        assert!((wood.in_cubic_millimetres() - volume).abs() < 1e-6);
        assert_eq!(
            line(&table, "Girth over the coat").text(1, MM),
            "21.99\u{202f}mm"
        );
    }

    #[test]
    fn the_pencils_are_those_of_the_best_way_round() {
        let project = project();
        let ids = [Id(2), Id(1), Id(3)];
        let table = compare_barrels(&project, &ids);
        for (at, id) in ids.into_iter().enumerate() {
            for slat in &project.slats {
                let mut laid = project.clone();
                (laid.layout.barrel, laid.layout.top, laid.layout.bottom) = (id, slat.id, slat.id);
                let place = laid.barrel_place(id).unwrap();
                let ways = laid.barrels[place].draft.shape.seams().iter();
                let pencils = ways.map(|seam| {
                    laid.layout.way = Way::Usual(*seam);
                    lay_out(&laid.check_layout().unwrap().setup()).pencils()
                });
                let best = pencils.max();
                let line = line(&table, &slat.draft.name);
                assert_eq!(
                    line.values[at],
                    best.map(|best| Value::Count(u64::from(best))),
                    "{}",
                    line.title()
                );
            }
        }
        let line = line(&table, "74 × 5");
        assert_eq!(line.title(), "Pencils on 74 × 5");
        assert_eq!(
            (line.text(0, MM), line.text(1, MM)),
            ("11".to_owned(), "10".to_owned())
        );
        assert_eq!(line.change(1, MM).unwrap(), "−1");
        assert_eq!(line.verdict(1, MM), Some(Verdict::Worse));
        assert_eq!((line.change(0, MM), line.verdict(0, MM)), (None, None));
    }

    #[test]
    fn a_set_serves_where_it_loses_no_pencil() {
        let table = compare_barrels(&project(), &[Id(2), Id(1)]);
        let sets = line(&table, "Cutter set");
        assert_eq!(sets.text(0, MM), "a new one");
        assert_eq!(sets.text(1, MM), "Head, =1+1");
        assert_eq!(
            line(&table, "Stock on which a gross costs least").text(0, MM),
            "74 × 5"
        );
    }

    #[test]
    fn what_cannot_be_made_or_is_not_there_is_left_out() {
        let table = compare_barrels(
            &project(),
            &[Id(4), Id(99), Id(2), Id(1), Id(3), Id(1), Id(2)],
        );
        let ids: Vec<Id> = table.barrels.iter().map(|(id, _)| *id).collect();
        assert_eq!(ids, [Id(2), Id(1), Id(3), Id(1)]);
        assert_eq!(compare_barrels(&project(), &[]).lines, Vec::new());
    }

    #[test]
    fn the_table_is_written_with_differences() {
        let csv = compare_barrels(&project(), &[Id(1), Id(2)]).csv(MM);
        let mut lines = csv.split("\r\n");
        assert_eq!(
            lines.next().unwrap(),
            "Compared,\"Usual, 7.0\",\"Small, 6.3\",Difference"
        );
        assert!(csv.contains("Pencils on 74 × 5,10,11,'+1\r\n"), "{csv}");
        assert!(csv.contains("\"Head, =1+1\""));
    }
}
