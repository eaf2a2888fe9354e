use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::rules::{RulesDraft, Spacing};
use crate::seam::Seam;
use crate::shape::Shape;
use crate::slat::SlatDraft;
use crate::wood::{Conditions, Sawing, SpeciesDraft};
use proptest::prelude::*;

fn barrel(shape: Shape, size: f64, corner: f64) -> Barrel {
    let mut draft = BarrelDraft::new("", shape);
    draft.size = Typed::Number(size);
    draft.corner_radius = Typed::Number(corner);
    draft.check().unwrap()
}

fn slat(width: f64, thickness: f64) -> Slat {
    let mut draft = SlatDraft::new("");
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.check().unwrap()
}

fn rules(change: impl FnOnce(&mut RulesDraft)) -> Rules {
    let mut draft = RulesDraft::new();
    change(&mut draft);
    draft.check().unwrap()
}

fn laid(barrel: &Barrel, turn: Angle, slat: &Slat, rules: &Rules) -> Layout {
    lay_out(&Setup {
        barrel,
        turn,
        top: slat,
        bottom: slat,
        rules,
    })
}

fn failed(layout: &Layout) -> Vec<Rule> {
    layout
        .checks()
        .iter()
        .filter(|check| check.outcome == Outcome::Failed)
        .map(|check| check.rule)
        .collect()
}

fn hexagon_on_74(change: impl FnOnce(&mut RulesDraft)) -> Layout {
    laid(
        &barrel(Shape::Hexagonal, 7.0, 0.5),
        Seam::ThroughFaces.turn(6),
        &slat(74.0, 5.0),
        &rules(change),
    )
}

#[test]
fn closest_spacing_gives_spare_width_to_both_edges() {
    let layout = laid(
        &barrel(Shape::Hexagonal, 7.0, 0.5),
        Seam::ThroughFaces.turn(6),
        &slat(78.0, 5.2),
        &rules(|_| ()),
    );
    assert_eq!(layout.pencils(), 10);
    assert!((layout.datum_edge().in_millimetres() - 3.0).abs() < 1e-12);
    assert!((layout.far_edge().in_millimetres() - 3.0).abs() < 1e-12);
}

#[test]
fn spread_spacing_leaves_just_the_edge_allowance() {
    let layout = hexagon_on_74(|rules| {
        rules.spacing = Spacing::Spread;
        rules.land = Typed::Number(0.5);
    });
    assert_eq!(layout.pencils(), 9);
    assert!((layout.datum_edge().in_millimetres() - 1.0).abs() < 1e-12);
    assert!((layout.pitch().in_millimetres() - (74.0 - 2.0 - 6.84) / 8.0).abs() < 1e-12);
}

#[test]
fn a_given_pitch_narrower_than_the_land_allows_fails_that_check() {
    let layout = hexagon_on_74(|rules| {
        rules.spacing = Spacing::Given;
        rules.pitch = Typed::Number(7.1);
    });
    assert_eq!(failed(&layout), [Rule::Land]);
    assert_eq!((layout.across(), layout.pencils()), (10, 0));
    assert_eq!(layout.balance(), None);
}

#[test]
fn a_slat_narrower_than_one_pencil_fails_on_width() {
    let layout = laid(
        &barrel(Shape::Round, 20.0, 0.0),
        Angle::ZERO,
        &slat(20.0, 12.0),
        &rules(|_| ()),
    );
    assert!(failed(&layout).contains(&Rule::Width));
    assert_eq!(layout.across(), 0);
}

#[test]
fn upright_faces_are_noted_and_fail_where_relief_is_asked() {
    let relief = |layout: &Layout| {
        layout
            .checks()
            .iter()
            .find(|check| check.rule == Rule::Relief)
            .unwrap()
            .outcome
    };
    assert_eq!(relief(&hexagon_on_74(|_| ())), Outcome::Noted);
    assert_eq!(
        relief(&hexagon_on_74(|rules| rules.relief = Typed::Number(2.0))),
        Outcome::Failed
    );
    let corners = laid(
        &barrel(Shape::Hexagonal, 7.0, 0.5),
        Angle::ZERO,
        &slat(74.0, 5.0),
        &rules(|_| ()),
    );
    assert_eq!(relief(&corners), Outcome::Passed);
}

#[test]
fn the_wall_is_what_is_left_of_a_lead_off_centre() {
    let layout = hexagon_on_74(|_| ());
    let wall = layout
        .checks()
        .iter()
        .find(|check| check.rule == Rule::Wall)
        .unwrap();
    // 3.42 bare − 1.15 groove − 0.3 off centre.
    assert_eq!(
        wall.statement(crate::LengthUnit::Millimetre),
        "1.97\u{202f}mm, 0.97\u{202f}mm more than asked"
    );
}

