//! What comes out: the plan, and what it costs by kind.

use super::data::OrderPlanData;
use super::draft::PlanAim;
use super::stages::MILLION;

/// What is run, ordered and sawn; all else follows from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Decisions {
    /// `runs[setup][period]`, sandwiches.
    pub(super) runs: Vec<Vec<u64>>,
    /// `packs[offer][period]`, packs ordered in the period.
    pub(super) packs: Vec<Vec<u64>>,
    /// `sawn[stock][period]`, usable slats.
    pub(super) sawn: Vec<Vec<u64>>,
}

impl Decisions {
    /// Nothing is done.
    pub(super) fn none(data: &OrderPlanData) -> Self {
        let rows = |lines: usize| vec![vec![0; data.periods()]; lines];
        Self {
            runs: rows(data.setups().len()),
            packs: rows(data.offers().len()),
            sawn: rows(data.stocks().len()),
        }
    }
}

/// Runs, orders and stores over the periods. Rows are in the order of the draft, periods from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OrderPlan {
    /// `runs[setup][period]`, sandwiches.
    pub runs: Vec<Vec<u64>>,
    /// `packs[offer][period]`, packs ordered in the period; they are used from
    /// [`lead_periods`](super::Offer::lead_periods) later on.
    pub packs: Vec<Vec<u64>>,
    /// `sawn[stock][period]`, usable slats sawn in the works.
    pub sawn: Vec<Vec<u64>>,
    /// `pencil_store[pencil][period]`, pencils made by the plan that wait at the end of the period.
    pub pencil_store: Vec<Vec<u64>>,
    /// `slat_store[stock][period]`, slats that wait at the end of the period.
    pub slat_store: Vec<Vec<u64>>,
    /// `spare_pencils[pencil][period]`, pencils the plan has no use for from the end of the period on.
    /// They leave its store and are not charged.
    pub spare_pencils: Vec<Vec<u64>>,
    /// `spare_slats[stock][period]`, slats the plan has no use for from the end of the period on.
    pub spare_slats: Vec<Vec<u64>>,
    /// What it costs, by kind.
    pub cost: CostParts,
    /// Volume of the slats bought and sawn, cubic millimetres.
    pub cubic_millimetres: i64,
    /// Set-ups that run, counted in each period.
    pub changeovers: u64,
}

/// Costs by kind, thousandths of a hundredth of the currency, as what costs so many hundredths a
/// thousand costs as many of them a piece. They add up exactly.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct CostParts {
    /// Packs, and what orders cost beside them.
    pub purchase: i64,
    /// Change-overs, without their machine time.
    pub changeover: i64,
    /// Machine time of runs and change-overs.
    pub machine: i64,
    /// Stores of slats and pencils.
    pub holding: i64,
    /// Leads, glue and coat.
    pub materials: i64,
    /// Slats sawn in the works.
    pub sawing: i64,
    /// What chips bring; taken off.
    pub credit: i64,
}

impl CostParts {
    /// All kinds, what chips bring taken off.
    #[must_use]
    pub const fn total(&self) -> i64 {
        (self.purchase)
            .saturating_add(self.changeover)
            .saturating_add(self.machine)
            .saturating_add(self.holding)
            .saturating_add(self.materials)
            .saturating_add(self.sawing)
            .saturating_sub(self.credit)
    }
}

impl OrderPlan {
    /// What is made small, in its own units: see [`PlanAim`].
    #[must_use]
    pub const fn value(&self, aim: PlanAim) -> i64 {
        match aim {
            PlanAim::Cost => self.cost.total(),
            PlanAim::Timber => self.cubic_millimetres,
            PlanAim::Changeovers => self.changeovers.cast_signed(),
        }
    }

    /// The plan that follows; `None` where pencils or slats are missing. The least is stored that
    /// serves what comes after.
    pub(super) fn of(data: &OrderPlanData, decisions: Decisions) -> Option<Self> {
        let Decisions { runs, packs, sawn } = decisions;
        let periods = data.periods();
        let mut pencil_store = Vec::new();
        let mut spare_pencils = Vec::new();
        for pencil in 0..data.pencils().len() {
            let made = made(data, &runs, pencil);
            let due: Vec<u64> = (0..periods)
                .map(|period| data.net(pencil, period))
                .collect();
            let (store, spare) = least_store(0, &made, &due)?;
            pencil_store.push(store);
            spare_pencils.push(spare);
        }
        let mut slat_store = Vec::new();
        let mut spare_slats = Vec::new();
        for (stock, line) in data.stocks().iter().enumerate() {
            let arriving = arriving(data, &packs, &sawn, stock);
            let used = used(data, &runs, stock);
            let (store, spare) = least_store(line.on_hand, &arriving, &used)?;
            slat_store.push(store);
            spare_slats.push(spare);
        }
        let mut plan = Self {
            runs,
            packs,
            sawn,
            pencil_store,
            slat_store,
            spare_pencils,
            spare_slats,
            cost: CostParts::default(),
            cubic_millimetres: 0,
            changeovers: 0,
        };
        plan.add_up(data);
        Some(plan)
    }

