//! Rows that are true of every plan and cut off fractions.

use crate::order_plan::data::OrderPlanData;
use crate::order_plan::ranges::{Ranges, most_over_all};

use super::Point;

/// A row that is added where a fraction breaks it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::order_plan) enum Cut {
    /// cover\[i,l\]: Σ of `a·run` over `runs` + Σ of `w·open` over `choices` ≥ due up to `l`.
    ///
    /// For any choice of a side for each set-up and period up to `l`, with `w` what is due of `i`
    /// from that period up to `l`, or what its longest run makes: in the first period in which a run
    /// counts as a choice and is made, all that is due before must come of runs that count as runs,
    /// and `w` is the rest.
    Cover {
        pencil: usize,
        /// Last period that counts.
        horizon: usize,
        /// Set-ups and periods that count as runs.
        runs: Vec<(usize, usize)>,
        /// Set-ups and periods that count as choices, with `w`, pencils.
        choices: Vec<(usize, usize, u64)>,
    },
    /// supply\[j,t,k\]: open\[j,t\] ≤ Σ of orders of stock `k` that arrive up to `t`, where the store is
    /// empty at first and nothing is sawn.
    Supply {
        setup: usize,
        period: usize,
        stock: usize,
    },
    /// store\[j,t,k\]: Σ_{τ ≤ t} slats·run\[j,τ\] − sawn\[k,τ\] ≤ on_hand + (most − on_hand)·Σ of orders of stock
    /// `k` that arrive up to `t`: without an order there is only what lies in the store or is sawn.
    Store {
        setup: usize,
        /// Last period that counts.
        horizon: usize,
        stock: usize,
        /// Most slats that the runs can take.
        most: u64,
    },
}

impl Cut {
    /// Whether a point leaves the row no room.
    pub(in crate::order_plan) fn is_tight(&self, data: &OrderPlanData, point: &Point) -> bool {
        match self {
            Self::Cover {
                pencil,
                horizon,
                runs,
                choices,
            } => {
                let good = |setup: usize| {
                    let mut good = data.good_pencils(setup).iter();
                    let good = good.find(|(of, _)| of == pencil);
                    good.map_or(0.0, |&(_, good)| good as f64 / 1e6)
                };
                let runs = runs.iter();
                let made: f64 = runs
                    .map(|&(setup, period)| good(setup) * point.runs[setup][period])
                    .sum();
                let choices = choices.iter();
                let chosen: f64 = choices
                    .map(|&(setup, period, weight)| weight as f64 * point.open[setup][period])
                    .sum();
                let due = (0..=*horizon).map(|period| data.net(*pencil, period));
                let due = due.sum::<u64>() as f64;
                made + chosen <= due * (1.0 + BROKEN)
            }
            Self::Supply {
                setup,
                period,
                stock,
            } => {
                let open = point.open[*setup][*period];
                open > 0.0 && point.ordered_up_to(data, *stock, *period) <= open + BROKEN
            }
            Self::Store {
                setup,
                horizon,
                stock,
                most,
            } => {
                let taken = taken(data, point, (*setup, *stock), *horizon);
                taken > 0.0
                    && taken + BROKEN * *most as f64
                        >= given(data, point, (*stock, *most), *horizon)
            }
        }
    }
}

/// Least by which a cut must be broken, as a share of its right side.
const BROKEN: f64 = 1e-4;

