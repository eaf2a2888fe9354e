//! Where a field of the project stands in its file.

use solver::order_plan::OrderPlanProblem;
use solver::sawing::SawingProblem;
use solver::{Cause, Field, HeadKind, Place, Problem, Stage};

/// The path of a problem, like `slats[2].width_mm`.
pub(crate) fn of_problem(problem: &Problem) -> String {
    // A name that is missing stands in a field of its own in the file.
    let name = match problem.problem.cause {
        Cause::NoSuchBarrel => "barrel",
        Cause::NoSuchSpecies => "species",
        Cause::NoSuchSet | Cause::SetForOtherBarrel => "cutter_set",
        Cause::NoSuchStock | Cause::NoSuchOffered | Cause::NoSuchSawn | Cause::SawnTwice => "slat",
        Cause::OrderPlan(OrderPlanProblem::Periods { .. }) => "periods",
        Cause::OrderPlan(OrderPlanProblem::Lines { .. }) => "offers",
        Cause::Sawing(SawingProblem::NoPlanks | SawingProblem::TooManyPlanks { .. }) => "planks",
        Cause::Sawing(
            SawingProblem::TooManyBlanks { .. } | SawingProblem::TooManyPieces { .. },
        ) => "blanks",
        _ => field_name(problem.problem.field),
    };
    in_place(problem.place, name)
}

/// The path of a field.
pub(crate) fn of_field(place: Place, field: Field) -> String {
    in_place(place, field_name(field))
}

fn in_place(place: Place, name: &str) -> String {
    match place {
        Place::Barrel(at) => format!("barrels[{at}].{name}"),
        Place::Slat(at) => format!("slats[{at}].{name}"),
        Place::Species(at) => format!("species[{at}].{name}"),
        Place::Conditions => format!("conditions.{name}"),
        Place::CutterSet(at) => format!("cutter_sets[{at}].{name}"),
        Place::Accuracy(at) => format!("accuracies[{at}].{name}"),
        Place::Rules => format!("rules.{name}"),
        Place::Layout => format!("layout.{name}"),
        Place::Search => format!("search.{name}"),
        Place::Order(at) => format!("orders[{at}].{name}"),
        Place::Plank(at) => format!("saw_shop.planks[{at}].{name}"),
        Place::Blank(at) => format!("saw_shop.blanks[{at}].{name}"),
        Place::SawShop => format!("saw_shop.{name}"),
        Place::Head(HeadKind::Groove) => format!("heads.groove.{name}"),
        Place::Head(HeadKind::Top) => format!("heads.top.{name}"),
        Place::Head(HeadKind::Bottom) => format!("heads.bottom.{name}"),
        Place::Cut => format!("cut.{name}"),
        Place::Run => format!("run.{name}"),
        Place::Stage(stage) => format!("run.{name}.{}", stage_name(stage)),
        Place::Period(at) => format!("supply.periods[{at}].{name}"),
        Place::Offer(at) => format!("supply.offers[{at}].{name}"),
        Place::Tier(at, tier) => format!("supply.offers[{at}].tiers[{tier}].{name}"),
        Place::SawnSlats(at) => format!("supply.sawn_slats[{at}].{name}"),
        Place::Supply => format!("supply.{name}"),
    }
}

const fn stage_name(stage: Stage) -> &'static str {
    match stage {
        Stage::Grooving => "grooving",
        Stage::Gluing => "gluing",
        Stage::Shaping => "shaping",
        Stage::Coating => "coating",
        Stage::Finishing => "finishing",
    }
}

