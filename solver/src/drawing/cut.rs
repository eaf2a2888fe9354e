//! A plank from above with what it is sawn into.

mod painting;
mod scale;

use super::axis::{LINE, area, text_width};
use super::placement::{Band, CLEAR, CORNER, End, Side, Spot, Wanted};
use super::{Dimension, Drawing, Label, Sheet, Size, describe};
use crate::figure;
use crate::sawing::{CutPattern, LaidPlank, LaidSection, SawingData, SawingNames};
use scale::Scales;

/// Space round the view, px.
const MARGIN: f64 = 12.0;
/// The width of a plank is drawn no lower and no higher than this, px.
const HEIGHTS: (f64, f64) = (132.0, 260.0);
/// Pieces closer than this are drawn as one, px: the cuts between them would run together.
const LEAST_STEP: f64 = 3.0;
/// Sections of one length that are tried for their dimension.
const MOST_SPOTS: u64 = 24;

/// Draws a plank from above, its length across the sheet, as a pattern saws it.
///
/// Trims, sections, blanks, cuts and what is left lie where they lie in the plank, the first section
/// at the left. A plank that would be too low or too high to read has a scale of its own across; both
/// scales stand under the view and in the description. A cut is drawn at least as wide as a thin line;
/// alike pieces whose cuts would run together are drawn as one, with their number. Blanks are labelled
/// with their number in a section and their name, or with their number in the list, counted from 1,
/// where a name is too long; the largest blocks first. Lengths of sections and of the offcut are
/// dropped where they find no place.
///
/// Nothing where the plank cannot be sawn like this: see [`CutPattern::laid`].
///
/// ```
/// use solver::sawing::{CutPattern, SawingDraft, SawingNames, Section};
/// use solver::{LengthUnit, Sheet, draw_cut};
/// let mut draft = SawingDraft::along(4_000_000, 4_000, &[(900_000, 10)]);
/// draft.planks[0].size.width = 150_000;
/// draft.blanks[0].size.thickness = 70_000;
/// let sections = vec![(Section { blanks: vec![(0, 2)] }, 4)];
/// let pattern = CutPattern { plank: 0, sections };
/// let blanks = ["Office".to_owned()];
/// let names = SawingNames { planks: &[], blanks: &blanks };
/// let sheet = Sheet { width: 900.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let drawing = draw_cut(&pattern, &draft.check().unwrap(), &names, &sheet).unwrap();
/// assert_eq!(drawing.labels[0].text, "2 × Office");
/// ```
#[must_use]
pub fn draw_cut(
    pattern: &CutPattern,
    data: &SawingData,
    names: &SawingNames<'_>,
    sheet: &Sheet,
) -> Option<Drawing> {
    let laid = pattern.laid(data)?;
    let sheet = with_room(sheet.usable(), &laid);
    let stock = laid.stock();
    let left = sheet.text + CLEAR + MARGIN / 4.0;
    let right = sheet.width - MARGIN;
    let length = stock.size.length as f64;
    let width = stock.size.width as f64;
    let alike = (right - left) / length * width;
    let height = alike.max(HEIGHTS.0).min(HEIGHTS.1);
    let scales = Scales {
        along: (right - left) / length,
        across: height / width,
    };
    let limits = (2.0, sheet.width - 2.0);

    let runs = runs(&laid);
    let mut above = Band::new(Side::Above, limits, f64::INFINITY, &sheet);
    let x = |micrometres: i64| left + micrometres as f64 * scales.along;
    measure_sections(&mut above, &laid, &runs, &x, &sheet);
    let top = MARGIN + above.depth();
    let view = PlankView {
        left,
        top,
        right,
        bottom: top + height,
        scales,
    };

    let mut below = Band::new(Side::Below, limits, f64::INFINITY, &sheet);
    let spots = vec![span(left, right)];
    want(
        &mut below,
        Size::PlankLength,
        stock.size.length,
        spots,
        &sheet,
    );
    let heights = (top - CORNER, view.bottom + CORNER);
    let mut beside = Band::new(Side::Left, heights, left - 2.0, &sheet);
    let spots = vec![span(top, view.bottom)];
    want(
        &mut beside,
        Size::PlankWidth,
        stock.size.width,
        spots,
        &sheet,
    );

    let mut dimensions: Vec<Dimension> = above.dimensions(top);
    dimensions.extend(beside.dimensions(left));
    dimensions.extend(below.dimensions(view.bottom));
    let painted = painting::paint(&laid, &runs, &view, names);
    let mut labels = painted.labels;
    let end = view.bottom + below.depth();
    let told = Label {
        x: sheet.width / 2.0,
        y: end + MARGIN / 2.0 + LINE / 2.0,
        text: scales.in_words(),
    };
    let room = area(&told);
    if room.width <= sheet.width {
        labels.push(told);
    }
    Some(Drawing {
        width: sheet.width,
        height: room.y + room.height + MARGIN / 2.0,
        shapes: painted.shapes,
        dimensions,
        labels,
        handles: Vec::new(),
        unplaced: Vec::new(),
        description: describe::cut(&laid, names, &scales.in_words(), sheet.unit),
    })
}

