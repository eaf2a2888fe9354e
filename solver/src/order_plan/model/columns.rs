//! The variables of the model.

use good_lp::{ProblemVariables, Variable, variable};

use crate::order_plan::data::OrderPlanData;
use crate::order_plan::ranges::Ranges;

use super::Whole;

/// A variable of the model.
#[derive(Clone, Copy, Debug)]
pub(super) struct Column {
    pub(super) variable: Variable,
    /// Its place in the solver's list of values.
    pub(super) index: usize,
    /// Pieces in one unit of it.
    pub(super) unit: f64,
}

/// An order in one tier.
#[derive(Clone, Copy, Debug)]
pub(super) struct TierColumns {
    pub(super) tier: usize,
    pub(super) packs: Column,
    /// Whether the order is made in the tier, with fewest and most packs; none where an order costs
    /// so much a pack and nothing else.
    pub(super) chosen: Option<(Column, u64, u64)>,
}

/// All variables; `None` where one could only be 0.
pub(super) struct Columns {
    /// `run[j,t]`
    pub(super) runs: Vec<Vec<Option<Column>>>,
    /// `open[j,t]`; none where changing over is free.
    pub(super) open: Vec<Vec<Option<Column>>>,
    /// `packs[o,t,r]` and `order[o,t,r]`
    pub(super) orders: Vec<Vec<Vec<TierColumns>>>,
    /// `sawn[k,t]`
    pub(super) sawn: Vec<Vec<Option<Column>>>,
    /// `slats[k,t]`
    pub(super) slat_store: Vec<Vec<Option<Column>>>,
    /// `pencils[i,t]`
    pub(super) pencil_store: Vec<Vec<Option<Column>>>,
    /// Pieces in one unit of rows of pencils and slats.
    pub(super) batch: f64,
    /// Sum of the ranges of all variables, in the units of the model.
    pub(super) ranges: f64,
}

struct Maker {
    variables: ProblemVariables,
    ranges: f64,
}

impl Maker {
    fn add(&mut self, (least, most): (f64, f64), unit: f64, whole: bool, name: String) -> Column {
        let definition = variable().clamp(least / unit, most / unit).name(name);
        let definition = if whole {
            definition.integer()
        } else {
            definition
        };
        let index = self.variables.len();
        self.ranges += (most - least) / unit;
        Column {
            variable: self.variables.add(definition),
            index,
            unit,
        }
    }
}

