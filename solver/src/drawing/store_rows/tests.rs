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

fn row(name: &str, stands: &[[u64; 2]]) -> StoreRow {
    StoreRow {
        name: name.to_owned(),
        stands: stands.to_vec(),
    }
}

fn names(count: usize) -> Vec<String> {
    (0..count)
        .map(|place| format!("Week {}", place + 1))
        .collect()
}

#[test]
fn what_is_never_stored_has_no_row() {
    let rows = [row("Wide", &[[0, 0]]), row("Thin", &[[5, 0]])];
    let chart = draw_stores(&rows, &names(1), &sheet(400.0));
    assert!(chart.labels.iter().all(|label| label.text != "Wide"));
    assert!(chart.labels.iter().any(|label| label.text == "Thin"));
    assert_eq!(chart.bars.matches('Z').count(), 1);
    assert_eq!(chart.light, "");
}

#[test]
fn nothing_stored_is_told() {
    let chart = draw_stores(&[row("Wide", &[[0, 0]])], &names(1), &sheet(400.0));
    let told = "Nothing is left in the store at the end of any period.";
    assert_eq!(
        (chart.description.as_str(), chart.bars.as_str()),
        (told, "")
    );
}

#[test]
fn of_many_rows_the_fullest_are_drawn_in_their_order() {
    let rows: Vec<StoreRow> = (1..=20_u64)
        .map(|k| row(&format!("Stock {k}"), &[[k, 0]]))
        .collect();
    let chart = draw_stores(&rows, &names(1), &sheet(400.0));
    let stocks: Vec<&str> = (chart.labels.iter())
        .filter_map(|label| label.text.strip_prefix("Stock "))
        .collect();
    let expected: Vec<String> = (9..=20).map(|k: u64| k.to_string()).collect();
    assert_eq!(stocks, expected);
}

proptest! {
    #[test]
    fn texts_stay_on_the_sheet_and_apart(
        rows in proptest::collection::vec(proptest::collection::vec([0..u64::MAX, 0..u64::MAX], 0..30), 0..15),
        periods in 0..30_usize,
        width in 0.0..2_000.0_f64,
    ) {
        let rows: Vec<StoreRow> = rows.iter().map(|stands| row("A stock with a long name", stands)).collect();
        let chart = draw_stores(&rows, &names(periods), &sheet(width));
        let shown = format!("{chart:?}");
        prop_assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
        for (k, label) in chart.labels.iter().enumerate() {
            let area_of_it = area(label);
            prop_assert!(area_of_it.x >= 0.0 && area_of_it.x + area_of_it.width <= chart.width);
            prop_assert!(area_of_it.y >= 0.0 && area_of_it.y + area_of_it.height <= chart.height);
            for other in &chart.labels[k + 1..] {
                prop_assert!(!area_of_it.overlaps(&area(other)), "{label:?} {other:?}");
            }
        }
    }
}
