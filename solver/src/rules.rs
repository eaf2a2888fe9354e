//! The machining rules of a shop: allowances, limits, and how spare width is shared.

use crate::cutter_set::CutterSet;
use crate::field::{Cause, Field, FieldProblem, Typed};
use crate::project::Id;
use crate::quantity::{Angle, Length};

/// How the grooves are spaced.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Spacing {
    /// As close as the land allows; spare width goes to the edges.
    Closest,
    /// Spread out until the edges have just their allowance.
    Spread,
    /// At a given pitch.
    Given,
    /// At the pitch of a cutter set, and no more grooves than it carries.
    Set,
}

impl Spacing {
    /// Every way that needs nothing but the rules; [`Self::Set`] needs a cutter set as well.
    pub const ALL: [Self; 3] = [Self::Closest, Self::Spread, Self::Given];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Closest => "Closest, spare to the edges",
            Self::Spread => "Spread, spare into the pitch",
            Self::Given => "At a given pitch",
            Self::Set => "With a cutter set",
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
    /// The cutter set, where it sets the pitch.
    pub cutter_set: Option<Id>,
    /// Most grooves side by side; empty for as many as fit.
    pub most: Typed,
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
    /// Least wood cut off each end of the slat.
    pub end_trim: Typed,
    /// Wood the saw takes between two pencils of one slat length.
    pub saw_kerf: Typed,
    /// Share of slats thrown out, percent.
    pub slat_rejects: Typed,
    /// Share of pencils thrown out, percent.
    pub pencil_rejects: Typed,
}

/// Machining rules that can be worked with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rules {
    /// The given pitch, or how the grooves are spaced without one.
    pub spacing: PitchRule,
    /// Most grooves side by side, at least 1; `None` for as many as fit.
    pub most: Option<u32>,
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
    /// Least wood cut off each end of the slat, at least 0.
    pub end_trim: Length,
    /// Wood the saw takes between two pencils of one slat length, at least 0.
    pub saw_kerf: Length,
    /// Share of slats thrown out, 0 to 0.9.
    pub slat_rejects: f64,
    /// Share of pencils thrown out, 0 to 0.9.
    pub pencil_rejects: f64,
}

/// How the pitch is found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PitchRule {
    /// As close as the land allows; spare width goes to the edges.
    Closest,
    /// Spread out until the edges have just their allowance.
    Spread,
    /// Given; above 0.
    Given(Length),
    /// That of a cutter set; above 0.
    OfSet(Length),
}

impl RulesDraft {
    /// The first value in every field, no cutter set and no limit across.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            spacing: Spacing::Closest,
            pitch: Typed::initial(Field::Pitch),
            cutter_set: None,
            most: Typed::empty(),
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
            end_trim: Typed::initial(Field::EndTrim),
            saw_kerf: Typed::initial(Field::SawKerf),
            slat_rejects: Typed::initial(Field::SlatRejects),
            pencil_rejects: Typed::initial(Field::PencilRejects),
        }
    }

    /// The rules, or everything that is wrong with them.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range. The cutter set
    /// is known to the project, so rules that space by one are refused here.
    ///
    /// ```
    /// use solver::{Cause, Field, FieldProblem, RulesDraft, Spacing};
    /// let mut draft = RulesDraft::new();
    /// assert_eq!(draft.check().unwrap().most, None);
    /// draft.spacing = Spacing::Set;
    /// let problem = FieldProblem { field: Field::Pitch, cause: Cause::NoSuchSet };
    /// assert_eq!(draft.check(), Err(vec![problem]));
    /// ```
    pub fn check(&self) -> Result<Rules, Vec<FieldProblem>> {
        self.check_with(None)
    }

    /// The rules with the cutter set that sets the pitch, where one does.
    pub(crate) fn check_with(&self, set: Option<&CutterSet>) -> Result<Rules, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let spacing = self.pitch_rule(set).unwrap_or_else(|problem| {
            problems.push(problem);
            PitchRule::Closest
        });
        let most = self.most.read_optional(Field::MostAcross);
        let most = most.unwrap_or_else(|problem| {
            problems.push(problem);
            None
        });
        let carried = set.filter(|_| self.spacing == Spacing::Set);
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let mut length = |typed, field| Length::millimetres(read(typed, field));
        let rules = Rules {
            spacing,
            // The range of the field lies within u32.
            most: most
                .map(|most| most as u32)
                .into_iter()
                .chain(carried.map(CutterSet::most))
                .min(),
            clearance: length(&self.clearance, Field::Clearance),
            axis_height: length(&self.axis_height, Field::AxisHeight),
            land: length(&self.land, Field::Land),
            edge: length(&self.edge, Field::EdgeAllowance),
            planing: length(&self.planing, Field::PlaningAllowance),
            floor: length(&self.floor, Field::Floor),
            wall: length(&self.wall, Field::Wall),
            eccentricity: length(&self.eccentricity, Field::Eccentricity),
            bond: length(&self.bond, Field::Bond),
            end_trim: length(&self.end_trim, Field::EndTrim),
            saw_kerf: length(&self.saw_kerf, Field::SawKerf),
            relief: Angle::degrees(read(&self.relief, Field::Relief)),
            slat_rejects: read(&self.slat_rejects, Field::SlatRejects) / 100.0,
            pencil_rejects: read(&self.pencil_rejects, Field::PencilRejects) / 100.0,
        };
        if problems.is_empty() {
            Ok(rules)
        } else {
            Err(problems)
        }
    }

    fn pitch_rule(&self, set: Option<&CutterSet>) -> Result<PitchRule, FieldProblem> {
        match self.spacing {
            Spacing::Closest => Ok(PitchRule::Closest),
            Spacing::Spread => Ok(PitchRule::Spread),
            // A pitch that is not used may hold anything.
            Spacing::Given => {
                let pitch = self.pitch.read(Field::Pitch)?;
                Ok(PitchRule::Given(Length::millimetres(pitch)))
            }
            Spacing::Set => set.map_or_else(
                || {
                    let (field, cause) = (Field::Pitch, Cause::NoSuchSet);
                    Err(FieldProblem { field, cause })
                },
                |set| Ok(PitchRule::OfSet(set.pitch())),
            ),
        }
    }
}

impl Rules {
    /// The same rules for a pencil that no layout was chosen for: as close as the land allows, and
    /// as many across as fit. Spacing, cutter set and the most across belong to one layout.
    pub(crate) fn for_any_pencil(&self) -> Self {
        Self {
            spacing: PitchRule::Closest,
            most: None,
            ..*self
        }
    }

    /// The share of pencils that are good, of those laid on the slats bought: of every slat its
    /// share must pass, and then of every pencil. Above 0, at most 1.
    pub(crate) fn good_share(&self) -> f64 {
        (1.0 - self.pencil_rejects) * (1.0 - self.slat_rejects)
    }
}

impl Default for RulesDraft {
    fn default() -> Self {
        Self::new()
    }
}
