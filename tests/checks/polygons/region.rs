//! Polygons, and what another library makes of two of them.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;
use i_overlay::mesh::outline::offset::OutlineOffset;
use i_overlay::mesh::style::{LineJoin, OutlineStyle};

/// A closed line of points, mm.
pub(crate) type Contour = Vec<[f64; 2]>;
/// Contours, the outer ones counter-clockwise and their holes clockwise.
pub(crate) type Region = Vec<Contour>;

pub(crate) fn combined(one: &Region, other: &Region, rule: OverlayRule) -> Region {
    let shapes = one.overlay(other, rule, FillRule::NonZero);
    shapes.into_iter().flatten().collect()
}

/// Everything inside a contour that is at least a distance away from it. Where it runs round a
/// hollow corner it is drawn with a vertex every 1.8°, the finest the library offers.
pub(crate) fn inset(contour: &Contour, distance: f64) -> Region {
    let style = OutlineStyle::new(-distance).line_join(LineJoin::Round(0.0));
    let shapes = vec![contour.clone()].outline(&style);
    shapes.into_iter().flatten().collect()
}

pub(crate) fn area(region: &Region) -> f64 {
    region.iter().map(|contour| moments(contour)[0]).sum()
}

/// Centre of the area inside a contour.
pub(crate) fn centroid(contour: &Contour) -> [f64; 2] {
    let [area, x, y] = moments(contour);
    [x / area, y / area]
}

/// The area inside a contour and its first moments, a triangle to the origin at a time.
fn moments(contour: &Contour) -> [f64; 3] {
    let mut sums = [0.0; 3];
    for (k, [x, y]) in contour.iter().enumerate() {
        let [next_x, next_y] = contour[(k + 1) % contour.len()];
        let triangle = (x * next_y - next_x * y) / 2.0;
        sums[0] += triangle;
        sums[1] += triangle * (x + next_x) / 3.0;
        sums[2] += triangle * (y + next_y) / 3.0;
    }
    sums
}

pub(crate) fn rectangle(left: f64, bottom: f64, right: f64, top: f64) -> Contour {
    vec![[left, bottom], [right, bottom], [right, top], [left, top]]
}

pub(crate) fn moved(contour: &Contour, x: f64, y: f64) -> Contour {
    contour
        .iter()
        .map(|point| [point[0] + x, point[1] + y])
        .collect()
}

/// Turned about the origin, degrees.
pub(crate) fn turned(contour: &Contour, degrees: f64) -> Contour {
    let (sine, cosine) = libm::sincos(degrees.to_radians());
    let turn = |&[x, y]: &[f64; 2]| [x * cosine - y * sine, x * sine + y * cosine];
    contour.iter().map(turn).collect()
}

/// How far a contour reaches: left, bottom, right, top.
pub(crate) fn reach(contour: &Contour) -> [f64; 4] {
    let each = |axis: usize| contour.iter().map(move |point| point[axis]);
    [
        each(0).fold(f64::MAX, f64::min),
        each(1).fold(f64::MAX, f64::min),
        each(0).fold(f64::MIN, f64::max),
        each(1).fold(f64::MIN, f64::max),
    ]
}

/// No two points of an arc lie farther apart than this, mm.
const APART: f64 = 0.03;

/// Points of a circle from one angle to another, degrees, a fifth of a degree apart; clockwise
/// where the second is the smaller.
pub(crate) fn arc(
    centre: [f64; 2],
    radius: f64,
    from: f64,
    to: f64,
) -> impl Iterator<Item = [f64; 2]> {
    // A wide arc needs more points than its angle asks for.
    let length = ((to - from).to_radians() * radius).abs();
    let steps = ((to - from).abs() * 5.0)
        .max(length / APART)
        .ceil()
        .max(1.0);
    (0..=steps as u32).map(move |step| {
        let angle = (from + (to - from) * f64::from(step) / steps).to_radians();
        let (sine, cosine) = libm::sincos(angle);
        [centre[0] + radius * cosine, centre[1] + radius * sine]
    })
}
