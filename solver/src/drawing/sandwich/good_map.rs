//! Where the pencils of a sandwich are lost: each position with its share of good ones.

use super::painting::Scene;
use super::room::Room;
use super::{Artist, MARGIN};
use crate::drawing::axis::{GAP, LINE, area, evenly, on_sheet, thinned, within};
use crate::drawing::{Drawing, Grade, Label, Sheet};
use crate::figure;
use crate::layout::{Layout, Setup};
use crate::tolerance::Estimate;

/// Height of a row of texts, px: a little more than a line, so that rows never touch.
const ROW: f64 = LINE + 1.0;

/// Draws a layout over its whole width with the share of good pencils, per cent, under each.
///
/// `shares` are those of the positions from the datum edge, fractions. Each pencil shows its
/// [`Grade`]: it is hatched, or blank with one stroke, or blank and crossed. Where the shares
/// crowd, some are dropped evenly; those of the first, the last and the worst position stay, in
/// another row if they must. Nothing on the drawing can be typed over or slid.
///
/// ```
/// use solver::tolerance::Trial;
/// use solver::{AccuracyDraft, BarrelDraft, LengthUnit, RulesDraft, Seam, Setup, Shape, Sheet};
/// use solver::{SlatDraft, draw_good_map, lay_out};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let turn = barrel.turn(Seam::ThroughFaces);
/// let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
/// let layout = lay_out(&setup);
/// let accuracy = AccuracyDraft::new("Line 1").check().unwrap();
/// let tally = Trial::new(&setup, &layout, &accuracy).simulate(1, 0..4, &mut |_| true);
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let map = draw_good_map(&setup, &layout, &tally.good_shares(), &sheet);
/// assert!(map.description.contains("The worst is groove"));
/// ```
#[must_use]
pub fn draw_good_map(
    setup: &Setup<'_>,
    layout: &Layout,
    shares: &[Estimate],
    sheet: &Sheet,
) -> Drawing {
    let sheet = sheet.usable();
    let mut artist = Artist::new(setup, layout, sheet);
    let room = Room::of(&artist);
    let (origin, scale) = (room.origin(&sheet), room.scale(&sheet));
    let grooves = layout.grooves();
    let told = shares.iter().zip(grooves);
    let shares: Vec<f64> = told
        .map(|(share, _)| within(share.mean, 0.0, 1.0))
        .collect();
    let grades: Vec<Grade> = shares.iter().map(|share| Grade::of(*share)).collect();
    let mut end = artist.whole(&room, (origin, scale), Scene::Graded(&grades)) + GAP;
    let worst = worst(&shares);
    if let Some(worst) = worst {
        let labels = shares.iter().zip(grooves).map(|(share, groove)| {
            let text = figure::plain(share * 100.0, 1);
            let label = Label {
                x: origin + groove.centre.in_millimetres() * scale,
                y: end + ROW / 2.0,
                text,
            };
            on_sheet(label, sheet.width)
        });
        let mut labels: Vec<Label> = labels.collect();
        let kept = [0, shares.len() - 1, worst];
        step_down(&mut labels, &kept);
        let order = evenly(&labels, &kept);
        let labels = thinned(labels, &order, &[]);
        end = labels
            .iter()
            .fold(end, |end, label| end.max(label.y + ROW / 2.0));
        artist.labels.extend(labels);
        let legends = Grade::ALL
            .into_iter()
            .filter(|grade| grades.contains(grade))
            .filter_map(Grade::legend);
        for text in ["Good pencils, %".to_owned()].into_iter().chain(legends) {
            artist.labels.push(Label {
                x: sheet.width / 2.0,
                y: end + ROW / 2.0,
                text,
            });
            end += ROW;
        }
    }
    artist.done(end + MARGIN, describe(&shares, worst))
}

/// The position with the least share; the first of equals.
fn worst(shares: &[f64]) -> Option<usize> {
    (0..shares.len()).min_by(|&one, &other| shares[one].total_cmp(&shares[other]))
}

/// Moves each label of a list down until it covers none of those before it in the list.
fn step_down(labels: &mut [Label], list: &[usize]) {
    for (before, &k) in list.iter().enumerate() {
        let covers = |labels: &[Label]| {
            let mut others = list[..before].iter().filter(|&&other| other != k);
            others.any(|&other| area(&labels[other]).overlaps(&area(&labels[k])))
        };
        while covers(labels) {
            labels[k].y += ROW;
        }
    }
}

/// The map in words.
fn describe(shares: &[f64], worst: Option<usize>) -> String {
    let Some(worst) = worst else {
        return "Cross-section of a sandwich. No share of good pencils is known.".to_owned();
    };
    let list: Vec<String> = shares.iter().copied().map(figure::ratio).collect();
    format!(
        "Cross-section of a sandwich with the share of good pencils at each groove from the datum edge: {}. The worst is groove {}, {}.",
        list.join(", "),
        worst + 1,
        list[worst]
    )
}
