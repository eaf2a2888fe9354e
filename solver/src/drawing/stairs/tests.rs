use super::super::Area;
use super::super::axis::area;
use super::*;
use proptest::prelude::*;

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

fn sheet(width: f64, unit: LengthUnit) -> Sheet {
    Sheet {
        width,
        row: 28.0,
        text: 64.0,
        unit,
    }
}

fn steps(list: &[(f64, u32)]) -> Vec<Step> {
    list.iter()
        .map(|&(from, pencils)| Step {
            from: mm(from),
            pencils,
        })
        .collect()
}

/// Hexagons of 7.24 mm pitch on slats of 60 to 90 mm.
fn hexagons() -> Vec<Step> {
    steps(&[(60.0, 8), (66.76, 9), (74.0, 10), (81.24, 11), (88.48, 12)])
}

fn stocks(list: &[(f64, &str)]) -> Vec<(Length, String)> {
    list.iter()
        .map(|&(width, name)| (mm(width), name.to_owned()))
        .collect()
}

/// Invented stocks, two of one width and two that are nearly so.
fn usual_stocks() -> Vec<(Length, String)> {
    stocks(&[
        (74.0, "Seven-ply 74 × 5"),
        (70.0, "Narrow"),
        (74.0, "Seven-ply 74 × 5.5"),
        (74.2, "Seven-ply, planed"),
        (78.0, "Wide"),
        (85.0, "Widest of all the stocks of this shop"),
    ])
}

fn numbers(path: &str) -> Vec<f64> {
    path.split(['M', 'L', ' '])
        .filter(|number| !number.is_empty())
        .map(|number| number.parse().unwrap())
        .collect()
}

/// Every text with its box.
fn texts(chart: &Chart) -> Vec<(String, Area)> {
    let flags = chart
        .markers
        .iter()
        .filter_map(|marker| marker.label.as_ref());
    chart
        .labels
        .iter()
        .chain(flags)
        .map(|label| (label.text.clone(), area(label)))
        .collect()
}

/// Everything a chart promises.
fn check(chart: &Chart) {
    let shown = format!("{chart:?}");
    assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
    let texts = texts(chart);
    for (k, (text, area)) in texts.iter().enumerate() {
        let on_sheet = area.x >= 0.0
            && area.y >= 0.0
            && area.x + area.width <= chart.width
            && area.y + area.height <= chart.height;
        assert!(on_sheet, "{text:?} lies off the sheet: {area:?}");
        for (other, other_area) in &texts[k + 1..] {
            assert!(
                !area.overlaps(other_area),
                "{text:?} {area:?} overlaps {other:?} {other_area:?}"
            );
        }
        for marker in &chart.markers {
            let pole = numbers(&marker.pole);
            let pole = Area {
                x: pole[0],
                y: pole[3],
                width: 0.01,
                // Down to the axis, under which the numbers of the ticks stand.
                height: pole[1] - pole[3],
            };
            assert!(!area.overlaps(&pole), "a pole runs through {text:?}");
        }
    }
    for path in [&chart.axes, &chart.grid, &chart.stairs] {
        for at in numbers(path).chunks(2) {
            assert!((0.0..=chart.width).contains(&at[0]), "{at:?}");
            assert!((0.0..=chart.height).contains(&at[1]), "{at:?}");
        }
    }
}

#[test]
fn no_text_covers_another_on_a_phone_or_a_desk() {
    for width in [280.0, 360.0, 600.0, 1000.0] {
        for unit in [LengthUnit::Millimetre, LengthUnit::Inch] {
            let range = (mm(60.0), mm(90.0));
            let chart = draw_stairs(&hexagons(), range, &usual_stocks(), &sheet(width, unit));
            check(&chart);
            let flown = chart.markers.iter().filter(|marker| marker.label.is_some());
            assert_eq!(flown.count(), 5, "on {width} px");
        }
    }
}

