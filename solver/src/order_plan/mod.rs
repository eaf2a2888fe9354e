//! What to run, buy and saw in each period to fill an order book, with a bound.
//!
//! # The job
//!
//! Pencils are due at the end of periods. A set-up of the line, a layout on a bottom and a top slat,
//! gives pencils, of which the errors of the machines and the losses of the stages leave some good; a
//! change-over costs money and machine time in each period in which the set-up runs. Slats lie in the
//! store, are bought in packs from offers with price tiers, or sawn in the works. Pencils and slats can
//! wait at a cost. What is made small is all that is paid, or the volume of the slats bought and sawn,
//! or the number of change-overs, with limits on the others.
//!
//! Pencils on hand serve what is due first. Of all runs of a period as many whole pencils are counted as
//! are to be expected. Pencils and slats for which the plan has no further use leave its stores and are
//! not charged.
//!
//! # The model
//!
//! ```text
//! Sets        i                pencils
//!             j                set-ups
//!             k                slat stocks
//!             o, r             offers, each of one stock k(o), and their price tiers
//!             t                periods
//! Data        due[i,t]         pencils due less those on hand                  pencils
//!             good[i,j]        good pencils to expect from a sandwich          pencils/sandwich
//!             slats[j,k]       slats of stock k in a sandwich: 0, 1 or 2       slats/sandwich
//!             run_cost[j]      machine time, materials, less chips             money/sandwich
//!             open_cost[j,t]   changing over, with its machine time            money
//!             most[j,t]        sandwiches that can be of use                   sandwiches
//!             pack[o]          usable slats in a pack                          slats/pack
//!             lead[o]          periods from order to use                       periods
//!             base[o,r], each[o,r]   an order of q packs in tier r costs base + each·q   money
//!             least[o,r], most[o,r]  packs of an order in tier r               packs
//!             all[o]           packs over all periods, if limited              packs
//!             saw_cost[k], most_sawn[k]                                 money/slat, slats
//!             hold[i], hold[k] holding for a period                            money/piece
//!             time[j], change[j], seconds[t]                                   seconds
//! Variables   run[j,t]     ∈ ℤ≥0      sandwiches                               sandwiches
//!             open[j,t]    ∈ {0,1}    j runs in t
//!             packs[o,t,r] ∈ ℤ≥0      packs ordered in t in tier r             packs
//!             order[o,t,r] ∈ {0,1}    an order is made in t in tier r
//!             sawn[k,t]    ∈ ℤ≥0      slats sawn                               slats
//!             slats[k,t], pencils[i,t] ∈ ℤ≥0   stores at the end of t          pieces
//! Minimise    Σ_jt run_cost[j]·run[j,t] + open_cost[j,t]·open[j,t]
//!             + Σ_otr base[o,r]·order[o,t,r] + each[o,r]·packs[o,t,r]
//!             + Σ_kt saw_cost[k]·sawn[k,t] + hold[k]·slats[k,t] + Σ_it hold[i]·pencils[i,t]
//! Subject to
//!   due[i,t]:      pencils[i,t−1] + Σ_j good[i,j]·run[j,t] − pencils[i,t] ≥ due[i,t]     ∀i,t
//!   slats[k,t]:    slats[k,t−1] + Σ_{o of k} pack[o]·Σ_r packs[o,t−lead[o],r] + sawn[k,t]
//!                  − Σ_j slats[j,k]·run[j,t] − slats[k,t] ≥ 0                            ∀k,t
//!   open[j,t]:     run[j,t] ≤ most[j,t]·open[j,t]                                        ∀j,t
//!   most[o,t,r], least[o,t,r]:   least·order ≤ packs ≤ most·order                      ∀o,t,r
//!   one[o,t]:      Σ_r order[o,t,r] ≤ 1                                                  ∀o,t
//!   all[o]:        Σ_tr packs[o,t,r] ≤ all[o]                                ∀o with a limit
//!   machine[t]:    Σ_j time[j]·run[j,t] + change[j]·open[j,t] ≤ seconds[t]   ∀t with a limit
//!   pencils[t], slats[t]:   what is stored at the end of t                 if there is a limit
//!   certified:     certified volume ≥ share · volume, of what is bought and sawn
//!   limit:         cost, timber, change-overs                              if there is a limit
//! ```
//!
//! Tiers are a choice of one of many, with the tightest range for each. Where an order costs so much a
//! pack and nothing else, `order` is left out; where changing over is free, `open`. The ranges are made
//! as small as they go before anything is solved, and what no best plan needs is left out: the reasons
//! stand at the ranges.
//!
//! # How it is solved, and why the bound holds
//!
//! 1. A quick plan takes the cheapest set-up for each pencil, in lots (Wagner & Whitin 1958); where a
//!    certified share is asked for, another is made of certified wood alone.
//! 2. The relaxation lets everything be fractions. Rows that every plan keeps are added where it breaks
//!    them, and found exactly, in one pass over set-ups and periods (Barany, Van Roy & Wolsey 1984):
//!
//!    ```text
//!    cover[i,l]:     Σ_{j, t ≤ l} min(good[i,j]·run[j,t], w[i,j,t,l]·open[j,t]) ≥ Σ_{t ≤ l} due[i,t]
//!                    with w the lesser of what is due of i from t up to l and what most[j,t] gives
//!    supply[j,t,k]:  open[j,t] ≤ Σ_{o of k} Σ_{τ ≤ t−lead[o]} Σ_r order[o,τ,r]   with an empty store
//!    store[j,t,k]:   Σ_{τ ≤ t} slats[j,k]·run[j,τ] − sawn[k,τ]
//!                    ≤ on_hand[k] + (most − on_hand[k])·Σ_{o of k} Σ_{τ ≤ t−lead[o]} Σ_r order[o,τ,r]
//!                    with most the slats that these runs can take
//!    ```
//!
//! 3. Dives make choices one after the other; each point on the way is rounded to a plan. Parts of the
//!    best plan (pairs of stocks, groups of pencils, windows of periods) are planned anew while the rest
//!    stays.
//! 4. Branches, first with whole choices, then with whole packs, last with all whole (in one period with
//!    all whole at once), only for values below the best plan. Each is a relaxation of the next, so each
//!    bound holds for plans; when nothing is left below the best plan, its value is the bound.
//!
//! Bounds are those of the solver, in floating point, with a margin that is stated where it is taken;
//! plans and their costs are exact. Every plan is recounted by [`verify()`], which shares no code with
//! the search. A plan is *proved* when none is cheaper by a hundredth of the currency, or has less timber
//! or fewer change-overs. That there is *no* plan is proved by the relaxation or by branches; what
//! clashes is then found on the relaxation.

