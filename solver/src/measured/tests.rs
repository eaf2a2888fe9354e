use super::*;
use crate::quantity::Length;
use proptest::prelude::*;

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

fn sample(values: &[f64]) -> Sample {
    let lengths: Vec<Length> = values.iter().copied().map(mm).collect();
    Sample::new(&lengths).unwrap()
}

fn limits(nominal: f64, lower: f64, upper: f64) -> Limits {
    Limits::new(mm(nominal), Some(mm(lower)), Some(mm(upper))).unwrap()
}

/// Values that follow the normal distribution as evenly as so many can: its quantiles at
/// (k + 1/2)/n, by halving.
fn normal_values(count: usize, mean: f64, deviation: f64) -> Vec<f64> {
    (0..count)
        .map(|k| {
            let share = (k as f64 + 0.5) / count as f64;
            let z = distribution::normal_quantile(share.min(1.0 - share));
            mean + deviation * if share < 0.5 { -z } else { z }
        })
        .collect()
}

fn rounded(values: &[f64], step: f64) -> Vec<f64> {
    values
        .iter()
        .map(|value| (value / step).round() * step)
        .collect()
}

#[test]
fn one_measurement_tells_its_size_and_no_spread() {
    let one = sample(&[74.0]);
    let limits = limits(74.0, -0.1, 0.1);
    assert_eq!(
        (one.count(), one.mean(), one.median()),
        (1, mm(74.0), mm(74.0))
    );
    assert_eq!(one.deviation(), Err(Untold::One));
    assert_eq!(one.mean_interval(Confidence::USUAL), Err(Untold::One));
    assert_eq!(one.deviation_interval(Confidence::USUAL), Err(Untold::One));
    assert_eq!(one.capability(&limits, Confidence::USUAL), Err(Untold::One));
    assert_eq!(one.outside(&limits).expected, Err(Untold::One));
    assert_eq!(one.outside(&limits).counted, 0.0);
    assert_eq!(one.normality(), Normality::TooFew);
    assert_eq!(one.outliers(), Outliers::TooFew);
    assert_eq!(one.histogram().counts(), [1]);
    assert_eq!(
        one.needed_for_mean(mm(0.1), Confidence::USUAL),
        Err(Untold::One)
    );
}

#[test]
fn measurements_that_are_all_alike_tell_no_spread() {
    let alike = sample(&[73.9; 1000]);
    let limits = limits(74.0, -0.05, 0.05);
    assert_eq!(alike.mean(), mm(73.9));
    assert_eq!(alike.deviation(), Err(Untold::Alike));
    assert_eq!(alike.outside(&limits).counted, 1.0);
    assert_eq!(alike.outside(&limits).expected, Err(Untold::Alike));
    assert_eq!(alike.normality(), Normality::TooCoarse);
    assert_eq!(alike.outliers(), Outliers::Alike);
    assert_eq!(alike.histogram().counts(), [1000]);
}

#[test]
fn no_measurements_and_none_that_is_a_number_are_no_sample() {
    assert_eq!(Sample::new(&[]), None);
    for nothing in [f64::NAN, f64::INFINITY, 1e12] {
        assert_eq!(Sample::new(&[mm(74.0), mm(nothing)]), None);
    }
}

#[test]
fn limits_that_say_nothing_are_refused() {
    let message = |lower: Option<f64>, upper: Option<f64>| {
        let limits = Limits::new(mm(74.0), lower.map(mm), upper.map(mm));
        let unit = crate::LengthUnit::Millimetre;
        limits
            .unwrap_err()
            .message(unit)
            .replace(crate::figure::THIN_SPACE, " ")
    };
    assert!(message(None, None).starts_with("There are no limits"));
    for nothing in [f64::NAN, f64::NEG_INFINITY, -1.337e308, 1e12] {
        assert!(message(Some(nothing), None).starts_with("A limit is no number"));
    }
    assert_eq!(
        message(Some(0.2), Some(-0.2)),
        "The lower deviation 0.20 mm is not below the upper one, −0.20 mm: type a smaller one"
    );
}

#[test]
fn with_one_limit_there_is_no_cp() {
    let sample = sample(&[73.9, 74.0, 74.1]);
    let lower = Limits::new(mm(74.0), Some(mm(-0.3)), None).unwrap();
    let capability = sample.capability(&lower, Confidence::USUAL).unwrap();
    assert_eq!(capability.cp, None);
    assert!((capability.cpk.value - 1.0).abs() < 1e-9);
    let outside = sample.outside(&lower);
    assert_eq!((outside.below, outside.above), (0, 0));
    assert!((outside.expected.unwrap() - 0.001_349_898).abs() < 1e-9);
}

#[test]
fn a_measurement_on_a_limit_lies_within() {
    let outside = sample(&[73.8, 74.0, 74.3]).outside(&limits(74.0, -0.2, 0.3));
    assert_eq!((outside.below, outside.above), (0, 0));
}

#[test]
fn a_normal_lot_looks_normal_even_in_steps_of_a_caliper() {
    let values = normal_values(2000, 74.0, 0.05);
    for step in [0.001, 0.005, 0.01, 0.02] {
        let normality = sample(&rounded(&values, step)).normality();
        assert!(
            matches!(normality, Normality::Likely { .. }),
            "{step}: {normality:?}"
        );
    }
    // n·(h/s)⁴ = 2000.
    assert_eq!(
        sample(&rounded(&values, 0.05)).normality(),
        Normality::TooCoarse
    );
}

