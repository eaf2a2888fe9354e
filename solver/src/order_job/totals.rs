//! What a plan comes to in a few numbers, to be held against another plan.

use super::reckoning::{CostLine, OrderReckoning};
use crate::comparison::{Line, Part, Value};
use crate::quantity::Volume;

/// What a plan comes to. Money is in hundredths of the currency.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanTotals {
    /// What all costs.
    pub total: f64,
    /// Gross of pencils due.
    pub gross: f64,
    /// Costs by kind, in the order of [`CostLine::LABELS`]; they add up to the total.
    pub costs: [f64; 7],
    /// Wood of the slats bought and sawn.
    pub timber: Volume,
    /// Sandwiches glued.
    pub sandwiches: u64,
    /// Hours that the machines run and are changed over.
    pub hours: f64,
    /// Set-ups that run, counted in each period.
    pub changeovers: u64,
    /// Packs bought.
    pub packs: u64,
    /// Slats sawn in the works.
    pub sawn: u64,
}

impl OrderReckoning {
    /// What the plan comes to in a few numbers.
    #[must_use]
    pub fn totals(&self) -> PlanTotals {
        let runs = || self.periods.iter().flat_map(|period| &period.runs);
        PlanTotals {
            total: self.total,
            gross: self.gross,
            costs: self.costs.map(|cost| cost.amount),
            timber: self.timber,
            sandwiches: runs().map(|run| run.sandwiches).sum(),
            hours: self.periods.iter().map(|period| period.hours).sum(),
            changeovers: self.changeovers,
            packs: self.orders.iter().map(|order| order.packs).sum(),
            sawn: self.sawn.iter().map(|lot| lot.slats).sum(),
        }
    }
}

impl PlanTotals {
    /// An amount shared out over the gross due; none where nothing is due.
    #[must_use]
    pub fn per_gross(&self, amount: f64) -> Option<f64> {
        (self.gross > 0.0).then(|| amount / self.gross)
    }

    /// What costs money in the plan, each kind with its words; the kinds that cost nothing are left out.
    pub fn costs(&self) -> impl Iterator<Item = CostLine> {
        let lines = CostLine::LABELS.into_iter().zip(self.costs);
        let lines = lines.filter(|(_, amount)| *amount != 0.0);
        lines.map(|(label, amount)| CostLine { label, amount })
    }
}

/// Holds two plans side by side, in the order a buyer reads them. Of every line less is better. Costs
/// that neither plan has are left out.
///
/// ```
/// use solver::{LengthUnit, PlanTotals, Verdict, Volume, compare_plans};
/// let dear = PlanTotals {
///     total: 500_00.0, gross: 100.0, costs: [500_00.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0],
///     timber: Volume::cubic_millimetres(2e8), sandwiches: 1_440, hours: 1.7, changeovers: 1, packs: 5,
///     sawn: 0,
/// };
/// let cheap = PlanTotals { total: 480_00.0, costs: [480_00.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], ..dear };
/// let lines = compare_plans(&dear, &cheap);
/// let unit = LengthUnit::Millimetre;
/// assert_eq!(lines[0].change(unit).unwrap(), "−20.00");
/// assert_eq!(lines[0].verdict(unit), Some(Verdict::Better));
/// ```
#[must_use]
pub fn compare_plans(first: &PlanTotals, second: &PlanTotals) -> Vec<Line> {
    let mut lines = Vec::new();
    let mut line = |part, label, read: &dyn Fn(&PlanTotals) -> Option<Value>| {
        let values = [read(first), read(second)];
        if values.iter().any(Option::is_some) {
            lines.push(Line::of_less(part, label, values));
        }
    };
    let plan = Part::OrderPlan;
    line(plan, "Cost in all", &|plan| Some(Value::Money(plan.total)));
    line(plan, "Cost of a gross", &|plan| {
        plan.per_gross(plan.total).map(Value::Money)
    });
    line(plan, "Timber", &|plan| Some(Value::Timber(plan.timber)));
    line(plan, "Packs bought", &|plan| Some(Value::Count(plan.packs)));
    line(plan, "Slats sawn", &|plan| Some(Value::Count(plan.sawn)));
    line(plan, "Sandwiches", &|plan| {
        Some(Value::Count(plan.sandwiches))
    });
    line(plan, "Machine hours", &|plan| {
        Some(Value::Pieces(plan.hours))
    });
    line(plan, "Change-overs", &|plan| {
        Some(Value::Count(plan.changeovers))
    });
    for (kind, label) in CostLine::LABELS.into_iter().enumerate() {
        let costs = [first.costs[kind], second.costs[kind]];
        if costs != [0.0; 2] {
            let values = costs.map(|cost| Some(Value::Money(cost)));
            lines.push(Line::of_less(Part::Costs, label, values));
        }
    }
    lines
}
