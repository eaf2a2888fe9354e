//! Whatever is pasted as measurements is told in numbers, or refused in words.

use super::{UNITS, readable};
use proptest::prelude::*;
use solver::measured::{Confidence, Limits, Readings, Sample, read};
use solver::{Length, Sheet, draw_histogram};

/// Lists that are nearly right, and any text.
fn any_list() -> impl Strategy<Value = String> {
    let cell = prop_oneof![
        6 => "[0-9]{1,3}[.,][0-9]{1,3}",
        1 => "[0-9 ./,\"a-z+-]{0,12}",
        1 => any::<String>(),
    ];
    let row = prop::collection::vec(cell, 1..4);
    let separator = prop::sample::select(vec!["\t", ";", ",", ", "]);
    let end = prop::sample::select(vec!["\n", "\r\n", "\r"]);
    (prop::collection::vec(row, 0..30), separator, end).prop_map(|(rows, separator, end)| {
        let rows: Vec<String> = rows.iter().map(|row| row.join(separator)).collect();
        rows.join(end)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_list_is_told_or_refused(
        text in any_list(), nominal in 1.0_f64..100.0, lower in -3.0_f64..1.0, upper in -1.0_f64..3.0,
    ) {
        for unit in UNITS {
            let readings = match read(&text, unit) {
                Ok(readings) => readings,
                Err(problem) => {
                    prop_assert!(!problem.to_string().is_empty());
                    continue;
                }
            };
            prop_assert!(readings.bad.len() <= Readings::MOST_TOLD);
            for cell in &readings.bad {
                prop_assert!(cell.message(unit).chars().count() < 200);
            }
            let [nominal, lower, upper] = [nominal, lower, upper].map(Length::millimetres);
            let limits = Limits::new(nominal, Some(lower), Some(upper)).ok();
            for (size, measured) in [("Width", &readings.widths), ("Thickness", &readings.thicknesses)] {
                let Some(sample) = Sample::new(measured) else {
                    prop_assert!(measured.is_empty());
                    continue;
                };
                let bounds = sample.deviation_interval(Confidence::USUAL);
                let capability = limits.map(|limits| sample.capability(&limits, Confidence::USUAL));
                let told = format!("{:?} {bounds:?} {capability:?} {:?}", sample.mean(), sample.normality());
                prop_assert!(readable(&told), "{}", told);
                let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit };
                let chart = draw_histogram(&sample, limits.as_ref(), size, &sheet);
                prop_assert!(readable(&format!("{chart:?}")), "{:?}", chart);
            }
        }
    }
}
