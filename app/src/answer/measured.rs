//! What a list of measured slats says of its lot.

use solver::measured::{
    Confidence, Interval, Limits, MeasuredSize, Needed, Normality, Outliers, Sample, read,
};
use solver::{Length, LengthUnit, ProjectDraft, Sheet, draw_histogram, figure};

use crate::protocol::{Fact, JobId, MeasuredList, MeasuredLot, Reply, SheetSizes};
use crate::workbench::stock;

/// Reads the list and tells what it says, against what was agreed of the stock of the bottom slat.
pub(super) fn answer(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    list: &str,
    agreed: Option<Length>,
    sheet: SheetSizes,
) -> Reply {
    let SheetSizes { width, row, text } = sheet;
    let sheet = Sheet {
        width,
        row,
        text,
        unit,
    };
    let measured = match read(list, unit) {
        Err(problem) => MeasuredList {
            problems: vec![format!("Nothing was read: {problem}")],
            lots: Vec::new(),
        },
        Ok(readings) => {
            let cells = readings.bad.iter().map(|cell| cell.message(unit));
            let more = (readings.more_bad > 0).then(|| {
                let more = figure::count(readings.more_bad as u64);
                format!("{more} more cells were left out")
            });
            let stock = stock(draft);
            let lot = |size: MeasuredSize| {
                let sample = Sample::new(match size {
                    MeasuredSize::Width => &readings.widths,
                    MeasuredSize::Thickness => &readings.thicknesses,
                })?;
                let limits = stock.as_ref().and_then(|stock| size.limits(stock, agreed));
                Some(MeasuredLot {
                    size: size.into(),
                    mean_mm: sample.mean().in_millimetres(),
                    deviation_mm: sample.deviation().ok().map(Length::in_millimetres),
                    facts: facts(&sample, limits.as_ref(), unit),
                    chart: draw_histogram(&sample, limits.as_ref(), size.label(), &sheet).into(),
                })
            };
            MeasuredList {
                problems: cells.chain(more).collect(),
                lots: MeasuredSize::ALL.into_iter().filter_map(lot).collect(),
            }
        }
    };
    Reply::Measured { job, measured }
}

/// What is told of a sample, a line each.
fn facts(sample: &Sample, limits: Option<&Limits>, unit: LengthUnit) -> Vec<Fact> {
    let confidence = Confidence::USUAL;
    let length = |length: Length| {
        let number = figure::length_fine(length.in_millimetres(), unit);
        format!("{number}{}{}", figure::THIN_SPACE, unit.label())
    };
    let between = |bounds: Interval<Length>| {
        format!(
            "{} to {} in 95 of 100 lots",
            length(bounds.from),
            length(bounds.to)
        )
    };
    let mut facts = vec![
        ("Measured", figure::count(sample.count() as u64)),
        (
            "Mean",
            match sample.mean_interval(confidence) {
                Ok(bounds) => format!("{}; {}", length(sample.mean()), between(bounds)),
                Err(untold) => format!("{}; {untold}", length(sample.mean())),
            },
        ),
        (
            "Standard deviation",
            match (sample.deviation(), sample.deviation_interval(confidence)) {
                (Ok(deviation), Ok(bounds)) => {
                    format!("{}; {}", length(deviation), between(bounds))
                }
                (Err(untold), _) | (_, Err(untold)) => untold.to_string(),
            },
        ),
        (
            "Least, median, greatest",
            format!(
                "{}, {}, {}",
                length(sample.least()),
                length(sample.median()),
                length(sample.greatest())
            ),
        ),
        ("Spread", Normality::label(sample.normality()).to_owned()),
        (
            "Far out",
            match sample.outliers() {
                Outliers::TooFew => "too few measurements to tell".to_owned(),
                Outliers::Alike => "half of them are the same, so it cannot be told".to_owned(),
                Outliers::Told {
                    below: 0, above: 0, ..
                } => "none".to_owned(),
                Outliers::Told {
                    fence,
                    below,
                    above,
                } => format!(
                    "{} below {}, {} above {}: look at those slats again",
                    figure::count(below as u64),
                    length(fence.from),
                    figure::count(above as u64),
                    length(fence.to)
                ),
            },
        ),
    ];
    if let Some(limits) = limits {
        let outside = sample.outside(limits);
        let expected = match outside.expected {
            Ok(share) => format!("; {} of a normal lot", figure::ratio_fine(share)),
            Err(_) => String::new(),
        };
        facts.push((
            "Outside the limits",
            format!("{}{expected}", figure::ratio_fine(outside.counted)),
        ));
        if let Ok(capability) = sample.capability(limits, confidence) {
            let ratio = |ratio: solver::measured::Ratio| {
                let [value, from, to] = [ratio.value, ratio.interval.from, ratio.interval.to]
                    .map(|number| figure::plain(number, 2));
                format!("{value}; {from} to {to} in 95 of 100 lots")
            };
            facts.extend(capability.cp.map(|cp| ("Cp", ratio(cp))));
            facts.push(("Cpk", ratio(capability.cpk)));
        }
    }
    let wanted = Needed::WANTED_OF_MEAN;
    let needed = match sample.needed_for_mean(wanted, confidence) {
        Ok(Needed::Enough) => "none".to_owned(),
        Ok(Needed::More(more)) => figure::count(more as u64),
        Ok(Needed::OutOfReach) => "more than a million".to_owned(),
        Err(untold) => untold.to_string(),
    };
    let needed = format!("{needed}, for a mean within ± {}", length(wanted));
    facts.push(("More to measure", needed));
    let fact = |(name, value): (&str, String)| Fact {
        name: name.to_owned(),
        value,
    };
    facts.into_iter().map(fact).collect()
}
