//! How a plan fails its recount.

use super::draft::PlanAim;

/// How a plan fails its recount: a fault of this module, never of the data. Things are counted from 0
/// in the fields and from 1 in the messages.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum OrderPlanFault {
    /// The plan was made for other data.
    #[error("the plan does not fit the order book")]
    Shape,
    /// Pencils are missing, or their store is another than told.
    #[error("pencil {} has a store of {left} after period {}", pencil + 1, period + 1)]
    Pencils {
        /// The pencil.
        pencil: usize,
        /// The period.
        period: usize,
        /// As counted.
        left: i128,
    },
    /// Slats are missing, or their store is another than told.
    #[error("slat stock {} has a store of {left} after period {}", stock + 1, period + 1)]
    Slats {
        /// The stock.
        stock: usize,
        /// The period.
        period: usize,
        /// As counted.
        left: i128,
    },
    /// More is sawn than can be.
    #[error("{sawn} slats of stock {} are sawn in period {}, at most {most} can be", stock + 1, period + 1)]
    Sawing {
        /// The stock.
        stock: usize,
        /// The period.
        period: usize,
        /// Slats sawn.
        sawn: u64,
        /// Most slats.
        most: u64,
    },
    /// An order is too small, too large or too late.
    #[error("{packs} packs cannot be ordered by offer {} in period {}", offer + 1, period + 1)]
    Order {
        /// The offer.
        offer: usize,
        /// The period.
        period: usize,
        /// Packs ordered.
        packs: u64,
    },
    /// More packs are ordered over all periods than there are.
    #[error("{packs} packs are ordered by offer {}, there are {most}", offer + 1)]
    OrdersInAll {
        /// The offer.
        offer: usize,
        /// Packs ordered.
        packs: u128,
        /// Most packs.
        most: u32,
    },
    /// The machines run longer than they can.
    #[error("the machines run {milliseconds} ms in period {} and have {seconds} s", period + 1)]
    Machine {
        /// The period.
        period: usize,
        /// As counted.
        milliseconds: u128,
        /// Seconds there are.
        seconds: u64,
    },
    /// A store holds more than it can.
    #[error("a store holds {stored} after period {}, at most {most} fit", period + 1)]
    Store {
        /// The period.
        period: usize,
        /// As counted.
        stored: u128,
        /// Most pieces.
        most: u64,
    },
    /// A cost is another than told.
    #[error(
        "the plan costs {counted} thousandths of a hundredth, or its parts differ; {told} is told"
    )]
    Cost {
        /// As counted.
        counted: i128,
        /// As told.
        told: i64,
    },
    /// The change-overs are others than told.
    #[error("there are {counted} change-overs, {told} are told")]
    Changeovers {
        /// As counted.
        counted: u128,
        /// As told.
        told: u64,
    },
    /// The volume is another than told.
    #[error("{counted} cubic millimetres are bought and sawn, {told} are told")]
    Timber {
        /// As counted.
        counted: i128,
        /// As told.
        told: i64,
    },
    /// Too little of the wood is certified.
    #[error("{certified} of {volume} cubic millimetres are certified")]
    Certified {
        /// Certified volume.
        certified: i128,
        /// Volume.
        volume: i128,
    },
    /// A limit on cost, timber or change-overs is passed.
    #[error("{aim:?} comes to {value}, at most {most} is allowed")]
    Limit {
        /// What is limited.
        aim: PlanAim,
        /// What the plan comes to.
        value: i64,
        /// Most it may come to.
        most: i64,
    },
}
