//! From data to outcome: a quick plan, the relaxation, whole runs, then fewer slats.

use std::time::Duration;

use super::data::PurchaseData;
use super::greedy::{Sharing, sharings};
use super::model::{Answer, Finding, Goal, Question, solve};
use super::plan::{Obstacle, Progress, PurchaseLimits, PurchaseOutcome, PurchasePlan};
use super::rounding::whole_runs;
use super::verify::{PlanFault, verify};

/// Finds the packs that fill the order book at least cost.
///
/// `progress` hears the phases in order; the call cannot be stopped through it. Equal data and
/// equal [`PurchaseLimits::nodes`], with no time limit, give an equal outcome in every run.
///
/// # Errors
///
/// A [`PlanFault`] when the plan fails its recount: a fault of this module, never of the data.
///
/// ```
/// use solver::purchase::{
///     PencilOrder, PurchaseDraft, PurchaseLimits, PurchaseOutcome, SlatStock, plan,
/// };
///
/// // Nine pencils a sandwich: 16 sandwiches for one gross, 32 slats, 12 of them on hand.
/// // One pack of 50 at 20.00 beats two of 10 at 12.00.
/// let small = SlatStock { pack_slats: 10, pack_price: 1200, on_hand: 12, pack_limit: None };
/// let large = SlatStock { pack_slats: 50, pack_price: 2000, on_hand: 0, pack_limit: None };
/// let draft = PurchaseDraft {
///     orders: vec![PencilOrder { pencils: 144 }],
///     stocks: vec![small, large],
///     yields: vec![vec![9, 9]],
/// };
/// let data = draft.check().unwrap();
/// let outcome = plan(&data, &PurchaseLimits::default(), &mut |_| {}).unwrap();
/// let PurchaseOutcome::Proved { plan, .. } = outcome else { panic!("small and proved") };
/// assert_eq!((plan.packs, plan.cost), (vec![0, 1], 2000));
/// ```
pub fn plan(
    data: &PurchaseData,
    limits: &PurchaseLimits,
    progress: &mut dyn FnMut(Progress),
) -> Result<PurchaseOutcome, PlanFault> {
    let obstacles = lone_obstacles(data);
    if !obstacles.is_empty() {
        return Ok(PurchaseOutcome::Impossible { obstacles });
    }
    let outcome = Search::new(data, limits, progress).run();
    if let PurchaseOutcome::Proved { plan, .. } | PurchaseOutcome::WithinGap { plan, .. } = &outcome
    {
        verify(data, plan)?;
    }
    Ok(outcome)
}

/// Orders that cannot be filled even with all slats to themselves.
fn lone_obstacles(data: &PurchaseData) -> Vec<Obstacle> {
    let mut obstacles = Vec::new();
    for (order, line) in data.orders().iter().enumerate() {
        let stocks =
            (0..data.stocks().len()).filter(|&stock| data.pencils_per_sandwich(order, stock) > 0);
        let given = stocks.map(|stock| {
            data.sandwiches_from(stock, data.useful_packs(stock))
                * data.pencils_per_sandwich(order, stock)
        });
        let given: Vec<u64> = given.collect();
        let most: u64 = given.iter().sum();
        if line.pencils > 0 && given.is_empty() {
            obstacles.push(Obstacle::NoStock { order });
        } else if most < line.pencils {
            obstacles.push(Obstacle::TooFewSlats {
                order,
                most,
                short: line.pencils - most,
            });
        }
    }
    obstacles
}

/// Branches spent on each exact try to save slats at a cost that is settled.
const TIDYING_NODES: u64 = 1_000;

struct Search<'a> {
    data: &'a PurchaseData,
    progress: &'a mut dyn FnMut(Progress),
    /// The best plan so far.
    best: Option<PurchasePlan>,
    /// No plan costs less, hundredths; always a multiple of the price step.
    bound: i64,
    /// Branches used and left.
    nodes_used: u64,
    nodes_left: u64,
    time_left: Option<Duration>,
}

impl<'a> Search<'a> {
    fn new(
        data: &'a PurchaseData,
        limits: &PurchaseLimits,
        progress: &'a mut dyn FnMut(Progress),
    ) -> Self {
        Self {
            data,
            progress,
            best: None,
            bound: 0,
            nodes_used: 0,
            nodes_left: limits.nodes,
            time_left: limits.time,
        }
    }

