//! The pack and the price of a slat stock beside those it is offered at.
//!
//! An order plan buys by the offers. Layouts, searches, thresholds and the list of slats to buy count
//! with the pack and the price of the stock itself, which is one pack at one price.

use super::OfferDraft;
use crate::field::Typed;
use crate::project::{Entry, Id, ProjectDraft};
use crate::slat::SlatDraft;

impl ProjectDraft {
    /// The stocks that are offered, none of their offers at their own pack and price; by their places.
    #[must_use]
    pub fn priced_apart(&self) -> Vec<usize> {
        let is_apart = |&place: &usize| {
            let Entry { id, draft } = &self.slats[place];
            let mut offers = self.offers_of(*id).peekable();
            offers.peek().is_some() && !offers.any(|offer| is_priced_as(draft, offer))
        };
        (0..self.slats.len()).filter(is_apart).collect()
    }

    /// Gives the stocks that are priced apart the pack, the price and the limit of the offer whose first
    /// price is the least for a slat; offers that cannot be read are passed over.
    pub fn price_as_offered(&mut self) {
        for place in self.priced_apart() {
            let priced = self.offers_of(self.slats[place].id).filter_map(|offer| {
                let price = first_price(offer)?;
                let (pack, price) = (number(&offer.pack_slats)?, number(price)?);
                (pack > 0.0).then_some((price / pack, offer))
            });
            let cheapest = priced.reduce(|one, other| if other.0 < one.0 { other } else { one });
            let Some(offer) = cheapest.map(|(_, offer)| offer.clone()) else {
                continue;
            };
            let draft = &mut self.slats[place].draft;
            if let Some(price) = first_price(&offer) {
                draft.pack_price = price.clone();
            }
            draft.pack_slats = offer.pack_slats;
            draft.pack_limit = offer.pack_limit;
        }
    }

    /// Whether there is a stock that nothing offers.
    #[must_use]
    pub fn has_unoffered(&self) -> bool {
        let mut slats = self.slats.iter();
        slats.any(|slat| self.offers_of(slat.id).next().is_none())
    }

    fn offers_of(&self, slat: Id) -> impl Iterator<Item = &OfferDraft> {
        let offers = self.supply.offers.iter().map(|entry| &entry.draft);
        offers.filter(move |offer| offer.slat == slat)
    }
}

/// Whether an offer is of the pack of a stock, at its price from the first pack on.
fn is_priced_as(stock: &SlatDraft, offer: &OfferDraft) -> bool {
    offer.pack_slats == stock.pack_slats && first_price(offer) == Some(&stock.pack_price)
}

fn first_price(offer: &OfferDraft) -> Option<&Typed> {
    offer.tiers.first().map(|tier| &tier.pack_price)
}

const fn number(typed: &Typed) -> Option<f64> {
    match typed {
        Typed::Number(number) => Some(*number),
        Typed::Text(_) => None,
    }
}
