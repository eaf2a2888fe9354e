//! The paths of a plank, from its outline up to the cuts, and the names of its blanks.
//!
//! After ISO 128 lines are interrupted where lettering stands.

use super::super::axis::{LINE, area, text_width};
use super::super::path::Path;
use super::super::{Area, Label, Shape, Style};
use super::{LEAST_STEP, PlankView, Run};
use crate::sawing::{LaidPlank, LaidStrips, SawingNames, SawnClass};
use crate::sequence::in_order;

/// A cut is drawn at least so wide, px.
const THIN: f64 = 1.0;
/// Space round a text in its block, px: the cuts beside it stay in sight.
const CLEARANCE: f64 = 4.0;

/// What is painted of a plank.
pub(super) struct Painted {
    pub(super) shapes: Vec<Shape>,
    pub(super) labels: Vec<Label>,
}

/// Alike blanks side by side in all sections of a run.
struct Block {
    strips: LaidStrips,
    /// Where they lie, px.
    area: Area,
    /// Width of one section where each is drawn, px.
    section: Option<f64>,
    /// Sections of the run.
    sections: u64,
    /// The cuts after its blanks, the last one too where there is one, by their upper and lower
    /// side, px.
    cuts: Vec<(f64, f64)>,
}

/// Paints a plank.
pub(super) fn paint(
    laid: &LaidPlank,
    runs: &[Run<'_>],
    view: &PlankView,
    names: &SawingNames<'_>,
) -> Painted {
    let stock = laid.stock();
    let size = stock.size;
    let ends = (stock.end_trim, size.length - stock.end_trim);
    let edges = (stock.edge_trim, size.width - stock.edge_trim);
    let along = |start: i64, stop: i64| (view.x(start), view.x(stop));
    let across = |start: i64, stop: i64| (view.y(start), view.y(stop));
    let whole = ((view.left, view.right), (view.top, view.bottom));

    let mut end_trims = Path::new();
    let mut edge_trims = Path::new();
    if stock.end_trim > 0 {
        end_trims = rectangle(end_trims, along(0, ends.0), whole.1);
        end_trims = rectangle(end_trims, along(ends.1, size.length), whole.1);
    }
    if stock.edge_trim > 0 {
        edge_trims = rectangle(edge_trims, along(ends.0, ends.1), across(0, edges.0));
        edge_trims = rectangle(
            edge_trims,
            along(ends.0, ends.1),
            across(edges.1, size.width),
        );
    }

    let blocks: Vec<Block> = runs
        .iter()
        .flat_map(|run| blocks(laid, run, view))
        .collect();
    let mut labels = name_blocks(&blocks, names);
    let (mut blanks, mut left, mut rips) = (Path::new(), Path::new(), Path::new());
    for block in &blocks {
        let Area {
            x,
            y,
            width,
            height,
        } = block.area;
        blanks = rectangle(blanks, (x, x + width), (y, y + height));
        for &cut in &block.cuts {
            for part in clear_of(&labels, (x, x + width), cut, &Side::Level) {
                rips = rectangle(rips, part, cut);
            }
        }
    }
    let (mut offcut, mut crosscuts) = (Path::new(), Path::new());
    for run in runs {
        let (start, stop) = run.whole();
        if run.section.left() > 0 {
            let waste = across(edges.1 - run.section.left(), edges.1);
            left = rectangle(left, along(start, stop), waste);
        }
        for cut in crosscut_places(laid, run, view) {
            for part in clear_of(&labels, across(edges.0, edges.1), cut, &Side::Upright) {
                crosscuts = rectangle(crosscuts, cut, part);
            }
        }
    }
    let offcut_class = if laid.keeps_offcut() {
        SawnClass::KeptOffcuts
    } else {
        SawnClass::ShortOffcuts
    };
    if laid.offcut() > 0 {
        let (xs, ys) = (
            along(ends.1 - laid.offcut(), ends.1),
            across(edges.0, edges.1),
        );
        offcut = rectangle(offcut, xs, ys);
        labels.extend(name_offcut(laid.keeps_offcut(), xs, ys));
    }

    let shapes = [
        (Style::Plank, rectangle(Path::new(), whole.0, whole.1)),
        (Style::SawnOff(SawnClass::EndTrims), end_trims),
        (Style::SawnOff(SawnClass::EdgeTrims), edge_trims),
        (Style::Blank, blanks),
        (Style::SawnOff(SawnClass::RipWaste), left),
        (Style::SawnOff(offcut_class), offcut),
        (Style::SawnOff(SawnClass::RipKerfs), rips),
        (Style::SawnOff(SawnClass::CrosscutKerfs), crosscuts),
    ];
    let shapes = shapes
        .into_iter()
        .map(|(style, path)| Shape {
            style,
            path: path.done(),
        })
        .filter(|shape| !shape.path.is_empty())
        .collect();
    Painted { shapes, labels }
}

/// The blocks of a run, with the cuts of each.
fn blocks(laid: &LaidPlank, run: &Run<'_>, view: &PlankView) -> Vec<Block> {
    let stock = laid.stock();
    let section = run.section;
    let end = stock.size.width - stock.edge_trim;
    let kerf = laid.rip_kerf();
    let (start, stop) = run.whole();
    let (left, right) = (view.x(start), view.x(stop));
    let one = (section.length() as f64) * view.scales.along;
    let mut y = stock.edge_trim;
    let mut blocks = Vec::new();
    for strips in section.strips() {
        let step = strips.size.thickness + kerf;
        let pieces = strips.pieces.cast_signed();
        let lower = y + step * pieces - kerf;
        let drawn_each = step as f64 * view.scales.across >= LEAST_STEP;
        let first = if drawn_each { 1 } else { pieces };
        let cuts = (first..=pieces)
            .map(|k| y + step * k - kerf)
            // At the edge trim there is no wood left to part from.
            .filter(|&cut| cut < end)
            .map(|cut| {
                let place = (view.y(cut), view.y((cut + kerf).min(end)));
                seen(place, (view.top, view.bottom))
            })
            .collect();
        blocks.push(Block {
            strips: *strips,
            area: Area {
                x: left,
                y: view.y(y),
                width: right - left,
                height: view.y(lower) - view.y(y),
            },
            section: is_drawn_each(run, view).then_some(one),
            sections: section.count(),
            cuts,
        });
        y = lower + kerf;
    }
    blocks
}

/// Whether the cuts between the sections of a run can be told apart.
fn is_drawn_each(run: &Run<'_>, view: &PlankView) -> bool {
    run.section.count() == 1 || run.step as f64 * view.scales.along >= LEAST_STEP
}

/// The crosscuts of a run by their left and right side, px.
fn crosscut_places(laid: &LaidPlank, run: &Run<'_>, view: &PlankView) -> Vec<(f64, f64)> {
    let end = laid.stock().size.length - laid.stock().end_trim;
    let count = run.section.count();
    let first = if is_drawn_each(run, view) {
        0
    } else {
        count - 1
    };
    (first..count)
        .map(|k| run.place(k).1)
        // At the end trim there is no wood left to part from.
        .filter(|&cut| cut < end)
        .map(|cut| {
            let place = (view.x(cut), view.x((cut + laid.crosscut_kerf()).min(end)));
            seen(place, (view.left, view.right))
        })
        .collect()
}

/// A cut made wide enough to be seen, within the plank.
fn seen((start, stop): (f64, f64), (least, most): (f64, f64)) -> (f64, f64) {
    if stop - start >= THIN {
        return (start, stop);
    }
    let start = (f64::midpoint(start, stop) - THIN / 2.0)
        .max(least)
        .min(most - THIN);
    (start, start + THIN)
}

/// The names of the blanks, in the largest blocks first.
fn name_blocks(blocks: &[Block], names: &SawingNames<'_>) -> Vec<Label> {
    let sizes = |block: &&Block| block.area.width * block.area.height;
    let by_size = in_order(blocks.iter().collect(), |one, other| {
        sizes(other).total_cmp(&sizes(one))
    });
    let named = by_size
        .into_iter()
        .filter_map(|block| name_block(block, names));
    named.collect()
}

/// The name of a block, in its first section or over all of them; its number where a name is too
/// long.
fn name_block(block: &Block, names: &SawingNames<'_>) -> Option<Label> {
    let LaidStrips { blank, pieces, .. } = block.strips;
    let counted = |text: &str| match (block.section, pieces) {
        (Some(_), 1) => text.to_owned(),
        (Some(_), _) => format!("{pieces} × {text}"),
        // Sections that are not drawn one by one are counted as well.
        (None, _) => format!("{} × {pieces} × {text}", block.sections),
    };
    let name = names.blank(blank);
    let number = (blank + 1).to_string();
    let numbered = format!("no. {number}");
    let all = block.area;
    let one = Area {
        width: block.section.unwrap_or(all.width),
        ..all
    };
    [
        (counted(&name), one),
        (counted(&name), all),
        (counted(&numbered), one),
        (counted(&numbered), all),
        (number.clone(), one),
        (number, all),
    ]
    .into_iter()
    .find_map(|(text, room)| label_in(text, &room))
}

/// What an offcut is, where it has room for the word.
fn name_offcut(kept: bool, (left, right): (f64, f64), (top, bottom): (f64, f64)) -> Option<Label> {
    let text = if kept { "Offcut" } else { "Short offcut" };
    let room = Area {
        x: left,
        y: top,
        width: right - left,
        height: bottom - top,
    };
    label_in(text.to_owned(), &room)
}

/// A text in the middle of a room, if that is large enough.
fn label_in(text: String, room: &Area) -> Option<Label> {
    let fits = text_width(&text) + 2.0 * CLEARANCE <= room.width && LINE + 2.0 <= room.height;
    fits.then(|| Label {
        x: room.x + room.width / 2.0,
        y: room.y + room.height / 2.0,
        text,
    })
}

/// How a cut runs over the sheet.
enum Side {
    Level,
    Upright,
}

/// The parts of a cut, from and to along it, that lie under no label. `across` are its sides.
fn clear_of(
    labels: &[Label],
    (from, to): (f64, f64),
    across: (f64, f64),
    side: &Side,
) -> Vec<(f64, f64)> {
    let mut parts = vec![(from, to)];
    for label in labels {
        let Area {
            x,
            y,
            width,
            height,
        } = area(label);
        let (level, upright) = ((x, x + width), (y, y + height));
        let (gap, cover) = match side {
            Side::Level => (level, upright),
            Side::Upright => (upright, level),
        };
        if across.1 <= cover.0 || cover.1 <= across.0 {
            continue;
        }
        parts = parts
            .into_iter()
            .flat_map(|(from, to)| [(from, to.min(gap.0)), (from.max(gap.1), to)])
            .filter(|(from, to)| from < to)
            .collect();
    }
    parts
}

/// A rectangle of the sheet.
fn rectangle(path: Path, (left, right): (f64, f64), (top, bottom): (f64, f64)) -> Path {
    path.polygon(&[(left, bottom), (right, bottom), (right, top), (left, top)])
}
