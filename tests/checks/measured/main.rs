//! Statistics of measured slats against reference data, printed tables and worked examples, and a
//! library that shares no code with ours.

mod reference_data;

use reference_data::Reference;
use solver::Length;
use solver::measured::{Confidence, Limits, Needed, Normality, Sample};
use statrs::distribution::{ChiSquared, ContinuousCDF, Normal, StudentsT};

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

fn sample(values: &[f64]) -> Sample {
    let lengths: Vec<Length> = values.iter().copied().map(mm).collect();
    Sample::new(&lengths).expect("the cases hold numbers")
}

/// A sample of so many with this very mean and standard deviation: half of it on either side.
fn made(count: usize, mean: f64, deviation: f64) -> Sample {
    let even = count / 2 * 2;
    let apart = deviation * ((count - 1) as f64 / even as f64).sqrt();
    let mut values = vec![mean; count - even];
    values.extend([mean - apart, mean + apart].repeat(count / 2));
    sample(&values)
}

fn confidence(level: f64) -> Confidence {
    Confidence::new(level).expect("the cases name levels that can be had")
}

/// The quantile t by the bounds of a mean: with s = √n it is half their width.
fn student(upper: f64, freedom: usize) -> f64 {
    let count = freedom + 1;
    let sample = made(count, 0.0, (count as f64).sqrt());
    let bounds = sample.mean_interval(confidence(2.0 * upper - 1.0));
    bounds.expect("the sample spreads").to.in_millimetres()
}

/// The quantiles χ² on either side by the bounds of σ: with s = 1 it is (n − 1)/σ².
fn chi_squared(tail: f64, freedom: usize) -> [f64; 2] {
    let sample = made(freedom + 1, 0.0, 1.0);
    let bounds = sample.deviation_interval(confidence(1.0 - 2.0 * tail));
    let bounds = bounds.expect("the sample spreads");
    [bounds.to, bounds.from].map(|bound| {
        let bound = bound.in_millimetres();
        freedom as f64 / (bound * bound)
    })
}

#[track_caller]
fn printed(found: f64, expected: f64, decimals: i32) {
    let half = 0.5001 * libm::pow(10.0, -f64::from(decimals));
    assert!((found - expected).abs() <= half, "{found} for {expected}");
}

#[track_caller]
fn close(found: f64, expected: f64, share: f64) {
    assert!(
        (found - expected).abs() <= share * expected.abs(),
        "{found} for {expected}"
    );
}

#[test]
fn mean_and_standard_deviation_are_those_certified() {
    for Reference {
        name,
        values,
        mean,
        deviation,
        digits,
    } in reference_data::all()
    {
        let sample = sample(&values);
        let found = [
            (sample.mean().in_millimetres(), mean, digits.0),
            (
                sample.deviation().expect("it spreads").in_millimetres(),
                deviation,
                digits.1,
            ),
        ];
        for (found, certified, digits) in found {
            // Correct digits as the source defines them, −log₁₀ of the relative error; the
            // certified values are printed with 15, so half a unit of the last is no error.
            let error = (found - certified).abs() / certified.abs();
            let least = libm::pow(10.0, -f64::from(digits)) * if digits == 15 { 2.0 } else { 1.0 };
            assert!(
                error <= least,
                "{name}: {found} for {certified}, off by {error:e}"
            );
        }
    }
}

#[test]
fn quantiles_of_student_are_those_printed() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2 (from memory); beyond
    // 1000 degrees of freedom the last line of that table, the normal distribution.
    let table = [
        (0.975, 1, 12.706),
        (0.975, 2, 4.303),
        (0.975, 5, 2.571),
        (0.975, 10, 2.228),
        (0.975, 29, 2.045),
        (0.975, 100, 1.984),
        (0.975, 1000, 1.962),
        (0.975, 999_999, 1.960),
        (0.95, 10, 1.812),
        (0.99, 10, 2.764),
        (0.995, 10, 3.169),
        (0.999, 10, 4.144),
    ];
    for (upper, freedom, expected) in table {
        printed(student(upper, freedom), expected, 3);
    }
}

#[test]
fn quantiles_of_chi_squared_are_those_printed() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.4 (from memory): lower and
    // upper quantile.
    let table = [
        (0.025, 1, 0.001, 5.024),
        (0.025, 10, 3.247, 20.483),
        (0.05, 10, 3.940, 18.307),
        (0.005, 10, 2.156, 25.188),
        (0.025, 30, 16.791, 46.979),
        (0.025, 100, 74.222, 129.561),
    ];
    for (tail, freedom, lower, upper) in table {
        let found = chi_squared(tail, freedom);
        printed(found[0], lower, 3);
        printed(found[1], upper, 3);
    }
}

