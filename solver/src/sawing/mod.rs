//! Planks sawn into slat blanks, with a proved bound.
//!
//! # The job
//!
//! A plank is crosscut into sections; each section is ripped into blanks of the section's length. A
//! blank's width lies in the thickness of the plank, its thickness is ripped across the plank's width.
//! Between two pieces goes a kerf; ends and edges are trimmed. Planks of several kinds may be limited;
//! what is made small is their price, less what long offcuts and blanks beyond the demand are worth,
//! or their number, or their volume.
//!
//! # The model
//!
//! ```text
//! Sets        i              kinds of blank
//!             p              kinds of plank
//!             j              patterns: all ways to saw one plank; plank[j] is the kind
//! Data        wanted[i]      blanks                                          pieces
//!             over[i]        blanks beyond those that are worth something    pieces
//!             worth[i]       worth of each of those                          units of the aim
//!             planks[p]      planks on hand, if limited                      pieces
//!             made[i,j]      blanks i from a plank sawn like j               pieces
//!             weight[j]      weight of the plank less the worth of the offcut    units of the aim
//! Variables   share[j] ∈ ℤ≥0 planks sawn like j                              pieces
//!             beyond[i] ∈ [0, over[i]]                                       pieces
//! Minimise    Σ_j weight[j]·share[j] − Σ_i worth[i]·beyond[i]
//! Subject to  blanks[i]: Σ_j made[i,j]·share[j] − beyond[i] ≥ wanted[i]      ∀i
//!             planks[p]: Σ_{j of p} share[j] ≤ planks[p]              ∀p with a limit
//! ```
//!
//! The units of the aim are hundredths of the currency, planks, or cubic millimetres.
//!
//! # How it is solved, and why the bound holds
//!
//! 1. Plans are made plank by plank, with values of the blanks corrected from plan to plan.
//! 2. The relaxation lets shares be fractions. Its patterns are found as they are needed: a master
//!    problem values the blanks, and two knapsacks, one in the other, find the plank worth most, in
//!    whole numbers (Gilmore & Gomory 1961, 1965).
//! 3. The values, rounded down to whole numbers and priced once more, are a certificate of a bound
//!    that holds whatever floating point did: see [`Certificate`].
//! 4. Where planks of several kinds leave a gap, the plans are parted by how many planks of a kind they
//!    saw, each part with a certificate of its own: see [`Proof`].
//! 5. Where sections hold blanks side by side, plans are made by stages: whole numbers of planks, then of
//!    sections of each length, which are chosen together so that they fill the planks.
//! 6. Elsewhere, and where that leaves a gap, dives take whole planks from the mixture, solve the rest
//!    anew, and turn back where that can lead to nothing better.
//!
//! A plan is *proved* when its cost is no more than the bound of a proof. That a rounded-up relaxation
//! is met by a plan is never taken for granted: a plan that meets it is in hand. Every plan is recounted
//! by [`verify()`] and every proof priced anew before it is told.

mod balance;
mod board;
mod branches;
mod certificate;
mod column;
pub(crate) mod csv;
mod data;
mod diving;
mod knapsack;
mod laid;
mod list;
mod master;
mod names;
mod needs;
mod pattern;
mod plan;
mod pricing;
mod proof;
mod relaxation;
mod search;
mod sequential;
mod stages;
#[cfg(test)]
mod tests;
mod verify;

pub use balance::{SawingBalance, SawnClass};
pub use certificate::Certificate;
pub use data::{
    BlankOrder, Dimensions, MOST_BLANKS, MOST_DEMAND, MOST_KERF, MOST_LENGTH, MOST_PIECES,
    MOST_PLANKS, MOST_PRICE, MOST_THICKNESS, MOST_WIDTH, OffcutWorth, PlankStock, SawingAim,
    SawingData, SawingDraft, SawingProblem,
};
pub use laid::{LaidPlank, LaidSection, LaidStrips};
pub use list::{BillLine, BlankLine, CutLine, SawingList};
pub use names::SawingNames;
pub use pattern::{CutPattern, Section};
pub use plan::{SawingLimits, SawingOutcome, SawingPlan, SawingProgress};
pub use proof::Proof;
pub use search::saw;
pub use verify::{SawingFault, verify};
