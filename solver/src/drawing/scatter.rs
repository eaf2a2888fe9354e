//! A pencil in section, and beside it an enlarged detail with the places of leads.

#[cfg(test)]
mod tests;

use super::axis::{GAP, LINE, on_sheet, steps};
use super::path::{Path, View};
use super::{Drawing, Label, Shape, Sheet, Style};
use crate::figure;
use crate::layout::{Layout, Setup};
use crate::quantity::{Length, Point};
use crate::unit::LengthUnit;

/// The detail is drawn no higher than this, px.
const MOST_HEIGHT: f64 = 320.0;
/// Space round the views, px.
const MARGIN: f64 = 12.0;
/// Size of the view of the pencil, as a share of the detail.
const PENCIL: f64 = 0.6;
/// How far the detail reaches at least, as a share of the limit.
const BEYOND_LIMIT: f64 = 1.2;
/// How far it reaches at least where the limit is nothing, mm.
const LEAST_REACH: f64 = 0.01;
/// Enlarged less than this, the detail would show more than the pencil.
const LEAST_FACTOR: f64 = 2.0;
/// Half the size of a mark, px.
const MARK: f64 = 2.5;
/// How far lines go beyond what they run through, px.
const PAST: f64 = 4.0;

/// Draws a pencil as it lies in the sandwich, and beside it the middle of its lead in a detail, with
/// the eccentricity limit and the places of lead `centres` as seen from the middle of the pencil.
///
/// Errors are ten times smaller than the pencil: on its section they would be a blot; with errors
/// enlarged on a section that is not, a wall would look broken that holds. So the detail is a view
/// of its own, as on drawings of parts: its circle stands in the section, over it is written how
/// many times it is enlarged, under it stands a scale bar, and all in it is at one scale. It
/// reaches to the farthest centre, unless that lies outside the pencil: those that it does not
/// reach are counted.
///
/// The groove is shown without its lead, so that the circle in it can be seen. A centre within the
/// limit is an upright cross, one beyond it a slanting
/// cross.
///
/// ```
/// use solver::{BarrelDraft, LengthUnit, Point, RulesDraft, Seam, Setup, Shape, Sheet, SlatDraft};
/// use solver::{draw_scatter, lay_out};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let turn = barrel.turn(Seam::ThroughFaces);
/// let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
/// let centres = [Point { x: 0.1, y: 0.1 }, Point { x: -0.3, y: 0.1 }];
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let drawing = draw_scatter(&setup, &lay_out(&setup), &centres, &sheet);
/// assert!(drawing.description.contains("1 of 2 leads lies more than 0.30\u{202f}mm off centre"));
/// ```
#[must_use]
pub fn draw_scatter(
    setup: &Setup<'_>,
    layout: &Layout,
    centres: &[Point],
    sheet: &Sheet,
) -> Drawing {
    let sheet = sheet.usable();
    let limit = setup.rules.eccentricity;
    let views = Views::new(&sheet, layout, reach(centres, limit));
    let cloud = Cloud::new(centres, limit, &views);
    let Views {
        pencil,
        detail,
        frame,
        ..
    } = views;

    let factor = figure::plain(views.factor, 0);
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), sheet.unit);
    let count = |leads: usize| figure::count(leads as u64);
    let mut rows = vec![format!("Dashed circle: {}", length(limit))];
    if !centres.is_empty() {
        let (within, beyond) = (centres.len() - cloud.strays, cloud.strays);
        rows.push(format!(
            "{} within +, {} beyond ×",
            count(within),
            count(beyond)
        ));
    }
    if cloud.left_out > 0 {
        rows.push(format!("{} outside the detail", count(cloud.left_out)));
    }
    let description = format!(
        "A pencil in section, with the places of leads round its middle enlarged {factor} times. {}",
        cloud.told(centres.len(), &length(limit))
    );

    let level = -setup.rules.axis_height;
    let bar = ScaleBar::new(&views, sheet.unit);
    let paths = [
        (
            Style::TopHalf,
            Path::new().above(&pencil, layout.bare(), level),
        ),
        (
            Style::BottomHalf,
            Path::new().below(&pencil, layout.bare(), level),
        ),
        (
            Style::Groove,
            Path::new().groove(&pencil, layout.groove_shape()),
        ),
        (Style::Pencil, Path::new().outline(&pencil, layout.bare())),
        (Style::Detail, views.frames()),
        (Style::Centre, views.centre_lines(layout)),
        (Style::Limit, Path::new().circle(&detail, limit)),
        (Style::CentredLead, cloud.centred),
        (Style::StrayLead, cloud.stray),
        (Style::ScaleBar, bar.path),
    ];
    let shapes = paths.map(|(style, path)| Shape {
        style,
        path: path.done(),
    });

    let mut labels = vec![Label {
        x: detail.origin.x,
        y: MARGIN + LINE / 2.0,
        text: format!("Lead centres, {factor} times enlarged"),
    }];
    labels.extend(bar.label);
    let mut end = detail.origin.y + frame + PAST + BAR;
    for text in rows {
        end += ROW;
        let (x, y) = (detail.origin.x, end - ROW / 2.0);
        labels.push(Label { x, y, text });
    }
    Drawing {
        width: sheet.width,
        height: end + MARGIN,
        shapes: shapes
            .into_iter()
            .filter(|shape| !shape.path.is_empty())
            .collect(),
        dimensions: Vec::new(),
        labels: labels
            .into_iter()
            .map(|label| on_sheet(label, sheet.width))
            .collect(),
        handles: Vec::new(),
        unplaced: Vec::new(),
        description,
    }
}

