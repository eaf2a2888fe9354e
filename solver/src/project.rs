//! Everything one shop works with: barrels, slat stocks, rules, the layout looked at, the order book.

use crate::barrel::{Barrel, BarrelDraft};
use crate::field::{Cause, Field, FieldProblem, Place, Problem, Typed};
use crate::layout::Setup;
use crate::quantity::Angle;
use crate::ranking::GROSS;
use crate::rules::{Rules, RulesDraft};
use crate::seam::Seam;
use crate::shape::Shape;
use crate::slat::{Slat, SlatDraft};

/// A name for a barrel or a slat stock that stays the same when the list changes.
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
}

/// A line of the order book.
#[derive(Debug, Clone, PartialEq)]
pub struct OrderDraft {
    /// The barrel ordered.
    pub barrel: Id,
    /// How many, in gross.
    pub gross: Typed,
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
    /// The machining rules.
    pub rules: RulesDraft,
    /// The layout that is looked at.
    pub layout: LayoutDraft,
    /// The order book.
    pub orders: Vec<OrderDraft>,
}

/// A line of the order book that can be filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Order {
    /// The barrel, by its place in the list.
    pub barrel: usize,
    /// Pencils: the gross ordered, rounded up to whole pencils.
    pub pencils: u32,
}

/// A project in which everything can be worked with.
#[derive(Debug, Clone, PartialEq)]
pub struct Project {
    /// The barrels.
    pub barrels: Vec<Barrel>,
    /// The slat stocks.
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

    /// A name that no barrel and no slat stock has yet.
    ///
    /// Names only grow, so that a name is not taken again while another still has a higher one.
    #[must_use]
    pub fn free_id(&self) -> Id {
        let barrels = self.barrels.iter().map(|entry| entry.id.0);
        let slats = self.slats.iter().map(|entry| entry.id.0);
        let most = barrels.chain(slats).max().unwrap_or(0);
        most.checked_add(1).map_or_else(
            || {
                let taken = |id: &u32| {
                    self.barrels.iter().any(|b| b.id.0 == *id)
                        || self.slats.iter().any(|s| s.id.0 == *id)
                };
                // Fewer entries than numbers, so one is free.
                Id((0..=u32::MAX).find(|id| !taken(id)).unwrap_or(0))
            },
            Id,
        )
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

    /// The parts of the layout that is looked at, or everything that stands in its way.
    ///
    /// # Errors
    /// Every problem of the barrel, the slats, the rules and the turn of the layout; an empty
    /// list when a barrel or a slat is missing altogether.
    pub fn check_layout(&self) -> Result<LayoutParts, Vec<Problem>> {
        let mut problems = Vec::new();
        let barrel = self.barrel_place(self.layout.barrel).and_then(|place| {
            keep(
                self.barrels[place].draft.check(),
                Place::Barrel(place),
                &mut problems,
            )
        });
        let slat = |id: Id, problems: &mut Vec<Problem>| {
            self.slat_place(id).and_then(|place| {
                keep(
                    self.slats[place].draft.check(),
                    Place::Slat(place),
                    problems,
                )
            })
        };
        let top = slat(self.layout.top, &mut problems);
        let bottom = if self.layout.bottom == self.layout.top {
            top.clone()
        } else {
            slat(self.layout.bottom, &mut problems)
        };
        let rules = keep(self.rules.check(), Place::Rules, &mut problems);
        let turn = match self.layout_way() {
            Way::Usual(seam) => barrel.as_ref().map(|barrel| barrel.turn(seam)),
            Way::Turned => {
                let turn = self
                    .layout
                    .turn
                    .read(Field::Turn)
                    .map(Angle::degrees)
                    .map_err(|problem| vec![problem]);
                keep(turn, Place::Layout, &mut problems)
            }
        };
        match (barrel, turn, top, bottom, rules) {
            (Some(barrel), Some(turn), Some(top), Some(bottom), Some(rules)) => Ok(LayoutParts {
                barrel,
                turn,
                top,
                bottom,
                rules,
            }),
            _ => Err(problems),
        }
    }

    /// The whole project, or every rule that is broken in it.
    ///
    /// # Errors
    /// Every problem of every barrel, slat stock, rule, order and of the layout looked at.
    pub fn check(&self) -> Result<Project, Vec<Problem>> {
        let mut problems = Vec::new();
        let barrels: Vec<Option<Barrel>> = (0..self.barrels.len())
            .map(|place| {
                keep(
                    self.barrels[place].draft.check(),
                    Place::Barrel(place),
                    &mut problems,
                )
            })
            .collect();
        let slats: Vec<Option<Slat>> = (0..self.slats.len())
            .map(|place| {
                keep(
                    self.slats[place].draft.check(),
                    Place::Slat(place),
                    &mut problems,
                )
            })
            .collect();
        let rules = keep(self.rules.check(), Place::Rules, &mut problems);
        let orders: Vec<Option<Order>> = (0..self.orders.len())
            .map(|place| {
                keep(
                    self.check_order(&self.orders[place]),
                    Place::Order(place),
                    &mut problems,
                )
            })
            .collect();
        if self.layout_way() == Way::Turned
            && let Err(problem) = self.layout.turn.read(Field::Turn)
        {
            problems.push(Problem {
                place: Place::Layout,
                problem,
            });
        }
        match rules {
            Some(rules) if problems.is_empty() => Ok(Project {
                barrels: barrels.into_iter().flatten().collect(),
                slats: slats.into_iter().flatten().collect(),
                rules,
                orders: orders.into_iter().flatten().collect(),
            }),
            _ => Err(problems),
        }
    }

    fn check_order(&self, order: &OrderDraft) -> Result<Order, Vec<FieldProblem>> {
        let barrel = self.barrel_place(order.barrel).ok_or(FieldProblem {
            field: Field::OrderGross,
            cause: Cause::NoSuchBarrel,
        });
        let gross = order.gross.read(Field::OrderGross);
        match (barrel, gross) {
            // At most a million gross, far within u32.
            (Ok(barrel), Ok(gross)) => Ok(Order {
                barrel,
                pencils: (gross * f64::from(GROSS)).ceil() as u32,
            }),
            (barrel, gross) => Err(barrel.err().into_iter().chain(gross.err()).collect()),
        }
    }
}

/// The value, with its problems moved to the list of the project.
fn keep<T>(
    result: Result<T, Vec<FieldProblem>>,
    place: Place,
    problems: &mut Vec<Problem>,
) -> Option<T> {
    match result {
        Ok(value) => Some(value),
        Err(found) => {
            problems.extend(found.into_iter().map(|problem| Problem { place, problem }));
            None
        }
    }
}

#[cfg(test)]
mod tests;
