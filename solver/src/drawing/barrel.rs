//! The end view of a barrel with its sizes.

use super::paper::{PIXELS_PER_MILLIMETRE, Paper, Scale, ScaledDrawing};
use super::path::{Path, View};
use super::placement::{Band, CLEAR, CORNER, End, Side, Spot, Wanted};
use super::{Drawing, Shape, Sheet, Size, Style, describe};
use crate::barrel::Barrel;
use crate::field::Field;
use crate::figure;
use crate::outline::{Arc, DrawnPath, Outline, Segment};
use crate::quantity::{Angle, Direction, Length, Point};
use crate::sequence::in_order;
use crate::unit::LengthUnit;

/// The outline is drawn no larger than this, px.
const MOST_HEIGHT: f64 = 360.0;
/// Space round the view, px.
const MARGIN: f64 = 12.0;

/// Where the end view of a barrel lies on its sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EndView {
    /// Pixels per millimetre.
    scale: f64,
    /// Place of the lead axis, px.
    axis: (f64, f64),
}

impl EndView {
    /// The place on the sheet of a point, mm from the lead axis, y up: px, y down.
    #[must_use]
    pub fn place(&self, point: Point) -> (f64, f64) {
        (
            self.axis.0 + point.x * self.scale,
            self.axis.1 - point.y * self.scale,
        )
    }

    /// The point, mm from the lead axis, at a place of the sheet, px.
    #[must_use]
    pub fn point(&self, x: f64, y: f64) -> Point {
        Point {
            x: (x - self.axis.0) / self.scale,
            y: (self.axis.1 - y) / self.scale,
        }
    }

    /// The length of so many px, mm.
    #[must_use]
    pub fn length(&self, px: f64) -> f64 {
        px / self.scale
    }

    /// A path as it lies on the sheet, SVG path data in px.
    #[must_use]
    pub(super) fn drawn(&self, path: &DrawnPath) -> String {
        // Its text turns y round.
        let (x, y) = self.axis;
        path.clone().placed(self.scale, x, 0.0 - y).text()
    }
}

/// Draws a barrel standing on a face, the finished outline round the wood and the lead.
#[must_use]
pub fn draw_barrel(barrel: &Barrel, sheet: &Sheet) -> Drawing {
    draw_end_view(barrel, sheet, None).0
}

/// Draws a barrel as [`draw_barrel`] does, and tells where it lies on the sheet; as it lay before
/// where that is given, so that nothing moves away under a hand that changes it.
///
/// ```
/// use solver::{BarrelDraft, LengthUnit, Point, Shape, Sheet, draw_end_view};
/// let barrel = BarrelDraft::new("Office", Shape::Round).check().unwrap();
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let (_, view) = draw_end_view(&barrel, &sheet, None);
/// let (x, y) = view.place(Point { x: 3.5, y: 0.0 });
/// assert_eq!(view.point(x, y), Point { x: 3.5, y: 0.0 });
/// ```
#[must_use]
pub fn draw_end_view(barrel: &Barrel, sheet: &Sheet, held: Option<EndView>) -> (Drawing, EndView) {
    draw(barrel, sheet, held.map(|held| held.scale), held)
}

/// Draws a barrel for paper at the largest standard scale (ISO 5455) at which it and its dimensions fit
/// across; nothing where they do not fit in full size.
///
/// ```
/// use solver::{BarrelDraft, LengthUnit, Paper, PaperSize, Shape, draw_barrel_to_scale};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let paper = Paper { size: PaperSize::A4, landscape: false };
/// let drawn = draw_barrel_to_scale(&barrel, paper, LengthUnit::Millimetre).unwrap();
/// assert_eq!(drawn.scale.label(), "5:1");
/// ```
#[must_use]
pub fn draw_barrel_to_scale(
    barrel: &Barrel,
    paper: Paper,
    unit: LengthUnit,
) -> Option<ScaledDrawing> {
    /// Room for dimensions on either side, and the most height that the view may take, mm.
    const BESIDE: f64 = 30.0;
    const HIGHEST: f64 = 60.0;
    let extents = barrel.finished(Angle::ZERO).extents();
    let across = paper.printable_width() - Length::millimetres(2.0 * BESIDE);
    let wide = Scale::largest_that_fits(extents.width(), across)?;
    let high = Scale::largest_that_fits(extents.height(), Length::millimetres(HIGHEST))?;
    let scale = if wide.factor() < high.factor() {
        wide
    } else {
        high
    };
    let sheet = Sheet {
        width: paper.printable_width().in_millimetres() * PIXELS_PER_MILLIMETRE,
        row: 26.0,
        text: 66.0,
        unit,
    };
    let pixels = scale.factor() * PIXELS_PER_MILLIMETRE;
    let (drawing, _) = draw(barrel, &sheet, Some(pixels), None);
    Some(ScaledDrawing { drawing, scale })
}