/// All cuts of these kinds that a point breaks: the most broken for each pencil and horizon, as the
/// smaller side is taken for each set-up and period; those of supply one by one.
pub(in crate::order_plan) fn broken(
    data: &OrderPlanData,
    ranges: &Ranges,
    point: &Point,
) -> Vec<Cut> {
    let mut cuts = Vec::new();
    for pencil in 0..data.pencils().len() {
        let setups: Vec<(usize, f64)> = (0..data.setups().len())
            .filter_map(|setup| {
                let good = data.good_pencils(setup).iter();
                let good = good.clone().find(|(of, good)| *of == pencil && *good > 0);
                good.map(|&(_, good)| (setup, good as f64 / 1e6))
            })
            .collect();
        let mut due = 0;
        for horizon in 0..data.periods() {
            let net = data.net(pencil, horizon);
            due += net;
            if net > 0 {
                let cut = cover(data, ranges, point, &setups, (pencil, horizon, due));
                cuts.extend(cut);
            }
        }
    }
    for setup in 0..data.setups().len() {
        for period in 0..data.periods() {
            for stock in supplied_stocks(data, setup) {
                let open = point.open[setup][period];
                if open > point.ordered_up_to(data, stock, period) + BROKEN {
                    cuts.push(Cut::Supply {
                        setup,
                        period,
                        stock,
                    });
                }
            }
        }
    }
    for setup in 0..data.setups().len() {
        for stock in stocks_of(data, setup) {
            for horizon in 0..data.periods() {
                let runs: u64 = ranges.runs[setup][..=horizon].iter().sum();
                let most = data.slats(setup, stock) * runs.min(most_over_all(data, setup, 0));
                if most > data.stocks()[stock].on_hand
                    && taken(data, point, (setup, stock), horizon)
                        > given(data, point, (stock, most), horizon) + BROKEN * most as f64
                {
                    cuts.push(Cut::Store {
                        setup,
                        horizon,
                        stock,
                        most,
                    });
                }
            }
        }
    }
    cuts
}

/// The stocks that a set-up takes, each once.
fn stocks_of(data: &OrderPlanData, setup: usize) -> Vec<usize> {
    let line = &data.setups()[setup];
    let mut stocks = vec![line.bottom, line.top];
    stocks.dedup();
    stocks
}

/// Slats of a stock that runs of a set-up take up to a period, less those sawn.
fn taken(
    data: &OrderPlanData,
    point: &Point,
    (setup, stock): (usize, usize),
    horizon: usize,
) -> f64 {
    let runs: f64 = point.runs[setup][..=horizon].iter().sum();
    let sawn: f64 = point.sawn[stock][..=horizon].iter().sum();
    data.slats(setup, stock) as f64 * runs - sawn
}

/// The other side of a cut of the store.
fn given(data: &OrderPlanData, point: &Point, (stock, most): (usize, u64), horizon: usize) -> f64 {
    let on_hand = data.stocks()[stock].on_hand as f64;
    on_hand + (most as f64 - on_hand) * point.ordered_up_to(data, stock, horizon)
}

/// The stocks of a set-up of which nothing is there until an order arrives.
fn supplied_stocks(data: &OrderPlanData, setup: usize) -> Vec<usize> {
    let mut stocks = stocks_of(data, setup);
    stocks.retain(|&stock| {
        let line = &data.stocks()[stock];
        let sawn = line.sawing.map_or(0, |sawing| sawing.most_slats);
        line.on_hand < data.slats(setup, stock) && sawn == 0
    });
    stocks
}

fn cover(
    data: &OrderPlanData,
    ranges: &Ranges,
    point: &Point,
    setups: &[(usize, f64)],
    (pencil, horizon, due): (usize, usize, u64),
) -> Option<Cut> {
    let mut runs = Vec::new();
    let mut choices = Vec::new();
    let mut sum = 0.0;
    for &(setup, good) in setups {
        let mut later = due;
        for period in 0..=horizon {
            let most = ranges.runs[setup][period];
            let weight = later.min((most as f64 * good).ceil() as u64);
            later -= data.net(pencil, period);
            if most == 0 {
                continue;
            }
            let as_run = good * point.runs[setup][period];
            let as_choice = weight as f64 * point.open[setup][period];
            if point.has_choice[setup][period] && as_choice < as_run {
                choices.push((setup, period, weight));
                sum += as_choice;
            } else {
                runs.push((setup, period));
                sum += as_run;
            }
        }
    }
    let is_broken = sum < due as f64 * (1.0 - BROKEN) && !choices.is_empty();
    is_broken.then_some(Cut::Cover {
        pencil,
        horizon,
        runs,
        choices,
    })
}
