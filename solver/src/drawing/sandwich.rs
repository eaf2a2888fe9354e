//! The cross-section of a sandwich with its pencils, and an enlarged detail at the datum edge.

mod good_map;
mod painting;
mod pair;
mod room;
mod true_scale;

pub use good_map::draw_good_map;
pub use pair::draw_pair;
pub use true_scale::draw_to_scale;

use super::barrel::{corner_spots, lead_spots};
use super::handle::{self, Grip, Handle, Rail};
use super::path::View;
use super::placement::{Band, CLEAR, CORNER, End, Side, Spot, Wanted};
use super::{Dimension, Drawing, Label, Shape, Sheet, Size, describe};
use crate::figure;
use crate::layout::{Layout, Setup};
use crate::quantity::{Length, Point};
use crate::rules::PitchRule;
use crate::slat::Slat;
use painting::Scene;

/// Space round a view, px.
const MARGIN: f64 = 12.0;
/// Room for the groove numbers over the slats, px.
const NUMBERS: f64 = 18.0;
/// Pencils that the detail shows where there is room for no more, and at most.
const LEAST_IN_DETAIL: usize = 2;
const MOST_IN_DETAIL: usize = 4;
/// A view is drawn no higher than this, px.
const MOST_HEIGHT: f64 = 260.0;

/// Draws a layout for a sheet.
///
/// The upper view shows the whole width with groove numbers, first groove, pitch, slat width
/// and thicknesses; the detail enlarges the first pencils at the datum edge with the sizes of
/// the barrel, lead, land, edge and planing. Slats are drawn at their nominal sizes. Where the
/// layout does not fit, what can be drawn is drawn, and pencils that the slats cannot give
/// are marked as [`Style::Clash`](super::Style::Clash).
///
/// Under the upper view hangs a gauge for the pitch, from the first groove to the second; under
/// the detail one for the edge allowance, which is the line that no pencil crosses. They are
/// there whatever fits, so that what has been slid too far can be slid back.
#[must_use]
pub fn draw_sandwich(setup: &Setup<'_>, layout: &Layout, sheet: &Sheet) -> Drawing {
    let sheet = sheet.usable();
    let mut artist = Artist::new(setup, layout, sheet);
    let strip_end = artist.strip(MARGIN);
    let end = artist.detail(strip_end + 2.0 * MARGIN);
    let description = describe::sandwich(setup, layout, sheet.unit);
    artist.done(end + MARGIN, description)
}

struct Artist<'a> {
    setup: &'a Setup<'a>,
    layout: &'a Layout,
    sheet: Sheet,
    shapes: Vec<Shape>,
    dimensions: Vec<Dimension>,
    labels: Vec<Label>,
    handles: Vec<Handle>,
    unplaced: Vec<Size>,
}

impl<'a> Artist<'a> {
    const fn new(setup: &'a Setup<'a>, layout: &'a Layout, sheet: Sheet) -> Self {
        Self {
            setup,
            layout,
            sheet,
            shapes: Vec::new(),
            dimensions: Vec::new(),
            labels: Vec::new(),
            handles: Vec::new(),
            unplaced: Vec::new(),
        }
    }

    /// The drawing, which ends at a height of the sheet.
    fn done(self, height: f64, description: String) -> Drawing {
        Drawing {
            width: self.sheet.width,
            height,
            shapes: self.shapes,
            dimensions: self.dimensions,
            labels: self.labels,
            handles: self.handles,
            unplaced: self.unplaced,
            description,
        }
    }

    /// Where both views begin; the thicknesses and the planing stand left of it.
    fn left(&self) -> f64 {
        self.sheet.text + CLEAR + MARGIN
    }