#[test]
fn stocks_of_one_width_share_a_flag_and_stand_on_their_step() {
    let range = (mm(60.0), mm(90.0));
    let unit = LengthUnit::Millimetre;
    let chart = draw_stairs(&hexagons(), range, &usual_stocks(), &sheet(1000.0, unit));
    let found: Vec<(f64, usize, u32)> = chart
        .markers
        .iter()
        .map(|marker| {
            (
                marker.width.in_millimetres(),
                marker.names.len(),
                marker.pencils,
            )
        })
        .collect();
    let expected = [
        (70.0, 1, 9),
        (74.0, 2, 10),
        (74.2, 1, 10),
        (78.0, 1, 10),
        (85.0, 1, 11),
    ];
    assert_eq!(found, expected);
    // The levels of the stairs, from the first to the last.
    let levels: Vec<f64> = numbers(&chart.stairs)
        .chunks(4)
        .map(|tread| tread[1])
        .collect();
    assert_eq!(levels.len(), 5);
    assert!((chart.markers[0].at.1 - levels[1]).abs() < 0.01);
    assert!((chart.markers[4].at.1 - levels[3]).abs() < 0.01);
    assert!(
        levels.windows(2).all(|pair| pair[1] < pair[0]),
        "more pencils are higher up"
    );
}

#[test]
fn the_ticks_of_the_width_are_round_numbers_of_the_unit() {
    let ticks = |unit| {
        let chart = draw_stairs(&hexagons(), (mm(60.0), mm(90.0)), &[], &sheet(600.0, unit));
        let axis = |label: &&Label| label.y > numbers(&chart.axes)[3] + LINE;
        let labels = chart.labels.iter().filter(axis);
        labels.map(|label| label.text.clone()).collect::<Vec<_>>()
    };
    let millimetres = ticks(LengthUnit::Millimetre);
    assert_eq!(millimetres[0], "Slat width, mm");
    assert_eq!(millimetres[1..4], ["60", "62", "64"]);
    let inches = ticks(LengthUnit::Inch);
    assert_eq!(inches[0], "Slat width, in");
    assert_eq!(inches[1..4], ["2.4", "2.5", "2.6"]);
}

#[test]
fn the_chart_is_told_in_words() {
    let today = stocks(&[(74.0, "Usual"), (300.0, "out of range")]);
    let unit = LengthUnit::Millimetre;
    let chart = draw_stairs(
        &hexagons()[1..3],
        (mm(66.76), mm(80.0)),
        &today,
        &sheet(600.0, unit),
    );
    assert_eq!(
        chart.description.replace(figure::THIN_SPACE, " "),
        "Pencils from a sandwich against slat width, 66.76 mm to 80.00 mm: 9 from 66.76 mm, 10 from 74.00 mm. Usual, 74.00 mm wide: 10."
    );
}

#[test]
fn without_steps_there_are_axes_and_no_stairs() {
    let unit = LengthUnit::Millimetre;
    let chart = draw_stairs(
        &[],
        (mm(90.0), mm(60.0)),
        &usual_stocks(),
        &sheet(280.0, unit),
    );
    check(&chart);
    assert_eq!(chart.stairs, "");
    assert!(
        chart.description.ends_with(": none."),
        "{}",
        chart.description
    );
}

/// Widths anywhere in a range, or crowded at one place.
fn any_stocks() -> impl Strategy<Value = Vec<(Length, String)>> {
    let width = prop_oneof![20.0_f64..200.0, 73.0_f64..75.0];
    prop::collection::vec((width, "[a-zA-ZäМ×木 0-9,.]{0,30}"), 0..25).prop_map(|stocks| {
        let stock = |(width, name)| (mm(width), name);
        stocks.into_iter().map(stock).collect()
    })
}

proptest! {
    #[test]
    fn every_chart_keeps_to_the_rules(
        first in 0.0_f64..150.0, run in 1.0_f64..60.0, pencils in 0_u32..300, sizes in prop::collection::vec(0.5_f64..20.0, 0..40),
        from in 0.0_f64..210.0, length in -10.0_f64..200.0, today in any_stocks(), width in 280.0_f64..1600.0, inch in any::<bool>(),
    ) {
        let mut list = vec![(first, pencils)];
        for (k, size) in (1..).zip(&sizes) {
            let last = list[list.len() - 1].0;
            list.push((last + size * run / 20.0, pencils + k));
        }
        let unit = if inch { LengthUnit::Inch } else { LengthUnit::Millimetre };
        check(&draw_stairs(&steps(&list), (mm(from), mm(from + length)), &today, &sheet(width, unit)));
    }

    #[test]
    fn any_number_can_be_drawn(from in any::<f64>(), to in any::<f64>(), step in any::<f64>(), stock in any::<f64>(), pencils in any::<u32>(), width in any::<f64>()) {
        let today = [(mm(stock), String::new())];
        check(&draw_stairs(&steps(&[(step, pencils)]), (mm(from), mm(to)), &today, &sheet(width, LengthUnit::Inch)));
    }
}
