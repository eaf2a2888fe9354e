//! Planks from above: what they keep to on any sheet, and two of them by hand.

use super::*;
use crate::drawing::axis::area;
use crate::figure;
use crate::sawing::{
    BlankOrder, CutPattern, Dimensions, OffcutWorth, PlankStock, SawingAim, SawingBalance,
    SawingData, SawingDraft, SawingNames, SawingPlan, SawnClass, Section,
};

/// A plank, blanks of a length, a width and a thickness each, and saws. Millimetres.
fn data(
    (length, width): (f64, f64),
    trims: (f64, f64),
    blanks: &[(f64, f64)],
    kerfs: (f64, f64),
    shortest: Option<f64>,
) -> SawingData {
    let micrometres = |millimetres: f64| (millimetres * 1000.0).round() as i64;
    let size = |length, width, thickness| Dimensions {
        length: micrometres(length),
        width: micrometres(width),
        thickness: micrometres(thickness),
    };
    SawingDraft {
        planks: vec![PlankStock {
            size: size(length, width, 30.0),
            end_trim: micrometres(trims.0),
            edge_trim: micrometres(trims.1),
            price: 0,
            on_hand: None,
        }],
        blanks: blanks
            .iter()
            .map(|&(length, thickness)| BlankOrder {
                size: size(length, 30.0, thickness),
                demand: 0,
                over_worth: 0,
                most_over: 0,
            })
            .collect(),
        crosscut_kerf: micrometres(kerfs.0),
        rip_kerf: micrometres(kerfs.1),
        offcuts: shortest.map(|shortest| OffcutWorth {
            shortest: micrometres(shortest),
            metre: 0,
        }),
        aim: SawingAim::Cost,
    }
    .check()
    .unwrap()
}

fn pattern(sections: &[(&[(usize, u64)], u64)]) -> CutPattern {
    let sections = sections
        .iter()
        .map(|&(blanks, count)| {
            let blanks = blanks.to_vec();
            (Section { blanks }, count)
        })
        .collect();
    CutPattern { plank: 0, sections }
}

fn sheet(width: f64) -> Sheet {
    Sheet {
        width,
        row: 28.0,
        text: 64.0,
        unit: LengthUnit::Millimetre,
    }
}

fn path(drawing: &Drawing, style: Style) -> &str {
    let shape = drawing.shapes.iter().find(|shape| shape.style == style);
    shape.map_or("", |shape| shape.path.as_str())
}

/// The rectangles of a path: left, right, top, bottom.
fn rectangles(path: &str) -> Vec<[f64; 4]> {
    path.split_terminator('Z')
        .map(|polygon| {
            let at = numbers(polygon);
            assert_eq!(at.len(), 8, "{polygon}");
            [at[0], at[2], at[5], at[1]]
        })
        .collect()
}

/// What every picture of a plank keeps to.
fn check_cut(drawing: &Drawing) {
    check(drawing, &[]);
    let plank = rectangles(path(drawing, Style::Plank))[0];
    for shape in &drawing.shapes {
        for [left, right, top, bottom] in rectangles(&shape.path) {
            let inside =
                plank[0] <= left && right <= plank[1] && plank[2] <= top && bottom <= plank[3];
            assert!(
                inside && left <= right && top <= bottom,
                "{shape:?} leaves {plank:?}"
            );
        }
    }
    let [rips, crosscuts] = [SawnClass::RipKerfs, SawnClass::CrosscutKerfs]
        .map(|class| rectangles(path(drawing, Style::SawnOff(class))));
    for [_, _, top, bottom] in &rips {
        assert!(bottom - top >= 0.985, "a rip cut is thinner than a line");
    }
    for [left, right, ..] in &crosscuts {
        assert!(right - left >= 0.985, "a crosscut is thinner than a line");
    }
    for (k, label) in drawing.labels.iter().enumerate() {
        let room = area(label);
        let on_sheet = room.x >= 0.0
            && room.y >= 0.0
            && room.x + room.width <= drawing.width
            && room.y + room.height <= drawing.height;
        assert!(on_sheet, "{label:?} lies off the sheet");
        for other in &drawing.labels[k + 1..] {
            assert!(!room.overlaps(&area(other)), "{label:?} overlaps {other:?}");
        }
        for dimension in &drawing.dimensions {
            assert!(
                !room.overlaps(&dimension.area),
                "{label:?} overlaps {dimension:?}"
            );
            for stroke in strokes(&dimension.lines) {
                assert!(
                    !runs_through(stroke, &room),
                    "a line of {:?} runs through {label:?}",
                    dimension.size
                );
            }
        }
        for &[left, right, top, bottom] in rips.iter().chain(&crosscuts) {
            // Paths are written to a hundredth of a pixel.
            let cut = Area {
                x: left + 0.01,
                y: top + 0.01,
                width: right - left - 0.02,
                height: bottom - top - 0.02,
            };
            assert!(!room.overlaps(&cut), "a cut runs through {label:?}");
        }
    }
}

