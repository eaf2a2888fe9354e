//! The places, by question.

use crate::project_file::BARREL_FRAGMENT;
use leptos::prelude::window;

/// A place of the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Place {
    /// What the pencil is.
    Barrel,
    /// How it lies on the slats.
    Layout,
    /// How many of the pencils are good.
    Tolerances,
    /// What the machines are set to, and what leaves the office for them.
    Setting,
    /// How blanks are sawn from planks.
    Planks,
    /// Which slats there are, and which to buy for the order book.
    Timber,
    /// What is ordered, and what to run, buy and saw in each period.
    Orders,
}

impl Place {
    /// Every place, in the order of the chain.
    pub const ALL: [Self; 7] = [
        Self::Barrel,
        Self::Layout,
        Self::Tolerances,
        Self::Setting,
        Self::Planks,
        Self::Timber,
        Self::Orders,
    ];

    /// The word on its tab.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Barrel => "Barrel",
            Self::Layout => "Layout on slats",
            Self::Tolerances => "Good pencils",
            Self::Setting => "Setting",
            Self::Planks => "Planks",
            Self::Timber => "Timber",
            Self::Orders => "Orders",
        }
    }

    /// Its part of the address.
    #[must_use]
    pub const fn fragment(self) -> &'static str {
        match self {
            Self::Barrel => "#barrel",
            Self::Layout => "#layout",
            Self::Tolerances => "#tolerances",
            Self::Setting => "#setting",
            Self::Planks => "#planks",
            Self::Timber => "#timber",
            Self::Orders => "#orders",
        }
    }

    /// The place that an address fragment names; the layout where it names none.
    #[must_use]
    pub fn of_fragment(fragment: &str) -> Self {
        Self::ALL
            .into_iter()
            .find(|place| {
                // One that holds a barrel leads to its place as well.
                let is_barrel = *place == Self::Barrel && fragment.starts_with(BARREL_FRAGMENT);
                place.fragment() == fragment || is_barrel
            })
            .unwrap_or(Self::Layout)
    }

    /// The place that the address of the page names.
    #[must_use]
    pub fn from_address() -> Self {
        Self::of_fragment(&window().location().hash().unwrap_or_default())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fragment_leads_back_to_its_place() {
        for place in Place::ALL {
            assert_eq!(Place::of_fragment(place.fragment()), place);
        }
    }

    #[test]
    fn an_unknown_fragment_leads_to_the_layout() {
        assert_eq!(Place::of_fragment("#elsewhere"), Place::Layout);
    }
}
