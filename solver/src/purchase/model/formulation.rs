//! The rows and columns handed to the solver.
//!
//! Names and order follow the documentation of the purchase module. Runs are counted in batches
//! of a power of two of sandwiches, rows and the objective are divided by a power of two, so that
//! coefficients stay within about 1e-4…1e4 and scaling rounds nothing.

use good_lp::solvers::microlp::{MicroLpProblem, microlp};
use good_lp::{Expression, ProblemVariables, SolverModel, Variable, variable};

use super::{Answer, Goal, Question};
use crate::purchase::data::PurchaseData;

/// The scaled model of one question.
pub(super) struct Formulation<'a> {
    data: &'a PurchaseData,
    question: Question<'a>,
    columns: Columns,
    pub(super) problem: MicroLpProblem,
    /// Goal units in one unit of the objective.
    objective_unit: f64,
}

impl<'a> Formulation<'a> {
    pub(super) fn new(data: &'a PurchaseData, question: Question<'a>) -> Self {
        let (columns, variables) = Columns::new(data, question);
        let objective_unit = match question.goal {
            Goal::Cost => price_unit(data),
            Goal::Sandwiches | Goal::Shortage => columns.batch,
        };
        let objective = match question.goal {
            Goal::Cost => columns.cost(data),
            Goal::Sandwiches => sum(columns.runs.iter().flatten()),
            Goal::Shortage => sum(columns.short.iter()),
        };
        let problem = variables.minimise(objective).using(microlp);
        let mut formulation = Self {
            data,
            question,
            columns,
            problem,
            objective_unit,
        };
        formulation.add_demand_rows();
        formulation.add_slats_rows();
        formulation.add_cost_rows();
        formulation
    }

    /// demand\[p\]: Σ_s yield\[p,s\]·run\[p,s\] (+ short\[p\]) ≥ demand\[p\], and
    /// whole\[p,k\]: Σ_s ⌈yield\[p,s\] / k⌉·run\[p,s\] ≥ ⌈demand\[p\] / k⌉, true of whole runs.
    fn add_demand_rows(&mut self) {
        let batch = self.columns.batch;
        for (order, line) in self
            .data
            .orders()
            .iter()
            .enumerate()
            .filter(|(_, line)| line.pencils > 0)
        {
            let mut made = self.made(order, 1);
            if let Some(short) = &self.columns.short[order] {
                made += short.variable;
            }
            let demand = made.geq(line.pencils as f64 / batch);
            self.problem
                .add_constraint(demand.set_name(format!("demand[{order}]")));
            if self.question.goal == Goal::Shortage {
                continue;
            }
            for divisor in yields_of(self.data, order) {
                let wanted = line.pencils.div_ceil(divisor) as f64 / batch;
                let whole = self.made(order, divisor).geq(wanted);
                self.problem
                    .add_constraint(whole.set_name(format!("whole[{order},{divisor}]")));
            }
        }
    }

    /// Σ_s ⌈yield\[p,s\] / divisor⌉·run\[p,s\], in batches.
    fn made(&self, order: usize, divisor: u64) -> Expression {
        let mut made = Expression::from(0.0);
        for (stock, run) in self.columns.runs[order].iter().enumerate() {
            if let Some(run) = run {
                let yields = self
                    .data
                    .pencils_per_sandwich(order, stock)
                    .div_ceil(divisor);
                made.add_mul(yields as f64, run.variable);
            }
        }
        made
    }

