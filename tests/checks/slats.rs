//! What the trade says of slats and pencils, where our model with stated allowances says so too.
//!
//! A trade number tells a count and a slat, not the allowances behind it; each check states
//! those under which the model agrees. Lengths in mm; coat 0.08, planing 0.25.

use solver::entry::{Dimension, read};
use solver::{Field, LengthUnit, Rules, Seam, Shape, Typed};
use tests::shop;

/// Pencils across, laid as close as the land allows.
fn count(shape: Shape, size: f64, seam: Seam, slat: (f64, f64), rules: &Rules) -> u32 {
    let corner = if shape.has_corners() { 0.5 } else { 0.0 };
    let barrel = shop::barrel(shape, size, corner);
    shop::laid(
        &barrel,
        barrel.turn(seam),
        &shop::slat(slat.0, slat.1),
        rules,
    )
    .pencils()
}

fn hexagons(seam: Seam, slat: (f64, f64), rules: &Rules) -> u32 {
    count(Shape::Hexagonal, 7.0, seam, slat, rules)
}

fn allowances(land: f64, edge: f64) -> Rules {
    shop::rules(|rules| {
        rules.land = Typed::Number(land);
        rules.edge = Typed::Number(edge);
    })
}

#[test]
fn a_slat_70_wide_has_nine_grooves() {
    // A maker's press page (read): 185 × 70 × 5, nine grooves. Land 0.4, edge 1.0.
    let rules = allowances(0.4, 1.0);
    assert_eq!(hexagons(Seam::ThroughFaces, (70.0, 5.0), &rules), 9);
}

#[test]
fn a_slat_75_wide_gives_nine_with_the_seam_through_corners() {
    // A regional trade association's page (read): 185 × 75 × 5, nine a sandwich. Land 0.3,
    // edge 1.0. Through faces the same slat has room for one more.
    let rules = allowances(0.3, 1.0);
    assert_eq!(hexagons(Seam::ThroughCorners, (75.0, 5.0), &rules), 9);
    assert_eq!(hexagons(Seam::ThroughFaces, (75.0, 5.0), &rules), 10);
}

#[test]
fn a_slat_74_wide_gives_ten_and_formerly_nine() {
    // Trade writing of 2009 (second hand): 184 × 74 × 5, ten a sandwich, formerly nine.
    // Ten with land 0.4 and edge 1.0, through faces; nine with land 0.25, through corners.
    assert_eq!(
        hexagons(Seam::ThroughFaces, (74.0, 5.0), &allowances(0.4, 1.0)),
        10
    );
    assert_eq!(
        hexagons(Seam::ThroughCorners, (74.0, 5.0), &allowances(0.25, 1.0)),
        9
    );
}

#[test]
fn slats_of_two_to_seven_ply_give_three_to_ten() {
    // A slat supplier's page (read): 33 to 66 mm wide, and 71 or 73 × 4.8; three to ten pencils
    // over these classes. Land 0.3, edge 0.9, whichever seam.
    let rules = allowances(0.3, 0.9);
    let widths = (33..=66).chain([71, 73]).map(f64::from);
    let counts: Vec<u32> = widths
        .flat_map(|width| {
            [Seam::ThroughCorners, Seam::ThroughFaces]
                .map(|seam| hexagons(seam, (width, 4.8), &rules))
        })
        .collect();
    assert_eq!(counts.iter().min(), Some(&3));
    assert_eq!(counts.iter().max(), Some(&10));
}

#[test]
fn up_to_ten_of_a_common_size_come_from_a_sandwich() {
    // Common practice, no source: slats 70 to 78 wide. Land 0.4, edge 1.0.
    let rules = allowances(0.4, 1.0);
    let counts = (700..=780).map(|tenth| {
        let slat = (f64::from(tenth) / 10.0, 5.0);
        hexagons(Seam::ThroughFaces, slat, &rules)
    });
    assert_eq!(counts.max(), Some(10));
}

/// A sharp hexagon, 7 across flats, without a coat, on a slat 73 wide; half a land at each edge.
fn nine_on_73(seam: Seam, land: f64) -> u32 {
    let barrel = shop::changed_barrel(Shape::Hexagonal, 7.0, 0.0, |draft| {
        draft.coat = Typed::Number(0.0);
    });
    let rules = allowances(land, land / 2.0);
    shop::laid(&barrel, barrel.turn(seam), &shop::slat(73.0, 5.0), &rules).pencils()
}

#[test]
fn nine_on_a_slat_73_wide_leave_the_corners_no_land() {
    // Computed: 73 / 9 = 8.111 against 8.083 across corners and 7.0 across flats.
    assert_eq!(nine_on_73(Seam::ThroughCorners, 0.028), 9);
    assert_eq!(nine_on_73(Seam::ThroughCorners, 0.029), 8);
    assert_eq!(nine_on_73(Seam::ThroughFaces, 1.111), 9);
    assert_eq!(nine_on_73(Seam::ThroughFaces, 1.112), 8);
}

#[test]
fn thick_slats_are_for_large_pencils() {
    // The same supplier's page (read): 6.3, 6.8 and 9.2 thick for large round and triangular.
    let rules = allowances(0.4, 1.0);
    let fits =
        |shape, size, seam, thickness| count(shape, size, seam, (74.0, thickness), &rules) > 0;
    assert!(!fits(Shape::Round, 10.0, Seam::AnyWay, 5.0));
    assert!(fits(Shape::Round, 10.0, Seam::AnyWay, 6.3));
    assert!(!fits(Shape::Triangular, 10.0, Seam::BaseDown, 6.3));
    assert!(fits(Shape::Triangular, 10.0, Seam::BaseDown, 6.8));
    assert!(!fits(Shape::Triangular, 13.0, Seam::BaseDown, 6.8));
    assert!(fits(Shape::Triangular, 13.0, Seam::BaseDown, 9.2));
}

#[test]
fn round_pencils_for_office_use_fit_usual_slats() {
    // US Commercial Item Description A-A-2776 (read): diameter 0.290 to 0.325 in.
    let rules = allowances(0.4, 1.0);
    let on_74 = |typed: &str| {
        let diameter = read(typed, Dimension::Length, LengthUnit::Inch).expect("a length");
        count(Shape::Round, diameter, Seam::AnyWay, (74.0, 5.0), &rules)
    };
    assert_eq!((on_74("0.290"), on_74("0.325")), (9, 8));
}

#[test]
fn faceted_pencils_of_a_standard_size_fit_usual_slats() {
    // GOST 6602, Amendment 2, Table 2 (read): inscribed circle 7.1 +0.1/−0.4.
    let rules = allowances(0.4, 1.0);
    let on_74 = |size| {
        count(
            Shape::Hexagonal,
            size,
            Seam::ThroughFaces,
            (74.0, 5.0),
            &rules,
        )
    };
    assert_eq!((on_74(6.7), on_74(7.1), on_74(7.2)), (10, 9, 9));
}

#[test]
fn a_new_draft_keeps_to_the_standard_of_pencils() {
    // JIS S 6006 §6.1, older edition (second hand): lead at most 0.3 off centre, pencil at
    // least 172 long.
    assert!(Field::Eccentricity.spec().initial <= 0.3);
    assert!(Field::PencilLength.spec().initial >= 172.0);
}
