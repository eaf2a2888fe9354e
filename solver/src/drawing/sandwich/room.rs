//! A layout over its whole width, without dimensions.

use super::painting::Scene;
use super::{Artist, MARGIN, MOST_HEIGHT, NUMBERS};
use crate::drawing::Sheet;
use crate::drawing::path::View;
use crate::quantity::{Length, Point};

/// What a layout takes up, from the datum edge and the glue plane.
pub(super) struct Room {
    before: Length,
    after: Length,
    above: Length,
    below: Length,
}

impl Room {
    pub(super) fn of(artist: &Artist<'_>) -> Self {
        let (upper, lower) = (artist.setup.top, artist.setup.bottom);
        let width = upper.width().max(lower.width());
        let overhang = artist.overhang(&artist.centres(), width);
        Self {
            before: overhang.left,
            after: width + overhang.right,
            above: upper.thickness() + overhang.above,
            below: lower.thickness() + overhang.below,
        }
    }

    /// Room for either of two.
    pub(super) fn and(&self, other: &Self) -> Self {
        Self {
            before: self.before.max(other.before),
            after: self.after.max(other.after),
            above: self.above.max(other.above),
            below: self.below.max(other.below),
        }
    }

    /// Pixels of a millimetre on a sheet that it fills.
    pub(super) fn scale(&self, sheet: &Sheet) -> f64 {
        let across = (self.before + self.after).in_millimetres();
        let upright = (self.above + self.below).in_millimetres();
        ((sheet.width - 2.0 * MARGIN) / across).min(MOST_HEIGHT / 2.0 / upright)
    }

    /// Where the datum edge lies on that sheet, px.
    pub(super) fn origin(&self, sheet: &Sheet) -> f64 {
        MARGIN + self.before.in_millimetres() * self.scale(sheet)
    }
}

impl Artist<'_> {
    /// Paints the whole width from the top of the sheet, with groove numbers, at the place of the
    /// datum edge and the scale given. Returns where it ends, px.
    pub(super) fn whole(
        &mut self,
        room: &Room,
        (origin, scale): (f64, f64),
        scene: Scene<'_>,
    ) -> f64 {
        let pixels = |length: Length| length.in_millimetres() * scale;
        let seam = MARGIN + NUMBERS + pixels(room.above);
        let view = View {
            scale,
            origin: Point { x: origin, y: seam },
        };
        let width = self.setup.top.width().max(self.setup.bottom.width());
        self.paint(&view, &self.centres(), width, scene);
        self.number_grooves(&view, MARGIN + NUMBERS / 2.0);
        seam + pixels(room.below)
    }
}
