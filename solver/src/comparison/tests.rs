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
