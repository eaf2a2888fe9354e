use super::super::axis::area;
use super::*;
use crate::tolerance::Estimate;

fn estimates(shares: &[f64]) -> Vec<Estimate> {
    let estimate = |&mean: &f64| Estimate { mean, error: 0.001 };
    shares.iter().map(estimate).collect()
}

/// A map of a usual layout, with so many shares as are given.
fn map(shares: &[f64], width: f64) -> Drawing {
    let barrel = barrel(BarrelShape::Hexagonal, 7.0, 0.5).unwrap();
    let (slat, rules) = (slat(74.0, 5.0), rules(|_| ()));
    let setup = Setup {
        barrel: &barrel,
        turn: Angle::degrees(30.0),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let sheet = Sheet {
        width,
        row: 28.0,
        text: 64.0,
        unit: LengthUnit::Millimetre,
    };
    draw_good_map(&setup, &lay_out(&setup), &estimates(shares), &sheet)
}

/// No text covers another or leaves the sheet.
fn check_labels(drawing: &Drawing) {
    let labels = &drawing.labels;
    for (k, label) in labels.iter().enumerate() {
        let box_of_it = area(label);
        let on_sheet = box_of_it.x >= 0.0
            && box_of_it.y >= 0.0
            && box_of_it.x + box_of_it.width <= drawing.width
            && box_of_it.y + box_of_it.height <= drawing.height;
        assert!(on_sheet, "{label:?} leaves the sheet");
        for other in &labels[k + 1..] {
            assert!(!box_of_it.overlaps(&area(other)), "{label:?} {other:?}");
        }
    }
}

/// The texts of a drawing in the rows under the pencils.
fn shown(drawing: &Drawing) -> Vec<&str> {
    let texts = drawing.labels.iter().map(|label| label.text.as_str());
    texts.filter(|text| text.contains('.')).collect()
}

fn count(drawing: &Drawing, style: Style) -> usize {
    let shapes = drawing.shapes.iter();
    shapes.filter(|shape| shape.style == style).count()
}

/// Invented shares of the ten pencils of that layout.
const SHARES: [f64; 10] = [
    0.941, 0.9804, 0.9995, 0.9996, 1.0, 0.9999, 0.9997, 0.9994, 0.9813, 0.9622,
];

#[test]
fn every_share_stands_under_its_pencil_where_there_is_room() {
    let map = map(&SHARES, 600.0);
    check_labels(&map);
    let expected = [
        "94.1", "98.0", "100.0", "100.0", "100.0", "100.0", "100.0", "99.9", "98.1", "96.2",
    ];
    assert_eq!(shown(&map)[..10], expected);
    for number in 1..=10 {
        let of_groove = |label: &&Label| label.text == number.to_string();
        let groove = map.labels.iter().find(of_groove).unwrap();
        let under = |label: &&Label| label.x == groove.x && label.y > groove.y;
        let share = map.labels.iter().find(under).unwrap();
        assert_eq!(share.text, expected[number - 1]);
    }
}

#[test]
fn grades_are_told_by_strokes_and_hatching_and_in_words() {
    let map = map(&SHARES, 600.0);
    assert_eq!(count(&map, Style::Graded(Grade::Sound)), 6);
    assert_eq!(count(&map, Style::Graded(Grade::Fair)), 3);
    assert_eq!(count(&map, Style::Graded(Grade::Poor)), 1);
    assert_eq!(count(&map, Style::Pencil), 0);
    let path = |style| {
        let shape = map.shapes.iter().find(|shape| shape.style == style);
        shape.unwrap().path.clone()
    };
    // Each outline and each stroke begins with a move; each hatched half is closed once.
    let moves = |style| path(style).matches('M').count();
    assert_eq!(moves(Style::Graded(Grade::Sound)), 1);
    assert_eq!(moves(Style::Graded(Grade::Fair)), 2);
    assert_eq!(moves(Style::Graded(Grade::Poor)), 3);
    assert_eq!(path(Style::TopHalf).matches('Z').count(), 6);
    let legends = [
        "One stroke: below 99.0\u{202f}%",
        "Crossed: below 95.0\u{202f}%",
    ];
    for legend in legends {
        assert!(shown(&map).contains(&legend), "{legend}");
    }
    assert_eq!(
        map.description.replace('\u{202f}', " "),
        "Cross-section of a sandwich with the share of good pencils at each groove from the datum edge: 94.1 %, 98.0 %, 100.0 %, 100.0 %, 100.0 %, 100.0 %, 100.0 %, 99.9 %, 98.1 %, 96.2 %. The worst is groove 1, 94.1 %."
    );
}

#[test]
fn strokes_end_on_the_outline() {
    // The flats lie 3.42 mm from the axis, at 0°, 60° …: a stroke at 45° ends 3.42/cos 15° from it.
    let map = map(&[0.5; 10], 600.0);
    let poor = Style::Graded(Grade::Poor);
    let shape = map.shapes.iter().find(|shape| shape.style == poor).unwrap();
    let strokes: Vec<Vec<f64>> = shape.path.split('M').skip(2).map(numbers).collect();
    let grooves = map.labels.iter().filter(|label| label.text.len() == 1);
    let grooves: Vec<f64> = grooves.map(|label| label.x).collect();
    let scale = (grooves[1] - grooves[0]) / 7.24;
    for stroke in strokes {
        let (run, rise) = (stroke[2] - stroke[0], stroke[3] - stroke[1]);
        assert!((run.abs() - rise.abs()).abs() < 0.03, "{stroke:?}");
        let length = (run * run + rise * rise).sqrt() / scale;
        let exact = 2.0 * 3.42 / libm::cos(15.0_f64.to_radians());
        assert!((length - exact).abs() < 0.02, "{length} for {exact}");
    }
}

#[test]
fn on_a_phone_the_first_the_last_and_the_worst_stay() {
    for worst in 0..10 {
        let mut shares = [0.991; 10];
        shares[0] = 0.982;
        shares[9] = 0.983;
        shares[worst] = 0.874;
        let map = map(&shares, 280.0);
        check_labels(&map);
        let shown = shown(&map);
        let first = if worst == 0 { "87.4" } else { "98.2" };
        let last = if worst == 9 { "87.4" } else { "98.3" };
        for share in [first, last, "87.4"] {
            assert!(shown.contains(&share), "{share} of {shown:?}");
        }
        assert!(shown.len() < 10, "{shown:?}");
    }
}

#[test]
fn without_shares_pencils_are_drawn_as_ever() {
    let map = map(&[], 360.0);
    check_labels(&map);
    assert_eq!(count(&map, Style::Pencil), 10);
    assert_eq!(shown(&map), [""; 0]);
    assert!(map.description.contains("No share"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn every_map_keeps_to_the_rules_of_drawing(
        barrel in any_barrel(), turn in any_turn(), top in any_slat(), bottom in any_slat(),
        rules in any_rules(), sheet in any_sheet(),
        shares in prop::collection::vec(prop_oneof![4 => 0.9_f64..=1.0, 1 => any::<f64>()], 0..60),
    ) {
        let setup = Setup { barrel: &barrel, turn, top: &top, bottom: &bottom, rules: &rules };
        let layout = lay_out(&setup);
        let shares = estimates(&shares);
        let map = draw_good_map(&setup, &layout, &shares, &sheet);
        check(&map, &[]);
        check_labels(&map);
        let graded = Grade::ALL.map(|grade| count(&map, Style::Graded(grade)));
        let told = shares.len().min(layout.across() as usize);
        prop_assert_eq!(graded.iter().sum::<usize>(), told);
    }
}