#[test]
fn a_shortfall_in_width_costs_the_tenth_pencil() {
    let mut draft = SlatDraft::new("");
    draft.width_tolerance = Typed::Number(0.1);
    let slat = draft.check().unwrap();
    let layout = laid(
        &barrel(Shape::Hexagonal, 7.0, 0.5),
        Seam::ThroughFaces.turn(6),
        &slat,
        &rules(|_| ()),
    );
    assert_eq!(layout.pencils(), 9);
}

#[test]
fn a_base_down_triangle_fits_a_thick_slat_on_a_thin_one() {
    let triangle = barrel(Shape::Triangular, 7.6, 1.2);
    let (thick, thin, rules) = (slat(74.0, 5.0), slat(74.0, 3.2), rules(|_| ()));
    let pair = lay_out(&Setup {
        barrel: &triangle,
        turn: Angle::ZERO,
        top: &thick,
        bottom: &thin,
        rules: &rules,
    });
    assert_eq!(pair.pencils(), 8);
    let swapped = lay_out(&Setup {
        barrel: &triangle,
        turn: Angle::ZERO,
        top: &thin,
        bottom: &thick,
        rules: &rules,
    });
    assert!(failed(&swapped).contains(&Rule::TopThickness));
}

#[test]
fn a_lead_sunk_deeper_than_its_radius_closes_the_groove() {
    let layout = hexagon_on_74(|rules| rules.axis_height = Typed::Number(1.2));
    assert!(failed(&layout).contains(&Rule::OpenGroove));
}

#[test]
fn no_more_grooves_than_allowed_across() {
    let most = |number: f64| move |rules: &mut RulesDraft| rules.most = Typed::Number(number);
    assert_eq!(hexagon_on_74(most(10.0)).pencils(), 10);
    let eight = hexagon_on_74(most(8.0));
    assert_eq!(eight.pencils(), 8);
    // Two pitches of 7.24 mm go to the two edges.
    assert!((eight.datum_edge().in_millimetres() - 8.24).abs() < 1e-12);
    let spread = hexagon_on_74(|rules| {
        rules.spacing = Spacing::Spread;
        rules.most = Typed::Number(8.0);
    });
    assert_eq!(spread.pencils(), 8);
    assert!((spread.datum_edge().in_millimetres() - 1.0).abs() < 1e-12);
    assert!((spread.pitch().in_millimetres() - (74.0 - 2.0 - 6.84) / 7.0).abs() < 1e-12);
}

/// A slat 184 long for pencils of a length.
fn of_length(length: f64, change: impl FnOnce(&mut RulesDraft)) -> Layout {
    let mut draft = BarrelDraft::new("", Shape::Hexagonal);
    draft.length = Typed::Number(length);
    let turn = Seam::ThroughFaces.turn(6);
    laid(
        &draft.check().unwrap(),
        turn,
        &slat(74.0, 5.0),
        &rules(change),
    )
}

#[test]
fn a_slat_gives_as_many_lengths_as_fit_with_kerfs_between_and_trimmed_ends() {
    let with = |kerf: f64, trim: f64| {
        move |rules: &mut RulesDraft| {
            rules.saw_kerf = Typed::Number(kerf);
            rules.end_trim = Typed::Number(trim);
        }
    };
    // 2 · 91 + 2 = 184.
    assert_eq!(of_length(91.0, with(2.0, 0.0)).lengths(), 2);
    assert_eq!(of_length(91.01, with(2.0, 0.0)).lengths(), 1);
    assert_eq!(of_length(91.0, with(2.0, 0.1)).lengths(), 1);
    assert_eq!(of_length(90.0, with(2.0, 1.0)).pencils(), 20);
    // 3 · 61.33 = 184 without a kerf.
    assert_eq!(of_length(61.333, with(0.0, 0.0)).lengths(), 3);
}

#[test]
fn a_slat_too_short_for_the_trim_fails_on_length() {
    let trim = |rules: &mut RulesDraft| rules.end_trim = Typed::Number(4.6);
    let layout = of_length(175.0, trim);
    assert_eq!(failed(&layout), [Rule::Length]);
    assert_eq!((layout.lengths(), layout.pencils()), (1, 0));
    let just = |rules: &mut RulesDraft| rules.end_trim = Typed::Number(4.5);
    assert_eq!(of_length(175.0, just).pencils(), 10);
}

