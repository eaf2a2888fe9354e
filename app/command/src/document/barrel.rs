//! What `barrel` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::{Body, Mass, TinRows};

use super::{Named, VERSION};
use crate::barrel::Finished;

/// What `slatwright barrel` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct BarrelDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-barrel"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// The barrel.
    barrel: Named,
    /// Angle between the two sides of the point, degrees.
    point_degrees: f64,
    /// Length of the pencil, mm.
    length_mm: f64,
    /// How much of the lead is bare, from the tip, mm.
    lead_end_mm: f64,
    /// Where the paint edge is nearest to the tip, mm.
    paint_from_mm: f64,
    /// Where the paint edge is farthest from the tip, mm.
    paint_to_mm: f64,
    /// The pencil as it is made.
    made: BodyPart,
    /// The pencil sharpened.
    sharpened: BodyPart,
    /// Girth of the hull of the outline, mm.
    grip_mm: f64,
    /// Ways in which it lies at rest; 0 for one that rolls from any.
    rests: usize,
    /// Slope on which it starts to roll from its firmest rest, degrees.
    rolls_at_degrees: f64,
    /// What takes an imprint.
    imprint: ImprintPart,
    /// Pencils in the tin in straight rows, as many as were found.
    straight: RowsPart,
    /// Pencils in the tin in staggered rows, as many as were found.
    staggered: RowsPart,
}

/// A pencil as a body.
#[derive(Debug, Serialize, JsonSchema)]
struct BodyPart {
    /// Wood.
    wood: MassPart,
    /// Lead.
    lead: MassPart,
    /// Coat.
    coat: MassPart,
    /// Mass of all, g.
    mass_grams: f64,
    /// Balance point from the tip, mm.
    balance_mm: f64,
    /// Moment of inertia about the lead axis, g·mm².
    inertia_gram_mm2: f64,
}

/// Volume and mass of a material.
#[derive(Debug, Serialize, JsonSchema)]
struct MassPart {
    /// Volume, mm³.
    volume_mm3: f64,
    /// Mass, g.
    mass_grams: f64,
}

/// What takes an imprint.
#[derive(Debug, Serialize, JsonSchema)]
struct ImprintPart {
    /// The text; empty where nothing is imprinted.
    text: String,
    /// Width of its face, mm: of the flat side, or of what of a curved one falls away little enough.
    face_width_mm: f64,
    /// Whether the face is flat.
    is_flat: bool,
    /// The largest height of letters, mm.
    letters_mm: f64,
    /// Where it may begin, from the tip, mm.
    from_mm: f64,
    /// Where it must end, mm.
    to_mm: f64,
}

/// Rows of pencils in a tin.
#[derive(Debug, Serialize, JsonSchema)]
struct RowsPart {
    /// Pencils in all rows.
    pencils: u32,
    /// Rows.
    rows: u32,
    /// Pencils in the lowest row.
    in_row: u32,
    /// From a pencil to the next, mm.
    pitch_mm: f64,
    /// From a row to the next, mm.
    row_pitch_mm: f64,
    /// Turn of the pencils from standing on a face or as drawn, degrees.
    turn_degrees: f64,
}

impl From<&Finished<'_>> for BarrelDocument {
    fn from(finished: &Finished<'_>) -> Self {
        let (draft, pencil, facts) = (finished.draft, &finished.pencil, &finished.facts);
        let imprint = &facts.imprint;
        Self {
            format: "slatwright-barrel",
            version: VERSION,
            project: draft.name.clone(),
            barrel: Named::of(&draft.barrels[finished.barrel], |barrel| &barrel.name),
            point_degrees: pencil.half_angle().in_degrees() * 2.0,
            length_mm: pencil.barrel().length().in_millimetres(),
            lead_end_mm: facts.lead_end.in_millimetres(),
            paint_from_mm: facts.paint_from.in_millimetres(),
            paint_to_mm: facts.paint_to.in_millimetres(),
            made: BodyPart::from(&facts.made),
            sharpened: BodyPart::from(&facts.sharpened),
            grip_mm: facts.grip.in_millimetres(),
            rests: facts.rests,
            rolls_at_degrees: facts.rolls_at.in_degrees(),
            imprint: ImprintPart {
                text: imprint.text.clone(),
                face_width_mm: imprint.face.width().in_millimetres(),
                is_flat: imprint.face.is_flat,
                letters_mm: imprint.height.in_millimetres(),
                from_mm: imprint.from.in_millimetres(),
                to_mm: imprint.to.in_millimetres(),
            },
            straight: RowsPart::from(&facts.straight),
            staggered: RowsPart::from(&facts.staggered),
        }
    }
}

impl From<&Body> for BodyPart {
    fn from(body: &Body) -> Self {
        let mass = |mass: Mass| MassPart {
            volume_mm3: mass.volume.in_cubic_millimetres(),
            mass_grams: mass.grams,
        };
        Self {
            wood: mass(body.wood),
            lead: mass(body.lead),
            coat: mass(body.coat),
            mass_grams: body.grams,
            balance_mm: body.balance.in_millimetres(),
            inertia_gram_mm2: body.inertia,
        }
    }
}

impl From<&TinRows> for RowsPart {
    fn from(rows: &TinRows) -> Self {
        Self {
            pencils: rows.pencils,
            rows: rows.rows,
            in_row: rows.in_row,
            pitch_mm: rows.pitch.in_millimetres(),
            row_pitch_mm: rows.row_pitch.in_millimetres(),
            turn_degrees: rows.turn.in_degrees(),
        }
    }
}