const fn field_name(field: Field) -> &'static str {
    match field {
        Field::Diameter
        | Field::AcrossFlats
        | Field::Height
        | Field::Inscribed
        | Field::BarrelWidth => "size_mm",
        Field::Sides => "sides",
        Field::BarrelHeight => "height_mm",
        Field::FaceRadius => "face_radius_mm",
        Field::CornerRadius => "corner_radius_mm",
        Field::AxisAcross => "axis_across_mm",
        Field::AxisUp => "axis_up_mm",
        Field::Path | Field::PointAcross | Field::PointUp | Field::GainReach => "path",
        Field::Coat => "coat_mm",
        Field::PencilLength | Field::SlatLength | Field::PlankLength | Field::BlankLength => {
            "length_mm"
        }
        Field::LeadDiameter => "lead_diameter_mm",
        Field::PointAngle => "finish.point_degrees",
        Field::DipLength => "finish.dip_mm",
        Field::ImprintFace => "finish.imprint_face",
        Field::ImprintMargin => "finish.imprint_margin_mm",
        Field::ImprintEnd => "finish.imprint_end_mm",
        Field::FaceFall => "finish.face_fall_mm",
        Field::CoatDensity => "finish.coat_grams_per_cm3",
        Field::TinWidth => "finish.tin_width_mm",
        Field::TinHeight => "finish.tin_height_mm",
        Field::TinLength => "finish.tin_length_mm",
        Field::SlatWidth | Field::PlankWidth | Field::BlankWidth => "width_mm",
        Field::SlatThickness | Field::PlankThickness | Field::BlankThickness => "thickness_mm",
        Field::WidthTolerance => "width_tolerance_mm",
        Field::ThicknessTolerance => "thickness_tolerance_mm",
        Field::DeliveryMoisture | Field::GroovingMoisture | Field::SawnMoisture => {
            "moisture_percent"
        }
        Field::PackSlats => "pack_slats",
        Field::PackPrice => "pack_price",
        Field::OnHand => "on_hand_slats",
        Field::PackLimit => "pack_limit",
        Field::RadialShrinkage => "radial_percent",
        Field::TangentialShrinkage => "tangential_percent",
        Field::FibreSaturation => "fibre_saturation_percent",
        Field::AirTemperature => "temperature_celsius",
        Field::AirHumidity => "humidity_percent",
        Field::SetPitch | Field::Pitch => "pitch_mm",
        Field::SetMost | Field::MostAcross => "most",
        Field::SetPrice | Field::PlankPrice => "price",
        Field::Clearance => "clearance_mm",
        Field::AxisHeight => "axis_height_mm",
        Field::Land => "land_mm",
        Field::EdgeAllowance => "edge_mm",
        Field::PlaningAllowance => "planing_mm",
        Field::Floor => "floor_mm",
        Field::Wall => "wall_mm",
        Field::Eccentricity => "eccentricity_mm",
        Field::Bond => "bond_mm",
        Field::Relief => "relief_degrees",
        Field::EndTrim | Field::PlankEndTrim => "end_trim_mm",
        Field::SawKerf => "saw_kerf_mm",
        Field::SlatRejects => "slat_rejects_percent",
        Field::PencilRejects => "pencil_rejects_percent",
        Field::GroovePosition => "groove_position.size_mm",
        Field::ShapingPosition => "shaping_position.size_mm",
        Field::LeadSpread => "lead_diameter.size_mm",
        Field::GrooveHead => "groove_head.size_mm",
        Field::GrooveDepth => "groove_depth.size_mm",
        Field::WidthSpread => "slat_width.size_mm",
        Field::ThicknessSpread => "bottom_thickness.size_mm",
        Field::GlueShift => "glue_shift.size_mm",
        Field::ShapingAcross => "shaping_across.size_mm",
        Field::ShapingUp => "shaping_up.size_mm",
        Field::Sigmas => "sigmas",
        Field::WidthOffset => "width_offset_mm",
        Field::ThicknessOffset => "thickness_offset_mm",
        Field::Turn => "turn_degrees",
        Field::NewSetPrice => "new_set_price",
        Field::YearGross => "year_gross",
        Field::PlanksOnHand => "on_hand",
        Field::PlankEdgeTrim => "edge_trim_mm",
        Field::LengthDressing => "length_dressing_mm",
        Field::WidthDressing => "width_dressing_mm",
        Field::ThicknessDressing => "thickness_dressing_mm",
        Field::BlanksWanted => "wanted",
        Field::BlankOverWorth => "over_worth",
        Field::MostOver => "most_over",
        Field::CrosscutKerf => "crosscut_kerf_mm",
        Field::RipKerf => "rip_kerf_mm",
        Field::ShortestOffcut => "shortest_offcut_mm",
        Field::OffcutPrice => "offcut_price_per_metre",
        Field::HeadDiameter => "cutting_diameter_mm",
        Field::HookAngle => "hook_degrees",
        Field::CuttingKnives => "cutting_knives",
        Field::HeadSpeed => "speed_per_minute",
        Field::MarkedSpeed => "marked_speed_per_minute",
        Field::FeedSpeed => "feed_metres_per_minute",
        Field::MarkPitch => "mark_pitch_mm",
        Field::WaveHeight => "wave_height_mm",
        Field::Overcut => "overcut_mm",
        Field::OvercutDraft => "overcut_draft_degrees",
        Field::LeadTolerance => "lead_tolerance_mm",
        Field::LeadDensity => "lead_grams_per_cm3",
        Field::LeadBreakage => "lead_breakage_percent",
        Field::GlueSpread => "glue_grams_per_m2",
        Field::ClampPressure => "clamp_megapascals",
        Field::PressHours => "press_hours",
        Field::PressLoad => "press_load",
        Field::CoatSolids => "coat_solids_percent",
        Field::CoatPasses => "coat_passes",
        Field::SpecificGravity => "specific_gravity",
        Field::VolumetricShrinkage => "volumetric_percent",
        Field::StageYield => "yields_percent",
        Field::DuePeriod => "due_period",
        Field::MachineHours => "machine_hours",
        Field::MachineHourPrice => "machine_hour_price",
        Field::SandwichSeconds => "sandwich_seconds",
        Field::ChangeoverCost => "changeover_cost",
        Field::ChangeoverMinutes => "changeover_minutes",
        Field::PencilHolding => "thousand_pencils_holding",
        Field::SlatHolding => "thousand_slats_holding",
        Field::LeadPrice => "thousand_leads_price",
        Field::GluePrice => "thousand_sandwiches_glue_price",
        Field::CoatPrice => "thousand_pencils_coat_price",
        Field::ChipPrice => "chips_tonne_price",
        Field::CertifiedShare => "least_certified_percent",
        Field::PencilStore => "most_pencils_stored",
        Field::SlatStore => "most_slats_stored",
        Field::CostLimit => "most_cost",
        Field::TimberLimit => "most_timber_m3",
        Field::ChangeoverLimit => "most_changeovers",
        Field::TierFrom => "from_packs",
        Field::OrderCost => "order_cost",
        Field::LeastOrder => "least_packs",
        Field::MostOrder => "most_packs",
        Field::LeadPeriods => "lead_periods",
        Field::SawnCost => "thousand_cost",
        Field::SawnMost => "most_slats",
        Field::PencilsOnHand => "on_hand_pencils",
        Field::RunGross | Field::OrderGross => "gross",
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use app::{demo, project_file};
    use serde_json::Value;

    use super::*;

    /// A path of the demo as a JSON pointer.
    fn stands_in_the_demo(path: &str) -> bool {
        let file: Value = serde_json::from_str(&project_file::write(&demo::project())).unwrap();
        let pointer = path.replace("].", "/").replace(['[', '.'], "/");
        file.pointer(&format!("/{pointer}")).is_some()
    }

    #[test]
    fn every_field_of_the_file_that_holds_a_number_has_one_field_of_the_project() {
        let places = [
            Place::Barrel(0),
            Place::Slat(1),
            Place::Species(1),
            Place::Conditions,
            Place::CutterSet(2),
            Place::Accuracy(0),
            Place::Rules,
            Place::Layout,
            Place::Search,
            Place::Order(3),
            Place::Plank(0),
            Place::Blank(1),
            Place::SawShop,
            Place::Head(HeadKind::Bottom),
            Place::Cut,
            Place::Run,
            Place::Stage(Stage::Shaping),
            Place::Period(2),
            Place::Offer(0),
            Place::Tier(0, 1),
            Place::SawnSlats(0),
            Place::Supply,
        ];
        // What is asked of a feed is not kept: the feed is.
        let asked_only = [Field::MarkPitch, Field::WaveHeight];
        for field in Field::ALL {
            let stands = |place: &&Place| stands_in_the_demo(&of_field(**place, field));
            let is_kept = !asked_only.contains(&field);
            assert_eq!(
                places.iter().any(|place| stands(&place)),
                is_kept,
                "{field:?}"
            );
        }
        let names: BTreeSet<&str> = Field::ALL.into_iter().map(field_name).collect();
        // 150 fields: five sizes of a barrel; length four times, width, thickness and moisture three
        // times, pitch, most, price, end trim and gross twice each.
        assert_eq!(names.len(), 150 - 4 - 3 - 3 * 2 - 5);
    }

    #[test]
    fn a_missing_name_stands_in_a_field_of_its_own() {
        let problem = Problem {
            place: Place::Order(2),
            problem: solver::FieldProblem {
                field: Field::OrderGross,
                cause: Cause::NoSuchBarrel,
            },
        };
        assert_eq!(of_problem(&problem), "orders[2].barrel");
    }
}
