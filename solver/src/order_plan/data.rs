//! What is to be planned, checked, with what follows from it.

use super::check::MOST_SANDWICHES;
use super::draft::{LineSetup, OrderPlanDraft, PencilDemand, PlanAim, StockLine};
use super::offer::Offer;
use super::stages::MILLION;

/// What is to be planned, in the ranges of this module; made by [`OrderPlanDraft::check`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OrderPlanData {
    draft: OrderPlanDraft,
    setups: Vec<SetupFigures>,
    /// `net[pencil][period]`: what is due once the store is used up.
    net: Vec<Vec<u64>>,
}

/// What follows for a set-up.
#[derive(Clone, Debug, PartialEq, Eq)]
struct SetupFigures {
    /// Pencils with the good ones to expect from a sandwich, millionths.
    good: Vec<(usize, u64)>,
    machine: i64,
    materials: i64,
    changeover_machine: i64,
}

impl OrderPlanData {
    pub(super) fn new(draft: OrderPlanDraft) -> Self {
        let hour = i128::from(draft.machine.hour_cost);
        // Thousandths of a hundredth, to the nearest.
        let machine = |milliseconds: i128| ((milliseconds * hour + 1_800) / 3_600) as i64;
        let figures = |setup: &LineSetup| {
            let leads: u32 = setup.laid.iter().map(|laid| laid.leads).sum();
            SetupFigures {
                good: setup
                    .laid
                    .iter()
                    .map(|laid| {
                        let good = draft.stages.good_pencils(laid.leads, laid.good);
                        (laid.pencil, good)
                    })
                    .collect(),
                machine: machine(i128::from(setup.milliseconds)),
                materials: draft.materials.of_sandwich(leads, &draft.stages),
                changeover_machine: machine(i128::from(setup.changeover_seconds) * 1_000),
            }
        };
        let setups = draft.setups.iter().map(figures).collect();
        let net = draft.pencils.iter().map(net_of_store).collect();
        Self { draft, setups, net }
    }

    /// Set-ups whose chips bring more than materials and machine time cost.
    pub(super) fn setups_with_too_dear_chips(&self) -> Vec<usize> {
        (0..self.setups.len())
            .filter(|&setup| self.run_cost(setup) < 0)
            .collect()
    }

    /// As it was described.
    #[must_use]
    pub const fn draft(&self) -> &OrderPlanDraft {
        &self.draft
    }

    /// The same, described again.
    #[must_use]
    pub fn into_draft(self) -> OrderPlanDraft {
        self.draft
    }

    /// Number of periods.
    #[must_use]
    pub const fn periods(&self) -> usize {
        self.draft.periods
    }

    /// The order book.
    #[must_use]
    pub fn pencils(&self) -> &[PencilDemand] {
        &self.draft.pencils
    }

    /// The slats.
    #[must_use]
    pub fn stocks(&self) -> &[StockLine] {
        &self.draft.stocks
    }

    /// The ways to make pencils.
    #[must_use]
    pub fn setups(&self) -> &[LineSetup] {
        &self.draft.setups
    }

    /// What can be bought.
    #[must_use]
    pub fn offers(&self) -> &[Offer] {
        &self.draft.offers
    }

    /// What is made small.
    #[must_use]
    pub const fn aim(&self) -> PlanAim {
        self.draft.aim
    }

    /// Most an aim may come to, in its units.
    pub(super) fn limit(&self, aim: PlanAim) -> Option<i64> {
        let limits = &self.draft.limits;
        match aim {
            PlanAim::Cost => limits.cost.map(|cost| cost.saturating_mul(1_000)),
            PlanAim::Timber => limits.cubic_millimetres,
            PlanAim::Changeovers => limits
                .changeovers
                .map(|most| i64::try_from(most).unwrap_or(i64::MAX)),
        }
    }

    /// Pencils of a set-up, each with the good ones to expect from a sandwich, millionths.
    ///
    /// # Panics
    /// When there is no such set-up.
    #[must_use]
    pub fn good_pencils(&self, setup: usize) -> &[(usize, u64)] {
        &self.setups[setup].good
    }

