//! Everything one shop works with: barrels, slat stocks and their wood, cutter sets, rules, the
//! layout looked at, the order book, the heads that cut and the run that is made.

mod check;
mod gathered;
mod pencil;
mod set_aside;
mod setting;
#[cfg(test)]
mod tests;

pub(crate) use check::{keep, one, placed, told_once};
pub use setting::SettingParts;
#[cfg(test)]
pub(crate) use tests::project as trial;

use crate::accuracy::AccuracyDraft;
use crate::barrel::{Barrel, BarrelDraft};
use crate::cutter_set::CutterSetDraft;
use crate::field::{Field, Typed};
use crate::finish::FinishDraft;
use crate::layout::Setup;
use crate::materials::RunDraft;
use crate::quantity::Angle;
use crate::rules::{Rules, RulesDraft};
use crate::saw_shop::SawShopDraft;
use crate::seam::Seam;
use crate::search_rules::SearchDraft;
use crate::shape::Shape;
use crate::slat::{Slat, SlatDraft};
use crate::supply::SupplyDraft;
use crate::title_block::TitleBlock;
use crate::tooling::{CutDraft, HeadDraft};
use crate::wood::{ConditionsDraft, SpeciesDraft};
use std::sync::Arc;

/// A name for a member of a list that stays the same when the list changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Id(pub u32);

/// A member of a list, with its lasting name.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry<T> {
    /// Its lasting name.
    pub id: Id,
    /// What it is.
    pub draft: T,
}

/// How the barrel is turned in the layout that is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Way {
    /// One of the usual ways.
    Usual(Seam),
    /// At the angle given.
    Turned,
}

/// The layout that is looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct LayoutDraft {
    /// The barrel.
    pub barrel: Id,
    /// The slat above the glue plane.
    pub top: Id,
    /// The slat below the glue plane.
    pub bottom: Id,
    /// How the barrel is turned.
    pub way: Way,
    /// The angle, where it is given.
    pub turn: Typed,
    /// The accuracy of the line on which it is made.
    pub accuracy: Id,
}

/// A line of the order book.
#[derive(Debug, Clone, PartialEq)]
pub struct OrderDraft {
    /// The barrel ordered.
    pub barrel: Id,
    /// How many, in gross.
    pub gross: Typed,
    /// The period at whose end they are due, counted from 1.
    pub due: Typed,
    /// Pencils of it that lie in the store.
    pub on_hand: Typed,
}

impl OrderDraft {
    /// An order of the first number of pencils, due in the first period.
    #[must_use]
    pub const fn new(barrel: Id) -> Self {
        Self {
            barrel,
            gross: Typed::initial(Field::OrderGross),
            due: Typed::initial(Field::DuePeriod),
            on_hand: Typed::initial(Field::PencilsOnHand),
        }
    }
}

/// A project as it is being worked on; any part may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct ProjectDraft {
    /// What it is called.
    pub name: String,
    /// The barrels.
    pub barrels: Vec<Entry<BarrelDraft>>,
    /// The slat stocks.
    pub slats: Vec<Entry<SlatDraft>>,
    /// The species that the slats are of.
    pub species: Vec<Entry<SpeciesDraft>>,
    /// The conditions in which the slats are grooved.
    pub conditions: ConditionsDraft,
    /// The cutter sets that are owned or can be had.
    pub cutter_sets: Vec<Entry<CutterSetDraft>>,
    /// The machining rules.
    pub rules: RulesDraft,
    /// How accurately each line of machines works.
    pub accuracies: Vec<Entry<AccuracyDraft>>,
    /// The layout that is looked at.
    pub layout: LayoutDraft,
    /// What a search for the best layout may try.
    pub search: SearchDraft,
    /// The order book.
    pub orders: Vec<OrderDraft>,
    /// The saw shop: planks, blanks, saws.
    pub saw_shop: SawShopDraft,
    /// The heads of the line, in the order of [`HeadKind::ALL`](crate::HeadKind::ALL).
    pub heads: [HeadDraft; 3],
    /// What is common to the heads: feed and overcut.
    pub cut: CutDraft,
    /// The run for which materials are reckoned.
    pub run: RunDraft,
    /// What an order plan rests on beside all these: periods, offers, costs.
    pub supply: SupplyDraft,
    /// What the title block of a printed sheet tells.
    pub title_block: TitleBlock,
    /// The layout that was set aside to be compared with: a project of only what it rests on, as
    /// it was then. It has none set aside itself.
    pub set_aside: Option<Arc<ProjectDraft>>,
}

/// A line of the order book that can be filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Order {
    /// The barrel, by its place in the list.
    pub barrel: usize,
    /// Pencils: the gross ordered, rounded up to whole pencils.
    pub pencils: u32,
    /// Of these, pencils that lie in the store; or more of them.
    pub on_hand: u32,
}

impl Order {
    /// Pencils that are still to be made.
    #[must_use]
    pub const fn to_make(&self) -> u32 {
        self.pencils.saturating_sub(self.on_hand)
    }
}

/// A project in which everything can be worked with.
#[derive(Debug, Clone, PartialEq)]
pub struct Project {
    /// The barrels.
    pub barrels: Vec<Barrel>,
    /// The slat stocks, as they come to the groove head.
    pub slats: Vec<Slat>,
    /// The machining rules.
    pub rules: Rules,
    /// The order book.
    pub orders: Vec<Order>,
}

