//! Where the wood of the planks goes; the parts add up to the whole, to the last cubic micrometre.

use super::data::{Dimensions, SawingData};
use super::laid::LaidPlank;
use super::plan::SawingPlan;
use crate::quantity::Volume;

/// A class of wood in the balance of a cutting plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SawnClass {
    /// Blanks that are wanted.
    WantedBlanks,
    /// Blanks beyond those that are wanted.
    BlanksBeyond,
    /// Thickness of the plank beyond the width of the blanks ripped from it.
    ThicknessLost,
    /// Chips of the rip cuts.
    RipKerfs,
    /// What is left across a section when its blanks are ripped off.
    RipWaste,
    /// Chips of the crosscuts.
    CrosscutKerfs,
    /// What is left at the end of a plank and is long enough to be used again.
    KeptOffcuts,
    /// What is left at the end of a plank and is too short for that.
    ShortOffcuts,
    /// Cut off the ends.
    EndTrims,
    /// Ripped off the edges.
    EdgeTrims,
}

impl SawnClass {
    /// Every class, in the order of the balance.
    pub const ALL: [Self; 10] = [
        Self::WantedBlanks,
        Self::BlanksBeyond,
        Self::ThicknessLost,
        Self::RipKerfs,
        Self::RipWaste,
        Self::CrosscutKerfs,
        Self::KeptOffcuts,
        Self::ShortOffcuts,
        Self::EndTrims,
        Self::EdgeTrims,
    ];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::WantedBlanks => "Blanks wanted",
            Self::BlanksBeyond => "Blanks beyond",
            Self::ThicknessLost => "Thickness lost",
            Self::RipKerfs => "Rip kerfs",
            Self::RipWaste => "Left across sections",
            Self::CrosscutKerfs => "Crosscut kerfs",
            Self::KeptOffcuts => "Offcuts to keep",
            Self::ShortOffcuts => "Short offcuts",
            Self::EndTrims => "End trims",
            Self::EdgeTrims => "Edge trims",
        }
    }
}

/// Where the wood of a cutting plan goes, in whole cubic micrometres.
///
/// A plank L × W × T with end trims e and edge trims g is split without gap or overlap, along first
/// and then across:
///
/// ```text
/// end trims         2·e·W·T
/// edge trims        2·g·(L − 2e)·T
/// crosscut kerfs    c·(W − 2g)·T        c = min(n·k, L − 2e − Σ a)
/// offcut            o·(W − 2g)·T        o = L − 2e − Σ a − c
/// of each section of length a:
///   rip kerfs       r·a·T               r = min(m·q, W − 2g − Σ t)
///   rip waste       x·a·T               x = W − 2g − Σ t − r
///   of each blank of width b and thickness t:
///     blank         a·b·t
///     thickness     a·t·(T − b)
/// ```
///
/// with n sections and a crosscut kerf k, m blanks in a section and a rip kerf q. A cut that runs out
/// of the wood counts as kerf, as far as there was wood: it comes to chips. An offcut is kept when it
/// is at least as long as [`OffcutWorth`](super::OffcutWorth) asks, whatever is made small, and none is
/// where nothing is said about offcuts. Of each kind of blank those made first are the wanted ones,
/// so that nothing counts as beyond before all that are wanted are there. (Derived from the sizes;
/// the classes are *common practice, no source*.)
///
/// ```
/// use solver::sawing::{CutPattern, SawingBalance, SawingDraft, SawingPlan, SawnClass, Section};
/// // Two pieces of 300 in 1000 with a kerf of 4, and one of them is wanted.
/// let data = SawingDraft::along(1_000, 4, &[(300, 1)]).check().unwrap();
/// let sections = vec![(Section { blanks: vec![(0, 1)] }, 2)];
/// let plan = SawingPlan { cuts: vec![(CutPattern { plank: 0, sections }, 1)], cost: 1 };
/// let balance = SawingBalance::of(&data, &plan).unwrap();
/// assert_eq!(balance.cubic_micrometres(SawnClass::WantedBlanks), 300);
/// assert_eq!(balance.cubic_micrometres(SawnClass::BlanksBeyond), 300);
/// assert_eq!(balance.cubic_micrometres(SawnClass::CrosscutKerfs), 8);
/// assert_eq!(balance.cubic_micrometres(SawnClass::ShortOffcuts), 392);
/// assert_eq!(balance.yielded(), 0.6);
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SawingBalance {
    parts: [i128; SawnClass::ALL.len()],
    planks: i128,
}

