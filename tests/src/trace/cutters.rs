//! Cutter sets planned for an order book.

use super::Trace;
use crate::cases::{any_barrel, any_rules, any_set, any_slat};
use crate::dice::Dice;
use solver::{
    CutterPlan, CutterQuestion, Id, NewSet, Order, Project, Proposal, SetUse, plan_cutters,
};

impl Trace {
    pub(super) fn cutters(&mut self) {
        for case in 0..24 {
            let mut dice = Dice::new(9_000_000 + case);
            let barrels: Vec<_> = (0..3).filter_map(|_| any_barrel(&mut dice)).collect();
            let slats = (0..3).filter_map(|_| any_slat(&mut dice)).collect();
            let sets: Vec<_> = (0..4).filter_map(|_| any_set(&mut dice)).collect();
            let Some(rules) = any_rules(&mut dice) else {
                self.line("cutters", "no rules");
                continue;
            };
            let mut order = |barrel| Order {
                barrel,
                pencils: (dice.bits() % 100_000) as u32,
                on_hand: 0,
            };
            let orders = (0..barrels.len()).map(&mut order).collect();
            let names: Vec<Id> = (1..).map(Id).take(barrels.len()).collect();
            let project = Project {
                barrels,
                slats,
                rules,
                orders,
            };
            let plan = plan_cutters(&CutterQuestion {
                project: &project,
                barrels: &names,
                sets: &sets,
                new_price: dice.one_of(&[None, Some(48_000)]),
            });
            self.cutter_plan(&plan);
        }
    }

    fn cutter_plan(&mut self, plan: &CutterPlan) {
        for made in plan.uses.iter().flatten().flatten() {
            self.set_use("set use", made);
        }
        for order in &plan.orders {
            self.numbers("set order", &[order.gross]);
            if let Some((set, made)) = &order.made {
                self.line("set made", &set.to_string());
                self.set_use("set use", made);
            }
        }
        for proposal in &plan.proposals {
            self.proposal(proposal);
        }
    }

    fn proposal(&mut self, proposal: &Proposal) {
        match proposal.set {
            NewSet::Offered { set } => self.line("set offered", &set.to_string()),
            NewSet::MadeToMeasure {
                barrel,
                pitch,
                widest,
                most,
            } => {
                self.line("set new", &format!("{barrel} {most}"));
                let pitches = [pitch, widest].map(|pitch| pitch.in_millimetres());
                self.numbers("set pitch", &pitches);
            }
        }
        let pays_back = proposal.books_to_pay_back().unwrap_or(-1.0);
        let amounts = [proposal.saving, proposal.newly_served, pays_back];
        self.numbers("set saves", &amounts);
        for (line, made) in &proposal.lines {
            self.set_use(&format!("set line {line}"), made);
        }
    }

    fn set_use(&mut self, name: &str, made: &SetUse) {
        let SetUse {
            stock,
            seam,
            across,
            pencils,
            gross_cost,
        } = *made;
        self.line(name, &format!("{stock} {seam:?} {across} {pencils}"));
        self.numbers("set cost", &[gross_cost]);
    }
}