    /// The whole width, from `top` down; returns where it ends.
    fn strip(&mut self, top: f64) -> f64 {
        let Setup {
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let left = self.left();
        let width = upper.width().max(lower.width());
        let centres = self.centres();
        let overhang = self.overhang(&centres, width);
        let scale = ((self.sheet.width - left - 2.0 * MARGIN)
            / overhang.across(width).in_millimetres())
        .min(MOST_HEIGHT / overhang.upright(upper, lower).in_millimetres());
        let pixels = |length: Length| length.in_millimetres() * scale;
        let origin = left + pixels(overhang.left);
        let across = |x: Length| origin + pixels(x);
        let limits = (left - CORNER, self.sheet.width - 2.0);

        // Lines at a groove begin over its number, lines at an edge on the slat.
        let groove = |centre| End::at_edge(across(centre));
        let slat_edge = |x| End {
            along: across(x),
            inside: NUMBERS,
        };
        // The lines of the top width, which stands outside the rest, pass between the texts.
        let alike = upper.width() == lower.width();
        let inner_limits = if alike {
            limits
        } else {
            (origin + CLEAR, limits.1.min(across(upper.width()) - CLEAR))
        };
        let mut above = Band::new(Side::Above, inner_limits, f64::INFINITY, &self.sheet);
        if self.layout.across() > 0 {
            let spots = vec![Spot::between(slat_edge(Length::ZERO), groove(centres[0]))];
            self.want(&mut above, Size::FirstGroove, false, centres[0], spots);
        }
        if centres.len() > 1 {
            let given = matches!(rules.spacing, PitchRule::Given(_));
            let pairs = centres.windows(2);
            let spots = pairs
                .map(|pair| Spot::between(groove(pair[0]), groove(pair[1])))
                .collect();
            self.want(&mut above, Size::Pitch, given, self.layout.pitch(), spots);
        }
        let mut outside = Band::new(Side::Above, limits, f64::INFINITY, &self.sheet);
        if !alike {
            let end = |x| End {
                along: across(x),
                inside: NUMBERS + pixels(overhang.above) + above.depth(),
            };
            let spots = vec![Spot::between(end(Length::ZERO), end(upper.width()))];
            self.want(&mut outside, Size::TopWidth, true, upper.width(), spots);
        }
        let numbers = top + outside.depth() + above.depth();
        let upper_edge = numbers + NUMBERS + pixels(overhang.above);
        let seam = upper_edge + pixels(upper.thickness());
        let view = View {
            scale,
            origin: Point { x: origin, y: seam },
        };
        let lower_edge = view.y(-lower.thickness());
        let part_end = lower_edge + pixels(overhang.below);
        let lowest = part_end + handle::depth(self.sheet.row);

        let mut below = Band::new(Side::Below, limits, f64::INFINITY, &self.sheet);
        let end = |x| End {
            along: across(x),
            inside: lowest - lower_edge,
        };
        let spots = vec![Spot::between(end(Length::ZERO), end(lower.width()))];
        self.want(&mut below, Size::SlatWidth, true, lower.width(), spots);

        // Each thickness stands on its own side of the glue plane, so that both find room.
        let room = left - 2.0;
        let end = |along| End {
            along,
            inside: pixels(overhang.left),
        };
        let heights = (2.0, seam - CORNER);
        let mut upper_half = Band::new(Side::Left, heights, room, &self.sheet);
        let spots = vec![Spot::between(end(upper_edge), end(seam))];
        self.want(
            &mut upper_half,
            Size::TopThickness,
            true,
            upper.thickness(),
            spots,
        );
        let heights = (seam + CORNER, f64::INFINITY);
        let mut lower_half = Band::new(Side::Left, heights, room, &self.sheet);
        let spots = vec![Spot::between(end(seam), end(lower_edge))];
        self.want(
            &mut lower_half,
            Size::BottomThickness,
            true,
            lower.thickness(),
            spots,
        );

        self.paint(&view, &centres, width, Scene::Whole);
        self.number_grooves(&view, numbers + NUMBERS / 2.0);
        let rail = Rail {
            zero: across(centres[0]),
            scale,
            ends: (left, across(width + overhang.right)),
            heights: (numbers, part_end),
        };
        let pitch = Handle::new(Grip::Pitch, self.layout.pitch(), rail, self.sheet);
        self.handles.push(pitch);
        self.dimensions.extend(above.dimensions(numbers));
        self.dimensions
            .extend(outside.dimensions(numbers - above.depth()));
        self.dimensions.extend(below.dimensions(lowest));
        self.dimensions.extend(upper_half.dimensions(left));
        self.dimensions.extend(lower_half.dimensions(left));
        (lowest + below.depth()).max(lower_half.end())
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
        let size_axis = SizeAxis::of(self.setup);
        let left = self.left();
        let beside = match size_axis {
            SizeAxis::Upright => self.sheet.text + CLEAR + MARGIN / 4.0,
            SizeAxis::Level | SizeAxis::Oblique => 2.0 * MARGIN,
        };
        let room = self.sheet.width - left - beside;
        let centres = self.centres_in_detail(room);
        let last = centres[centres.len() - 1];
        let shown = self.shown_after(last);
        let overhang = self.overhang(&centres, shown);
        let scale = (room / overhang.across(shown).in_millimetres())
            .min(MOST_HEIGHT / overhang.upright(upper, lower).in_millimetres());
        let pixels = |length: Length| length.in_millimetres() * scale;
        let origin = left + pixels(overhang.left);
        let across = |x: Length| origin + pixels(x);
        let right = across(shown + overhang.right);
        let limits = (left - CORNER, self.sheet.width - 2.0);

        let mut above = Band::new(Side::Above, limits, f64::INFINITY, &self.sheet);
        let bare = self.layout.extents();
        // From above, lines begin at the height of the lead axis.
        let upper_end = upper.thickness() + overhang.above;
        let upright = |x| End {
            along: across(x),
            inside: pixels((upper_end - rules.axis_height).max(Length::ZERO)),
        };
        if let [first, second, ..] = centres[..] {
            let driving = matches!(rules.spacing, PitchRule::Closest);
            let spots = vec![Spot::between(
                upright(first + bare.right),
                upright(second - bare.left),
            )];
            self.want(
                &mut above,
                Size::Land,
                driving,
                self.layout.parting(),
                spots,
            );
        }
        if self.layout.across() > 0 {
            let edge = self.layout.datum_edge();
            let datum = End::at_edge(across(Length::ZERO));
            let spots = vec![Spot::between(datum, upright(edge))];
            self.want(&mut above, Size::Edge, false, edge, spots);
        }
        let name_height = self.sheet.row.min(24.0);
        let highest = top + name_height + above.depth();
        let upper_edge = highest + pixels(overhang.above);
        let seam = upper_edge + pixels(upper.thickness());
        let view = View {
            scale,
            origin: Point { x: origin, y: seam },
        };
        let lower_edge = view.y(-lower.thickness());
        let part_end = lower_edge + pixels(overhang.below);
        let lowest = part_end + handle::depth(self.sheet.row);

        let heights = (top + name_height, lowest + self.sheet.row + MARGIN);
        let mut planing = Band::new(Side::Left, heights, left - 2.0, &self.sheet);
        let (over, under) = (rules.axis_height + bare.up, bare.down - rules.axis_height);
        for (size, planed, edge, face) in [
            (
                Size::TopPlaning,
                upper.thickness() - over,
                upper_edge,
                view.y(over),
            ),
            (
                Size::BottomPlaning,
                lower.thickness() - under,
                lower_edge,
                view.y(-under),
            ),
        ] {
            if planed > Length::ZERO {
                let edge = End {
                    along: edge,
                    inside: pixels(overhang.left),
                };
                let face = End {
                    along: face,
                    inside: across(centres[0]) - left,
                };
                let spots = vec![Spot::between(edge, face)];
                self.want(&mut planing, size, false, planed, spots);
            }
        }
        // On the right, texts keep to the height of the view, clear of those above and below.
        let heights = (highest - CORNER, lowest + CORNER);
        let room = self.sheet.width - 2.0 - right;
        let mut beside = Band::new(Side::Right, heights, room, &self.sheet);
        let mut below = Band::new(Side::Below, limits, f64::INFINITY, &self.sheet);
        match size_axis {
            SizeAxis::Upright => {
                let end = |height| End {
                    along: view.y(height),
                    inside: right - across(last),
                };
                let axis = rules.axis_height;
                let spots = vec![Spot::between(
                    end(axis + finished.up),
                    end(axis - finished.down),
                )];
                self.want(&mut beside, Size::Barrel, true, barrel.size(), spots);
            }
            SizeAxis::Level => {
                let end = |x| End {
                    along: across(x),
                    inside: lowest - view.y(rules.axis_height),
                };
                let across_pencil =
                    |&x: &Length| Spot::between(end(x - finished.left), end(x + finished.right));
                let spots = centres.iter().map(across_pencil).collect();
                self.want(&mut below, Size::Barrel, true, barrel.size(), spots);
            }
            SizeAxis::Oblique => self.unplaced.push(Size::Barrel),
        }
        self.leaders(&mut below, &view, &centres);

        self.paint(&view, &centres, shown, Scene::Detail);
        let rail = Rail {
            zero: origin,
            scale,
            ends: (left, right),
            heights: (highest, part_end),
        };
        let edge = Handle::new(Grip::Edge, rules.edge, rail, self.sheet);
        self.handles.push(edge);
        self.labels.push(Label {
            x: f64::midpoint(left, right),
            y: top + name_height / 2.0,
            text: "Detail at the datum edge".to_owned(),
        });
        self.dimensions.extend(above.dimensions(highest));
        self.dimensions.extend(planing.dimensions(left));
        self.dimensions.extend(beside.dimensions(right));
        self.dimensions.extend(below.dimensions(lowest));
        (lowest + below.depth())
            .max(planing.end())
            .max(beside.end())
    }

    /// A lead and a corner by leaders from below, of the last pencil shown if there is room.
    fn leaders(&mut self, below: &mut Band, view: &View, centres: &[Length]) {
        let Setup { barrel, rules, .. } = *self.setup;
        let pencils = || {
            let centres = centres.iter().rev();
            centres.map(|&centre| view.at(centre, rules.axis_height))
        };
        let radius = barrel.lead_diameter() / 2.0;
        let spots = pencils()
            .flat_map(|pencil| lead_spots(&pencil, radius))
            .collect();
        self.want(below, Size::Lead, true, barrel.lead_diameter(), spots);
        if barrel.shape().has_corners() {
            let spots = pencils()
                .flat_map(|pencil| {
                    corner_spots(&pencil, self.layout.finished(), barrel.corner_radius())
                })
                .collect();
            self.want(
                below,
                Size::CornerRadius,
                true,
                barrel.corner_radius(),
                spots,
            );
        }
    }

    /// Groove centres that the detail shows: as many as fill the room at full height, at least two
    /// where there are two.
    fn centres_in_detail(&self, room: f64) -> Vec<Length> {
        let Setup {
            top: upper,
            bottom: lower,
            ..
        } = *self.setup;
        let scale = MOST_HEIGHT / (upper.thickness() + lower.thickness()).in_millimetres();
        let mut centres = self.centres();
        let fit = centres
            .iter()
            .take_while(|centre| self.shown_after(**centre).in_millimetres() * scale <= room)
            .count();
        centres.truncate(fit.clamp(LEAST_IN_DETAIL, MOST_IN_DETAIL));
        centres
    }

    /// How much of the width a detail shows that ends with the pencil round a groove centre: half
    /// a land beyond it, so that its parting shows.
    fn shown_after(&self, centre: Length) -> Length {
        let beyond = (self.setup.rules.land / 2.0).max(Length::millimetres(0.3));
        let width = self.setup.top.width().max(self.setup.bottom.width());
        (centre + self.layout.finished().extents().right + beyond).min(width)
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

    /// How far the pencils stick out of the part of the slats that is shown.
    fn overhang(&self, centres: &[Length], shown: Length) -> Overhang {
        let Setup {
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let reach = self.layout.finished().extents();
        let (first, last) = (centres[0], centres[centres.len() - 1]);
        let beyond = |length: Length| length.max(Length::ZERO);
        Overhang {
            left: beyond(reach.left - first),
            right: beyond(last + reach.right - shown),
            above: beyond(rules.axis_height + reach.up - upper.thickness()),
            below: beyond(reach.down - rules.axis_height - lower.thickness()),
        }
    }

    /// Places a size; one that can be typed over and finds no place is noted.
    fn want(
        &mut self,
        band: &mut Band,
        size: Size,
        driving: bool,
        length: Length,
        spots: Vec<Spot>,
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
            spots,
        });
        if !placed && driving {
            self.unplaced.push(size);
        }
    }
}

/// How far pencils that do not fit stick out of the slats; nothing where they fit.
struct Overhang {
    left: Length,
    right: Length,
    above: Length,
    below: Length,
}

impl Overhang {
    /// Width of slats and pencils together.
    fn across(&self, shown: Length) -> Length {
        self.left + shown + self.right
    }

    /// Height of slats and pencils together.
    fn upright(&self, upper: &Slat, lower: &Slat) -> Length {
        self.above + upper.thickness() + lower.thickness() + self.below
    }
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
