//! The address of one number in a project.

use solver::order_plan::MOST_TIERS;
use solver::{
    Entry, Field, HeadKind, Id, Place, ProjectDraft, Shape, Size, Stage, TierDraft, Typed,
};

// Each table serves reading and writing: the borrow comes first, & or &mut.
macro_rules! barrel_number {
    (& $($mutable:ident)?, $barrel:expr, $field:expr) => {
        match $field {
            Field::Sides => & $($mutable)? $barrel.sides,
            Field::BarrelHeight => & $($mutable)? $barrel.height,
            Field::FaceRadius => & $($mutable)? $barrel.face_radius,
            Field::CornerRadius => & $($mutable)? $barrel.corner_radius,
            Field::AxisAcross => & $($mutable)? $barrel.axis_across,
            Field::AxisUp => & $($mutable)? $barrel.axis_up,
            Field::Coat => & $($mutable)? $barrel.coat,
            Field::PencilLength => & $($mutable)? $barrel.length,
            Field::LeadDiameter => & $($mutable)? $barrel.lead_diameter,
            Field::PointAngle => & $($mutable)? $barrel.finish.point_angle,
            Field::CoatDensity => & $($mutable)? $barrel.finish.coat_density,
            Field::DipLength => & $($mutable)? $barrel.finish.dip,
            Field::ImprintFace => & $($mutable)? $barrel.finish.face,
            Field::ImprintMargin => & $($mutable)? $barrel.finish.margin,
            Field::ImprintEnd => & $($mutable)? $barrel.finish.end_margin,
            Field::FaceFall => & $($mutable)? $barrel.finish.fall,
            Field::TinWidth => & $($mutable)? $barrel.finish.tin_width,
            Field::TinHeight => & $($mutable)? $barrel.finish.tin_height,
            Field::TinLength => & $($mutable)? $barrel.finish.tin_length,
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
            Field::DeliveryMoisture => & $($mutable)? $slat.moisture,
            Field::PackSlats => & $($mutable)? $slat.pack_slats,
            Field::PackPrice => & $($mutable)? $slat.pack_price,
            Field::OnHand => & $($mutable)? $slat.on_hand,
            Field::PackLimit => & $($mutable)? $slat.pack_limit,
            _ => & $($mutable)? $slat.width,
        }
    };
}

macro_rules! species_number {
    (& $($mutable:ident)?, $species:expr, $field:expr) => {
        match $field {
            Field::TangentialShrinkage => & $($mutable)? $species.tangential,
            Field::FibreSaturation => & $($mutable)? $species.fibre_saturation,
            _ => & $($mutable)? $species.radial,
        }
    };
}

macro_rules! conditions_number {
    (& $($mutable:ident)?, $conditions:expr, $field:expr) => {
        match $field {
            Field::AirTemperature => & $($mutable)? $conditions.temperature,
            Field::AirHumidity => & $($mutable)? $conditions.humidity,
            _ => & $($mutable)? $conditions.moisture,
        }
    };
}

macro_rules! cutter_set_number {
    (& $($mutable:ident)?, $set:expr, $field:expr) => {
        match $field {
            Field::SetMost => & $($mutable)? $set.most,
            Field::SetPrice => & $($mutable)? $set.price,
            _ => & $($mutable)? $set.pitch,
        }
    };
}

macro_rules! accuracy_number {
    (& $($mutable:ident)?, $line:expr, $field:expr) => {
        match $field {
            Field::ShapingPosition => & $($mutable)? $line.shaping_position.size,
            Field::LeadSpread => & $($mutable)? $line.lead_diameter.size,
            Field::GrooveHead => & $($mutable)? $line.groove_head.size,
            Field::GrooveDepth => & $($mutable)? $line.groove_depth.size,
            Field::WidthSpread => & $($mutable)? $line.slat_width.size,
            Field::ThicknessSpread => & $($mutable)? $line.bottom_thickness.size,
            Field::GlueShift => & $($mutable)? $line.glue_shift.size,
            Field::ShapingAcross => & $($mutable)? $line.shaping_across.size,
            Field::ShapingUp => & $($mutable)? $line.shaping_up.size,
            Field::Sigmas => & $($mutable)? $line.sigmas,
            Field::WidthOffset => & $($mutable)? $line.width_offset,
            Field::ThicknessOffset => & $($mutable)? $line.thickness_offset,
            _ => & $($mutable)? $line.groove_position.size,
        }
    };
}

