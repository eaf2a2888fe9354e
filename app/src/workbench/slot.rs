//! The address of one number in a project.

use solver::{Entry, Field, Id, Place, ProjectDraft, Shape, Size, Typed};

// Each table serves reading and writing: the borrow comes first, & or &mut.
macro_rules! barrel_number {
    (& $($mutable:ident)?, $barrel:expr, $field:expr) => {
        match $field {
            Field::CornerRadius => & $($mutable)? $barrel.corner_radius,
            Field::Coat => & $($mutable)? $barrel.coat,
            Field::PencilLength => & $($mutable)? $barrel.length,
            Field::LeadDiameter => & $($mutable)? $barrel.lead_diameter,
            _ => & $($mutable)? $barrel.size,
        }
    };
}

macro_rules! slat_number {
    (& $($mutable:ident)?, $slat:expr, $field:expr) => {
        match $field {
            Field::SlatLength => & $($mutable)? $slat.length,
            Field::SlatThickness => & $($mutable)? $slat.thickness,
            Field::WidthTolerance => & $($mutable)? $slat.width_tolerance,
            Field::ThicknessTolerance => & $($mutable)? $slat.thickness_tolerance,
            Field::PackSlats => & $($mutable)? $slat.pack_slats,
            Field::PackPrice => & $($mutable)? $slat.pack_price,
            Field::OnHand => & $($mutable)? $slat.on_hand,
            Field::PackLimit => & $($mutable)? $slat.pack_limit,
            _ => & $($mutable)? $slat.width,
        }
    };
}

macro_rules! rules_number {
    (& $($mutable:ident)?, $rules:expr, $field:expr) => {
        match $field {
            Field::Pitch => & $($mutable)? $rules.pitch,
            Field::Clearance => & $($mutable)? $rules.clearance,
            Field::AxisHeight => & $($mutable)? $rules.axis_height,
            Field::EdgeAllowance => & $($mutable)? $rules.edge,
            Field::PlaningAllowance => & $($mutable)? $rules.planing,
            Field::Floor => & $($mutable)? $rules.floor,
            Field::Wall => & $($mutable)? $rules.wall,
            Field::Eccentricity => & $($mutable)? $rules.eccentricity,
            Field::Bond => & $($mutable)? $rules.bond,
            Field::Relief => & $($mutable)? $rules.relief,
            _ => & $($mutable)? $rules.land,
        }
    };
}

/// Where a number stands, by lasting names, so that it stays true while lists change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Slot {
    /// A number of a barrel; its size goes by [`Field::Diameter`] and its kin.
    Barrel(Id, Field),
    /// A number of a slat stock.
    Slat(Id, Field),
    /// A machining rule.
    Rules(Field),
    /// The turn of the layout that is looked at.
    Turn,
    /// The quantity of an order, by its place in the book.
    Order(usize),
}

impl Slot {
    /// The field that stands there.
    #[must_use]
    pub const fn field(self) -> Field {
        match self {
            Self::Barrel(_, field) | Self::Slat(_, field) | Self::Rules(field) => field,
            Self::Turn => Field::Turn,
            Self::Order(_) => Field::OrderGross,
        }
    }

    /// The slot of a size on a drawing of the layout, if it can be typed over.
    #[must_use]
    pub fn of_size(size: Size, project: &ProjectDraft) -> Option<Self> {
        let layout = &project.layout;
        let barrel = |field| Self::Barrel(layout.barrel, field);
        Some(match size {
            Size::SlatWidth => Self::Slat(layout.bottom, Field::SlatWidth),
            Size::TopWidth => Self::Slat(layout.top, Field::SlatWidth),
            Size::TopThickness => Self::Slat(layout.top, Field::SlatThickness),
            Size::BottomThickness => Self::Slat(layout.bottom, Field::SlatThickness),
            Size::Barrel => barrel(barrel_shape(project)?.size_field()),
            Size::CornerRadius if !barrel_shape(project)?.has_corners() => return None,
            Size::CornerRadius => barrel(Field::CornerRadius),
            Size::Lead => barrel(Field::LeadDiameter),
            Size::Land => Self::Rules(Field::Land),
            Size::Pitch => Self::Rules(Field::Pitch),
            Size::FirstGroove
            | Size::Edge
            | Size::TopPlaning
            | Size::BottomPlaning
            | Size::BarrelWidth
            | Size::Wall => {
                return None;
            }
        })
    }

    /// The slot of a problem that the check of a project found.
    #[must_use]
    pub fn of_problem(place: Place, field: Field, project: &ProjectDraft) -> Option<Self> {
        Some(match place {
            Place::Barrel(at) => Self::Barrel(project.barrels.get(at)?.id, field),
            Place::Slat(at) => Self::Slat(project.slats.get(at)?.id, field),
            Place::Rules => Self::Rules(field),
            Place::Layout => Self::Turn,
            Place::Order(at) => Self::Order(at),
        })
    }

