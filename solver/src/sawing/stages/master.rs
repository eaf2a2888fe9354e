//! The master problem of the stages: values of blanks, worths of sections, tolls of planks; and shares
//! of the ways.
//!
//! See the parent for the sets and the data. The dual is solved for the values, as a new way is a new
//! row there and the solver goes on from where it stands:
//!
//! ```text
//! Data        short, spare[p,l]   cost of a missing blank; worth of a section that is not needed
//! Variables   value[i] ∈ [0, short], worth[p,l] ≥ spare[p,l],
//!             toll[p] ≥ 0, reward[p] ∈ [0, weight[p]], loss[i] ≥ 0
//! Maximise    Σ_i wanted[i]·value[i] − Σ_p most[p]·toll[p] + Σ_p least[p]·reward[p] − Σ_i over[i]·loss[i]
//! Subject to  Σ_i made[i,r]·value[i] ≤ worth[p,l]                             ∀r of p,l
//!             Σ_l cut[l,c]·worth[p,l] ≤ weight[c] + toll[p] − reward[p]       ∀c of p
//!             value[i] + loss[i] ≥ over_worth[i]                              ∀i with over[i] > 0
//! ```

use good_lp::solvers::microlp::microlp;
use good_lp::{Expression, ProblemVariables, Solution, SolverModel, Variable, variable};
use microlp::{ComparisonOp, LinearExpr};

use super::columns::{Crosscut, Rip, Ways};
use super::problem::Problem;

/// The dual, solved for the ways known so far.
pub(super) struct Dual {
    places: Places,
    variables: Vec<microlp::Variable>,
    solved: microlp::Solution,
}

/// Where values, worths, tolls and rewards stand among the variables.
struct Places {
    values: Vec<Option<usize>>,
    worths: Vec<Vec<usize>>,
    tolls: Vec<Option<usize>>,
    rewards: Vec<Option<usize>>,
}

/// A row that must not be above its right side.
struct Row {
    left: Vec<(usize, f64)>,
    right: f64,
}

impl Places {
    fn crosscut(&self, problem: &Problem<'_>, way: &Crosscut) -> Row {
        let plank = way.plank;
        let sections = self.worths[plank].iter().zip(&way.sections);
        let left = sections
            .filter(|(_, count)| **count > 0)
            .map(|(&at, &count)| (at, count as f64))
            .chain(self.tolls[plank].map(|at| (at, -1.0)))
            .chain(self.rewards[plank].map(|at| (at, 1.0)));
        Row {
            left: left.collect(),
            right: problem.crosscut(way),
        }
    }

    fn rip(&self, way: &Rip) -> Row {
        let blanks = way.blanks.iter();
        let left = blanks
            .filter_map(|&(blank, count)| Some((self.values[blank]?, count as f64)))
            .chain([(self.worths[way.plank][way.strip], -1.0)]);
        Row {
            left: left.collect(),
            right: 0.0,
        }
    }
}

/// Variables with their part of what is made great.
struct Builder {
    variables: ProblemVariables,
    objective: Expression,
    named: Vec<Variable>,
}

impl Builder {
    fn add(&mut self, least: f64, most: f64, gain: f64) -> usize {
        let variable = self.variables.add(variable().min(least).max(most));
        self.objective.add_mul(gain, variable);
        self.named.push(variable);
        self.named.len() - 1
    }
}

