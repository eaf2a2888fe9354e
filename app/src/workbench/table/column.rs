//! The columns of a table: what is above them, and what they mean.

use solver::entry::Dimension;
use solver::order_plan::MOST_TIERS;
use solver::{Field, LengthUnit, ProjectDraft, Typed};

/// A column of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Column {
    /// What the row is called.
    Name,
    /// A number.
    Number(Field),
    /// The species of a slat stock, or none.
    Species,
    /// How a slat stock is sawn.
    Sawing,
    /// The barrel a cutter set is ground for, or any.
    Barrel,
    /// The slat stock that a blank becomes, or none.
    Stock,
    /// The pencil that is ordered.
    Pencil,
    /// What the period is called that an order is due in; it follows from its number.
    DueName,
    /// Who makes an offer.
    Supplier,
    /// The slat stock that is offered.
    Offered,
    /// A number of a price of an offer, by the place of the price.
    Tier(usize, Field),
    /// How the prices of an offer are read.
    Pricing,
    /// The slat stock that is sawn in the works.
    SawnStock,
    /// Whether the wood is certified.
    Certified,
    /// The width that every slat of a stock has at the groove head; it follows from the others.
    GuaranteedWidth,
    /// The thickness that every slat of a stock has at the groove head; it follows as well.
    GuaranteedThickness,
}

/// What is above the first packs and the prices of an offer, tier by tier.
const TIER_LABELS: [[&str; 2]; MOST_TIERS] = [
    ["From packs", "Price per pack"],
    ["From packs 2", "Price per pack 2"],
    ["From packs 3", "Price per pack 3"],
    ["From packs 4", "Price per pack 4"],
    ["From packs 5", "Price per pack 5"],
    ["From packs 6", "Price per pack 6"],
    ["From packs 7", "Price per pack 7"],
    ["From packs 8", "Price per pack 8"],
];

impl Column {
    /// What is above it, with the unit where it has one.
    #[must_use]
    pub fn heading(self, unit: LengthUnit) -> String {
        match self.unit(unit) {
            "" => self.label().to_owned(),
            unit => format!("{}, {unit}", self.label()),
        }
    }

    /// What is above it, without a unit.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Name => "Name",
            Self::Number(field) => field.spec().label,
            Self::Species => "Species",
            Self::Sawing => "Sawn",
            Self::Barrel => "Ground for",
            Self::Stock => "Becomes",
            Self::Pencil => "Pencil",
            Self::DueName => "That is",
            Self::Supplier => "Supplier",
            Self::Offered | Self::SawnStock => "Slat stock",
            Self::Tier(at, Field::TierFrom) => TIER_LABELS[at][0],
            Self::Tier(at, _) => TIER_LABELS[at][1],
            Self::Pricing => "A price is for",
            Self::Certified => "Certified",
            Self::GuaranteedWidth => "Guaranteed width",
            Self::GuaranteedThickness => "Guaranteed thickness",
        }
    }

    /// The unit of what stands in it.
    #[must_use]
    pub fn unit(self, unit: LengthUnit) -> &'static str {
        match self {
            Self::GuaranteedWidth | Self::GuaranteedThickness => unit.label(),
            Self::Number(field) => match field.spec().dimension {
                Dimension::Length => unit.label(),
                Dimension::Percent => "%",
                _ if field == Field::OrderGross => "gross of 144",
                _ => "",
            },
            _ => "",
        }
    }

    /// What its term means.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Name => "What it is called.",
            Self::Number(field) | Self::Tier(_, field) => field.spec().meaning,
            Self::Species => "The wood of the slats; without one they do not move with moisture.",
            Self::Sawing => "Whether the growth rings run along the width or along the thickness.",
            Self::Barrel => "The barrel that the cutters are ground for.",
            Self::Stock => {
                "The slat stock that the blank becomes: its sizes as sawn follow from the slat, from dressing and from shrinkage. As typed means they are given."
            }
            Self::Pencil => "The pencil that is ordered.",
            Self::DueName => "What the period is called at whose end the order is due.",
            Self::Supplier => "Who makes the offer.",
            Self::Offered => "The slat stock that is offered.",
            Self::SawnStock => "The slat stock that is sawn in the works.",
            Self::Pricing => {
                "Whether the price that an order reaches is for all its packs, or only for those from its first pack on."
            }
            Self::Certified => "Whether the wood is certified.",
            Self::GuaranteedWidth => {
                "The width that every slat has at the groove head: less its shortfall, after the wood has moved."
            }
            Self::GuaranteedThickness => {
                "The thickness that every slat has at the groove head: less its shortfall, after the wood has moved."
            }
        }
    }

    /// What a list that others wrote may call it instead.
    pub(crate) const fn other_names(self) -> &'static [&'static str] {
        match self {
            Self::Pencil => &["Barrel", "Product"],
            Self::Number(Field::OrderGross) => &["Gross", "Quantity"],
            Self::Number(Field::DuePeriod) => &["Due", "Period"],
            _ => &[],
        }
    }

    /// Whether it follows from others and cannot be filled.
    #[must_use]
    pub const fn is_driven(self) -> bool {
        matches!(
            self,
            Self::GuaranteedWidth | Self::GuaranteedThickness | Self::DueName
        )
    }

    /// Whether it is wanted for a project: with one period nothing is due in another, and of prices there
    /// is one more than any offer has.
    #[must_use]
    pub fn is_wanted(self, project: &ProjectDraft) -> bool {
        match self {
            Self::Number(Field::DuePeriod) | Self::DueName => {
                project.supply.periods.len() > 1
                    || (project.orders.iter()).any(|order| order.due != Typed::Number(1.0))
            }
            Self::Tier(at, _) => {
                let offers = project.supply.offers.iter();
                at <= offers
                    .map(|offer| offer.draft.tiers.len())
                    .max()
                    .unwrap_or(1)
            }
            _ => true,
        }
    }

    /// Whether it may not be wanted.
    pub(crate) const fn may_be_unwanted(self) -> bool {
        matches!(
            self,
            Self::Number(Field::DuePeriod) | Self::DueName | Self::Tier(..)
        )
    }

    /// Whether names stand in it that are typed.
    #[must_use]
    pub const fn is_name(self) -> bool {
        matches!(self, Self::Name | Self::Supplier)
    }

    /// Whether numbers are typed in it.
    #[must_use]
    pub const fn is_number(self) -> bool {
        matches!(self, Self::Number(_) | Self::Tier(..))
    }

    /// Whether figures stand in it.
    #[must_use]
    pub const fn is_figure(self) -> bool {
        matches!(self, Self::Number(_) | Self::Tier(..))
            || matches!(self, Self::GuaranteedWidth | Self::GuaranteedThickness)
    }
}