    /// Fewest sandwiches of one set-up that are counted as so many pencils; `None` where there are
    /// never any.
    pub(super) fn sandwiches_for(good: u64, pencils: u64) -> Option<u64> {
        let wanted = u128::from(pencils) * u128::from(MILLION);
        (good > 0).then(|| wanted.div_ceil(u128::from(good)) as u64)
    }

    /// What is due of a pencil in a period once the store is used up.
    pub(super) fn net(&self, pencil: usize, period: usize) -> u64 {
        self.net[pencil][period]
    }

    /// What is due of a pencil from a period on, once the store is used up.
    pub(super) fn remaining(&self, pencil: usize, period: usize) -> u64 {
        self.net[pencil][period..].iter().sum()
    }

    /// What a sandwich costs beside its slats, less what its chips bring; thousandths of a hundredth.
    pub(super) fn run_cost(&self, setup: usize) -> i64 {
        let (machine, materials, credit) = self.run_parts(setup);
        machine + materials - credit
    }

    /// Machine time, materials and chips of a sandwich, thousandths of a hundredth.
    pub(super) fn run_parts(&self, setup: usize) -> (i64, i64, i64) {
        let figures = &self.setups[setup];
        let credit = self.draft.setups[setup].credit;
        (figures.machine, figures.materials, credit)
    }

    /// Changing over and its machine time, thousandths of a hundredth.
    pub(super) fn changeover_parts(&self, setup: usize, period: usize) -> (i64, i64) {
        let cost = self.draft.setups[setup].changeover_cost[period];
        (1_000 * cost, self.setups[setup].changeover_machine)
    }

    /// Slats of a stock in one sandwich.
    pub(super) fn slats(&self, setup: usize, stock: usize) -> u64 {
        let line = &self.draft.setups[setup];
        u64::from(line.bottom == stock) + u64::from(line.top == stock)
    }

    /// Usable slats to expect in a pack, rounded down; at least one.
    pub(super) fn pack_slats(&self, offer: usize) -> u64 {
        let line = &self.draft.offers[offer];
        let usable = self.draft.stocks[line.stock].usable;
        u64::from(line.pack_slats) * u64::from(usable) / u64::from(MILLION)
    }

    /// Volume of a pack, cubic millimetres.
    pub(super) fn pack_volume(&self, offer: usize) -> i64 {
        let line = &self.draft.offers[offer];
        let slat = self.draft.stocks[line.stock].cubic_millimetres;
        i64::from(line.pack_slats) * i64::from(slat)
    }

    /// Most sandwiches of a set-up that are of use in a period: what fills all that is still due of
    /// each of its pencils, within the machine time. More would make only pencils nobody ordered. Never
    /// above [`MOST_SANDWICHES`].
    pub(super) fn most_sandwiches(&self, setup: usize, period: usize) -> u64 {
        let useful = self.setups[setup]
            .good
            .iter()
            .filter_map(|&(pencil, good)| {
                Self::sandwiches_for(good, self.remaining(pencil, period))
            });
        let useful = useful.max().unwrap_or(0).min(MOST_SANDWICHES);
        let line = &self.draft.setups[setup];
        let in_time = self.draft.machine.seconds[period].and_then(|seconds| {
            let left = seconds.saturating_sub(u64::from(line.changeover_seconds));
            left.saturating_mul(1_000)
                .checked_div(u64::from(line.milliseconds))
        });
        in_time.map_or(useful, |in_time| useful.min(in_time))
    }
}

/// What is due in each period once the pencils on hand have served what is due first.
fn net_of_store(pencil: &PencilDemand) -> Vec<u64> {
    let mut on_hand = pencil.on_hand;
    let serve = |&due: &u64| {
        let served = due.min(on_hand);
        on_hand -= served;
        due - served
    };
    pencil.due.iter().map(serve).collect()
}