/// Trims and offcut take the share of the plank on the sheet that the balance tells.
fn check_shares(drawing: &Drawing, data: &SawingData, pattern: CutPattern) {
    let cuts = vec![(pattern, 1)];
    let balance = SawingBalance::of(data, &SawingPlan { cuts, cost: 0 }).unwrap();
    // Paths are written to a hundredth of a pixel, and every side may be off by half of that.
    let area_of = |style| {
        let sides = rectangles(path(drawing, style)).into_iter();
        sides
            .map(|[left, right, top, bottom]| (right - left, bottom - top))
            .map(|(width, height)| (width * height, 0.01 * (width + height + 0.01)))
            .fold((0.0, 0.0), |sum, (area, error)| {
                (sum.0 + area, sum.1 + error)
            })
    };
    let (plank, plank_error) = area_of(Style::Plank);
    for class in [
        SawnClass::EndTrims,
        SawnClass::EdgeTrims,
        SawnClass::KeptOffcuts,
        SawnClass::ShortOffcuts,
    ] {
        let (area, error) = area_of(Style::SawnOff(class));
        let expected = balance.share(class) * plank;
        let slack = error + balance.share(class) * plank_error + 1e-9;
        assert!(
            (area - expected).abs() <= slack,
            "{class:?}: {area} px², not {expected}"
        );
    }
}

/// A share of what there is room for, at least nothing.
fn taken(share: f64, room: i64, size: i64, kerf: i64) -> u64 {
    let most = ((room + kerf) / (size + kerf)).max(0);
    (most as f64 * share).round() as u64
}

/// A pattern that fits, filled by shares of what is still free.
fn filled(data: &SawingData, shares: &[(usize, f64, usize, f64, f64)]) -> CutPattern {
    let draft = data.draft();
    let stock = &draft.planks[0];
    let mut room = stock.size.length - 2 * stock.end_trim;
    let mut sections = Vec::new();
    for &(first, count, second, one_share, other_share) in shares {
        let blanks = draft.blanks.len();
        let (first, second) = (first % blanks, second % blanks);
        let length = draft.blanks[first].size.length;
        let count = taken(count, room, length, draft.crosscut_kerf);
        room -= count.cast_signed() * (length + draft.crosscut_kerf);
        let mut width = stock.size.width - 2 * stock.edge_trim;
        let mut pieces = Vec::new();
        for (blank, share) in [(first, one_share), (second, other_share)] {
            let size = draft.blanks[blank].size;
            if size.length == length {
                let many = taken(share, width, size.thickness, draft.rip_kerf);
                width -= many.cast_signed() * (size.thickness + draft.rip_kerf);
                pieces.push((blank, many));
            }
        }
        if pieces.iter().any(|(_, many)| *many > 0) {
            sections.push((Section { blanks: pieces }, count));
        }
    }
    CutPattern { plank: 0, sections }
}

fn any_data() -> impl Strategy<Value = SawingData> {
    let of_a_shop = (
        (500.0_f64..6000.0, 60.0_f64..320.0),
        prop_oneof![Just((0.0, 0.0)), (0.0_f64..40.0, 0.0_f64..10.0)],
        prop::collection::vec(
            (
                prop::sample::select(vec![185.0, 190.5, 92.0, 400.0]),
                4.0_f64..40.0,
            ),
            1..5,
        ),
        prop_oneof![Just((0.0, 0.0)), (0.5_f64..6.0, 0.5_f64..4.0)],
        prop::option::of(50.0_f64..600.0),
    );
    // From a micrometre to the greatest sizes.
    let any = |most: f64| {
        (0.0_f64..1.0).prop_map(move |share| 0.001 + share * share * share * share * most)
    };
    let extreme = (
        (any(29_000.0), any(1_900.0)),
        Just((0.0, 0.0)),
        prop::collection::vec((any(29_000.0), any(499.0)), 1..5),
        (any(40.0), any(40.0)),
        prop::option::of(any(29_000.0)),
    );
    prop_oneof![of_a_shop.boxed(), extreme.boxed()].prop_map(
        |(plank, trims, blanks, kerfs, shortest)| data(plank, trims, &blanks, kerfs, shortest),
    )
}

