//! A plank as the saws see it: sections crosscut from it, strips ripped from a section.
//!
//! n pieces of sizes s with n − 1 cuts of width k fit in S when Σ s + (n − 1)·k ≤ S, which is
//! Σ (s + k) ≤ S + k. So the kerf is added to every piece and once to the plank, and forgotten.
//! The last cut may run out of the wood: what is left over is then shorter than the kerf.

use super::data::SawingDraft;

/// A plank with its kerfs added to it and to what is sawn from it. Micrometres.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Board {
    /// Length between the trims, and a kerf.
    pub(super) length: i64,
    /// Width between the trims, and a kerf.
    pub(super) width: i64,
    /// Kinds of section, one for each length of blank that fits.
    pub(super) strips: Vec<Strip>,
}

/// The blanks of one length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Strip {
    /// Length, and a kerf.
    pub(super) length: i64,
    /// What is ripped from it.
    pub(super) slices: Vec<Slice>,
}

/// A blank as ripped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Slice {
    /// Which blank.
    pub(super) blank: usize,
    /// Its thickness, and a kerf.
    pub(super) take: i64,
}

impl Board {
    /// The blanks wanted that fit a plank.
    pub(super) fn of(draft: &SawingDraft, plank: usize) -> Self {
        let stock = &draft.planks[plank];
        let mut board = Self {
            length: stock.size.length - 2 * stock.end_trim + draft.crosscut_kerf,
            width: stock.size.width - 2 * stock.edge_trim + draft.rip_kerf,
            strips: Vec::new(),
        };
        for (blank, order) in draft.blanks.iter().enumerate() {
            let length = order.size.length + draft.crosscut_kerf;
            let take = order.size.thickness + draft.rip_kerf;
            let fits = length <= board.length
                && take <= board.width
                && order.size.width <= stock.size.thickness;
            if !fits || (order.demand == 0 && order.most_over == 0) {
                continue;
            }
            let slice = Slice { blank, take };
            match board.strips.iter_mut().find(|strip| strip.length == length) {
                Some(strip) => strip.slices.push(slice),
                None => board.strips.push(Strip {
                    length,
                    slices: vec![slice],
                }),
            }
        }
        board
    }

    /// Whether a blank can be sawn from it.
    pub(super) fn takes(&self, blank: usize) -> bool {
        self.strips
            .iter()
            .flat_map(|strip| &strip.slices)
            .any(|slice| slice.blank == blank)
    }
}
