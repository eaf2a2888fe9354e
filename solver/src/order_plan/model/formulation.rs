//! The rows handed to the solver, under the names of the documentation of the module.
//!
//! Pieces are counted in batches of a power of two, money in another, so that coefficients stay within
//! about 1e-4…1e4 and scaling rounds nothing.

use good_lp::solvers::microlp::{MicroLpProblem, microlp};
use good_lp::{Constraint, Expression, SolverModel};

use crate::order_plan::data::OrderPlanData;
use crate::order_plan::draft::PlanAim;

use super::columns::{Column, Columns, unit_for};
use super::cut::Cut;
use super::{Point, Question, Whole};

/// The scaled model of one question.
pub(super) struct Formulation<'a> {
    data: &'a OrderPlanData,
    question: Question<'a>,
    pub(super) columns: Columns,
    pub(super) problem: MicroLpProblem,
    /// Units of the aim in one unit of the objective.
    aim_unit: f64,
}

impl<'a> Formulation<'a> {
    pub(super) fn new(data: &'a OrderPlanData, question: Question<'a>) -> Self {
        let (columns, variables) = Columns::new(data, question.ranges, question.whole);
        let aim = data.aim();
        let aim_unit = columns.unit_of(data, aim);
        let objective = columns.value(data, aim, aim_unit);
        let problem = variables.minimise(objective).using(microlp);
        let mut formulation = Self {
            data,
            question,
            columns,
            problem,
            aim_unit,
        };
        formulation.add_due_rows();
        formulation.add_slats_rows();
        formulation.add_open_rows();
        formulation.add_order_rows();
        formulation.add_shop_rows();
        formulation.add_aim_rows();
        if question.whole == Whole::Runs {
            formulation.add_whole_rows();
        }
        for (number, cut) in question.cuts.iter().enumerate() {
            formulation.add_cut(cut, number);
        }
        formulation
    }

    fn add(&mut self, row: Constraint, name: String) {
        self.problem.add_constraint(row.set_name(name));
    }

    /// due\[i,t\]: pencils\[i,t−1\] + Σ_j good\[i,j\]·run\[j,t\] − pencils\[i,t\] ≥ due\[i,t\].
    fn add_due_rows(&mut self) {
        let batch = self.columns.batch;
        for pencil in 0..self.data.pencils().len() {
            let makers = makers(self.data, pencil);
            for period in 0..self.data.periods() {
                let mut row = Expression::from(0.0);
                for &(setup, good) in &makers {
                    add(
                        &mut row,
                        good as f64 / 1e6 / batch,
                        self.columns.runs[setup][period],
                    );
                }
                if period > 0 {
                    let before = self.columns.pencil_store[pencil][period - 1];
                    add(&mut row, 1.0 / batch, before);
                }
                add(
                    &mut row,
                    -1.0 / batch,
                    self.columns.pencil_store[pencil][period],
                );
                let due = self.data.net(pencil, period) as f64 / batch;
                // A row without variables is kept, as it may tell that there is no plan.
                self.add(row.geq(due), format!("due[{pencil},{period}]"));
            }
        }
    }

    /// slats\[k,t\]: slats\[k,t−1\] + arriving + sawn\[k,t\] − Σ_j slats\[j,k\]·run\[j,t\] − slats\[k,t\] ≥ 0.
    fn add_slats_rows(&mut self) {
        let batch = self.columns.batch;
        for (stock, line) in self.data.stocks().iter().enumerate() {
            for period in 0..self.data.periods() {
                let mut row = Expression::from(0.0);
                for (setup, runs) in self.columns.runs.iter().enumerate() {
                    let slats = self.data.slats(setup, stock) as f64;
                    if slats > 0.0 {
                        add(&mut row, -slats / batch, runs[period]);
                        if self.question.with_reserve {
                            let open = self.columns.open[setup][period];
                            add(&mut row, -slats / batch, open);
                        }
                    }
                }
                for (number, offer) in self.data.offers().iter().enumerate() {
                    if offer.stock == stock && period >= offer.lead_periods {
                        let pack = self.data.pack_slats(number) as f64 / batch;
                        for order in &self.columns.orders[number][period - offer.lead_periods] {
                            add(&mut row, pack, Some(order.packs));
                        }
                    }
                }
                add(&mut row, 1.0 / batch, self.columns.sawn[stock][period]);
                if period > 0 {
                    let before = self.columns.slat_store[stock][period - 1];
                    add(&mut row, 1.0 / batch, before);
                }
                add(
                    &mut row,
                    -1.0 / batch,
                    self.columns.slat_store[stock][period],
                );
                let on_hand = if period == 0 { line.on_hand } else { 0 };
                let row = row.geq(-(on_hand as f64) / batch);
                self.add(row, format!("slats[{stock},{period}]"));
            }
        }
    }