#[test]
fn kerf_and_rejects_have_their_part_of_the_wood() {
    let layout = of_length(90.0, |rules| {
        rules.slat_rejects = Typed::Number(20.0);
        rules.pencil_rejects = Typed::Number(10.0);
    });
    let balance = layout.balance().unwrap();
    let volume = |class| balance.volume(class).in_cubic_millimetres();
    let near = |found: f64, expected: f64| {
        assert!((found / expected - 1.0).abs() < 1e-12, "{found} {expected}");
    };
    // Both slats of 184 × 74 × 5; a quarter as much again is thrown out of slats.
    let glued = 2.0 * 184.0 * 74.0 * 5.0;
    near(balance.bought().in_cubic_millimetres(), glued * 1.25);
    near(volume(WoodClass::RejectedSlats), glued / 4.0);
    near(volume(WoodClass::Kerf), 2.0 * 74.0 * 5.0 * 2.0);
    near(volume(WoodClass::Ends), 2.0 * 74.0 * 5.0 * 2.0);
    let section = balance.section(WoodClass::Pencils).unwrap();
    let finished = section.in_square_millimetres() * 180.0;
    near(volume(WoodClass::Pencils), finished * 0.9);
    near(volume(WoodClass::RejectedPencils), finished * 0.1);
    assert_eq!(balance.section(WoodClass::Kerf), None);
}

/// Any set-up that a shop could ask for, and some that none would.
fn any_setup() -> impl Strategy<Value = (Barrel, Angle, Slat, Slat, Rules)> {
    let shapes = prop_oneof![
        Just(Shape::Round),
        Just(Shape::Hexagonal),
        Just(Shape::Triangular)
    ];
    let barrels = (
        shapes,
        5.0_f64..12.0,
        0.0_f64..1.0,
        0.0_f64..0.2,
        1.0_f64..3.0,
    )
        .prop_map(|(shape, size, share, coat, lead)| {
            let mut draft = BarrelDraft::new("", shape);
            draft.size = Typed::Number(size);
            draft.corner_radius = Typed::Number(share * size / 2.0);
            draft.coat = Typed::Number(coat);
            draft.lead_diameter = Typed::Number(lead);
            // Up to three of a slat length.
            draft.length = Typed::Number(if lead < 2.0 { 175.0 } else { 20.0 * lead });
            draft.check()
        });
    let slats = || {
        let sizes = (20.0_f64..120.0, 2.5_f64..12.0, 176.0_f64..190.0);
        (sizes, 0.0_f64..30.0).prop_map(|((width, thickness, length), moisture)| {
            let mut draft = SlatDraft::new("");
            draft.width = Typed::Number(width);
            draft.thickness = Typed::Number(thickness);
            draft.length = Typed::Number(length);
            let species = SpeciesDraft::new("").check().unwrap();
            let slat = draft.check().unwrap();
            slat.conditioned(&species, Sawing::Flat, 8.0, &Conditions { moisture })
        })
    };
    let rules = (
        0..3_usize,
        5.0_f64..14.0,
        -1.0_f64..1.0,
        0.0_f64..1.0,
        0.0_f64..4.0,
        (
            (0.0_f64..4.0),
            (0.0_f64..3.0),
            (0.0_f64..90.0),
            (0.0_f64..90.0),
        ),
    )
        .prop_map(
            |(spacing, pitch, axis, land, edge, (kerf, trim, slats, pencils))| {
                rules(|draft| {
                    draft.saw_kerf = Typed::Number(kerf);
                    draft.end_trim = Typed::Number(trim);
                    draft.slat_rejects = Typed::Number(slats);
                    draft.pencil_rejects = Typed::Number(pencils);
                    draft.spacing = Spacing::ALL[spacing];
                    draft.pitch = Typed::Number(pitch);
                    draft.axis_height = Typed::Number(axis);
                    draft.land = Typed::Number(land);
                    draft.edge = Typed::Number(edge);
                })
            },
        );
    (barrels, -180.0_f64..180.0, slats(), slats(), rules).prop_filter_map(
        "a barrel that can be made",
        |(barrel, turn, top, bottom, rules)| {
            Some((barrel.ok()?, Angle::degrees(turn), top, bottom, rules))
        },
    )
}

