//! From a project that may be wrong to what can be worked with.

use super::{LayoutParts, Order, OrderDraft, Project, ProjectDraft, Way};
use crate::accuracy::Accuracy;
use crate::barrel::Barrel;
use crate::cutter_set::CutterSet;
use crate::field::{Cause, Field, FieldProblem, Place, Problem};
use crate::quantity::Angle;
use crate::ranking::GROSS;
use crate::rules::{Rules, RulesDraft, Spacing};
use crate::slat::Slat;

impl ProjectDraft {
    /// The parts of the layout that is looked at, or everything that stands in its way.
    ///
    /// # Errors
    /// Every problem of the barrel, the slats with their species and the conditions, the rules
    /// with their cutter set, and the turn of the layout; an empty list when a barrel or a slat
    /// is missing altogether.
    pub fn check_layout(&self) -> Result<LayoutParts, Vec<Problem>> {
        let mut problems = Vec::new();
        let barrel = self
            .barrel_place(self.layout.barrel)
            .and_then(|at| keep(self.check_barrel(at), &mut problems));
        let top = self
            .slat_place(self.layout.top)
            .and_then(|at| keep(self.check_slat(at), &mut problems));
        let bottom = if self.layout.bottom == self.layout.top {
            top.clone()
        } else {
            self.slat_place(self.layout.bottom)
                .and_then(|at| keep(self.check_slat(at), &mut problems))
        };
        let rules = keep(self.check_rules(), &mut problems);
        let turn = match self.layout_way() {
            Way::Usual(seam) => barrel.as_ref().map(|barrel| barrel.turn(seam)),
            Way::Turned => keep(self.check_turn(), &mut problems),
        };
        match (barrel, turn, top, bottom, rules) {
            (Some(barrel), Some(turn), Some(top), Some(bottom), Some(rules)) => Ok(LayoutParts {
                barrel,
                turn,
                top,
                bottom,
                rules,
                cutter_set: self.chosen_set_name(),
            }),
            _ => Err(told_once(problems)),
        }
    }

    /// A slat stock as it comes to the groove head, or everything that stands in its way. A stock
    /// without a species stays as delivered, and the moisture in it is not read.
    ///
    /// # Errors
    /// Every problem of the stock, at [`Place::Slat`]; of its species, at [`Place::Species`]; and
    /// of the conditions, at [`Place::Conditions`]. An empty list when there is no stock at that
    /// place of the list.
    pub fn check_slat(&self, at: usize) -> Result<Slat, Vec<Problem>> {
        let mut problems = Vec::new();
        let draft = &self.slats.get(at).ok_or_else(Vec::new)?.draft;
        let slat = keep(placed(draft.check(), Place::Slat(at)), &mut problems);
        let Some(id) = draft.species else {
            return slat.ok_or(problems);
        };
        let delivered = draft.moisture.read(Field::DeliveryMoisture);
        let delivered = keep(one(delivered, Place::Slat(at)), &mut problems);
        let species = match self.species_place(id) {
            Some(place) => {
                let species = self.species[place].draft.check();
                keep(placed(species, Place::Species(place)), &mut problems)
            }
            None => {
                let (field, cause) = (Field::DeliveryMoisture, Cause::NoSuchSpecies);
                let gone = Err(FieldProblem { field, cause });
                keep(one(gone, Place::Slat(at)), &mut problems)
            }
        };
        let conditions = placed(self.conditions.check(), Place::Conditions);
        let conditions = keep(conditions, &mut problems);
        match (slat, delivered, species, conditions) {
            (Some(slat), Some(delivered), Some(species), Some(conditions)) => {
                Ok(slat.conditioned(&species, draft.sawing, delivered, &conditions))
            }
            _ => Err(problems),
        }
    }

