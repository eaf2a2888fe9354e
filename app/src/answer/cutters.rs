//! Which cutter sets make which barrels, and the one more that saves most.

use solver::{
    CutterQuestion, CutterSet, Id, LengthUnit, NewSet, Place, Problem, Project, ProjectDraft,
    Proposal, plan_cutters,
};

use super::parts::placed;
use super::wording::sentence;
use crate::protocol::{
    CutterPlan, JobId, NewCutterSet, NewSetKind, Reply, ServedBarrel, ServingSet,
};

/// Plans cutter sets for the order book.
pub(super) fn answer(job: JobId, draft: &ProjectDraft, unit: LengthUnit) -> Reply {
    let (project, sets) = match checked(draft) {
        Ok(checked) => checked,
        Err(problems) => {
            let told = |problem| sentence(problem, draft, unit);
            let problems = problems.iter().map(told).collect();
            return Reply::Refused { job, problems };
        }
    };
    let barrels: Vec<Id> = draft.barrels.iter().map(|entry| entry.id).collect();
    let search = draft.search.check().ok();
    let question = CutterQuestion {
        project: &project,
        barrels: &barrels,
        sets: &sets,
        new_price: search.and_then(|search| search.new_set_price),
    };
    let plan = plan_cutters(&question);
    let serving = |barrel: usize| {
        let uses = plan.serving(barrel).into_iter();
        uses.filter_map(|set| {
            let made = plan.uses[set][barrel]?;
            Some(ServingSet {
                name: sets[set].name().to_owned(),
                price: sets[set].price().into(),
                stock: project.slats[made.stock].name().to_owned(),
                pencils: made.pencils,
                gross_cost: made.gross_cost,
            })
        })
        .collect()
    };
    let served = draft.barrels.iter().enumerate().map(|(at, entry)| {
        let lines = plan.orders.iter().filter(|order| order.barrel == at);
        ServedBarrel {
            barrel: entry.id.0,
            name: entry.draft.name.clone(),
            gross: lines.map(|order| order.gross).sum(),
            sets: serving(at),
        }
    });
    let plan = CutterPlan {
        barrels: served.collect(),
        // Where none saves anything, the first is the one that newly serves most.
        best: (plan.proposals.first()).map(|best| new_set(best, &sets, draft)),
    };
    Reply::Cutters { job, plan }
}

/// What the plan rests on, or all that is wrong with it: of the whole project all but what makes no
/// difference here.
fn checked(draft: &ProjectDraft) -> Result<(Project, Vec<CutterSet>), Vec<Problem>> {
    let mut asked = draft.clone();
    asked.clear_making();
    asked.accuracies.clear();
    let project = asked.check()?;
    let sets = draft.cutter_sets.iter().enumerate();
    let sets: Result<Vec<CutterSet>, Vec<Problem>> = sets
        .map(|(at, entry)| {
            let set = entry.draft.check();
            set.map_err(|found| placed(Place::CutterSet(at), found))
        })
        .collect();
    Ok((project, sets?))
}

fn new_set(best: &Proposal, sets: &[CutterSet], draft: &ProjectDraft) -> NewCutterSet {
    let kind = match best.set {
        NewSet::Offered { set } => NewSetKind::Offered {
            name: sets[set].name().to_owned(),
        },
        NewSet::MadeToMeasure {
            barrel,
            pitch,
            widest,
            most,
        } => NewSetKind::MadeToMeasure {
            barrel: draft.barrels[barrel].draft.name.clone(),
            pitch_mm: pitch.in_millimetres(),
            widest_mm: widest.in_millimetres(),
            most,
        },
    };
    NewCutterSet {
        kind,
        price: best.price.into(),
        saving: best.saving,
        books_to_pay_back: best.books_to_pay_back(),
        newly_served: best.newly_served,
    }
}