#[test]
fn quantiles_are_those_of_another_library() {
    for freedom in [1, 2, 3, 7, 24, 99, 1000, 20_000, 500_000] {
        let nu = freedom as f64;
        let student_t = StudentsT::new(0.0, 1.0, nu).expect("ν > 0");
        let chi = ChiSquared::new(nu).expect("ν > 0");
        for tail in [0.0005, 0.005, 0.025, 0.1, 0.2] {
            // Their quantiles are searched to fewer digits than their shares, so the shares are
            // compared. At half a million degrees of freedom both have lost six digits to lnΓ.
            let t = student(1.0 - tail, freedom);
            close(student_t.sf(t), tail, 1e-8);
            let [lower, upper] = chi_squared(tail, freedom);
            close(chi.cdf(lower), tail, 1e-7);
            close(chi.sf(upper), tail, 1e-7);
        }
    }
}

#[test]
fn capability_is_that_of_the_handbook() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, section 6.1.6 (recalled): limits 8 and 20,
    // mean 16, s = 2.
    let limits = Limits::new(mm(14.0), Some(mm(-6.0)), Some(mm(6.0))).expect("they are in order");
    let sample = made(51, 16.0, 2.0);
    let capability = sample
        .capability(&limits, Confidence::USUAL)
        .expect("the sample spreads");
    close(capability.cp.expect("two limits").value, 1.0, 1e-12);
    printed(capability.cpk.value, 0.6667, 4);
    let expected = sample.outside(&limits).expected.expect("it spreads");
    printed(expected * 100.0, 2.278, 3);
}

#[test]
fn a_centred_lot_has_the_parts_in_a_million_of_its_cp() {
    // 2·Q(3·Cp), computed in 25-digit arithmetic.
    for (cp, parts) in [
        (1.0, 2_699.796_063),
        (4.0 / 3.0, 63.342_484),
        (5.0 / 3.0, 0.573_303),
    ] {
        let half = mm(0.3 * cp);
        let limits = Limits::new(mm(74.0), Some(-half), Some(half)).expect("they are in order");
        let sample = made(100, 74.0, 0.1);
        let expected = sample.outside(&limits).expected.expect("it spreads");
        close(expected * 1e6, parts, 1e-6);
        let capability = sample
            .capability(&limits, Confidence::USUAL)
            .expect("the sample spreads");
        close(capability.cpk.value, cp, 1e-9);
        close(capability.cp.expect("two limits").value, cp, 1e-9);
    }
}

#[test]
fn the_bounds_of_capability_are_those_of_the_textbook() {
    // D. C. Montgomery, Introduction to Statistical Quality Control, chapter on process capability
    // (from memory): 20 measurements, limits 38 and 62, s = 1.75, Cp 2.29 from 1.57 to 3.01, the
    // bounds reckoned from the rounded 2.29.
    let limits = Limits::new(mm(50.0), Some(mm(-12.0)), Some(mm(12.0))).expect("they are in order");
    let capability = made(20, 50.0, 1.75)
        .capability(&limits, Confidence::USUAL)
        .expect("the sample spreads");
    let cp = capability.cp.expect("two limits");
    printed(cp.value, 2.29, 2);
    let rounded = 2.29 / cp.value;
    printed(cp.interval.from * rounded, 1.57, 2);
    printed(cp.interval.to * rounded, 3.01, 2);
    // The same formula as Bissell's, written as a share: 1 ± 1.96·√(1/(9·20·Cpk²) + 1/38).
    let cpk = capability.cpk;
    let half = 1.959_963_985 * (1.0 / (180.0 * cpk.value * cpk.value) + 1.0 / 38.0).sqrt();
    close(cpk.interval.from, cpk.value * (1.0 - half), 1e-8);
    close(cpk.interval.to, cpk.value * (1.0 + half), 1e-8);
}

#[test]
fn bounds_of_the_mean_are_those_of_the_handbook() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.2 (from memory): a heat flow
    // meter, n = 195, mean 9.261460, s 0.022789, 95 % from 9.258242 to 9.264679.
    let bounds = made(195, 9.261_460, 0.022_789)
        .mean_interval(Confidence::USUAL)
        .expect("the sample spreads");
    printed(bounds.from.in_millimetres(), 9.258_242, 5);
    printed(bounds.to.in_millimetres(), 9.264_679, 5);
}

/// Numbers that are the same in every run, from 0 to 1.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        // The multiplier is of D. E. Knuth, MMIX.
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    fn normal(&mut self, count: usize, mean: f64, deviation: f64) -> Vec<f64> {
        let normal = Normal::new(mean, deviation).expect("σ > 0");
        (0..count)
            .map(|_| normal.inverse_cdf(self.next()))
            .collect()
    }
}