    /// The machining rules with the cutter set they name, or everything that stands in their way.
    ///
    /// # Errors
    /// Every problem of the rules, at [`Place::Rules`]; of a cutter set that sets the pitch, at
    /// [`Place::CutterSet`]. Such a set must be in the project, and must not be ground for a
    /// barrel other than that of the layout.
    pub fn check_rules(&self) -> Result<Rules, Vec<Problem>> {
        let mut problems = Vec::new();
        let rules = match self.chosen_set() {
            None => self.rules.check(),
            Some((_, Ok(set))) => {
                let mut rules = self.rules.check_with(Some(&set));
                if self.barrel_place(self.layout.barrel).is_some()
                    && !set.serves(self.layout.barrel)
                {
                    let (field, cause) = (Field::Pitch, Cause::SetForOtherBarrel);
                    let mut found = rules.err().unwrap_or_default();
                    found.insert(0, FieldProblem { field, cause });
                    rules = Err(found);
                }
                rules
            }
            Some((place, Err(found))) => {
                problems.extend(found.into_iter().map(|problem| Problem { place, problem }));
                // What is wrong with the set is told; now the rest of the rules.
                let spacing = Spacing::Closest;
                let rest = self.rules.clone();
                RulesDraft { spacing, ..rest }.check()
            }
        };
        match keep(placed(rules, Place::Rules), &mut problems) {
            Some(rules) if problems.is_empty() => Ok(rules),
            _ => Err(problems),
        }
    }

    /// The accuracy of the line on which the layout is made, or everything that is wrong with it.
    ///
    /// # Errors
    /// Every problem of it, at [`Place::Accuracy`]; an empty list when there is no such line.
    pub fn check_accuracy(&self) -> Result<Accuracy, Vec<Problem>> {
        let at = self.accuracy_place(self.layout.accuracy);
        let at = at.ok_or_else(Vec::new)?;
        placed(self.accuracies[at].draft.check(), Place::Accuracy(at))
    }

