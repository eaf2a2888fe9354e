//! The text of what measured slats say.

use solver::measured::{
    Confidence, Histogram, Interval, Needed, Normality, Outliers, Ratio, Untold,
};
use solver::{Length, LengthUnit, figure};

use super::{Held, Lot, Measured};
use crate::digits::fine_share;
use crate::note::{Column, Note};

/// The text of an answer, with lengths in a unit.
pub(super) fn of(lot: &Lot, unit: LengthUnit) -> String {
    let mut note = Note::new();
    for (title, measured) in [("Width", &lot.widths), ("Thickness", &lot.thicknesses)] {
        if let Some(measured) = measured {
            note.title(title);
            numbers(&mut note, measured, lot.confidence, unit);
            note.line("");
            histogram(&mut note, &measured.histogram, unit);
        }
    }
    unread(&mut note, lot, unit);
    note.finish()
}

fn numbers(note: &mut Note, measured: &Measured, confidence: Confidence, unit: LengthUnit) {
    let sample = &measured.sample;
    let length = |length: Length| {
        let figure = figure::length_fine(length.in_millimetres(), unit);
        format!("{figure}{}{}", figure::THIN_SPACE, unit.label())
    };
    let sure = figure::plain(confidence.level() * 100.0, 2);
    let bounded = |value: Length, bounds: Interval<Length>| {
        let [value, from, to] = [value, bounds.from, bounds.to].map(length);
        format!(
            "{value}; {from} to {to} with {sure}{}% confidence",
            figure::THIN_SPACE
        )
    };
    let [mean, deviation] = match &measured.spread {
        Ok(spread) => [
            bounded(sample.mean(), spread.mean_bounds),
            bounded(spread.deviation, spread.deviation_bounds),
        ],
        Err(untold) => [length(sample.mean()), untold.to_string()],
    };
    let mut rows = vec![
        ("Measured", figure::count(sample.count() as u64)),
        ("Mean", mean),
        ("Standard deviation", deviation),
        ("Least", length(sample.least())),
        ("Median", length(sample.median())),
        ("Greatest", length(sample.greatest())),
        ("Kind of spread", normality(measured.normality)),
        ("Far out", outliers(measured.outliers, &length)),
    ];
    if let Some(held) = &measured.held {
        rows.extend(agreed(held, &length));
    }
    if let Some(needed) = measured.needed_for_mean {
        rows.push(("More for the mean", needed.map_or_else(why, more)));
    }
    if let Some(needed) = measured.needed_for_deviation {
        rows.push(("More for the deviation", more(needed)));
    }
    let rows: Vec<[String; 2]> = (rows.into_iter())
        .map(|(name, value)| [name.to_owned(), value])
        .collect();
    note.table([Column::Words; 2], &rows);
}

fn normality(normality: Normality) -> String {
    match normality {
        Normality::TooFew | Normality::TooCoarse => normality.label().to_owned(),
        Normality::Likely { statistic }
        | Normality::Doubtful { statistic }
        | Normality::Unlikely { statistic } => {
            let statistic = figure::plain(statistic, 3);
            format!("{} (A*² = {statistic})", normality.label())
        }
    }
}

fn outliers(outliers: Outliers, length: &dyn Fn(Length) -> String) -> String {
    match outliers {
        Outliers::TooFew => "too few measurements to tell".to_owned(),
        Outliers::Alike => "half of the measurements are the same, so it cannot be told".to_owned(),
        Outliers::Told {
            fence,
            below,
            above,
        } => {
            let [below, above] = [below, above].map(|count| figure::count(count as u64));
            let [from, to] = [fence.from, fence.to].map(length);
            format!("{below} below {from}, {above} above {to}")
        }
    }
}

fn agreed(held: &Held, length: &dyn Fn(Length) -> String) -> Vec<(&'static str, String)> {
    let (limits, outside) = (&held.limits, &held.outside);
    let side = |limit: Option<Length>| limit.map_or_else(|| "free".to_owned(), length);
    let [lower, upper] = [limits.lower(), limits.upper()].map(side);
    let [below, above] = [outside.below, outside.above].map(|count| figure::count(count as u64));
    let counted = fine_share(outside.counted);
    let mut rows = vec![
        (
            "Agreed",
            format!(
                "{}, lower limit {lower}, upper limit {upper}",
                length(limits.nominal())
            ),
        ),
        (
            "Outside",
            format!("{below} below, {above} above: {counted}"),
        ),
        (
            "Expected outside",
            (outside.expected).map_or_else(why, |share| {
                format!("{} of a normal lot", fine_share(share))
            }),
        ),
    ];
    match &held.capability {
        Ok(capability) => {
            rows.extend(capability.cp.map(|cp| ("Cp", ratio(cp))));
            rows.push(("Cpk", ratio(capability.cpk)));
        }
        Err(untold) => rows.push(("Cpk", why(*untold))),
    }
    rows
}

fn ratio(ratio: Ratio) -> String {
    let [value, from, to] = [ratio.value, ratio.interval.from, ratio.interval.to]
        .map(|number| figure::plain(number, 3));
    format!("{value}; {from} to {to}")
}

fn more(needed: Needed) -> String {
    match needed {
        Needed::Enough => "none, there are enough".to_owned(),
        Needed::More(count) => figure::count(count as u64),
        Needed::OutOfReach => format!("over {} in all", figure::count(Needed::MOST as u64)),
    }
}

fn why(untold: Untold) -> String {
    untold.to_string()
}

fn histogram(note: &mut Note, histogram: &Histogram, unit: LengthUnit) {
    let edge = |at: usize| {
        let edge = histogram.from() + histogram.width() * at as f64;
        figure::length_fine(edge.in_millimetres(), unit)
    };
    let head = [
        format!("From, {}", unit.label()),
        "To".to_owned(),
        "Measured".to_owned(),
    ];
    let rows = histogram.counts().iter().enumerate();
    let rows = rows.map(|(at, &count)| [edge(at), edge(at + 1), figure::count(count as u64)]);
    let rows: Vec<[String; 3]> = [head].into_iter().chain(rows).collect();
    note.table([Column::Figures; 3], &rows);
}

fn unread(note: &mut Note, lot: &Lot, unit: LengthUnit) {
    let readings = &lot.readings;
    if readings.bad.is_empty() {
        return;
    }
    note.title("Left out, for it cannot be read");
    for cell in &readings.bad {
        note.line(&cell.message(unit));
    }
    if readings.more_bad > 0 {
        note.line(&format!(
            "and {} more",
            figure::count(readings.more_bad as u64)
        ));
    }
}
