//! How many pencils across, and at what pitch, give the most good ones.

use super::paired::Paired;
use super::price::gross_price;
use super::tally::Estimate;
use super::trial::{Row, Trial};
use crate::accuracy::Accuracy;
use crate::layout::{Setup, lay_out};
use crate::quantity::Length;
use crate::rules::PitchRule;
use std::ops::Range;

/// What is varied.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Varied {
    /// The number of pencils side by side, as close as the rules allow.
    Count,
    /// The pitch of as many pencils as are laid.
    Pitch,
}

/// One way of laying the pencil on its slats.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Choice {
    /// Pencils side by side.
    pub across: u32,
    /// Distance between neighbours.
    pub pitch: Length,
    /// Wood outside the outer pencils, half of the spare width on each side.
    pub edge: Length,
    /// Expected good pencils of a sandwich side by side.
    pub good: Estimate,
    /// How many fewer good pencils than the best choice, with the error of that difference. A
    /// choice is as good as the best where this is less than two of its errors.
    pub behind: Estimate,
    /// Price of the slats of a gross of good pencils, in hundredths of the currency, as told by
    /// [`gross_price`]. None where no pencil is good.
    pub gross_price: Option<f64>,
}

/// All ways that were tried.
#[derive(Debug, Clone, PartialEq)]
pub struct Choices {
    /// By count or by pitch, from the least.
    pub list: Vec<Choice>,
    /// Which has the most good pencils, and so the cheapest ones, on these slats; the first of
    /// equals. None where the list is empty.
    pub best: Option<usize>,
    /// Which one is laid, where it is among them.
    pub laid: Option<usize>,
}

impl Choice {
    /// Whether the dice do not tell it from the best.
    #[must_use]
    pub fn ties(&self) -> bool {
        self.behind.mean <= 2.0 * self.behind.error
    }
}

/// Pitches that are tried, from the closest to the widest.
const PITCHES: u32 = 13;

/// Makes the same sandwiches in every way: with fewer and more pencils, or closer and wider.
///
/// The edge allowance is put aside: errors take the outer pencils that lie too near an edge. With
/// the box b = l + r of the bare outline, the land k and the guaranteed width W (the narrower slat),
///
/// - by count, the pitch is b + k, or as it is given, and n runs from 1 to as many as fit in W,
///   or as the rules carry;
/// - by pitch, it runs in equal steps from b + k to (W − b)/(n − 1), where the outer pencils touch
///   the edges; the pitch that is laid is among them.
///
/// Spare width goes half to each edge. After each block, `each` hears how many sandwiches are made;
/// the work ends when it answers `false`.
///
/// ```
/// use solver::tolerance::{Varied, choices};
/// use solver::{AccuracyDraft, BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, Typed};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let mut slat = SlatDraft::new("72 × 5");
/// slat.width = Typed::Number(72.02); // ten touch both edges: 10 · 6.84 + 9 · 0.4 = 72.0
/// let slat = slat.check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let turn = barrel.turn(Seam::ThroughFaces);
/// let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
/// let accuracy = AccuracyDraft::new("Line 1").check().unwrap();
/// let counts = choices(&setup, &accuracy, Varied::Count, 1, 0..4, &mut |_| true);
/// // Ten lose more than one pencil at the edges: nine are better.
/// assert_eq!(counts.list.len(), 10);
/// assert_eq!(counts.best, Some(8));
/// ```
#[must_use]
pub fn choices(
    setup: &Setup<'_>,
    accuracy: &Accuracy,
    varied: Varied,
    seed: u64,
    blocks: Range<u64>,
    each: &mut dyn FnMut(u64) -> bool,
) -> Choices {
    let layout = lay_out(setup);
    let trial = Trial::new(setup, &layout, accuracy);
    let width = (setup.top.guaranteed_width()).min(setup.bottom.guaranteed_width());
    let pencil = layout.extents().width();
    let rows = match varied {
        Varied::Count => by_count(setup, pencil, width),
        Varied::Pitch => by_pitch(
            layout.across(),
            layout.pitch(),
            pencil + setup.rules.land,
            width - pencil,
        ),
    };
    let edge = |(across, pitch): (u32, Length)| {
        (width - pencil - pitch * f64::from(across.saturating_sub(1))) / 2.0
    };
    let trials: Vec<Trial> = rows
        .iter()
        .map(|&(across, pitch)| Trial {
            row: Row {
                count: across as usize,
                first: (edge((across, pitch)) + layout.extents().left).in_millimetres(),
                pitch: pitch.in_millimetres(),
            },
            ..trial.clone()
        })
        .collect();
    let paired = Paired::play(&trials, seed, blocks, each);
    // The first of equals.
    let best = (0..rows.len())
        .rev()
        .max_by(|&one, &other| paired.good(one).mean.total_cmp(&paired.good(other).mean));
    let list = rows.iter().enumerate().map(|(way, &(across, pitch))| {
        let good = paired.good(way);
        Choice {
            across,
            pitch,
            edge: edge((across, pitch)),
            good,
            behind: paired.difference(best.unwrap_or(way), way),
            gross_price: gross_price(setup, &layout, good.mean),
        }
    });
    let laid = |&(across, pitch): &(u32, Length)| {
        across == layout.across()
            && (across == 1 || (pitch - layout.pitch()).abs() <= Length::SLACK)
    };
    Choices {
        list: list.collect(),
        best,
        laid: rows.iter().position(laid),
    }
}

fn by_count(setup: &Setup<'_>, pencil: Length, width: Length) -> Vec<(u32, Length)> {
    let pitch = match setup.rules.spacing {
        PitchRule::Closest | PitchRule::Spread => pencil + setup.rules.land,
        PitchRule::Given(pitch) | PitchRule::OfSet(pitch) => pitch,
    };
    if !pencil.fits_in(width) {
        return Vec::new();
    }
    let fit = (width - pencil).whole_steps(pitch) + 1;
    let most = setup.rules.most.map_or(fit, |most| most.min(fit));
    (1..=most).map(|across| (across, pitch)).collect()
}

fn by_pitch(across: u32, laid: Length, closest: Length, room: Length) -> Vec<(u32, Length)> {
    if across == 0 {
        return Vec::new();
    }
    let mut pitches = vec![laid];
    if across > 1 {
        let widest = room / f64::from(across - 1);
        if closest.fits_in(widest) {
            let step = (widest - closest).max(Length::ZERO) / f64::from(PITCHES - 1);
            pitches.extend((0..PITCHES).map(|k| closest + step * f64::from(k)));
        }
    }
    pitches.sort_by(|one, other| one.in_millimetres().total_cmp(&other.in_millimetres()));
    pitches.dedup_by(|next, kept| (*next - *kept).abs() <= Length::SLACK);
    pitches.into_iter().map(|pitch| (across, pitch)).collect()
}
