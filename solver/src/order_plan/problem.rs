//! What can be wrong with a draft.

use super::check::{
    MOST_LEADS, MOST_OFFERS, MOST_PACK_SLATS, MOST_PACKS, MOST_PENCIL_KINDS, MOST_PENCILS,
    MOST_PERIODS, MOST_PRICE, MOST_SETUPS, MOST_SLATS, MOST_STOCKS, MOST_TIERS, MOST_TIME,
};

/// A rule the draft breaks. Things are counted from 0 in the fields and from 1 in the messages.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum OrderPlanProblem {
    /// No period, or too many.
    #[error("there are {periods} periods, there may be 1 to {MOST_PERIODS}")]
    Periods {
        /// Periods in the draft.
        periods: usize,
    },
    /// Too many pencils, stocks, set-ups or offers.
    #[error(
        "there are {pencils} pencils, {stocks} stocks, {setups} set-ups and {offers} offers, at most \
         {MOST_PENCIL_KINDS}, {MOST_STOCKS}, {MOST_SETUPS} and {MOST_OFFERS} can be planned at once"
    )]
    Lines {
        /// Kinds of pencil.
        pencils: usize,
        /// Slat stocks.
        stocks: usize,
        /// Set-ups.
        setups: usize,
        /// Offers.
        offers: usize,
    },
    /// A list by periods has another length than there are periods.
    #[error("a list of {} has {length} entries for {periods} periods", list.words())]
    ByPeriod {
        /// The list.
        list: PeriodList,
        /// Its length.
        length: usize,
        /// Periods in the draft.
        periods: usize,
    },
    /// More pencils in all than can be planned.
    #[error("{pencils} pencils are due or on hand, at most {MOST_PENCILS} can be planned at once")]
    TooManyPencils {
        /// Pencils due in all periods, and on hand.
        pencils: u128,
    },
    /// A price or cost below 0 or above [`MOST_PRICE`].
    #[error("{} is {amount} hundredths, it may be 0 to {MOST_PRICE}", what.words())]
    Price {
        /// What the price is of.
        what: Priced,
        /// The price.
        amount: i64,
    },
    /// A share above one.
    #[error("a share of {millionths} millionths is more than the whole")]
    Share {
        /// The share.
        millionths: u32,
    },
    /// More slats on hand or sawn than can be planned.
    #[error("slat stock {} has {slats} slats, at most {MOST_SLATS} can be planned", stock + 1)]
    TooManySlats {
        /// The stock.
        stock: usize,
        /// Slats.
        slats: u64,
    },
    /// A set-up names a pencil or a stock that is not there, or the same pencil twice.
    #[error("set-up {} names a pencil or a slat stock that is not there, or a pencil twice", setup + 1)]
    SetupParts {
        /// The set-up.
        setup: usize,
    },
    /// No leads in a sandwich, or too many.
    #[error("a sandwich of set-up {} has {leads} leads, it may have 1 to {MOST_LEADS}", setup + 1)]
    Leads {
        /// The set-up.
        setup: usize,
        /// Leads.
        leads: u64,
    },
    /// A sandwich takes the machines, or changing over, too long.
    #[error(
        "set-up {} takes {time} milliseconds a sandwich or seconds to change over, at most {MOST_TIME} \
         are allowed", setup + 1
    )]
    Time {
        /// The set-up.
        setup: usize,
        /// The longer of the two.
        time: u32,
    },
    /// The chips of a sandwich bring more than running it costs.
    #[error(
        "the chips of set-up {} bring more than its materials and machine time cost: put what they \
         bring into the price of the slats", setup + 1
    )]
    Credit {
        /// The set-up.
        setup: usize,
    },
    /// An offer names a stock that is not there.
    #[error("offer {} names a slat stock that is not there", offer + 1)]
    OfferStock {
        /// The offer.
        offer: usize,
    },
    /// A pack without usable slats, or with too many slats.
    #[error(
        "a pack of offer {} has {pack_slats} slats, {usable} of them usable; it may have 1 to \
         {MOST_PACK_SLATS}", offer + 1
    )]
    PackSlats {
        /// The offer.
        offer: usize,
        /// Slats in a pack.
        pack_slats: u32,
        /// Usable slats in a pack, rounded down.
        usable: u64,
    },
    /// The tiers do not start at one pack and rise, or are too many.
    #[error(
        "the tiers of offer {} must start at one pack and rise, and there may be 1 to {MOST_TIERS}",
        offer + 1
    )]
    Tiers {
        /// The offer.
        offer: usize,
    },
    /// The least order is above the largest, or the largest above [`MOST_PACKS`].
    #[error(
        "an order by offer {} may have {least} to {most} packs; the largest may be {MOST_PACKS}",
        offer + 1
    )]
    OrderSize {
        /// The offer.
        offer: usize,
        /// Fewest packs.
        least: u32,
        /// Most packs.
        most: u32,
    },
}

/// A list that has an entry for each period.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PeriodList {
    /// What is due of a pencil.
    Due {
        /// The pencil.
        pencil: usize,
    },
    /// What changing over to a set-up costs.
    Changeover {
        /// The set-up.
        setup: usize,
    },
    /// The seconds of the machines.
    Seconds,
}

impl PeriodList {
    fn words(self) -> String {
        match self {
            Self::Due { pencil } => format!("what is due of pencil {}", pencil + 1),
            Self::Changeover { setup } => {
                format!("what changing over to set-up {} costs", setup + 1)
            }
            Self::Seconds => "machine seconds".to_owned(),
        }
    }
}

/// What has a price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Priced {
    /// A pack of an offer.
    Pack {
        /// The offer.
        offer: usize,
    },
    /// An order by an offer.
    Order {
        /// The offer.
        offer: usize,
    },
    /// Holding a thousand pencils.
    HeldPencils {
        /// The pencil.
        pencil: usize,
    },
    /// Holding a thousand slats.
    HeldSlats {
        /// The stock.
        stock: usize,
    },
    /// Sawing a thousand slats.
    SawnSlats {
        /// The stock.
        stock: usize,
    },
    /// Changing over to a set-up.
    Changeover {
        /// The set-up.
        setup: usize,
    },
    /// What the chips of a thousand sandwiches bring.
    Chips {
        /// The set-up.
        setup: usize,
    },
    /// An hour of the machines.
    MachineHour,
    /// A thousand leads, glue for a thousand sandwiches, or coat for a thousand pencils.
    Materials,
}

impl Priced {
    fn words(self) -> String {
        match self {
            Self::Pack { offer } => format!("the price of a pack of offer {}", offer + 1),
            Self::Order { offer } => format!("the cost of an order by offer {}", offer + 1),
            Self::HeldPencils { pencil } => {
                format!("the cost of holding a thousand of pencil {}", pencil + 1)
            }
            Self::HeldSlats { stock } => {
                format!("the cost of holding a thousand of slat stock {}", stock + 1)
            }
            Self::SawnSlats { stock } => {
                format!("the cost of sawing a thousand of slat stock {}", stock + 1)
            }
            Self::Changeover { setup } => {
                format!("the cost of changing over to set-up {}", setup + 1)
            }
            Self::Chips { setup } => format!("what the chips of set-up {} bring", setup + 1),
            Self::MachineHour => "the cost of a machine hour".to_owned(),
            Self::Materials => "the cost of a thousand leads, glued or coated".to_owned(),
        }
    }
}