/// Draws a barrel at a scale, px a millimetre, and in a place, where these are given.
fn draw(
    barrel: &Barrel,
    sheet: &Sheet,
    scale: Option<f64>,
    held: Option<EndView>,
) -> (Drawing, EndView) {
    let sheet = sheet.usable();
    let (finished, bare) = (barrel.finished(Angle::ZERO), barrel.bare(Angle::ZERO));
    let extents = finished.extents();
    let room = sheet.width - 2.0 * (sheet.text + CLEAR + MARGIN / 4.0);
    let scale = scale.unwrap_or_else(|| {
        (room / extents.width().in_millimetres())
            .min(MOST_HEIGHT / extents.height().in_millimetres())
    });
    let x = sheet.width / 2.0;
    let limits = (2.0, sheet.width - 2.0);
    let (left, right) = (
        x - extents.left.in_millimetres() * scale,
        x + extents.right.in_millimetres() * scale,
    );
    let mut unplaced = Vec::new();
    let mut want = |band: &mut Band, size, driving, length: Length, spots| {
        let sign = match size {
            Size::Lead => "⌀",
            Size::CornerRadius => "R",
            Size::Barrel if barrel.shape().size_is_diameter() => "⌀",
            _ => "",
        };
        let text = figure::length(length.in_millimetres(), sheet.unit);
        let placed = band.place(Wanted {
            size,
            driving,
            sign,
            text,
            spots,
        });
        if !placed && driving {
            unplaced.push(size);
        }
    };

    let mut above = Band::new(Side::Above, limits, f64::INFINITY, &sheet);
    // The size that defines the barrel stands where it can be read off: across, upright or nowhere.
    let reads = |extent: Length| (extent - barrel.size()).abs() <= Length::SLACK;
    let across = barrel.shape().size_field() == Field::BarrelWidth;
    let upright = !across && reads(extents.height());
    if barrel.shape() != crate::shape::Shape::Round {
        let end = |along| End {
            along,
            inside: extents.up.in_millimetres() * scale,
        };
        let spots = vec![Spot::between(end(left), end(right))];
        let size = if across {
            Size::Barrel
        } else {
            Size::BarrelWidth
        };
        want(&mut above, size, across, extents.width(), spots);
    }
    let up = extents.up.in_millimetres() * scale;
    let axis = held.map_or_else(|| MARGIN + above.depth() + up, |held| held.axis.1);
    let top = axis - up;
    let view = View {
        scale,
        origin: Point { x, y: axis },
    };
    let bottom = view.y(-extents.down);

    // Beside the view texts keep to its height, clear of those above and below.
    let height = (top - CORNER, bottom + CORNER);
    let mut right_band = Band::new(Side::Right, height, sheet.width - 2.0 - right, &sheet);
    let end = |along| End {
        along,
        inside: extents.right.in_millimetres() * scale,
    };
    let spots = vec![Spot::between(end(top), end(bottom))];
    let size = if upright {
        Size::Barrel
    } else {
        Size::BarrelHeight
    };
    // Of an oval or a flat outline it is a size of its own.
    let drives = upright || barrel.shape().own_fields().contains(&Field::BarrelHeight);
    want(&mut right_band, size, drives, extents.height(), spots);

    let radius = barrel.lead_diameter() / 2.0;
    let mut left_band = Band::new(Side::Left, height, left - 2.0, &sheet);
    let end = |height| End {
        along: view.y(height),
        inside: extents.left.in_millimetres() * scale,
    };
    // The least wall is shown where it lies under the lead, as in every usual outline.
    let nearest = bare.least_distance();
    if (bare.extents().down - nearest).abs() <= Length::SLACK {
        let spots = vec![Spot::between(end(-radius), end(-nearest))];
        want(&mut left_band, Size::Wall, false, nearest - radius, spots);
    }

    let mut below = Band::new(Side::Below, limits, f64::INFINITY, &sheet);
    let spots = lead_spots(&view, radius);
    want(&mut below, Size::Lead, true, barrel.lead_diameter(), spots);
    if barrel.shape().has_corners() {
        let spots = corner_spots(&view, &finished, barrel.corner_radius());
        want(
            &mut below,
            Size::CornerRadius,
            true,
            barrel.corner_radius(),
            spots,
        );
    }

    let spots = coat_spots(&view, &finished, &bare);
    want(&mut below, Size::Coat, true, barrel.coat(), spots);

    let cross = |reach: f64| {
        let reach = Length::millimetres(reach);
        Path::new()
            .run(&[(view.x(-reach), axis), (view.x(reach), axis)])
            .run(&[(x, view.y(reach)), (x, view.y(-reach))])
    };
    let shapes = [
        (
            Style::TopHalf,
            Path::new().above(&view, &bare, Length::ZERO),
        ),
        (
            Style::BottomHalf,
            Path::new().below(&view, &bare, Length::ZERO),
        ),
        (Style::Lead, Path::new().circle(&view, radius)),
        (Style::Coat, Path::new().outline(&view, &bare)),
        (Style::Pencil, Path::new().outline(&view, &finished)),
        (Style::Centre, cross(radius.in_millimetres() * 1.4)),
    ];
    if !across && !upright {
        unplaced.push(Size::Barrel);
    }
    let mut dimensions = above.dimensions(top);
    dimensions.extend(left_band.dimensions(left));
    dimensions.extend(right_band.dimensions(right));
    dimensions.extend(below.dimensions(bottom));
    let drawing = Drawing {
        width: sheet.width,
        height: bottom + below.depth() + MARGIN,
        shapes: shapes
            .into_iter()
            .map(|(style, path)| Shape {
                style,
                path: path.done(),
            })
            .collect(),
        dimensions,
        labels: Vec::new(),
        handles: Vec::new(),
        unplaced,
        description: describe::barrel(barrel, sheet.unit),
    };
    let axis = (x, axis);
    (drawing, EndView { scale, axis })
}

