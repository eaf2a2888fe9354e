//! The order book: when a line is due, and many lines as few.

use super::{OrderDraft, ProjectDraft};
use crate::field::{Field, Typed};

impl ProjectDraft {
    /// The place of the period that an order is due in, by its place in the book; nothing where there is
    /// no such period.
    #[must_use]
    pub fn due_period(&self, order: usize) -> Option<usize> {
        self.due_period_number(order)
            .filter(|at| *at < self.supply.periods.len())
    }

    /// The same, whether there is such a period or not.
    pub(crate) fn due_period_number(&self, order: usize) -> Option<usize> {
        let due = self.orders.get(order)?.due.read(Field::DuePeriod).ok()?;
        // Within its range a period is whole and at least 1.
        Some(due as usize - 1)
    }

    /// Gathers the lines of the order book that ask for one barrel in one period: their gross, and their
    /// pencils on hand, are added up in the first of them. Lines that cannot be read stay.
    ///
    /// An order plan asks the same of both books; a line of its own has only the eye of the reader.
    pub fn gather_orders(&mut self) {
        let mut places = std::collections::HashMap::new();
        let mut gathered: Vec<OrderDraft> = Vec::new();
        for order in std::mem::take(&mut self.orders) {
            let key = match (&order.gross, &order.due, &order.on_hand) {
                (Typed::Number(gross), Typed::Number(due), Typed::Number(on_hand)) => {
                    Some((order.barrel, due.to_bits(), *gross, *on_hand))
                }
                _ => None,
            };
            let Some((barrel, due, gross, on_hand)) = key else {
                gathered.push(order);
                continue;
            };
            match places.get(&(barrel, due)) {
                None => {
                    places.insert((barrel, due), gathered.len());
                    gathered.push(order);
                }
                Some(&place) => {
                    let line: &mut OrderDraft = &mut gathered[place];
                    add(&mut line.gross, gross);
                    add(&mut line.on_hand, on_hand);
                }
            }
        }
        self.orders = gathered;
    }
}

fn add(typed: &mut Typed, more: f64) {
    if let Typed::Number(number) = typed {
        *number += more;
    }
}