mod certifying;
mod check;
mod clash;
mod data;
mod draft;
mod fault;
mod gain;
mod greedy;
mod improving;
mod levelling;
mod model;
mod neighbourhood;
mod offer;
mod outcome;
mod plan;
mod problem;
mod purchasing;
mod ranges;
mod rounding;
mod search;
mod stages;
#[cfg(test)]
mod tests;
mod verify;
mod worth;

pub use check::{
    MOST_LEADS, MOST_OFFERS, MOST_PACK_SLATS, MOST_PACKS, MOST_PENCIL_KINDS, MOST_PENCILS,
    MOST_PERIODS, MOST_PRICE, MOST_SANDWICHES, MOST_SETUPS, MOST_SLATS, MOST_STOCKS, MOST_TIERS,
    MOST_TIME,
};
pub use clash::{Clash, Wish};
pub use data::OrderPlanData;
pub use draft::{
    AimLimits, Laid, LineSetup, Machine, OrderPlanDraft, OwnSawing, PencilDemand, PlanAim,
    StockLine,
};
pub use fault::OrderPlanFault;
pub use offer::{Offer, PriceTier, Pricing};
pub use outcome::{OrderPlanLimits, OrderPlanOutcome, OrderPlanProgress};
pub use plan::{CostParts, OrderPlan};
pub use problem::{OrderPlanProblem, PeriodList, Priced};
pub use search::plan_orders;
pub use stages::{MILLION, Materials, StageYields};
pub use verify::verify;
pub use worth::{PacksWorth, Worths, break_even, worths};
