//! A finished pencil on paper: from the side, its point enlarged, and looking at the point.

use super::axis::{LINE, on_sheet, text_width};
use super::paper::{PIXELS_PER_MILLIMETRE, Paper, Scale, ScaledDrawing};
use super::path::{Path, View};
use super::placement::{Band, End, Side, Spot, Wanted};
use super::{Dimension, Drawing, Label, Shape, Sheet, Size, Style};
use crate::figure;
use crate::finish::{FinishedPencil, Profile};
use crate::quantity::{Length, Point};
use crate::unit::LengthUnit;

/// Space round the views, px.
const MARGIN: f64 = 12.0;
/// Space between the enlarged point and the view beside it, px.
const BETWEEN: f64 = 40.0;
/// What is seen of the barrel behind the paint edge in the enlarged view, as a share of the point.
const BEHIND: f64 = 0.25;
/// A narrow line ends short of the outlines it runs to, mm (ISO 128: imaginary intersections).
const SHORT: f64 = 0.8;

/// Draws a finished pencil on a sheet of paper, each view at the largest standard scale (ISO 5455) at
/// which it fits across: from the side, towards the face of the imprint, with the tip on the left; the
/// point enlarged; and beside it the view from the tip (first angle projection, ISO 5456-2), towards
/// which the coat is one ring. Dimensions after ISO 129-1 give where lead and paint begin, the room of
/// the imprint, the dip and the length; those that find no room are left out.
///
/// ```
/// use solver::{BarrelDraft, FinishedPencil, LengthUnit, Paper, PaperSize, Shape, draw_pencil};
/// let draft = BarrelDraft::new("Office", Shape::Hexagonal);
/// let barrel = draft.check().unwrap();
/// let finish = draft.finish.check(&barrel).unwrap();
/// let pencil = FinishedPencil::new(barrel, finish, 0.41, 1.98);
/// let paper = Paper { size: PaperSize::A4, landscape: false };
/// let drawn = draw_pencil(&pencil, paper, LengthUnit::Millimetre);
/// assert_eq!(drawn.scale.label(), "1:1");
/// assert!(drawn.drawing.description.contains("sharpened to 22.0°"));
/// ```
#[must_use]
pub fn draw_pencil(pencil: &FinishedPencil, paper: Paper, unit: LengthUnit) -> ScaledDrawing {
    let width = paper.printable_width().in_millimetres() * PIXELS_PER_MILLIMETRE;
    let sheet = Sheet {
        width,
        row: 22.0,
        text: 44.0,
        unit,
    };
    let room = width - 2.0 * MARGIN;
    let on_paper = |pixels: f64| Length::millimetres(pixels / PIXELS_PER_MILLIMETRE);
    let mut drawn = Drawn {
        pencil,
        profile: pencil.profile(),
        sheet,
        shapes: Vec::new(),
        dimensions: Vec::new(),
        labels: Vec::new(),
    };
    let length = pencil.barrel().length();
    let whole = scale_for(length, on_paper(room));
    let under = drawn.whole(whole, MARGIN);

    let shown = (pencil.paint_to() * (1.0 + BEHIND)).min(length);
    let across = drawn.height();
    let both = shown + across;
    let enlarged = scale_for(both, on_paper(room - BETWEEN));
    let end = drawn.point(enlarged, shown, under + MARGIN);
    let drawing = Drawing {
        width,
        height: end + MARGIN,
        shapes: drawn.shapes,
        dimensions: drawn.dimensions,
        labels: drawn.labels,
        handles: Vec::new(),
        unplaced: Vec::new(),
        description: pencil.described(unit),
    };
    ScaledDrawing {
        drawing,
        scale: whole,
    }
}

/// The scale of a view; no pencil is so long that none would do.
fn scale_for(size: Length, room: Length) -> Scale {
    Scale::of_a_view(size, room).unwrap_or(Scale::FULL)
}

