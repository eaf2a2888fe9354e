//! Two sandwiches to be looked at side by side: without dimensions, and at one scale.

use super::painting::Scene;
use super::{Artist, MARGIN, MOST_HEIGHT, NUMBERS};
use crate::comparison::Laid;
use crate::drawing::path::View;
use crate::drawing::{Drawing, Sheet, describe};
use crate::quantity::{Length, Point};

/// Draws two layouts for sheets of one width, each over its whole width with groove numbers.
///
/// Both have the same scale, and the datum edge at the same place of the sheet, so that what is
/// wider on one drawing is wider in the shop. Nothing on them can be typed over or slid.
#[must_use]
pub fn draw_pair(pair: [Laid<'_>; 2], sheet: &Sheet) -> [Drawing; 2] {
    let sheet = sheet.usable();
    let setups = pair.map(|laid| laid.setup());
    let artists = [0, 1].map(|at| Artist::new(&setups[at], pair[at].layout, sheet));
    let rooms = [0, 1].map(|at| Room::of(&artists[at]));
    let most = |pick: fn(&Room) -> Length| pick(&rooms[0]).max(pick(&rooms[1]));
    let (before, after) = (most(|room| room.before), most(|room| room.after));
    let height = most(|room| room.above + room.below);
    let scale = ((sheet.width - 2.0 * MARGIN) / (before + after).in_millimetres())
        .min(MOST_HEIGHT / 2.0 / height.in_millimetres());
    let origin = MARGIN + before.in_millimetres() * scale;
    let [first, second] = artists;
    [
        first.alone(&rooms[0], origin, scale),
        second.alone(&rooms[1], origin, scale),
    ]
}

/// What a layout takes up, from the datum edge and the glue plane.
struct Room {
    before: Length,
    after: Length,
    above: Length,
    below: Length,
}

impl Room {
    fn of(artist: &Artist<'_>) -> Self {
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
}

impl Artist<'_> {
    fn alone(mut self, room: &Room, origin: f64, scale: f64) -> Drawing {
        let pixels = |length: Length| length.in_millimetres() * scale;
        let seam = MARGIN + NUMBERS + pixels(room.above);
        let view = View {
            scale,
            origin: Point { x: origin, y: seam },
        };
        let width = self.setup.top.width().max(self.setup.bottom.width());
        self.paint(&view, &self.centres(), width, Scene::Whole);
        self.number_grooves(&view, MARGIN + NUMBERS / 2.0);
        let description = describe::sandwich(self.setup, self.layout, self.sheet.unit);
        self.done(seam + pixels(room.below) + MARGIN, description)
    }
}
