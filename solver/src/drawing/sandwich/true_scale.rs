//! The cross-section at a standard scale, for paper.

use super::painting::Scene;
use super::{Artist, MARGIN, NUMBERS};
use crate::drawing::paper::{PIXELS_PER_MILLIMETRE, Paper, PaperProblem, Scale, ScaledDrawing};
use crate::drawing::path::View;
use crate::drawing::placement::{Band, CLEAR, CORNER, End, Side, Spot};
use crate::drawing::{Label, Sheet, Size, describe};
use crate::layout::{Layout, Setup};
use crate::quantity::{Length, Point};
use crate::unit::LengthUnit;

/// Height of a row of dimensions and of a line of text, px: 5 and 4.8 mm of paper.
const ROW: f64 = 20.0;
const LINE: f64 = 18.0;
/// Space over the drawing, px.
const TOP: f64 = 2.0;
/// Room for the text of a dimension, px.
const TEXT: f64 = 64.0;

/// Draws the cross-section of a layout at the largest standard scale (ISO 5455) at which it fits
/// across a sheet of paper, with groove numbers and the dimensions of the slats, the first groove and
/// the pitch; the scale stands under it.
///
/// Slats are drawn at their nominal sizes at the groove head. Printed without a change of size, a
/// millimetre of wood is as many millimetres of paper as the scale says.
///
/// # Errors
/// Where it is too wide for the sheet even a hundred times smaller.
///
/// ```
/// use solver::{BarrelDraft, LengthUnit, Paper, PaperSize, RulesDraft, Seam, Setup, Shape, SlatDraft, draw_to_scale, lay_out};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let setup = Setup { barrel: &barrel, turn: barrel.turn(Seam::ThroughFaces), top: &slat, bottom: &slat, rules: &rules };
/// let paper = Paper { size: PaperSize::A4, landscape: false };
/// let drawn = draw_to_scale(&setup, &lay_out(&setup), paper, LengthUnit::Millimetre).unwrap();
/// assert_eq!(drawn.scale.label(), "2:1");
/// assert!(drawn.drawing.paper_width() <= paper.printable_width());
/// ```
pub fn draw_to_scale(
    setup: &Setup<'_>,
    layout: &Layout,
    paper: Paper,
    unit: LengthUnit,
) -> Result<ScaledDrawing, PaperProblem> {
    let (top, bottom) = (setup.top.as_grooved(), setup.bottom.as_grooved());
    let setup = &Setup {
        top: &top,
        bottom: &bottom,
        ..*setup
    };
    let left = TEXT + CLEAR + MARGIN;
    let beside = Length::millimetres((left + MARGIN) / PIXELS_PER_MILLIMETRE);
    let width = top.width().max(bottom.width());
    let printable = paper.printable_width();
    let sheet = |width| Sheet {
        width,
        row: ROW,
        text: TEXT,
        unit,
    };
    let artist = |width: f64| Artist::new(setup, layout, sheet(width));
    let overhang = {
        let artist = artist(0.0);
        artist.overhang(&artist.centres(), width)
    };
    let across = overhang.across(width);
    let Some(scale) = Scale::of_a_view(across, printable - beside) else {
        let needed = across + beside;
        return Err(PaperProblem::TooWide { needed, printable });
    };
    let pixels = scale.factor() * PIXELS_PER_MILLIMETRE;
    let on_paper = |length: Length| length.in_millimetres() * pixels;
    // Rounding must not make it wider than the paper.
    let needed = left + on_paper(across) + MARGIN;
    let mut artist = artist(needed.min(printable.in_millimetres() * PIXELS_PER_MILLIMETRE));
    let sheet = artist.sheet;
    let centres = artist.centres();
    let origin = left + on_paper(overhang.left);
    let x = |place: Length| origin + on_paper(place);
    let limits = (left - CORNER, sheet.width - 2.0);

    let mut above = Band::new(Side::Above, limits, f64::INFINITY, &sheet);
    let groove = |centre| End::at_edge(x(centre));
    if layout.across() > 0 {
        let datum = End {
            along: x(Length::ZERO),
            inside: NUMBERS,
        };
        let spots = vec![Spot::between(datum, groove(centres[0]))];
        artist.want(&mut above, Size::FirstGroove, false, centres[0], spots);
    }
    let pairs = centres.windows(2);
    let spots: Vec<Spot> = pairs
        .map(|pair| Spot::between(groove(pair[0]), groove(pair[1])))
        .collect();
    if !spots.is_empty() {
        artist.want(&mut above, Size::Pitch, false, layout.pitch(), spots);
    }
    let numbers = TOP + above.depth();
    let upper_edge = numbers + NUMBERS + on_paper(overhang.above);
    let seam = upper_edge + on_paper(top.thickness());
    let view = View {
        scale: pixels,
        origin: Point { x: origin, y: seam },
    };
    let lower_edge = view.y(-bottom.thickness());
    let lowest = lower_edge + on_paper(overhang.below);

    let mut below = Band::new(Side::Below, limits, f64::INFINITY, &sheet);
    for (size, slat, edge) in [
        (Size::SlatWidth, &bottom, lower_edge),
        (Size::TopWidth, &top, seam),
    ] {
        // Where both are as wide, one dimension tells of both.
        if size == Size::SlatWidth || top.width() != bottom.width() {
            let end = |place| End {
                along: x(place),
                inside: lowest - edge,
            };
            let spots = vec![Spot::between(end(Length::ZERO), end(slat.width()))];
            artist.want(&mut below, size, false, slat.width(), spots);
        }
    }
    let room = left - 2.0;
    let end = |along| End {
        along,
        inside: on_paper(overhang.left),
    };
    let halves = [
        (
            (2.0, seam - CORNER),
            Size::TopThickness,
            top.thickness(),
            upper_edge,
        ),
        (
            (seam + CORNER, f64::INFINITY),
            Size::BottomThickness,
            bottom.thickness(),
            lower_edge,
        ),
    ];
    let mut bands = Vec::new();
    for (heights, size, thickness, edge) in halves {
        let mut band = Band::new(Side::Left, heights, room, &sheet);
        let spots = vec![Spot::between(end(edge), end(seam))];
        artist.want(&mut band, size, false, thickness, spots);
        bands.push(band);
    }

    artist.paint(&view, &centres, width, Scene::Whole);
    artist.number_grooves(&view, numbers + NUMBERS / 2.0);
    artist.dimensions.extend(above.dimensions(numbers));
    artist.dimensions.extend(below.dimensions(lowest));
    let ends = bands.iter().map(Band::end).fold(0.0, f64::max);
    for band in &bands {
        artist.dimensions.extend(band.dimensions(left));
    }
    let told = (lowest + below.depth()).max(ends) + LINE / 2.0;
    artist.labels.push(Label {
        x: sheet.width / 2.0,
        y: told,
        text: format!("Scale {}", scale.label()),
    });
    let description = format!(
        "{} Drawn to scale {}.",
        describe::sandwich(setup, layout, unit),
        scale.label()
    );
    let drawing = artist.done(told + LINE / 2.0 + 2.0, description);
    Ok(ScaledDrawing { drawing, scale })
}
