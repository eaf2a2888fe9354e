//! The saw shop of a works: its planks, the blanks it saws from them, its saws.

mod blank;
mod check;
mod micrometres;
mod plank;
mod reckoning;
#[cfg(test)]
mod tests;

pub use blank::BlankDraft;
pub use plank::PlankDraft;
pub use reckoning::{SawnBlank, SawnReckoning};

use crate::field::{Field, FieldProblem, Typed};
use crate::project::Entry;
use crate::sawing::{OffcutWorth, SawingAim};
use micrometres::{hundredths, up};

/// Planks, blanks and saws as they are being described; any may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct SawShopDraft {
    /// The kinds of plank.
    pub planks: Vec<Entry<PlankDraft>>,
    /// The kinds of blank.
    pub blanks: Vec<Entry<BlankDraft>>,
    /// Wood a crosscut takes.
    pub crosscut_kerf: Typed,
    /// Wood a rip cut takes.
    pub rip_kerf: Typed,
    /// Moisture content of the wood when it is sawn.
    pub moisture: Typed,
    /// The shortest offcut that can be used again; empty when none is.
    pub shortest_offcut: Typed,
    /// Worth of a metre of such an offcut.
    pub offcut_price: Typed,
    /// What is made as small as possible.
    pub aim: SawingAim,
}

/// The saws, and what is counted as a loss, in whole micrometres and hundredths.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Saws {
    crosscut_kerf: i64,
    rip_kerf: i64,
    /// Moisture content of the wood when it is sawn, percent.
    moisture: f64,
    offcuts: Option<OffcutWorth>,
}

impl SawShopDraft {
    /// Without planks and blanks, with the first value in every field; offcuts are worth nothing.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            planks: Vec::new(),
            blanks: Vec::new(),
            crosscut_kerf: Typed::initial(Field::CrosscutKerf),
            rip_kerf: Typed::initial(Field::RipKerf),
            moisture: Typed::initial(Field::SawnMoisture),
            shortest_offcut: Typed::empty(),
            offcut_price: Typed::initial(Field::OffcutPrice),
            aim: SawingAim::Cost,
        }
    }

    /// The saws without planks and blanks; kerfs and the shortest offcut are rounded up.
    fn saws(&self) -> Result<Saws, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let shortest = self.shortest_offcut.read_optional(Field::ShortestOffcut);
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let crosscut_kerf = up(read(&self.crosscut_kerf, Field::CrosscutKerf));
        let rip_kerf = up(read(&self.rip_kerf, Field::RipKerf));
        let moisture = read(&self.moisture, Field::SawnMoisture);
        // What offcuts are worth counts only where there are any.
        let metre = match shortest {
            Ok(None) => 0,
            _ => hundredths(read(&self.offcut_price, Field::OffcutPrice)),
        };
        match shortest {
            Ok(shortest) if problems.is_empty() => Ok(Saws {
                crosscut_kerf,
                rip_kerf,
                moisture,
                offcuts: shortest.map(|shortest| OffcutWorth {
                    shortest: up(shortest),
                    metre,
                }),
            }),
            shortest => {
                problems.extend(shortest.err());
                Err(problems)
            }
        }
    }
}

impl Default for SawShopDraft {
    fn default() -> Self {
        Self::new()
    }
}

impl SawingAim {
    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Cost => "Least cost",
            Self::Planks => "Fewest planks",
            Self::Volume => "Least wood",
        }
    }
}