    /// slats\[s\]: 2·Σ_p run\[p,s\] ≤ on_hand\[s\] + pack_slats\[s\]·packs\[s\], halved.
    ///
    /// The odd slat is rounded away where the packs are known or hold an even number of slats.
    fn add_slats_rows(&mut self) {
        let batch = self.columns.batch;
        for (stock, slats) in self.data.stocks().iter().enumerate() {
            let taken = sum(self.columns.runs.iter().map(|row| &row[stock]));
            let balance = if let Some(packs) = &self.columns.packs[stock] {
                let even = slats.pack_slats.is_multiple_of(2);
                let on_hand = if even {
                    (slats.on_hand / 2) as f64
                } else {
                    slats.on_hand as f64 / 2.0
                };
                let pack = f64::from(slats.pack_slats) / 2.0 / batch;
                // Between one sandwich and one pack, so that neither coefficient is extreme.
                let unit = power_of_two_below(pack.sqrt());
                let mut balance = taken * (1.0 / unit);
                balance.add_mul(-pack / unit, packs.variable);
                balance.leq(on_hand / batch / unit)
            } else {
                taken.leq(sandwich_cap(self.data, self.question, stock) as f64 / batch)
            };
            self.problem
                .add_constraint(balance.set_name(format!("slats[{stock}]")));
        }
    }

    /// cost: least ≤ Σ_s price\[s\]·packs\[s\] ≤ most; half a price step keeps rounding away.
    fn add_cost_rows(&mut self) {
        let Some((least, most)) = self.question.cost else {
            return;
        };
        let half_step = self.data.price_step() as f64 / 2.0;
        let unit = price_unit(self.data);
        let cost = self.columns.cost(self.data);
        let most = cost.clone().leq((most as f64 + half_step) / unit);
        self.problem
            .add_constraint(most.set_name("cost[most]".to_owned()));
        let least = cost.geq((least as f64 - half_step) / unit);
        self.problem
            .add_constraint(least.set_name("cost[least]".to_owned()));
    }

    /// The solver's values, in the order in which the variables were added.
    pub(super) fn answer(&self, values: &[f64]) -> Answer {
        let runs = self.columns.runs.iter().map(|row| {
            row.iter()
                .map(|run| {
                    run.as_ref()
                        .map_or(0.0, |run| values[run.index] * self.columns.batch)
                })
                .collect()
        });
        let packs = self.columns.packs.iter().enumerate().map(|(stock, packs)| {
            match (packs, self.question.packs) {
                // The cast saturates; whole variables come back whole.
                (Some(packs), _) => values[packs.index].round() as u64,
                (None, Some(fixed)) => fixed[stock],
                (None, None) if self.question.goal == Goal::Shortage => {
                    self.data.useful_packs(stock)
                }
                (None, None) => 0,
            }
        });
        Answer {
            runs: runs.collect(),
            packs: packs.collect(),
        }
    }

    /// A bound that holds for the exact model, as a whole number of the goal's units.
    ///
    /// The simplex method accepts a reduced cost that is wrong by up to 1e-10 and so may stop
    /// that much, times the range of each variable, above the true minimum; branches are cut
    /// within 1e-9 of the best value. The margin is ten times the first and four times the
    /// second, to leave room for rounding in the arithmetic itself.
    pub(super) fn safe_bound(&self, bound: f64) -> u64 {
        let margin = 1e-9 * self.columns.ranges + 4e-9 * bound.abs().max(1.0);
        // The cast saturates: a bound below zero says nothing and becomes 0.
        ((bound - margin) * self.objective_unit).ceil() as u64
    }
}

/// A variable of the model; all start at 0.
struct Column {
    variable: Variable,
    /// Its place in the solver's list of values.
    index: usize,
}

/// All variables; `None` where a variable could only be 0 or is fixed.
struct Columns {
    /// `run[p,s]`, batches.
    runs: Vec<Vec<Option<Column>>>,
    /// `packs[s]`, packs.
    packs: Vec<Option<Column>>,
    /// `short[p]`, pencils over the sandwiches in a batch.
    short: Vec<Option<Column>>,
    /// Sandwiches in one batch.
    batch: f64,
    /// Sum of the ranges of all variables, in the model's units.
    ranges: f64,
}

