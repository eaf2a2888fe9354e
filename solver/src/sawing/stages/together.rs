//! Crosscut planks and ripped sections put together into patterns.

use super::super::pattern::{CutPattern, Section};
use super::columns::Crosscut;
use super::ripping::Ripped;

/// Patterns of these planks, each section taken from those ripped that are left. As many planks as can
/// be are sawn alike.
pub(super) fn together(planks: &[(Crosscut, u64)], ripped: &Ripped) -> Vec<(CutPattern, u64)> {
    let mut left = ripped.clone();
    left.sort();
    let mut cuts = Vec::new();
    for (way, count) in planks {
        let mut to_saw = *count;
        while to_saw > 0 {
            let taken = sections_of_one(way, &left);
            let alike = (taken.iter())
                .map(|&(at, sections)| left[at].1 / sections)
                .min()
                .unwrap_or(to_saw)
                .clamp(1, to_saw);
            let mut sections = Vec::new();
            for (at, count) in taken {
                left[at].1 -= count * alike;
                let blanks = left[at].0.blanks.clone();
                sections.push((Section { blanks }, count));
            }
            if !sections.is_empty() {
                cuts.push((CutPattern::of(way.plank, sections), alike));
            }
            to_saw -= alike;
        }
    }
    cuts
}

/// What one plank takes of the ripped sections: their places, and how many.
fn sections_of_one(way: &Crosscut, left: &Ripped) -> Vec<(usize, u64)> {
    let mut taken = Vec::new();
    for (strip, &sections) in way.sections.iter().enumerate() {
        let mut free = sections;
        for (at, (rip, count)) in left.iter().enumerate() {
            if (rip.plank, rip.strip) == (way.plank, strip) {
                let these = free.min(*count);
                free -= these;
                taken.push((at, these));
            }
        }
    }
    taken.retain(|(_, count)| *count > 0);
    taken
}
