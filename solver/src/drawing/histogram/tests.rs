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

fn sample(values: &[f64]) -> Sample {
    let lengths: Vec<Length> = values.iter().copied().map(mm).collect();
    Sample::new(&lengths).unwrap()
}

/// Invented widths round 74 mm.
fn widths() -> Sample {
    let hundredths = [
        -12, -9, -7, -6, -5, -4, -4, -3, -3, -2, -2, -1, -1, -1, 0, 0, 0, 0, 1, 1, 1, 2, 2, 3, 3,
        4, 4, 5, 6, 7, 9, 12,
    ];
    sample(&hundredths.map(|apart| f64::from(7400 + apart) / 100.0))
}

fn limits(nominal: f64, lower: f64, upper: f64) -> Limits {
    Limits::new(mm(nominal), Some(mm(lower)), Some(mm(upper))).unwrap()
}

fn numbers(path: &str) -> Vec<f64> {
    path.split(['M', 'L', 'Z', ' '])
        .filter(|number| !number.is_empty())
        .map(|number| number.parse().unwrap())
        .collect()
}

/// Everything a chart promises.
fn check(chart: &HistogramChart) {
    let shown = format!("{chart:?}");
    assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
    let flags = chart.limits.iter().filter_map(|limit| limit.label.as_ref());
    let texts: Vec<(&str, Area)> = chart
        .labels
        .iter()
        .chain(flags)
        .map(|label| (label.text.as_str(), area(label)))
        .collect();
    for (k, (text, area)) in texts.iter().enumerate() {
        let on_sheet = area.x >= 0.0
            && area.y >= 0.0
            && area.x + area.width <= chart.width
            && area.y + area.height <= chart.height;
        assert!(on_sheet, "{text:?} lies off the sheet: {area:?}");
        for (other, other_area) in &texts[k + 1..] {
            let apart = !area.overlaps(other_area);
            assert!(apart, "{text:?} {area:?} overlaps {other:?} {other_area:?}");
        }
    }
    let lines = chart.limits.iter().map(|limit| &limit.line);
    let paths = [&chart.axes, &chart.grid, &chart.bars, &chart.curve];
    for path in paths.into_iter().chain(lines) {
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
            for (lower, upper) in [(-0.1, 0.1), (-0.2, 0.01), (0.05, 0.2), (-0.001, 0.001)] {
                let limits = limits(74.0, lower, upper);
                let chart = draw_histogram(&widths(), Some(&limits), "Width", &sheet(width, unit));
                check(&chart);
                let named = chart.limits.iter().filter(|limit| limit.label.is_some());
                assert_eq!(named.count(), 3, "{lower} to {upper} on {width} px");
            }
        }
    }
}

#[test]
fn the_bars_are_as_high_as_their_counts() {
    let sample = widths();
    let classes = sample.histogram();
    let chart = draw_histogram(
        &sample,
        None,
        "Width",
        &sheet(600.0, LengthUnit::Millimetre),
    );
    let bars: Vec<Vec<f64>> = chart.bars.split_inclusive('Z').map(numbers).collect();
    let full: Vec<usize> = classes
        .counts()
        .iter()
        .copied()
        .filter(|&count| count > 0)
        .collect();
    assert_eq!(bars.len(), full.len());
    let height = |bar: &[f64]| bar[1] - bar[3];
    let most = full
        .iter()
        .zip(&bars)
        .max_by_key(|(count, _)| **count)
        .unwrap();
    let pixels = height(most.1) / *most.0 as f64;
    for (bar, count) in bars.iter().zip(full) {
        assert!(
            (height(bar) - pixels * count as f64).abs() < 0.05,
            "{bar:?}"
        );
    }
    // Neighbours share an edge.
    assert!((bars[0][4] - bars[1][0]).abs() < 0.011);
}

