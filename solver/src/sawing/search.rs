//! From data to outcome.

use super::branches::Branches;
use super::certificate::{Certificate, step};
use super::data::SawingData;
use super::needs::Needs;
use super::pattern::CutPattern;
use super::plan::{SawingLimits, SawingOutcome, SawingPlan, SawingProgress};
use super::relaxation::{Relaxation, relax};
use super::sequential::Sequential;
use super::verify::{SawingFault, verify};

/// Finds the plan that saws what is wanted at least cost, in planks, volume or money.
///
/// `go_on` hears how far the search is after each round, and may stop it; the best plan so far and its
/// bound are then the outcome. Equal data and equal limits, with `go_on` always true, give an equal
/// outcome in every run.
///
/// # Errors
/// A [`SawingFault`] when the plan fails its recount or the bound its proof: a fault of this module,
/// never of the data.
///
/// ```
/// use solver::sawing::{SawingDraft, SawingLimits, SawingOutcome, saw};
/// // From the sources of the round-up property: the wood of 1.97 planks, and three are needed.
/// let draft = SawingDraft::along(132, 0, &[(44, 2), (33, 3), (12, 6)]);
/// let data = draft.check().unwrap();
/// let outcome = saw(&data, &SawingLimits::default(), &mut |_| true).unwrap();
/// let SawingOutcome::Proved { plan, proof } = outcome else { panic!("proved") };
/// assert_eq!((plan.cost, proof.bound(&data)), (3, Some(3)));
/// ```
pub fn saw(
    data: &SawingData,
    limits: &SawingLimits,
    go_on: &mut dyn FnMut(&SawingProgress) -> bool,
) -> Result<SawingOutcome, SawingFault> {
    let mut search = Search {
        data,
        go_on,
        state: SawingProgress {
            bound: i64::MIN,
            best: None,
            relaxations: 0,
            rounds: 0,
        },
        part: None,
        left: limits.relaxations,
        dive_left: 0,
        stopped: false,
    };
    let needs = Needs::of(data);
    let mut sequential = Sequential::new(data);
    for _ in 0..FIRST_PLANS {
        search.offer(sequential.plan(&needs));
    }
    if search.state.best.is_none()
        && let Some((at_least, certificate)) = search.missing()
    {
        let plan = search
            .part
            .take()
            .unwrap_or_else(|| SawingPlan::of(data, Vec::new()));
        verify(data, &plan)?;
        let is_proved = certificate.missing(data) == Some(at_least.cast_signed());
        return if is_proved {
            Ok(SawingOutcome::Short {
                plan,
                at_least,
                certificate,
            })
        } else {
            Err(SawingFault::Bound)
        };
    }
    let proof = Branches::grow(&mut search, needs);
    let bound = search.state.bound;
    if proof.bound(data).is_none_or(|proved| proved < bound) {
        return Err(SawingFault::Bound);
    }
    let Some(plan) = search.state.best.take() else {
        let plan = search
            .part
            .take()
            .unwrap_or_else(|| SawingPlan::of(data, Vec::new()));
        verify(data, &plan)?;
        return Ok(SawingOutcome::NoneFound { plan, bound, proof });
    };
    verify(data, &plan)?;
    Ok(if plan.cost <= bound {
        SawingOutcome::Proved { plan, proof }
    } else {
        SawingOutcome::WithinGap { plan, bound, proof }
    })
}

/// Plans made by value correction, at first and at each step of a dive.
const FIRST_PLANS: u32 = 40;
const STEP_PLANS: u32 = 4;
/// Patterns tried at one step of a dive.
const TRIED: usize = 4;
/// Shares nearer to a whole number than this are whole.
const ROUGH: f64 = 1e-6;

/// How long a dive may take.
#[derive(Clone, Copy, Debug)]
pub(super) struct Effort {
    /// How many times a pattern may be passed over that did not fail at once.
    pub(super) detours: usize,
    /// Relaxations.
    pub(super) relaxations: u64,
}

impl Effort {
    /// For the first dive: where there is one kind of plank, nothing else closes the gap.
    pub(super) fn first(data: &SawingData) -> Self {
        Self {
            detours: 3,
            relaxations: if data.planks().len() > 1 { 80 } else { 1_000 },
        }
    }

    /// For the others.
    pub(super) const LATER: Self = Self {
        detours: 0,
        relaxations: 25,
    };
}

/// What is known, and what is left of the limits.
pub(super) struct Search<'a> {
    pub(super) data: &'a SawingData,
    go_on: &'a mut dyn FnMut(&SawingProgress) -> bool,
    state: SawingProgress,
    /// The plan that leaves fewest missing, while none is whole.
    part: Option<SawingPlan>,
    left: u64,
    /// Relaxations left to the dive under way.
    dive_left: u64,
    stopped: bool,
}