#[test]
fn two_lots_in_one_do_not_look_normal() {
    let mut values = normal_values(40, 73.9, 0.03);
    values.extend(normal_values(40, 74.1, 0.03));
    let normality = sample(&rounded(&values, 0.01)).normality();
    assert!(
        matches!(normality, Normality::Unlikely { .. }),
        "{normality:?}"
    );
}

#[test]
fn mistyped_numbers_stand_out_and_do_not_hide_each_other() {
    let mut values = rounded(&normal_values(40, 74.0, 0.1), 0.01);
    values.extend([7.4, 7.41, 740.0]);
    let found = sample(&values).outliers();
    assert!(
        matches!(
            found,
            Outliers::Told {
                below: 2,
                above: 1,
                ..
            }
        ),
        "{found:?}"
    );
    let histogram = sample(&values).histogram();
    assert_eq!((histogram.below(), histogram.above()), (2, 1));
    assert!(histogram.counts().len() > 4);
}

#[test]
fn classes_hold_whole_steps_of_the_caliper() {
    let values = rounded(&normal_values(500, 74.0, 0.05), 0.01);
    let histogram = sample(&values).histogram();
    let steps = histogram.width().in_millimetres() / 0.01;
    assert!((steps - steps.round()).abs() < 1e-9, "{steps}");
    // Its edges lie half way between two steps.
    let edge = histogram.from().in_millimetres() / 0.01;
    assert!((edge - edge.floor() - 0.5).abs() < 1e-6, "{edge}");
}

#[test]
fn wanting_the_impossible_is_out_of_reach() {
    let sample = sample(&[73.9, 74.0, 74.1]);
    let usual = Confidence::USUAL;
    for width in [0.0, -1.0, f64::NAN, 1e-9] {
        assert_eq!(
            sample.needed_for_mean(mm(width), usual),
            Ok(Needed::OutOfReach)
        );
        assert_eq!(
            sample.needed_for_deviation(width, usual),
            Needed::OutOfReach
        );
    }
    assert_eq!(sample.needed_for_mean(mm(1.0), usual), Ok(Needed::Enough));
    assert_eq!(sample.needed_for_deviation(10.0, usual), Needed::Enough);
}

/// Numbers of any lot, or of any keyboard.
fn any_values() -> impl Strategy<Value = Vec<f64>> {
    let value = prop_oneof![
        8 => (7300_u32..7500).prop_map(|hundredths| f64::from(hundredths) / 100.0),
        1 => 0.1_f64..1000.0,
        1 => -9e11_f64..9e11,
    ];
    prop::collection::vec(value, 1..60)
}

fn any_limits() -> impl Strategy<Value = Limits> {
    let size = || prop_oneof![any::<f64>(), -9e11_f64..9e11, 70.0_f64..78.0];
    (
        size(),
        prop::option::of(size()),
        prop::option::of(-1.0_f64..1.0),
    )
        .prop_filter_map("limits that can be", |(nominal, lower, upper)| {
            Limits::new(mm(nominal), lower.map(mm), upper.map(mm)).ok()
        })
}

proptest! {
    #[test]
    fn every_answer_is_a_number_or_says_why_there_is_none(
        values in any_values(), limits in any_limits(), level in 0.5_f64..0.9999, width in any::<f64>(),
    ) {
        let sample = sample(&values);
        let confidence = Confidence::new(level).unwrap();
        let capability = sample.capability(&limits, confidence);
        let outside = sample.outside(&limits);
        let told = format!(
            "{:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?}",
            sample.mean(), sample.mean_interval(confidence), sample.deviation_interval(confidence),
            capability, outside, sample.normality(), sample.outliers(), sample.histogram(),
            sample.needed_for_mean(mm(width), confidence), sample.needed_for_deviation(width, confidence),
        );
        prop_assert!(!told.contains("NaN") && !told.contains("inf"), "{}", told);
        prop_assert!((0.0..=1.0).contains(&outside.counted));
        prop_assert!(outside.expected.is_err() || (0.0..=1.0 + 1e-12).contains(&outside.expected.unwrap()));
    }

    #[test]
    fn the_classes_hold_every_measurement(values in any_values()) {
        let sample = sample(&values);
        let histogram = sample.histogram();
        let counted: usize = histogram.counts().iter().sum();
        prop_assert_eq!(counted + histogram.below() + histogram.above(), values.len());
        prop_assert!(histogram.counts().len() <= Histogram::MOST_CLASSES);
        prop_assert!(histogram.width() > Length::ZERO);
        if histogram.below() + histogram.above() == 0 {
            prop_assert!(histogram.from() <= sample.least() && sample.greatest() <= histogram.to());
        }
    }

    #[test]
    fn no_fewer_measurements_would_do(values in prop::collection::vec(70.0_f64..78.0, 2..6), width in 0.05_f64..3.0) {
        let sample = sample(&values);
        let usual = Confidence::USUAL;
        if let Ok(Needed::More(more)) = sample.needed_for_mean(mm(width), usual) {
            let half = |count| super::sample::mean_half_width(sample.deviation().unwrap(), count, usual);
            let count = sample.count() + more;
            prop_assert!(half(count) <= mm(width) && half(count - 1) > mm(width));
        }
    }

    #[test]
    fn more_confidence_takes_wider_bounds_round_the_estimate(values in prop::collection::vec(70.0_f64..78.0, 2..40)) {
        let sample = sample(&values);
        let bounds = |level| sample.deviation_interval(Confidence::new(level).unwrap()).unwrap();
        let deviation = sample.deviation().unwrap();
        let (close, wide) = (bounds(0.8), bounds(0.99));
        prop_assert!(wide.from < close.from && close.from < deviation);
        prop_assert!(wide.to > close.to && close.to > deviation);
    }
}