impl Dual {
    /// Solves it; nothing where the solver fails.
    pub(super) fn solve(problem: &Problem<'_>, ways: &Ways) -> Option<Self> {
        let Problem { data, needs, .. } = problem;
        let mut builder = Builder {
            variables: ProblemVariables::new(),
            objective: Expression::from(0.0),
            named: Vec::new(),
        };
        let mut values = Vec::new();
        let mut losses = Vec::new();
        for (blank, (&wanted, &over)) in needs.wanted.iter().zip(&needs.over).enumerate() {
            let is_of_use = wanted + over > 0;
            let value = is_of_use.then(|| builder.add(0.0, problem.short(), problem.count(wanted)));
            let worth = problem.over_worth(blank);
            if let Some(value) = value
                && over > 0
                && worth > 0.0
            {
                let loss = builder.add(0.0, f64::INFINITY, -problem.count(over));
                losses.push((value, loss, worth));
            }
            values.push(value);
        }
        let mut worths = Vec::new();
        for (plank, board) in data.boards().iter().enumerate() {
            let strips = 0..board.strips.len();
            let worth = |strip| builder.add(problem.spare(plank, strip), f64::INFINITY, 0.0);
            worths.push(strips.map(worth).collect());
        }
        let mut tolls = Vec::new();
        let mut rewards = Vec::new();
        for (plank, range) in needs.planks.iter().enumerate() {
            let most = range.most.map(|most| problem.count(most));
            tolls.push(most.map(|most| builder.add(0.0, f64::INFINITY, -most)));
            // No more than the plank costs, which could also be bought and left.
            let reward = |least| builder.add(0.0, problem.plank(plank), problem.count(least));
            rewards.push(Some(range.least).filter(|&least| least > 0).map(reward));
        }
        let places = Places {
            values,
            worths,
            tolls,
            rewards,
        };
        let named = builder.named;
        let mut model = builder.variables.maximise(builder.objective).using(microlp);
        for (value, loss, worth) in losses {
            model.add_constraint((named[value] + named[loss]).geq(worth));
        }
        let crosscuts = ways.crosscuts.iter();
        let rows = crosscuts
            .map(|way| places.crosscut(problem, way))
            .chain(ways.rips.iter().map(|way| places.rip(way)));
        for row in rows {
            let mut left = Expression::from(0.0);
            for (at, coefficient) in row.left {
                left.add_mul(coefficient, named[at]);
            }
            model.add_constraint(left.leq(row.right));
        }
        let solved = model.solve().ok()?.into_inner();
        let variables = solved.iter().map(|(variable, _)| variable).collect();
        Some(Self {
            places,
            variables,
            solved,
        })
    }

    /// Goes on with more ways; nothing where the solver fails.
    pub(super) fn with(mut self, problem: &Problem<'_>, ways: &Ways) -> Option<Self> {
        for way in &ways.crosscuts {
            let row = self.places.crosscut(problem, way);
            self = self.with_row(row)?;
        }
        for way in &ways.rips {
            let row = self.places.rip(way);
            self = self.with_row(row)?;
        }
        Some(self)
    }

    fn with_row(mut self, row: Row) -> Option<Self> {
        let mut left = LinearExpr::empty();
        for (at, coefficient) in row.left {
            left.add(self.variables[at], coefficient);
        }
        let outcome = (self.solved).add_constraint(left, ComparisonOp::Le, row.right);
        self.solved = outcome.ok()?.into_solution().ok()?;
        Some(self)
    }

    fn read(&self, at: usize) -> f64 {
        self.solved.var_value_raw(self.variables[at])
    }

    /// Value of each kind of blank, 0 or more.
    pub(super) fn values(&self) -> Vec<f64> {
        let values = self.places.values.iter();
        values
            .map(|at| at.map_or(0.0, |at| self.read(at).max(0.0)))
            .collect()
    }

    /// Worth of a section of each length, for each kind of plank.
    pub(super) fn worths(&self) -> Vec<Vec<f64>> {
        let worths = self.places.worths.iter();
        worths
            .map(|worths| worths.iter().map(|&at| self.read(at)).collect())
            .collect()
    }

    /// Toll on each kind of plank; below 0 where more planks of it must be sawn than would be.
    pub(super) fn tolls(&self) -> Vec<f64> {
        let read = |at: &Option<usize>| at.map_or(0.0, |at| self.read(at));
        let pairs = self.places.tolls.iter().zip(&self.places.rewards);
        pairs
            .map(|(toll, reward)| read(toll) - read(reward))
            .collect()
    }
}

