//! Checks a plan by counting slats and pencils, in whole numbers and without the solver.

use super::data::PurchaseData;
use super::plan::PurchasePlan;

/// Recounts a plan: every order filled, no slat used twice, no limit passed, the cost as told.
///
/// # Errors
///
/// The first [`PlanFault`] met: the shape, then the orders, the stocks, the totals.
pub fn verify(data: &PurchaseData, plan: &PurchasePlan) -> Result<(), PlanFault> {
    let (orders, stocks) = (data.orders().len(), data.stocks().len());
    let rows_fit = plan.runs.len() == orders && plan.runs.iter().all(|row| row.len() == stocks);
    if !rows_fit || plan.packs.len() != stocks {
        return Err(PlanFault::Shape { orders, stocks });
    }
    (0..orders).try_for_each(|order| verify_order(data, plan, order))?;
    (0..stocks).try_for_each(|stock| verify_stock(data, plan, stock))?;
    verify_totals(data, plan)
}

/// How a plan fails its recount. Orders and stocks are counted from 0 in the fields and from 1
/// in the messages.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PlanFault {
    /// The plan was made for another book.
    #[error("the plan does not fit {orders} orders and {stocks} slat stocks")]
    Shape {
        /// Orders in the data.
        orders: usize,
        /// Stocks in the data.
        stocks: usize,
    },
    /// An order gets too few pencils.
    #[error("order {} gets {made} of {wanted} pencils", order + 1)]
    Demand {
        /// The order.
        order: usize,
        /// Pencils made.
        made: u128,
        /// Pencils ordered.
        wanted: u128,
    },
    /// A stock is used for a pencil that cannot be made from it.
    #[error("order {} cannot be made from slat stock {}", order + 1, stock + 1)]
    NoYield {
        /// The order.
        order: usize,
        /// The stock.
        stock: usize,
    },
    /// More slats are used than there are.
    #[error("slat stock {} gives {available} slats, the plan uses {used}", stock + 1)]
    Slats {
        /// The stock.
        stock: usize,
        /// Slats the runs take.
        used: u128,
        /// Slats on hand and bought.
        available: u128,
    },
    /// More packs are bought than the supplier lets go.
    #[error("slat stock {} is limited to {limit} packs, the plan buys {packs}", stock + 1)]
    Limit {
        /// The stock.
        stock: usize,
        /// Packs bought.
        packs: u64,
        /// Packs to be had.
        limit: u32,
    },
    /// The stated cost is not the price of the packs.
    #[error("the packs cost {counted} hundredths, the plan states {stated}")]
    Cost {
        /// Recounted cost, hundredths of the currency.
        counted: i128,
        /// Stated cost, hundredths of the currency.
        stated: i64,
    },
    /// The stated number of slats is not what the runs take.
    #[error("the runs take {counted} slats, the plan states {stated}")]
    SlatsUsed {
        /// Recounted slats.
        counted: u128,
        /// Stated slats.
        stated: u64,
    },
}

fn verify_order(data: &PurchaseData, plan: &PurchasePlan, order: usize) -> Result<(), PlanFault> {
    let mut made = 0_u128;
    for (stock, &run) in plan.runs[order].iter().enumerate() {
        let pencils = data.pencils_per_sandwich(order, stock);
        if run > 0 && pencils == 0 {
            return Err(PlanFault::NoYield { order, stock });
        }
        // Below 2^64 · 1000 each, and at most 64 of them.
        made += u128::from(run) * u128::from(pencils);
    }
    let wanted = u128::from(data.orders()[order].pencils);
    if made < wanted {
        return Err(PlanFault::Demand {
            order,
            made,
            wanted,
        });
    }
    Ok(())
}

fn verify_stock(data: &PurchaseData, plan: &PurchasePlan, stock: usize) -> Result<(), PlanFault> {
    let slats = data.stocks()[stock];
    let packs = plan.packs[stock];
    if let Some(limit) = slats.pack_limit.filter(|&limit| packs > u64::from(limit)) {
        return Err(PlanFault::Limit {
            stock,
            packs,
            limit,
        });
    }
    let used: u128 = plan.runs.iter().map(|row| 2 * u128::from(row[stock])).sum();
    let available = u128::from(slats.on_hand) + u128::from(packs) * u128::from(slats.pack_slats);
    if used > available {
        return Err(PlanFault::Slats {
            stock,
            used,
            available,
        });
    }
    Ok(())
}

fn verify_totals(data: &PurchaseData, plan: &PurchasePlan) -> Result<(), PlanFault> {
    let lines = data.stocks().iter().zip(&plan.packs);
    let counted = lines
        .map(|(slats, &packs)| i128::from(slats.pack_price) * i128::from(packs))
        .sum();
    if counted != i128::from(plan.cost) {
        return Err(PlanFault::Cost {
            counted,
            stated: plan.cost,
        });
    }
    let counted = plan
        .runs
        .iter()
        .flatten()
        .map(|&run| 2 * u128::from(run))
        .sum();
    if counted != u128::from(plan.slats_used) {
        return Err(PlanFault::SlatsUsed {
            counted,
            stated: plan.slats_used,
        });
    }
    Ok(())
}
