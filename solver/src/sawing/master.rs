//! The master problem: values of blanks and planks, and shares of patterns.
//!
//! ```text
//! Sets        i              kinds of blank
//!             p              kinds of plank
//!             j              patterns known; plank[j] is what j is sawn from
//! Data        wanted[i]      blanks                                        pieces
//!             over[i]        blanks beyond those, worth worth[i] each      pieces
//!             planks[p]      planks, if limited                            pieces
//!             made[i,j]      blanks i of pattern j, at most of use         pieces
//!             weight[j]      what a plank sawn like j adds                 units of the aim
//!             short          what a missing blank adds                     units of the aim
//! Variables   share[j] ≥ 0   planks sawn like j                            pieces
//!             missing[i] ≥ 0 blanks not sawn                               pieces
//!             beyond[i] ∈ [0, over[i]]                                     pieces
//! Minimise    Σ_j weight[j]·share[j] + Σ_i short·missing[i] − Σ_i worth[i]·beyond[i]
//! Subject to  blanks[i]: Σ_j made[i,j]·share[j] + missing[i] − beyond[i] ≥ wanted[i]   ∀i
//!             planks[p]: Σ_{j of p} share[j] ≤ planks[p]            ∀p with a limit
//! ```
//!
//! Its dual is solved for the values, as a new pattern is a new row there and the solver goes on
//! from where it stands:
//!
//! ```text
//! Variables   value[i] ∈ [0, short], toll[p] ≥ 0, loss[i] ≥ 0
//! Maximise    Σ_i wanted[i]·value[i] − Σ_p planks[p]·toll[p] − Σ_i over[i]·loss[i]
//! Subject to  Σ_i made[i,j]·value[i] − toll[plank[j]] ≤ weight[j]               ∀j
//!             value[i] + loss[i] ≥ worth[i]                       ∀i with over[i] > 0
//! ```
//!
//! Weights are divided by the greatest of them, numbers of pieces by the greatest wanted.

use good_lp::solvers::microlp::microlp;
use good_lp::{Expression, ProblemVariables, Solution, SolverModel, Variable, variable};
use microlp::{ComparisonOp, LinearExpr};

use super::column::Column;
use super::data::SawingData;
use super::needs::Needs;

/// What the master is asked to make small, in units in which no weight is above 1.
#[derive(Clone, Debug)]
pub(super) struct Costs {
    /// The weight that counts as 1.
    pub(super) unit: f64,
    /// Of a missing blank of each kind.
    pub(super) short: Vec<f64>,
}

impl Costs {
    fn weight(&self, column: &Column) -> f64 {
        column.weight as f64 / self.unit
    }

    fn worth(&self, data: &SawingData, blank: usize) -> f64 {
        data.over_worth(blank).0 as f64 / self.unit
    }
}

/// The dual of the master, solved for the patterns known so far.
pub(super) struct Dual {
    places: Places,
    variables: Vec<microlp::Variable>,
    solved: microlp::Solution,
}

/// Where values of blanks, tolls and rewards of planks stand among the variables.
struct Places {
    values: Vec<Option<usize>>,
    tolls: Vec<Option<usize>>,
    rewards: Vec<Option<usize>>,
}

impl Places {
    /// The row of a pattern: variables by their places, with their coefficients.
    fn row(&self, column: &Column) -> Vec<(usize, f64)> {
        let plank = column.pattern.plank;
        let made = column.made.iter();
        made.filter_map(|&(blank, made)| Some((self.values[blank]?, made as f64)))
            .chain(self.tolls[plank].map(|at| (at, -1.0)))
            .chain(self.rewards[plank].map(|at| (at, 1.0)))
            .collect()
    }
}

impl Dual {
    /// Solves it; nothing where the solver fails.
    pub(super) fn solve(
        data: &SawingData,
        needs: &Needs,
        costs: &Costs,
        columns: &[Column],
    ) -> Option<Self> {
        let most = needs.wanted.iter().max().copied().unwrap_or(1).max(1) as f64;
        let mut variables = ProblemVariables::new();
        let mut objective = Expression::from(0.0);
        let mut count = 0;
        let mut place = || {
            count += 1;
            Some(count - 1)
        };
        let mut named: Vec<Variable> = Vec::new();
        let mut values = Vec::new();
        for (blank, (&wanted, &over)) in needs.wanted.iter().zip(&needs.over).enumerate() {
            if wanted + over == 0 {
                values.push(None);
                continue;
            }
            let value = variables.add(variable().min(0.0).max(costs.short[blank]));
            objective.add_mul(wanted as f64 / most, value);
            named.push(value);
            values.push(place());
        }
        let mut tolls = Vec::new();
        let mut rewards = Vec::new();
        for (plank, range) in needs.planks.iter().enumerate() {
            tolls.push(range.most.and_then(|left| {
                let toll = variables.add(variable().min(0.0));
                objective.add_mul(-(left as f64) / most, toll);
                named.push(toll);
                place()
            }));
            rewards.push(
                Some(range.least)
                    .filter(|&least| least > 0)
                    .and_then(|least| {
                        // No more than the plank costs, which could also be bought and left.
                        let weight = data.weight(plank) as f64 / costs.unit;
                        let reward = variables.add(variable().min(0.0).max(weight));
                        objective.add_mul(least as f64 / most, reward);
                        named.push(reward);
                        place()
                    }),
            );
        }
        let mut losses = Vec::new();
        for (blank, &over) in needs.over.iter().enumerate() {
            let worth = costs.worth(data, blank);
            if let Some(value) = values[blank]
                && over > 0
                && worth > 0.0
            {
                let loss = variables.add(variable().min(0.0));
                objective.add_mul(-(over as f64) / most, loss);
                losses.push((named[value], loss, worth));
            }
        }
        let mut problem = variables.maximise(objective).using(microlp);
        for (value, loss, worth) in losses {
            problem.add_constraint((value + loss).geq(worth));
        }
        let places = Places {
            values,
            tolls,
            rewards,
        };
        for column in columns {
            let mut row = Expression::from(0.0);
            for (at, coefficient) in places.row(column) {
                row.add_mul(coefficient, named[at]);
            }
            problem.add_constraint(row.leq(costs.weight(column)));
        }
        let solved = problem.solve().ok()?.into_inner();
        let variables = solved.iter().map(|(variable, _)| variable).collect();
        Some(Self {
            places,
            variables,
            solved,
        })
    }

