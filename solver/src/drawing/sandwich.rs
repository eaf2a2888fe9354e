//! The cross-section of a sandwich with its pencils, and an enlarged detail at the datum edge.

use super::barrel::lowest_corner;
use super::path::{Path, View};
use super::placement::{Band, Side, Target, Wanted};
use super::{Dimension, Drawing, Label, Shape, Sheet, Size, Style, describe};
use crate::figure;
use crate::layout::{Layout, Outcome, Rule, Setup, WoodClass};
use crate::quantity::{Length, Point};
use crate::rules::PitchRule;

/// Space round a view, px.
const MARGIN: f64 = 12.0;
/// Room for the groove numbers over the slats, px.
const NUMBERS: f64 = 18.0;
/// Pencils that the detail shows.
const IN_DETAIL: usize = 2;
/// The detail is drawn no higher than this, px.
const MOST_DETAIL_HEIGHT: f64 = 260.0;

/// Draws a layout for a sheet.
///
/// The upper view shows the whole width with groove numbers, first groove, pitch, slat width
/// and thicknesses; the detail enlarges the first pencils at the datum edge with the sizes of
/// the barrel, lead, land, edge and planing. Slats are drawn at their nominal sizes. Where the
/// layout does not fit, what can be drawn is drawn, and pencils that the slats cannot give
/// are marked as [`Style::Clash`].
#[must_use]
pub fn draw_sandwich(setup: &Setup<'_>, layout: &Layout, sheet: &Sheet) -> Drawing {
    let sheet = Sheet {
        width: sheet.width.max(Sheet::LEAST_WIDTH),
        ..*sheet
    };
    let mut artist = Artist {
        setup,
        layout,
        sheet,
        shapes: Vec::new(),
        dimensions: Vec::new(),
        labels: Vec::new(),
        unplaced: Vec::new(),
    };
    let strip_end = artist.strip(MARGIN);
    let end = artist.detail(strip_end + 2.0 * MARGIN);
    Drawing {
        width: sheet.width,
        height: end + MARGIN,
        shapes: artist.shapes,
        dimensions: artist.dimensions,
        labels: artist.labels,
        unplaced: artist.unplaced,
        description: describe::sandwich(setup, layout, sheet.unit),
    }
}

struct Artist<'a> {
    setup: &'a Setup<'a>,
    layout: &'a Layout,
    sheet: Sheet,
    shapes: Vec<Shape>,
    dimensions: Vec<Dimension>,
    labels: Vec<Label>,
    unplaced: Vec<Size>,
}

