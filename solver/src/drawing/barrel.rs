//! The end view of a barrel with its sizes.

use super::path::{Path, View};
use super::placement::{Band, Side, Target, Wanted};
use super::{Drawing, Shape, Sheet, Size, Style, describe};
use crate::barrel::Barrel;
use crate::figure;
use crate::outline::{Outline, Segment};
use crate::quantity::{Angle, Length, Point};

/// The outline is drawn no larger than this, px.
const MOST_HEIGHT: f64 = 360.0;
/// Space round the view, px.
const MARGIN: f64 = 12.0;

/// Draws a barrel standing on a face, the finished outline round the wood and the lead.
#[must_use]
pub fn draw_barrel(barrel: &Barrel, sheet: &Sheet) -> Drawing {
    let sheet = Sheet {
        width: sheet.width.max(Sheet::LEAST_WIDTH),
        ..*sheet
    };
    let (finished, bare) = (barrel.finished(Angle::ZERO), barrel.bare(Angle::ZERO));
    let extents = finished.extents();
    let beside = sheet.text + 4.0 * MARGIN;
    let room = sheet.width - 2.0 * beside;
    let scale = (room / extents.width().in_millimetres())
        .min(MOST_HEIGHT / extents.height().in_millimetres());
    let x = sheet.width / 2.0;
    let limits = (2.0, sheet.width - 2.0);
    let (left, right) = (
        x - extents.left.in_millimetres() * scale,
        x + extents.right.in_millimetres() * scale,
    );
    let mut unplaced = Vec::new();
    let mut want = |band: &mut Band, wanted: Wanted| {
        let (size, driving) = (wanted.size, wanted.driving);
        if !band.place(wanted) && driving {
            unplaced.push(size);
        }
    };
    let text = |length: Length| figure::length(length.in_millimetres(), sheet.unit);
    let round = barrel.shape().size_is_diameter();

    let mut above = Band::new(Side::Above, limits, &sheet);
    let target = Target::Inside(extents.up.in_millimetres() * scale);
    if !round {
        let width = extents.width();
        let wanted = Wanted {
            size: Size::BarrelWidth,
            driving: false,
            sign: "",
            text: text(width),
            from: left,
            to: right,
            target,
        };
        want(&mut above, wanted);
    }
    let top = MARGIN + above.depth();
    let axis = top + extents.up.in_millimetres() * scale;
    let view = View {
        scale,
        origin: Point { x, y: axis },
    };
    let bottom = view.y(-extents.down);

    let mut right_band = Band::new(Side::Right, (0.0, bottom + MARGIN), &sheet);
    let wanted = Wanted {
        size: Size::Barrel,
        driving: true,
        sign: if round { "⌀" } else { "" },
        text: text(barrel.size()),
        from: top,
        to: bottom,
        target: Target::Inside(extents.right.in_millimetres() * scale),
    };
    want(&mut right_band, wanted);

    let radius = barrel.lead_diameter() / 2.0;
    let mut left_band = Band::new(Side::Left, (0.0, bottom + MARGIN), &sheet);
    let wanted = Wanted {
        size: Size::Wall,
        driving: false,
        sign: "",
        text: text(bare.least_distance() - radius),
        from: view.y(-radius),
        to: view.y(-bare.least_distance()),
        target: Target::Inside(extents.left.in_millimetres() * scale),
    };
    want(&mut left_band, wanted);

    let mut below = Band::new(Side::Below, limits, &sheet);
    let slant = radius * std::f64::consts::FRAC_1_SQRT_2;
    let tip = (view.x(-slant), view.y(-slant));
    let leader = |size, sign, length, tip: (f64, f64)| Wanted {
        size,
        driving: true,
        sign,
        text: text(length),
        from: tip.0,
        to: tip.0,
        target: Target::Point(tip.0, tip.1),
    };
    want(
        &mut below,
        leader(Size::Lead, "⌀", barrel.lead_diameter(), tip),
    );
    match lowest_corner(&finished) {
        Some(corner) => {
            let tip = (
                view.x(Length::millimetres(corner.x)),
                view.y(Length::millimetres(corner.y)),
            );
            want(
                &mut below,
                leader(Size::CornerRadius, "R", barrel.corner_radius(), tip),
            );
        }
        None if barrel.shape().has_corners() => unplaced.push(Size::CornerRadius),
        None => {}
    }

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
    let mut dimensions = above.dimensions(top);
    dimensions.extend(left_band.dimensions(left));
    dimensions.extend(right_band.dimensions(right));
    dimensions.extend(below.dimensions(bottom));
    Drawing {
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
        unplaced,
        description: describe::barrel(barrel, sheet.unit),
    }
}

/// The middle of the rounded corner that lies lowest, and of those the one to the right.
pub(super) fn lowest_corner(outline: &Outline) -> Option<Point> {
    let mut lowest: Option<Point> = None;
    for segment in outline.segments() {
        let Segment::Arc(arc) = segment else { continue };
        if arc.centre == Point::AXIS {
            continue;
        }
        let middle = arc.middle();
        let lower = |than: Point| {
            middle.y < than.y - 1e-9 || ((middle.y - than.y).abs() <= 1e-9 && middle.x > than.x)
        };
        if lowest.is_none_or(lower) {
            lowest = Some(middle);
        }
    }
    lowest
}