macro_rules! search_number {
    (& $($mutable:ident)?, $search:expr, $field:expr) => {
        match $field {
            Field::NewSetPrice => & $($mutable)? $search.new_set_price,
            _ => & $($mutable)? $search.year_gross,
        }
    };
}

macro_rules! plank_number {
    (& $($mutable:ident)?, $plank:expr, $field:expr) => {
        match $field {
            Field::PlankWidth => & $($mutable)? $plank.width,
            Field::PlankThickness => & $($mutable)? $plank.thickness,
            Field::PlankPrice => & $($mutable)? $plank.price,
            Field::PlanksOnHand => & $($mutable)? $plank.on_hand,
            Field::PlankEndTrim => & $($mutable)? $plank.end_trim,
            Field::PlankEdgeTrim => & $($mutable)? $plank.edge_trim,
            _ => & $($mutable)? $plank.length,
        }
    };
}

macro_rules! blank_number {
    (& $($mutable:ident)?, $blank:expr, $field:expr) => {
        match $field {
            Field::BlankWidth => & $($mutable)? $blank.width,
            Field::BlankThickness => & $($mutable)? $blank.thickness,
            Field::LengthDressing => & $($mutable)? $blank.length_dressing,
            Field::WidthDressing => & $($mutable)? $blank.width_dressing,
            Field::ThicknessDressing => & $($mutable)? $blank.thickness_dressing,
            Field::BlanksWanted => & $($mutable)? $blank.demand,
            Field::BlankOverWorth => & $($mutable)? $blank.over_worth,
            Field::MostOver => & $($mutable)? $blank.most_over,
            _ => & $($mutable)? $blank.length,
        }
    };
}

macro_rules! saw_shop_number {
    (& $($mutable:ident)?, $shop:expr, $field:expr) => {
        match $field {
            Field::RipKerf => & $($mutable)? $shop.rip_kerf,
            Field::SawnMoisture => & $($mutable)? $shop.moisture,
            Field::ShortestOffcut => & $($mutable)? $shop.shortest_offcut,
            Field::OffcutPrice => & $($mutable)? $shop.offcut_price,
            _ => & $($mutable)? $shop.crosscut_kerf,
        }
    };
}

macro_rules! rules_number {
    (& $($mutable:ident)?, $rules:expr, $field:expr) => {
        match $field {
            Field::Pitch => & $($mutable)? $rules.pitch,
            Field::MostAcross => & $($mutable)? $rules.most,
            Field::Clearance => & $($mutable)? $rules.clearance,
            Field::AxisHeight => & $($mutable)? $rules.axis_height,
            Field::EdgeAllowance => & $($mutable)? $rules.edge,
            Field::PlaningAllowance => & $($mutable)? $rules.planing,
            Field::Floor => & $($mutable)? $rules.floor,
            Field::Wall => & $($mutable)? $rules.wall,
            Field::Eccentricity => & $($mutable)? $rules.eccentricity,
            Field::Bond => & $($mutable)? $rules.bond,
            Field::Relief => & $($mutable)? $rules.relief,
            Field::EndTrim => & $($mutable)? $rules.end_trim,
            Field::SawKerf => & $($mutable)? $rules.saw_kerf,
            Field::SlatRejects => & $($mutable)? $rules.slat_rejects,
            Field::PencilRejects => & $($mutable)? $rules.pencil_rejects,
            _ => & $($mutable)? $rules.land,
        }
    };
}

macro_rules! head_number {
    (& $($mutable:ident)?, $head:expr, $field:expr) => {
        match $field {
            Field::HookAngle => & $($mutable)? $head.hook,
            Field::CuttingKnives => & $($mutable)? $head.knives,
            Field::HeadSpeed => & $($mutable)? $head.speed,
            Field::MarkedSpeed => & $($mutable)? $head.marked,
            _ => & $($mutable)? $head.diameter,
        }
    };
}