proptest! {
    #[test]
    fn the_parts_of_the_balance_add_up_to_the_wood_bought((barrel, turn, top, bottom, rules) in any_setup()) {
        let layout = lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules });
        if let Some(balance) = layout.balance() {
            let sum: crate::quantity::Volume = WoodClass::ALL.iter().map(|class| balance.volume(*class)).sum();
            prop_assert!(((sum / balance.bought()) - 1.0).abs() < 1e-12, "{sum:?} of {:?}", balance.bought());
            for class in WoodClass::ALL {
                prop_assert!(balance.share(class) > -1e-12, "{class:?} is negative");
            }
        }
    }

    #[test]
    fn grooves_keep_land_and_edges_and_one_more_never_fits((barrel, turn, top, bottom, rules) in any_setup()) {
        let layout = lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules });
        let width = top.guaranteed_width().min(bottom.guaranteed_width());
        let pencil = layout.extents().width();
        let count = f64::from(layout.across());
        let pitch = match rules.spacing {
            PitchRule::Given(pitch) | PitchRule::OfSet(pitch) => pitch,
            _ => pencil + rules.land,
        };
        // The row of n + 1 is wider than the slat less its edges.
        prop_assert!((pencil + pitch * count + rules.edge * 2.0).in_millimetres() > width.in_millimetres());
        if layout.across() > 0 {
            let row = pencil + pitch * (count - 1.0) + rules.edge * 2.0;
            prop_assert!(row.fits_in(width));
            let last = layout.grooves().last().unwrap().centre;
            let right = width - (last + layout.extents().right);
            prop_assert!((right - layout.far_edge()).abs().in_millimetres() < 1e-9);
            prop_assert!(rules.edge.fits_in(right));
        }
        for pair in layout.grooves().windows(2) {
            prop_assert!(((pair[1].centre - pair[0].centre) - layout.pitch()).abs().in_millimetres() < 1e-9);
        }
    }

    #[test]
    fn lengths_fill_the_slat_and_one_more_never_fits((barrel, turn, top, bottom, rules) in any_setup()) {
        let layout = lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules });
        let slat = top.length().min(bottom.length());
        let taken = |count: f64| barrel.length() * count + rules.saw_kerf * (count - 1.0) + rules.end_trim * 2.0;
        let count = f64::from(layout.lengths());
        prop_assert!(taken(count + 1.0) > slat);
        prop_assert!(taken(count).fits_in(slat) || failed(&layout).contains(&Rule::Length));
    }

    #[test]
    fn a_limit_across_takes_off_the_rest((barrel, turn, top, bottom, rules) in any_setup(), most in 1_u32..30) {
        let count = |most| {
            let rules = Rules { most, ..rules };
            lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules }).across()
        };
        prop_assert_eq!(count(Some(most)), count(None).min(most));
    }

    #[test]
    fn more_land_never_gives_more_pencils((barrel, turn, top, bottom, rules) in any_setup(), more in 0.0_f64..2.0) {
        let wider = Rules { land: rules.land + Length::millimetres(more), ..rules };
        let count = |rules: &Rules| lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules }).pencils();
        prop_assert!(count(&wider) <= count(&rules));
    }

    #[test]
    fn a_wider_slat_never_gives_fewer_grooves((barrel, turn, top, bottom, rules) in any_setup()) {
        let narrow = lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules });
        let wide = if top.guaranteed_width() > bottom.guaranteed_width() { &top } else { &bottom };
        let both = lay_out(&Setup { barrel: &barrel, turn, top: wide, bottom: wide, rules: &rules });
        prop_assert!(both.across() >= narrow.across());
    }

    #[test]
    fn the_mirror_image_is_laid_the_same((barrel, turn, top, bottom, rules) in any_setup()) {
        let one = lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules });
        let mirrored = lay_out(&Setup { barrel: &barrel, turn: -turn, top: &top, bottom: &bottom, rules: &rules });
        let (a, b) = (one.extents(), mirrored.extents());
        prop_assert!((a.left - b.right).abs().in_millimetres() < 1e-12);
        prop_assert!((a.up - b.up).abs().in_millimetres() < 1e-12);
        // A count may differ only where the room is a whole number of pitches to the last bit.
        let room = (top.guaranteed_width().min(bottom.guaranteed_width()) - rules.edge * 2.0 - a.width()) / one.pitch();
        prop_assume!((room - room.round()).abs() > 1e-9);
        prop_assert_eq!(one.across(), mirrored.across());
        prop_assert!((one.pitch() - mirrored.pitch()).abs().in_millimetres() < 1e-11);
    }

    #[test]
    fn upside_down_with_the_slats_exchanged_is_the_same((barrel, turn, top, bottom, rules) in any_setup()) {
        let one = lay_out(&Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules });
        let turned = turn + Angle::degrees(180.0);
        let over = Rules { axis_height: -rules.axis_height, ..rules };
        let other = lay_out(&Setup { barrel: &barrel, turn: turned, top: &bottom, bottom: &top, rules: &over });
        prop_assert!((one.extents().up - other.extents().down).abs().in_millimetres() < 1e-12);
        if let (Some(a), Some(b)) = (one.balance(), other.balance()) {
            prop_assert!((a.yielded() - b.yielded()).abs() < 1e-12 || one.across() != other.across());
        }
    }
}
