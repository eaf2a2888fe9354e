//! What an order plan rests on, in a file: its shape, and from the draft on the page and back.

use serde::Serialize;
use solver::{Entry, Id, OfferDraft, PeriodDraft, SawnSlatsDraft, SupplyDraft, TierDraft};

use super::{AimOfPlanWord, Entered, PricingWord};

/// What an order plan rests on: periods, offers, costs, limits.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SupplyFile {
    /// The periods, in order.
    pub periods: Vec<PeriodFile>,
    /// What suppliers offer.
    pub offers: Vec<OfferFile>,
    /// What sawing slats in the works costs.
    pub sawn_slats: Vec<SawnSlatsFile>,
    /// Price of an hour of the machines in major units of the currency.
    pub machine_hour_price: Entered,
    /// Machine time of a sandwich.
    pub sandwich_seconds: Entered,
    /// Cost of a change-over, beside its machine time, in major units of the currency.
    pub changeover_cost: Entered,
    /// Machine time of a change-over.
    pub changeover_minutes: Entered,
    /// Cost of holding a thousand pencils for a period.
    pub thousand_pencils_holding: Entered,
    /// Cost of holding a thousand slats for a period.
    pub thousand_slats_holding: Entered,
    /// Price of a thousand leads.
    pub thousand_leads_price: Entered,
    /// Price of the glue of a thousand sandwiches.
    pub thousand_sandwiches_glue_price: Entered,
    /// Price of the coat of a thousand pencils.
    pub thousand_pencils_coat_price: Entered,
    /// What a tonne of chips brings.
    pub chips_tonne_price: Entered,
    /// Least certified share of the wood that is bought and sawn, by volume.
    pub least_certified_percent: Entered,
    /// Most pencils stored at the end of a period; an empty text for no limit.
    pub most_pencils_stored: Entered,
    /// Most slats stored at the end of a period; an empty text for no limit.
    pub most_slats_stored: Entered,
    /// What is made as small as possible.
    pub aim: AimOfPlanWord,
    /// Most that a plan may cost in major units of the currency; an empty text for no limit.
    pub most_cost: Entered,
    /// Most timber of a plan; an empty text for no limit.
    pub most_timber_m3: Entered,
    /// Most change-overs of a plan; an empty text for no limit.
    pub most_changeovers: Entered,
}

/// A period.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PeriodFile {
    /// What it is called.
    pub name: String,
    /// Hours that the machines can run; an empty text for as many as needed.
    pub machine_hours: Entered,
}

/// An offer of slats.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OfferFile {
    /// Its lasting name, told apart from those of the other offers.
    pub id: u32,
    /// Who offers it.
    pub supplier: String,
    /// The `id` of the slat stock.
    pub slat: u32,
    /// Slats in a pack.
    pub pack_slats: Entered,
    /// Prices by the size of an order, the first from 1 pack on.
    pub tiers: Vec<TierFile>,
    /// How the prices are read.
    pub pricing: PricingWord,
    /// What an order costs beside its packs, in major units of the currency.
    pub order_cost: Entered,
    /// Fewest packs of an order.
    pub least_packs: Entered,
    /// Most packs of an order; an empty text for no limit.
    pub most_packs: Entered,
    /// Most packs over all periods; an empty text for no limit.
    pub pack_limit: Entered,
    /// Periods from order to use.
    pub lead_periods: Entered,
    /// Whether the wood is certified.
    pub certified: bool,
}

/// A price that holds from so many packs on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TierFile {
    /// Fewest packs of an order for which it holds.
    pub from_packs: Entered,
    /// Price of a pack in major units of the currency.
    pub pack_price: Entered,
}

/// Slats of a stock that the works saws itself.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SawnSlatsFile {
    /// The `id` of the slat stock.
    pub slat: u32,
    /// Cost of a thousand, with the planks, in major units of the currency.
    pub thousand_cost: Entered,
    /// Most sawn in a period.
    pub most_slats: Entered,
    /// Whether the wood is certified.
    pub certified: bool,
}

pub(super) fn supply_file(draft: &SupplyDraft) -> SupplyFile {
    SupplyFile {
        periods: draft.periods.iter().map(period_file).collect(),
        offers: draft.offers.iter().map(offer_file).collect(),
        sawn_slats: draft.sawn.iter().map(sawn_file).collect(),
        machine_hour_price: (&draft.hour_price).into(),
        sandwich_seconds: (&draft.sandwich_seconds).into(),
        changeover_cost: (&draft.changeover_cost).into(),
        changeover_minutes: (&draft.changeover_minutes).into(),
        thousand_pencils_holding: (&draft.pencil_holding).into(),
        thousand_slats_holding: (&draft.slat_holding).into(),
        thousand_leads_price: (&draft.lead_price).into(),
        thousand_sandwiches_glue_price: (&draft.glue_price).into(),
        thousand_pencils_coat_price: (&draft.coat_price).into(),
        chips_tonne_price: (&draft.chip_price).into(),
        least_certified_percent: (&draft.least_certified).into(),
        most_pencils_stored: (&draft.most_pencils_stored).into(),
        most_slats_stored: (&draft.most_slats_stored).into(),
        aim: draft.aim.into(),
        most_cost: (&draft.cost_limit).into(),
        most_timber_m3: (&draft.timber_limit).into(),
        most_changeovers: (&draft.changeover_limit).into(),
    }
}

