//! Pencils across against slat width: every width at which one more fits.

use crate::field::Field;
use crate::layout::{Layout, Rule, lay_out};
use crate::project::LayoutParts;
use crate::quantity::Length;
use crate::rules::PitchRule;

/// A width of slat from which a sandwich gives so many pencils, up to the next step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// The least nominal width.
    pub from: Length,
    /// Pencils from one sandwich; 0 where a check fails.
    pub pencils: u32,
}

/// The widths round today's that are worth a look: a dozen millimetres to either side, more than a
/// pitch of any usual pencil, so that the last step and the next one are in sight.
#[must_use]
pub fn stairs_range(parts: &LayoutParts) -> (Length, Length) {
    const BESIDE: Length = Length::millimetres(12.0);
    let (narrower, wider) = (
        parts.top.width().min(parts.bottom.width()),
        parts.top.width().max(parts.bottom.width()),
    );
    (narrower - BESIDE, wider + BESIDE)
}

/// Pencils from a sandwich of two slats of one nominal width, for every width in a range.
///
/// With the width of the bare pencil b, the edge allowance e, the pitch p (the given one, or the
/// closest, b plus the land), and the larger of the two width shortfalls s, all in mm, the m-th
/// pencil fits from `w = s + 2e + b + (m − 1)·p`: the row rule of [`lay_out`] solved for the
/// width. Spreading a row takes no other width than laying it closest.
///
/// The first step stands at the start of the range, each other one where the count changes. The
/// range is kept within that of [`Field::SlatWidth`]; where nothing is left of it there is no
/// step.
///
/// ```
/// use solver::{BarrelDraft, LayoutParts, Length, RulesDraft, Seam, Shape, SlatDraft, staircase};
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let parts = LayoutParts {
///     barrel: BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap(),
///     turn: Seam::ThroughFaces.turn(6),
///     top: slat.clone(),
///     bottom: slat,
///     rules: RulesDraft::new().check().unwrap(),
///     cutter_set: None,
/// };
/// // 2 × 1.0 edge + 6.84 bare + 9 × 7.24 pitch = 74.0 for the tenth, and one pitch more.
/// let steps = staircase(&parts, Length::millimetres(70.0), Length::millimetres(85.0));
/// let pencils: Vec<u32> = steps.iter().map(|step| step.pencils).collect();
/// assert_eq!(pencils, [9, 10, 11]);
/// assert!((steps[2].from.in_millimetres() - 81.24).abs() < 1e-9);
/// ```
#[must_use]
pub fn staircase(parts: &LayoutParts, from: Length, to: Length) -> Vec<Step> {
    let spec = Field::SlatWidth.spec();
    let from = from.max(Length::millimetres(spec.least));
    let to = to.min(Length::millimetres(spec.most));
    if from > to {
        return Vec::new();
    }
    let row = RowRule::new(parts);
    let mut across = row.across(from);
    let mut steps = vec![Step {
        from,
        pencils: row.pencils(across),
    }];
    let mut pencils = steps[0].pencils;
    loop {
        across += 1;
        let width = row.width(across);
        if !width.fits_in(to) {
            return steps;
        }
        if row.pencils(across) != pencils {
            pencils = row.pencils(across);
            steps.push(Step {
                from: width.min(to),
                pencils,
            });
        }
    }
}

/// What the width of the slats decides, and what it does not.
struct RowRule {
    /// What the narrower slat may lack.
    shortfall: Length,
    /// Width that the first pencil takes with both edges.
    first: Length,
    /// Width that each further one takes, above 0.
    pitch: Length,
    /// Whether neighbours keep the land.
    lands: bool,
    /// Whether every check passes that the width has no part in.
    sound: bool,
}

impl RowRule {
    fn new(parts: &LayoutParts) -> Self {
        let layout = lay_out(&parts.setup());
        let (pencil, rules) = (layout.extents().width(), &parts.rules);
        let closest = pencil + rules.land;
        let (pitch, lands) = match rules.spacing {
            PitchRule::Closest | PitchRule::Spread => (closest, true),
            PitchRule::Given(pitch) | PitchRule::OfSet(pitch) => {
                (pitch, rules.land.fits_in(pitch - pencil))
            }
        };
        let lacking =
            [&parts.top, &parts.bottom].map(|slat| slat.width() - slat.guaranteed_width());
        Self {
            shortfall: lacking[0].max(lacking[1]),
            first: rules.edge * 2.0 + pencil,
            pitch,
            lands,
            sound: is_sound(&layout),
        }
    }

    /// How many lie side by side on slats of a nominal width.
    fn across(&self, width: Length) -> u32 {
        let room = width - self.shortfall - self.first;
        if Length::ZERO.fits_in(room) {
            room.whole_steps(self.pitch) + 1
        } else {
            0
        }
    }

    /// The least nominal width on which so many lie side by side, at least one.
    fn width(&self, across: u32) -> Length {
        self.shortfall + self.first + self.pitch * (f64::from(across) - 1.0)
    }

    /// Pencils from a sandwich on which so many lie side by side.
    const fn pencils(&self, across: u32) -> u32 {
        if self.sound && (across < 2 || self.lands) {
            across
        } else {
            0
        }
    }
}

/// Whether every check passes but those that the width decides.
fn is_sound(layout: &Layout) -> bool {
    use crate::layout::Outcome::Failed;
    layout
        .checks()
        .iter()
        .filter(|check| !matches!(check.rule, Rule::Width | Rule::Edge | Rule::Land))
        .all(|check| check.outcome != Failed)
}

#[cfg(test)]
mod tests;
