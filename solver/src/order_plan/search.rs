//! From data to outcome: a quick plan, the relaxation with cuts, plans near it, branches.

use super::certifying::certified_plan;
use super::clash::clash;
use super::data::OrderPlanData;
use super::draft::PlanAim;
use super::fault::OrderPlanFault;
use super::gain::{is_settled, least_gain, step};
use super::greedy::greedy_plan;
use super::model::{Cut, Finding, Point, Question, Whole, broken, solve};
use super::outcome::{OrderPlanLimits, OrderPlanOutcome, OrderPlanProgress};
use super::plan::OrderPlan;
use super::ranges::Ranges;
use super::rounding::{exact_plan, whole_plan};
use super::verify::verify;

/// Finds the best plan.
///
/// `go_on` hears the best plan's value and the bound on the way and may stop the search by `false`;
/// then the best plan so far is handed back. Equal data and equal limits give an equal outcome in every
/// run, where `go_on` does not stop it. Where the aim is not the cost, a third of the steps goes to the
/// cheapest plan among those that come to no more.
///
/// ```
/// use solver::order_plan::{
///     Laid, LineSetup, Machine, Offer, OrderPlanDraft, OrderPlanLimits, OrderPlanOutcome,
///     PencilDemand, PriceTier, Pricing, StockLine, plan_orders,
/// };
/// // Two gross now and two later, nine pencils a sandwich: 32 sandwiches or 64 slats each time.
/// let draft = OrderPlanDraft {
///     periods: 2,
///     pencils: vec![PencilDemand { holding: 20_000, ..PencilDemand::due(&[288, 288]) }],
///     stocks: vec![StockLine::default()],
///     setups: vec![LineSetup {
///         laid: vec![Laid { pencil: 0, leads: 9, good: 1_000_000 }],
///         bottom: 0,
///         top: 0,
///         milliseconds: 900,
///         changeover_cost: vec![5_000, 5_000],
///         changeover_seconds: 600,
///         credit: 0,
///     }],
///     offers: vec![Offer {
///         stock: 0,
///         pack_slats: 64,
///         tiers: vec![PriceTier { from_packs: 1, pack_price: 1_000 }],
///         pricing: Pricing::AllUnits,
///         order_cost: 0,
///         least_packs: 0,
///         most_packs: 10,
///         most_packs_in_all: None,
///         lead_periods: 0,
///         certified: false,
///     }],
///     machine: Machine { hour_cost: 0, seconds: vec![None, None] },
///     ..OrderPlanDraft::default()
/// };
/// let data = draft.check().unwrap();
/// let outcome = plan_orders(&data, &OrderPlanLimits::default(), &mut |_| true).unwrap();
/// let OrderPlanOutcome::Proved { plan, .. } = outcome else { panic!("small and proved") };
/// // To hold 288 pencils would cost 57.60, to change over once more costs 50.00.
/// assert_eq!(plan.runs, [[32, 32]]);
/// assert_eq!(plan.packs[0].iter().sum::<u64>(), 2);
/// assert_eq!(plan.cost.total(), 1_000 * (2 * 5_000 + 2 * 1_000));
/// ```
///
/// # Errors
/// An [`OrderPlanFault`] when the plan fails its recount: a fault of this module, never of the data.
pub fn plan_orders(
    data: &OrderPlanData,
    limits: &OrderPlanLimits,
    go_on: &mut dyn FnMut(&OrderPlanProgress<'_>) -> bool,
) -> Result<OrderPlanOutcome, OrderPlanFault> {
    let mut limits = *limits;
    if data.aim() != PlanAim::Cost {
        limits.steps = limits.steps * 2 / 3;
    }
    let mut outcome = Search::new(data, &limits, go_on).run();
    if let OrderPlanOutcome::Proved { plan, bound } | OrderPlanOutcome::WithinGap { plan, bound } =
        &mut outcome
    {
        if data.aim() != PlanAim::Cost {
            limits.steps /= 2;
            if let Some(cheaper) = cheapest_of_those(data, plan, *bound, &limits, go_on) {
                *plan = cheaper;
            }
        }
        verify(data.draft(), plan)?;
    }
    Ok(outcome)
}

/// A cheaper plan that comes to no more in the aim, which is not the cost.
fn cheapest_of_those(
    data: &OrderPlanData,
    plan: &OrderPlan,
    bound: i64,
    limits: &OrderPlanLimits,
    go_on: &mut dyn FnMut(&OrderPlanProgress<'_>) -> bool,
) -> Option<Box<OrderPlan>> {
    let mut draft = data.draft().clone();
    let value = plan.value(data.aim());
    match data.aim() {
        PlanAim::Cost => return None,
        PlanAim::Timber => draft.limits.cubic_millimetres = Some(value),
        PlanAim::Changeovers => draft.limits.changeovers = u64::try_from(value).ok(),
    }
    draft.aim = PlanAim::Cost;
    let data = OrderPlanData::new(draft);
    let outcome = Search::new(&data, limits, &mut |progress| {
        // What is reported stays the aim that was asked for.
        go_on(&OrderPlanProgress {
            best: progress.best.or(Some(plan)),
            value: Some(value),
            bound,
            steps: limits.steps,
        })
    })
    .run();
    match outcome {
        OrderPlanOutcome::Proved { plan: found, .. }
        | OrderPlanOutcome::WithinGap { plan: found, .. }
            if found.cost.total() < plan.cost.total() =>
        {
            Some(found)
        }
        _ => None,
    }
}

/// Rounds of cuts at the root.
const ROUNDS: u32 = 30;
/// Least share by which a round of cuts must raise the relaxation to be followed by another.
const RISE: f64 = 2e-4;

pub(super) struct Search<'a> {
    pub(super) data: &'a OrderPlanData,
    go_on: &'a mut dyn FnMut(&OrderPlanProgress<'_>) -> bool,
    pub(super) ranges: Ranges,
    pub(super) cuts: Vec<Cut>,
    pub(super) best: Option<OrderPlan>,
    bound: i64,
    pub(super) steps: u64,
    limits: OrderPlanLimits,
    stopped: bool,
}

