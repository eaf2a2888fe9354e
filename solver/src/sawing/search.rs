//! From data to outcome.

use super::branches::Branches;
use super::certificate::{Certificate, step};
use super::data::SawingData;
use super::diving::Diving;
use super::needs::Needs;
use super::pattern::CutPattern;
use super::plan::{SawingLimits, SawingOutcome, SawingPlan, SawingProgress};
use super::proof::Proof;
use super::relaxation::{Relaxation, relax};
use super::sequential::Sequential;
use super::stages::Stages;
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
        stopped: false,
    };
    let needs = Needs::of(data);
    let mut sequential = Sequential::new(data);
    let first_plans = if Stages::are_of_use(data) {
        STAGED_PLANS
    } else {
        FIRST_PLANS
    };
    for _ in 0..first_plans {
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
    let proof = search.prove(needs);
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
const STAGED_PLANS: u32 = 8;
const STEP_PLANS: u32 = 4;

/// What is known, and what is left of the limits.
pub(super) struct Search<'a> {
    pub(super) data: &'a SawingData,
    go_on: &'a mut dyn FnMut(&SawingProgress) -> bool,
    state: SawingProgress,
    /// The plan that leaves fewest missing, while none is whole.
    part: Option<SawingPlan>,
    left: u64,
    stopped: bool,
}

impl Search<'_> {
    /// Parts the plans, by stages where that is of use, and by whole patterns; the proof of the best bound.
    fn prove(&mut self, needs: Needs) -> Proof {
        if !Stages::are_of_use(self.data) {
            return Branches::grow(self, needs, Diving::default());
        }
        let kept = self.left / 4;
        self.left -= kept;
        let by_stages = Branches::grow(self, needs.clone(), Stages::default());
        let bound = self.state.bound;
        self.left += kept;
        if self.is_over() {
            return by_stages;
        }
        let by_patterns = Branches::grow(self, needs, Diving::default());
        if self.state.bound > bound {
            by_patterns
        } else {
            by_stages
        }
    }

    /// Takes a plan if it makes all that is wanted and costs less than the best, or, while there is none,
    /// if it leaves fewer blanks missing.
    pub(super) fn offer(&mut self, cuts: Vec<(CutPattern, u64)>) {
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
        let relaxation = relax(&data, &needs, &[], &mut || {
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
        self.spend(1)?;
        let data = self.data;
        relax(data, needs, known, &mut || self.go_round())
    }

    /// Takes so many relaxations off the limit; nothing where there are not so many left.
    pub(super) fn spend(&mut self, relaxations: u64) -> Option<()> {
        self.left = self.left.checked_sub(relaxations)?;
        self.state.relaxations += relaxations;
        Some(())
    }

    /// Takes in that a round of pricing is done, and hears whether it may go on.
    pub(super) fn go_round(&mut self) -> bool {
        self.state.rounds += 1;
        self.hear()
    }

    /// Tells how far the search is, and hears whether it may go on.
    pub(super) fn hear(&mut self) -> bool {
        self.stopped |= !(self.go_on)(&self.state);
        !self.stopped
    }

    /// Offers plans that begin with these planks.
    pub(super) fn complete(&mut self, rest: &Needs, cuts: &[(CutPattern, u64)]) {
        let mut sequential = Sequential::new(self.data);
        for _ in 0..STEP_PLANS {
            let mut whole = cuts.to_vec();
            whole.extend(sequential.plan(rest));
            self.offer(whole);
        }
    }
}