/// Height of the scale bar with its number, and of a row of texts, px.
const BAR: f64 = 2.0 * GAP + LINE;
const ROW: f64 = LINE + 1.0;

/// How far the detail should reach, mm.
fn reach(centres: &[Point], limit: Length) -> f64 {
    let distances = centres.iter().map(|centre| off(*centre).in_millimetres());
    let farthest = distances
        .filter(|distance| distance.is_finite())
        .fold(LEAST_REACH, f64::max);
    farthest.max(limit.in_millimetres() * BEYOND_LIMIT)
}

/// How far a lead lies off centre.
fn off(centre: Point) -> Length {
    centre.distance(Point::AXIS)
}

/// Where the pencil and the detail lie on the sheet, their middles at one height.
struct Views {
    pencil: View,
    detail: View,
    /// Radius of the detail, px.
    frame: f64,
    /// How many times larger the detail is than the pencil.
    factor: f64,
}

impl Views {
    fn new(sheet: &Sheet, layout: &Layout, reach: f64) -> Self {
        let extents = layout.extents();
        let (across, upright) = (
            extents.left.max(extents.right),
            extents.up.max(extents.down),
        );
        let frame = ((sheet.width - 3.0 * MARGIN) / (1.0 + PENCIL)).min(MOST_HEIGHT) / 2.0;
        let scale = frame * PENCIL / across.max(upright).in_millimetres();
        let factor = ((frame - 2.0 * MARK) / (reach * scale)).floor();
        let factor = factor.max(LEAST_FACTOR);
        let left = sheet.width / 2.0 - frame * (1.0 + PENCIL) - MARGIN / 2.0;
        let y = MARGIN + LINE + GAP + PAST + frame;
        let view = |x, scale| View {
            scale,
            origin: Point { x, y },
        };
        Self {
            pencil: view(left + frame * PENCIL, scale),
            detail: view(sheet.width - left - frame, scale * factor),
            frame,
            factor,
        }
    }

    /// The circle of the detail in the pencil and round the detail, and the two lines that touch
    /// both.
    ///
    /// With the radii r and R at the distance d, the lines touch at an angle whose cosine to the
    /// line of the centres is −(R − r)/d.
    fn frames(&self) -> Path {
        let (small, large) = (self.frame / self.factor, self.frame);
        let [from, to] = [self.pencil.origin, self.detail.origin];
        let lean = (large - small) / (to.x - from.x);
        let rise = (1.0 - lean * lean).max(0.0).sqrt();
        let circles = [(&self.pencil, small), (&self.detail, large)];
        let path = circles.iter().fold(Path::new(), |path, (view, radius)| {
            path.circle(view, Length::millimetres(radius / view.scale))
        });
        [rise, -rise].iter().fold(path, |path, rise| {
            let touched = circles.map(|(view, radius)| {
                (view.origin.x - radius * lean, view.origin.y + radius * rise)
            });
            path.run(&touched)
        })
    }

