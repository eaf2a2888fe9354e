//! The machining rules of a shop: allowances, limits, and how spare width is shared.

use crate::field::{Field, FieldProblem, Typed};
use crate::quantity::{Angle, Length};

/// How the grooves are spaced.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Spacing {
    /// As close as the land allows; spare width goes to the edges.
    Closest,
    /// Spread out until the edges have just their allowance.
    Spread,
    /// At a given pitch, as an owned cutter set has it.
    Given,
}

impl Spacing {
    /// Every way.
    pub const ALL: [Self; 3] = [Self::Closest, Self::Spread, Self::Given];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Closest => "Closest, spare to the edges",
            Self::Spread => "Spread, spare into the pitch",
            Self::Given => "At a given pitch",
        }
    }
}

/// Machining rules as they are being described; they may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct RulesDraft {
    /// How the grooves are spaced.
    pub spacing: Spacing,
    /// The pitch, where it is given.
    pub pitch: Typed,
    /// Radial clearance of the groove round the lead.
    pub clearance: Typed,
    /// Height of the lead axis above the glue plane.
    pub axis_height: Typed,
    /// Least wood between two pencils.
    pub land: Typed,
    /// Least wood outside the outer pencils.
    pub edge: Typed,
    /// Least wood taken off each outer face.
    pub planing: Typed,
    /// Least wood under a groove.
    pub floor: Typed,
    /// Least wall round the groove.
    pub wall: Typed,
    /// How far a lead may sit off centre.
    pub eccentricity: Typed,
    /// Least glued width each side of the lead.
    pub bond: Typed,
    /// Least lean of a straight side from upright.
    pub relief: Typed,
}

/// Machining rules that can be worked with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rules {
    /// The given pitch, or how the grooves are spaced without one.
    pub spacing: PitchRule,
    /// Radial clearance of the groove round the lead, at least 0.
    pub clearance: Length,
    /// Height of the lead axis above the glue plane; below 0 it sinks into the bottom slat.
    pub axis_height: Length,
    /// Least wood between two pencils, at least 0.
    pub land: Length,
    /// Least wood outside the outer pencils, at least 0.
    pub edge: Length,
    /// Least wood taken off each outer face, at least 0.
    pub planing: Length,
    /// Least wood under a groove before planing, at least 0.
    pub floor: Length,
    /// Least wall round the groove, at least 0.
    pub wall: Length,
    /// How far a lead may sit off centre, at least 0.
    pub eccentricity: Length,
    /// Least glued width each side of the lead, at least 0.
    pub bond: Length,
    /// Least lean of a straight side from upright, at least 0°.
    pub relief: Angle,
}

/// How the pitch is found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PitchRule {
    /// As close as the land allows; spare width goes to the edges.
    Closest,
    /// Spread out until the edges have just their allowance.
    Spread,
    /// Given, above 0.
    Given(Length),
}

impl RulesDraft {
    /// The first value in every field.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            spacing: Spacing::Closest,
            pitch: Typed::initial(Field::Pitch),
            clearance: Typed::initial(Field::Clearance),
            axis_height: Typed::initial(Field::AxisHeight),
            land: Typed::initial(Field::Land),
            edge: Typed::initial(Field::EdgeAllowance),
            planing: Typed::initial(Field::PlaningAllowance),
            floor: Typed::initial(Field::Floor),
            wall: Typed::initial(Field::Wall),
            eccentricity: Typed::initial(Field::Eccentricity),
            bond: Typed::initial(Field::Bond),
            relief: Typed::initial(Field::Relief),
        }
    }

    /// The rules, or everything that is wrong with them.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range.
    pub fn check(&self) -> Result<Rules, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let mut length = |typed, field| Length::millimetres(read(typed, field));
        let spacing = match self.spacing {
            Spacing::Closest => PitchRule::Closest,
            Spacing::Spread => PitchRule::Spread,
            // A pitch that is not used may hold anything.
            Spacing::Given => PitchRule::Given(length(&self.pitch, Field::Pitch)),
        };
        let rules = Rules {
            spacing,
            clearance: length(&self.clearance, Field::Clearance),
            axis_height: length(&self.axis_height, Field::AxisHeight),
            land: length(&self.land, Field::Land),
            edge: length(&self.edge, Field::EdgeAllowance),
            planing: length(&self.planing, Field::PlaningAllowance),
            floor: length(&self.floor, Field::Floor),
            wall: length(&self.wall, Field::Wall),
            eccentricity: length(&self.eccentricity, Field::Eccentricity),
            bond: length(&self.bond, Field::Bond),
            relief: Angle::degrees(read(&self.relief, Field::Relief)),
        };
        if problems.is_empty() {
            Ok(rules)
        } else {
            Err(problems)
        }
    }
}

impl Default for RulesDraft {
    fn default() -> Self {
        Self::new()
    }
}
