//! A strip of paper at true size to hold against slats and cutters.

use super::axis::{evenly, thinned};
use super::paper::{PIXELS_PER_MILLIMETRE, Paper, PaperProblem};
use super::path::{Path, View};
use super::{Drawing, Label, Shape, Style};
use crate::figure;
use crate::layout::{Layout, Setup};
use crate::quantity::{Length, Point};
use crate::slat::Slat;
use crate::unit::LengthUnit;

/// Heights on the strip, mm: the numbers, the wood over and under the glue plane, the control bar.
const NUMBERS: f64 = 5.0;
const WOOD: f64 = 9.0;
const BAR: f64 = 4.0;
/// Space round the strip, mm.
const MARGIN: f64 = 2.0;

/// Draws a gauge at exactly 1:1: slat edges, groove centres with their numbers, the grooves
/// themselves, and a control bar of 100 mm or 4 in that is measured before the gauge is used.
///
/// The datum edge lies at the left. Slats are as wide as they are, nominally, at the groove head;
/// the upper half of the strip is the top slat.
///
/// # Errors
/// Where slats or control bar are wider than can be printed on the paper.
///
/// ```
/// use solver::{BarrelDraft, LengthUnit, Paper, PaperSize, RulesDraft, Seam, Setup, Shape, SlatDraft, draw_gauge, lay_out};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let setup = Setup { barrel: &barrel, turn: barrel.turn(Seam::ThroughFaces), top: &slat, bottom: &slat, rules: &rules };
/// let paper = Paper { size: PaperSize::Letter, landscape: false };
/// let gauge = draw_gauge(&setup, &lay_out(&setup), paper, LengthUnit::Inch).unwrap();
/// assert!(gauge.labels.iter().any(|label| label.text.contains("4 in")));
/// ```
pub fn draw_gauge(
    setup: &Setup<'_>,
    layout: &Layout,
    paper: Paper,
    unit: LengthUnit,
) -> Result<Drawing, PaperProblem> {
    let (top, bottom) = (setup.top.grooved_width(), setup.bottom.grooved_width());
    let width = top.max(bottom).max(bar_length(unit));
    let needed = width + Length::millimetres(2.0 * MARGIN);
    let printable = paper.printable_width();
    if !needed.fits_in(printable) {
        return Err(PaperProblem::TooWide { needed, printable });
    }
    let view = View {
        scale: PIXELS_PER_MILLIMETRE,
        origin: Point {
            x: MARGIN * PIXELS_PER_MILLIMETRE,
            y: (MARGIN + NUMBERS + WOOD) * PIXELS_PER_MILLIMETRE,
        },
    };
    let mut gauge = Gauge {
        view,
        shapes: Vec::new(),
        labels: Vec::new(),
    };
    gauge.slats(setup.top, setup.bottom);
    gauge.grooves(layout);
    let end = gauge.bar(unit);
    let name = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
    Ok(Drawing {
        width: needed.in_millimetres() * PIXELS_PER_MILLIMETRE,
        height: (end + MARGIN) * PIXELS_PER_MILLIMETRE,
        shapes: gauge.shapes,
        dimensions: Vec::new(),
        labels: gauge.labels,
        handles: Vec::new(),
        unplaced: Vec::new(),
        description: format!(
            "Gauge at true size for {} grooves at a pitch of {}, on slats {} wide.",
            layout.across(),
            name(layout.pitch()),
            name(top.max(bottom))
        ),
    })
}

/// How long the control bar is: 100 mm or 4 in.
fn bar_length(unit: LengthUnit) -> Length {
    Length::millimetres(match unit {
        LengthUnit::Millimetre => 100.0,
        LengthUnit::Inch => 4.0 * 25.4,
    })
}

struct Gauge {
    view: View,
    shapes: Vec<Shape>,
    labels: Vec<Label>,
}

impl Gauge {
    fn add(&mut self, style: Style, path: Path) {
        let path = path.done();
        if !path.is_empty() {
            self.shapes.push(Shape { style, path });
        }
    }

    fn slats(&mut self, top: &Slat, bottom: &Slat) {
        let wood = Length::millimetres(WOOD);
        for (width, face) in [(top.grooved_width(), wood), (bottom.grooved_width(), -wood)] {
            let path = Path::new().rectangle(&self.view, Length::ZERO, Length::ZERO, width, face);
            self.add(Style::Slat, path);
        }
    }

    fn grooves(&mut self, layout: &Layout) {
        let shape = layout.groove_shape();
        let (over, under) = (
            self.view.y(Length::millimetres(WOOD + 1.0)),
            self.view.y(Length::millimetres(-WOOD - 1.0)),
        );
        let mut grooves = Path::new();
        let mut centres = Path::new();
        let mut labels = Vec::new();
        for groove in layout.grooves() {
            grooves = grooves.groove(&self.view.at(groove.centre, shape.axis_height()), shape);
            let x = self.view.x(groove.centre);
            centres = centres.run(&[(x, over), (x, under)]);
            labels.push(Label {
                x,
                y: over - (NUMBERS - 2.0) / 2.0 * PIXELS_PER_MILLIMETRE,
                text: groove.number.to_string(),
            });
        }
        let order = evenly(&labels, &[0, labels.len().saturating_sub(1)]);
        self.labels.extend(thinned(labels, &order, &[]));
        self.add(Style::Groove, grooves);
        self.add(Style::Centre, centres);
    }

    /// The control bar with its ticks; returns where the strip ends, mm down.
    fn bar(&mut self, unit: LengthUnit) -> f64 {
        let (steps, step, name) = match unit {
            LengthUnit::Millimetre => (10, 10.0, "100 mm"),
            LengthUnit::Inch => (16, 25.4 / 4.0, "4 in"),
        };
        let level = -(WOOD + 3.0 + BAR);
        let y = |height| self.view.y(Length::millimetres(height));
        let x = |place| self.view.x(Length::millimetres(place));
        let length = bar_length(unit).in_millimetres();
        let mut bar = Path::new().run(&[(x(0.0), y(level)), (x(length), y(level))]);
        for k in 0..=steps {
            let place = x(step * f64::from(k));
            let tick = if k % (steps / 2) == 0 { BAR } else { BAR / 2.0 };
            bar = bar.run(&[(place, y(level)), (place, y(level + tick))]);
        }
        let label = Label {
            x: x(length / 2.0),
            y: y(level - 3.5),
            text: format!("{name}: measure before use"),
        };
        self.labels.push(label);
        self.add(Style::ScaleBar, bar);
        MARGIN + NUMBERS + WOOD - level + 6.0
    }
}
