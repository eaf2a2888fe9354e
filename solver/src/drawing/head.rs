//! A cutterhead over the table or under it, with the wood on the table, for paper.

use super::paper::{PIXELS_PER_MILLIMETRE, Scale};
use super::path::{Path, View};
use super::placement::{Band, End, Side, Spot, Wanted};
use super::{Drawing, Label, Shape, Sheet, Size, Style};
use crate::figure;
use crate::knife::{Blade, Knife};
use crate::outline::{Arc, Segment};
use crate::quantity::{Direction, Length, Point};
use crate::setting::{KnifeHeight, Setting};
use crate::unit::LengthUnit;

/// The drawing across, and what the views may be upright, mm of paper: two of them stand side by side
/// between the margins of a sheet.
const WIDTH: f64 = 95.0;
const VIEW: f64 = 30.0;
/// Half of what the enlarged view shows across, and how far its arcs go beyond the wood, mm of paper.
const HALF: f64 = 8.2;
const BEYOND: f64 = 2.0;
/// A line of text, mm of paper.
const LINE: f64 = 5.0;
/// Room for a number, px.
const TEXT: f64 = 46.0;
const ROW: f64 = 15.0;
/// Space between the two views, px.
const BETWEEN: f64 = 10.0;
/// Space round the drawing, px.
const MARGIN: f64 = 3.0;

/// Draws a head as it stands when a blade is set: at the left the whole head with the height of its axis
/// above the table, at the right where its knives meet the wood, enlarged, with the height of their tip,
/// the depth of the cut and the thickness of the wood. Both are at standard scales (ISO 5455), seen
/// along the axis of the head, the wood lying on the table; of the two arcs of the enlarged view one is
/// what the tip of the edge runs on and the other what its nearest point does.
///
/// Axis, tip and depth come first; the thickness of the wood and the height of the finished face are left
/// out where they find no room beside them. Nothing where the setting has no such blade.
///
/// ```
/// use solver::{BarrelDraft, Blade, Conditions, CutDraft, HeadDraft, LengthUnit, RulesDraft, Seam, Setup, Shape, Size, SlatDraft, draw_head, lay_out, set_up};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap(); // lead 2.2, clearance 0.05
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let setup = Setup { barrel: &barrel, turn: barrel.turn(Seam::ThroughCorners), top: &slat, bottom: &slat, rules: &rules };
/// let heads = [HeadDraft::new().check().unwrap(); 3];
/// let cut = CutDraft::new().check().unwrap();
/// let setting = set_up(&setup, &lay_out(&setup), &heads, &cut, Conditions { moisture: 8.0 }).unwrap();
/// let drawing = draw_head(&setting, Blade::TopGrooves, LengthUnit::Millimetre).unwrap();
/// let depth = drawing.dimensions.iter().find(|dimension| dimension.size == Size::CutDepth).unwrap();
/// assert_eq!(depth.text, "1.15");
/// ```
#[must_use]
pub fn draw_head(setting: &Setting, blade: Blade, unit: LengthUnit) -> Option<Drawing> {
    let height = setting
        .heights
        .iter()
        .find(|height| height.blade == blade)?;
    let knife = setting.knives.iter().find(|knife| knife.blade() == blade)?;
    let wood = match blade {
        Blade::TopGrooves => setting.top.thickness,
        Blade::BottomGrooves => setting.bottom.thickness,
        Blade::Top | Blade::Bottom => setting.glued,
    };
    let stand = Stand::new(knife, height, wood)?;
    Some(stand.drawn(unit))
}

/// A head that stands over or under the table.
struct Stand<'a> {
    knife: &'a Knife,
    height: &'a KnifeHeight,
    /// Thickness of the wood on the table.
    wood: Length,
    /// Scale of the whole head and of where it meets the wood.
    scales: [Scale; 2],
}

impl<'a> Stand<'a> {
    fn new(knife: &'a Knife, height: &'a KnifeHeight, wood: Length) -> Option<Self> {
        let (low, high) = reach(knife, height, wood);
        let room = Length::millimetres(VIEW);
        let beyond = Length::millimetres(BEYOND);
        let scales = [
            Scale::of_a_view(high - low, room)?,
            Scale::of_a_view(wood, room - beyond)?,
        ];
        Some(Self {
            knife,
            height,
            wood,
            scales,
        })
    }

    /// Whether the head stands over the wood.
    fn is_over(&self) -> bool {
        self.height.axis >= self.height.tip
    }

