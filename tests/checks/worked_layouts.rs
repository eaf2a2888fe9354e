//! Layouts worked out beforehand from polygon booleans of finely drawn outlines; where the last
//! digit hung on how finely they were drawn, it is from the closed forms with 40 digits.
//!
//! Lead 2.2, clearance 0.05, land 0.4, planing 0.25, edge 1.0, coat 0.08 mm; both slats alike,
//! spare width to the edges. Lengths are given to 0.0001 mm and sections to 0.001 mm², and
//! every digit must be met.

use solver::{Length, Measure, Outcome, Rule, Seam, Shape, WoodClass};
use tests::shop;

/// The barrel: kind, finished size and corner radius, mm.
type Form = (Shape, f64, f64);

const HEXAGON: Form = (Shape::Hexagonal, 7.0, 0.5);
const ROUND: Form = (Shape::Round, 7.3, 0.0);
const TRIANGLE: Form = (Shape::Triangular, 7.6, 1.2);

fn laid((shape, size, corner): Form, seam: Seam, slat: (f64, f64)) -> solver::Layout {
    let (barrel, slat) = (
        shop::barrel(shape, size, corner),
        shop::slat(slat.0, slat.1),
    );
    shop::laid(&barrel, barrel.turn(seam), &slat, &shop::rules(|_| ()))
}

/// Pencils, pitch and edge in mm, then finished wood, corners, faces, parting and edges in mm².
fn check(form: Form, seam: Seam, slat: (f64, f64), expected: &str) {
    let layout = laid(form, seam, slat);
    let millimetres = |length: Length| format!("{:.4}", length.in_millimetres());
    let balance = layout.balance().expect("the layout fits");
    let section = |class| {
        let section = balance.section(class).expect("this class has a section");
        format!("{:.3}", section.in_square_millimetres())
    };
    let found = [
        layout.pencils().to_string(),
        millimetres(layout.pitch()),
        millimetres(layout.datum_edge()),
        section(WoodClass::Pencils),
        section(WoodClass::Corners),
        section(WoodClass::Faces),
        section(WoodClass::Parting),
        section(WoodClass::Edges),
    ];
    assert_eq!(found.join(" "), expected);
    assert_eq!(layout.far_edge(), layout.datum_edge());
}

#[test]
fn hexagon_seam_through_corners() {
    let expected = "9 8.1682 2.4431 326.753 114.065 277.680 21.888 33.421";
    check(HEXAGON, Seam::ThroughCorners, (78.0, 5.2), expected);
}

#[test]
fn hexagon_seam_through_faces() {
    let expected = "10 7.2400 3.0000 363.059 126.739 205.280 27.966 46.609";
    check(HEXAGON, Seam::ThroughFaces, (78.0, 5.2), expected);
}

#[test]
fn hexagon_that_just_fits() {
    let expected = "10 7.2400 1.0000 363.059 126.739 165.153 27.966 15.536";
    check(HEXAGON, Seam::ThroughFaces, (74.0, 5.0), expected);
}

#[test]
fn round_on_a_slat_sized_in_inches() {
    let expected = "9 7.5400 1.1950 322.961 98.463 166.243 22.848 17.065";
    check(ROUND, Seam::AnyWay, (69.85, 4.76), expected);
}

#[test]
fn triangle_standing_on_its_base() {
    let expected = "8 8.6444 2.6222 284.580 172.891 189.440 20.832 39.019";
    check(TRIANGLE, Seam::BaseDown, (74.0, 5.0), expected);
}

#[test]
fn triangle_with_its_point_sideways() {
    let expected = "9 7.8400 1.9200 320.153 194.502 129.911 26.382 31.659";
    check(TRIANGLE, Seam::PointSideways, (74.0, 5.0), expected);
}

#[test]
fn triangle_too_high_for_the_top_slat() {
    let layout = laid(TRIANGLE, Seam::BaseDown, (69.85, 4.76));
    let failed: Vec<Rule> = layout
        .checks()
        .iter()
        .filter(|check| check.outcome == Outcome::Failed)
        .map(|check| check.rule)
        .collect();
    assert_eq!(failed, [Rule::TopThickness]);
    assert_eq!((layout.pencils(), layout.balance()), (0, None));
    let asked = |rule| {
        let check = layout.checks().iter().find(|check| check.rule == rule);
        match check.expect("thickness is always checked").asked {
            Measure::Length(length) => format!("{:.4}", length.in_millimetres()),
            Measure::Angle(_) => panic!("thickness is a length"),
        }
    };
    assert_eq!(asked(Rule::TopThickness), "4.8367");
    assert_eq!(asked(Rule::BottomThickness), "3.1033");
}
