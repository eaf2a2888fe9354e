//! The outlines of several barrels in one drawing, about one lead axis.

use super::axis::text_width;
use super::path::{Path, View};
use super::{Drawing, Label, Shape, Sheet, Style};
use crate::barrel::Barrel;
use crate::figure;
use crate::quantity::{Angle, Length, Point};

/// The outlines are drawn no larger than this, px.
const MOST_HEIGHT: f64 = 300.0;
/// Space round the view, px.
const MARGIN: f64 = 14.0;
/// Height of a line of the legend, px.
const LINE: f64 = 22.0;
/// Length of a sample of a line, and the space after it, px.
const SAMPLE: (f64, f64) = (44.0, 10.0);

/// Draws the finished outlines of barrels one over the other, with a legend below: each has a kind of
/// line of its own, of which there are [`MOST_COMPARED`](crate::MOST_COMPARED).
///
/// ```
/// use solver::{BarrelDraft, LengthUnit, Shape, Sheet, draw_outlines};
/// let made = |shape: Shape| BarrelDraft::new(shape.label(), shape).check().unwrap();
/// let barrels = [made(Shape::Hexagonal), made(Shape::Round)];
/// let sheet = Sheet { width: 500.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let drawing = draw_outlines(&[&barrels[0], &barrels[1]], &sheet);
/// assert_eq!(drawing.labels[1].text, "Round");
/// ```
#[must_use]
pub fn draw_outlines(barrels: &[&Barrel], sheet: &Sheet) -> Drawing {
    let sheet = sheet.usable();
    let outlines: Vec<_> = barrels
        .iter()
        .take(4)
        .map(|barrel| barrel.finished(Angle::ZERO))
        .collect();
    let (mut beside, mut up, mut down) = (Length::ZERO, Length::ZERO, Length::ZERO);
    for outline in &outlines {
        let extents = outline.extents();
        beside = beside.max(extents.left).max(extents.right);
        (up, down) = (up.max(extents.up), down.max(extents.down));
    }
    let [beside, up, down] = [beside, up, down].map(Length::in_millimetres);
    let room = sheet.width - 2.0 * MARGIN;
    // Nothing to draw is drawn at no scale.
    let scale = if outlines.is_empty() {
        0.0
    } else {
        (room / (2.0 * beside)).min(MOST_HEIGHT / (up + down))
    };
    let (x, y) = (sheet.width / 2.0, MARGIN + up * scale);
    let view = View {
        scale,
        origin: Point { x, y },
    };
    let bottom = y + down * scale + MARGIN;
    let mut shapes = Vec::with_capacity(2 * outlines.len() + 1);
    let mut labels = Vec::with_capacity(outlines.len());
    let arm = 0.18 * (up + down) * scale;
    let cross = Path::new()
        .run(&[(x - arm, y), (x + arm, y)])
        .run(&[(x, y - arm), (x, y + arm)]);
    shapes.push(Shape {
        style: Style::Centre,
        path: cross.done(),
    });
    for (place, (barrel, outline)) in barrels.iter().zip(&outlines).enumerate() {
        let level = bottom + LINE * (place as f64 + 0.5);
        let sample = [(MARGIN, level), (MARGIN + SAMPLE.0, level)];
        let path = Path::new().outline(&view, outline).run(&sample);
        shapes.push(Shape {
            style: Style::Compared(place as u8),
            path: path.done(),
        });
        let text = shortened(
            barrel.name(),
            sheet.width - 2.0 * MARGIN - SAMPLE.0 - SAMPLE.1,
        );
        labels.push(Label {
            x: MARGIN + SAMPLE.0 + SAMPLE.1 + text_width(&text) / 2.0,
            y: level,
            text,
        });
    }
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), sheet.unit);
    let told: Vec<String> = barrels
        .iter()
        .zip(&outlines)
        .map(|(barrel, outline)| {
            let extents = outline.extents();
            let (wide, high) = (length(extents.width()), length(extents.height()));
            format!("{}, {wide} wide and {high} high", barrel.name())
        })
        .collect();
    Drawing {
        width: sheet.width,
        height: bottom + LINE * outlines.len() as f64 + MARGIN,
        shapes,
        dimensions: Vec::new(),
        labels,
        handles: Vec::new(),
        unplaced: Vec::new(),
        description: format!("Outlines about one lead axis: {}.", told.join("; ")),
    }
}

/// As much of a name as finds room.
fn shortened(name: &str, room: f64) -> String {
    let mut text = name.to_owned();
    while text_width(&text) > room && text.pop().is_some() {}
    if text.len() < name.len() {
        text.pop();
        text.push('…');
    }
    text
}
