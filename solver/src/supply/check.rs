//! From a supply that may be wrong to what can be planned with.

use super::SupplyDraft;
use crate::field::{Cause, Field, FieldProblem, Place, Problem, Typed};
use crate::order_plan::{
    AimLimits, MILLION, MOST_PRICE, MOST_TIERS, Machine, Materials, Offer, OrderPlanDraft,
    OrderPlanProblem, OwnSawing, PlanAim, Priced, StageYields, StockLine,
};
use crate::project::{Entry, ProjectDraft, keep, one, placed};
use crate::wood::density;

/// What an order plan rests on beside barrels and layouts, in whole numbers.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Supplies {
    /// The machines, with the seconds of each period.
    pub(crate) machine: Machine,
    /// What is offered, each of a stock by its place in the project.
    pub(crate) offers: Vec<Offer>,
    /// Slats sawn in the works, for each stock of the project.
    pub(crate) sawn: Vec<Option<OwnSawing>>,
    /// Machine time of a sandwich.
    pub(crate) milliseconds: u32,
    /// Cost of a change-over, hundredths.
    pub(crate) changeover_cost: i64,
    /// Machine time of a change-over.
    pub(crate) changeover_seconds: u32,
    /// Holding a thousand pencils for a period, hundredths.
    pub(crate) pencil_holding: i64,
    /// Holding a thousand slats for a period, hundredths.
    pub(crate) slat_holding: i64,
    /// Leads, glue and coat.
    pub(crate) materials: Materials,
    /// Density of the wood at grooving, kg/m³.
    pub(crate) density: f64,
    /// What a tonne of chips brings, hundredths.
    pub(crate) chip_price: i64,
    /// Least certified share, millionths.
    pub(crate) least_certified: u32,
    /// Most pencils stored.
    pub(crate) most_pencils_stored: Option<u64>,
    /// Most slats stored.
    pub(crate) most_slats_stored: Option<u64>,
    /// What is made small.
    pub(crate) aim: PlanAim,
    /// What a plan may come to.
    pub(crate) limits: AimLimits,
    /// The period that each order is due in, from 0.
    pub(crate) due: Vec<usize>,
    /// What each stage leaves.
    pub(crate) stages: StageYields,
    /// Usable share of the slats that come to the groove head, millionths.
    pub(crate) usable: u32,
}

impl Supplies {
    /// Number of periods.
    pub(crate) fn periods(&self) -> usize {
        self.machine.seconds.len()
    }

    /// A plan without pencils and set-ups, of stocks of so many slats on hand and of such volumes.
    ///
    /// What grooving throws out is taken off slats on hand and sawn ones too: both are rounded down,
    /// and the cost of a thousand usable ones up.
    pub(crate) fn draft(&self, stocks: &[(u64, u32)]) -> OrderPlanDraft {
        let usable = |slats: u64| {
            let left = u128::from(slats) * u128::from(self.usable) / u128::from(MILLION);
            // Less than what it is a share of.
            left as u64
        };
        let dearer = |cost: i64| {
            let (cost, million) = (i128::from(cost), i128::from(MILLION));
            let usable = i128::from(self.usable.max(1));
            i64::try_from((cost * million + usable - 1) / usable).unwrap_or(i64::MAX)
        };
        let stock = |(place, &(on_hand, cubic_millimetres)): (usize, &(u64, u32))| StockLine {
            on_hand: usable(on_hand),
            holding: self.slat_holding,
            usable: self.usable,
            cubic_millimetres,
            sawing: self
                .sawn
                .get(place)
                .copied()
                .flatten()
                .map(|sawn| OwnSawing {
                    thousand_cost: dearer(sawn.thousand_cost),
                    most_slats: usable(sawn.most_slats),
                    ..sawn
                }),
        };
        OrderPlanDraft {
            periods: self.periods(),
            pencils: Vec::new(),
            stocks: stocks.iter().enumerate().map(stock).collect(),
            setups: Vec::new(),
            offers: self.offers.clone(),
            machine: self.machine.clone(),
            stages: self.stages,
            materials: self.materials,
            least_certified: self.least_certified,
            most_pencils_stored: self.most_pencils_stored,
            most_slats_stored: self.most_slats_stored,
            aim: self.aim,
            limits: self.limits,
        }
    }
}