    fn centre_lines(&self, layout: &Layout) -> Path {
        let extents = layout.extents();
        let sides = [extents.left, extents.right, extents.up, extents.down];
        let pencil = sides.map(|side| side.in_millimetres() * self.pencil.scale);
        let views = [(self.pencil, pencil), (self.detail, [self.frame; 4])];
        views.iter().fold(Path::new(), |path, (view, sides)| {
            let Point { x, y } = view.origin;
            let [left, right, up, down] = sides.map(|side| side + PAST);
            path.run(&[(x - left, y), (x + right, y)])
                .run(&[(x, y - up), (x, y + down)])
        })
    }
}

/// The marks of lead centres.
#[derive(Default)]
struct Cloud {
    centred: Path,
    stray: Path,
    /// Leads beyond the limit.
    strays: usize,
    /// Leads that the detail does not reach.
    left_out: usize,
}

impl Cloud {
    fn new(centres: &[Point], limit: Length, views: &Views) -> Self {
        let View { scale, origin } = views.detail;
        let mut cloud = Self::default();
        for &centre in centres {
            let centred = off(centre).fits_in(limit);
            cloud.strays += usize::from(!centred);
            // A place that is no number is not within either.
            let shown = off(centre).in_millimetres() * scale <= views.frame - MARK;
            if !shown {
                cloud.left_out += 1;
                continue;
            }
            let (x, y) = (origin.x + centre.x * scale, origin.y - centre.y * scale);
            if centred {
                cloud.centred = cloud
                    .centred
                    .run(&[(x - MARK, y), (x + MARK, y)])
                    .run(&[(x, y - MARK), (x, y + MARK)]);
            } else {
                cloud.stray = cloud
                    .stray
                    .run(&[(x - MARK, y - MARK), (x + MARK, y + MARK)])
                    .run(&[(x - MARK, y + MARK), (x + MARK, y - MARK)]);
            }
        }
        cloud
    }

    fn told(&self, leads: usize, limit: &str) -> String {
        if leads == 0 {
            return "No lead has been laid yet.".to_owned();
        }
        let count = |leads: usize| figure::count(leads as u64);
        let outside = match self.left_out {
            0 => String::new(),
            left_out => format!(", {} outside the detail", count(left_out)),
        };
        format!(
            "{} of {} leads {} more than {limit} off centre{outside}.",
            count(self.strays),
            count(leads),
            if self.strays == 1 { "lies" } else { "lie" }
        )
    }
}

/// A round length at the scale of the detail.
#[derive(Default)]
struct ScaleBar {
    path: Path,
    label: Option<Label>,
}

impl ScaleBar {
    /// The longest one that is no longer than the detail is wide from its middle.
    fn new(views: &Views, unit: LengthUnit) -> Self {
        let pixels = views.detail.scale * unit.millimetres();
        let fitting = steps(-5).take_while(|(step, _)| step * pixels <= views.frame);
        let Some((step, decimals)) = fitting.last() else {
            return Self::default();
        };
        let x = views.detail.origin.x;
        let y = views.detail.origin.y + views.frame + PAST + GAP;
        let [left, right] = [-0.5, 0.5].map(|end| x + end * step * pixels);
        let number = figure::plain(step, decimals);
        Self {
            path: Path::new()
                .run(&[(left, y), (right, y)])
                .run(&[(left, y - PAST), (left, y + PAST)])
                .run(&[(right, y - PAST), (right, y + PAST)]),
            label: Some(Label {
                x,
                y: y + GAP + LINE / 2.0,
                text: format!("{number}{}{}", figure::THIN_SPACE, unit.label()),
            }),
        }
    }
}
