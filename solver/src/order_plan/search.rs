//! From data to outcome: a quick plan, the relaxation with cuts, plans near it, branches.

use super::clash::clash;
use super::data::OrderPlanData;
use super::draft::PlanAim;
use super::greedy::greedy_plan;
use super::model::{Cut, Finding, Point, Question, Whole, broken, dive, solve};
use super::neighbourhood::Neighbourhood;
use super::outcome::{OrderPlanLimits, OrderPlanOutcome, OrderPlanProgress};
use super::plan::OrderPlan;
use super::ranges::Ranges;
use super::rounding::{exact_plan, whole_plan};
use super::verify::{OrderPlanFault, verify};

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
    go_on: &mut dyn FnMut(&OrderPlanProgress) -> bool,
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
    go_on: &mut dyn FnMut(&OrderPlanProgress) -> bool,
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
    // What is reported stays the aim that was asked for.
    let reported = OrderPlanProgress {
        value: Some(value),
        bound,
        steps: limits.steps,
    };
    let outcome = Search::new(&data, limits, &mut |_| go_on(&reported)).run();
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
/// Branches for a plan near a point, and for whole sandwiches in a plan.
const NEAR_NODES: u64 = 200;
const POLISH_NODES: u64 = 100;
/// Runs beyond which whole sandwiches are not sought among so few branches.
const MOST_POLISHED: usize = 60;
/// Branches for a part of a plan, and how often the parts are formed in another way.
const PART_NODES: u64 = 150;
const IMPROVING_ROUNDS: usize = 6;

pub(super) struct Search<'a> {
    data: &'a OrderPlanData,
    go_on: &'a mut dyn FnMut(&OrderPlanProgress) -> bool,
    ranges: Ranges,
    cuts: Vec<Cut>,
    best: Option<OrderPlan>,
    bound: i64,
    steps: u64,
    limits: OrderPlanLimits,
    stopped: bool,
}

