//! Checks a plan by adding up wood and blanks, in whole numbers and without the search.

use super::data::{Dimensions, SawingAim, SawingData, SawingDraft};
use super::pattern::CutPattern;
use super::plan::SawingPlan;

/// Recounts a plan: every section fits its plank, every blank its section, no more planks than there
/// are, and the cost as told. Whether all that is wanted is made is told by [`SawingPlan::short`].
///
/// # Errors
/// The first [`SawingFault`] met.
pub fn verify(data: &SawingData, plan: &SawingPlan) -> Result<(), SawingFault> {
    let draft = data.draft();
    let mut sawn = vec![0_u128; draft.planks.len()];
    let mut made = vec![0_u128; draft.blanks.len()];
    let mut cost = 0_i128;
    for (number, (pattern, count)) in plan.cuts.iter().enumerate() {
        let left = fits(draft, pattern).ok_or(SawingFault::Pattern { number })?;
        let plank = &draft.planks[pattern.plank];
        sawn[pattern.plank] += u128::from(*count);
        for (section, sections) in &pattern.sections {
            for (blank, pieces) in &section.blanks {
                made[*blank] += u128::from(*count) * u128::from(*sections) * u128::from(*pieces);
            }
        }
        let one = match draft.aim {
            SawingAim::Cost => {
                let worth = draft
                    .offcuts
                    .filter(|worth| left >= i128::from(worth.shortest));
                let worth = worth.map_or(0, |worth| left * i128::from(worth.metre) / 1_000_000);
                i128::from(plank.price) - worth
            }
            SawingAim::Planks => 1,
            SawingAim::Volume => volume(&plank.size),
        };
        cost += one * i128::from(*count);
    }
    for (plank, (stock, &sawn)) in draft.planks.iter().zip(&sawn).enumerate() {
        if let Some(on_hand) = stock.on_hand
            && sawn > u128::from(on_hand)
        {
            return Err(SawingFault::Planks {
                plank,
                sawn,
                on_hand,
            });
        }
    }
    if draft.aim == SawingAim::Cost {
        for (blank, &made) in draft.blanks.iter().zip(&made) {
            let over = made
                .saturating_sub(u128::from(blank.demand))
                .min(u128::from(blank.most_over));
            cost -= i128::from(blank.over_worth) * over.cast_signed();
        }
    }
    if cost == i128::from(plan.cost) {
        Ok(())
    } else {
        let told = plan.cost;
        Err(SawingFault::Cost {
            counted: cost,
            told,
        })
    }
}

/// Length that is left at the end of the plank, if the pattern fits it; micrometres.
fn fits(draft: &SawingDraft, pattern: &CutPattern) -> Option<i128> {
    let plank = draft.planks.get(pattern.plank)?;
    let length = i128::from(plank.size.length) - 2 * i128::from(plank.end_trim);
    let width = i128::from(plank.size.width) - 2 * i128::from(plank.edge_trim);
    let mut sections = 0;
    let mut along = 0;
    for (section, count) in &pattern.sections {
        let (first, _) = section.blanks.first()?;
        let section_length = draft.blanks.get(*first)?.size.length;
        let mut pieces = 0;
        let mut across = 0;
        for (blank, of_it) in &section.blanks {
            let size = &draft.blanks.get(*blank)?.size;
            if size.length != section_length || size.width > plank.size.thickness {
                return None;
            }
            pieces += i128::from(*of_it);
            across += i128::from(*of_it) * i128::from(size.thickness);
        }
        across += (pieces - 1) * i128::from(draft.rip_kerf);
        if pieces < 1 || across > width {
            return None;
        }
        sections += i128::from(*count);
        along += i128::from(*count) * i128::from(section_length);
    }
    let kerf = i128::from(draft.crosscut_kerf);
    let fits = sections >= 1 && along + (sections - 1) * kerf <= length;
    fits.then(|| (length - along - sections * kerf).max(0))
}

/// Cubic millimetres, rounded to the nearest.
fn volume(size: &Dimensions) -> i128 {
    let product = i128::from(size.length) * i128::from(size.width) * i128::from(size.thickness);
    (product + 500_000_000) / 1_000_000_000
}

/// How a plan fails its recount: a fault of this module, never of the data. Patterns and planks are
/// counted from 0 in the fields and from 1 in the messages.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SawingFault {
    /// A pattern does not fit its plank, or names what is not there.
    #[error("pattern {} does not fit its plank", number + 1)]
    Pattern {
        /// The pattern.
        number: usize,
    },
    /// More planks are sawn than there are.
    #[error("{sawn} of plank {} are sawn, {on_hand} are on hand", plank + 1)]
    Planks {
        /// The plank.
        plank: usize,
        /// How many are sawn.
        sawn: u128,
        /// How many there are.
        on_hand: u64,
    },
    /// The cost is another than told.
    #[error("the plan costs {counted}, not {told}")]
    Cost {
        /// As counted.
        counted: i128,
        /// As told.
        told: i64,
    },
    /// A bound is above what its proof proves.
    #[error("the bound is not proved")]
    Bound,
}