impl Columns {
    pub(super) fn new(
        data: &OrderPlanData,
        ranges: &Ranges,
        whole: Whole,
    ) -> (Self, ProblemVariables) {
        let longest = ranges.runs.iter().flatten().max().copied().unwrap_or(0);
        let batch = unit_for(longest as f64);
        let run_unit = if whole == Whole::Runs { 1.0 } else { batch };
        let mut maker = Maker {
            variables: ProblemVariables::new(),
            ranges: 0.0,
        };
        let choices = whole != Whole::Nothing;
        let draft = data.draft();
        let free = |setup: usize, period: usize| {
            data.changeover_parts(setup, period) == (0, 0)
                && draft.setups[setup].changeover_seconds == 0
                && draft.limits.changeovers.is_none()
                && draft.aim != crate::order_plan::PlanAim::Changeovers
        };
        let mut runs = Vec::new();
        let mut open = Vec::new();
        for (setup, row) in ranges.runs.iter().enumerate() {
            let mut run_row = Vec::new();
            let mut open_row = Vec::new();
            for (period, &most) in row.iter().enumerate() {
                let kept = ranges.kept[setup][period];
                let name = |what: &str| format!("{what}[{setup},{period}]");
                run_row.push((most > 0).then(|| {
                    let range = (0.0, most as f64);
                    maker.add(range, run_unit, whole == Whole::Runs, name("run"))
                }));
                open_row.push((most > 0 && !free(setup, period)).then(|| {
                    let range = (f64::from(u8::from(kept)), 1.0);
                    maker.add(range, 1.0, choices && !kept, name("open"))
                }));
            }
            runs.push(run_row);
            open.push(open_row);
        }
        let whole_packs = matches!(whole, Whole::Packs | Whole::Runs);
        let mut orders = Vec::new();
        for (number, rows) in ranges.orders.iter().enumerate() {
            let is_plain = data.offers()[number].is_plain();
            let mut order_row = Vec::new();
            for (period, tiers) in rows.iter().enumerate() {
                let columns = tiers.iter().map(|range| {
                    let name = |what: &str| format!("{what}[{number},{period},{}]", range.tier);
                    let most = range.most as f64;
                    let packs = maker.add((0.0, most), 1.0, whole_packs, name("packs"));
                    let chosen = (!is_plain).then(|| {
                        let chosen = maker.add((0.0, 1.0), 1.0, choices, name("order"));
                        (chosen, range.least, range.most)
                    });
                    TierColumns {
                        tier: range.tier,
                        packs,
                        chosen,
                    }
                });
                order_row.push(columns.collect());
            }
            orders.push(order_row);
        }
        let mut sawn = Vec::new();
        let mut slat_store = Vec::new();
        for (stock, line) in data.stocks().iter().enumerate() {
            let row = ranges.sawn[stock].iter().enumerate();
            sawn.push(
                row.map(|(period, &most)| {
                    let name = format!("sawn[{stock},{period}]");
                    (most > 0).then(|| {
                        maker.add((0.0, most as f64), run_unit, whole == Whole::Runs, name)
                    })
                })
                .collect(),
            );
            // All that can ever lie there.
            let bought = ranges.orders.iter().enumerate().map(|(number, rows)| {
                let packs = rows.iter().flatten().map(|range| range.most).sum::<u64>();
                let is_it = data.offers()[number].stock == stock;
                if is_it {
                    packs * data.pack_slats(number)
                } else {
                    0
                }
            });
            let most = line.on_hand + bought.sum::<u64>() + ranges.sawn[stock].iter().sum::<u64>();
            let wanted = ranges
                .runs
                .iter()
                .enumerate()
                .map(|(setup, row)| data.slats(setup, stock) * row.iter().sum::<u64>());
            let most = most.min(wanted.sum());
            let stored = |period: usize| {
                let name = format!("slats[{stock},{period}]");
                (most > 0 && period + 1 < data.periods())
                    .then(|| maker.add((0.0, most as f64), batch, false, name))
            };
            slat_store.push((0..data.periods()).map(stored).collect());
        }
        let mut pencil_store = Vec::new();
        let (whole_pencils, pencil_unit) = (whole == Whole::Runs, run_unit);
        for pencil in 0..data.pencils().len() {
            let stored = |period: usize| {
                let later = data.remaining(pencil, period) - data.net(pencil, period);
                let name = format!("pencils[{pencil},{period}]");
                (later > 0)
                    .then(|| maker.add((0.0, later as f64), pencil_unit, whole_pencils, name))
            };
            pencil_store.push((0..data.periods()).map(stored).collect());
        }
        let columns = Self {
            runs,
            open,
            orders,
            sawn,
            slat_store,
            pencil_store,
            batch,
            ranges: maker.ranges,
        };
        (columns, maker.variables)
    }
}

impl Columns {
    /// Places of all choices: what is opened, and which tiers are ordered in.
    pub(super) fn choices(&self) -> Vec<usize> {
        let open = self.open.iter().flatten().flatten();
        let orders = self.orders.iter().flatten().flatten();
        let chosen = orders.filter_map(|order| order.chosen.map(|(chosen, ..)| chosen));
        open.copied()
            .chain(chosen)
            .map(|column| column.index)
            .collect()
    }
}

/// The power of two that brings numbers up to `most` below ten thousand, at least one.
pub(super) fn unit_for(most: f64) -> f64 {
    let mut unit = 1.0;
    while most / unit > 1e4 {
        unit *= 2.0;
    }
    unit
}
