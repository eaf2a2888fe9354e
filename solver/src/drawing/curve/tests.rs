use super::super::axis::area;
use super::*;
use crate::quantity::Length;
use crate::tolerance::Estimate;
use proptest::prelude::*;

fn sheet(width: f64, unit: LengthUnit) -> Sheet {
    Sheet {
        width,
        row: 28.0,
        text: 64.0,
        unit,
    }
}

/// Choices of a pitch in mm with their good pencils and the error of those; the best is the first
/// of the best means.
fn pitches(list: &[(f64, f64, f64)], laid: Option<usize>) -> Choices {
    let means = || list.iter().map(|(_, mean, _)| *mean);
    let most = means().fold(f64::MIN, f64::max);
    let list = list.iter().map(|&(pitch, mean, error)| Choice {
        across: 10,
        pitch: Length::millimetres(pitch),
        edge: Length::ZERO,
        good: Estimate { mean, error },
        behind: Estimate {
            mean: most - mean,
            error,
        },
        gross_price: None,
    });
    Choices {
        list: list.collect(),
        best: means().position(|mean| mean == most),
        laid,
    }
}

/// Choices of one pencil up to ten or so, with their good pencils.
fn counts(means: &[f64], laid: Option<usize>) -> Choices {
    let list: Vec<(f64, f64, f64)> = means.iter().map(|&mean| (7.24, mean, 0.01)).collect();
    let mut choices = pitches(&list, laid);
    for (choice, across) in choices.list.iter_mut().zip(1..) {
        choice.across = across;
    }
    choices
}

/// Invented good pencils of one to ten.
const COUNTS: [f64; 10] = [
    0.999, 1.998, 2.997, 3.996, 4.995, 5.994, 6.993, 7.99, 8.97, 8.66,
];

/// Invented good pencils at pitches.
const PITCHES: [(f64, f64, f64); 5] = [
    (7.24, 9.891, 0.003),
    (7.25, 9.912, 0.002),
    (7.26, 9.931, 0.002),
    (7.27, 9.930, 0.002),
    (7.28, 9.874, 0.003),
];

fn numbers(path: &str) -> Vec<f64> {
    path.split(['M', 'L', 'Z', ' '])
        .filter(|number| !number.is_empty())
        .map(|number| number.parse().unwrap())
        .collect()
}

/// Everything a chart promises.
fn check(chart: &CurveChart) {
    let shown = format!("{chart:?}");
    assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
    let flags = chart.picks.iter().filter_map(|pick| pick.label.as_ref());
    let labels: Vec<&Label> = chart.labels.iter().chain(flags).collect();
    for (k, label) in labels.iter().enumerate() {
        let box_of_it = area(label);
        let on_sheet = box_of_it.x >= 0.0
            && box_of_it.y >= 0.0
            && box_of_it.x + box_of_it.width <= chart.width
            && box_of_it.y + box_of_it.height <= chart.height;
        assert!(on_sheet, "{label:?} leaves the sheet");
        for other in &labels[k + 1..] {
            assert!(!box_of_it.overlaps(&area(other)), "{label:?} {other:?}");
        }
    }
    let poles = chart.picks.iter().map(|pick| &pick.pole);
    let paths = [
        &chart.axes,
        &chart.grid,
        &chart.line,
        &chart.errors,
        &chart.points,
    ];
    for path in paths.into_iter().chain(poles) {
        for at in numbers(path).chunks(2) {
            assert!((0.0..=chart.width).contains(&at[0]), "{at:?}");
            assert!((0.0..=chart.height).contains(&at[1]), "{at:?}");
        }
    }
}

/// The number at a place of an axis, from two of its labels.
fn read(labels: &[(f64, f64)], at: f64) -> f64 {
    let [first, .., last] = labels else {
        panic!("{labels:?}");
    };
    first.1 + (at - first.0) / (last.0 - first.0) * (last.1 - first.1)
}

/// Numbers of an axis with their places, px.
type Numbers = Vec<(f64, f64)>;

/// The numbers of both axes.
fn axes(chart: &CurveChart) -> (Numbers, Numbers) {
    let bottom = chart.height - UNDER_AXIS;
    let (up, across): (Vec<&Label>, Vec<&Label>) = chart.labels[2..]
        .iter()
        .partition(|label| label.y <= bottom);
    let number = |label: &Label| label.text.parse().unwrap();
    (
        across
            .iter()
            .map(|label| (label.x, number(label)))
            .collect(),
        up.iter().map(|label| (label.y, number(label))).collect(),
    )
}