struct Drawn<'a> {
    pencil: &'a FinishedPencil,
    profile: Profile,
    sheet: Sheet,
    shapes: Vec<Shape>,
    dimensions: Vec<Dimension>,
    labels: Vec<Label>,
}

/// A view from the side: where the tip lies on the sheet, pixels per millimetre, and what is seen, mm.
#[derive(Clone, Copy)]
struct SideView {
    tip: (f64, f64),
    scale: f64,
    end: f64,
}

impl SideView {
    fn x(&self, along: f64) -> f64 {
        self.tip.0 + along.min(self.end) * self.scale
    }

    fn at(&self, (along, height): (f64, f64)) -> (f64, f64) {
        (self.x(along), self.tip.1 - height * self.scale)
    }
}

impl Drawn<'_> {
    /// How far the profile reaches over and under the axis, mm.
    fn reach(&self) -> (f64, f64) {
        let heights = || self.profile.contour.iter().map(|(_, height)| *height);
        (
            heights().fold(0.0, f64::max),
            -heights().fold(0.0, f64::min),
        )
    }

    fn height(&self) -> Length {
        // The view from the tip is as wide as the pencil is deep behind its profile.
        let outline = self.pencil.finished().turned(self.pencil.turn_to_reader());
        let (up, down) = self.reach();
        outline
            .extents()
            .width()
            .max(Length::millimetres(up + down))
    }

    fn add(&mut self, style: Style, path: Path) {
        let path = path.done();
        if !path.is_empty() {
            self.shapes.push(Shape { style, path });
        }
    }

    /// The whole pencil under a place, px down the sheet; returns where it ends.
    fn whole(&mut self, scale: Scale, top: f64) -> f64 {
        let length = self.pencil.barrel().length().in_millimetres();
        let pixels = scale.factor() * PIXELS_PER_MILLIMETRE;
        let (up, down) = self.reach();
        let left = (self.sheet.width - length * pixels) / 2.0;
        let imprint = self.pencil.imprint();
        let [from, to] = [imprint.from, imprint.to].map(Length::in_millimetres);
        let limits = (2.0, self.sheet.width - 2.0);
        let mut above = Band::new(Side::Above, limits, f64::INFINITY, &self.sheet);
        let view_at = |y: f64| SideView {
            tip: (left, y),
            scale: pixels,
            end: length,
        };
        let flat = view_at(0.0);
        if imprint.has_room() {
            let spots = vec![span(&flat, from, to)];
            self.want(&mut above, Size::Imprint, to - from, spots);
        }
        let dip = self.pencil.dip().in_millimetres();
        if dip > 0.0 {
            self.want(
                &mut above,
                Size::Dip,
                dip,
                vec![span(&flat, length - dip, length)],
            );
        }
        let start = top + above.depth();
        let view = view_at(start + up * pixels);
        let bottom = view.tip.1 + down * pixels;
        let mut below = Band::new(Side::Below, limits, f64::INFINITY, &self.sheet);
        self.want(
            &mut below,
            Size::PencilLength,
            length,
            vec![span(&flat, 0.0, length)],
        );
        self.paint(&view);
        self.imprint(&view);
        self.dimensions.extend(above.dimensions(start));
        self.dimensions.extend(below.dimensions(bottom));
        let y = bottom + below.depth() + MARGIN + LINE / 2.0;
        self.label(
            self.sheet.width / 2.0,
            y,
            format!("Side, {}", scale.label()),
        );
        y + LINE / 2.0
    }

    /// The point and the view from the tip, both enlarged, under a place; returns where they end.
    fn point(&mut self, scale: Scale, shown: Length, top: f64) -> f64 {
        let pixels = scale.factor() * PIXELS_PER_MILLIMETRE;
        let shown = shown.in_millimetres();
        let (up, down) = self.reach();
        let across = self.height().in_millimetres();
        let used = (shown + across) * pixels + BETWEEN;
        let left = (self.sheet.width - used) / 2.0;
        let view_at = |y: f64| SideView {
            tip: (left, y),
            scale: pixels,
            end: shown,
        };
        let flat = view_at(0.0);
        let limits = (2.0, flat.x(shown) + BETWEEN / 2.0);
        let [lead, paint_from, paint_to] = [
            self.pencil.lead_end(),
            self.pencil.paint_from(),
            self.pencil.paint_to(),
        ]
        .map(Length::in_millimetres);
        let mut above = Band::new(Side::Above, limits, f64::INFINITY, &self.sheet);
        // A round pencil has one paint edge.
        if paint_to - paint_from > Length::SLACK.in_millimetres() {
            let spots = vec![span(&flat, 0.0, paint_from)];
            self.want(&mut above, Size::PaintFrom, paint_from, spots);
        }
        let start = top + above.depth();
        let view = view_at(start + up * pixels);
        let bottom = view.tip.1 + down * pixels;
        self.paint(&view);
        let edge = |height: f64| view.at((shown, height));
        let ends = [edge(up), edge(-down)];
        if shown < self.pencil.barrel().length().in_millimetres() {
            self.add(Style::Break, Path::new().run(&ends));
        }
        let mut below = Band::new(Side::Below, limits, f64::INFINITY, &self.sheet);
        for (size, place) in [(Size::BareLead, lead), (Size::PaintTo, paint_to)] {
            self.want(&mut below, size, place, vec![span(&view, 0.0, place)]);
        }
        self.dimensions.extend(above.dimensions(start));
        self.dimensions.extend(below.dimensions(bottom));

        let middle = left + shown * pixels + BETWEEN + across * pixels / 2.0;
        self.looking_at_the_point(pixels, (middle, view.tip.1));
        let y = bottom + below.depth() + MARGIN + LINE / 2.0;
        let angle = figure::angle(self.pencil.half_angle().in_degrees() * 2.0);
        let told = format!("Point of {angle}, {}", scale.label());
        self.label(left + shown * pixels / 2.0, y, told);
        self.label(middle, y, "Looking at the point".to_owned());
        y + LINE / 2.0
    }

    /// The outlines and the lead as they are seen from the tip: mirrored, as the reader looks along the
    /// pencil.
    fn looking_at_the_point(&mut self, scale: f64, (x, y): (f64, f64)) {
        let turn = self.pencil.turn_to_reader();
        let [finished, bare] = [self.pencil.finished(), self.pencil.bare()]
            .map(|outline| outline.turned(turn).mirrored());
        let extents = finished.extents();
        let shift = (extents.right - extents.left).in_millimetres() / 2.0 * scale;
        let view = View {
            scale,
            origin: Point { x: x - shift, y },
        };
        let radius = self.pencil.lead_radius();
        let (coat, lead) = (self.pencil.coat_colour(), self.pencil.lead_colour());
        self.add(Style::Filled(coat), Path::new().outline(&view, &finished));
        self.add(Style::BareWood, Path::new().outline(&view, &bare));
        self.add(Style::Filled(lead), Path::new().circle(&view, radius));
        self.add(Style::Coat, Path::new().outline(&view, &bare));
        self.add(Style::Coat, Path::new().circle(&view, radius));
        self.add(Style::Pencil, Path::new().outline(&view, &finished));
        let cross = |reach: Length| {
            Path::new()
                .run(&[
                    (view.x(-reach), view.y(Length::ZERO)),
                    (view.x(reach), view.y(Length::ZERO)),
                ])
                .run(&[
                    (view.x(Length::ZERO), view.y(reach)),
                    (view.x(Length::ZERO), view.y(-reach)),
                ])
        };
        self.add(Style::Centre, cross(radius * 1.4));
    }

    /// The pencil from the side: colours, then lines.
    fn paint(&mut self, view: &SideView) {
        let pencil = self.pencil;
        let points = |points: &[(f64, f64)]| -> Vec<(f64, f64)> {
            points.iter().map(|point| view.at(*point)).collect()
        };
        let contour = points(&self.profile.contour);
        let wood = points(&self.profile.wood);
        let radius = pencil.lead_radius().in_millimetres();
        let lead_end = pencil.lead_end().in_millimetres();
        let lead = points(&[(0.0, 0.0), (lead_end, radius), (lead_end, -radius)]);
        self.add(
            Style::Filled(pencil.coat_colour()),
            Path::new().polygon(&contour),
        );
        let length = pencil.barrel().length().in_millimetres();
        let dip_from = length - pencil.dip().in_millimetres();
        let (up, down) = self.reach();
        if dip_from < view.end {
            let dip = points(&[
                (dip_from, up),
                (length, up),
                (length, -down),
                (dip_from, -down),
            ]);
            self.add(
                Style::Filled(pencil.dip_colour()),
                Path::new().polygon(&dip),
            );
        }
        self.add(Style::BareWood, Path::new().polygon(&wood));
        self.add(
            Style::Filled(pencil.lead_colour()),
            Path::new().polygon(&lead),
        );
        let inside = |height: f64| -down + 0.02 < height && height < up - 0.02;
        let corners: Vec<(f64, f64, bool)> = self.profile.corners.clone();
        let mut lines = [Path::new(), Path::new()];
        for (from, height, sharp) in corners {
            let from = if sharp { from } else { from + SHORT };
            let to = if sharp { view.end } else { view.end - SHORT };
            if inside(height) && from < to {
                let [first, second] = lines;
                let line = [view.at((from, height)), view.at((to, height))];
                lines = if sharp {
                    [first.run(&line), second]
                } else {
                    [first, second.run(&line)]
                };
            }
        }
        let [mut thick, thin] = lines;
        if let Some(edge) = wood.get(1..) {
            thick = thick.run(edge);
        }
        thick = thick.run(&lead[1..]).polygon(&contour);
        if pencil.dip() > Length::ZERO && dip_from < view.end {
            thick = thick.run(&points(&[(dip_from, up), (dip_from, -down)]));
        }
        self.add(Style::Coat, thin);
        self.add(Style::Pencil, thick);
        let beyond = 3.0 / view.scale;
        let axis = [(-beyond, 0.0), (view.end, 0.0)].map(|point| {
            let (_, y) = view.at(point);
            (view.tip.0 + point.0 * view.scale, y)
        });
        self.add(Style::Centre, Path::new().run(&axis));
    }

    /// The room of the imprint with its text.
    fn imprint(&mut self, view: &SideView) {
        let imprint = self.pencil.imprint();
        if !imprint.has_room() {
            return;
        }
        let [from, to] = [imprint.from, imprint.to].map(Length::in_millimetres);
        // What lies counter-clockwise on a face that is turned to the left lies lower.
        let [high, low] = imprint.edges().map(|edge| -edge.in_millimetres());
        let middle = f64::midpoint(low, high);
        let corners = [(from, low), (to, low), (to, high), (from, high)];
        self.add(
            Style::Imprint,
            Path::new().polygon(&corners.map(|corner| view.at(corner))),
        );
        let (x, y) = view.at((f64::midpoint(from, to), middle));
        if text_width(&imprint.text) <= (to - from) * view.scale {
            self.labels.push(Label {
                x,
                y,
                text: imprint.text,
            });
        }
    }

    fn want(&self, band: &mut Band, size: Size, length: f64, spots: Vec<Spot>) {
        band.place(Wanted {
            size,
            driving: false,
            sign: "",
            text: figure::length(length, self.sheet.unit),
            spots,
        });
    }

    fn label(&mut self, x: f64, y: f64, text: String) {
        let label = Label { x, y, text };
        self.labels.push(on_sheet(label, self.sheet.width));
    }
}

/// Between two places along a pencil.
fn span(view: &SideView, from: f64, to: f64) -> Spot {
    Spot::between(End::at_edge(view.x(from)), End::at_edge(view.x(to)))
}