    /// open\[j,t\]: run\[j,t\] ≤ most\[j,t\]·open\[j,t\].
    fn add_open_rows(&mut self) {
        for setup in 0..self.data.setups().len() {
            for period in 0..self.data.periods() {
                let run = self.columns.runs[setup][period];
                let Some((run, open)) = run.zip(self.columns.open[setup][period]) else {
                    continue;
                };
                let most = self.question.ranges.runs[setup][period] as f64 / run.unit;
                let row = (run.variable - most * open.variable).leq(0.0);
                self.add(row, format!("open[{setup},{period}]"));
            }
        }
    }

    /// order\[o,t,r\]: least·order ≤ packs ≤ most·order; one\[o,t\]: Σ_r order ≤ 1;
    /// all\[o\]: Σ packs ≤ most in all.
    fn add_order_rows(&mut self) {
        for (number, offer) in self.data.offers().iter().enumerate() {
            let rows = self.columns.orders[number].clone();
            let mut all = Expression::from(0.0);
            for (period, orders) in rows.iter().enumerate() {
                let mut one = Expression::from(0.0);
                for order in orders {
                    all.add_mul(1.0, order.packs.variable);
                    let Some((chosen, least, most)) = order.chosen else {
                        continue;
                    };
                    one.add_mul(1.0, chosen.variable);
                    let (packs, chosen) = (order.packs.variable, chosen.variable);
                    let name = format!("{number},{period},{}", order.tier);
                    self.add(
                        (packs - most as f64 * chosen).leq(0.0),
                        format!("most[{name}]"),
                    );
                    if least > 0 {
                        let row = (packs - least as f64 * chosen).geq(0.0);
                        self.add(row, format!("least[{name}]"));
                    }
                }
                if orders.len() > 1 && orders.iter().all(|order| order.chosen.is_some()) {
                    self.add(one.leq(1.0), format!("one[{number},{period}]"));
                }
            }
            if let Some(most) = offer.most_packs_in_all {
                self.add(all.leq(f64::from(most)), format!("all[{number}]"));
            }
        }
    }

    /// machine\[t\], store of pencils and of slats\[t\], certified.
    fn add_shop_rows(&mut self) {
        let draft = self.data.draft();
        let batch = self.columns.batch;
        for period in 0..self.data.periods() {
            if let Some(seconds) = draft.machine.seconds[period] {
                let unit = unit_for(seconds as f64);
                let mut row = Expression::from(0.0);
                for (setup, line) in draft.setups.iter().enumerate() {
                    let sandwich = f64::from(line.milliseconds) / 1e3 / unit;
                    add(&mut row, sandwich, self.columns.runs[setup][period]);
                    let change = f64::from(line.changeover_seconds) / unit;
                    add(&mut row, change, self.columns.open[setup][period]);
                }
                self.add(row.leq(seconds as f64 / unit), format!("machine[{period}]"));
            }
            let stores = [
                (
                    &self.columns.pencil_store,
                    draft.most_pencils_stored,
                    "pencils",
                ),
                (&self.columns.slat_store, draft.most_slats_stored, "slats"),
            ];
            let mut rows = Vec::new();
            for (columns, most, name) in stores {
                if let Some(most) = most {
                    let mut row = Expression::from(0.0);
                    for line in columns {
                        add(&mut row, 1.0 / batch, line[period]);
                    }
                    rows.push((row.leq(most as f64 / batch), format!("{name}[{period}]")));
                }
            }
            for (row, name) in rows {
                self.add(row, name);
            }
        }
        if draft.least_certified > 0 {
            let unit = self.columns.unit_of(self.data, PlanAim::Timber);
            let share = f64::from(draft.least_certified) / 1e6;
            let all = self.columns.timber(self.data, unit, |_| 1.0);
            let certified = self
                .columns
                .timber(self.data, unit, |is| f64::from(u8::from(is)));
            self.add((certified - share * all).geq(0.0), "certified".to_owned());
        }
    }

    /// The limits on cost, timber and change-overs, and the value a plan must come below.
    fn add_aim_rows(&mut self) {
        for aim in PlanAim::ALL {
            let limit = self.data.limit(aim);
            let below = self.question.most.filter(|_| aim == self.data.aim());
            let Some(most) = [limit, below].into_iter().flatten().min() else {
                continue;
            };
            let unit = self.columns.unit_of(self.data, aim);
            let row = self.columns.value(self.data, aim, unit);
            self.add(row.leq(most as f64 / unit), format!("limit[{aim:?}]"));
        }
    }

