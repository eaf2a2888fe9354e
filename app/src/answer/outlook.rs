//! Good pencils: sandwiches made by dice, and what else can be told of them.

use solver::tolerance::{Trial, Varied, choices, worth_of_more};
use solver::{Accuracy, Field, LayoutParts, LengthUnit, Place, Problem, ProjectDraft, lay_out};

use super::parts::placed;
use super::sparing::is_told;
use super::wording::sentence;
use crate::protocol::{Expected, Halving, JobId, Outlook, Progress, Reply, Thrown};

/// The dice of the questions that are no long count: the same for all, so that answers compare.
const SEED: u64 = 1;

/// Blocks of sandwiches that each way is tried with.
const BLOCKS: u32 = 48;

/// Makes sandwiches: the blocks of a seed from the first on.
pub(super) fn throw(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    seed: u32,
    first: u32,
    blocks: u32,
) -> Reply {
    let (parts, accuracy, _) = match checked(draft) {
        Ok(checked) => checked,
        Err(problems) => return refused(job, &problems, draft, unit),
    };
    let setup = parts.setup();
    let trial = Trial::new(&setup, &lay_out(&setup), &accuracy);
    let blocks = u64::from(first)..u64::from(first) + u64::from(blocks);
    let tally = trial.simulate(u64::from(seed), blocks, &mut |_| true);
    let thrown = Thrown::from(&tally);
    Reply::Thrown { job, thrown }
}

/// What is expected on average, without dice.
pub(super) fn expected(job: JobId, draft: &ProjectDraft, unit: LengthUnit) -> Reply {
    let (parts, accuracy, _) = match checked(draft) {
        Ok(checked) => checked,
        Err(problems) => return refused(job, &problems, draft, unit),
    };
    let setup = parts.setup();
    let layout = lay_out(&setup);
    let prospect = (layout.fits()).then(|| Trial::new(&setup, &layout, &accuracy).prospect());
    let good = prospect.and_then(|prospect| prospect.good());
    let expected = Expected {
        good: good.map(|good| good * f64::from(layout.lengths())),
        pencils: layout.pencils(),
        line: accuracy.name().to_owned(),
    };
    Reply::Expected { job, expected }
}

/// All that is told beside the count.
pub(super) fn answer(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    tell: &mut dyn FnMut(Reply),
) -> Reply {
    let (parts, accuracy, year_gross) = match checked(draft) {
        Ok(checked) => checked,
        Err(problems) => return refused(job, &problems, draft, unit),
    };
    let setup = parts.setup();
    let layout = lay_out(&setup);
    let trial = Trial::new(&setup, &layout, &accuracy);
    // Three tasks of the same number of blocks.
    let of = 3 * BLOCKS;
    let mut done = 0;
    let mut each = |_| {
        done += 1;
        if is_told(done, of) {
            let progress = Progress::Laid { done, of };
            tell(Reply::Progress { job, progress });
        }
        true
    };
    let blocks = 0..u64::from(BLOCKS);
    let by_count = choices(
        &setup,
        &accuracy,
        Varied::Count,
        SEED,
        blocks.clone(),
        &mut each,
    );
    let by_pitch = choices(
        &setup,
        &accuracy,
        Varied::Pitch,
        SEED,
        blocks.clone(),
        &mut each,
    );
    let good = by_pitch.laid.map(|laid| by_pitch.list[laid].good.mean);
    let gains = trial.halvings(SEED, blocks, &mut each);
    let halvings = gains.iter().map(|(_, gain)| {
        let worth =
            good.and_then(|good| worth_of_more(&setup, &layout, good, gain.mean, year_gross));
        Halving {
            gained: gain.mean,
            error: gain.error,
            saved_per_gross: worth.map(|worth| worth.per_gross),
            saved_per_year: worth.map(|worth| worth.per_year),
        }
    });
    let prospect = trial.prospect();
    let complete = |position: Option<&solver::tolerance::PositionChance>| {
        position.map_or(0.0, |position| position.complete)
    };
    let holds = prospect.faces.iter().map(|face| face.holds);
    let outlook = Outlook {
        centred: prospect.centred,
        admitted: prospect.admitted,
        good_by_eccentricity: prospect.good_by_eccentricity(),
        complete: [
            complete(prospect.positions.first()),
            complete(prospect.positions.last()),
        ],
        thinnest_face: holds.reduce(f64::min),
        halvings: halvings.collect(),
        by_count: (&by_count).into(),
        by_pitch: (&by_pitch).into(),
    };
    Reply::Outlook { job, outlook }
}

/// The layout, the accuracy of its line and the gross of a year, or all that is wrong with them.
fn checked(draft: &ProjectDraft) -> Result<(LayoutParts, Accuracy, f64), Vec<Problem>> {
    let year = draft.search.year_gross.read(Field::YearGross);
    let year = year.map_err(|problem| placed(Place::Search, vec![problem]));
    match (draft.check_layout(), draft.check_accuracy(), year) {
        (Ok(parts), Ok(accuracy), Ok(year)) => Ok((parts, accuracy, year)),
        (parts, accuracy, year) => {
            let mut problems = parts.err().unwrap_or_default();
            problems.extend(accuracy.err().into_iter().flatten());
            problems.extend(year.err().into_iter().flatten());
            Err(problems)
        }
    }
}

fn refused(job: JobId, problems: &[Problem], draft: &ProjectDraft, unit: LengthUnit) -> Reply {
    let told = |problem| sentence(problem, draft, unit);
    let mut problems: Vec<String> = problems.iter().map(told).collect();
    if problems.is_empty() {
        problems.push(
            "Layout: its barrel, a slat or its line of machines is not in the project: choose another"
                .into(),
        );
    }
    Reply::Refused { job, problems }
}