    fn add_up(&mut self, data: &OrderPlanData) {
        let [mut purchase, mut changeover, mut machine, mut holding] = [0_i128; 4];
        let [mut materials, mut sawing, mut credit, mut volume] = [0_i128; 4];
        let sum = |row: &[u64]| row.iter().map(|&pieces| i128::from(pieces)).sum::<i128>();
        for (setup, row) in self.runs.iter().enumerate() {
            let parts = data.run_parts(setup);
            for (period, &run) in row.iter().enumerate().filter(|(_, run)| **run > 0) {
                let (change, changing) = data.changeover_parts(setup, period);
                let run = i128::from(run);
                changeover += i128::from(change);
                machine += i128::from(changing) + i128::from(parts.0) * run;
                materials += i128::from(parts.1) * run;
                credit += i128::from(parts.2) * run;
                self.changeovers += 1;
            }
        }
        for (number, offer) in data.offers().iter().enumerate() {
            for &packs in &self.packs[number] {
                purchase += 1_000 * i128::from(offer.price(packs));
                volume += i128::from(data.pack_volume(number)) * i128::from(packs);
            }
        }
        for (stock, line) in data.stocks().iter().enumerate() {
            let sawn = sum(&self.sawn[stock]);
            let each = line.sawing.map_or(0, |sawing| sawing.thousand_cost);
            sawing += i128::from(each) * sawn;
            holding += i128::from(line.holding) * sum(&self.slat_store[stock]);
            volume += i128::from(line.cubic_millimetres) * sawn;
        }
        for (line, store) in data.pencils().iter().zip(&self.pencil_store) {
            holding += i128::from(line.holding) * sum(store);
        }
        // What is beyond the range fails the recount.
        let narrow = |sum: i128| i64::try_from(sum).unwrap_or(i64::MAX);
        self.cost = CostParts {
            purchase: narrow(purchase),
            changeover: narrow(changeover),
            machine: narrow(machine),
            holding: narrow(holding),
            materials: narrow(materials),
            sawing: narrow(sawing),
            credit: narrow(credit),
        };
        self.cubic_millimetres = narrow(volume);
    }
}

/// Pencils counted in each period: as many whole good ones as are to be expected of all runs.
pub(super) fn made(data: &OrderPlanData, runs: &[Vec<u64>], pencil: usize) -> Vec<u64> {
    let mut millionths = vec![0_u128; data.periods()];
    for (setup, row) in runs.iter().enumerate() {
        let good = data.good_pencils(setup).iter();
        for &(_, good) in good.filter(|(of, _)| *of == pencil) {
            for (sum, &run) in millionths.iter_mut().zip(row) {
                *sum += u128::from(good) * u128::from(run);
            }
        }
    }
    let whole = |sum: u128| (sum / u128::from(MILLION)) as u64;
    millionths.into_iter().map(whole).collect()
}

/// Slats used in each period.
pub(super) fn used(data: &OrderPlanData, runs: &[Vec<u64>], stock: usize) -> Vec<u64> {
    let mut used = vec![0; data.periods()];
    for (setup, row) in runs.iter().enumerate() {
        let slats = data.slats(setup, stock);
        for (used, &run) in used.iter_mut().zip(row) {
            *used += slats * run;
        }
    }
    used
}

/// Usable slats that arrive or are sawn in each period.
pub(super) fn arriving(
    data: &OrderPlanData,
    packs: &[Vec<u64>],
    sawn: &[Vec<u64>],
    stock: usize,
) -> Vec<u64> {
    let mut arriving = sawn[stock].clone();
    let offers = data.offers().iter().enumerate();
    for (number, offer) in offers.filter(|(_, offer)| offer.stock == stock) {
        let later = arriving.iter_mut().skip(offer.lead_periods);
        for (arriving, &packs) in later.zip(&packs[number]) {
            *arriving += data.pack_slats(number) * packs;
        }
    }
    arriving
}

/// The smallest stores that serve what is taken, and what is over; `None` where something is missing.
fn least_store(on_hand: u64, added: &[u64], taken: &[u64]) -> Option<(Vec<u64>, Vec<u64>)> {
    let mut store = vec![0; taken.len()];
    for period in (1..taken.len()).rev() {
        store[period - 1] = (store[period] + taken[period]).saturating_sub(added[period]);
    }
    let mut spare = Vec::with_capacity(taken.len());
    let mut before = on_hand;
    for (period, &kept) in store.iter().enumerate() {
        spare.push((before + added[period]).checked_sub(taken[period] + kept)?);
        before = kept;
    }
    Some((store, spare))
}
