//! Handles of a drawing: sizes that are set by sliding the jaw of a gauge along the part.

use super::path::Path;
use super::placement::CLEAR;
use super::{Area, Sheet};
use crate::decimal::Decimal;
use crate::field::Field;
use crate::quantity::Length;
use crate::unit::LengthUnit;

/// A gauge that hangs under a view: a fixed jaw, a beam, and a jaw that slides.
///
/// The way from jaw to jaw is the size at the scale of the view. The place of the sliding jaw
/// on the sheet, in px, and the size tell the same: `x = zero + scale · value`, but that the jaw
/// stays on the sheet.
///
/// ```
/// # use solver::{BarrelDraft, LengthUnit, RulesDraft, Seam, Setup, Shape, Sheet, SlatDraft};
/// # use solver::{draw_sandwich, lay_out};
/// # let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// # let slat = SlatDraft::new("74 × 5").check().unwrap();
/// # let rules = RulesDraft::new().check().unwrap();
/// # let turn = barrel.turn(Seam::ThroughFaces);
/// # let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
/// # let sheet = Sheet { width: 900.0, row: 26.0, text: 66.0, unit: LengthUnit::Millimetre };
/// let drawing = draw_sandwich(&setup, &lay_out(&setup), &sheet);
/// let pitch = &drawing.handles[0];
/// assert_eq!(pitch.value.in_millimetres(), 7.24);
/// // Half a millimetre to the right.
/// assert_eq!(pitch.moved(0.5 * pitch.scale).in_millimetres(), 7.74);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Handle {
    /// What it sets.
    pub grip: Grip,
    /// The size now.
    pub value: Length,
    /// Where the face of the sliding jaw stands, px.
    pub x: f64,
    /// Where the part ends and the gauge begins, px.
    pub y: f64,
    /// Pixels per millimetre.
    pub scale: f64,
    /// The beam, SVG path data.
    pub beam: String,
    /// The fixed jaw, SVG path data, to be filled.
    pub fixed_jaw: String,
    /// The sliding jaw, SVG path data, to be filled.
    pub jaw: String,
    /// The notches on the sliding jaw by which it is held, SVG path data.
    pub knurl: String,
    /// The face of the sliding jaw drawn on across the part, SVG path data, where it is a line
    /// that counts there; otherwise empty.
    pub reach: String,
    /// The rectangle that takes a press, px: at least 24 high and wide, and as a row of the
    /// sheet where the view has room for it.
    pub area: Area,
    rail: Rail,
    sheet: Sheet,
}

/// What a handle sets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Grip {
    /// The pitch, between the first two grooves of the upper view.
    Pitch,
    /// The edge allowance, from the datum edge in the detail.
    Edge,
}

/// How far a key moves a handle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Stride {
    /// 0.05 mm or 0.002 in: an arrow key.
    Fine,
    /// 0.5 mm or 0.02 in: an arrow key with Shift.
    Coarse,
    /// 1 mm or 0.04 in: a page key.
    Page,
}

/// The place of a gauge on the sheet, px.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rail {
    /// The fixed jaw.
    pub(super) zero: f64,
    /// Pixels per millimetre.
    pub(super) scale: f64,
    /// Where the view begins and ends across the sheet.
    pub(super) ends: (f64, f64),
    /// Where the view begins and the part ends, down the sheet.
    pub(super) heights: (f64, f64),
}

/// The least height and width of what takes a press, px: WCAG 2.2, 2.5.8.
const LEAST_TARGET: f64 = 24.0;
/// Space between the part and the jaws, px.
const GAP: f64 = 3.0;
/// Width and height of the sliding jaw, px, on a sheet for the mouse.
const JAW: (f64, f64) = (10.0, 14.0);
/// Width of the fixed jaw and of the tip of the sliding one, and how far down it is slanted, px.
const TIP: (f64, f64) = (4.0, 6.0);
/// How far the beam goes on beyond the sliding jaw, px.
const BEYOND: f64 = 5.0;
/// Height of a row on a sheet for the mouse, px.
const MOUSE_ROW: f64 = 26.0;

impl Grip {
    /// Every one.
    pub const ALL: [Self; 2] = [Self::Pitch, Self::Edge];

    /// The field of the same number.
    #[must_use]
    pub const fn field(self) -> Field {
        match self {
            Self::Pitch => Field::Pitch,
            Self::Edge => Field::EdgeAllowance,
        }
    }
}

impl Stride {
    /// The way it goes, in hundredths of a millimetre or thousandths of an inch.
    const fn steps(self, unit: LengthUnit) -> f64 {
        match (self, unit) {
            (Self::Fine, LengthUnit::Millimetre) => 5.0,
            (Self::Coarse, LengthUnit::Millimetre) => 50.0,
            (Self::Page, LengthUnit::Millimetre) => 100.0,
            (Self::Fine, LengthUnit::Inch) => 2.0,
            (Self::Coarse, LengthUnit::Inch) => 20.0,
            (Self::Page, LengthUnit::Inch) => 40.0,
        }
    }
}