    fn run(mut self) -> PurchaseOutcome {
        let sharings = sharings(self.data);
        for sharing in sharings.iter().filter(|sharing| sharing.fills_the_book()) {
            self.offer(sharing.runs.clone());
        }
        let cost = self.best_cost();
        (self.progress)(Progress::FirstPlan { cost });
        if self.best.is_none()
            && let Some(obstacle) = self.competition(sharings)
        {
            return PurchaseOutcome::Impossible {
                obstacles: vec![obstacle],
            };
        }
        self.cheapest_packs();
        self.cheapest_whole_runs();
        let bound = self.bound;
        match self.best_cost() {
            None => PurchaseOutcome::NoneFound { bound },
            Some(cost) if cost > bound => PurchaseOutcome::WithinGap {
                plan: self.into_plan(),
                bound,
            },
            Some(_) => {
                let fewest_slats = self.fewer_slats();
                PurchaseOutcome::Proved {
                    plan: self.into_plan(),
                    fewest_slats,
                }
            }
        }
    }

    fn into_plan(self) -> PurchasePlan {
        self.best
            .expect("called only when there is a plan with a cost")
    }

    fn best_cost(&self) -> Option<i64> {
        self.best.as_ref().map(|plan| plan.cost)
    }

    /// Whether the best plan is proved cheapest.
    fn settled(&self) -> bool {
        self.best_cost().is_some_and(|cost| cost <= self.bound)
    }

    /// Keeps a plan that can be carried out and ranks before the best so far.
    fn offer(&mut self, runs: Vec<Vec<u64>>) {
        let plan = PurchasePlan::for_runs(self.data, runs);
        if self
            .best
            .as_ref()
            .is_some_and(|best| best.rank() <= plan.rank())
            || verify(self.data, &plan).is_err()
        {
            return;
        }
        if self.best_cost().is_some_and(|cost| plan.cost < cost) {
            (self.progress)(Progress::BetterPlan { cost: plan.cost });
        }
        self.best = Some(plan);
    }

    fn offer_rounded(&mut self, answer: &Answer) {
        if let Some(runs) = whole_runs(self.data, &answer.packs, &answer.runs) {
            self.offer(runs);
        }
    }

    /// Takes over a bound on the cost, rounded up to the next cost there can be.
    fn raise_bound(&mut self, bound: u64) {
        let step = self.data.price_step().unsigned_abs();
        let bound = i64::try_from(bound.div_ceil(step).saturating_mul(step));
        // A bound above a plan that stood its recount would be a fault of the solver: it is
        // passed over, and the plan stays unproved.
        let sound = |&bound: &i64| self.best_cost().is_none_or(|cost| bound <= cost);
        self.bound = bound.ok().filter(sound).unwrap_or(0).max(self.bound);
        (self.progress)(Progress::Bound {
            bound: self.bound,
            nodes: self.nodes_used,
        });
    }

    /// Puts a question with at most `nodes` branches; `look` may stop it between slices.
    fn ask(
        &mut self,
        question: Question<'_>,
        nodes: u64,
        look: &mut dyn FnMut(&mut Self, &Finding) -> bool,
    ) -> Finding {
        let used_before = self.nodes_used;
        let (data, time) = (self.data, self.time_left);
        let nodes = nodes.min(self.nodes_left);
        let finding = solve(data, question, nodes, time, &mut |finding| {
            self.nodes_used = used_before + finding.nodes;
            look(self, finding)
        });
        self.nodes_used = used_before + finding.nodes;
        self.nodes_left = self.nodes_left.saturating_sub(finding.nodes);
        self.time_left = time.map(|time| time.saturating_sub(finding.elapsed));
        finding
    }

    /// Least number of missing pencils, when the quick way filled not every order. Offers a
    /// plan when it finds that none need be missing.
    fn competition(&mut self, sharings: Vec<Sharing>) -> Option<Obstacle> {
        let data = self.data;
        let mut sharing = sharings
            .into_iter()
            .min_by_key(|sharing| sharing.short.iter().sum::<u64>())?;
        let mut question = Question {
            goal: Goal::Shortage,
            whole_runs: false,
            packs: None,
            cost: None,
        };
        let mut at_least = self.ask(question, u64::MAX, &mut |_, _| true).bound;
        question.whole_runs = true;
        // Half of the branches are kept for the cost, in case there is a plan after all.
        let finding = self.ask(question, self.nodes_left / 2, &mut |_, _| true);
        at_least = at_least.max(finding.bound);
        if let Some(answer) = finding.best {
            let whole = |row: &Vec<f64>| row.iter().map(|&run| run.round() as u64).collect();
            let runs: Vec<Vec<u64>> = answer.runs.iter().map(whole).collect();
            let short = missing(data, &runs);
            if short.iter().sum::<u64>() < sharing.short.iter().sum() {
                sharing = Sharing { runs, short };
            }
        }
        if sharing.fills_the_book() {
            self.offer(sharing.runs);
            return None;
        }
        (at_least > 0).then_some(Obstacle::Competing {
            short: sharing.short,
            at_least,
        })
    }