    fn drawn(&self, unit: LengthUnit) -> Drawing {
        let sheet = Sheet {
            width: pixels(WIDTH),
            row: ROW,
            text: TEXT,
            unit,
        };
        let radius = self.knife.head().radius();
        let (low, high) = reach(self.knife, self.height, self.wood);
        let [whole, near] = self
            .scales
            .map(|scale| scale.factor() * PIXELS_PER_MILLIMETRE);
        let over = |scale: f64, height: Length| height.in_millimetres() * scale;
        // What both views take over the table and under it; both lie on one line.
        let (above, below) = if self.is_over() {
            let near = over(near, self.wood) + pixels(BEYOND);
            (over(whole, high).max(near), over(whole, -low))
        } else {
            let above = over(whole, high).max(over(near, self.wood));
            (above, over(whole, -low).max(pixels(BEYOND)))
        };
        let top = MARGIN + pixels(LINE);
        let (table, foot) = (top + above, top + above + below);
        let left = MARGIN + TEXT + 15.0;
        let reach = over(whole, radius);
        let half = pixels(HALF);
        let views = [
            View {
                scale: whole,
                origin: Point {
                    x: left + reach,
                    y: table,
                },
            },
            View {
                scale: near,
                origin: Point {
                    x: left + 2.0 * reach.max(pixels(VIEW) / 2.0) + BETWEEN + half,
                    y: table,
                },
            },
        ];
        let mut shapes = self.whole(&views[0], reach);
        shapes.extend(self.near(&views[1], half));
        let rows = (top - pixels(LINE), foot + pixels(LINE));
        let mut dimensions = self.axis(&views[0], (left, rows), &sheet);
        let edge = views[1].origin.x + half;
        dimensions.extend(self.heights(&views[1], (edge, half, rows), &sheet));
        let label = |x: f64, y: f64, text: String| Label { x, y, text };
        let under = foot + pixels(LINE) / 2.0 + MARGIN;
        let diameter = figure::length(self.knife.head().diameter().in_millimetres(), unit);
        let name = self.height.blade.label();
        let labels = vec![
            label(
                sheet.width / 2.0,
                MARGIN + pixels(LINE) / 2.0 - 2.0,
                name.to_owned(),
            ),
            label(
                views[0].origin.x,
                under,
                format!("⌀{diameter}, {}", self.scales[0].label()),
            ),
            label(views[1].origin.x, under, self.scales[1].label()),
        ];
        Drawing {
            width: sheet.width,
            height: under + pixels(LINE) / 2.0 + MARGIN,
            shapes,
            dimensions,
            labels,
            handles: Vec::new(),
            unplaced: Vec::new(),
            description: self.described(unit),
        }
    }

    /// The whole head, with the wood under it.
    fn whole(&self, view: &View, reach: f64) -> Vec<Shape> {
        let radius = self.knife.head().radius();
        let centre = view.at(Length::ZERO, self.height.axis);
        let cross = reach + 4.0;
        let (x, y) = (centre.origin.x, centre.origin.y);
        let axes = Path::new()
            .run(&[(x - cross, y), (x + cross, y)])
            .run(&[(x, y - cross), (x, y + cross)]);
        let mut shapes = self.table(view, reach);
        shapes.extend([
            shape(Style::CuttingCircle, Path::new().circle(&centre, radius)),
            shape(Style::Centre, axes),
        ]);
        shapes
    }

    /// Where the knives meet the wood.
    fn near(&self, view: &View, half: f64) -> Vec<Shape> {
        let radius = self.knife.head().radius();
        let centre = view.at(Length::ZERO, self.height.axis);
        let beyond = Length::millimetres(pixels(BEYOND) / view.scale);
        let shown = if self.is_over() {
            self.wood + beyond - self.height.tip
        } else {
            self.height.tip + beyond
        };
        let across = Length::millimetres(half / view.scale);
        let arc = |radius: Length, deep: Length| {
            let sign = if self.is_over() { -1.0 } else { 1.0 };
            Path::new().open(&centre, &arc(radius, across, deep, sign))
        };
        let depth = self.knife.depth();
        let x = view.origin.x;
        let middle = Path::new().run(&[
            (x, view.y(self.wood) - pixels(BEYOND)),
            (x, view.origin.y + pixels(BEYOND)),
        ]);
        let mut shapes = self.table(view, half);
        shapes.extend([
            shape(Style::Coat, arc(radius - depth, shown - depth)),
            shape(Style::CuttingCircle, arc(radius, shown)),
            shape(Style::Centre, middle),
        ]);
        shapes
    }

    /// The wood and the table under it, which opens where the head comes through.
    fn table(&self, view: &View, half: f64) -> Vec<Shape> {
        let (x, y) = (view.origin.x, view.origin.y);
        let across = Length::millimetres(half / view.scale);
        let wood = Path::new().rectangle(view, -across, Length::ZERO, across, self.wood);
        let radius = self.knife.head().radius();
        let open = chord(radius, self.height.axis)
            .map_or(0.0, |open| (open.in_millimetres() * view.scale).min(half));
        let solid = Path::new()
            .run(&[(x - half, y), (x - open, y)])
            .run(&[(x + open, y), (x + half, y)]);
        let level = Path::new().run(&[(x - open, y), (x + open, y)]);
        let mut shapes = vec![shape(Style::Slat, wood)];
        if open < half {
            shapes.push(shape(Style::Table, solid));
        }
        if open > 0.0 {
            shapes.push(shape(Style::Limit, level));
        }
        shapes
    }