/// The checked parts of the layout that is looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct LayoutParts {
    /// The barrel.
    pub barrel: Barrel,
    /// Its turn about the lead axis.
    pub turn: Angle,
    /// The slat above the glue plane.
    pub top: Slat,
    /// The slat below the glue plane.
    pub bottom: Slat,
    /// The machining rules.
    pub rules: Rules,
    /// The name of the cutter set that spaces the grooves, where one does.
    pub cutter_set: Option<String>,
}

impl LayoutParts {
    /// The parts as a set-up that can be laid out.
    #[must_use]
    pub const fn setup(&self) -> Setup<'_> {
        Setup {
            barrel: &self.barrel,
            turn: self.turn,
            top: &self.top,
            bottom: &self.bottom,
            rules: &self.rules,
        }
    }
}

impl Way {
    /// Every way a shape can be turned: the usual ones and, where it matters, any angle.
    #[must_use]
    pub fn of(shape: Shape) -> Vec<Self> {
        let usual = shape.seams().iter().copied().map(Self::Usual);
        if shape.can_be_turned() {
            usual.chain([Self::Turned]).collect()
        } else {
            usual.collect()
        }
    }

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Usual(seam) => seam.label(),
            Self::Turned => "Turned by an angle",
        }
    }
}

impl ProjectDraft {
    /// The place of a barrel in the list.
    #[must_use]
    pub fn barrel_place(&self, id: Id) -> Option<usize> {
        self.barrels.iter().position(|entry| entry.id == id)
    }

    /// The place of a slat stock in the list.
    #[must_use]
    pub fn slat_place(&self, id: Id) -> Option<usize> {
        self.slats.iter().position(|entry| entry.id == id)
    }

    /// The place of a species in the list.
    #[must_use]
    pub fn species_place(&self, id: Id) -> Option<usize> {
        self.species.iter().position(|entry| entry.id == id)
    }

    /// The place of a cutter set in the list.
    #[must_use]
    pub fn cutter_set_place(&self, id: Id) -> Option<usize> {
        self.cutter_sets.iter().position(|entry| entry.id == id)
    }

    /// The place of a kind of plank in the list.
    #[must_use]
    pub fn plank_place(&self, id: Id) -> Option<usize> {
        let mut planks = self.saw_shop.planks.iter();
        planks.position(|entry| entry.id == id)
    }

    /// The place of a kind of blank in the list.
    #[must_use]
    pub fn blank_place(&self, id: Id) -> Option<usize> {
        let mut blanks = self.saw_shop.blanks.iter();
        blanks.position(|entry| entry.id == id)
    }

    /// The place of an offer in the list.
    #[must_use]
    pub fn offer_place(&self, id: Id) -> Option<usize> {
        let mut offers = self.supply.offers.iter();
        offers.position(|entry| entry.id == id)
    }

    /// The place of an accuracy in the list.
    #[must_use]
    pub fn accuracy_place(&self, id: Id) -> Option<usize> {
        self.accuracies.iter().position(|entry| entry.id == id)
    }

    /// A name that no member of any list has yet.
    ///
    /// Names only grow, so that a name is not taken again while another still has a higher one.
    /// What was set aside keeps its names.
    #[must_use]
    pub fn free_id(&self) -> Id {
        let taken = || {
            self.names()
                .chain(self.set_aside.iter().flat_map(|aside| aside.names()))
        };
        taken().max().unwrap_or(0).checked_add(1).map_or_else(
            || {
                // Fewer entries than numbers, so one is free.
                let free = (0..=u32::MAX).find(|id| taken().all(|other| other != *id));
                Id(free.unwrap_or(0))
            },
            Id,
        )
    }

    /// The names of all members of all lists.
    fn names(&self) -> impl Iterator<Item = u32> {
        let barrels = self.barrels.iter().map(|entry| entry.id.0);
        let slats = self.slats.iter().map(|entry| entry.id.0);
        let species = self.species.iter().map(|entry| entry.id.0);
        let sets = self.cutter_sets.iter().map(|entry| entry.id.0);
        let lines = self.accuracies.iter().map(|entry| entry.id.0);
        let planks = self.saw_shop.planks.iter().map(|entry| entry.id.0);
        let blanks = self.saw_shop.blanks.iter().map(|entry| entry.id.0);
        let offers = self.supply.offers.iter().map(|entry| entry.id.0);
        let of_layouts = barrels.chain(slats).chain(species).chain(sets).chain(lines);
        of_layouts.chain(planks).chain(blanks).chain(offers)
    }

    /// Gives first values to what no layout and no purchase of one period rests on: the saw shop, the
    /// heads, the cut, the run, the supply, the title block, when orders are due, and the conditions where
    /// no slat moves in them.
    pub fn clear_making(&mut self) {
        if self.slats.iter().all(|slat| slat.draft.species.is_none()) {
            self.conditions = ConditionsDraft::new();
        }
        self.saw_shop = SawShopDraft::new();
        self.heads = [const { HeadDraft::new() }; 3];
        self.cut = CutDraft::new();
        self.run = RunDraft::new();
        self.supply = SupplyDraft::new();
        self.title_block = TitleBlock::new();
        for order in &mut self.orders {
            order.due = Typed::initial(Field::DuePeriod);
        }
        for barrel in &mut self.barrels {
            barrel.draft.finish = FinishDraft::new();
        }
    }

    /// The way the barrel of the layout is turned: one that its shape has.
    #[must_use]
    pub fn layout_way(&self) -> Way {
        let shape = self
            .barrel_place(self.layout.barrel)
            .map(|place| self.barrels[place].draft.shape);
        let ways = shape.map(Way::of).unwrap_or_default();
        if ways.contains(&self.layout.way) {
            self.layout.way
        } else {
            ways.first().copied().unwrap_or(self.layout.way)
        }
    }
}
