//! A run as it is described, checked into one that can be reckoned.

use super::{LeadGrade, Stage};
use crate::field::{Field, FieldProblem, Typed};
use crate::quantity::Length;
use crate::ranking::GROSS;

/// A run as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct RunDraft {
    /// Good pencils wanted, in gross.
    pub gross: Typed,
    /// The grade of the lead.
    pub grade: LeadGrade,
    /// How far the diameter of a lead may lie from nominal, either way.
    pub lead_tolerance: Typed,
    /// Density of the lead, g/cm³.
    pub lead_density: Typed,
    /// Share of leads that break, percent.
    pub lead_breakage: Typed,
    /// Glue on a glue line, g/m².
    pub glue_spread: Typed,
    /// Pressure on the glue line, MPa.
    pub clamp_pressure: Typed,
    /// Hours that a load stays clamped.
    pub press_hours: Typed,
    /// Sandwiches clamped at once.
    pub press_load: Typed,
    /// Share of the liquid coat that stays, percent of its volume.
    pub coat_solids: Typed,
    /// How often a pencil is coated.
    pub coat_passes: Typed,
    /// Basic specific gravity of the wood.
    pub specific_gravity: Typed,
    /// Volumetric shrinkage of the wood from green to ovendry, percent.
    pub volumetric_shrinkage: Typed,
    /// Share of pieces that each stage lets through, percent, in the order of [`Stage::ALL`].
    pub yields: [Typed; 5],
}

/// A run that can be reckoned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Run {
    /// Good pencils wanted.
    pub pencils: u64,
    /// The grade of the lead.
    pub grade: LeadGrade,
    /// How far the diameter of a lead may lie from nominal, at least 0.
    pub lead_tolerance: Length,
    /// Density of the lead, g/cm³, above 0.
    pub lead_density: f64,
    /// Share of leads that break, 0 to 0.9.
    pub lead_breakage: f64,
    /// Glue on a glue line, g/m², above 0.
    pub glue_spread: f64,
    /// Pressure on the glue line, MPa, above 0.
    pub clamp_pressure: f64,
    /// Hours that a load stays clamped, above 0.
    pub press_hours: f64,
    /// Sandwiches clamped at once, at least 1.
    pub press_load: u64,
    /// Share of the volume of the liquid coat that stays, 0.01 to 1.
    pub coat_solids: f64,
    /// How often a pencil is coated, at least 1.
    pub coat_passes: u32,
    /// Basic specific gravity of the wood.
    pub specific_gravity: f64,
    /// Volumetric shrinkage of the wood, percent.
    pub volumetric_shrinkage: f64,
    /// Share of pieces that each stage lets through, 0.01 to 1, in the order of [`Stage::ALL`].
    pub yields: [f64; 5],
}

/// A broken rule of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct RunProblem {
    /// The stage whose yield it is; none for every other field.
    pub stage: Option<Stage>,
    /// What is wrong.
    pub problem: FieldProblem,
}

impl RunDraft {
    /// The first value in every field, of HB lead.
    #[must_use]
    pub fn new() -> Self {
        Self {
            gross: Typed::initial(Field::RunGross),
            grade: LeadGrade::HB,
            lead_tolerance: Typed::initial(Field::LeadTolerance),
            lead_density: Typed::initial(Field::LeadDensity),
            lead_breakage: Typed::initial(Field::LeadBreakage),
            glue_spread: Typed::initial(Field::GlueSpread),
            clamp_pressure: Typed::initial(Field::ClampPressure),
            press_hours: Typed::initial(Field::PressHours),
            press_load: Typed::initial(Field::PressLoad),
            coat_solids: Typed::initial(Field::CoatSolids),
            coat_passes: Typed::initial(Field::CoatPasses),
            specific_gravity: Typed::initial(Field::SpecificGravity),
            volumetric_shrinkage: Typed::initial(Field::VolumetricShrinkage),
            yields: [const { Typed::initial(Field::StageYield) }; 5],
        }
    }

    /// The run, or every rule it breaks.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range.
    ///
    /// ```
    /// use solver::{RunDraft, Stage, Typed};
    /// let mut draft = RunDraft::new();
    /// assert_eq!(draft.check().unwrap().pencils, 14_400); // 100 gross
    /// draft.yields[Stage::Shaping as usize] = Typed::Number(0.0);
    /// assert_eq!(draft.check().unwrap_err()[0].stage, Some(Stage::Shaping));
    /// ```
    pub fn check(&self) -> Result<Run, Vec<RunProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field, stage| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(RunProblem { stage, problem });
                0.0
            })
        };
        let mut number = |typed, field| read(typed, field, None);
        let mut run = Run {
            // The ranges of the fields lie within the whole numbers.
            pencils: (number(&self.gross, Field::RunGross) * f64::from(GROSS)).ceil() as u64,
            grade: self.grade,
            lead_tolerance: Length::millimetres(number(&self.lead_tolerance, Field::LeadTolerance)),
            lead_density: number(&self.lead_density, Field::LeadDensity),
            lead_breakage: number(&self.lead_breakage, Field::LeadBreakage) / 100.0,
            glue_spread: number(&self.glue_spread, Field::GlueSpread),
            clamp_pressure: number(&self.clamp_pressure, Field::ClampPressure),
            press_hours: number(&self.press_hours, Field::PressHours),
            press_load: number(&self.press_load, Field::PressLoad) as u64,
            coat_solids: number(&self.coat_solids, Field::CoatSolids) / 100.0,
            coat_passes: number(&self.coat_passes, Field::CoatPasses) as u32,
            specific_gravity: number(&self.specific_gravity, Field::SpecificGravity),
            volumetric_shrinkage: number(&self.volumetric_shrinkage, Field::VolumetricShrinkage),
            yields: [1.0; 5],
        };
        for stage in Stage::ALL {
            let typed = &self.yields[stage as usize];
            let share = read(typed, Field::StageYield, Some(stage)) / 100.0;
            run.yields[stage as usize] = share;
        }
        if problems.is_empty() {
            Ok(run)
        } else {
            Err(problems)
        }
    }
}

impl Default for RunDraft {
    fn default() -> Self {
        Self::new()
    }
}

impl Run {
    /// The share of pieces that pass every stage, from slat to finished pencil.
    #[must_use]
    pub fn good_share(&self) -> f64 {
        self.yields.iter().product()
    }
}