    /// The height of the axis beside the whole head.
    fn axis(
        &self,
        view: &View,
        (left, rows): (f64, (f64, f64)),
        sheet: &Sheet,
    ) -> Vec<super::Dimension> {
        let mut band = Band::new(Side::Left, rows, left, sheet);
        let (table, axis) = (view.origin.y, view.y(self.height.axis));
        let spots = vec![Spot::between(End::at_edge(table), End::at_edge(axis))];
        place(&mut band, Size::HeadAxis, self.height.axis, spots, sheet);
        band.dimensions(left)
    }

    /// The heights beside the enlarged view.
    fn heights(
        &self,
        view: &View,
        (edge, half, rows): (f64, f64, (f64, f64)),
        sheet: &Sheet,
    ) -> Vec<super::Dimension> {
        let mut band = Band::new(Side::Right, rows, sheet.width - edge, sheet);
        let at = |height: Length, inside: f64| End {
            along: view.y(height),
            inside,
        };
        let KnifeHeight { tip, surface, .. } = *self.height;
        let spots = |one: End, other: End| vec![Spot::between(one, other)];
        let table = at(Length::ZERO, 0.0);
        // The groove cutter begins at the face of the wood; a shaping knife begins inside it.
        let begins = at(surface, if surface == self.wood { 0.0 } else { half });
        let depth = self.knife.depth();
        if self.is_over() {
            place(
                &mut band,
                Size::KnifeTip,
                tip,
                spots(table, at(tip, half)),
                sheet,
            );
            place(
                &mut band,
                Size::CutDepth,
                depth,
                spots(at(tip, half), begins),
                sheet,
            );
        } else {
            place(
                &mut band,
                Size::CutDepth,
                depth,
                spots(begins, at(tip, half)),
                sheet,
            );
            place(
                &mut band,
                Size::KnifeTip,
                tip,
                spots(table, at(tip, half)),
                sheet,
            );
        }
        let whole = spots(table, at(self.wood, 0.0));
        place(&mut band, Size::WoodOnTable, self.wood, whole, sheet);
        if surface != self.wood {
            place(
                &mut band,
                Size::FinishedFace,
                surface,
                spots(table, begins),
                sheet,
            );
        }
        band.dimensions(edge)
    }

    fn described(&self, unit: LengthUnit) -> String {
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        format!(
            "{}: a head of {} cutting diameter with its axis {} above the table, the tip of its knives {} above it, in wood {} thick. Drawn to scale {} and {}.",
            self.height.blade.label(),
            length(self.knife.head().diameter()),
            length(self.height.axis),
            length(self.height.tip),
            length(self.wood),
            self.scales[0].label(),
            self.scales[1].label()
        )
    }
}

/// The lowest and the highest point of head and wood, above the table.
fn reach(knife: &Knife, height: &KnifeHeight, wood: Length) -> (Length, Length) {
    let radius = knife.head().radius();
    let (low, high) = (height.axis - radius, height.axis + radius);
    (low.min(Length::ZERO), high.max(wood))
}

/// Half of what a circle about an axis takes of the table; nothing where it does not reach it.
fn chord(radius: Length, axis: Length) -> Option<Length> {
    let (radius, axis) = (radius.in_millimetres(), axis.in_millimetres());
    let square = radius * radius - axis * axis;
    (square > 0.0).then(|| Length::millimetres(square.sqrt()))
}

/// The part of a circle about the origin that lies no deeper than `deep` from its lowest point (its
/// highest one with a sign of 1) and no farther across than `across`; nothing where it is empty.
fn arc(radius: Length, across: Length, deep: Length, sign: f64) -> Vec<Segment> {
    let deep = deep.min(radius);
    let Some(open) = chord(radius, radius - deep).filter(|_| deep > Length::ZERO) else {
        return Vec::new();
    };
    let run = open.min(across).in_millimetres() / radius.in_millimetres();
    let rise = (1.0 - run * run).max(0.0).sqrt() * sign;
    // Counter-clockwise: from the left below the axis, from the right above it.
    let side = |run: f64| Direction { x: run, y: rise };
    vec![Segment::Arc(Arc {
        centre: Point::AXIS,
        radius: radius.in_millimetres(),
        from: side(run * sign),
        to: side(-run * sign),
    })]
}

fn place(band: &mut Band, size: Size, length: Length, spots: Vec<Spot>, sheet: &Sheet) {
    band.place(Wanted {
        size,
        driving: false,
        sign: "",
        text: figure::length(length.in_millimetres(), sheet.unit),
        spots,
    });
}

fn shape(style: Style, path: Path) -> Shape {
    Shape {
        style,
        path: path.done(),
    }
}

fn pixels(millimetres: f64) -> f64 {
    millimetres * PIXELS_PER_MILLIMETRE
}