impl<'a> Search<'a> {
    fn new(
        data: &'a OrderPlanData,
        limits: &OrderPlanLimits,
        go_on: &'a mut dyn FnMut(&OrderPlanProgress) -> bool,
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
        let Some(root) = self.root() else {
            return self.ended(true);
        };
        self.offer_rounded(&root);
        self.near(&root);
        self.improve();
        let mut none_exists = false;
        let levels: &[Whole] = if self.data.periods() == 1 {
            &[Whole::Packs, Whole::Runs]
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

    fn value(&self) -> Option<i64> {
        self.best.as_ref().map(|best| best.value(self.data.aim()))
    }

    /// Whether nothing more is to be done.
    fn is_over(&self) -> bool {
        let is_near = self.value().is_some_and(|value| {
            let gap = i128::from(value - self.bound) * 1_000_000;
            is_settled(self.data, value, self.bound)
                || gap <= i128::from(self.limits.gap) * i128::from(self.bound)
        });
        self.stopped || is_near || self.steps >= self.limits.steps
    }

    fn tell(&mut self) {
        let progress = OrderPlanProgress {
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

    fn offer_rounded(&mut self, point: &Point) -> bool {
        whole_plan(self.data, &self.ranges, point).is_some_and(|plan| self.offer(plan))
    }

    fn offer_exact(&mut self, point: &Point) -> bool {
        exact_plan(self.data, point).is_some_and(|plan| self.offer(plan))
    }

    /// Takes in that no plan comes to less.
    fn raise_bound(&mut self, bound: i64) {
        let step = step(self.data);
        let bound = bound.div_euclid(step) * step + if bound % step > 0 { step } else { 0 };
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

    /// Puts a question within what is left of the steps and hands every better point to `look`.
    fn ask(
        &mut self,
        ranges: &Ranges,
        (whole, with_reserve): (Whole, bool),
        nodes: u64,
        look: &mut dyn FnMut(&mut Self, &Finding),
    ) -> Finding {
        let cuts = self.cuts.clone();
        let question = Question {
            ranges,
            cuts: &cuts,
            whole,
            most: self.value().map(|value| value - least_gain(self.data)),
            with_reserve,
        };
        let before = self.steps;
        let nodes = nodes.min(self.limits.steps.saturating_sub(before));
        let data = self.data;
        let mut finding = solve(data, question, nodes, &mut |finding| {
            self.steps = before + finding.nodes;
            look(self, finding);
            !self.is_over()
        });
        self.steps = before + finding.nodes + 1;
        // Only plans better than the best were asked for: if there are none, its value is the bound.
        if let Some(most) = question.most {
            let beyond = most + 1;
            finding.bound = if finding.none_exists {
                beyond
            } else {
                finding.bound.min(beyond)
            };
        }
        finding
    }

    /// Makes choices one after the other within ranges; every point on the way is rounded.
    fn dive(&mut self, ranges: &Ranges) {
        let cuts = self.cuts.clone();
        let question = Question {
            ranges,
            cuts: &cuts,
            whole: Whole::Nothing,
            most: None,
            with_reserve: false,
        };
        let mut last = None;
        let data = self.data;
        let steps = dive(data, question, &mut |point, value| {
            let is_open = self.value().is_none_or(|best| value < best);
            if is_open {
                self.offer_rounded(point);
                last = Some(point.clone());
            }
            is_open && !self.is_over()
        });
        self.steps += steps;
        if let Some(point) = last {
            self.polish(&point);
        }
    }

    /// A search near a point: only set-ups, orders and tiers that it chooses in part.
    fn near(&mut self, point: &Point) {
        if self.is_over() {
            return;
        }
        let all = self.ranges.clone();
        self.dive(&all);
        let ranges = self.ranges.near(point);
        let finding = self.ask(&ranges, (Whole::Choices, false), NEAR_NODES, &mut |_, _| ());
        if let Some(point) = finding.best {
            self.take(&point);
        }
    }

    /// A plan near a point whose choices are whole.
    fn take(&mut self, point: &Point) {
        self.offer_exact(point);
        self.offer_rounded(point);
        self.polish(point);
    }

    /// Whole packs and sandwiches for choices that are made.
    fn polish(&mut self, point: &Point) {
        if self.is_over() {
            return;
        }
        let ranges = self.ranges.chosen(point);
        let packs = self.ask(&ranges, (Whole::Packs, true), POLISH_NODES, &mut |_, _| ());
        if let Some(point) = packs.best {
            self.offer_rounded(&point);
        }
        let runs = ranges.runs.iter().flatten().filter(|most| **most > 0);
        if self.is_over() || runs.count() > MOST_POLISHED {
            return;
        }
        let runs = self.ask(&ranges, (Whole::Runs, false), POLISH_NODES, &mut |_, _| ());
        if let Some(point) = runs.best {
            self.offer_exact(&point);
            self.offer_rounded(&point);
        }
    }

    /// Plans parts of the best plan anew until no part yields a better one.
    fn improve(&mut self) {
        for round in 0..IMPROVING_ROUNDS {
            let mut is_better = false;
            for part in Neighbourhood::parts(self.data, round) {
                let Some(best) = self.best.as_ref().filter(|_| !self.is_over()) else {
                    return;
                };
                let before = best.value(self.data.aim());
                let ranges = part.around(self.data, &self.ranges, best);
                self.dive(&ranges);
                let finding =
                    self.ask(&ranges, (Whole::Choices, false), PART_NODES, &mut |_, _| ());
                if let Some(point) = finding.best {
                    self.take(&point);
                }
                is_better |= self.value() < Some(before);
            }
            if !is_better && round > 0 {
                break;
            }
        }
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
        let finding = self.ask(&ranges, (whole, false), nodes, &mut |search, finding| {
            let most = search.value().map_or(i64::MAX, |value| value);
            search.raise_bound(finding.bound.min(most));
            if let Some(point) = &finding.best
                && last.as_ref() != Some(point)
            {
                search.offer_rounded(point);
                last = Some(point.clone());
            }
        });
        self.raise_bound(finding.bound);
        if let Some(point) = finding.best {
            self.take(&point);
        }
        finding.none_exists
    }
}

/// Whether no plan can be better.
fn is_settled(data: &OrderPlanData, value: i64, bound: i64) -> bool {
    value - bound < least_gain(data)
}

/// Least by which a better plan must be better: a hundredth of the currency, a slat, a change-over.
fn least_gain(data: &OrderPlanData) -> i64 {
    match data.aim() {
        PlanAim::Cost => step(data).max(1_000),
        PlanAim::Timber | PlanAim::Changeovers => step(data),
    }
}

/// A number of which every value of the aim is a multiple.
fn step(data: &OrderPlanData) -> i64 {
    let amounts: Vec<i64> = match data.aim() {
        PlanAim::Changeovers => vec![1],
        PlanAim::Timber => {
            let packs = (0..data.offers().len()).map(|offer| data.pack_volume(offer));
            let sawn = data.stocks().iter().filter(|line| line.sawing.is_some());
            packs
                .chain(sawn.map(|line| i64::from(line.cubic_millimetres)))
                .collect()
        }
        PlanAim::Cost => {
            let mut amounts = Vec::new();
            for setup in 0..data.setups().len() {
                amounts.push(data.run_cost(setup));
                for period in 0..data.periods() {
                    let (change, machine) = data.changeover_parts(setup, period);
                    amounts.push(change + machine);
                }
            }
            for offer in data.offers() {
                amounts.push(1_000 * offer.order_cost);
                amounts.extend(offer.tiers.iter().map(|tier| 1_000 * tier.pack_price));
            }
            for line in data.stocks() {
                amounts.push(line.holding);
                amounts.extend(line.sawing.map(|sawing| sawing.thousand_cost));
            }
            amounts.extend(data.pencils().iter().map(|line| line.holding));
            amounts
        }
    };
    amounts.into_iter().fold(0, greatest_common_divisor).max(1)
}

fn greatest_common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 {
        a
    } else {
        greatest_common_divisor(b, a % b)
    }
}
