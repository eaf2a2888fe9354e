//! The packs that fill the order book.

use std::time::Duration;

use solver::purchase::{self as search, PurchaseLimits};
use solver::{LengthUnit, OrderBook, ProjectDraft, Seam, SearchDraft, Way};

use super::sparing::Sparing;
use super::wording::sentence;
use crate::protocol::{
    JobId, MOST_SECONDS, Progress, Purchase, PurchaseList, Reply, RunLine, StockLine, Totals,
};

/// Plans the purchase within a time limit.
pub(super) fn answer(
    job: JobId,
    mut draft: ProjectDraft,
    seconds: u32,
    unit: LengthUnit,
    tell: &mut dyn FnMut(Reply),
) -> Reply {
    // The turn of the layout that is looked at, the search for a better one, the saw shop, the heads and
    // the run have no say in what is bought, so they may hold anything.
    draft.layout.way = Way::Usual(Seam::AnyWay);
    draft.search = SearchDraft::new();
    draft.clear_making();
    let project = match draft.check() {
        Ok(project) => project,
        Err(problems) => {
            let told = |problem| sentence(problem, &draft, unit);
            let problems = problems.iter().map(told).collect();
            return Reply::Refused { job, problems };
        }
    };
    let book = match OrderBook::new(&project) {
        Ok(book) => book,
        Err(problems) => {
            let problems = problems.iter().map(ToString::to_string).collect();
            return Reply::Refused { job, problems };
        }
    };
    let limits = limits(seconds);
    let mut sparing = Sparing::default();
    let purchase = book.purchase(&limits, &mut |progress| {
        if sparing.tells_next() {
            let progress = told(progress);
            tell(Reply::Progress { job, progress });
        }
    });
    match purchase {
        Ok(purchase) => Reply::Purchased {
            job,
            purchase: Names { draft: &draft }.purchase(purchase),
        },
        Err(fault) => Reply::Fault {
            job: Some(job),
            reason: format!(
                "The plan did not stand its recount, so it is not shown ({fault}). \
                 Change an order a little and try again"
            ),
        },
    }
}

/// A time limit, and beside it one in branches that a quick machine reaches first: it then gives
/// the same answer as every other quick machine.
fn limits(seconds: u32) -> PurchaseLimits {
    const BRANCHES_A_SECOND: u64 = 1_000;
    let seconds = u64::from(seconds.clamp(1, MOST_SECONDS));
    PurchaseLimits {
        time: Some(Duration::from_secs(seconds)),
        nodes: seconds * BRANCHES_A_SECOND,
    }
}

fn told(progress: search::Progress) -> Progress {
    match progress {
        search::Progress::FirstPlan { cost } => Progress::FirstPlan {
            cost: cost.map(Into::into),
        },
        search::Progress::Bound { bound, .. } => Progress::Bound {
            bound: bound.into(),
        },
        search::Progress::BetterPlan { cost } => Progress::BetterPlan { cost: cost.into() },
        search::Progress::FewerSlats { cost } => Progress::FewerSlats { cost: cost.into() },
    }
}

/// Puts names in the place of places in lists.
struct Names<'a> {
    draft: &'a ProjectDraft,
}

impl Names<'_> {
    fn purchase(&self, purchase: solver::Purchase) -> Purchase {
        match purchase {
            solver::Purchase::Cheapest { list, fewest_slats } => Purchase::Cheapest {
                list: self.list(&list),
                fewest_slats,
            },
            solver::Purchase::WithinGap { list, bound, gap } => Purchase::WithinGap {
                list: self.list(&list),
                bound: bound.into(),
                gap,
            },
            solver::Purchase::NoneFound { bound } => Purchase::NoneFound {
                bound: bound.into(),
            },
            solver::Purchase::Impossible { obstacles } => Purchase::Impossible { obstacles },
        }
    }

    fn list(&self, list: &solver::PurchaseList) -> PurchaseList {
        PurchaseList {
            stocks: list.stocks.iter().map(|line| self.stock(line)).collect(),
            runs: list.runs.iter().map(|line| self.run(line)).collect(),
            totals: totals(&list.totals),
        }
    }

    fn stock(&self, line: &solver::StockLine) -> StockLine {
        let slat = &self.draft.slats[line.stock];
        StockLine {
            slat: slat.id.0,
            slat_name: slat.draft.name.clone(),
            packs: line.packs.into(),
            slats_bought: line.slats_bought.into(),
            cost: line.cost.into(),
            slats_used: line.slats_used.into(),
            slats_from_hand: line.slats_from_hand.into(),
            slats_left: line.slats_left.into(),
        }
    }

    fn run(&self, line: &solver::RunLine) -> RunLine {
        let barrel = &self.draft.barrels[line.barrel];
        let slat = &self.draft.slats[line.stock];
        RunLine {
            // At most as many orders as can be planned at once.
            order: line.order as u32,
            barrel: barrel.id.0,
            barrel_name: barrel.draft.name.clone(),
            slat: slat.id.0,
            slat_name: slat.draft.name.clone(),
            way: Way::Usual(line.seam).into(),
            pencils_per_sandwich: line.pencils_per_sandwich,
            sandwiches: line.sandwiches.into(),
            pencils: line.pencils.into(),
        }
    }
}

fn totals(totals: &solver::Totals) -> Totals {
    Totals {
        cost: totals.cost.into(),
        slats_bought: totals.slats_bought.into(),
        slats_used: totals.slats_used.into(),
        wood_bought_mm3: totals.wood_bought.in_cubic_millimetres(),
        pencils_ordered: totals.pencils_ordered.into(),
        pencils_over: totals.pencils_over.into(),
        cost_per_gross: totals.cost_per_gross,
    }
}