    /// Whole packs and fractional runs: the bound, and by rounding mostly the plan as well.
    fn cheapest_packs(&mut self) {
        if self.settled() {
            return;
        }
        let question = Question {
            goal: Goal::Cost,
            whole_runs: false,
            packs: None,
            cost: None,
        };
        // A quarter of the branches is kept for whole runs.
        let nodes = self.nodes_left - self.nodes_left / 4;
        let finding = self.ask(question, nodes, &mut |search, finding| {
            search.learn_cost(finding);
            !search.settled()
        });
        self.learn_cost(&finding);
        if self.settled() {
            return;
        }
        if let Some(answer) = finding.best {
            let packs = Some(&answer.packs[..]);
            let question = Question {
                goal: Goal::Sandwiches,
                whole_runs: true,
                packs,
                cost: None,
            };
            let finding = self.ask(question, self.nodes_left / 2, &mut |_, finding| {
                finding.best.is_none()
            });
            self.offer_whole(&finding);
        }
    }

    /// The exact model, between the bound and the cost of the best plan.
    fn cheapest_whole_runs(&mut self) {
        if self.settled() {
            return;
        }
        let step = self.data.price_step();
        let cost = self.best_cost().map(|cost| (self.bound, cost - step));
        let question = Question {
            goal: Goal::Cost,
            whole_runs: true,
            packs: None,
            cost,
        };
        let finding = self.ask(question, u64::MAX, &mut |search, finding| {
            search.learn_within_window(finding);
            !search.settled()
        });
        self.learn_within_window(&finding);
        if let (true, Some(cost)) = (finding.none_exists, self.best_cost()) {
            // Nothing is cheaper than the best plan.
            self.bound = cost;
        }
    }

    fn learn_cost(&mut self, finding: &Finding) {
        if let Some(answer) = &finding.best {
            self.offer_rounded(answer);
        }
        self.raise_bound(finding.bound);
    }

    /// As the model holds only plans cheaper than the best one, its bound ends at that cost.
    fn learn_within_window(&mut self, finding: &Finding) {
        self.offer_whole(finding);
        let most = self.best_cost().map_or(u64::MAX, i64::unsigned_abs);
        self.raise_bound(finding.bound.min(most));
    }

    fn offer_whole(&mut self, finding: &Finding) {
        if let Some(answer) = &finding.best {
            let whole = |row: &Vec<f64>| row.iter().map(|&run| run.round() as u64).collect();
            self.offer(answer.runs.iter().map(whole).collect());
        }
    }

    /// Seeks fewer slats at the proved cost; true when it is proved that there are none.
    ///
    /// First with fractional runs, then with whole runs for the packs so found, last exactly.
    fn fewer_slats(&mut self) -> bool {
        let Some(cost) = self.best_cost() else {
            return false;
        };
        (self.progress)(Progress::FewerSlats { cost });
        let question = Question {
            goal: Goal::Sandwiches,
            whole_runs: false,
            packs: None,
            cost: Some((cost, cost)),
        };
        let finding = self.fewer_slats_by(question, u64::MAX);
        if self.takes_only(finding.bound) {
            return true;
        }
        if let Some(answer) = finding.best {
            let fixed = Question {
                whole_runs: true,
                packs: Some(&answer.packs),
                cost: None,
                ..question
            };
            self.fewer_slats_by(fixed, TIDYING_NODES);
            if self.takes_only(finding.bound) {
                return true;
            }
        }
        let finding = self.fewer_slats_by(
            Question {
                whole_runs: true,
                ..question
            },
            TIDYING_NODES,
        );
        self.takes_only(finding.bound)
    }

    fn fewer_slats_by(&mut self, question: Question<'_>, nodes: u64) -> Finding {
        let finding = self.ask(question, nodes, &mut |search, finding| {
            search.offer_either(question.whole_runs, finding);
            !search.takes_only(finding.bound)
        });
        self.offer_either(question.whole_runs, &finding);
        finding
    }

    /// Whether the best plan runs no more than so many sandwiches.
    fn takes_only(&self, sandwiches: u64) -> bool {
        self.best
            .as_ref()
            .is_some_and(|plan| plan.slats_used <= 2 * sandwiches)
    }

    fn offer_either(&mut self, whole_runs: bool, finding: &Finding) {
        if whole_runs {
            self.offer_whole(finding);
        } else if let Some(answer) = &finding.best {
            self.offer_rounded(answer);
        }
    }
}

/// Pencils missing of each order.
fn missing(data: &PurchaseData, runs: &[Vec<u64>]) -> Vec<u64> {
    let orders = data.orders().iter().zip(runs).enumerate();
    let missing = orders.map(|(order, (line, row))| {
        let made = row
            .iter()
            .enumerate()
            .map(|(stock, run)| run * data.pencils_per_sandwich(order, stock));
        line.pencils.saturating_sub(made.sum())
    });
    missing.collect()
}
