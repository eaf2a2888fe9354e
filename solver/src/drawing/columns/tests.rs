use super::super::axis::area;
use super::*;
use crate::unit::LengthUnit;
use proptest::prelude::*;

fn sheet(width: f64) -> Sheet {
    Sheet {
        width,
        row: 28.0,
        text: 64.0,
        unit: LengthUnit::Millimetre,
    }
}

/// Left, right and upper edge of each column.
fn columns(chart: &ColumnChart) -> Vec<(f64, f64, f64)> {
    let numbers = |column: &str| -> Vec<f64> {
        column
            .split(['M', 'L', 'Z', ' '])
            .filter(|number| !number.is_empty())
            .map(|number| number.parse().unwrap())
            .collect()
    };
    let columns = chart.columns.split_inclusive('Z').map(numbers);
    columns.map(|at| (at[0], at[4], at[3])).collect()
}

/// Everything a chart promises.
fn check(chart: &ColumnChart) {
    let shown = format!("{chart:?}");
    assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
    let bottom = chart.height - UNDER_AXIS;
    let bars: Vec<Area> = columns(chart)
        .into_iter()
        .map(|(left, right, y)| Area {
            x: left,
            y,
            width: right - left,
            // Written to a hundredth of a pixel.
            height: bottom - y - 0.01,
        })
        .collect();
    for bar in &bars {
        assert!(bar.x >= 0.0 && bar.x + bar.width <= chart.width, "{bar:?}");
    }
    for (k, label) in chart.labels.iter().enumerate() {
        let box_of_it = area(label);
        let on_sheet = box_of_it.x >= 0.0
            && box_of_it.y >= 0.0
            && box_of_it.x + box_of_it.width <= chart.width
            && box_of_it.y + box_of_it.height <= chart.height;
        assert!(on_sheet, "{label:?} leaves the sheet");
        for other in &chart.labels[k + 1..] {
            assert!(!box_of_it.overlaps(&area(other)), "{label:?} {other:?}");
        }
        for bar in &bars {
            assert!(!box_of_it.overlaps(bar), "{label:?} covers {bar:?}");
        }
    }
}

/// The texts over the columns and under them, as they stand.
fn texts(chart: &ColumnChart) -> (Vec<String>, Vec<String>) {
    let bottom = chart.height - UNDER_AXIS;
    let (over, under): (Vec<&Label>, Vec<&Label>) =
        chart.labels[2..].iter().partition(|label| label.y < bottom);
    let texts = |labels: Vec<&Label>| labels.iter().map(|label| label.text.clone()).collect();
    (texts(over), texts(under))
}

const COUNTS: [u64; 11] = [0, 0, 0, 0, 0, 0, 0, 2, 148, 2_850, 17_480];

#[test]
fn columns_are_as_high_as_their_counts() {
    let chart = draw_columns(&COUNTS, &sheet(600.0));
    check(&chart);
    let bottom = chart.height - UNDER_AXIS;
    let found = columns(&chart);
    let most = bottom - found[3].2;
    for ((_, _, y), count) in found.iter().zip(&COUNTS[7..]) {
        let exact = (most * *count as f64 / 17_480.0).max(LEAST_HEIGHT);
        assert!((bottom - y - exact).abs() < 0.011, "{count}");
    }
}

#[test]
fn shares_stand_over_their_columns_and_counts_under_them() {
    let chart = draw_columns(&COUNTS, &sheet(600.0));
    let (shares, counts) = texts(&chart);
    // 2, 148, 2 850 and 17 480 of 20 480.
    assert_eq!(shares, ["<0.1", "0.7", "13.9", "85.4"]);
    assert_eq!(counts, ["6", "7", "8", "9", "10"]);
    let place = |text: &str| {
        chart
            .labels
            .iter()
            .find(|label| label.text == text)
            .unwrap()
    };
    for (share, count) in [("0.7", "8"), ("13.9", "9"), ("85.4", "10")] {
        assert!((place(share).x - place(count).x).abs() < 1e-9, "{share}");
    }
    assert_eq!(
        chart.description.replace(figure::THIN_SPACE, " "),
        "Good pencils of 20 480 sandwiches: 85.4 % gave 10, 13.9 % gave 9, 0.7 % gave 8, <0.1 % gave 7."
    );
}

#[test]
fn on_a_phone_the_share_of_the_fullest_stays() {
    let mut counts = [40_u64; 31];
    counts[17] = 5_000;
    let chart = draw_columns(&counts, &sheet(280.0));
    check(&chart);
    assert_eq!(columns(&chart).len(), 31);
    let (shares, counts) = texts(&chart);
    assert!(shares.contains(&"80.6".to_owned()), "{shares:?}");
    assert!(shares.len() > 3 && shares.len() < 31, "{shares:?}");
    assert_eq!(counts, ["0", "5", "10", "15", "20", "25", "30"]);
}

#[test]
fn a_share_that_just_clears_its_neighbour_clears_it_as_written_too() {
    // Near some widths the text of one column ends on the edge of the next, where that edge is written
    // to a hundredth of a pixel and the text is not.
    let counts = [1_u64, 900, 1, 900, 1, 900, 1, 900, 1, 900, 1, 900, 1, 900];
    for hundredths in (28_000..120_000).step_by(5) {
        check(&draw_columns(
            &counts,
            &sheet(f64::from(hundredths) / 100.0),
        ));
    }
}

#[test]
fn without_sandwiches_there_is_an_axis_and_no_column() {
    for counts in [&[][..], &[0], &[0, 0, 0]] {
        let chart = draw_columns(counts, &sheet(360.0));
        check(&chart);
        assert_eq!(chart.columns, "");
        assert_eq!(chart.description, "No sandwich has been made yet.");
    }
    let chart = draw_columns(&[7], &sheet(360.0));
    check(&chart);
    assert_eq!(
        texts(&chart),
        (vec!["100.0".to_owned()], vec!["0".to_owned()])
    );
}

proptest! {
    #[test]
    fn every_chart_keeps_to_the_rules(
        counts in prop::collection::vec(prop_oneof![2 => Just(0), 3 => 0_u64..5_000, 1 => any::<u64>()], 0..60),
        width in 280.0_f64..1200.0,
    ) {
        let chart = draw_columns(&counts, &sheet(width));
        check(&chart);
        let found = counts.iter().filter(|count| **count > 0).count();
        prop_assert_eq!(columns(&chart).len(), found);
    }
}