#[test]
fn under_the_curve_lies_as_much_as_in_the_bars() {
    let sample = widths();
    let chart = draw_histogram(
        &sample,
        None,
        "Width",
        &sheet(1000.0, LengthUnit::Millimetre),
    );
    let bottom = numbers(&chart.axes)[3];
    let points = numbers(&chart.curve);
    let points: Vec<(f64, f64)> = points.chunks(2).map(|at| (at[0], bottom - at[1])).collect();
    let under: f64 = points
        .windows(2)
        .map(|pair| (pair[1].0 - pair[0].0) * f64::midpoint(pair[0].1, pair[1].1))
        .sum();
    let bars: f64 = chart
        .bars
        .split_inclusive('Z')
        .map(numbers)
        .map(|bar| (bar[4] - bar[0]) * (bar[1] - bar[3]))
        .sum();
    // The tails of the curve go on beyond the bars.
    assert!((under / bars - 1.0).abs() < 0.03, "{under} {bars}");
}

#[test]
fn the_axis_has_round_numbers_of_the_unit() {
    let ticks = |unit| {
        let chart = draw_histogram(&widths(), None, "Width", &sheet(600.0, unit));
        let axis = |label: &&Label| label.y > numbers(&chart.axes)[3] + LINE / 2.0;
        let labels = chart.labels.iter().filter(axis);
        labels.map(|label| label.text.clone()).collect::<Vec<_>>()
    };
    assert_eq!(
        ticks(LengthUnit::Millimetre)[..3],
        ["Width, mm", "73.90", "73.95"]
    );
    assert_eq!(
        ticks(LengthUnit::Inch)[..3],
        ["Width, in", "2.910", "2.912"]
    );
}

#[test]
fn the_chart_is_told_in_words() {
    let mut values = vec![74.0, 74.1, 74.1, 74.1, 74.2, 74.1, 74.0, 74.2, 74.1, 74.0];
    values.push(7.4);
    let limits = limits(74.0, -0.2, 0.15);
    let sheet = sheet(600.0, LengthUnit::Millimetre);
    let chart = draw_histogram(&sample(&values), Some(&limits), "Width", &sheet);
    assert_eq!(
        chart.description.replace(figure::THIN_SPACE, " "),
        "Width: 11 measurements from 7.40 mm to 74.20 mm, in classes of 0.100 mm. The fullest class, 74.050 mm to 74.150 mm, holds 5. Far below the classes: 1. Nominal 74.00 mm. Below the lower limit 73.80 mm: 1. Above the upper limit 74.15 mm: 2."
    );
}

#[test]
fn without_a_spread_there_is_no_curve() {
    for values in [vec![74.0], vec![74.0; 50]] {
        let unit = LengthUnit::Millimetre;
        let chart = draw_histogram(&sample(&values), None, "Width", &sheet(280.0, unit));
        check(&chart);
        assert_eq!(chart.curve, "");
        assert_eq!(chart.bars.matches('Z').count(), 1);
    }
}

#[test]
fn limits_far_off_are_told_and_not_drawn() {
    let limits = limits(84.0, -0.2, 0.2);
    let unit = LengthUnit::Millimetre;
    let chart = draw_histogram(&widths(), Some(&limits), "Width", &sheet(600.0, unit));
    assert!(chart.limits.is_empty());
    assert!(chart.description.contains("83.80\u{202f}mm: 32"));
}

proptest! {
    #[test]
    fn every_chart_keeps_to_the_rules(
        values in prop::collection::vec(prop_oneof![9 => 7300_u32..7500, 1 => 10_u32..100_000], 1..200),
        nominal in 7200_u32..7600, apart in 1_u32..100, width in 280.0_f64..1600.0, inch in any::<bool>(),
    ) {
        let values: Vec<f64> = values.into_iter().map(|hundredths| f64::from(hundredths) / 100.0).collect();
        let unit = if inch { LengthUnit::Inch } else { LengthUnit::Millimetre };
        let apart = f64::from(apart) / 100.0;
        let limits = limits(f64::from(nominal) / 100.0, -apart, apart);
        check(&draw_histogram(&sample(&values), Some(&limits), "Thickness", &sheet(width, unit)));
    }

    #[test]
    fn any_number_can_be_drawn(
        values in prop::collection::vec(-9e11_f64..9e11, 1..6), nominal in any::<f64>(), lower in any::<f64>(), width in any::<f64>(),
    ) {
        let limits = Limits::new(mm(nominal), Some(mm(lower)), None).ok();
        let chart = draw_histogram(&sample(&values), limits.as_ref(), "", &sheet(width, LengthUnit::Inch));
        let shown = format!("{chart:?}");
        prop_assert!(!shown.contains("NaN") && !shown.contains("inf"), "{}", shown);
    }
}