/// Sections of a plank that are alike, one after the other.
struct Run<'a> {
    section: &'a LaidSection,
    /// Where the first begins along the plank, µm from its end.
    start: i64,
    /// From one to the next, µm.
    step: i64,
}

impl Run<'_> {
    /// Where a section of the run lies along the plank, µm.
    fn place(&self, k: u64) -> (i64, i64) {
        // Sections that fit a plank are fewer than its micrometres.
        let start = self.start + self.step * k.cast_signed();
        (start, start + self.section.length())
    }

    /// Where the whole run lies along the plank, without the cut after it, µm.
    fn whole(&self) -> (i64, i64) {
        (self.start, self.place(self.section.count() - 1).1)
    }
}

fn runs(laid: &LaidPlank) -> Vec<Run<'_>> {
    let mut start = laid.stock().end_trim;
    let sections = laid.sections().iter().map(|section| {
        let step = section.length() + laid.crosscut_kerf();
        let run = Run {
            section,
            start,
            step,
        };
        start += step * section.count().cast_signed();
        run
    });
    sections.collect()
}

/// A plank on the sheet: where its edges lie, px, and the scales.
struct PlankView {
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
    scales: Scales,
}

impl PlankView {
    /// The sheet x of a place along the plank.
    fn x(&self, micrometres: i64) -> f64 {
        self.left + micrometres as f64 * self.scales.along
    }

    /// The sheet y of a place across the plank.
    fn y(&self, micrometres: i64) -> f64 {
        self.top + micrometres as f64 * self.scales.across
    }
}

/// The sheet with room for the longest number of the drawing.
fn with_room(sheet: Sheet, laid: &LaidPlank) -> Sheet {
    let size = laid.stock().size;
    let widest = [size.length, size.width]
        .map(|length| text_width(&shown(length, &sheet)))
        .into_iter()
        .fold(sheet.text, f64::max);
    Sheet {
        text: widest,
        ..sheet
    }
}

/// The lengths of the sections, each length once, and of the offcut.
fn measure_sections(
    above: &mut Band,
    laid: &LaidPlank,
    runs: &[Run<'_>],
    x: &dyn Fn(i64) -> f64,
    sheet: &Sheet,
) {
    for alike in runs.chunk_by(|one, other| one.section.length() == other.section.length()) {
        let places = alike.iter().flat_map(|run| {
            let tried = run.section.count().min(MOST_SPOTS);
            (0..tried).map(|k| run.place(k))
        });
        let spots = places
            .take(MOST_SPOTS as usize)
            .map(|(start, stop)| span(x(start), x(stop)))
            .collect();
        let length = alike[0].section.length();
        want(above, Size::SectionLength, length, spots, sheet);
    }
    if laid.offcut() > 0 {
        let stop = laid.stock().size.length - laid.stock().end_trim;
        let spots = vec![span(x(stop - laid.offcut()), x(stop))];
        want(above, Size::OffcutLength, laid.offcut(), spots, sheet);
    }
}

/// Between two places at the edge of the view, px.
fn span(start: f64, stop: f64) -> Spot {
    Spot::between(End::at_edge(start), End::at_edge(stop))
}

/// Places a size where there is room.
fn want(band: &mut Band, size: Size, micrometres: i64, spots: Vec<Spot>, sheet: &Sheet) {
    band.place(Wanted {
        size,
        driving: false,
        sign: "",
        text: shown(micrometres, sheet),
        spots,
    });
}

/// A length as it is shown.
fn shown(micrometres: i64, sheet: &Sheet) -> String {
    figure::length(micrometres as f64 / 1000.0, sheet.unit)
}