impl<'a> Search<'a> {
    fn new(
        data: &'a OrderPlanData,
        limits: &OrderPlanLimits,
        go_on: &'a mut dyn FnMut(&OrderPlanProgress<'_>) -> bool,
    ) -> Self {
        Self {
            data,
            go_on,
            ranges: Ranges::new(data),
            cuts: Vec::new(),
            best: None,
            bound: 0,
            steps: 0,
            limits: *limits,
            stopped: false,
        }
    }

    fn run(mut self) -> OrderPlanOutcome {
        if let Some(plan) = greedy_plan(self.data, &self.ranges) {
            self.offer(plan);
        }
        if let Some(plan) = certified_plan(self.data) {
            self.offer(plan);
        }
        let Some(root) = self.root() else {
            return self.ended(true);
        };
        self.offer_rounded(&root);
        self.near(&root);
        self.improve();
        let mut none_exists = false;
        // In one period the choices are few: the whole model is searched at once.
        let levels: &[Whole] = if self.data.periods() == 1 {
            &[Whole::Runs]
        } else {
            &[Whole::Choices, Whole::Packs, Whole::Runs]
        };
        for &whole in levels {
            if self.is_over() {
                break;
            }
            none_exists |= self.branch(whole);
        }
        self.ended(none_exists)
    }

    fn ended(self, none_exists: bool) -> OrderPlanOutcome {
        let bound = self.bound;
        match self.best {
            Some(plan) => {
                let plan = Box::new(plan);
                if is_settled(self.data, plan.value(self.data.aim()), bound) {
                    OrderPlanOutcome::Proved { plan, bound }
                } else {
                    OrderPlanOutcome::WithinGap { plan, bound }
                }
            }
            None if none_exists => OrderPlanOutcome::NoPlan {
                clash: clash(self.data),
            },
            None => OrderPlanOutcome::NoneFound { bound },
        }
    }

    pub(super) fn value(&self) -> Option<i64> {
        self.best.as_ref().map(|best| best.value(self.data.aim()))
    }

    /// Whether nothing more is to be done.
    pub(super) fn is_over(&self) -> bool {
        let is_near = self.value().is_some_and(|value| {
            let gap = i128::from(value - self.bound) * 1_000_000;
            is_settled(self.data, value, self.bound)
                || gap <= i128::from(self.limits.gap) * i128::from(self.bound)
        });
        self.stopped || is_near || self.steps >= self.limits.steps
    }

    fn tell(&mut self) {
        let progress = OrderPlanProgress {
            best: self.best.as_ref(),
            value: self.value(),
            bound: self.bound,
            steps: self.steps,
        };
        self.stopped |= !(self.go_on)(&progress);
    }

    /// Keeps a plan that can be carried out and is better than the best so far.
    fn offer(&mut self, plan: OrderPlan) -> bool {
        let aim = self.data.aim();
        let rank = |plan: &OrderPlan| (plan.value(aim), plan.cost.total());
        let is_better = self
            .best
            .as_ref()
            .is_none_or(|best| rank(&plan) < rank(best));
        if !is_better || verify(self.data.draft(), &plan).is_err() {
            return false;
        }
        self.best = Some(plan);
        self.tell();
        true
    }

    pub(super) fn offer_rounded(&mut self, point: &Point) -> bool {
        whole_plan(self.data, &self.ranges, point).is_some_and(|plan| self.offer(plan))
    }

    pub(super) fn offer_exact(&mut self, point: &Point) -> bool {
        exact_plan(self.data, point).is_some_and(|plan| self.offer(plan))
    }

    /// Takes in that no plan comes to less.
    fn raise_bound(&mut self, bound: i64) {
        let step = step(self.data);
        let over = bound.rem_euclid(step);
        let bound = if over > 0 {
            bound.saturating_add(step - over)
        } else {
            bound
        };
        // A bound above a plan that stood its recount would be a fault of the solver: it is
        // passed over, and the plan stays unproved.
        if self.value().is_none_or(|value| bound <= value) && bound > self.bound {
            self.bound = bound;
        }
        self.tell();
    }

    /// The relaxation, with cuts until they raise it little; nothing where there is no solution.
    fn root(&mut self) -> Option<Point> {
        let mut point = None;
        for round in 0..=ROUNDS {
            let question = Question {
                ranges: &self.ranges,
                cuts: &self.cuts,
                whole: Whole::Nothing,
                most: None,
                with_reserve: false,
            };
            let finding = solve(self.data, question, 0, &mut |_| true);
            self.steps += 1;
            if finding.none_exists {
                return None;
            }
            let Some(found) = finding.best else {
                // The solver failed: the point before is good enough.
                break;
            };
            let before = self.bound;
            self.raise_bound(finding.bound);
            self.cuts.retain(|cut| cut.is_tight(self.data, &found));
            let new = broken(self.data, &self.ranges, &found);
            point = Some(found);
            let rise = (self.bound - before) as f64;
            let is_slow = round > 0 && rise < RISE * self.bound as f64;
            if new.is_empty() || is_slow || self.is_over() {
                break;
            }
            self.cuts.extend(new);
        }
        // Where the solver fails at once there is no point to start from, and nothing is said.
        point.or_else(|| Some(Point::nothing(self.data)))
    }

    /// Puts a question within what is left of the steps; `look` sees each finding with the bound that
    /// follows for all plans. Only plans better than the best are asked for, so the bound ends there: if
    /// there are none, it is just below the best.
    pub(super) fn ask(
        &mut self,
        ranges: &Ranges,
        (whole, with_reserve): (Whole, bool),
        nodes: u64,
        look: &mut dyn FnMut(&mut Self, &Finding, i64),
    ) -> Finding {
        let cuts = self.cuts.clone();
        let question = Question {
            ranges,
            cuts: &cuts,
            whole,
            most: self.value().map(|value| value - least_gain(self.data)),
            with_reserve,
        };
        let beyond = question.most.map_or(i64::MAX, |most| most + 1);
        let before = self.steps;
        let nodes = nodes.min(self.limits.steps.saturating_sub(before));
        let data = self.data;
        let mut finding = solve(data, question, nodes, &mut |finding| {
            self.steps = before + finding.nodes;
            look(self, finding, finding.bound.min(beyond));
            !self.is_over()
        });
        self.steps = before + finding.nodes + 1;
        finding.bound = if finding.none_exists && question.most.is_some() {
            beyond
        } else {
            finding.bound.min(beyond)
        };
        finding
    }

    /// The whole model; true when it is proved that nothing better, or nothing, exists.
    fn branch(&mut self, whole: Whole) -> bool {
        let ranges = self.ranges.clone();
        let mut last: Option<Point> = None;
        let nodes = match whole {
            Whole::Runs => u64::MAX,
            // A part is kept for what must be whole besides.
            _ => (self.limits.steps.saturating_sub(self.steps)) * 3 / 4,
        };
        let finding = self.ask(
            &ranges,
            (whole, false),
            nodes,
            &mut |search, finding, bound| {
                search.raise_bound(bound);
                if let Some(point) = &finding.best
                    && last.as_ref() != Some(point)
                {
                    search.offer_rounded(point);
                    last = Some(point.clone());
                }
            },
        );
        self.raise_bound(finding.bound);
        if let Some(point) = finding.best {
            self.take(&point);
        }
        finding.none_exists
    }
}
