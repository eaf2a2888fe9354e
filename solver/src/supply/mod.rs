//! What an order plan rests on beside barrels, slats and machines: periods, offers, costs, limits.

mod check;
mod from_planks;
mod offer;
mod period;
mod sawn;
mod stock_price;
#[cfg(test)]
mod tests;

pub(crate) use check::Supplies;
pub use offer::{OfferDraft, TierDraft};
pub use period::PeriodDraft;
pub use sawn::SawnSlatsDraft;

use crate::field::{Field, Typed};
use crate::order_plan::PlanAim;
use crate::project::{Entry, ProjectDraft};

/// What an order plan rests on, as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct SupplyDraft {
    /// The periods, in order.
    pub periods: Vec<PeriodDraft>,
    /// What suppliers offer.
    pub offers: Vec<Entry<OfferDraft>>,
    /// What sawing slats in the works costs.
    pub sawn: Vec<SawnSlatsDraft>,
    /// Price of an hour of the machines.
    pub hour_price: Typed,
    /// Machine time of a sandwich, seconds.
    pub sandwich_seconds: Typed,
    /// Cost of a change-over, beside its machine time.
    pub changeover_cost: Typed,
    /// Machine time of a change-over, minutes.
    pub changeover_minutes: Typed,
    /// Cost of holding a thousand pencils for a period.
    pub pencil_holding: Typed,
    /// Cost of holding a thousand slats for a period.
    pub slat_holding: Typed,
    /// Price of a thousand leads.
    pub lead_price: Typed,
    /// Price of the glue of a thousand sandwiches.
    pub glue_price: Typed,
    /// Price of the coat of a thousand pencils.
    pub coat_price: Typed,
    /// What a tonne of chips brings.
    pub chip_price: Typed,
    /// Least certified share of the wood, percent.
    pub least_certified: Typed,
    /// Most pencils stored; empty for as many as needed.
    pub most_pencils_stored: Typed,
    /// Most slats stored; empty for as many as needed.
    pub most_slats_stored: Typed,
    /// What is made as small as possible.
    pub aim: PlanAim,
    /// Most that a plan may cost; empty for no limit.
    pub cost_limit: Typed,
    /// Most timber of a plan, cubic metres; empty for no limit.
    pub timber_limit: Typed,
    /// Most change-overs of a plan; empty for no limit.
    pub changeover_limit: Typed,
}

impl SupplyDraft {
    /// One period in which the machines run as long as is needed, nothing offered, the first value in
    /// every field and no limits: only slats cost money.
    #[must_use]
    pub fn new() -> Self {
        Self {
            periods: vec![PeriodDraft::new("")],
            offers: Vec::new(),
            sawn: Vec::new(),
            hour_price: Typed::initial(Field::MachineHourPrice),
            sandwich_seconds: Typed::initial(Field::SandwichSeconds),
            changeover_cost: Typed::initial(Field::ChangeoverCost),
            changeover_minutes: Typed::initial(Field::ChangeoverMinutes),
            pencil_holding: Typed::initial(Field::PencilHolding),
            slat_holding: Typed::initial(Field::SlatHolding),
            lead_price: Typed::initial(Field::LeadPrice),
            glue_price: Typed::initial(Field::GluePrice),
            coat_price: Typed::initial(Field::CoatPrice),
            chip_price: Typed::initial(Field::ChipPrice),
            least_certified: Typed::initial(Field::CertifiedShare),
            most_pencils_stored: Typed::empty(),
            most_slats_stored: Typed::empty(),
            aim: PlanAim::Cost,
            cost_limit: Typed::empty(),
            timber_limit: Typed::empty(),
            changeover_limit: Typed::empty(),
        }
    }
}

impl Default for SupplyDraft {
    fn default() -> Self {
        Self::new()
    }
}

impl ProjectDraft {
    /// Offers each slat stock that nothing offers yet at its own pack, price and limit, so that an
    /// order plan of one period buys as the purchase list does.
    pub fn offer_each_stock(&mut self) {
        for place in 0..self.slats.len() {
            let Entry { id, draft } = &self.slats[place];
            let is_offered = (self.supply.offers.iter()).any(|offer| offer.draft.slat == *id);
            if !is_offered {
                let draft = OfferDraft::of_stock(*id, draft);
                let id = self.free_id();
                self.supply.offers.push(Entry { id, draft });
            }
        }
    }
}