macro_rules! cut_number {
    (& $($mutable:ident)?, $cut:expr, $field:expr) => {
        match $field {
            Field::Overcut => & $($mutable)? $cut.overcut,
            Field::OvercutDraft => & $($mutable)? $cut.draft,
            _ => & $($mutable)? $cut.feed,
        }
    };
}

macro_rules! run_number {
    (& $($mutable:ident)?, $run:expr, $field:expr) => {
        match $field {
            Field::LeadTolerance => & $($mutable)? $run.lead_tolerance,
            Field::LeadDensity => & $($mutable)? $run.lead_density,
            Field::LeadBreakage => & $($mutable)? $run.lead_breakage,
            Field::GlueSpread => & $($mutable)? $run.glue_spread,
            Field::ClampPressure => & $($mutable)? $run.clamp_pressure,
            Field::PressHours => & $($mutable)? $run.press_hours,
            Field::PressLoad => & $($mutable)? $run.press_load,
            Field::CoatSolids => & $($mutable)? $run.coat_solids,
            Field::CoatPasses => & $($mutable)? $run.coat_passes,
            Field::SpecificGravity => & $($mutable)? $run.specific_gravity,
            Field::VolumetricShrinkage => & $($mutable)? $run.volumetric_shrinkage,
            _ => & $($mutable)? $run.gross,
        }
    };
}

macro_rules! offer_number {
    (& $($mutable:ident)?, $offer:expr, $field:expr) => {
        match $field {
            Field::OrderCost => & $($mutable)? $offer.order_cost,
            Field::LeastOrder => & $($mutable)? $offer.least_packs,
            Field::MostOrder => & $($mutable)? $offer.most_packs,
            Field::PackLimit => & $($mutable)? $offer.pack_limit,
            Field::LeadPeriods => & $($mutable)? $offer.lead_periods,
            _ => & $($mutable)? $offer.pack_slats,
        }
    };
}

macro_rules! tier_number {
    (& $($mutable:ident)?, $tier:expr, $field:expr) => {
        match $field {
            Field::TierFrom => & $($mutable)? $tier.from_packs,
            _ => & $($mutable)? $tier.pack_price,
        }
    };
}

macro_rules! sawn_number {
    (& $($mutable:ident)?, $sawn:expr, $field:expr) => {
        match $field {
            Field::SawnMost => & $($mutable)? $sawn.most_slats,
            _ => & $($mutable)? $sawn.thousand_cost,
        }
    };
}

macro_rules! supply_number {
    (& $($mutable:ident)?, $supply:expr, $field:expr) => {
        match $field {
            Field::MachineHourPrice => & $($mutable)? $supply.hour_price,
            Field::ChangeoverCost => & $($mutable)? $supply.changeover_cost,
            Field::ChangeoverMinutes => & $($mutable)? $supply.changeover_minutes,
            Field::PencilHolding => & $($mutable)? $supply.pencil_holding,
            Field::SlatHolding => & $($mutable)? $supply.slat_holding,
            Field::LeadPrice => & $($mutable)? $supply.lead_price,
            Field::GluePrice => & $($mutable)? $supply.glue_price,
            Field::CoatPrice => & $($mutable)? $supply.coat_price,
            Field::ChipPrice => & $($mutable)? $supply.chip_price,
            Field::CertifiedShare => & $($mutable)? $supply.least_certified,
            Field::PencilStore => & $($mutable)? $supply.most_pencils_stored,
            Field::SlatStore => & $($mutable)? $supply.most_slats_stored,
            Field::CostLimit => & $($mutable)? $supply.cost_limit,
            Field::TimberLimit => & $($mutable)? $supply.timber_limit,
            Field::ChangeoverLimit => & $($mutable)? $supply.changeover_limit,
            _ => & $($mutable)? $supply.sandwich_seconds,
        }
    };
}