/// Where a leader from below can point between the coat and the wood.
fn coat_spots(view: &View, finished: &Outline, bare: &Outline) -> Vec<Spot> {
    // Seen from the side an upright line is a level one, and what is above is to the right.
    let [finished, bare] = [finished, bare].map(|outline| outline.turned(Direction::DOWN));
    let reach = finished.extents();
    let shares = [-0.45, 0.45, -0.2, -0.7, 0.7, 0.2];
    let spots = shares.into_iter().filter_map(|share| {
        let across = if share < 0.0 { reach.up } else { reach.down } * share;
        let low = |outline: &Outline| outline.chord(-across).map(|(low, _)| low);
        let middle = (low(&finished)? + low(&bare)?) / 2.0;
        Some(Spot::At(view.x(across), view.y(middle)))
    });
    spots.collect()
}

/// Where a leader from below can point at the lead; the origin of the view is its axis.
pub(super) fn lead_spots(view: &View, radius: Length) -> Vec<Spot> {
    let slant = radius * std::f64::consts::FRAC_1_SQRT_2;
    vec![
        Spot::At(view.x(-slant), view.y(-slant)),
        Spot::At(view.x(slant), view.y(-slant)),
    ]
}

/// Where a leader from below can point at a corner rounded with a radius: the lowest first, and
/// of those the one to the right. Sharp corners have no arc to point at.
pub(super) fn corner_spots(view: &View, outline: &Outline, radius: Length) -> Vec<Spot> {
    let rounded =
        |arc: &Arc| (arc.radius - radius.in_millimetres()).abs() <= Length::SLACK.in_millimetres();
    let corners: Vec<Point> = outline
        .segments()
        .iter()
        .filter_map(|segment| match segment {
            Segment::Arc(arc) if rounded(arc) => Some(arc.middle()),
            _ => None,
        })
        .filter(|corner| corner.y < 0.0)
        .collect();
    // Heights that differ only by rounding are the same.
    let height = |corner: &Point| (corner.y * 1e6).round();
    let corners = in_order(corners, |one, other| {
        let lower = height(one).total_cmp(&height(other));
        lower.then(other.x.total_cmp(&one.x))
    });
    let place = |corner: Point| {
        let (x, y) = (Length::millimetres(corner.x), Length::millimetres(corner.y));
        Spot::At(view.x(x), view.y(y))
    };
    corners.into_iter().map(place).collect()
}