impl Artist<'_> {
    /// The whole width, from `top` down; returns where it ends.
    fn strip(&mut self, top: f64) -> f64 {
        let Setup {
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let left = self.sheet.text + 3.0 * MARGIN;
        let width = upper.width().max(lower.width());
        let scale = (self.sheet.width - left - 2.0 * MARGIN) / width.in_millimetres();
        let across = |x: Length| left + x.in_millimetres() * scale;
        let limits = (left - MARGIN, self.sheet.width - 2.0);

        let centres = self.centres();
        let mut above = Band::new(Side::Above, limits, &self.sheet);
        if self.layout.across() > 0 {
            let span = (across(Length::ZERO), across(centres[0]));
            self.want(
                &mut above,
                Size::FirstGroove,
                false,
                centres[0],
                span,
                Target::Inside(NUMBERS),
            );
        }
        if let [first, second, ..] = centres[..] {
            let given = matches!(rules.spacing, PitchRule::Given(_));
            let span = (across(first), across(second));
            self.want(
                &mut above,
                Size::Pitch,
                given,
                self.layout.pitch(),
                span,
                Target::Inside(NUMBERS),
            );
        }
        if upper.width() != lower.width() {
            let span = (across(Length::ZERO), across(upper.width()));
            self.want(
                &mut above,
                Size::TopWidth,
                true,
                upper.width(),
                span,
                Target::Inside(NUMBERS),
            );
        }
        let upper_edge = top + above.depth() + NUMBERS;
        let seam = upper_edge + upper.thickness().in_millimetres() * scale;
        let view = View {
            scale,
            origin: Point { x: left, y: seam },
        };
        let lower_edge = view.y(-lower.thickness());

        let mut below = Band::new(Side::Below, limits, &self.sheet);
        let span = (across(Length::ZERO), across(lower.width()));
        self.want(
            &mut below,
            Size::SlatWidth,
            true,
            lower.width(),
            span,
            Target::Inside(0.0),
        );

        let mut beside = Band::new(
            Side::Left,
            (upper_edge - NUMBERS, lower_edge + 2.0 * self.sheet.row),
            &self.sheet,
        );
        let halves = [
            (Size::TopThickness, upper.thickness(), (upper_edge, seam)),
            (Size::BottomThickness, lower.thickness(), (seam, lower_edge)),
        ];
        for (size, thickness, span) in halves {
            self.want(
                &mut beside,
                size,
                true,
                thickness,
                span,
                Target::Inside(0.0),
            );
        }

        self.paint(&view, &centres, width, Scene::Whole);
        self.number_grooves(&view, upper_edge - NUMBERS / 2.0);
        self.dimensions
            .extend(above.dimensions(upper_edge - NUMBERS));
        self.dimensions.extend(below.dimensions(lower_edge));
        self.dimensions.extend(beside.dimensions(left));
        (lower_edge + below.depth()).max(beside.end())
    }

    /// The first pencils at the datum edge, enlarged, from `top` down; returns where it ends.
    fn detail(&mut self, top: f64) -> f64 {
        let Setup {
            barrel,
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let finished = self.layout.finished().extents();
        let centres: Vec<Length> = self.centres().into_iter().take(IN_DETAIL).collect();
        let last = centres[centres.len() - 1];
        let width = upper.width().max(lower.width());
        // Half a land beyond the last pencil, so that its parting shows.
        let shown =
            (last + finished.right + (rules.land / 2.0).max(Length::millimetres(0.3))).min(width);
        let left = self.sheet.text + 3.0 * MARGIN;
        let room = self.sheet.width - left - self.sheet.text - 4.0 * MARGIN;
        let height = upper.thickness() + lower.thickness();
        let scale =
            (room / shown.in_millimetres()).min(MOST_DETAIL_HEIGHT / height.in_millimetres());
        let across = |x: Length| left + x.in_millimetres() * scale;
        let right = across(shown);
        let limits = (2.0, self.sheet.width - 2.0);
        let level = SizeAxis::of(self.setup);

        let mut above = Band::new(Side::Above, limits, &self.sheet);
        let pencil_top = rules.axis_height + finished.up;
        let to_pencil =
            Target::Inside((upper.thickness() - pencil_top).in_millimetres().max(0.0) * scale);
        let to_axis = Target::Inside(
            (upper.thickness() - rules.axis_height)
                .in_millimetres()
                .max(0.0)
                * scale,
        );
        let bare = self.layout.extents();
        if self.layout.across() > 0 {
            let span = (across(Length::ZERO), across(self.layout.datum_edge()));
            self.want(
                &mut above,
                Size::Edge,
                false,
                self.layout.datum_edge(),
                span,
                Target::Inside(0.0),
            );
        }
        if let [first, second] = centres[..] {
            let span = (across(first + bare.right), across(second - bare.left));
            let driving = matches!(rules.spacing, PitchRule::Closest);
            self.want(
                &mut above,
                Size::Land,
                driving,
                self.layout.parting(),
                span,
                to_axis,
            );
        }
        if level == SizeAxis::Level {
            let span = (
                across(centres[0] - finished.left),
                across(centres[0] + finished.right),
            );
            self.want(
                &mut above,
                Size::Barrel,
                true,
                barrel.size(),
                span,
                to_pencil,
            );
        }
        let name_height = self.sheet.row.min(24.0);
        let upper_edge = top + name_height + above.depth();
        let seam = upper_edge + upper.thickness().in_millimetres() * scale;
        let view = View {
            scale,
            origin: Point { x: left, y: seam },
        };
        let lower_edge = view.y(-lower.thickness());

        let beside_limits = (
            upper_edge - self.sheet.row - MARGIN,
            lower_edge + self.sheet.row + MARGIN,
        );
        let mut beside = Band::new(Side::Right, beside_limits, &self.sheet);
        let to_last = Target::Inside((shown - last).in_millimetres() * scale);
        if level == SizeAxis::Upright {
            let axis = rules.axis_height;
            let span = (view.y(axis + finished.up), view.y(axis - finished.down));
            self.want(
                &mut beside,
                Size::Barrel,
                true,
                barrel.size(),
                span,
                to_last,
            );
        }
        let (over, under) = (rules.axis_height + bare.up, bare.down - rules.axis_height);
        for (size, planed, span) in [
            (
                Size::TopPlaning,
                upper.thickness() - over,
                (upper_edge, view.y(over)),
            ),
            (
                Size::BottomPlaning,
                lower.thickness() - under,
                (view.y(-under), lower_edge),
            ),
        ] {
            if planed > Length::ZERO {
                self.want(&mut beside, size, false, planed, span, to_last);
            }
        }

        let mut below = Band::new(Side::Below, limits, &self.sheet);
        self.leaders(&mut below, &view, last);
        if level == SizeAxis::Oblique {
            self.unplaced.push(Size::Barrel);
        }

        self.paint(&view, &centres, shown, Scene::Detail);
        self.labels.push(Label {
            x: (left + right) / 2.0,
            y: top + name_height / 2.0,
            text: "Detail at the datum edge".to_owned(),
        });
        self.dimensions.extend(above.dimensions(upper_edge));
        self.dimensions.extend(beside.dimensions(right));
        self.dimensions.extend(below.dimensions(lower_edge));
        (lower_edge + below.depth()).max(beside.end())
    }

    /// The lead and a corner of the last pencil shown, by leaders from below.
    fn leaders(&mut self, below: &mut Band, view: &View, last: Length) {
        let Setup { barrel, rules, .. } = *self.setup;
        let pencil = view.at(last, rules.axis_height);
        let radius = barrel.lead_diameter() / 2.0;
        let slant = radius * std::f64::consts::FRAC_1_SQRT_2;
        let tip = (pencil.x(-slant), pencil.y(-slant));
        self.want(
            below,
            Size::Lead,
            true,
            barrel.lead_diameter(),
            (tip.0, tip.0),
            Target::Point(tip.0, tip.1),
        );
        match lowest_corner(self.layout.finished()) {
            Some(corner) => {
                let tip = (
                    pencil.x(Length::millimetres(corner.x)),
                    pencil.y(Length::millimetres(corner.y)),
                );
                let at = (tip.0, tip.0);
                self.want(
                    below,
                    Size::CornerRadius,
                    true,
                    barrel.corner_radius(),
                    at,
                    Target::Point(tip.0, tip.1),
                );
            }
            // Sharp corners have no arc to point at; the radius can still be asked for.
            None if barrel.shape().has_corners() => self.unplaced.push(Size::CornerRadius),
            None => {}
        }
    }

    /// Groove centres; where not even one fits, the one that was tried.
    fn centres(&self) -> Vec<Length> {
        let laid: Vec<Length> = self
            .layout
            .grooves()
            .iter()
            .map(|groove| groove.centre)
            .collect();
        if laid.is_empty() {
            vec![self.layout.datum_edge() + self.layout.extents().left]
        } else {
            laid
        }
    }

    fn want(
        &mut self,
        band: &mut Band,
        size: Size,
        driving: bool,
        length: Length,
        span: (f64, f64),
        target: Target,
    ) {
        let sign = match size {
            Size::Lead => "⌀",
            Size::CornerRadius => "R",
            Size::Barrel if self.setup.barrel.shape().size_is_diameter() => "⌀",
            _ => "",
        };
        let text = figure::length(length.in_millimetres(), self.sheet.unit);
        let placed = band.place(Wanted {
            size,
            driving,
            sign,
            text,
            from: span.0,
            to: span.1,
            target,
        });
        if !placed && driving {
            self.unplaced.push(size);
        }
    }

    fn paint(&mut self, view: &View, centres: &[Length], shown: Length, scene: Scene) {
        let Setup {
            barrel,
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let layout = self.layout;
        let (top_end, bottom_end) = (upper.width().min(shown), lower.width().min(shown));
        self.add(
            Style::Slat,
            Path::new().rectangle(view, Length::ZERO, Length::ZERO, top_end, upper.thickness()),
        );
        self.add(
            Style::Slat,
            Path::new().rectangle(
                view,
                Length::ZERO,
                -lower.thickness(),
                bottom_end,
                Length::ZERO,
            ),
        );
        if layout.fits() {
            self.paint_waste(view, centres, top_end, bottom_end, scene);
        }
        let clash = layout.checks().iter().any(|check| {
            let sizes = matches!(
                check.rule,
                Rule::Width | Rule::Edge | Rule::Land | Rule::TopThickness | Rule::BottomThickness
            );
            sizes && check.outcome == Outcome::Failed
        });
        let seam_end = top_end.min(bottom_end);
        for &centre in centres {
            let pencil = view.at(centre, rules.axis_height);
            let level = -rules.axis_height;
            self.add(
                Style::TopHalf,
                Path::new().above(&pencil, layout.bare(), level),
            );
            self.add(
                Style::BottomHalf,
                Path::new().below(&pencil, layout.bare(), level),
            );
        }
        self.add(
            Style::Seam,
            Path::new().run(&[
                (view.x(Length::ZERO), view.origin.y),
                (view.x(seam_end), view.origin.y),
            ]),
        );
        for &centre in centres {
            let pencil = view.at(centre, rules.axis_height);
            self.add(
                Style::Groove,
                Path::new().groove(&pencil, layout.groove_shape()),
            );
            self.add(
                Style::Lead,
                Path::new().circle(&pencil, barrel.lead_diameter() / 2.0),
            );
            if scene == Scene::Detail && barrel.coat() > Length::ZERO {
                self.add(Style::Coat, Path::new().outline(&pencil, layout.finished()));
            }
            let outline = Path::new().outline(&pencil, layout.bare());
            self.add(if clash { Style::Clash } else { Style::Pencil }, outline);
            let beyond = Length::millimetres(4.0 / view.scale);
            let (over, under) = (upper.thickness() + beyond, -lower.thickness() - beyond);
            let (x, middle) = (view.x(centre), pencil.origin.y);
            self.add(
                Style::Centre,
                Path::new().run(&[(x, view.y(over)), (x, view.y(under))]),
            );
            if scene == Scene::Detail {
                let reach = layout.extents();
                let (from, to) = (
                    view.x(centre - reach.left) - 4.0,
                    view.x(centre + reach.right) + 4.0,
                );
                self.add(
                    Style::Centre,
                    Path::new().run(&[(from, middle), (to, middle)]),
                );
            }
        }
        if scene == Scene::Detail && shown < upper.width().max(lower.width()) {
            let (x, over, under) = (
                view.x(shown),
                view.y(upper.thickness()),
                view.y(-lower.thickness()),
            );
            self.add(Style::Break, break_line(x, over - 6.0, under + 6.0));
        }
    }

    /// The classes of waste, for a layout that fits.
    fn paint_waste(
        &mut self,
        view: &View,
        centres: &[Length],
        top_end: Length,
        bottom_end: Length,
        scene: Scene,
    ) {
        let Setup {
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let extents = self.layout.extents();
        let (over, under) = (
            rules.axis_height + extents.up,
            rules.axis_height - extents.down,
        );
        let (first, last) = (
            centres[0] - extents.left,
            centres[centres.len() - 1] + extents.right,
        );
        let faces = Path::new()
            .rectangle(view, Length::ZERO, over, top_end, upper.thickness())
            .rectangle(view, Length::ZERO, -lower.thickness(), bottom_end, under);
        self.add(Style::Wood(WoodClass::Faces), faces);
        let mut edges = Path::new().rectangle(view, Length::ZERO, under, first, over);
        let mut parting = Path::new();
        match scene {
            Scene::Whole => {
                edges = edges
                    .rectangle(view, last, Length::ZERO, top_end, over)
                    .rectangle(view, last, under, bottom_end, Length::ZERO);
            }
            Scene::Detail => {
                parting = parting.rectangle(view, last, under, top_end.min(bottom_end), over)
            }
        }
        for pair in centres.windows(2) {
            parting = parting.rectangle(
                view,
                pair[0] + extents.right,
                under,
                pair[1] - extents.left,
                over,
            );
        }
        self.add(Style::Wood(WoodClass::Edges), edges);
        self.add(Style::Wood(WoodClass::Parting), parting);
        let mut corners = Path::new();
        for &centre in centres {
            let pencil = view.at(centre, rules.axis_height);
            corners = corners.rectangle(
                view,
                centre - extents.left,
                under,
                centre + extents.right,
                over,
            );
            corners = corners.outline(&pencil, self.layout.bare());
        }
        self.add(Style::Wood(WoodClass::Corners), corners);
    }

    /// Numbers over the grooves: all, or the first, the last and every fifth where they crowd.
    fn number_grooves(&mut self, view: &View, y: f64) {
        let crowded = self.layout.pitch().in_millimetres() * view.scale < 16.0;
        let last = self.layout.across();
        for groove in self.layout.grooves() {
            if !crowded
                || groove.number == 1
                || groove.number == last
                || (groove.number % 5 == 0 && groove.number + 2 < last)
            {
                self.labels.push(Label {
                    x: view.x(groove.centre),
                    y,
                    text: groove.number.to_string(),
                });
            }
        }
    }

    fn add(&mut self, style: Style, path: Path) {
        let path = path.done();
        if !path.is_empty() {
            self.shapes.push(Shape { style, path });
        }
    }
}

/// Which of the two views is painted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Scene {
    Whole,
    Detail,
}

/// How the size that defines a barrel lies in the cross-section.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum SizeAxis {
    Level,
    Upright,
    Oblique,
}

impl SizeAxis {
    fn of(setup: &Setup<'_>) -> Self {
        let size = setup.barrel.size();
        let finished = setup.barrel.finished(setup.turn).extents();
        let reads = |extent: Length| (extent - size).abs() <= Length::SLACK;
        if reads(finished.height()) {
            Self::Upright
        } else if reads(finished.width()) {
            Self::Level
        } else {
            Self::Oblique
        }
    }
}

/// The zigzag that ends a partial view.
fn break_line(x: f64, from: f64, to: f64) -> Path {
    let middle = (from + to) / 2.0;
    Path::new().run(&[
        (x, from),
        (x, middle - 8.0),
        (x - 5.0, middle - 3.0),
        (x + 5.0, middle + 3.0),
        (x, middle + 8.0),
        (x, to),
    ])
}
