//! An offer of slats, as it is being described.

use super::check::hundredths;
use crate::field::{Cause, Field, FieldProblem, Typed};
use crate::order_plan::{MOST_PACKS, Offer, PriceTier, Pricing};
use crate::project::Id;
use crate::slat::SlatDraft;

/// What a supplier offers of one slat stock. It may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct OfferDraft {
    /// Who offers it.
    pub supplier: String,
    /// The slat stock.
    pub slat: Id,
    /// Slats in a pack.
    pub pack_slats: Typed,
    /// Prices by the size of an order.
    pub tiers: Vec<TierDraft>,
    /// How the prices are read.
    pub pricing: Pricing,
    /// What an order costs beside its packs.
    pub order_cost: Typed,
    /// Fewest packs of an order.
    pub least_packs: Typed,
    /// Most packs of an order; empty for as many as needed.
    pub most_packs: Typed,
    /// Most packs over all periods; empty for as many as needed.
    pub pack_limit: Typed,
    /// Periods from order to use.
    pub lead_periods: Typed,
    /// Whether the wood is certified.
    pub is_certified: bool,
}

/// A price that holds from so many packs on. It may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct TierDraft {
    /// Fewest packs of an order for which it holds.
    pub from_packs: Typed,
    /// Price of a pack.
    pub pack_price: Typed,
}

impl TierDraft {
    /// A price that holds from the first pack on.
    #[must_use]
    pub const fn from_first(pack_price: Typed) -> Self {
        Self {
            from_packs: Typed::initial(Field::TierFrom),
            pack_price,
        }
    }
}

impl OfferDraft {
    /// A new offer of a stock, with one price and the first value in every field; no limits.
    #[must_use]
    pub fn new(supplier: &str, slat: Id) -> Self {
        Self {
            supplier: supplier.to_owned(),
            slat,
            pack_slats: Typed::initial(Field::PackSlats),
            tiers: vec![TierDraft::from_first(Typed::initial(Field::PackPrice))],
            pricing: Pricing::AllUnits,
            order_cost: Typed::initial(Field::OrderCost),
            least_packs: Typed::initial(Field::LeastOrder),
            most_packs: Typed::empty(),
            pack_limit: Typed::empty(),
            lead_periods: Typed::initial(Field::LeadPeriods),
            is_certified: false,
        }
    }

    /// The offer that the pack, the price and the limit of a stock amount to.
    #[must_use]
    pub fn of_stock(slat: Id, stock: &SlatDraft) -> Self {
        Self {
            pack_slats: stock.pack_slats.clone(),
            tiers: vec![TierDraft::from_first(stock.pack_price.clone())],
            pack_limit: stock.pack_limit.clone(),
            ..Self::new("", slat)
        }
    }

    /// The offer of the stock at a place of the list, in whole packs and hundredths, and every field
    /// that cannot be read: its own, and those of its prices with their places.
    pub(super) fn read(
        &self,
        stock: usize,
    ) -> (Offer, Vec<FieldProblem>, Vec<(usize, FieldProblem)>) {
        let mut problems = Vec::new();
        let mut tier_problems = Vec::new();
        let mut tiers = Vec::with_capacity(self.tiers.len());
        for (place, tier) in self.tiers.iter().enumerate() {
            let mut read = |typed: &Typed, field| {
                typed.read(field).unwrap_or_else(|problem| {
                    tier_problems.push((place, problem));
                    0.0
                })
            };
            tiers.push(PriceTier {
                // The range of the field lies within u32.
                from_packs: read(&tier.from_packs, Field::TierFrom) as u32,
                pack_price: hundredths(read(&tier.pack_price, Field::PackPrice)),
            });
        }
        let mut optional = |typed: &Typed, field| {
            typed.read_optional(field).unwrap_or_else(|problem| {
                problems.push(problem);
                None
            })
        };
        let most_packs = optional(&self.most_packs, Field::MostOrder);
        let pack_limit = optional(&self.pack_limit, Field::PackLimit);
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let offer = Offer {
            stock,
            pack_slats: read(&self.pack_slats, Field::PackSlats) as u32,
            tiers,
            pricing: self.pricing,
            order_cost: hundredths(read(&self.order_cost, Field::OrderCost)),
            least_packs: read(&self.least_packs, Field::LeastOrder) as u32,
            most_packs: most_packs.map_or(MOST_PACKS, |most| most as u32),
            most_packs_in_all: pack_limit.map(|most| most as u32),
            lead_periods: read(&self.lead_periods, Field::LeadPeriods) as usize,
            certified: self.is_certified,
        };
        (offer, problems, tier_problems)
    }
}

impl Offer {
    /// The prices that are above the one for fewer packs, by their places.
    pub(super) fn prices_that_rise(&self) -> Vec<(usize, FieldProblem)> {
        let pairs = self.tiers.windows(2).zip(1..);
        let rises = pairs.filter(|(pair, _)| pair[1].pack_price > pair[0].pack_price);
        let told = rises.map(|(pair, place)| {
            let cause = Cause::DearerForMore {
                price: pair[1].pack_price,
                fewer: pair[0].pack_price,
            };
            let field = Field::PackPrice;
            (place, FieldProblem { field, cause })
        });
        told.collect()
    }
}
