//! The inputs of a layout and where each stands in the project.

use crate::barrel::BarrelDraft;
use crate::field::{Field, Place, Typed};
use crate::project::{LayoutParts, ProjectDraft};
use crate::rules::{RulesDraft, Spacing};
use crate::slat::SlatDraft;

/// The address of a number in the project.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Input {
    /// The barrel, slat stock or rules it belongs to.
    pub place: Place,
    /// The field there.
    pub field: Field,
}

/// Sizes of a slat stock that are looked at.
const OF_SLAT: [Field; 2] = [Field::SlatWidth, Field::SlatThickness];
/// Rules that are looked at.
const OF_RULES: [Field; 5] = [
    Field::Land,
    Field::EdgeAllowance,
    Field::PlaningAllowance,
    Field::Clearance,
    Field::Pitch,
];
/// Sizes of a barrel that are looked at.
const OF_BARREL: [Field; 7] = [
    Field::Diameter,
    Field::AcrossFlats,
    Field::Height,
    Field::Inscribed,
    Field::BarrelWidth,
    Field::CornerRadius,
    Field::Coat,
];

impl Input {
    /// The inputs of the layout that is looked at, without those it does not use.
    pub(super) fn of_layout(project: &ProjectDraft, parts: &LayoutParts) -> Vec<Self> {
        let layout = &project.layout;
        let mut slats: Vec<usize> = [layout.top, layout.bottom]
            .into_iter()
            .filter_map(|id| project.slat_place(id))
            .collect();
        slats.dedup();
        let at = |place: Place, fields: &'static [Field]| {
            fields.iter().map(move |&field| Self { place, field })
        };
        let slats = slats
            .into_iter()
            .flat_map(|place| at(Place::Slat(place), &OF_SLAT));
        let barrel = project
            .barrel_place(layout.barrel)
            .into_iter()
            .flat_map(|place| at(Place::Barrel(place), &OF_BARREL));
        let set = match (project.rules.spacing, project.rules.cutter_set) {
            (Spacing::Set, Some(id)) => project.cutter_set_place(id),
            _ => None,
        };
        slats
            .chain(at(Place::Rules, &OF_RULES))
            .chain(
                set.into_iter()
                    .flat_map(|place| at(Place::CutterSet(place), &[Field::SetPitch])),
            )
            .chain(barrel)
            .filter(|input| input.field.is_used(parts, project.rules.spacing))
            .collect()
    }

    /// The number it stands for, or nothing where the project has no such number or it is none
    /// that is looked at.
    #[must_use]
    pub fn typed_mut(self, project: &mut ProjectDraft) -> Option<&mut Typed> {
        match self.place {
            Place::Slat(place) => of_slat(&mut project.slats.get_mut(place)?.draft, self.field),
            Place::Rules => of_rules(&mut project.rules, self.field),
            Place::Barrel(place) => {
                of_barrel(&mut project.barrels.get_mut(place)?.draft, self.field)
            }
            Place::CutterSet(place) => Some(&mut project.cutter_sets.get_mut(place)?.draft.pitch),
            Place::Layout
            | Place::Accuracy(_)
            | Place::Order(_)
            | Place::Plank(_)
            | Place::Blank(_)
            | Place::SawShop
            | Place::Head(_)
            | Place::Cut
            | Place::Run
            | Place::Stage(_)
            | Place::Period(_)
            | Place::Offer(_)
            | Place::Tier(..)
            | Place::SawnSlats(_)
            | Place::Supply
            | Place::Species(_)
            | Place::Conditions
            | Place::Search => None,
        }
    }
}

impl Field {
    /// Whether a layout asks for this number at all.
    fn is_used(self, parts: &LayoutParts, spacing: Spacing) -> bool {
        let shape = parts.barrel.shape();
        match self {
            Self::Diameter
            | Self::AcrossFlats
            | Self::Height
            | Self::Inscribed
            | Self::BarrelWidth => self == shape.size_field(),
            Self::CornerRadius => shape.has_corners(),
            Self::Pitch => spacing == Spacing::Given,
            _ => true,
        }
    }
}

fn of_slat(slat: &mut SlatDraft, field: Field) -> Option<&mut Typed> {
    match field {
        Field::SlatWidth => Some(&mut slat.width),
        Field::SlatThickness => Some(&mut slat.thickness),
        _ => None,
    }
}

fn of_rules(rules: &mut RulesDraft, field: Field) -> Option<&mut Typed> {
    match field {
        Field::Land => Some(&mut rules.land),
        Field::EdgeAllowance => Some(&mut rules.edge),
        Field::PlaningAllowance => Some(&mut rules.planing),
        Field::Clearance => Some(&mut rules.clearance),
        Field::Pitch => Some(&mut rules.pitch),
        _ => None,
    }
}

fn of_barrel(barrel: &mut BarrelDraft, field: Field) -> Option<&mut Typed> {
    match field {
        Field::Diameter
        | Field::AcrossFlats
        | Field::Height
        | Field::Inscribed
        | Field::BarrelWidth => Some(&mut barrel.size),
        Field::CornerRadius => Some(&mut barrel.corner_radius),
        Field::Coat => Some(&mut barrel.coat),
        _ => None,
    }
}