    /// The whole project, or every rule that is broken in it.
    ///
    /// # Errors
    /// Every problem of every barrel and its finish, slat stock, species, cutter set, accuracy, rule, order, of the
    /// conditions, of the saw shop, of the search, of the heads, the cut and the run, of the supply, and
    /// of the layout looked at.
    pub fn check(&self) -> Result<Project, Vec<Problem>> {
        let mut problems = Vec::new();
        let barrels: Vec<Option<Barrel>> = (0..self.barrels.len())
            .map(|at| keep(self.check_barrel(at), &mut problems))
            .collect();
        for (at, barrel) in barrels.iter().enumerate() {
            let finish = &self.barrels[at].draft.finish;
            if let Some(barrel) = barrel {
                keep(
                    placed(finish.check(barrel), Place::Barrel(at)),
                    &mut problems,
                );
            }
        }
        let slats: Vec<Option<Slat>> = (0..self.slats.len())
            .map(|at| {
                // A species that several stocks are of is told once, with the conditions.
                let only = |place| place == Place::Slat(at);
                keep(narrowed(self.check_slat(at), only), &mut problems)
            })
            .collect();
        for (at, species) in self.species.iter().enumerate() {
            keep(
                placed(species.draft.check(), Place::Species(at)),
                &mut problems,
            );
        }
        keep(
            placed(self.conditions.check(), Place::Conditions),
            &mut problems,
        );
        for (at, set) in self.cutter_sets.iter().enumerate() {
            keep(
                placed(set.draft.check(), Place::CutterSet(at)),
                &mut problems,
            );
        }
        for (at, accuracy) in self.accuracies.iter().enumerate() {
            keep(
                placed(accuracy.draft.check(), Place::Accuracy(at)),
                &mut problems,
            );
        }
        let only = |place| place == Place::Rules;
        let rules = keep(narrowed(self.check_rules(), only), &mut problems);
        let orders: Vec<Option<Order>> = (self.orders.iter().enumerate())
            .map(|(at, order)| {
                let order = placed(self.check_order(order), Place::Order(at));
                keep(order, &mut problems)
            })
            .collect();
        if self.layout_way() == Way::Turned {
            keep(self.check_turn(), &mut problems);
        }
        problems.extend(self.problems_of_sawing());
        keep(placed(self.search.check(), Place::Search), &mut problems);
        keep(self.check_heads(), &mut problems);
        keep(placed(self.cut.check(), Place::Cut), &mut problems);
        keep(self.check_run(), &mut problems);
        problems.extend(self.problems_of_supply());
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

    fn check_barrel(&self, at: usize) -> Result<Barrel, Vec<Problem>> {
        placed(self.barrels[at].draft.check(), Place::Barrel(at))
    }

    /// The cutter set that sets the pitch, with its place, where one in the project does.
    fn chosen_set(&self) -> Option<(Place, Result<CutterSet, Vec<FieldProblem>>)> {
        if self.rules.spacing != Spacing::Set {
            return None;
        }
        let at = self.cutter_set_place(self.rules.cutter_set?)?;
        Some((Place::CutterSet(at), self.cutter_sets[at].draft.check()))
    }

    fn chosen_set_name(&self) -> Option<String> {
        let chosen = self.rules.cutter_set?;
        let at = self.cutter_set_place(chosen)?;
        let spaces = self.rules.spacing == Spacing::Set;
        spaces.then(|| self.cutter_sets[at].draft.name.clone())
    }

    fn check_turn(&self) -> Result<Angle, Vec<Problem>> {
        let turn = self.layout.turn.read(Field::Turn).map(Angle::degrees);
        one(turn, Place::Layout)
    }

    fn check_order(&self, order: &OrderDraft) -> Result<Order, Vec<FieldProblem>> {
        let barrel = self.barrel_place(order.barrel).ok_or(FieldProblem {
            field: Field::OrderGross,
            cause: Cause::NoSuchBarrel,
        });
        let gross = order.gross.read(Field::OrderGross);
        let on_hand = order.on_hand.read(Field::PencilsOnHand);
        match (barrel, gross, on_hand) {
            // At most a hundred thousand gross, and a hundred million on hand: both far within u32.
            (Ok(barrel), Ok(gross), Ok(on_hand)) => Ok(Order {
                barrel,
                pencils: (gross * f64::from(GROSS)).ceil() as u32,
                on_hand: on_hand as u32,
            }),
            (barrel, gross, on_hand) => {
                let problems = [barrel.err(), gross.err(), on_hand.err()];
                Err(problems.into_iter().flatten().collect())
            }
        }
    }
}

/// The problems with the place where they stand.
pub(crate) fn placed<T>(
    result: Result<T, Vec<FieldProblem>>,
    place: Place,
) -> Result<T, Vec<Problem>> {
    result.map_err(|found| {
        let placed = |problem| Problem { place, problem };
        found.into_iter().map(placed).collect()
    })
}

/// The one problem with the place where it stands.
pub(crate) fn one<T>(result: Result<T, FieldProblem>, place: Place) -> Result<T, Vec<Problem>> {
    placed(result.map_err(|problem| vec![problem]), place)
}

/// Only the problems that stand at certain places; the others are told elsewhere.
fn narrowed<T>(
    result: Result<T, Vec<Problem>>,
    only: impl Fn(Place) -> bool,
) -> Result<T, Vec<Problem>> {
    result.map_err(|mut found| {
        found.retain(|problem| only(problem.place));
        found
    })
}

/// The value, with its problems moved to the list of the project.
pub(crate) fn keep<T>(result: Result<T, Vec<Problem>>, problems: &mut Vec<Problem>) -> Option<T> {
    result.map_err(|found| problems.extend(found)).ok()
}

/// The problems without those of a part that two others share, which stand there twice.
pub(crate) fn told_once(problems: Vec<Problem>) -> Vec<Problem> {
    let mut told: Vec<Problem> = Vec::with_capacity(problems.len());
    for problem in problems {
        let same = |other: &Problem| {
            (other.place, other.problem.field) == (problem.place, problem.problem.field)
        };
        if !told.iter().any(same) {
            told.push(problem);
        }
    }
    told
}
