//! Every number has its place, on the page and in the project.

use super::*;
use crate::demo;

#[test]
fn what_is_set_in_a_slot_is_found_there_and_nowhere_else() {
    let project = demo::project();
    let (barrel, slat) = (project.barrels[0].id, project.slats[0].id);
    let (species, set) = (project.species[0].id, project.cutter_sets[0].id);
    let barrel_fields = [
        Field::AcrossFlats,
        Field::Sides,
        Field::BarrelHeight,
        Field::FaceRadius,
        Field::CornerRadius,
        Field::AxisAcross,
        Field::AxisUp,
        Field::Coat,
        Field::PencilLength,
        Field::LeadDiameter,
        Field::PointAngle,
        Field::CoatDensity,
        Field::DipLength,
        Field::ImprintFace,
        Field::ImprintMargin,
        Field::ImprintEnd,
        Field::FaceFall,
        Field::TinWidth,
        Field::TinHeight,
        Field::TinLength,
    ];
    let slat_fields = [
        Field::SlatLength,
        Field::SlatWidth,
        Field::SlatThickness,
        Field::WidthTolerance,
        Field::ThicknessTolerance,
        Field::DeliveryMoisture,
        Field::PackSlats,
        Field::PackPrice,
        Field::OnHand,
        Field::PackLimit,
    ];
    let species_fields = [
        Field::RadialShrinkage,
        Field::TangentialShrinkage,
        Field::FibreSaturation,
    ];
    let conditions_fields = [
        Field::GroovingMoisture,
        Field::AirTemperature,
        Field::AirHumidity,
    ];
    let set_fields = [Field::SetPitch, Field::SetMost, Field::SetPrice];
    let rules_fields = [
        Field::Pitch,
        Field::MostAcross,
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
        Field::EndTrim,
        Field::SawKerf,
        Field::SlatRejects,
        Field::PencilRejects,
    ];
    let line = project.accuracies[0].id;
    let line_fields = [
        Field::GroovePosition,
        Field::ShapingPosition,
        Field::LeadSpread,
        Field::GrooveHead,
        Field::GrooveDepth,
        Field::WidthSpread,
        Field::ThicknessSpread,
        Field::GlueShift,
        Field::ShapingAcross,
        Field::ShapingUp,
        Field::Sigmas,
        Field::WidthOffset,
        Field::ThicknessOffset,
    ];
    let search_fields = [Field::NewSetPrice, Field::YearGross];
    let plank = project.saw_shop.planks[1].id;
    let plank_fields = [
        Field::PlankLength,
        Field::PlankWidth,
        Field::PlankThickness,
        Field::PlankPrice,
        Field::PlanksOnHand,
        Field::PlankEndTrim,
        Field::PlankEdgeTrim,
    ];
    let blank = project.saw_shop.blanks[1].id;
    let blank_fields = [
        Field::BlankLength,
        Field::BlankWidth,
        Field::BlankThickness,
        Field::LengthDressing,
        Field::WidthDressing,
        Field::ThicknessDressing,
        Field::BlanksWanted,
        Field::BlankOverWorth,
        Field::MostOver,
    ];
    let saw_shop_fields = [
        Field::CrosscutKerf,
        Field::RipKerf,
        Field::SawnMoisture,
        Field::ShortestOffcut,
        Field::OffcutPrice,
    ];
    let head_fields = [
        Field::HeadDiameter,
        Field::HookAngle,
        Field::CuttingKnives,
        Field::HeadSpeed,
        Field::MarkedSpeed,
    ];
    let of_heads = HeadKind::ALL
        .into_iter()
        .flat_map(|head| head_fields.map(|field| Slot::Head(head, field)));
    let cut_fields = [Field::FeedSpeed, Field::Overcut, Field::OvercutDraft];
    let run_fields = [
        Field::RunGross,
        Field::LeadTolerance,
        Field::LeadDensity,
        Field::LeadBreakage,
        Field::GlueSpread,
        Field::ClampPressure,
        Field::PressHours,
        Field::PressLoad,
        Field::CoatSolids,
        Field::CoatPasses,
        Field::SpecificGravity,
        Field::VolumetricShrinkage,
    ];
    let offer = project.supply.offers[0].id;
    let offer_fields = [
        Field::PackSlats,
        Field::OrderCost,
        Field::LeastOrder,
        Field::MostOrder,
        Field::PackLimit,
        Field::LeadPeriods,
    ];
    let tier_fields = [Field::TierFrom, Field::PackPrice];
    let order_fields = [Field::OrderGross, Field::DuePeriod, Field::PencilsOnHand];
    let sawn_fields = [Field::SawnCost, Field::SawnMost];
    let supply_fields = [
        Field::MachineHourPrice,
        Field::SandwichSeconds,
        Field::ChangeoverCost,
        Field::ChangeoverMinutes,
        Field::PencilHolding,
        Field::SlatHolding,
        Field::LeadPrice,
        Field::GluePrice,
        Field::CoatPrice,
        Field::ChipPrice,
        Field::CertifiedShare,
        Field::PencilStore,
        Field::SlatStore,
        Field::CostLimit,
        Field::TimberLimit,
        Field::ChangeoverLimit,
    ];
    let slots: Vec<Slot> = barrel_fields
        .map(|field| Slot::Barrel(barrel, field))
        .into_iter()
        .chain(slat_fields.map(|field| Slot::Slat(slat, field)))
        .chain(species_fields.map(|field| Slot::Species(species, field)))
        .chain(conditions_fields.map(Slot::Conditions))
        .chain(set_fields.map(|field| Slot::CutterSet(set, field)))
        .chain(line_fields.map(|field| Slot::Accuracy(line, field)))
        .chain(rules_fields.map(Slot::Rules))
        .chain(search_fields.map(Slot::Search))
        .chain(plank_fields.map(|field| Slot::Plank(plank, field)))
        .chain(blank_fields.map(|field| Slot::Blank(blank, field)))
        .chain(saw_shop_fields.map(Slot::SawShop))
        .chain(of_heads)
        .chain(cut_fields.map(Slot::Cut))
        .chain(run_fields.map(Slot::Run))
        .chain(Stage::ALL.map(Slot::Yield))
        .chain(offer_fields.map(|field| Slot::Offer(offer, field)))
        .chain(tier_fields.map(|field| Slot::Tier(offer, 1, field)))
        .chain(sawn_fields.map(|field| Slot::SawnSlats(0, field)))
        .chain(supply_fields.map(Slot::Supply))
        .chain(order_fields.map(|field| Slot::Order(0, field)))
        .chain([Slot::Turn, Slot::Period(1)])
        .collect();
    let names: std::collections::BTreeSet<String> =
        slots.iter().map(|slot| slot.element_id("column")).collect();
    assert_eq!(names.len(), slots.len());
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
fn the_path_of_a_barrel_holds_no_number_and_takes_none() {
    let mut project = demo::project();
    let before = project.clone();
    let path = Slot::Barrel(project.barrels[0].id, Field::Path);
    path.set(&mut project, Typed::Number(1.0));
    assert_eq!(project, before);
    assert_eq!(path.get(&project), None);
}

#[test]
fn a_slot_that_has_gone_holds_nothing_and_takes_nothing() {
    let mut project = demo::project();
    let before = project.clone();
    Slot::Slat(Id(9999), Field::SlatWidth).set(&mut project, Typed::Number(1.0));
    assert_eq!(project, before);
    Slot::CutterSet(Id(9999), Field::SetPitch).set(&mut project, Typed::Number(1.0));
    assert_eq!(project, before);
    assert_eq!(
        Slot::Species(Id(9999), Field::RadialShrinkage).get(&project),
        None
    );
    assert_eq!(Slot::Order(99, Field::OrderGross).get(&project), None);
}
