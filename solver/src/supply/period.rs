//! A period of the order plan, as it is being described.

use crate::field::{Field, FieldProblem, Typed};
use crate::project::ProjectDraft;

/// A period: a week, a month, whatever the works plans in. It may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct PeriodDraft {
    /// What it is called.
    pub name: String,
    /// Hours that the machines can run; empty for as many as needed.
    pub hours: Typed,
}

impl ProjectDraft {
    /// What follows from a period that has gone from a place of the list: what is due later stays with
    /// its period, and what was due in it with the place; the last one is not taken without a new one.
    pub fn period_gone(&mut self, at: usize) {
        self.due_follows(&|due| if due > at { due - 1 } else { due });
        if self.supply.periods.is_empty() {
            self.supply.periods.push(PeriodDraft::new(""));
        }
    }

    /// What follows from a period that was put at a place of the list.
    pub fn period_added(&mut self, at: usize) {
        self.due_follows(&|due| if due >= at { due + 1 } else { due });
    }

    /// What follows from two periods that have changed places.
    pub fn periods_swapped(&mut self, one: usize, other: usize) {
        self.due_follows(&|due| match due {
            due if due == one => other,
            due if due == other => one,
            due => due,
        });
    }

    /// Lets every order be due where its period has gone, by places from 0.
    fn due_follows(&mut self, becomes: &dyn Fn(usize) -> usize) {
        for at in 0..self.orders.len() {
            if let Some(due) = self.due_period_number(at) {
                self.orders[at].due = Typed::Number((becomes(due) + 1) as f64);
            }
        }
    }
}

impl PeriodDraft {
    /// A new period, in which the machines run as long as is needed.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            hours: Typed::empty(),
        }
    }

    /// Whole seconds that the machines can run, rounded down; `None` for as many as needed.
    ///
    /// # Errors
    /// When the hours cannot be read or lie outside their range.
    ///
    /// ```
    /// use solver::{PeriodDraft, Typed};
    /// let mut period = PeriodDraft::new("March");
    /// assert_eq!(period.check(), Ok(None));
    /// period.hours = Typed::Number(1.5);
    /// assert_eq!(period.check(), Ok(Some(5_400)));
    /// ```
    pub fn check(&self) -> Result<Option<u64>, FieldProblem> {
        let hours = self.hours.read_optional(Field::MachineHours)?;
        // Hours of the range are far within u64.
        Ok(hours.map(|hours| (hours * 3_600.0) as u64))
    }
}