impl ProjectDraft {
    /// What an order plan rests on beside barrels and layouts, or everything that stands in its way.
    ///
    /// # Errors
    /// Every problem of the periods, the offers and their prices, the slats sawn, the costs and limits,
    /// the yields of the run, and when orders are due, each at its [`Place`].
    pub(crate) fn check_supply(&self) -> Result<Supplies, Vec<Problem>> {
        let mut problems = Vec::new();
        let supplies = self.read_supply(&mut problems);
        // Beside fields that cannot be read, stand-ins would be told.
        if problems.is_empty()
            && let Err(found) = supplies.draft(&vec![(0, 0); self.slats.len()]).check()
        {
            problems.extend(
                found
                    .into_iter()
                    .map(|problem| self.place_of_supply(problem)),
            );
        }
        if problems.is_empty() {
            Ok(supplies)
        } else {
            Err(problems)
        }
    }

    /// Everything that is wrong in the supply itself; what stands elsewhere is told there, and what is
    /// only too much for an order plan is told where one is made.
    pub(crate) fn problems_of_supply(&self) -> Vec<Problem> {
        let mut problems = self.check_supply().err().unwrap_or_default();
        problems.retain(|Problem { place, problem }| {
            let is_too_much = matches!(
                problem.cause,
                Cause::OrderPlan(OrderPlanProblem::Lines { .. } | OrderPlanProblem::Price { .. })
            );
            !matches!(place, Place::Run | Place::Stage(_)) && !is_too_much
        });
        problems
    }

