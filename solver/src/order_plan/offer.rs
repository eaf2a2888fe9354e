//! What a supplier asks for packs of slats.

/// What a price of a tier is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pricing {
    /// For every pack of an order that reaches the tier.
    AllUnits,
    /// For the packs of an order from the tier's first one on.
    Incremental,
}

impl Pricing {
    /// Both ways.
    pub const ALL: [Self; 2] = [Self::AllUnits, Self::Incremental];

    /// The words for what a price is for.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::AllUnits => "All packs",
            Self::Incremental => "Further packs",
        }
    }
}

/// A price that holds from so many packs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PriceTier {
    /// Fewest packs of an order that reaches the tier.
    pub from_packs: u32,
    /// Price of a pack, hundredths of the currency.
    pub pack_price: i64,
}

/// One supplier's offer of one slat stock. An order is what is ordered by it in one period.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Offer {
    /// Place of the stock in the draft.
    pub stock: usize,
    /// Slats in one pack, the unusable ones among them.
    pub pack_slats: u32,
    /// Prices by the size of an order; the first from one pack on, then ever larger.
    pub tiers: Vec<PriceTier>,
    /// How the tiers are read.
    pub pricing: Pricing,
    /// What an order costs beside its packs, such as freight; hundredths of the currency.
    pub order_cost: i64,
    /// Fewest packs of an order.
    pub least_packs: u32,
    /// Most packs of an order.
    pub most_packs: u32,
    /// Most packs over all periods, if limited.
    pub most_packs_in_all: Option<u32>,
    /// Periods from order to use: 0 is used in the period in which it is ordered.
    pub lead_periods: usize,
    /// Whether the wood is certified.
    pub certified: bool,
}

impl Offer {
    /// The tier that so many packs reach; `None` for no packs.
    #[must_use]
    pub fn tier(&self, packs: u64) -> Option<usize> {
        self.tiers
            .iter()
            .rposition(|tier| u64::from(tier.from_packs) <= packs)
            .filter(|_| packs > 0)
    }

    /// Price of an order with what it costs beside its packs, hundredths of the currency; 0 for no
    /// packs.
    ///
    /// With tiers from `f_r` packs at `c_r`, `q` packs that reach tier `r` cost `c_r·q` where a price
    /// is for all units, and `Σ_{s<r} c_s·(f_{s+1} − f_s) + c_r·(q − f_r + 1)`, with `f_0 = 1`, where
    /// it is incremental.
    ///
    /// ```
    /// use solver::order_plan::{Offer, PriceTier, Pricing};
    /// let tier = |from_packs, pack_price| PriceTier { from_packs, pack_price };
    /// let offer = |pricing| Offer {
    ///     stock: 0, pack_slats: 100, tiers: vec![tier(1, 100), tier(11, 80)], pricing,
    ///     order_cost: 5, least_packs: 1, most_packs: 50, most_packs_in_all: None,
    ///     lead_periods: 0, certified: false,
    /// };
    /// assert_eq!(offer(Pricing::AllUnits).price(12), 5 + 12 * 80);
    /// assert_eq!(offer(Pricing::Incremental).price(12), 5 + 10 * 100 + 2 * 80);
    /// ```
    #[must_use]
    pub fn price(&self, packs: u64) -> i64 {
        let Some(tier) = self.tier(packs) else {
            return 0;
        };
        let (base, each) = self.line(tier);
        packs
            .cast_signed()
            .saturating_mul(each)
            .saturating_add(base)
    }

    /// What an order in a tier costs as a line: a base and so much a pack, hundredths.
    pub(super) fn line(&self, tier: usize) -> (i64, i64) {
        let each = self.tiers[tier].pack_price;
        let base = match self.pricing {
            Pricing::AllUnits => 0,
            Pricing::Incremental => self.tiers[..tier]
                .iter()
                .zip(&self.tiers[1..])
                .map(|(lower, upper)| {
                    (lower.pack_price - upper.pack_price) * (i64::from(upper.from_packs) - 1)
                })
                .sum(),
        };
        (base + self.order_cost, each)
    }

    /// Whether an order costs so much a pack and nothing else, for any number of packs.
    pub(super) fn is_plain(&self) -> bool {
        self.tiers.len() == 1 && self.order_cost == 0 && self.least_packs <= 1
    }
}
