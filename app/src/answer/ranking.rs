//! The barrel of the layout on every slat stock.

use solver::{
    Aim, Angle, Barrel, Candidate, Field, Layout, LengthUnit, Outcome, Place, Problem,
    ProjectDraft, Rules, Way, rank,
};

use super::parts::{Stocks, barrel, placed};
use super::sparing::is_told;
use super::wording::sentence;
use crate::project_file::WayWord;
use crate::protocol::{JobId, Progress, RankedRow, Ranking, Reply};

/// Ranks the stocks that can be worked with, and says what keeps out the others.
pub(super) fn answer(
    job: JobId,
    draft: &ProjectDraft,
    aim: Aim,
    unit: LengthUnit,
    tell: &mut dyn FnMut(Reply),
) -> Reply {
    let (barrel, rules, ways) = match checked(draft, unit) {
        Ok(parts) => parts,
        Err(problems) => return Reply::Refused { job, problems },
    };
    let Stocks {
        places,
        slats,
        left_out,
    } = Stocks::new(draft, unit);
    let turns: Vec<Angle> = ways.iter().map(|(_, turn)| *turn).collect();
    // The lists of a project are short of u32 by far.
    let of = (slats.len() * turns.len()) as u32;
    let candidates = rank(&barrel, &slats, &turns, &rules, aim, &mut |done| {
        let done = done as u32;
        if is_told(done, of) {
            let progress = Progress::Laid { done, of };
            tell(Reply::Progress { job, progress });
        }
    });
    let rows = candidates.iter().map(|candidate| {
        let entry = &draft.slats[places[candidate.slat]];
        let (way, turn) = ways[candidate.way];
        row(candidate, entry.id.0, &entry.draft.name, way, turn, unit)
    });
    let ranking = Ranking {
        rows: rows.collect(),
        left_out,
    };
    Reply::Ranked { job, ranking }
}

type Parts = (Barrel, Rules, Vec<(WayWord, Angle)>);

/// What every row needs, or everything that is wrong with it.
fn checked(draft: &ProjectDraft, unit: LengthUnit) -> Result<Parts, Vec<String>> {
    let mut problems = Vec::new();
    let barrel = barrel(draft, unit).map_err(|found| problems.extend(found));
    let mut refuse = |found: Vec<Problem>| {
        problems.extend(found.iter().map(|problem| sentence(problem, draft, unit)));
    };
    let rules = draft.check_rules().map_err(&mut refuse);
    let turned = (draft.layout_way() == Way::Turned).then(|| {
        let turn = draft.layout.turn.read(Field::Turn).map(Angle::degrees);
        turn.map_err(|problem| refuse(placed(Place::Layout, vec![problem])))
    });
    match (barrel, rules, turned.transpose()) {
        (Ok(barrel), Ok(rules), Ok(turned)) => {
            let usual = barrel.shape().seams().iter();
            let usual = usual.map(|&seam| (Way::Usual(seam).into(), barrel.turn(seam)));
            let turned = turned.map(|turn| (WayWord::Turned, turn));
            let ways = usual.chain(turned).collect();
            Ok((barrel, rules, ways))
        }
        _ => Err(problems),
    }
}

fn row(
    candidate: &Candidate,
    slat: u32,
    slat_name: &str,
    way: WayWord,
    turn: Angle,
    unit: LengthUnit,
) -> RankedRow {
    let Candidate { layout, needs, .. } = candidate;
    RankedRow {
        slat,
        slat_name: slat_name.to_owned(),
        way,
        turn_degrees: turn.in_degrees(),
        pencils: layout.pencils(),
        across: layout.across(),
        pitch_mm: layout.pitch().in_millimetres(),
        yielded: layout.balance().map(solver::WoodBalance::yielded),
        wood_per_gross_mm3: needs.map(|needs| needs.wood.in_cubic_millimetres()),
        slats_per_gross: needs.map(|needs| needs.slats),
        price_per_gross: needs.map(|needs| needs.price),
        failing: failing(layout, unit),
    }
}

/// The first check that fails, with its name.
fn failing(layout: &Layout, unit: LengthUnit) -> Option<String> {
    let mut checks = layout.checks().iter();
    let check = checks.find(|check| check.outcome == Outcome::Failed)?;
    Some(format!("{}: {}", check.rule.label(), check.statement(unit)))
}