pub(super) fn supply_draft(file: &SupplyFile) -> SupplyDraft {
    SupplyDraft {
        periods: file.periods.iter().map(period_draft).collect(),
        offers: file.offers.iter().map(offer_draft).collect(),
        sawn: file.sawn_slats.iter().map(sawn_draft).collect(),
        hour_price: (&file.machine_hour_price).into(),
        sandwich_seconds: (&file.sandwich_seconds).into(),
        changeover_cost: (&file.changeover_cost).into(),
        changeover_minutes: (&file.changeover_minutes).into(),
        pencil_holding: (&file.thousand_pencils_holding).into(),
        slat_holding: (&file.thousand_slats_holding).into(),
        lead_price: (&file.thousand_leads_price).into(),
        glue_price: (&file.thousand_sandwiches_glue_price).into(),
        coat_price: (&file.thousand_pencils_coat_price).into(),
        chip_price: (&file.chips_tonne_price).into(),
        least_certified: (&file.least_certified_percent).into(),
        most_pencils_stored: (&file.most_pencils_stored).into(),
        most_slats_stored: (&file.most_slats_stored).into(),
        aim: file.aim.into(),
        cost_limit: (&file.most_cost).into(),
        timber_limit: (&file.most_timber_m3).into(),
        changeover_limit: (&file.most_changeovers).into(),
    }
}

fn period_file(draft: &PeriodDraft) -> PeriodFile {
    PeriodFile {
        name: draft.name.clone(),
        machine_hours: (&draft.hours).into(),
    }
}

fn period_draft(file: &PeriodFile) -> PeriodDraft {
    PeriodDraft {
        name: file.name.clone(),
        hours: (&file.machine_hours).into(),
    }
}

fn offer_file(Entry { id, draft }: &Entry<OfferDraft>) -> OfferFile {
    OfferFile {
        id: id.0,
        supplier: draft.supplier.clone(),
        slat: draft.slat.0,
        pack_slats: (&draft.pack_slats).into(),
        tiers: draft.tiers.iter().map(tier_file).collect(),
        pricing: draft.pricing.into(),
        order_cost: (&draft.order_cost).into(),
        least_packs: (&draft.least_packs).into(),
        most_packs: (&draft.most_packs).into(),
        pack_limit: (&draft.pack_limit).into(),
        lead_periods: (&draft.lead_periods).into(),
        certified: draft.is_certified,
    }
}

fn offer_draft(file: &OfferFile) -> Entry<OfferDraft> {
    Entry {
        id: Id(file.id),
        draft: OfferDraft {
            supplier: file.supplier.clone(),
            slat: Id(file.slat),
            pack_slats: (&file.pack_slats).into(),
            tiers: file.tiers.iter().map(tier_draft).collect(),
            pricing: file.pricing.into(),
            order_cost: (&file.order_cost).into(),
            least_packs: (&file.least_packs).into(),
            most_packs: (&file.most_packs).into(),
            pack_limit: (&file.pack_limit).into(),
            lead_periods: (&file.lead_periods).into(),
            is_certified: file.certified,
        },
    }
}

fn tier_file(draft: &TierDraft) -> TierFile {
    TierFile {
        from_packs: (&draft.from_packs).into(),
        pack_price: (&draft.pack_price).into(),
    }
}

fn tier_draft(file: &TierFile) -> TierDraft {
    TierDraft {
        from_packs: (&file.from_packs).into(),
        pack_price: (&file.pack_price).into(),
    }
}

fn sawn_file(draft: &SawnSlatsDraft) -> SawnSlatsFile {
    SawnSlatsFile {
        slat: draft.slat.0,
        thousand_cost: (&draft.thousand_cost).into(),
        most_slats: (&draft.most_slats).into(),
        certified: draft.is_certified,
    }
}

fn sawn_draft(file: &SawnSlatsFile) -> SawnSlatsDraft {
    SawnSlatsDraft {
        slat: Id(file.slat),
        thousand_cost: (&file.thousand_cost).into(),
        most_slats: (&file.most_slats).into(),
        is_certified: file.certified,
    }
}