macro_rules! order_number {
    (& $($mutable:ident)?, $order:expr, $field:expr) => {
        match $field {
            Field::DuePeriod => & $($mutable)? $order.due,
            Field::PencilsOnHand => & $($mutable)? $order.on_hand,
            _ => & $($mutable)? $order.gross,
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
    /// A number of a species.
    Species(Id, Field),
    /// A number of the conditions at grooving.
    Conditions(Field),
    /// A number of a cutter set.
    CutterSet(Id, Field),
    /// A number of the accuracy of a line of machines.
    Accuracy(Id, Field),
    /// A machining rule.
    Rules(Field),
    /// The turn of the layout that is looked at.
    Turn,
    /// A number that a search counts with.
    Search(Field),
    /// A number of an order, by its place in the book.
    Order(usize, Field),
    /// A number of a kind of plank.
    Plank(Id, Field),
    /// A number of a kind of blank.
    Blank(Id, Field),
    /// A number of the saws.
    SawShop(Field),
    /// A number of a head.
    Head(HeadKind, Field),
    /// A number common to the heads.
    Cut(Field),
    /// A number of the run.
    Run(Field),
    /// What a stage of the run lets through.
    Yield(Stage),
    /// The machine hours of a period, by its place in the list.
    Period(usize),
    /// A number of an offer.
    Offer(Id, Field),
    /// A number of a price of an offer, by its place in the offer.
    Tier(Id, usize, Field),
    /// A number of slats sawn in the works, by their place in the list.
    SawnSlats(usize, Field),
    /// A number that an order plan counts with.
    Supply(Field),
}

impl Slot {
    /// The field that stands there.
    #[must_use]
    pub const fn field(self) -> Field {
        match self {
            Self::Barrel(_, field)
            | Self::Slat(_, field)
            | Self::Species(_, field)
            | Self::Conditions(field)
            | Self::CutterSet(_, field)
            | Self::Accuracy(_, field)
            | Self::Plank(_, field)
            | Self::Blank(_, field)
            | Self::SawShop(field)
            | Self::Head(_, field)
            | Self::Cut(field)
            | Self::Run(field)
            | Self::Offer(_, field)
            | Self::Tier(_, _, field)
            | Self::SawnSlats(_, field)
            | Self::Supply(field)
            | Self::Order(_, field)
            | Self::Rules(field)
            | Self::Search(field) => field,
            Self::Turn => Field::Turn,
            Self::Yield(_) => Field::StageYield,
            Self::Period(_) => Field::MachineHours,
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
            Size::BarrelHeight => match barrel_shape(project)? {
                Shape::Oval | Shape::Flat => barrel(Field::BarrelHeight),
                _ => return None,
            },
            Size::Coat => barrel(Field::Coat),
            Size::Lead => barrel(Field::LeadDiameter),
            Size::Land => Self::Rules(Field::Land),
            Size::Pitch => Self::Rules(Field::Pitch),
            Size::FirstGroove
            | Size::Edge
            | Size::TopPlaning
            | Size::BottomPlaning
            | Size::BarrelWidth
            | Size::Wall
            | Size::PlankLength
            | Size::PlankWidth
            | Size::SectionLength
            | Size::OffcutLength
            | Size::HeadAxis
            | Size::KnifeTip
            | Size::CutDepth
            | Size::WoodOnTable
            | Size::FinishedFace
            | Size::PencilLength
            | Size::Dip
            | Size::Imprint
            | Size::BareLead
            | Size::PaintFrom
            | Size::PaintTo => {
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
            Place::Species(at) => Self::Species(project.species.get(at)?.id, field),
            Place::Conditions => Self::Conditions(field),
            Place::CutterSet(at) => Self::CutterSet(project.cutter_sets.get(at)?.id, field),
            Place::Accuracy(at) => Self::Accuracy(project.accuracies.get(at)?.id, field),
            Place::Rules => Self::Rules(field),
            Place::Layout => Self::Turn,
            Place::Search => Self::Search(field),
            Place::Order(at) => Self::Order(at, field),
            Place::Plank(at) => Self::Plank(project.saw_shop.planks.get(at)?.id, field),
            Place::Blank(at) => Self::Blank(project.saw_shop.blanks.get(at)?.id, field),
            Place::SawShop => Self::SawShop(field),
            Place::Head(head) => Self::Head(head, field),
            Place::Cut => Self::Cut(field),
            Place::Run => Self::Run(field),
            Place::Stage(stage) => Self::Yield(stage),
            Place::Period(at) => Self::Period(at),
            Place::Offer(at) => Self::Offer(project.supply.offers.get(at)?.id, field),
            Place::Tier(at, tier) => Self::Tier(project.supply.offers.get(at)?.id, tier, field),
            Place::SawnSlats(at) => Self::SawnSlats(at, field),
            Place::Supply => Self::Supply(field),
        })
    }

    /// What stands there, or nothing when it has gone. The path of a barrel is no number, so
    /// there is nothing here either: it has a place on the page and in the history all the same.
    #[must_use]
    pub fn get(self, project: &ProjectDraft) -> Option<&Typed> {
        match self {
            Self::Barrel(_, Field::Path) => None,
            Self::Barrel(id, field) => {
                find(&project.barrels, id).map(|barrel| barrel_number!(&, barrel, field))
            }
            Self::Slat(id, field) => {
                find(&project.slats, id).map(|slat| slat_number!(&, slat, field))
            }
            Self::Species(id, field) => {
                find(&project.species, id).map(|species| species_number!(&, species, field))
            }
            Self::Conditions(field) => Some(conditions_number!(&, project.conditions, field)),
            Self::CutterSet(id, field) => {
                find(&project.cutter_sets, id).map(|set| cutter_set_number!(&, set, field))
            }
            Self::Accuracy(id, field) => {
                find(&project.accuracies, id).map(|line| accuracy_number!(&, line, field))
            }
            Self::Rules(field) => Some(rules_number!(&, project.rules, field)),
            Self::Turn => Some(&project.layout.turn),
            Self::Search(field) => Some(search_number!(&, project.search, field)),
            Self::Order(at, field) => {
                (project.orders.get(at)).map(|order| order_number!(&, order, field))
            }
            Self::Plank(id, field) => {
                find(&project.saw_shop.planks, id).map(|plank| plank_number!(&, plank, field))
            }
            Self::Blank(id, field) => {
                find(&project.saw_shop.blanks, id).map(|blank| blank_number!(&, blank, field))
            }
            Self::SawShop(field) => Some(saw_shop_number!(&, project.saw_shop, field)),
            Self::Head(head, field) => Some(head_number!(&, project.heads[head as usize], field)),
            Self::Cut(field) => Some(cut_number!(&, project.cut, field)),
            Self::Run(field) => Some(run_number!(&, project.run, field)),
            Self::Yield(stage) => Some(&project.run.yields[stage as usize]),
            Self::Period(at) => project.supply.periods.get(at).map(|period| &period.hours),
            Self::Offer(id, field) => {
                find(&project.supply.offers, id).map(|offer| offer_number!(&, offer, field))
            }
            Self::Tier(id, at, field) => find(&project.supply.offers, id)
                .and_then(|offer| offer.tiers.get(at))
                .map(|tier| tier_number!(&, tier, field)),
            Self::SawnSlats(at, field) => {
                (project.supply.sawn.get(at)).map(|sawn| sawn_number!(&, sawn, field))
            }
            Self::Supply(field) => Some(supply_number!(&, project.supply, field)),
        }
    }

    /// Puts something else there; does nothing when the place has gone or holds no number.
    pub fn set(self, project: &mut ProjectDraft, typed: Typed) {
        let place = match self {
            Self::Barrel(_, Field::Path) => None,
            Self::Barrel(id, field) => {
                find_mut(&mut project.barrels, id).map(|barrel| barrel_number!(&mut, barrel, field))
            }
            Self::Slat(id, field) => {
                find_mut(&mut project.slats, id).map(|slat| slat_number!(&mut, slat, field))
            }
            Self::Species(id, field) => find_mut(&mut project.species, id)
                .map(|species| species_number!(&mut, species, field)),
            Self::Conditions(field) => Some(conditions_number!(&mut, project.conditions, field)),
            Self::CutterSet(id, field) => find_mut(&mut project.cutter_sets, id)
                .map(|set| cutter_set_number!(&mut, set, field)),
            Self::Accuracy(id, field) => find_mut(&mut project.accuracies, id)
                .map(|line| accuracy_number!(&mut, line, field)),
            Self::Rules(field) => Some(rules_number!(&mut, project.rules, field)),
            Self::Turn => Some(&mut project.layout.turn),
            Self::Search(field) => Some(search_number!(&mut, project.search, field)),
            Self::Order(at, field) => {
                (project.orders.get_mut(at)).map(|order| order_number!(&mut, order, field))
            }
            Self::Plank(id, field) => find_mut(&mut project.saw_shop.planks, id)
                .map(|plank| plank_number!(&mut, plank, field)),
            Self::Blank(id, field) => find_mut(&mut project.saw_shop.blanks, id)
                .map(|blank| blank_number!(&mut, blank, field)),
            Self::SawShop(field) => Some(saw_shop_number!(&mut, project.saw_shop, field)),
            Self::Head(head, field) => {
                Some(head_number!(&mut, project.heads[head as usize], field))
            }
            Self::Cut(field) => Some(cut_number!(&mut, project.cut, field)),
            Self::Run(field) => Some(run_number!(&mut, project.run, field)),
            Self::Yield(stage) => Some(&mut project.run.yields[stage as usize]),
            Self::Period(at) => {
                (project.supply.periods.get_mut(at)).map(|period| &mut period.hours)
            }
            Self::Offer(id, field) => find_mut(&mut project.supply.offers, id)
                .map(|offer| offer_number!(&mut, offer, field)),
            Self::Tier(id, at, field) => return set_tier(project, id, at, field, typed),
            Self::SawnSlats(at, field) => {
                (project.supply.sawn.get_mut(at)).map(|sawn| sawn_number!(&mut, sawn, field))
            }
            Self::Supply(field) => Some(supply_number!(&mut, project.supply, field)),
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
            Self::Species(Id(id), field) => format!("{context}-species-{id}-{field:?}"),
            Self::Conditions(field) => format!("{context}-conditions-{field:?}"),
            Self::CutterSet(Id(id), field) => format!("{context}-set-{id}-{field:?}"),
            Self::Search(field) => format!("{context}-search-{field:?}"),
            Self::Accuracy(Id(id), field) => format!("{context}-line-{id}-{field:?}"),
            Self::Rules(field) => format!("{context}-rules-{field:?}"),
            Self::Turn => format!("{context}-turn"),
            Self::Order(at, field) => format!("{context}-order-{at}-{field:?}"),
            Self::Plank(Id(id), field) => format!("{context}-plank-{id}-{field:?}"),
            Self::Blank(Id(id), field) => format!("{context}-blank-{id}-{field:?}"),
            Self::SawShop(field) => format!("{context}-saw-shop-{field:?}"),
            Self::Head(head, field) => format!("{context}-{head:?}-{field:?}"),
            Self::Cut(field) => format!("{context}-cut-{field:?}"),
            Self::Run(field) => format!("{context}-run-{field:?}"),
            Self::Yield(stage) => format!("{context}-yield-{stage:?}"),
            Self::Period(at) => format!("{context}-period-{at}"),
            Self::Offer(Id(id), field) => format!("{context}-offer-{id}-{field:?}"),
            Self::Tier(Id(id), at, field) => format!("{context}-offer-{id}-{at}-{field:?}"),
            Self::SawnSlats(at, field) => format!("{context}-sawn-{at}-{field:?}"),
            Self::Supply(field) => format!("{context}-supply-{field:?}"),
        }
    }
}

/// Puts something in a price of an offer. Prices up to it come with it, and empty ones at the end go, so
/// that an offer has as many as stand there.
fn set_tier(project: &mut ProjectDraft, offer: Id, at: usize, field: Field, typed: Typed) {
    let Some(offer) = find_mut(&mut project.supply.offers, offer) else {
        return;
    };
    let empty = || TierDraft {
        from_packs: Typed::empty(),
        pack_price: Typed::empty(),
    };
    let tiers = &mut offer.tiers;
    while tiers.len() <= at.min(MOST_TIERS - 1) {
        tiers.push(empty());
    }
    if let Some(tier) = tiers.get_mut(at) {
        *tier_number!(&mut, tier, field) = typed;
    }
    while tiers.len() > 1 && tiers.last() == Some(&empty()) {
        tiers.pop();
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
mod tests;