impl Columns {
    fn new(data: &PurchaseData, question: Question<'_>) -> (Self, ProblemVariables) {
        let (orders, stocks) = (0..data.orders().len(), 0..data.stocks().len());
        let caps: Vec<u64> = stocks
            .clone()
            .map(|stock| sandwich_cap(data, question, stock))
            .collect();
        // limits on run[p,s]: what the order needs, and what the stock gives
        let most_runs: Vec<Vec<u64>> = orders
            .clone()
            .map(|order| {
                let most = |stock| {
                    data.sandwiches_alone(order, stock)
                        .unwrap_or(0)
                        .min(caps[stock])
                };
                stocks.clone().map(most).collect()
            })
            .collect();
        let longest = most_runs.iter().flatten().max().copied().unwrap_or(0);
        let batch = if question.whole_runs {
            1.0
        } else {
            unit_for(longest as f64)
        };
        let free_packs = question.packs.is_none() && question.goal != Goal::Shortage;

        let mut variables = ProblemVariables::new();
        let mut ranges = 0.0;
        let mut add = |most: f64, whole: bool, name: String| {
            let definition = variable().clamp(0.0, most).name(name);
            let definition = if whole {
                definition.integer()
            } else {
                definition
            };
            let index = variables.len();
            ranges += most;
            (most > 0.0).then(|| Column {
                variable: variables.add(definition),
                index,
            })
        };
        let runs = orders
            .clone()
            .map(|order| {
                let run = |stock: usize| {
                    let most = most_runs[order][stock] as f64 / batch;
                    add(most, question.whole_runs, format!("run[{order},{stock}]"))
                };
                stocks.clone().map(run).collect()
            })
            .collect();
        // limit[s] is the upper bound of packs[s]
        let packs = stocks
            .map(|stock| {
                let most = if free_packs {
                    data.useful_packs(stock)
                } else {
                    0
                };
                add(most as f64, true, format!("packs[{stock}]"))
            })
            .collect();
        let short = orders
            .map(|order| {
                let pencils = if question.goal == Goal::Shortage {
                    data.orders()[order].pencils
                } else {
                    0
                };
                add(pencils as f64 / batch, false, format!("short[{order}]"))
            })
            .collect();
        (
            Self {
                runs,
                packs,
                short,
                batch,
                ranges,
            },
            variables,
        )
    }

    /// Σ_s price\[s\]·packs\[s\], in price units.
    fn cost(&self, data: &PurchaseData) -> Expression {
        let unit = price_unit(data);
        let mut cost = Expression::from(0.0);
        for (slats, packs) in data.stocks().iter().zip(&self.packs) {
            if let Some(packs) = packs.as_ref().filter(|_| slats.pack_price > 0) {
                cost.add_mul(slats.pack_price as f64 / unit, packs.variable);
            }
        }
        cost
    }
}

fn sum<'a>(columns: impl Iterator<Item = &'a Option<Column>>) -> Expression {
    let mut sum = Expression::from(0.0);
    for column in columns.flatten() {
        sum += column.variable;
    }
    sum
}

/// Hundredths in one unit of money of the model.
fn price_unit(data: &PurchaseData) -> f64 {
    let dearest = data.stocks().iter().map(|slats| slats.pack_price).max();
    unit_for(dearest.unwrap_or(0) as f64)
}

/// Most sandwiches of a stock in any solution of interest.
fn sandwich_cap(data: &PurchaseData, question: Question<'_>, stock: usize) -> u64 {
    let packs = question
        .packs
        .map_or_else(|| data.useful_packs(stock), |packs| packs[stock]);
    data.sandwiches_from(stock, packs)
}

/// The different yields above one of an order, in rising order.
fn yields_of(data: &PurchaseData, order: usize) -> Vec<u64> {
    let yields = (0..data.stocks().len()).map(|stock| data.pencils_per_sandwich(order, stock));
    let mut yields: Vec<u64> = yields.filter(|&yields| yields > 1).collect();
    yields.sort_unstable();
    yields.dedup();
    yields
}

/// The power of two that brings numbers up to `most` below ten thousand, at least one.
fn unit_for(most: f64) -> f64 {
    let mut unit = 1.0;
    while most / unit > 1e4 {
        unit *= 2.0;
    }
    unit
}

/// The greatest power of two that is not above a positive number.
fn power_of_two_below(number: f64) -> f64 {
    let mut power = 1.0;
    while power * 2.0 <= number {
        power *= 2.0;
    }
    while power > number {
        power /= 2.0;
    }
    power
}