    /// What stands there, or nothing when it has gone.
    #[must_use]
    pub fn get(self, project: &ProjectDraft) -> Option<&Typed> {
        match self {
            Self::Barrel(id, field) => {
                find(&project.barrels, id).map(|barrel| barrel_number!(&, barrel, field))
            }
            Self::Slat(id, field) => {
                find(&project.slats, id).map(|slat| slat_number!(&, slat, field))
            }
            Self::Rules(field) => Some(rules_number!(&, project.rules, field)),
            Self::Turn => Some(&project.layout.turn),
            Self::Order(at) => project.orders.get(at).map(|order| &order.gross),
        }
    }

    /// Puts something else there; does nothing when the place has gone.
    pub fn set(self, project: &mut ProjectDraft, typed: Typed) {
        let place = match self {
            Self::Barrel(id, field) => {
                find_mut(&mut project.barrels, id).map(|barrel| barrel_number!(&mut, barrel, field))
            }
            Self::Slat(id, field) => {
                find_mut(&mut project.slats, id).map(|slat| slat_number!(&mut, slat, field))
            }
            Self::Rules(field) => Some(rules_number!(&mut, project.rules, field)),
            Self::Turn => Some(&mut project.layout.turn),
            Self::Order(at) => project.orders.get_mut(at).map(|order| &mut order.gross),
        };
        if let Some(place) = place {
            *place = typed;
        }
    }

    /// A name for the element of the page that shows it.
    #[must_use]
    pub fn element_id(self, context: &str) -> String {
        match self {
            Self::Barrel(Id(id), field) => format!("{context}-barrel-{id}-{field:?}"),
            Self::Slat(Id(id), field) => format!("{context}-slat-{id}-{field:?}"),
            Self::Rules(field) => format!("{context}-rules-{field:?}"),
            Self::Turn => format!("{context}-turn"),
            Self::Order(at) => format!("{context}-order-{at}"),
        }
    }
}

/// The shape of the barrel of the layout.
pub fn barrel_shape(project: &ProjectDraft) -> Option<Shape> {
    find(&project.barrels, project.layout.barrel).map(|barrel| barrel.shape)
}

fn find<T>(entries: &[Entry<T>], id: Id) -> Option<&T> {
    entries
        .iter()
        .find(|entry| entry.id == id)
        .map(|entry| &entry.draft)
}

fn find_mut<T>(entries: &mut [Entry<T>], id: Id) -> Option<&mut T> {
    entries
        .iter_mut()
        .find(|entry| entry.id == id)
        .map(|entry| &mut entry.draft)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    #[test]
    fn what_is_set_in_a_slot_is_found_there_and_nowhere_else() {
        let project = demo::project();
        let (barrel, slat) = (project.barrels[0].id, project.slats[0].id);
        let barrel_fields = [
            Field::AcrossFlats,
            Field::CornerRadius,
            Field::Coat,
            Field::PencilLength,
            Field::LeadDiameter,
        ];
        let slat_fields = [
            Field::SlatLength,
            Field::SlatWidth,
            Field::SlatThickness,
            Field::WidthTolerance,
            Field::ThicknessTolerance,
            Field::PackSlats,
            Field::PackPrice,
            Field::OnHand,
            Field::PackLimit,
        ];
        let rules_fields = [
            Field::Pitch,
            Field::Clearance,
            Field::AxisHeight,
            Field::Land,
            Field::EdgeAllowance,
            Field::PlaningAllowance,
            Field::Floor,
            Field::Wall,
            Field::Eccentricity,
            Field::Bond,
            Field::Relief,
        ];
        let slots: Vec<Slot> = barrel_fields
            .map(|field| Slot::Barrel(barrel, field))
            .into_iter()
            .chain(slat_fields.map(|field| Slot::Slat(slat, field)))
            .chain(rules_fields.map(Slot::Rules))
            .chain([Slot::Turn, Slot::Order(0)])
            .collect();
        for &slot in &slots {
            let mut changed = project.clone();
            slot.set(&mut changed, Typed::Number(123.456));
            for &other in &slots {
                let same = other.get(&changed) == other.get(&project);
                assert_eq!(same, other != slot, "set {slot:?}, looked at {other:?}");
            }
        }
    }

    #[test]
    fn a_slot_that_has_gone_holds_nothing_and_takes_nothing() {
        let mut project = demo::project();
        let before = project.clone();
        Slot::Slat(Id(9999), Field::SlatWidth).set(&mut project, Typed::Number(1.0));
        assert_eq!(project, before);
        assert_eq!(Slot::Order(99).get(&project), None);
    }
}
