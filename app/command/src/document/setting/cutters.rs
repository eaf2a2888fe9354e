//! What cutter sets make, and what one more would save.

use app::project_file::WayWord;
use schemars::JsonSchema;
use serde::Serialize;
use solver::{CutterPlan, NewSet, OrderNow, ProjectDraft, Proposal, SetUse, Way};

use crate::document::Named;

/// What cutter sets make, and what one more would save.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct CuttersPart {
    /// The lines of the order book.
    orders: Vec<OrderLine>,
    /// Which barrels each cutter set makes; those that make none are left out.
    sets: Vec<SetLine>,
    /// One more set, the one that saves most first; those that change nothing are left out.
    proposals: Vec<ProposalLine>,
}

/// A line of the order book.
#[derive(Debug, Serialize, JsonSchema)]
struct OrderLine {
    /// The barrel.
    barrel: Named,
    /// Gross ordered.
    gross: f64,
    /// The cheapest set that is owned; `null` where none makes this barrel.
    cutter_set: Option<Named>,
    /// How it is made with that set; `null` where none makes it.
    made: Option<UseLine>,
}

/// What a cutter set makes.
#[derive(Debug, Serialize, JsonSchema)]
struct SetLine {
    /// The set.
    cutter_set: Named,
    /// A barrel it makes.
    barrel: Named,
    /// The cheapest way to make it.
    made: UseLine,
}

/// How a barrel is made with a set.
#[derive(Debug, Serialize, JsonSchema)]
struct UseLine {
    /// The stock of both slats.
    stock: Named,
    /// How the barrel is turned.
    way: WayWord,
    /// Pencils side by side.
    across: u32,
    /// Pencils from one sandwich.
    pencils: u32,
    /// Price of the slats of a gross of good pencils, in hundredths of the currency.
    price_per_gross_hundredths: f64,
}

/// One more set.
#[derive(Debug, Serialize, JsonSchema)]
struct ProposalLine {
    /// The set that is offered; `null` for one made to measure.
    offered: Option<Named>,
    /// The set made to measure; `null` for one that is offered.
    made_to_measure: Option<NewLine>,
    /// Its price, in hundredths of the currency.
    price_hundredths: i64,
    /// What it saves in slats over the order book, in hundredths of the currency.
    saving_hundredths: f64,
    /// How often the order book is made until the set has paid for itself; `null` where it saves
    /// nothing.
    books_to_pay_back: Option<f64>,
    /// Gross of the order book that no owned set makes and this one would.
    newly_served_gross: f64,
    /// The lines of the order book that it changes, counted from 0, and how they would be made.
    lines: Vec<ChangedLine>,
}

/// A set made to measure.
#[derive(Debug, Serialize, JsonSchema)]
struct NewLine {
    /// The barrel it is for.
    barrel: Named,
    /// The closest pitch at which it saves so much, mm.
    pitch_mm: f64,
    /// The largest pitch at which it saves as much, mm.
    widest_pitch_mm: f64,
    /// Grooves side by side.
    most: u32,
}

/// A line of the order book that changes.
#[derive(Debug, Serialize, JsonSchema)]
struct ChangedLine {
    /// Its place in the order book, from 0.
    order: usize,
    /// How it would be made.
    made: UseLine,
}

/// The members of the lists of a project.
#[derive(Clone, Copy)]
struct Lists<'a>(&'a ProjectDraft);

impl CuttersPart {
    pub(super) fn of(draft: &ProjectDraft, plan: &CutterPlan) -> Self {
        let lists = Lists(draft);
        let sets = plan.uses.iter().enumerate().flat_map(|(set, barrels)| {
            let made = barrels.iter().enumerate();
            made.filter_map(move |(barrel, made)| {
                Some(SetLine {
                    cutter_set: lists.cutter_set(set),
                    barrel: lists.barrel(barrel),
                    made: lists.made(made.as_ref()?),
                })
            })
        });
        Self {
            orders: plan.orders.iter().map(|order| lists.order(order)).collect(),
            sets: sets.collect(),
            proposals: (plan.proposals.iter())
                .map(|proposal| lists.proposal(proposal))
                .collect(),
        }
    }
}

impl Lists<'_> {
    fn barrel(self, at: usize) -> Named {
        Named::of(&self.0.barrels[at], |barrel| &barrel.name)
    }

    fn cutter_set(self, at: usize) -> Named {
        Named::of(&self.0.cutter_sets[at], |set| &set.name)
    }

    fn made(self, made: &SetUse) -> UseLine {
        UseLine {
            stock: Named::of(&self.0.slats[made.stock], |slat| &slat.name),
            way: Way::Usual(made.seam).into(),
            across: made.across,
            pencils: made.pencils,
            price_per_gross_hundredths: made.gross_cost,
        }
    }

    fn order(self, order: &OrderNow) -> OrderLine {
        OrderLine {
            barrel: self.barrel(order.barrel),
            gross: order.gross,
            cutter_set: order.made.map(|(set, _)| self.cutter_set(set)),
            made: order.made.map(|(_, made)| self.made(&made)),
        }
    }

    fn proposal(self, proposal: &Proposal) -> ProposalLine {
        let (offered, made_to_measure) = match proposal.set {
            NewSet::Offered { set } => (Some(self.cutter_set(set)), None),
            NewSet::MadeToMeasure {
                barrel,
                pitch,
                widest,
                most,
            } => {
                let new = NewLine {
                    barrel: self.barrel(barrel),
                    pitch_mm: pitch.in_millimetres(),
                    widest_pitch_mm: widest.in_millimetres(),
                    most,
                };
                (None, Some(new))
            }
        };
        ProposalLine {
            offered,
            made_to_measure,
            price_hundredths: proposal.price,
            saving_hundredths: proposal.saving,
            books_to_pay_back: proposal.books_to_pay_back(),
            newly_served_gross: proposal.newly_served,
            lines: (proposal.lines.iter())
                .map(|(order, made)| ChangedLine {
                    order: *order,
                    made: self.made(made),
                })
                .collect(),
        }
    }
}