    /// Everything as far as it can be read, with stand-ins where it cannot.
    fn read_supply(&self, problems: &mut Vec<Problem>) -> Supplies {
        let supply = &self.supply;
        let seconds = (supply.periods.iter().enumerate())
            .map(|(at, period)| keep(one(period.check(), Place::Period(at)), problems).flatten())
            .collect();
        let offers = self.read_offers(problems);
        let sawn = self.read_sawn(problems);
        let due = self.read_due(problems);
        let run = keep(self.check_run(), problems);
        let yields = run.as_ref().map_or([1.0; 5], |run| run.yields);
        let moisture = self.conditions.check().map_or(0.0, |now| now.moisture);
        let density = run.map_or(0.0, |run| {
            density(run.specific_gravity, run.volumetric_shrinkage, moisture)
        });
        let [grooving, gluing, shaping, coating, finishing] = yields.map(millionths);
        let mut told = Vec::new();
        let limits = supply.read_limits(&mut told);
        let stored = supply.read_stores(&mut told);
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                told.push(problem);
                0.0
            })
        };
        let hour_cost = hundredths(read(&supply.hour_price, Field::MachineHourPrice));
        // The ranges of the fields lie within u32.
        let milliseconds =
            (read(&supply.sandwich_seconds, Field::SandwichSeconds) * 1000.0).round();
        let minutes = read(&supply.changeover_minutes, Field::ChangeoverMinutes);
        let mut money = |typed, field| hundredths(read(typed, field));
        let supplies = Supplies {
            machine: Machine { hour_cost, seconds },
            offers,
            sawn,
            milliseconds: milliseconds as u32,
            changeover_cost: money(&supply.changeover_cost, Field::ChangeoverCost),
            changeover_seconds: (minutes * 60.0).round() as u32,
            pencil_holding: money(&supply.pencil_holding, Field::PencilHolding),
            slat_holding: money(&supply.slat_holding, Field::SlatHolding),
            materials: Materials {
                thousand_leads: money(&supply.lead_price, Field::LeadPrice),
                thousand_glued: money(&supply.glue_price, Field::GluePrice),
                thousand_coated: money(&supply.coat_price, Field::CoatPrice),
            },
            density,
            chip_price: money(&supply.chip_price, Field::ChipPrice),
            least_certified: millionths(
                read(&supply.least_certified, Field::CertifiedShare) / 100.0,
            ),
            most_pencils_stored: stored[0],
            most_slats_stored: stored[1],
            aim: supply.aim,
            limits,
            due,
            stages: StageYields {
                gluing,
                shaping,
                coating,
                inspection: finishing,
                ..StageYields::default()
            },
            usable: grooving,
        };
        keep::<()>(placed(Err(told), Place::Supply), problems);
        supplies
    }

    fn read_offers(&self, problems: &mut Vec<Problem>) -> Vec<Offer> {
        let offers = self.supply.offers.iter().enumerate();
        let offers = offers.map(|(at, Entry { draft, .. })| {
            let stock = self.slat_place(draft.slat).unwrap_or_else(|| {
                let (field, cause) = (Field::PackSlats, Cause::NoSuchOffered);
                problems.push(Problem {
                    place: Place::Offer(at),
                    problem: FieldProblem { field, cause },
                });
                0
            });
            let (offer, mut own, mut of_tiers) = draft.read(stock);
            if own.is_empty() && of_tiers.is_empty() {
                of_tiers = offer.prices_that_rise();
                own.extend(self.never_in_time(&offer));
            }
            keep::<()>(placed(Err(own), Place::Offer(at)), problems);
            problems.extend(of_tiers.into_iter().map(|(tier, problem)| Problem {
                place: Place::Tier(at, tier),
                problem,
            }));
            offer
        });
        offers.collect()
    }

    /// An offer of which nothing comes in any period.
    fn never_in_time(&self, offer: &Offer) -> Option<FieldProblem> {
        let (lead, periods) = (offer.lead_periods, self.supply.periods.len());
        // Without periods that is what is told.
        (periods > 0 && lead >= periods).then_some(FieldProblem {
            field: Field::LeadPeriods,
            cause: Cause::NeverInTime { lead, periods },
        })
    }

    fn read_sawn(&self, problems: &mut Vec<Problem>) -> Vec<Option<OwnSawing>> {
        let mut sawn = vec![None; self.slats.len()];
        for (at, draft) in self.supply.sawn.iter().enumerate() {
            let place = Place::SawnSlats(at);
            let source = keep(placed(draft.check(), place), problems);
            let mut refuse = |cause| {
                let problem = FieldProblem {
                    field: Field::SawnCost,
                    cause,
                };
                problems.push(Problem { place, problem });
            };
            match self.slat_place(draft.slat).map(|stock| &mut sawn[stock]) {
                None => refuse(Cause::NoSuchSawn),
                Some(Some(_)) => refuse(Cause::SawnTwice),
                Some(stock) => *stock = source,
            }
        }
        sawn
    }

    /// The periods that orders are due in, from 0.
    fn read_due(&self, problems: &mut Vec<Problem>) -> Vec<usize> {
        let periods = self.supply.periods.len();
        let due = self.orders.iter().enumerate().map(|(at, order)| {
            let field = Field::DuePeriod;
            let due = order.due.read(field).and_then(|due| {
                // Within its range a period is whole and at least 1.
                let due = due as usize;
                let cause = Cause::AfterLastPeriod { due, periods };
                let late = FieldProblem { field, cause };
                if due <= periods {
                    Ok(due - 1)
                } else {
                    Err(late)
                }
            });
            keep(one(due, Place::Order(at)), problems).unwrap_or(0)
        });
        due.collect()
    }

    /// The first price of an offer that does not hold from more packs on than the one before it, or the
    /// first that is too many.
    fn wrong_tier(&self, offer: usize) -> usize {
        let offers = &self.supply.offers;
        let tiers = offers
            .get(offer)
            .map_or(&[][..], |offer| &offer.draft.tiers);
        let from = |tier: &super::TierDraft| tier.from_packs.read(Field::TierFrom).unwrap_or(0.0);
        if tiers.first().is_none_or(|tier| from(tier) > 1.0) {
            return 0;
        }
        let falls = tiers
            .windows(2)
            .position(|pair| from(&pair[1]) <= from(&pair[0]));
        falls.map_or(MOST_TIERS, |before| before + 1)
    }

    /// Where a broken limit of the supply is mended.
    pub(crate) fn place_of_supply(&self, problem: OrderPlanProblem) -> Problem {
        let (place, field) = match problem {
            OrderPlanProblem::Tiers { offer } => {
                (Place::Tier(offer, self.wrong_tier(offer)), Field::TierFrom)
            }
            OrderPlanProblem::Price {
                what: Priced::Pack { offer },
                ..
            } => {
                let dear = |tier: &super::TierDraft| {
                    let price = tier.pack_price.read(Field::PackPrice);
                    price.is_ok_and(|price| hundredths(price) > MOST_PRICE)
                };
                let tiers = self
                    .supply
                    .offers
                    .get(offer)
                    .map(|offer| &offer.draft.tiers);
                let tier = tiers.and_then(|tiers| tiers.iter().position(dear));
                (Place::Tier(offer, tier.unwrap_or(0)), Field::PackPrice)
            }
            OrderPlanProblem::Price {
                what: Priced::SawnSlats { stock },
                ..
            } => {
                let sawn = self.supply.sawn.iter();
                let mut stocks = sawn.map(|sawn| self.slat_place(sawn.slat));
                let at = stocks.position(|place| place == Some(stock));
                (Place::SawnSlats(at.unwrap_or(0)), Field::SawnCost)
            }
            OrderPlanProblem::Credit { .. }
            | OrderPlanProblem::Price {
                what: Priced::Chips { .. },
                ..
            } => (Place::Supply, Field::ChipPrice),
            OrderPlanProblem::OrderSize { offer, .. } => (Place::Offer(offer), Field::LeastOrder),
            OrderPlanProblem::OfferStock { offer } | OrderPlanProblem::PackSlats { offer, .. } => {
                (Place::Offer(offer), Field::PackSlats)
            }
            OrderPlanProblem::TooManyPencils { .. } => (Place::Order(0), Field::OrderGross),
            // Told of the whole list; every other number is kept by the range of its field.
            _ => (Place::Supply, Field::SandwichSeconds),
        };
        let cause = Cause::OrderPlan(problem);
        let problem = FieldProblem { field, cause };
        Problem { place, problem }
    }
}

