//! How the file keeps what a finished pencil is beyond its barrel.

use serde::{Serialize, Serializer};
use solver::{Colour, FinishDraft};

use super::Entered;

/// What a finished pencil is beyond its barrel.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FinishFile {
    /// Angle between the two sides of the point.
    pub point_degrees: Entered,
    /// Colour of the coat.
    pub coat_colour: ColourWord,
    /// Density of the dry coat.
    pub coat_grams_per_cm3: Entered,
    /// Colour of the lead.
    pub lead_colour: ColourWord,
    /// Length of the dip at the other end; 0 for none.
    pub dip_mm: Entered,
    /// Colour of the dip.
    pub dip_colour: ColourWord,
    /// What is imprinted; an empty text where nothing is.
    pub imprint: String,
    /// The face that is imprinted, from 1 for the uppermost, counter-clockwise.
    pub imprint_face: Entered,
    /// What the imprint leaves free at each edge of its face.
    pub imprint_margin_mm: Entered,
    /// What the imprint leaves free at both ends.
    pub imprint_end_mm: Entered,
    /// How far a curved face may fall away under the imprint.
    pub face_fall_mm: Entered,
    /// Inner width of a tin.
    pub tin_width_mm: Entered,
    /// Inner height of a tin.
    pub tin_height_mm: Entered,
    /// Inner length of a tin.
    pub tin_length_mm: Entered,
}

/// A colour of sRGB, as style sheets write it: a number sign with six hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ColourWord(pub(super) Colour);

impl Serialize for ColourWord {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.0.text())
    }
}

pub(super) fn finish_file(draft: &FinishDraft) -> FinishFile {
    FinishFile {
        point_degrees: (&draft.point_angle).into(),
        coat_colour: ColourWord(draft.coat_colour),
        coat_grams_per_cm3: (&draft.coat_density).into(),
        lead_colour: ColourWord(draft.lead_colour),
        dip_mm: (&draft.dip).into(),
        dip_colour: ColourWord(draft.dip_colour),
        imprint: draft.imprint.clone(),
        imprint_face: (&draft.face).into(),
        imprint_margin_mm: (&draft.margin).into(),
        imprint_end_mm: (&draft.end_margin).into(),
        face_fall_mm: (&draft.fall).into(),
        tin_width_mm: (&draft.tin_width).into(),
        tin_height_mm: (&draft.tin_height).into(),
        tin_length_mm: (&draft.tin_length).into(),
    }
}

pub(super) fn finish_draft(file: &FinishFile) -> FinishDraft {
    FinishDraft {
        point_angle: (&file.point_degrees).into(),
        coat_colour: file.coat_colour.0,
        coat_density: (&file.coat_grams_per_cm3).into(),
        lead_colour: file.lead_colour.0,
        dip: (&file.dip_mm).into(),
        dip_colour: file.dip_colour.0,
        imprint: file.imprint.clone(),
        face: (&file.imprint_face).into(),
        margin: (&file.imprint_margin_mm).into(),
        end_margin: (&file.imprint_end_mm).into(),
        fall: (&file.face_fall_mm).into(),
        tin_width: (&file.tin_width_mm).into(),
        tin_height: (&file.tin_height_mm).into(),
        tin_length: (&file.tin_length_mm).into(),
    }
}