fn any_names() -> impl Strategy<Value = Vec<String>> {
    prop::collection::vec(prop_oneof!["[A-Za-z0-9 ]{0,24}", any::<String>()], 0..5)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn every_plank_keeps_to_the_rules_of_drawing(
        data in any_data(),
        shares in prop::collection::vec((0..5_usize, 0.0_f64..=1.0, 0..5_usize, 0.0_f64..=1.0, 0.0_f64..=1.0), 0..4),
        names in any_names(),
        sheet in any_sheet(),
    ) {
        let pattern = filled(&data, &shares);
        let names = SawingNames { planks: &names, blanks: &names };
        let drawing = draw_cut(&pattern, &data, &names, &sheet).unwrap();
        check_cut(&drawing);
        check_shares(&drawing, &data, pattern);
    }

    #[test]
    fn a_plank_can_be_drawn_on_a_sheet_of_any_size(width in any::<f64>(), row in any::<f64>(), text in any::<f64>()) {
        let data = data((4000.0, 150.0), (20.0, 3.0), &[(185.0, 5.0)], (4.0, 2.0), None);
        let sheet = Sheet { width, row, text, unit: LengthUnit::Inch };
        let names = SawingNames { planks: &[], blanks: &[] };
        check_cut(&draw_cut(&pattern(&[(&[(0, 20)], 20)]), &data, &names, &sheet).unwrap());
    }
}

// By hand: the sheet leaves 900 − 12 − 76 = 812 px for 812 mm of plank, and as many for its width.
#[test]
fn a_plank_by_hand() {
    let blanks = [(300.0, 60.0), (200.0, 40.0)];
    let data = data(
        (812.0, 150.0),
        (10.0, 5.0),
        &blanks,
        (4.0, 2.0),
        Some(272.0),
    );
    let drawn = pattern(&[(&[(1, 3)], 1), (&[(0, 2)], 1)]);
    let names = ["Wide".to_owned()];
    let names = SawingNames {
        planks: &names,
        blanks: &names,
    };
    let drawing = draw_cut(&drawn, &data, &names, &sheet(900.0)).unwrap();
    check_cut(&drawing);
    let [left, right, top, bottom] = rectangles(path(&drawing, Style::Plank))[0];
    assert_eq!((right - left, bottom - top), (812.0, 150.0));
    let placed = |style| -> Vec<[f64; 4]> {
        let places = rectangles(path(&drawing, style));
        let on_plank = |[x1, x2, y1, y2]: [f64; 4]| [x1 - left, x2 - left, y1 - top, y2 - top];
        places.into_iter().map(on_plank).collect()
    };
    let close = |style, expected: &[[f64; 4]]| {
        let placed = placed(style);
        let same = placed.len() == expected.len()
            && placed
                .iter()
                .flatten()
                .zip(expected.iter().flatten())
                .all(|(one, other)| (one - other).abs() < 0.011);
        assert!(same, "{style:?}: {placed:?} is not {expected:?}");
    };
    let off = Style::SawnOff;
    close(
        off(SawnClass::EndTrims),
        &[[0.0, 10.0, 0.0, 150.0], [802.0, 812.0, 0.0, 150.0]],
    );
    close(
        off(SawnClass::EdgeTrims),
        &[[10.0, 802.0, 0.0, 5.0], [10.0, 802.0, 145.0, 150.0]],
    );
    close(
        Style::Blank,
        &[[10.0, 310.0, 5.0, 127.0], [314.0, 514.0, 5.0, 129.0]],
    );
    close(
        off(SawnClass::RipWaste),
        &[[10.0, 310.0, 129.0, 145.0], [314.0, 514.0, 131.0, 145.0]],
    );
    close(
        off(SawnClass::CrosscutKerfs),
        &[[310.0, 314.0, 5.0, 145.0], [514.0, 518.0, 5.0, 145.0]],
    );
    close(off(SawnClass::KeptOffcuts), &[[518.0, 802.0, 5.0, 145.0]]);
    // The middle cut of two is interrupted for "2 × Wide"; those of three pieces run beside theirs.
    let texts: Vec<&str> = drawing
        .labels
        .iter()
        .map(|label| label.text.as_str())
        .collect();
    assert_eq!(texts, ["2 × Wide", "3 × Blank 2", "Offcut", "Scale 1:3.78"]);
    let rips = placed(off(SawnClass::RipKerfs));
    assert_eq!(rips.len(), 6, "{rips:?}");
    let sizes: Vec<(Size, &str)> = drawing
        .dimensions
        .iter()
        .map(|size| (size.size, size.text.as_str()))
        .collect();
    let expected = [
        (Size::SectionLength, "300.00"),
        (Size::SectionLength, "200.00"),
        (Size::OffcutLength, "284.00"),
        (Size::PlankWidth, "150.00"),
        (Size::PlankLength, "812.00"),
    ];
    assert_eq!(sizes, expected);
    assert_eq!(
        drawing.description.replace(figure::THIN_SPACE, " "),
        "Wide from above, 812.00 mm long and 150.00 mm wide. One section of 300.00 mm, ripped into 2 × Wide. \
         One section of 200.00 mm, ripped into 3 × Blank 2. An offcut of 284.00 mm is kept. Scale 1:3.78."
    );
}

