//! What a run takes.

use schemars::JsonSchema;
use serde::Serialize;
use solver::{RunNeeds, StageCount};

use crate::document::words::{PieceWord, StageWord};

/// What a run takes.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct RunPart {
    /// Good pencils wanted.
    pencils: u64,
    /// Sandwiches that are glued.
    sandwiches: u64,
    /// What each stage takes and must let through, in the order of the work.
    stages: Vec<StageLine>,
    /// Leads.
    leads: LeadsPart,
    /// Glue.
    glue: GluePart,
    /// Clamps.
    clamps: ClampsPart,
    /// Coat.
    coat: CoatPart,
    /// Wood and chips.
    wood: WoodPart,
}

/// A stage of the work.
#[derive(Debug, Serialize, JsonSchema)]
struct StageLine {
    /// Which one.
    stage: StageWord,
    /// What it counts.
    piece: PieceWord,
    /// Pieces that go in.
    taken: u64,
    /// Good pieces that the next stage needs of them.
    needed: u64,
}

/// The leads of a run.
#[derive(Debug, Serialize, JsonSchema)]
struct LeadsPart {
    /// The grade as the trade writes it.
    grade: &'static str,
    /// Nominal diameter, mm.
    diameter_mm: f64,
    /// How far the diameter may lie from it, either way, mm.
    tolerance_mm: f64,
    /// Length of one, mm.
    length_mm: f64,
    /// Leads that are laid in grooves.
    laid: u64,
    /// Leads that are bought, with those that break.
    bought: u64,
    /// Mass of a gross of leads, g.
    gross_grams: f64,
    /// Mass of those bought, kg.
    kilograms: f64,
}

/// The glue of a run.
#[derive(Debug, Serialize, JsonSchema)]
struct GluePart {
    /// Glue line of one sandwich, mm².
    area_mm2: f64,
    /// Glue of one sandwich, g.
    sandwich_grams: f64,
    /// Glue of the run, kg.
    kilograms: f64,
}

/// The clamps of a run.
#[derive(Debug, Serialize, JsonSchema)]
struct ClampsPart {
    /// Force on one sandwich, or on a stack of them, kN.
    force_kilonewtons: f64,
    /// Loads, the last one not full.
    loads: u64,
    /// Hours that one clamp needs for all loads.
    hours: f64,
}

/// The coat of a run.
#[derive(Debug, Serialize, JsonSchema)]
struct CoatPart {
    /// Build of one pass, per side, mm.
    pass_mm: f64,
    /// Liquid coat of a gross, litres.
    gross_litres: f64,
    /// Liquid coat of the run, litres.
    litres: f64,
}

/// Wood and chips of a run.
#[derive(Debug, Serialize, JsonSchema)]
struct WoodPart {
    /// Density at the moisture content of grooving, kg/m³.
    kilograms_per_m3: f64,
    /// Slats that are grooved.
    slats: u64,
    /// Mass of these slats, kg.
    slat_kilograms: f64,
    /// Chips as solid wood, mm³.
    chips_mm3: f64,
    /// Mass of the chips, kg.
    chip_kilograms: f64,
    /// Edge strips and end trim as solid wood, mm³.
    strips_mm3: f64,
    /// Mass of the strips, kg.
    strip_kilograms: f64,
}

impl From<&RunNeeds> for RunPart {
    fn from(needs: &RunNeeds) -> Self {
        let (leads, wood) = (&needs.leads, &needs.wood);
        Self {
            pencils: needs.pencils,
            sandwiches: needs.sandwiches,
            stages: needs.stages.iter().map(StageLine::from).collect(),
            leads: LeadsPart {
                grade: leads.grade.label(),
                diameter_mm: leads.diameter.in_millimetres(),
                tolerance_mm: leads.tolerance.in_millimetres(),
                length_mm: leads.length.in_millimetres(),
                laid: leads.laid,
                bought: leads.bought,
                gross_grams: leads.gross_mass,
                kilograms: leads.mass,
            },
            glue: GluePart {
                area_mm2: needs.glue.area.in_square_millimetres(),
                sandwich_grams: needs.glue.sandwich,
                kilograms: needs.glue.mass,
            },
            clamps: ClampsPart {
                force_kilonewtons: needs.clamp.force,
                loads: needs.clamp.loads,
                hours: needs.clamp.hours,
            },
            coat: CoatPart {
                pass_mm: needs.coat.pass.in_millimetres(),
                gross_litres: needs.coat.gross,
                litres: needs.coat.litres,
            },
            wood: WoodPart {
                kilograms_per_m3: wood.density,
                slats: wood.slats,
                slat_kilograms: wood.mass,
                chips_mm3: wood.chips.in_cubic_millimetres(),
                chip_kilograms: wood.chip_mass,
                strips_mm3: wood.strips.in_cubic_millimetres(),
                strip_kilograms: wood.strip_mass,
            },
        }
    }
}

impl From<&StageCount> for StageLine {
    fn from(count: &StageCount) -> Self {
        Self {
            stage: count.stage.into(),
            piece: count.stage.piece().into(),
            taken: count.taken,
            needed: count.needed,
        }
    }
}