impl SawingBalance {
    /// The balance of a plan; nothing where one of its patterns cannot be sawn from its plank (see
    /// [`CutPattern::laid`](super::CutPattern::laid)), or where the planks are more than can be counted.
    #[must_use]
    pub fn of(data: &SawingData, plan: &SawingPlan) -> Option<Self> {
        let mut balance = Self {
            parts: [0; SawnClass::ALL.len()],
            planks: 0,
        };
        let mut made = vec![0_i128; data.blanks().len()];
        for (pattern, planks) in &plan.cuts {
            let laid = pattern.laid(data)?;
            let planks = i128::from(*planks);
            let wood = volume(&laid.stock().size).checked_mul(planks)?;
            // All that follows is a part of this, so that it can be counted as well.
            balance.planks = balance.planks.checked_add(wood)?;
            for (class, part) in waste(&laid) {
                balance.parts[class as usize] += part * planks;
            }
            for section in laid.sections() {
                for strip in section.strips() {
                    let pieces = i128::from(section.count()) * i128::from(strip.pieces);
                    made[strip.blank] += pieces * planks;
                }
            }
        }
        for (order, made) in data.blanks().iter().zip(made) {
            let wanted = made.min(i128::from(order.demand));
            let one = volume(&order.size);
            balance.parts[SawnClass::WantedBlanks as usize] += one * wanted;
            balance.parts[SawnClass::BlanksBeyond as usize] += one * (made - wanted);
        }
        Some(balance)
    }

    /// Wood of a class.
    #[must_use]
    pub const fn cubic_micrometres(&self, class: SawnClass) -> i128 {
        self.parts[class as usize]
    }

    /// Wood of the planks, of which all classes are the parts.
    #[must_use]
    pub const fn planks_in_cubic_micrometres(&self) -> i128 {
        self.planks
    }

    /// Volume of a class, rounded as a float is.
    #[must_use]
    pub const fn volume(&self, class: SawnClass) -> Volume {
        told(self.cubic_micrometres(class))
    }

    /// Volume of the planks, rounded as a float is.
    #[must_use]
    pub const fn planks(&self) -> Volume {
        told(self.planks)
    }

    /// Share of a class in the planks, 0 to 1; 0 where there is no plank.
    #[must_use]
    pub const fn share(&self, class: SawnClass) -> f64 {
        self.over_planks(self.cubic_micrometres(class))
    }

    /// Blanks, wanted and beyond, over planks, 0 to 1; 0 where there is no plank.
    #[must_use]
    pub const fn yielded(&self) -> f64 {
        let wanted = self.cubic_micrometres(SawnClass::WantedBlanks);
        self.over_planks(wanted + self.cubic_micrometres(SawnClass::BlanksBeyond))
    }

    const fn over_planks(&self, part: i128) -> f64 {
        if self.planks == 0 {
            0.0
        } else {
            part as f64 / self.planks as f64
        }
    }
}

/// What one plank gives that is no blank.
fn waste(laid: &LaidPlank) -> [(SawnClass, i128); 7] {
    let stock = laid.stock();
    let Dimensions {
        length,
        width,
        thickness,
    } = stock.size;
    let (between_ends, between_edges) = (length - 2 * stock.end_trim, width - 2 * stock.edge_trim);
    let wood = |length, width| {
        volume(&Dimensions {
            length,
            width,
            thickness,
        })
    };
    let (mut lost, mut rips, mut left) = (0, 0, 0);
    for section in laid.sections() {
        let count = i128::from(section.count());
        rips += count * wood(section.length(), section.rips());
        left += count * wood(section.length(), section.left());
        for strip in section.strips() {
            let over = Dimensions {
                width: thickness - strip.size.width,
                ..strip.size
            };
            lost += count * i128::from(strip.pieces) * volume(&over);
        }
    }
    let offcut = if laid.keeps_offcut() {
        SawnClass::KeptOffcuts
    } else {
        SawnClass::ShortOffcuts
    };
    [
        (SawnClass::ThicknessLost, lost),
        (SawnClass::RipKerfs, rips),
        (SawnClass::RipWaste, left),
        (
            SawnClass::CrosscutKerfs,
            wood(laid.crosscuts(), between_edges),
        ),
        (offcut, wood(laid.offcut(), between_edges)),
        (SawnClass::EndTrims, wood(2 * stock.end_trim, width)),
        (
            SawnClass::EdgeTrims,
            wood(between_ends, 2 * stock.edge_trim),
        ),
    ]
}

/// Length × width × thickness in cubic micrometres.
fn volume(size: &Dimensions) -> i128 {
    i128::from(size.length) * i128::from(size.width) * i128::from(size.thickness)
}

/// Cubic micrometres as a volume.
const fn told(cubic_micrometres: i128) -> Volume {
    Volume::cubic_millimetres(cubic_micrometres as f64 / 1e9)
}

#[cfg(test)]
mod tests;