impl Handle {
    /// A gauge set to a value.
    pub(super) fn new(grip: Grip, value: Length, rail: Rail, sheet: Sheet) -> Self {
        let size = size(sheet.row);
        let (left, right) = rail.ends;
        let x = (rail.zero + value.in_millimetres() * rail.scale)
            .max(left)
            .min(right);
        let (above, y) = rail.heights;
        // Both jaws have an upright face towards the other, and a slanted back.
        let (tip, shoulder, foot) = (y + GAP, y + GAP + TIP.1 * size, y + GAP + JAW.1 * size);
        let jaw = |face: f64, width: f64| {
            let slant = face + TIP.0.copysign(width) * size;
            Path::new().polygon(&[
                (face, tip),
                (slant, shoulder),
                (face + width * size, shoulder),
                (face + width * size, foot),
                (face, foot),
            ])
        };
        let middle = f64::midpoint(shoulder, foot);
        let (back, end) = (x + JAW.0 * size, x + (JAW.0 + BEYOND) * size);
        let (upper, lower) = (middle - 1.5 * size, middle + 1.5 * size);
        let beam = Path::new()
            .run(&[(rail.zero, upper), (x, upper)])
            .run(&[(rail.zero, lower), (x, lower)])
            .run(&[(back, upper), (end, upper), (end, lower), (back, lower)]);
        let knurl = [0.3, 0.5, 0.7].iter().fold(Path::new(), |knurl, share| {
            let notch = x + share * JAW.0 * size;
            knurl.run(&[(notch, middle - 2.5 * size), (notch, middle + 2.5 * size)])
        });
        let reach = match grip {
            Grip::Pitch => Path::new(),
            Grip::Edge => Path::new().run(&[(x, above), (x, tip)]),
        };
        let bottom = y + depth(sheet.row);
        let side = sheet.row.max(LEAST_TARGET);
        let top = (bottom - side).max(above - CLEAR);
        Self {
            grip,
            value,
            x,
            y,
            scale: rail.scale,
            beam: beam.done(),
            fixed_jaw: jaw(rail.zero, -TIP.0).done(),
            jaw: jaw(x, JAW.0).done(),
            knurl: knurl.done(),
            reach: reach.done(),
            // Clear of the numbers beside, above and below the view, and on whole pixels at the edge of
            // the sheet, which rounding would overstep.
            area: Area {
                x: (f64::midpoint(x, back) - side / 2.0)
                    .max(left - CLEAR)
                    .min((sheet.width - side).floor()),
                y: top,
                width: side,
                height: bottom - top,
            },
            rail,
            sheet,
        }
    }

    /// The value when the jaw is moved to the right by so many px, or to the left by less than 0:
    /// to 0.01 mm or 0.001 in, within the range of the field.
    ///
    /// The value stays as it is while the jaw moves by less than half of that.
    #[must_use]
    pub fn moved(&self, px: f64) -> Length {
        self.shifted(px / self.scale * steps_in_a_millimetre(self.sheet.unit))
    }

    /// The value after a key was pressed so many times, or the other way for less than 0, rounded
    /// and kept in the range as by [`Self::moved`].
    #[must_use]
    pub fn stepped(&self, stride: Stride, times: i32) -> Length {
        self.shifted(stride.steps(self.sheet.unit) * f64::from(times))
    }

    /// The least value.
    #[must_use]
    pub const fn least(&self) -> Length {
        Length::millimetres(self.grip.field().spec().least)
    }

    /// The greatest value.
    #[must_use]
    pub const fn most(&self) -> Length {
        Length::millimetres(self.grip.field().spec().most)
    }

    /// The gauge while it is held: it measures from where it stood at the `start`, so that the
    /// jaw stays under the hand while the part moves, and hangs where the part now ends.
    #[must_use]
    pub fn held(&self, start: &Self, value: Length) -> Self {
        let rail = Rail {
            zero: start.rail.zero,
            scale: start.rail.scale,
            ..self.rail
        };
        Self::new(self.grip, value, rail, self.sheet)
    }

    /// The value so many hundredths of a millimetre or thousandths of an inch farther.
    fn shifted(&self, steps: f64) -> Length {
        let (least, most) = (self.least(), self.most());
        // Written so that what is no number moves nothing.
        let moves = steps.abs() >= 0.5;
        let value = if moves {
            let now = self.value.in_millimetres() * steps_in_a_millimetre(self.sheet.unit);
            let places = match self.sheet.unit {
                LengthUnit::Millimetre => -2,
                LengthUnit::Inch => -3,
            };
            // A float below 0 becomes 0, and none of the ranges goes below it.
            let whole = Decimal::new(u128::from((now + steps).round() as u32), places);
            Length::millimetres(whole.times(self.sheet.unit.scale()).to_f64())
        } else {
            self.value
        };
        value.max(least).min(most)
    }
}

/// How far a gauge reaches below the part, px, on a sheet with rows of this height.
pub(super) fn depth(row: f64) -> f64 {
    GAP + JAW.1 * size(row) + 1.0
}

/// How much larger a gauge is than for the mouse: a finger hides what it holds.
fn size(row: f64) -> f64 {
    (row / MOUSE_ROW).clamp(1.0, 1.5)
}

fn steps_in_a_millimetre(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Millimetre => 100.0,
        LengthUnit::Inch => 1000.0 / unit.millimetres(),
    }
}
