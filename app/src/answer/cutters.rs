//! Which cutter sets make which barrels, and the one more that saves most.

use solver::{LengthUnit, NewSet, ProjectDraft, Proposal};

use super::wording::sentence;
use crate::protocol::{
    CutterPlan, JobId, NewCutterSet, NewSetKind, Reply, ServedBarrel, ServingSet,
};

/// Plans cutter sets for the order book.
pub(super) fn answer(job: JobId, draft: &ProjectDraft, unit: LengthUnit) -> Reply {
    let plan = match draft.plan_cutters() {
        Ok(plan) => plan,
        Err(problems) => {
            let told = |problem| sentence(problem, draft, unit);
            let problems = problems.iter().map(told).collect();
            return Reply::Refused { job, problems };
        }
    };
    // The plan keeps the places of the lists.
    let price = |set: usize| {
        draft.cutter_sets[set]
            .draft
            .check()
            .map_or(0, |set| set.price())
    };
    let serving = |barrel: usize| {
        let uses = plan.serving(barrel).into_iter();
        uses.filter_map(|set| {
            let made = plan.uses[set][barrel]?;
            Some(ServingSet {
                name: draft.cutter_sets[set].draft.name.clone(),
                price: price(set).into(),
                stock: draft.slats[made.stock].draft.name.clone(),
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
        best: (plan.proposals.first()).map(|best| new_set(best, draft)),
    };
    Reply::Cutters { job, plan }
}

/// One more set, in the words of the conversation.
fn new_set(best: &Proposal, draft: &ProjectDraft) -> NewCutterSet {
    let kind = match best.set {
        NewSet::Offered { set } => NewSetKind::Offered {
            name: draft.cutter_sets[set].draft.name.clone(),
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
