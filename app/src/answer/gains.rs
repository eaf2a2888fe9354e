//! The nearest changes of the barrel that gain a pencil or a cheaper stock.

use solver::{
    Field, GainKind, GainLimits, GainProof, Length, LengthUnit, PAIR_STEPS, ProjectDraft,
    nearest_gains,
};

use super::sparing::is_told;
use super::wording::sentence;
use crate::protocol::{GainRow, GainStepRow, JobId, Progress, Reply};

/// A row for each stock and gain, the nearest first. The limits are those of size, corner and coat, mm.
pub(super) fn answer(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    limits: [f64; 3],
    tell: &mut dyn FnMut(Reply),
) -> Reply {
    let [size, corner, coat] = limits.map(Length::millimetres);
    let limits = GainLimits { size, corner, coat };
    let gains = nearest_gains(draft, &limits, &mut |done, of| {
        if is_told(done, of) {
            let progress = Progress::Laid { done, of };
            tell(Reply::Progress { job, progress });
        }
    });
    match gains {
        Ok(gains) => {
            let rows = gains.iter().map(|gain| {
                let gain = gain.rounded(draft, unit);
                let entry = draft.slats.get(gain.slat);
                let steps = gain.steps.iter().map(|step| GainStepRow {
                    field: place_of(step.field),
                    from_mm: step.from,
                    to_mm: step.to,
                });
                GainRow {
                    cheaper: gain.kind == GainKind::CheaperStock,
                    slat: entry.map_or(0, |entry| entry.id.0),
                    slat_name: entry.map_or_else(String::new, |entry| entry.draft.name.clone()),
                    way: gain.way.into(),
                    steps: steps.collect(),
                    pencils_before: gain.pencils_before,
                    pencils_after: gain.pencils_after,
                    price_before: gain.price_before,
                    price_after: gain.price_after,
                    proof: words(gain.proof),
                }
            });
            let rows = rows.collect();
            Reply::Gains { job, rows }
        }
        Err(problems) => {
            let told = |problem| sentence(problem, draft, unit);
            let problems = problems.iter().map(told).collect();
            Reply::Refused { job, problems }
        }
    }
}

fn place_of(field: Field) -> u32 {
    let place = Field::ALL.iter().position(|other| *other == field);
    // Every field is among all of them.
    place.unwrap_or(0) as u32
}

/// What is known of how near a change is.
fn words(proof: GainProof) -> String {
    match proof {
        GainProof::Smallest => "No smaller change of this size alone does it.".to_owned(),
        GainProof::SmallestOfSteps => {
            "The first in two hundred steps; one that lasts for less than a step may be missed."
                .to_owned()
        }
        GainProof::Tried => format!(
            "Tried, not proved: the second size in {PAIR_STEPS} steps either way. A nearer pair may lie between them."
        ),
    }
}