    /// whole\[i\]: Σ_{j,t} ⌈good\[i,j\] / g⌉·run\[j,t\] ≥ ⌈due\[i\] / g⌉ for each yield `g`, true of whole
    /// sandwiches.
    fn add_whole_rows(&mut self) {
        for pencil in 0..self.data.pencils().len() {
            let makers = makers(self.data, pencil);
            let due = u128::from(self.data.remaining(pencil, 0)) * 1_000_000;
            let mut divisors: Vec<u64> = makers.iter().map(|(_, good)| *good).collect();
            divisors.sort_unstable();
            divisors.dedup();
            for divisor in divisors {
                let mut row = Expression::from(0.0);
                for &(setup, good) in &makers {
                    for &run in &self.columns.runs[setup] {
                        add(&mut row, good.div_ceil(divisor) as f64, run);
                    }
                }
                let due = due.div_ceil(u128::from(divisor)) as f64;
                if due > 0.0 {
                    self.add(row.geq(due), format!("whole[{pencil},{divisor}]"));
                }
            }
        }
    }

    fn add_cut(&mut self, cut: &Cut, number: usize) {
        let batch = self.columns.batch;
        let mut row = Expression::from(0.0);
        match cut {
            Cut::Cover {
                pencil,
                horizon,
                runs,
                choices,
            } => {
                let makers = makers(self.data, *pencil);
                for &(setup, period) in runs {
                    let good = makers.iter().find(|(of, _)| *of == setup);
                    let good = good.map_or(0.0, |(_, good)| *good as f64 / 1e6);
                    add(&mut row, good / batch, self.columns.runs[setup][period]);
                }
                for &(setup, period, weight) in choices {
                    let weight = weight as f64 / batch;
                    add(&mut row, weight, self.columns.open[setup][period]);
                }
                let due = (0..=*horizon).map(|period| self.data.net(*pencil, period));
                let due = due.sum::<u64>() as f64 / batch;
                self.add(row.geq(due), format!("cover[{number}]"));
            }
            Cut::Supply {
                setup,
                period,
                stock,
            } => {
                add(&mut row, -1.0, self.columns.open[*setup][*period]);
                for order in self.arriving(*stock, *period) {
                    add(&mut row, 1.0, Some(order));
                }
                self.add(row.geq(0.0), format!("supply[{number}]"));
            }
            Cut::Store {
                setup,
                horizon,
                stock,
                most,
            } => {
                let slats = self.data.slats(*setup, *stock) as f64 / batch;
                let on_hand = self.data.stocks()[*stock].on_hand as f64 / batch;
                for period in 0..=*horizon {
                    add(&mut row, -slats, self.columns.runs[*setup][period]);
                    add(&mut row, 1.0 / batch, self.columns.sawn[*stock][period]);
                }
                let each = *most as f64 / batch - on_hand;
                for order in self.arriving(*stock, *horizon) {
                    add(&mut row, each, Some(order));
                }
                self.add(row.geq(-on_hand), format!("store[{number}]"));
            }
        }
    }

    /// Orders of a stock that arrive up to a period: 1 where one is made, or its packs where there is
    /// nothing to choose.
    fn arriving(&self, stock: usize, horizon: usize) -> Vec<Column> {
        let offers = self.data.offers().iter().zip(&self.columns.orders);
        let of_stock = offers.filter(|(offer, _)| offer.stock == stock);
        let in_time = of_stock.flat_map(|(offer, rows)| {
            rows.iter()
                .take((horizon + 1).saturating_sub(offer.lead_periods))
        });
        let orders = in_time.flatten();
        orders
            .map(|order| order.chosen.map_or(order.packs, |(chosen, ..)| chosen))
            .collect()
    }

    /// The solver's values, in the order in which the variables were added.
    pub(super) fn point(&self, values: &[f64]) -> Point {
        Point::read(self.data, &self.columns, values)
    }

    /// A bound that holds for the exact model, in whole units of the aim.
    ///
    /// The simplex method accepts a reduced cost that is wrong by up to 1e-10 and so may stop
    /// that much, times the range of each variable, above the true minimum; branches are cut
    /// within 1e-9 of the best value. The margin is ten times the first and four times the
    /// second, to leave room for rounding in the arithmetic itself.
    pub(super) fn safe_bound(&self, bound: f64) -> i64 {
        let margin = 1e-9 * self.columns.ranges + 4e-9 * bound.abs().max(1.0);
        // The cast saturates; nothing comes to less than 0.
        (((bound - margin) * self.aim_unit).ceil() as i64).max(0)
    }
}

/// Set-ups that give a pencil, with the good ones to expect from a sandwich, millionths.
fn makers(data: &OrderPlanData, pencil: usize) -> Vec<(usize, u64)> {
    let setups = 0..data.setups().len();
    let good = |setup: usize| {
        let mut good = data.good_pencils(setup).iter();
        let good = good.find(|(of, good)| *of == pencil && *good > 0);
        good.map(|(_, good)| (setup, *good))
    };
    setups.filter_map(good).collect()
}

/// Adds so much for each piece.
pub(super) fn add(row: &mut Expression, each: f64, column: Option<Column>) {
    if let Some(column) = column
        && each != 0.0
    {
        row.add_mul(each * column.unit, column.variable);
    }
}
