//! The plank that is worth most when every blank has a value.
//!
//! Two fillings, one in the other: each kind of section is ripped into the blanks worth most, then
//! the length of the plank is filled with sections. No plan needs more blanks of a kind from one
//! plank than are wanted, so within a section the numbers are bounded by what is wanted, and all
//! sections of one kind together are worth no more than all that is wanted of their blanks. The
//! value found is that of the relaxed filling, where the last section of a kind may be worth a
//! part of a whole one: no plank is worth more. Where each section holds blanks of one kind, and
//! where a plank has one section, it is exact.

use super::board::{Board, Strip};
use super::data::SawingData;
use super::knapsack::{Filling, Piece, fill};
use super::pattern::{CutPattern, Section};

/// Values of the blanks, whole numbers, and of hundredths of the currency in the same unit.
#[derive(Clone, Copy, Debug)]
pub(super) struct Values<'a> {
    /// Of each kind of blank, 0 or more.
    pub(super) blanks: &'a [i64],
    /// Of one hundredth of what an offcut takes off.
    pub(super) unit: i64,
    /// Most of each kind of blank that are of use.
    pub(super) most: &'a [u64],
}

/// What a plank is worth at most, and planks that are worth much.
#[derive(Clone, Debug)]
pub(super) struct Priced {
    /// No plank of this kind is worth more, its offcut included.
    pub(super) most: i64,
    /// Some that can be sawn, the most promising first.
    pub(super) patterns: Vec<CutPattern>,
}

/// Prices one kind of plank, and names at most so many patterns.
pub(super) fn price(
    data: &SawingData,
    plank: usize,
    values: Values<'_>,
    patterns: usize,
) -> Priced {
    let board = &data.boards()[plank];
    let best: Vec<Filling> = board
        .strips
        .iter()
        .map(|strip| best_section(board, strip, values.blanks, values.most))
        .collect();
    let mut pieces = Vec::new();
    let mut strips = Vec::new();
    for (at, (strip, filling)) in board.strips.iter().zip(&best).enumerate() {
        if filling.value == 0 {
            continue;
        }
        let all: i128 = strip
            .slices
            .iter()
            .map(|slice| {
                i128::from(values.blanks[slice.blank]) * i128::from(values.most[slice.blank])
            })
            .sum();
        let value = i128::from(filling.value);
        // As many as fit are fewer than u64 holds.
        let whole = (all / value).min(i128::from(MOST_SECTIONS)) as u64;
        pieces.push(Piece {
            take: strip.length,
            value: filling.value,
            most: whole,
        });
        strips.push(at);
        if whole < MOST_SECTIONS && all % value > 0 {
            pieces.push(Piece {
                take: strip.length,
                value: (all % value) as i64,
                most: 1,
            });
            strips.push(at);
        }
    }
    let has_worth = data.offcut_worth(board.length) > 0 && values.unit > 0;
    let kerf = data.draft().crosscut_kerf;
    let rest = |free: i64| data.offcut_worth((free - kerf).max(0)) * values.unit;
    let fillings = fill(
        board.length,
        &pieces,
        if has_worth { Some(&rest) } else { None },
        patterns,
    );
    let most = fillings.first().map_or(0, |filling| filling.value);
    let pattern = |filling: &Filling| {
        let mut sections = vec![0; board.strips.len()];
        for (&count, &strip) in filling.counts.iter().zip(&strips) {
            sections[strip] += count;
        }
        real(plank, board, &best, &sections, values)
    };
    Priced {
        most,
        patterns: fillings.iter().map(pattern).collect(),
    }
}

/// A bound on the sections of a plank: the longest plank in pieces of a micrometre.
const MOST_SECTIONS: u64 = 1 << 26;

/// What a section is ripped into, for the most worth.
fn best_section(board: &Board, strip: &Strip, values: &[i64], most: &[u64]) -> Filling {
    let pieces: Vec<Piece> = strip
        .slices
        .iter()
        .map(|slice| Piece {
            take: slice.take,
            value: values[slice.blank],
            most: most[slice.blank],
        })
        .collect();
    let mut best = fill(board.width, &pieces, None, 1);
    best.swap_remove(0)
}

/// So many sections of each kind, ripped one after the other into what is still of use.
fn real(
    plank: usize,
    board: &Board,
    best: &[Filling],
    sections: &[u64],
    values: Values<'_>,
) -> CutPattern {
    let mut cut = Vec::new();
    for ((strip, first), &count) in board.strips.iter().zip(best).zip(sections) {
        let mut left = values.most.to_vec();
        let mut to_rip = count;
        let mut filling = first.clone();
        while to_rip > 0 && filling.value > 0 {
            let held = || {
                strip
                    .slices
                    .iter()
                    .zip(&filling.counts)
                    .filter(|(_, pieces)| **pieces > 0)
            };
            // As many alike as what is of use allows.
            let alike = held()
                .map(|(slice, pieces)| left[slice.blank] / pieces)
                .min()
                .unwrap_or(0)
                .clamp(1, to_rip);
            for (slice, pieces) in held() {
                left[slice.blank] = left[slice.blank].saturating_sub(alike * pieces);
            }
            let blanks = held()
                .map(|(slice, pieces)| (slice.blank, *pieces))
                .collect();
            cut.push((Section { blanks }, alike));
            to_rip -= alike;
            if to_rip > 0 {
                filling = best_section(board, strip, values.blanks, &left);
            }
        }
    }
    CutPattern::of(plank, cut)
}
