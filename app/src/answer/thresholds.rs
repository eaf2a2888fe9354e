//! What the next pencil costs: the nearest values of each input at which something changes.

use solver::{
    Change, Field, Input, LengthUnit, Outcome, Place, ProjectDraft, Rule, Threshold, Typed, figure,
    lay_out,
};

use super::parts::placed;
use super::wording::sentence;
use crate::protocol::{ChangeLine, InputAddress, JobId, OwnerWord, Reply, ThresholdRow};

/// A row for each input of the layout.
pub(super) fn answer(job: JobId, draft: &ProjectDraft, unit: LengthUnit) -> Reply {
    let year = draft.search.year_gross.read(Field::YearGross);
    let year = year.map_err(|problem| placed(Place::Search, vec![problem]));
    let thresholds = year.and_then(|year| solver::thresholds(draft, year));
    match thresholds {
        Ok(thresholds) => {
            let rows = thresholds.iter();
            let rows = rows.filter_map(|threshold| row(threshold, draft, unit));
            let rows = rows.collect();
            Reply::Thresholds { job, rows }
        }
        Err(problems) => {
            let told = |problem| sentence(problem, draft, unit);
            let mut problems: Vec<String> = problems.iter().map(told).collect();
            if problems.is_empty() {
                problems.push(
                    "Layout: its barrel or a slat is not in the project: choose another".into(),
                );
            }
            Reply::Refused { job, problems }
        }
    }
}

fn row(threshold: &Threshold, draft: &ProjectDraft, unit: LengthUnit) -> Option<ThresholdRow> {
    let lines = |changes: &[Change]| {
        let lines = changes.iter();
        lines
            .map(|change| line(change, threshold, draft, unit))
            .collect()
    };
    Some(ThresholdRow {
        input: address(threshold.input, draft)?,
        today_mm: threshold.today,
        down: lines(&threshold.down),
        up: lines(&threshold.up),
    })
}

fn address(input: Input, draft: &ProjectDraft) -> Option<InputAddress> {
    let owner = match input.place {
        Place::Slat(at) => OwnerWord::Slat(draft.slats.get(at)?.id.0),
        Place::Rules => OwnerWord::Rules,
        Place::CutterSet(at) => OwnerWord::CutterSet(draft.cutter_sets.get(at)?.id.0),
        Place::Barrel(at) => OwnerWord::Barrel(draft.barrels.get(at)?.id.0),
        _ => return None,
    };
    let field = Field::ALL.iter().position(|&field| field == input.field)?;
    let field = field as u32;
    Some(InputAddress { owner, field })
}

fn line(
    change: &Change,
    threshold: &Threshold,
    draft: &ProjectDraft,
    unit: LengthUnit,
) -> ChangeLine {
    let named = |is_wanted: fn(Outcome) -> bool| {
        let flipped = change.flipped.iter();
        let wanted = flipped.filter(|(_, outcome)| is_wanted(*outcome));
        wanted
            .map(|(rule, _)| Rule::label(*rule).to_owned())
            .collect()
    };
    let rounded = figure::length_away(change.at, threshold.today, unit);
    let shown = if is_still_so(change, threshold.input, rounded, draft) {
        rounded
    } else {
        change.at
    };
    ChangeLine {
        at_mm: change.at,
        shown_mm: shown,
        pencils_before: change.pencils_before,
        pencils_after: change.pencils_after,
        across_before: change.across_before,
        across_after: change.across_after,
        mended: named(|outcome| outcome != Outcome::Failed),
        broken: named(|outcome| outcome == Outcome::Failed),
        unmade: change.unmade,
        saved_per_gross: change.worth.map(|worth| worth.per_gross),
        saved_per_year: change.worth.map(|worth| worth.per_year),
    }
}

/// Whether a value a little farther away is laid as the change says.
fn is_still_so(change: &Change, input: Input, value: f64, draft: &ProjectDraft) -> bool {
    let mut draft = draft.clone();
    let Some(typed) = input.typed_mut(&mut draft) else {
        return false;
    };
    *typed = Typed::Number(value);
    match draft.check_layout() {
        Ok(parts) => {
            let layout = lay_out(&parts.setup());
            let laid = (layout.across(), layout.pencils());
            !change.unmade && laid == (change.across_after, change.pencils_after)
        }
        Err(_) => change.unmade,
    }
}
