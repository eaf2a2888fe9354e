//! Two sandwiches to be looked at side by side: without dimensions, and at one scale.

use super::painting::Scene;
use super::room::Room;
use super::{Artist, MARGIN};
use crate::comparison::Laid;
use crate::drawing::{Drawing, Sheet, describe};

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
    let both = rooms[0].and(&rooms[1]);
    let place = (both.origin(&sheet), both.scale(&sheet));
    let [first, second] = artists;
    [
        first.alone(&rooms[0], place),
        second.alone(&rooms[1], place),
    ]
}

impl Artist<'_> {
    fn alone(mut self, room: &Room, place: (f64, f64)) -> Drawing {
        let end = self.whole(room, place, Scene::Whole);
        let description = describe::sandwich(self.setup, self.layout, self.sheet.unit);
        self.done(end + MARGIN, description)
    }
}
