//! Curves at true size as DXF of release 12.
//!
//! Written here because a library for the format weighs a third of the whole program, asks for a
//! clock and for random names, and what is needed of it is one kind of entity.

use super::{Curve, Layer, TrueSize, is_written, number};
use crate::outline::Segment;
use crate::quantity::Point;

/// Height of texts and the distance from one to the next, mm.
const LETTERS: f64 = 2.0;
const LEADING: f64 = 3.5;

/// The most letters of one text as written: release 12 allows 255 bytes.
const LONGEST: usize = 240;

/// A file in the making: pairs of a group code and a value, a line each.
#[derive(Default)]
struct Groups(String);

impl Groups {
    fn put(&mut self, code: u16, value: &str) {
        self.0 += &code.to_string();
        self.0.push('\n');
        self.0 += value;
        self.0.push('\n');
    }

    fn point(&mut self, first: u16, point: Point) {
        self.put(first, &number(point.x));
        self.put(first + 10, &number(point.y));
        self.put(first + 20, "0.0");
    }

    fn section(&mut self, name: &str) {
        self.put(0, "SECTION");
        self.put(2, name);
    }

    fn end_section(&mut self) {
        self.put(0, "ENDSEC");
    }
}

pub(super) fn write(file: &TrueSize) -> String {
    let mut groups = Groups::default();
    let (low, high) = file.bounds();
    groups.section("HEADER");
    groups.put(9, "$ACADVER");
    groups.put(1, "AC1009");
    for (name, corner) in [("$EXTMIN", low), ("$EXTMAX", high)] {
        groups.put(9, name);
        groups.point(10, corner);
    }
    groups.end_section();
    tables(&mut groups);
    groups.section("ENTITIES");
    for curve in &file.curves {
        polyline(&mut groups, curve);
    }
    let texts = [&file.name]
        .into_iter()
        .chain(&file.notes)
        .flat_map(|text| lines(text));
    for (k, line) in (1_u16..).zip(texts) {
        let at = Point {
            x: low.x,
            y: low.y - LEADING * f64::from(k),
        };
        groups.put(0, "TEXT");
        groups.put(8, NOTES);
        groups.point(10, at);
        groups.put(40, &number(LETTERS));
        groups.put(1, &line);
    }
    groups.end_section();
    groups.put(0, "EOF");
    groups.0
}

/// The layer of the texts.
const NOTES: &str = "NOTES";

/// The kinds of line and the layers that are used.
fn tables(groups: &mut Groups) {
    groups.section("TABLES");
    groups.put(0, "TABLE");
    groups.put(2, "LTYPE");
    groups.put(70, "1");
    groups.put(0, "LTYPE");
    groups.put(2, "CONTINUOUS");
    groups.put(70, "0");
    groups.put(3, "Solid line");
    groups.put(72, "65");
    groups.put(73, "0");
    groups.put(40, "0.0");
    groups.put(0, "ENDTAB");
    let names = Layer::ALL.iter().map(|layer| layer.name());
    let names: Vec<&str> = names.chain([NOTES]).collect();
    groups.put(0, "TABLE");
    groups.put(2, "LAYER");
    groups.put(70, &names.len().to_string());
    // Colours tell the layers apart on the screen of whoever opens it: white, red, yellow, green.
    for (name, colour) in names.into_iter().zip(["7", "1", "2", "3"]) {
        groups.put(0, "LAYER");
        groups.put(2, name);
        groups.put(70, "0");
        groups.put(62, colour);
        groups.put(6, "CONTINUOUS");
    }
    groups.put(0, "ENDTAB");
    groups.end_section();
}

/// One curve. A vertex tells of the arc to the next by its bulge, the tangent of a quarter of the
/// angle the arc turns through, above 0 where it turns counter-clockwise.
fn polyline(groups: &mut Groups, curve: &Curve) {
    let layer = curve.layer.name();
    groups.put(0, "POLYLINE");
    groups.put(8, layer);
    groups.put(66, "1");
    groups.put(70, if curve.closed { "1" } else { "0" });
    groups.point(10, Point::AXIS);
    let mut vertex = |at: Point, bulge: f64| {
        groups.put(0, "VERTEX");
        groups.put(8, layer);
        groups.point(10, at);
        groups.put(42, &format!("{bulge:.12}"));
    };
    let mut end = None;
    for segment in curve.segments.iter().filter(|segment| is_written(segment)) {
        let bulge = match segment {
            Segment::Line(_) => 0.0,
            Segment::Arc(arc) => libm::tan(arc.sweep() / 4.0),
        };
        vertex(segment.start(), bulge);
        end = Some(segment.end());
    }
    if let Some(end) = end.filter(|_| !curve.closed) {
        vertex(end, 0.0);
    }
    groups.put(0, "SEQEND");
    groups.put(8, layer);
}

/// A text in lines that can be written, none of them too long; an empty one has none.
fn lines(text: &str) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for letter in text.chars() {
        let written = written(letter);
        if line.len() + written.len() > LONGEST {
            lines.push(std::mem::take(&mut line));
        }
        line += &written;
    }
    lines.extend(Some(line).filter(|line| !line.is_empty()));
    lines
}

/// A letter as it is written. What could end a line, or begin a code of the format, is written as
/// a code itself: `%%` (symbols), `^` (control letters) and `\` (codes).
fn written(letter: char) -> String {
    match letter {
        '%' | '^' | '\\' => format!("\\U+{:04X}", u32::from(letter)),
        ' '..='~' => letter.to_string(),
        // A control letter has no look; one that ends a line would end the text.
        letter if letter.is_control() => " ".to_owned(),
        letter => {
            let mut units = [0; 2];
            let units = letter.encode_utf16(&mut units).iter();
            units.map(|unit| format!("\\U+{unit:04X}")).collect()
        }
    }
}