/// How much of each way a best mixture has.
pub(super) struct Shares {
    /// Planks, in the order of the ways to crosscut.
    pub(super) crosscuts: Vec<f64>,
    /// Sections, in the order of the ways to rip.
    pub(super) rips: Vec<f64>,
}

impl Shares {
    /// Solves for them; nothing where the solver fails.
    pub(super) fn solve(
        problem: &Problem<'_>,
        crosscuts: &[Crosscut],
        rips: &[Rip],
    ) -> Option<Self> {
        let Problem { data, needs, .. } = problem;
        let none = || Expression::from(0.0);
        let mut variables = ProblemVariables::new();
        let mut objective = none();
        let mut blanks: Vec<Expression> = needs.wanted.iter().map(|_| none()).collect();
        let mut planks: Vec<Expression> = needs.planks.iter().map(|_| none()).collect();
        let mut lengths: Vec<Vec<Expression>> = (data.boards().iter())
            .map(|board| board.strips.iter().map(|_| none()).collect())
            .collect();
        let mut crosscut_shares = Vec::new();
        for way in crosscuts {
            let share = variables.add(variable().min(0.0));
            let mut weight = problem.crosscut(way);
            for (strip, &count) in way.sections.iter().enumerate() {
                weight -= problem.spare(way.plank, strip) * count as f64;
                lengths[way.plank][strip].add_mul(count as f64, share);
            }
            objective.add_mul(weight, share);
            planks[way.plank].add_mul(1.0, share);
            crosscut_shares.push(share);
        }
        let mut rip_shares = Vec::new();
        for way in rips {
            let share = variables.add(variable().min(0.0));
            objective.add_mul(problem.spare(way.plank, way.strip), share);
            lengths[way.plank][way.strip].add_mul(-1.0, share);
            for &(blank, count) in &way.blanks {
                blanks[blank].add_mul(count as f64, share);
            }
            rip_shares.push(share);
        }
        for (blank, row) in blanks.iter_mut().enumerate() {
            let missing = variables.add(variable().min(0.0));
            objective.add_mul(problem.short(), missing);
            row.add_mul(1.0, missing);
            let worth = problem.over_worth(blank);
            if worth > 0.0 && needs.over[blank] > 0 {
                let most = problem.count(needs.over[blank]);
                let beyond = variables.add(variable().min(0.0).max(most));
                objective.add_mul(-worth, beyond);
                row.add_mul(-1.0, beyond);
            }
        }
        let idle: Vec<Variable> = (0..planks.len())
            .map(|plank| {
                let idle = variables.add(variable().min(0.0));
                objective.add_mul(problem.plank(plank), idle);
                idle
            })
            .collect();
        let mut model = variables.minimise(objective).using(microlp);
        for ((row, &wanted), &over) in blanks.into_iter().zip(&needs.wanted).zip(&needs.over) {
            if wanted + over > 0 {
                model.add_constraint(row.geq(problem.count(wanted)));
            }
        }
        for row in lengths.into_iter().flatten() {
            model.add_constraint(row.geq(0.0));
        }
        for ((row, range), idle) in planks.into_iter().zip(&needs.planks).zip(idle) {
            if range.least > 0 {
                model.add_constraint((row.clone() + idle).geq(problem.count(range.least)));
            }
            if let Some(most) = range.most {
                model.add_constraint(row.leq(problem.count(most)));
            }
        }
        let solved = model.solve().ok()?;
        let read = |shares: Vec<Variable>| {
            let shares = shares.into_iter();
            shares
                .map(|share| solved.value(share) * problem.pieces)
                .collect()
        };
        Some(Self {
            crosscuts: read(crosscut_shares),
            rips: read(rip_shares),
        })
    }
}