#[test]
fn points_and_their_errors_read_back_at_the_axes() {
    let chart = draw_curve(
        &pitches(&PITCHES, None),
        Varied::Pitch,
        &sheet(900.0, LengthUnit::Millimetre),
    );
    check(&chart);
    let (across, up) = axes(&chart);
    let points: Vec<Vec<f64>> = chart.points.split_inclusive('Z').map(numbers).collect();
    let errors = numbers(&chart.errors);
    for ((point, error), (pitch, mean, deviation)) in
        points.iter().zip(errors.chunks(12)).zip(PITCHES)
    {
        let found = (read(&across, point[2]), read(&up, point[1]));
        assert!((found.0 - pitch).abs() < 1e-4, "{found:?} for {pitch}");
        assert!((found.1 - mean).abs() < 1e-4, "{found:?} for {mean}");
        let found = [error[1], error[3]].map(|y| read(&up, y));
        assert!(
            (found[0] - (mean - 2.0 * deviation)).abs() < 1e-4,
            "{found:?}"
        );
        assert!(
            (found[1] - (mean + 2.0 * deviation)).abs() < 1e-4,
            "{found:?}"
        );
    }
    // The line runs from point to point.
    let middles: Vec<f64> = points
        .iter()
        .flat_map(|point| [point[2], point[1]])
        .collect();
    assert_eq!(numbers(&chart.line), middles);
}

#[test]
fn the_best_and_the_laid_are_named_on_a_phone_and_a_desk() {
    for width in [280.0, 600.0, 1200.0] {
        for unit in [LengthUnit::Millimetre, LengthUnit::Inch] {
            for (laid, (laid_pitch, ..)) in PITCHES.into_iter().enumerate() {
                let chart = draw_curve(
                    &pitches(&PITCHES, Some(laid)),
                    Varied::Pitch,
                    &sheet(width, unit),
                );
                check(&chart);
                for (pick, pitch) in [(Pick::Best, 7.26), (Pick::Laid, laid_pitch)] {
                    let mut marks = chart.picks.iter();
                    let mark = marks.find(|mark| mark.pick == pick).unwrap();
                    let name = format!("{}: {}", pick.label(), figure::length(pitch, unit));
                    assert_eq!(mark.label.as_ref().unwrap().text, name);
                }
            }
            for laid in 0..COUNTS.len() {
                let chart = draw_curve(
                    &counts(&COUNTS, Some(laid)),
                    Varied::Count,
                    &sheet(width, unit),
                );
                check(&chart);
                assert!(chart.picks.iter().all(|mark| mark.label.is_some()));
                let (across, _) = axes(&chart);
                assert_eq!(across.len(), 10);
            }
        }
    }
}

#[test]
fn the_chart_is_told_in_words() {
    let told = |choices: &Choices, varied| {
        let chart = draw_curve(choices, varied, &sheet(600.0, LengthUnit::Millimetre));
        check(&chart);
        chart.description.replace(figure::THIN_SPACE, " ")
    };
    assert_eq!(
        told(&counts(&COUNTS, Some(9)), Varied::Count),
        "Expected good pencils of a sandwich against how many are laid side by side, 1 to 10. Best: 9, with 8.97 good. Laid: 10, with 8.66 good."
    );
    assert_eq!(
        told(&pitches(&PITCHES, Some(0)), Varied::Pitch),
        "Expected good pencils of a sandwich against their pitch, 7.24 mm to 7.28 mm. Laid: 7.24 mm, with 9.89 good. Best: 7.26 mm, with 9.93 good. The dice do not tell the best from 7.27 mm."
    );
}

#[test]
fn with_nothing_or_one_choice_there_are_axes_and_no_line() {
    for varied in [Varied::Count, Varied::Pitch] {
        let sheet = sheet(280.0, LengthUnit::Millimetre);
        let chart = draw_curve(&pitches(&[], None), varied, &sheet);
        check(&chart);
        assert_eq!((chart.points.as_str(), chart.picks.len()), ("", 0));
        let chart = draw_curve(&pitches(&[(7.24, 9.9, 0.0)], Some(0)), varied, &sheet);
        check(&chart);
        assert_eq!((chart.line.as_str(), chart.picks.len()), ("", 2));
    }
}

proptest! {
    #[test]
    fn every_chart_keeps_to_the_rules(
        list in prop::collection::vec((3.0_f64..20.0, 0.0_f64..30.0, 0.0_f64..0.1), 0..20),
        laid in prop::option::of(0..20_usize), by_count in any::<bool>(),
        width in 280.0_f64..1200.0, inch in any::<bool>(),
    ) {
        let unit = if inch { LengthUnit::Inch } else { LengthUnit::Millimetre };
        let sheet = sheet(width, unit);
        if by_count {
            let means: Vec<f64> = list.iter().map(|(_, mean, _)| *mean).collect();
            check(&draw_curve(&counts(&means, laid), Varied::Count, &sheet));
        } else {
            let mut list = list;
            list.sort_by(|one, other| one.0.total_cmp(&other.0));
            check(&draw_curve(&pitches(&list, laid), Varied::Pitch, &sheet));
        }
    }

    #[test]
    fn any_number_can_be_drawn(
        list in prop::collection::vec(any::<(f64, f64, f64)>(), 0..6), laid in prop::option::of(0..9_usize), width in any::<f64>(),
    ) {
        let chart = draw_curve(&pitches(&list, laid), Varied::Pitch, &sheet(width, LengthUnit::Inch));
        let shown = format!("{chart:?}");
        prop_assert!(!shown.contains("NaN") && !shown.contains("inf"), "{}", shown);
    }
}
