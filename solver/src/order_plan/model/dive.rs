//! Choices made one after the other, the relaxation solved anew after each.

use crate::order_plan::data::OrderPlanData;

use super::formulation::Formulation;
use super::{LONGEST_SLICE, Point, Question, Whole};

/// Choices nearer to 0 or 1 than this are made.
const ROUGH: f64 = 1e-6;
/// One in so many of the open choices is made before the next look.
const AT_ONCE: usize = 8;

/// Makes the choices of a relaxation that are nearest to being made, until all are. `look` sees each
/// point with the value of the aim, and may stop the dive. Tells how many relaxations were solved.
pub(in crate::order_plan) fn dive(
    data: &OrderPlanData,
    question: Question<'_>,
    look: &mut dyn FnMut(&Point, i64) -> bool,
) -> u64 {
    let relaxed = Question {
        whole: Whole::Nothing,
        ..question
    };
    let model = Formulation::new(data, relaxed);
    let choices = model.columns.choices();
    let mut steps = 1;
    let mut problem = model.problem.as_inner().clone();
    problem.set_time_limit(LONGEST_SLICE);
    let solved = problem.solve().ok();
    let Some(mut solution) = solved.and_then(|outcome| outcome.into_solution().ok()) else {
        return steps;
    };
    loop {
        let values: Vec<f64> = solution.iter().map(|(_, value)| value).collect();
        let value = model.safe_bound(solution.objective());
        let mut open: Vec<usize> = choices
            .iter()
            .copied()
            .filter(|&at| values[at] > ROUGH && values[at] < 1.0 - ROUGH)
            .collect();
        if !look(&model.point(&values), value) || open.is_empty() {
            return steps;
        }
        open.sort_by(|&one, &other| values[other].total_cmp(&values[one]));
        open.truncate(open.len().div_ceil(AT_ONCE));
        for at in open {
            let variable = solution.iter().nth(at).map(|(variable, _)| variable);
            let Some(variable) = variable else {
                return steps;
            };
            // What the choices before it have settled needs no choice any more.
            let now = solution.var_value_raw(variable);
            if now <= ROUGH || now >= 1.0 - ROUGH {
                continue;
            }
            steps += 1;
            let next = solution.fix_var(variable, 1.0).ok();
            match next.and_then(|outcome| outcome.into_solution().ok()) {
                Some(next) => solution = next,
                None => return steps,
            }
        }
    }
}