    /// Goes on from where it stands with a pattern more; nothing where the solver fails.
    pub(super) fn with(mut self, costs: &Costs, column: &Column) -> Option<Self> {
        let mut row = LinearExpr::empty();
        for (at, coefficient) in self.places.row(column) {
            row.add(self.variables[at], coefficient);
        }
        let outcome = self
            .solved
            .add_constraint(row, ComparisonOp::Le, costs.weight(column))
            .ok()?;
        self.solved = outcome.into_solution().ok()?;
        Some(self)
    }

    /// Value of each kind of blank.
    pub(super) fn values(&self) -> Vec<f64> {
        self.read(&self.places.values)
    }

    /// Toll on each kind of plank; below 0 where more planks of it must be sawn than would be.
    pub(super) fn tolls(&self) -> Vec<f64> {
        let pairs = self
            .read(&self.places.tolls)
            .into_iter()
            .zip(self.read(&self.places.rewards));
        pairs.map(|(toll, reward)| toll - reward).collect()
    }

    fn read(&self, places: &[Option<usize>]) -> Vec<f64> {
        let value = |place: &Option<usize>| {
            place.map_or(0.0, |at| self.solved.var_value_raw(self.variables[at]))
        };
        places.iter().map(value).collect()
    }
}

/// Shares of the columns in a best mixture of them; nothing where the solver fails.
pub(super) fn shares(
    data: &SawingData,
    needs: &Needs,
    costs: &Costs,
    columns: &[Column],
) -> Option<Vec<f64>> {
    let most = needs.wanted.iter().max().copied().unwrap_or(1).max(1) as f64;
    let mut variables = ProblemVariables::new();
    let mut objective = Expression::from(0.0);
    let mut rows: Vec<Expression> = vec![Expression::from(0.0); needs.wanted.len()];
    let mut limits: Vec<Expression> = vec![Expression::from(0.0); needs.planks.len()];
    let mut shares = Vec::new();
    for column in columns {
        let share = variables.add(variable().min(0.0));
        objective.add_mul(costs.weight(column), share);
        for &(blank, made) in &column.made {
            rows[blank].add_mul(made as f64, share);
        }
        limits[column.pattern.plank].add_mul(1.0, share);
        shares.push(share);
    }
    for (blank, row) in rows.iter_mut().enumerate() {
        let missing = variables.add(variable().min(0.0));
        objective.add_mul(costs.short[blank], missing);
        row.add_mul(1.0, missing);
        let worth = costs.worth(data, blank);
        if worth > 0.0 && needs.over[blank] > 0 {
            let most_beyond = needs.over[blank] as f64 / most;
            let beyond = variables.add(variable().min(0.0).max(most_beyond));
            objective.add_mul(-worth, beyond);
            row.add_mul(-1.0, beyond);
        }
    }
    // A plank that must be there may be bought and left.
    let idle: Vec<Variable> = (0..needs.planks.len())
        .map(|plank| {
            let idle = variables.add(variable().min(0.0));
            objective.add_mul(data.weight(plank) as f64 / costs.unit, idle);
            idle
        })
        .collect();
    let mut problem = variables.minimise(objective).using(microlp);
    for ((row, &wanted), &over) in rows.into_iter().zip(&needs.wanted).zip(&needs.over) {
        if wanted + over > 0 {
            problem.add_constraint(row.geq(wanted as f64 / most));
        }
    }
    for (plank, (row, range)) in limits.into_iter().zip(&needs.planks).enumerate() {
        if range.least > 0 {
            let idle = idle[plank];
            problem.add_constraint((row.clone() + idle).geq(range.least as f64 / most));
        }
        if let Some(left) = range.most {
            problem.add_constraint(row.leq(left as f64 / most));
        }
    }
    let solved = problem.solve().ok()?;
    Some(
        shares
            .into_iter()
            .map(|share| solved.value(share) * most)
            .collect(),
    )
}
