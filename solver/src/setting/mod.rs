//! How the machines are set for a layout: grooves from the datum edge, the slats that are asked for
//! at the machine, heights of the heads above the table, knife marks, and what to mind.

mod caution;
mod csv;
#[cfg(test)]
mod tests;

pub use caution::Caution;

use crate::feed::{FeedProblem, KnifeMarks};
use crate::knife::{Blade, Knife, KnifeProblem, knives};
use crate::layout::{Groove, Layout, Setup};
use crate::quantity::Length;
use crate::slat::Slat;
use crate::tooling::{Cut, Head, HeadKind};
use crate::wood::Conditions;

/// How the machines are set for a layout.
///
/// All heights are above the table: that on which a slat lies on its outer face to be grooved, and
/// that on which the glued sandwich, not planed yet, lies on the outer face of the bottom slat to be
/// shaped. Slats are taken at their nominal sizes at the moisture content of grooving.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting {
    /// The grooves from the datum edge.
    pub grooves: Vec<Groove>,
    /// Distance between neighbouring groove centres.
    pub pitch: Length,
    /// Radius of the grooves.
    pub groove_radius: Length,
    /// The slat above the glue plane.
    pub top: SlatSetting,
    /// The slat below the glue plane.
    pub bottom: SlatSetting,
    /// Moisture content for which the sizes hold, percent.
    pub moisture: f64,
    /// Thickness of the glued sandwich: that of both slats.
    pub glued: Length,
    /// Thickness of the sandwich where it is shaped: the height of a pencil.
    pub planed: Length,
    /// How high each knife stands, in the order of the work.
    pub heights: Vec<KnifeHeight>,
    /// The marks that each head leaves at the feed, in the order of [`HeadKind::ALL`].
    pub marks: [Result<KnifeMarks, FeedProblem>; 3],
    /// The knives, in the order of the work.
    pub knives: Vec<Knife>,
    /// What to mind, the plainest first.
    pub cautions: Vec<Caution>,
}

/// A slat as it is asked for at the groove head.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlatSetting {
    /// Nominal width at the machine.
    pub width: Length,
    /// Nominal thickness at the machine.
    pub thickness: Length,
    /// The least width that was reckoned with.
    pub least_width: Length,
    /// The least thickness that was reckoned with.
    pub least_thickness: Length,
    /// Depth of the grooves from the glue plane; 0 where no groove reaches this slat.
    pub groove_depth: Length,
    /// Wood left under a groove.
    pub floor: Length,
}

/// How high a knife stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnifeHeight {
    /// The knife.
    pub blade: Blade,
    /// The point of its edge that is farthest from the axis of its head, above the table.
    pub tip: Length,
    /// The surface that it leaves nearest to that axis, above the table: the glue face for a groove
    /// cutter, the outer faces of the pencils for a shaping knife.
    pub surface: Length,
    /// The axis of its head above the table; below 0 it lies under it.
    pub axis: Length,
}

impl SlatSetting {
    fn new(slat: &Slat, groove_depth: Length) -> Self {
        Self {
            width: slat.grooved_width(),
            thickness: slat.grooved_thickness(),
            least_width: slat.guaranteed_width(),
            least_thickness: slat.guaranteed_thickness(),
            groove_depth,
            floor: slat.grooved_thickness() - groove_depth,
        }
    }
}

impl KnifeHeight {
    /// With thicknesses T of the top and the bottom slat and a cutting radius R: a groove cutter
    /// stands at T − its depth; a shaping knife whose tip lies at y over the glue plane at T + y of
    /// the bottom slat. The axis lies R over a tip that looks down, and R under one that looks up.
    fn new(knife: &Knife, setting: (&SlatSetting, &SlatSetting)) -> Self {
        let (top, bottom) = setting;
        let blade = knife.blade();
        let radius = knife.head().radius();
        let (tip, surface, axis) = match blade {
            // A slat is grooved face up, whichever way it lies in the sandwich.
            Blade::TopGrooves => above(top.thickness, knife.depth(), radius),
            Blade::BottomGrooves => above(bottom.thickness, knife.depth(), radius),
            Blade::Top => {
                let tip = bottom.thickness + knife.tip();
                (tip, tip + knife.depth(), tip + radius)
            }
            Blade::Bottom => {
                let tip = bottom.thickness + knife.tip();
                (tip, tip - knife.depth(), tip - radius)
            }
        };
        Self {
            blade,
            tip,
            surface,
            axis,
        }
    }
}

/// Tip, surface and axis of a cutter that cuts a depth into a face from above.
fn above(face: Length, depth: Length, radius: Length) -> (Length, Length, Length) {
    let tip = face - depth;
    (tip, face, tip + radius)
}

/// How the machines are set for a layout with the heads of a line, in the order of
/// [`HeadKind::ALL`], and the conditions of grooving.
///
/// # Errors
/// Everything that keeps a knife from being made.
///
/// ```
/// use solver::{BarrelDraft, Conditions, CutDraft, HeadDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out, set_up};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap(); // bare 6.84 across flats
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let setup = Setup { barrel: &barrel, turn: barrel.turn(Seam::ThroughCorners), top: &slat, bottom: &slat, rules: &rules };
/// let heads = [HeadDraft::new().check().unwrap(); 3];
/// let cut = CutDraft::new().check().unwrap();
/// let setting = set_up(&setup, &lay_out(&setup), &heads, &cut, Conditions { moisture: 8.0 }).unwrap();
/// // On a bottom slat of 5 mm the top of a pencil lies 5 + 6.84/2 over the table.
/// assert!((setting.heights[2].surface.in_millimetres() - 8.42).abs() < 1e-9);
/// assert!((setting.planed.in_millimetres() - 6.84).abs() < 1e-9);
/// ```
pub fn set_up(
    setup: &Setup<'_>,
    layout: &Layout,
    heads: &[Head; 3],
    cut: &Cut,
    conditions: Conditions,
) -> Result<Setting, Vec<KnifeProblem>> {
    let knives = knives(setup, layout, heads, cut)?;
    let shape = layout.groove_shape();
    let top = SlatSetting::new(setup.top, shape.top_depth());
    let bottom = SlatSetting::new(setup.bottom, shape.bottom_depth());
    let heights = knives
        .iter()
        .map(|knife| KnifeHeight::new(knife, (&top, &bottom)))
        .collect();
    let marks = HeadKind::ALL.map(|kind| KnifeMarks::at_feed(&heads[kind as usize], cut.feed()));
    let cautions = Caution::of(layout, &knives, &marks);
    Ok(Setting {
        grooves: layout.grooves().to_vec(),
        pitch: layout.pitch(),
        groove_radius: shape.radius(),
        top,
        bottom,
        moisture: conditions.moisture,
        glued: top.thickness + bottom.thickness,
        planed: layout.extents().height(),
        heights,
        marks,
        knives,
        cautions,
    })
}