impl Search<'_> {
    /// Takes a plan if it makes all that is wanted and costs less than the best, or, while there is none,
    /// if it leaves fewer blanks missing.
    fn offer(&mut self, cuts: Vec<(CutPattern, u64)>) {
        let plan = SawingPlan::of(self.data, cuts);
        if let Some(best) = &self.state.best
            && plan.cost >= best.cost
        {
            return;
        }
        let missing = |plan: &SawingPlan| plan.short(self.data).iter().sum::<u64>();
        if missing(&plan) == 0 {
            self.state.best = Some(plan);
        } else if self
            .part
            .as_ref()
            .is_none_or(|part| missing(&plan) < missing(part))
        {
            self.part = Some(plan);
        }
    }

    /// How many blanks must be missing at least, where planks are limited and some must be.
    fn missing(&mut self) -> Option<(u64, Certificate)> {
        let data = self.data.counting_missing();
        let mut needs = Needs::of(&data);
        needs.over.fill(0);
        let go_on = &mut self.go_on;
        let state = &self.state;
        let mut stopped = false;
        let relaxation = relax(&data, &needs, &[], &mut |_, _| {
            stopped = !go_on(state);
            !stopped
        })?;
        self.stopped |= stopped;
        let at_least = u64::try_from(relaxation.bound)
            .ok()
            .filter(|&bound| bound > 0)?;
        Some((at_least, relaxation.certificate))
    }

    /// Whether a plan can cost no more than this and be better than the best.
    pub(super) fn is_open(&self, bound: i64) -> bool {
        self.state
            .best
            .as_ref()
            .is_none_or(|best| bound <= best.cost - step(self.data))
    }

    /// Takes in that no plan costs less.
    pub(super) fn tell_bound(&mut self, bound: i64) {
        self.state.bound = self.state.bound.max(bound);
    }

    /// Whether nothing more is to be done.
    pub(super) fn is_over(&self) -> bool {
        self.stopped || self.left == 0 || !self.is_open(self.state.bound)
    }

    /// Planks in fractions, beginning with the patterns of another relaxation; nothing where the
    /// limits are reached or the solver fails.
    pub(super) fn relax(&mut self, needs: &Needs, known: &[CutPattern]) -> Option<Relaxation> {
        self.left = self.left.checked_sub(1)?;
        self.state.relaxations += 1;
        let (state, go_on) = (&self.state, &mut self.go_on);
        let mut stopped = false;
        let relaxation = relax(self.data, needs, known, &mut |_, _| {
            stopped = !go_on(state);
            !stopped
        })?;
        self.stopped |= stopped;
        self.state.rounds += u64::from(relaxation.rounds);
        Some(relaxation)
    }

    /// Takes whole planks from a relaxation, and solves the rest anew, until nothing is wanted. Where
    /// the rest can lead to nothing better, the next pattern is tried.
    pub(super) fn dive(&mut self, needs: &Needs, relaxation: &Relaxation, effort: Effort) {
        if self.is_over() {
            return;
        }
        self.dive_left = effort.relaxations;
        self.dive_from(needs, relaxation, &mut Vec::new(), effort.detours);
    }

    fn dive_from(
        &mut self,
        needs: &Needs,
        relaxation: &Relaxation,
        cuts: &mut Vec<(CutPattern, u64)>,
        detours: usize,
    ) {
        let depth = cuts.len();
        let mut detour = 0;
        for taken in choices(needs, relaxation) {
            let mut rest = needs.clone();
            for (pattern, count) in taken {
                rest.take(&pattern, count);
                cuts.push((pattern, count));
            }
            self.complete(&rest, cuts);
            if !rest.is_met() && !self.is_over() && self.dive_left > 0 {
                self.dive_left -= 1;
                let known = relaxation.patterns();
                let spent: i64 = cuts
                    .iter()
                    .map(|(pattern, count)| pattern.weight(self.data) * count.cast_signed())
                    .sum();
                if let Some(next) = self.relax(&rest, &known)
                    && self.is_open(spent + next.bound)
                {
                    self.dive_from(&rest, &next, cuts, detours - detour);
                    detour += 1;
                }
            }
            cuts.truncate(depth);
            if self.is_over() || self.dive_left == 0 || detour > detours {
                return;
            }
        }
    }

    /// Offers plans that begin with these planks.
    fn complete(&mut self, rest: &Needs, cuts: &[(CutPattern, u64)]) {
        let mut sequential = Sequential::new(self.data);
        for _ in 0..STEP_PLANS {
            let mut whole = cuts.to_vec();
            whole.extend(sequential.plan(rest));
            self.offer(whole);
        }
    }
}

/// Whole planks that are taken over: all whole parts of the shares; where there are none, one plank of
/// a pattern, the greatest share first.
fn choices(needs: &Needs, relaxation: &Relaxation) -> Vec<Vec<(CutPattern, u64)>> {
    let mut order: Vec<usize> = (0..relaxation.columns.len())
        .filter(|&at| relaxation.shares[at] > ROUGH)
        .collect();
    order.sort_by(|&one, &other| relaxation.shares[other].total_cmp(&relaxation.shares[one]));
    let mut left = needs.clone();
    let mut whole = Vec::new();
    for &at in &order {
        let pattern = &relaxation.columns[at].pattern;
        let count = ((relaxation.shares[at] + ROUGH).floor() as u64).min(left.room_for(pattern));
        if count > 0 {
            left.take(pattern, count);
            whole.push((pattern.clone(), count));
        }
    }
    if whole.is_empty() {
        // Any plan saws the largest of its blanks in one of the patterns that hold it: these first.
        let pivot = order
            .first()
            .and_then(|&at| relaxation.columns[at].made.first());
        let holds = |at: usize| {
            let made = &relaxation.columns[at].made;
            pivot.is_none_or(|(pivot, _)| made.iter().any(|(blank, _)| blank == pivot))
        };
        let (first, then): (Vec<usize>, Vec<usize>) = order.iter().partition(|&&at| holds(at));
        let one = |at: usize| vec![(relaxation.columns[at].pattern.clone(), 1)];
        first.into_iter().chain(then).take(TRIED).map(one).collect()
    } else {
        vec![whole]
    }
}
