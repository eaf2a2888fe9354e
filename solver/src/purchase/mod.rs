//! Which slats to buy for a small order book at least cost.
//!
//! # The model
//!
//! ```text
//! Sets        p               orders
//!             s               slat stocks
//! Data        demand[p]       pencils ordered                            pencils
//!             yield[p,s]      pencils of p from one sandwich of s        pencils/sandwich
//!             on_hand[s]      slats in the store                         slats
//!             pack_slats[s]   slats in a pack                            slats/pack
//!             price[s]        price of a pack                            hundredths/pack
//!             limit[s]        packs to be had, if limited                packs
//! Variables   run[p,s] ∈ ℤ≥0  sandwiches of s glued for p; none where
//!                             yield[p,s] = 0                             sandwiches
//!             packs[s] ∈ ℤ≥0  packs of s bought                          packs
//! Minimise    Σ_s price[s]·packs[s]                                      hundredths
//! Subject to
//!   demand[p]:  Σ_s yield[p,s]·run[p,s] ≥ demand[p]                 ∀p   pencils
//!   slats[s]:   2·Σ_p run[p,s] ≤ on_hand[s] + pack_slats[s]·packs[s] ∀s  slats
//!   limit[s]:   packs[s] ≤ limit[s]                    ∀s with a limit   packs
//! ```
//!
//! A sandwich takes two slats of one stock. Pencils made beyond the demand and slats left over
//! cost nothing more and are worth nothing.
//!
//! # How it is solved, and why the bound holds
//!
//! 1. Orders that fail even with all slats to themselves are found by whole-number arithmetic.
//! 2. A quick plan serves one order after the other where it costs least.
//! 3. The relaxation lets `run` be any number ≥ 0 and keeps `packs` whole. Every plan is a
//!    solution of it at the same cost, so its least cost, and any lower bound on that, is a
//!    bound for plans. The rows `whole[p,k]` tighten it, for each k > 1 among the yields of p:
//!
//!    ```text
//!    whole[p,k]:  Σ_s ⌈yield[p,s] / k⌉·run[p,s] ≥ ⌈demand[p] / k⌉
//!    ```
//!
//!    Dividing `demand[p]` by k and rounding the coefficients up gives the left side ≥
//!    demand / k, and for whole runs the left side is whole, so the right side may be rounded
//!    up too. The bound is taken with a margin for floating point (stated at the model), then
//!    rounded up to a multiple of the greatest common divisor of all prices, as every cost is.
//! 4. The runs are rounded within the slats of those packs. Where that fails, whole runs are
//!    sought for the same packs, then by the exact model between the bound and the best plan.
//! 5. At a proved cost the slats used are made fewest, in the same two steps. Among plans met
//!    with equal cost and slats, the one with more of its runs on stocks listed early is kept;
//!    that last rule is not proved over all plans, but it gives the same plan in every run.
//!
//! Every plan is recounted by [`verify()`], which shares no code with the search.
//!
//! The proofs are the solver's, in floating point with the margin; the plan and its cost are
//! exact.

mod data;
mod greedy;
mod model;
mod plan;
mod rounding;
mod search;
#[cfg(test)]
mod tests;
mod verify;

pub use data::{
    MOST_LINES, MOST_ON_HAND, MOST_PACK_PRICE, MOST_PACK_SLATS, MOST_PENCILS, MOST_YIELD,
    PencilOrder, PurchaseData, PurchaseDraft, PurchaseProblem, SlatStock,
};
pub use plan::{Obstacle, Progress, PurchaseLimits, PurchaseOutcome, PurchasePlan};
pub use search::plan;
pub use verify::{PlanFault, verify};
