use super::super::axis::area;
use super::*;
use crate::quantity::Volume;
use crate::unit::LengthUnit;
use proptest::prelude::*;

fn totals(costs: [f64; 7]) -> PlanTotals {
    PlanTotals {
        total: costs.iter().sum(),
        gross: 0.0,
        costs,
        timber: Volume::cubic_millimetres(0.0),
        sandwiches: 0,
        hours: 0.0,
        changeovers: 0,
        packs: 0,
        sawn: 0,
    }
}

fn sheet(width: f64) -> Sheet {
    Sheet {
        width,
        row: 28.0,
        text: 64.0,
        unit: LengthUnit::Millimetre,
    }
}

/// Left and right edge of each bar.
fn edges(path: &str) -> Vec<(f64, f64)> {
    let bars = path.split_inclusive('Z').map(|bar| {
        let numbers = bar
            .split(['M', 'L', 'Z', ' '])
            .filter(|text| !text.is_empty());
        let numbers: Vec<f64> = numbers.map(|number| number.parse().unwrap()).collect();
        (numbers[0], numbers[2])
    });
    bars.collect()
}

#[test]
fn each_bar_begins_where_the_one_before_it_ends() {
    let costs = [40_000.0, 0.0, 0.0, 15_000.0, 5_000.0, 0.0, 0.0];
    let bars = edges(&draw_costs(&totals(costs), &sheet(600.0)).bars);
    assert_eq!(bars.len(), 4);
    for pair in bars[..3].windows(2) {
        assert!((pair[0].1 - pair[1].0).abs() < 0.02, "{bars:?}");
    }
    // All of it reaches from the first to the last.
    assert_eq!(bars[3], (bars[0].0, bars[2].1));
    // As wide as they cost: 40 to 15.
    let width = |bar: (f64, f64)| bar.1 - bar.0;
    assert!((width(bars[0]) / width(bars[1]) - 40.0 / 15.0).abs() < 0.01);
}

#[test]
fn what_chips_bring_goes_back() {
    let costs = [40_000.0, 0.0, 0.0, 0.0, 0.0, 0.0, -10_000.0];
    let chart = draw_costs(&totals(costs), &sheet(600.0));
    let (bars, back) = (edges(&chart.bars), edges(&chart.light));
    assert_eq!(back.len(), 1);
    assert!((back[0].1 - bars[0].1).abs() < 0.02, "{back:?} {bars:?}");
    assert!((bars[1].1 - back[0].0).abs() < 0.02, "{back:?} {bars:?}");
}

proptest! {
    #[test]
    fn texts_stay_on_the_sheet_and_apart(
        costs in proptest::array::uniform7(-1e9..1e12_f64), width in 0.0..2_000.0_f64,
    ) {
        let chart = draw_costs(&totals(costs), &sheet(width));
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