#[test]
fn a_long_plank_has_a_scale_of_its_own_across() {
    let data = data(
        (4000.0, 150.0),
        (20.0, 3.0),
        &[(185.0, 5.0)],
        (4.0, 2.0),
        None,
    );
    let blanks = ["Round office pencil".to_owned()];
    let names = SawingNames {
        planks: &[],
        blanks: &blanks,
    };
    let drawing = draw_cut(&pattern(&[(&[(0, 20)], 20)]), &data, &names, &sheet(900.0)).unwrap();
    check_cut(&drawing);
    // 4000 mm over 801.9 px, as the longest number takes 74.1; 150 mm over 132 px; 96 px to 25.4 mm.
    assert!(
        drawing
            .description
            .ends_with("Scale 1:18.9 along, 1:4.29 across."),
        "{}",
        drawing.description
    );
    assert_eq!(drawing.labels[0].text, "20 × Round office pencil");
    // Nineteen cuts between twenty blanks and one after them; each is a thin line at least.
    let rips = rectangles(path(&drawing, Style::SawnOff(SawnClass::RipKerfs)));
    let mut heights: Vec<i64> = rips.iter().map(|cut| (cut[2] * 100.0) as i64).collect();
    heights.dedup();
    heights.sort_unstable();
    heights.dedup();
    assert_eq!(heights.len(), 20);
    assert!(rips.iter().all(|cut| cut[3] - cut[2] >= 0.99), "{rips:?}");
}

#[test]
fn pieces_too_many_to_be_told_apart_are_drawn_as_one_with_their_number() {
    let data = data((4000.0, 150.0), (0.0, 0.0), &[(1.0, 0.5)], (1.0, 0.5), None);
    let names = SawingNames {
        planks: &[],
        blanks: &[],
    };
    let drawing = draw_cut(
        &pattern(&[(&[(0, 150)], 1999)]),
        &data,
        &names,
        &sheet(900.0),
    )
    .unwrap();
    check_cut(&drawing);
    assert_eq!(drawing.labels[0].text, "1999 × 150 × Blank 1");
    assert_eq!(rectangles(path(&drawing, Style::Blank)).len(), 1);
    assert_eq!(
        rectangles(path(&drawing, Style::SawnOff(SawnClass::CrosscutKerfs))).len(),
        1
    );
}

#[test]
fn a_name_too_long_gives_way_to_a_number() {
    let data = data(
        (4000.0, 150.0),
        (0.0, 0.0),
        &[(185.0, 70.0)],
        (4.0, 2.0),
        None,
    );
    let blanks = [
        "A name far too long for a narrow section of a plank and for a sheet of a phone".to_owned(),
    ];
    let names = SawingNames {
        planks: &[],
        blanks: &blanks,
    };
    let label = |width| {
        let drawing = draw_cut(&pattern(&[(&[(0, 2)], 2)]), &data, &names, &sheet(width)).unwrap();
        drawing.labels[0].text.clone()
    };
    assert_eq!(label(1600.0), "2 × no. 1");
    assert_eq!(label(900.0), "1");
}

#[test]
fn a_plank_without_sections_is_all_offcut() {
    let data = data(
        (2000.0, 150.0),
        (10.0, 0.0),
        &[(185.0, 5.0)],
        (4.0, 2.0),
        Some(300.0),
    );
    let names = SawingNames {
        planks: &[],
        blanks: &[],
    };
    let drawing = draw_cut(&pattern(&[]), &data, &names, &sheet(600.0)).unwrap();
    check_cut(&drawing);
    assert_eq!(drawing.labels[0].text, "Offcut");
    assert!(draw_cut(&pattern(&[(&[(0, 1)], 12)]), &data, &names, &sheet(600.0)).is_none());
}