#[test]
fn bounds_hold_the_true_values_as_often_as_they_say() {
    const LOTS: usize = 2000;
    let mut numbers = Numbers(1);
    // Limits 73.6 and 74.4 round a mean of 74.1 with σ = 0.1: Cpk 1.
    let limits = Limits::new(mm(74.0), Some(mm(-0.4)), Some(mm(0.4))).expect("they are in order");
    let level = confidence(0.9);
    let mut held = [0; 4];
    for _ in 0..LOTS {
        let sample = sample(&numbers.normal(30, 74.1, 0.1));
        let mean = sample.mean_interval(level).expect("it spreads");
        let deviation = sample.deviation_interval(level).expect("it spreads");
        let capability = sample.capability(&limits, level).expect("it spreads");
        let cp = capability.cp.expect("two limits").interval;
        let cpk = capability.cpk.interval;
        held[0] += usize::from((mean.from..=mean.to).contains(&mm(74.1)));
        held[1] += usize::from((deviation.from..=deviation.to).contains(&mm(0.1)));
        held[2] += usize::from((cp.from..=cp.to).contains(&(4.0 / 3.0)));
        held[3] += usize::from((cpk.from..=cpk.to).contains(&1.0));
    }
    for (held, what) in held.into_iter().zip(["mean", "σ", "Cp", "Cpk"]) {
        // 90 % ± four standard errors of 2000 lots; the bounds of Cpk are near enough.
        let share = held as f64 / LOTS as f64;
        assert!((share - 0.9).abs() < 0.03, "{what}: {share}");
    }
}

#[test]
fn normal_lots_seldom_look_otherwise_in_whatever_steps_they_are_read() {
    const LOTS: usize = 400;
    let mut numbers = Numbers(2);
    for step in [0.000_001, 0.01, 0.02, 0.05] {
        let mut alarms = 0;
        for _ in 0..LOTS {
            let values = numbers.normal(60, 74.0, 0.1);
            let read: Vec<f64> = values
                .iter()
                .map(|value| (value / step).round() * step)
                .collect();
            let found = sample(&read).normality();
            let is_alarm = matches!(
                found,
                Normality::Doubtful { .. } | Normality::Unlikely { .. }
            );
            alarms += usize::from(is_alarm);
        }
        // One in 20 is meant; 400 lots give 20 ± 4.4.
        assert!(alarms <= 35, "{step}: {alarms}");
        if step < 0.001 {
            assert!(alarms >= 6, "{step}: {alarms}");
        }
    }
}

#[test]
fn the_statistic_of_anderson_and_darling_is_the_sum_of_the_textbook() {
    // The formula as it stands in the NIST/SEMATECH e-Handbook of Statistical Methods, section
    // 1.3.5.14, with the distribution of the other library; the factor from D'Agostino and
    // Stephens, table 4.7 (from memory).
    let mut values = Numbers(3).normal(50, 74.0, 0.1);
    values.sort_by(f64::total_cmp);
    let sample = sample(&values);
    let deviation = sample.deviation().expect("it spreads").in_millimetres();
    let normal = Normal::new(sample.mean().in_millimetres(), deviation).expect("σ > 0");
    let count = values.len() as f64;
    let sum: f64 = (1..)
        .zip(values.iter().zip(values.iter().rev()))
        .map(|(i, (&low, &high))| {
            (2.0 * f64::from(i) - 1.0) * (libm::log(normal.cdf(low)) + libm::log(normal.sf(high)))
        })
        .sum();
    let expected = (-count - sum / count) * (1.0 + 0.75 / count + 2.25 / (count * count));
    let Normality::Likely { statistic } = sample.normality() else {
        panic!("a normal sample looks like one");
    };
    close(statistic, expected, 1e-9);
}

#[test]
fn a_sine_does_not_look_normal_and_the_speed_of_light_can_be_told() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.4.2.5: the deflections of the
    // beam follow a sine wave (from memory). The steps of the speed of light are an eighth of s.
    let data = reference_data::all();
    let normality = |name| {
        let data = data.iter().find(|data| data.name == name);
        sample(&data.expect("it is there").values).normality()
    };
    let found = normality("Lew");
    assert!(matches!(found, Normality::Unlikely { .. }), "{found:?}");
    let found = normality("Michelso");
    let is_told = !matches!(found, Normality::TooFew | Normality::TooCoarse);
    assert!(is_told, "{found:?}");
}

#[test]
fn so_many_are_needed_as_tables_of_quantiles_say() {
    // s = 0.1, wanted ± 0.05: t(0.975; 17) = 2.110 (printed) gives 0.0497 with 18, and
    // t(0.975; 16) = 2.120 gives 0.0514 with 17.
    let sample = made(5, 74.0, 0.1);
    let needed = sample.needed_for_mean(mm(0.05), Confidence::USUAL);
    assert_eq!(needed, Ok(Needed::More(13)));
    // With 31, √(30/16.791) − √(30/46.979) = 0.5376 (printed quantiles).
    let needed = |width| sample.needed_for_deviation(width, Confidence::USUAL);
    assert_eq!(needed(0.5377), Needed::More(26));
    assert_eq!(needed(0.5375), Needed::More(27));
}
