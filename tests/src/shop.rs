//! Barrels, slats and rules by their few numbers that differ; the rest as in a new draft.

use solver::{
    Angle, Barrel, BarrelDraft, Layout, Rules, RulesDraft, Setup, Shape, Slat, SlatDraft, Typed,
    lay_out,
};

/// A barrel by its finished size and corner radius, mm: lead 2.2 mm, coat 0.08 mm a side.
///
/// # Panics
/// When no such barrel can be made.
#[must_use]
pub fn barrel(shape: Shape, size: f64, corner: f64) -> Barrel {
    changed_barrel(shape, size, corner, |_| ())
}

/// A [`barrel`] with something changed.
///
/// # Panics
/// When no such barrel can be made.
#[must_use]
pub fn changed_barrel(
    shape: Shape,
    size: f64,
    corner: f64,
    change: impl FnOnce(&mut BarrelDraft),
) -> Barrel {
    let mut draft = barrel_draft(shape, size, corner);
    change(&mut draft);
    draft
        .check()
        .expect("the cases name barrels that can be made")
}

/// The draft of a [`barrel`].
#[must_use]
pub fn barrel_draft(shape: Shape, size: f64, corner: f64) -> BarrelDraft {
    let mut draft = BarrelDraft::new("Barrel", shape);
    draft.size = Typed::Number(size);
    draft.corner_radius = Typed::Number(corner);
    draft
}

/// A slat stock 184 mm long by its width and thickness, mm.
///
/// # Panics
/// When there can be no such slat.
#[must_use]
pub fn slat(width: f64, thickness: f64) -> Slat {
    let mut draft = SlatDraft::new("Slat");
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.check().expect("the cases name slats that can be had")
}

/// The rules of a new draft with something changed: clearance 0.05, land 0.4, edge 1.0,
/// planing 0.25 mm, spare width to the edges.
///
/// # Panics
/// When a rule lies outside its range.
#[must_use]
pub fn rules(change: impl FnOnce(&mut RulesDraft)) -> Rules {
    let mut draft = RulesDraft::new();
    change(&mut draft);
    draft.check().expect("the cases name rules in their ranges")
}

/// A barrel laid on two slats alike.
#[must_use]
pub fn laid(barrel: &Barrel, turn: Angle, slat: &Slat, rules: &Rules) -> Layout {
    lay_out(&Setup {
        barrel,
        turn,
        top: slat,
        bottom: slat,
        rules,
    })
}
