//! What comes into a store, goes out of it and stays, period by period.

use super::job::OrderJob;
use crate::order_plan::{MILLION, OrderPlan};

/// What comes and goes of one kind of pencil or slat. Slats are usable ones, pencils good ones.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoreAccount {
    /// What it is called.
    pub name: String,
    /// On hand before the first period.
    pub on_hand: u64,
    /// What comes in each period: pencils made; slats bought and sawn.
    pub comes: Vec<u64>,
    /// What goes in each period: pencils due; slats used.
    pub goes: Vec<u64>,
    /// What is kept at the end of each period for later ones.
    pub kept: Vec<u64>,
    /// What the plan has no use for from the end of each period on; it is not charged.
    pub spare: Vec<u64>,
}

impl StoreAccount {
    pub(super) fn of_pencils(job: &OrderJob, plan: &OrderPlan) -> Vec<Self> {
        let periods = job.periods.len();
        let account = |(pencil, line): (usize, &crate::order_plan::PencilDemand)| {
            let mut millionths = vec![0_u128; periods];
            for (setup, row) in plan.runs.iter().enumerate() {
                for &(of, good) in job.data.good_pencils(setup) {
                    if of == pencil {
                        for (sum, &run) in millionths.iter_mut().zip(row) {
                            *sum += u128::from(good) * u128::from(run);
                        }
                    }
                }
            }
            let whole = |sum: u128| u64::try_from(sum / u128::from(MILLION)).unwrap_or(u64::MAX);
            Self {
                name: job.pencils[pencil].clone(),
                on_hand: line.on_hand,
                comes: millionths.into_iter().map(whole).collect(),
                goes: line.due.clone(),
                kept: plan.pencil_store[pencil].clone(),
                spare: plan.spare_pencils[pencil].clone(),
            }
        };
        job.data.pencils().iter().enumerate().map(account).collect()
    }

    pub(super) fn of_slats(job: &OrderJob, plan: &OrderPlan) -> Vec<Self> {
        let account = |(stock, line): (usize, &crate::order_plan::StockLine)| {
            let mut comes = plan.sawn[stock].clone();
            for (offer, packs) in job.data.offers().iter().zip(&plan.packs) {
                let usable =
                    u64::from(offer.pack_slats) * u64::from(line.usable) / u64::from(MILLION);
                let later = comes.iter_mut().skip(offer.lead_periods);
                for (comes, &packs) in later.zip(packs).filter(|_| offer.stock == stock) {
                    *comes += usable * packs;
                }
            }
            let mut goes = vec![0; comes.len()];
            for (setup, row) in job.data.setups().iter().zip(&plan.runs) {
                let slats = u64::from(setup.bottom == stock) + u64::from(setup.top == stock);
                for (goes, &run) in goes.iter_mut().zip(row) {
                    *goes += slats * run;
                }
            }
            Self {
                name: job.stocks[stock].clone(),
                on_hand: line.on_hand,
                comes,
                goes,
                kept: plan.slat_store[stock].clone(),
                spare: plan.spare_slats[stock].clone(),
            }
        };
        let accounts = job.data.stocks().iter().enumerate().map(account);
        accounts.filter(Self::is_moved).collect()
    }

    /// What stands in the store at the end of each period: what is kept for later, and what is over by
    /// then.
    #[must_use]
    pub fn stands(&self) -> Vec<[u64; 2]> {
        let mut over = 0;
        let pairs = self.kept.iter().zip(&self.spare);
        pairs
            .map(|(&kept, &spare)| {
                over += spare;
                [kept, over]
            })
            .collect()
    }

    /// Whether there is anything to tell.
    fn is_moved(&self) -> bool {
        let moved = self.comes.iter().chain(&self.goes);
        self.on_hand > 0 || moved.into_iter().any(|&pieces| pieces > 0)
    }
}
