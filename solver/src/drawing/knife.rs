//! The edge of a knife on its face, for paper.

use super::axis::{on_sheet, thinned};
use super::paper::{PIXELS_PER_MILLIMETRE, Paper, PaperProblem, Scale, ScaledDrawing};
use super::path::{Path, View};
use super::{Drawing, Label, Shape, Style};
use crate::figure;
use crate::knife::Knife;
use crate::quantity::{Length, Point};
use crate::unit::LengthUnit;

/// Space round the edge, and height of a line of text, mm.
const MARGIN: f64 = 3.0;
const LINE: f64 = 5.0;

/// Draws the edge of a knife on its face at the largest standard scale (ISO 5455) at which it fits
/// across a sheet of paper. The line at its farthest point and the datum edge of the slats are
/// centre lines; name, depths and scale stand under it.
///
/// # Errors
/// Where it is too wide for the sheet even in full size.
pub fn draw_knife(
    knife: &Knife,
    paper: Paper,
    unit: LengthUnit,
) -> Result<ScaledDrawing, PaperProblem> {
    let spans = || knife.edge().iter().map(|piece| piece.span());
    let left = Length::millimetres(spans().map(|(left, _)| left).fold(0.0, f64::min));
    let right = Length::millimetres(spans().map(|(_, right)| right).fold(0.0, f64::max));
    let margins = Length::millimetres(2.0 * MARGIN);
    let printable = paper.printable_width();
    let Some(scale) = Scale::largest_that_fits(right - left, printable - margins) else {
        let needed = right - left + margins;
        return Err(PaperProblem::TooWide { needed, printable });
    };
    let pixels = scale.factor() * PIXELS_PER_MILLIMETRE;
    let margin = MARGIN * PIXELS_PER_MILLIMETRE;
    let depth = knife.stretched_depth();
    let width = (right - left).in_millimetres() * pixels + 2.0 * margin;
    let height = depth.in_millimetres() * pixels;
    let (tip, back) = if knife.blade().cuts_downwards() {
        (margin + height, depth)
    } else {
        (margin, -depth)
    };
    let view = View {
        scale: pixels,
        origin: Point {
            x: margin - left.in_millimetres() * pixels,
            y: tip,
        },
    };
    let cross = Path::new()
        .run(&[(view.x(left), tip), (view.x(right), tip)])
        .run(&[(view.origin.x, tip), (view.origin.x, view.y(back))]);
    let edge = Path::new().open(&view, knife.edge());
    let shapes = [(Style::Centre, cross), (Style::Pencil, edge)];
    let shapes = shapes
        .into_iter()
        .map(|(style, path)| Shape {
            style,
            path: path.done(),
        })
        .collect();
    let length = |length: Length| figure::length_of_error(length.in_millimetres(), unit);
    let told = format!(
        "{}: {} {} deep, {} on its face",
        knife.blade().label(),
        length(knife.depth()),
        unit.label(),
        length(depth)
    );
    let line = LINE * PIXELS_PER_MILLIMETRE;
    let under = 2.0 * margin + height;
    let label = |k: f64, text: String| {
        let label = Label {
            x: width / 2.0,
            y: under + (k + 0.5) * line,
            text,
        };
        on_sheet(label, width)
    };
    let labels = vec![
        label(0.0, told.clone()),
        label(1.0, format!("Scale {}", scale.label())),
    ];
    let drawing = Drawing {
        width,
        height: under + 2.0 * line + margin,
        shapes,
        dimensions: Vec::new(),
        labels: thinned(labels, &[0, 1], &[]),
        handles: Vec::new(),
        unplaced: Vec::new(),
        description: format!("{told}. Drawn to scale {}.", scale.label()),
    };
    Ok(ScaledDrawing { drawing, scale })
}