impl SupplyDraft {
    fn read_limits(&self, problems: &mut Vec<FieldProblem>) -> AimLimits {
        let mut read = optional(problems);
        AimLimits {
            cost: read(&self.cost_limit, Field::CostLimit).map(hundredths),
            // A cubic metre is 10⁹ mm³; the range of the field lies far within i64.
            cubic_millimetres: read(&self.timber_limit, Field::TimberLimit)
                .map(|cubic_metres| (cubic_metres * 1e9).round() as i64),
            changeovers: read(&self.changeover_limit, Field::ChangeoverLimit)
                .map(|most| most as u64),
        }
    }

    /// Most pencils and most slats stored.
    fn read_stores(&self, problems: &mut Vec<FieldProblem>) -> [Option<u64>; 2] {
        let mut read = optional(problems);
        [
            read(&self.most_pencils_stored, Field::PencilStore).map(|most| most as u64),
            read(&self.most_slats_stored, Field::SlatStore).map(|most| most as u64),
        ]
    }
}

/// Reads fields that may stay empty, and collects what is wrong with them.
fn optional(problems: &mut Vec<FieldProblem>) -> impl FnMut(&Typed, Field) -> Option<f64> {
    |typed, field| {
        typed.read_optional(field).unwrap_or_else(|problem| {
            problems.push(problem);
            None
        })
    }
}

/// An amount of money in whole hundredths, rounded to the nearest.
pub(super) fn hundredths(amount: f64) -> i64 {
    (amount * 100.0).round() as i64
}

/// A share in millionths, rounded to the nearest.
pub(crate) fn millionths(share: f64) -> u32 {
    (share * f64::from(MILLION)).round() as u32
}
