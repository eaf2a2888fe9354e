//! From a draft to data that can be planned.

use super::data::OrderPlanData;
use super::draft::{LineSetup, OrderPlanDraft};
use super::offer::Offer;
use super::problem::{OrderPlanProblem, PeriodList, Priced};
use super::stages::MILLION;

/// Most periods.
pub const MOST_PERIODS: usize = 60;
/// Most kinds of pencil.
pub const MOST_PENCIL_KINDS: usize = 200;
/// Most slat stocks.
pub const MOST_STOCKS: usize = 64;
/// Most set-ups.
pub const MOST_SETUPS: usize = 1_000;
/// Most offers.
pub const MOST_OFFERS: usize = 500;
/// Most tiers of an offer.
pub const MOST_TIERS: usize = 8;
/// Most pencils due in all periods together, and on hand.
pub const MOST_PENCILS: u64 = 100_000_000;
/// Most slats of a stock on hand, or sawn in a period.
pub const MOST_SLATS: u64 = 100_000_000;
/// Most slats in a pack.
pub const MOST_PACK_SLATS: u32 = 1_000_000;
/// Most packs of an order.
pub const MOST_PACKS: u32 = 1_000_000;
/// Most leads of one kind of pencil in a sandwich.
pub const MOST_LEADS: u32 = 1_000;
/// Most sandwiches of a run: no longer one is planned, however few good pencils it gives.
pub const MOST_SANDWICHES: u64 = 1_000_000_000;
/// Longest machine time of a sandwich, milliseconds, and of changing over, seconds: an hour, and a
/// thousand hours.
pub const MOST_TIME: u32 = 3_600_000;
/// Highest price or cost, hundredths of the currency.
pub const MOST_PRICE: i64 = 10_000_000;

impl OrderPlanDraft {
    /// Turns the draft into data that can be planned, or names every rule it breaks.
    ///
    /// # Errors
    /// One [`OrderPlanProblem`] for each number outside its range and each thing named that is not
    /// there.
    ///
    /// ```
    /// use solver::order_plan::{OrderPlanDraft, OrderPlanProblem, PencilDemand};
    /// let draft = OrderPlanDraft {
    ///     periods: 2,
    ///     pencils: vec![PencilDemand::due(&[144])],
    ///     least_certified: 1_000_001,
    ///     ..OrderPlanDraft::default()
    /// };
    /// assert_eq!(draft.check().unwrap_err().len(), 3); // due, machine seconds, share
    /// ```
    pub fn check(self) -> Result<OrderPlanData, Vec<OrderPlanProblem>> {
        let mut problems = Vec::new();
        self.check_lists(&mut problems);
        self.check_pencils(&mut problems);
        self.check_stocks(&mut problems);
        self.check_shop(&mut problems);
        for (number, setup) in self.setups.iter().enumerate() {
            self.check_setup(number, setup, &mut problems);
        }
        for (number, offer) in self.offers.iter().enumerate() {
            self.check_offer(number, offer, &mut problems);
        }
        if !problems.is_empty() {
            return Err(problems);
        }
        let data = OrderPlanData::new(self);
        let dear = data.setups_with_too_dear_chips();
        if dear.is_empty() {
            Ok(data)
        } else {
            let problem = |setup| OrderPlanProblem::Credit { setup };
            Err(dear.into_iter().map(problem).collect())
        }
    }

    fn check_lists(&self, problems: &mut Vec<OrderPlanProblem>) {
        let periods = self.periods;
        if !(1..=MOST_PERIODS).contains(&periods) {
            problems.push(OrderPlanProblem::Periods { periods });
        }
        if self.pencils.len() > MOST_PENCIL_KINDS
            || self.stocks.len() > MOST_STOCKS
            || self.setups.len() > MOST_SETUPS
            || self.offers.len() > MOST_OFFERS
        {
            problems.push(OrderPlanProblem::Lines {
                pencils: self.pencils.len(),
                stocks: self.stocks.len(),
                setups: self.setups.len(),
                offers: self.offers.len(),
            });
        }
        let due = self.pencils.iter().enumerate();
        let due = due.map(|(pencil, line)| (PeriodList::Due { pencil }, line.due.len()));
        let setups = self.setups.iter().enumerate();
        let setups = setups.map(|(setup, line)| {
            let list = PeriodList::Changeover { setup };
            (list, line.changeover_cost.len())
        });
        let seconds = [(PeriodList::Seconds, self.machine.seconds.len())];
        for (list, length) in due.chain(setups).chain(seconds) {
            if length != periods {
                problems.push(OrderPlanProblem::ByPeriod {
                    list,
                    length,
                    periods,
                });
            }
        }
    }

    fn check_pencils(&self, problems: &mut Vec<OrderPlanProblem>) {
        let pencils: u128 = self
            .pencils
            .iter()
            .flat_map(|pencil| pencil.due.iter().chain([&pencil.on_hand]))
            .map(|&pencils| u128::from(pencils))
            .sum();
        if pencils > u128::from(MOST_PENCILS) {
            problems.push(OrderPlanProblem::TooManyPencils { pencils });
        }
        for (pencil, line) in self.pencils.iter().enumerate() {
            check_price(Priced::HeldPencils { pencil }, line.holding, problems);
        }
    }

    fn check_stocks(&self, problems: &mut Vec<OrderPlanProblem>) {
        for (stock, line) in self.stocks.iter().enumerate() {
            check_price(Priced::HeldSlats { stock }, line.holding, problems);
            check_share(line.usable, problems);
            let sawn = line.sawing.map_or(0, |sawing| sawing.most_slats);
            for slats in [line.on_hand, sawn] {
                if slats > MOST_SLATS {
                    problems.push(OrderPlanProblem::TooManySlats { stock, slats });
                }
            }
            if let Some(sawing) = line.sawing {
                check_price(Priced::SawnSlats { stock }, sawing.thousand_cost, problems);
            }
        }
    }

    fn check_shop(&self, problems: &mut Vec<OrderPlanProblem>) {
        check_price(Priced::MachineHour, self.machine.hour_cost, problems);
        let materials = &self.materials;
        for amount in [
            materials.thousand_leads,
            materials.thousand_glued,
            materials.thousand_coated,
        ] {
            check_price(Priced::Materials, amount, problems);
        }
        for share in self.stages.all().into_iter().chain([self.least_certified]) {
            check_share(share, problems);
        }
    }

    fn check_setup(&self, number: usize, setup: &LineSetup, problems: &mut Vec<OrderPlanProblem>) {
        let names: Vec<usize> = setup.laid.iter().map(|laid| laid.pencil).collect();
        let twice = (1..names.len()).any(|at| names[..at].contains(&names[at]));
        let pencils = names.iter().all(|&pencil| pencil < self.pencils.len());
        let stocks = setup.bottom.max(setup.top) < self.stocks.len();
        if twice || !pencils || !stocks {
            problems.push(OrderPlanProblem::SetupParts { setup: number });
        }
        let leads = setup.laid.iter().map(|laid| u64::from(laid.leads)).sum();
        if !(1..=u64::from(MOST_LEADS)).contains(&leads) {
            problems.push(OrderPlanProblem::Leads {
                setup: number,
                leads,
            });
        }
        for laid in &setup.laid {
            check_share(laid.good, problems);
        }
        let time = setup.milliseconds.max(setup.changeover_seconds);
        if time > MOST_TIME {
            problems.push(OrderPlanProblem::Time {
                setup: number,
                time,
            });
        }
        for &cost in &setup.changeover_cost {
            check_price(Priced::Changeover { setup: number }, cost, problems);
        }
        check_price(Priced::Chips { setup: number }, setup.credit, problems);
    }

    fn check_offer(&self, number: usize, offer: &Offer, problems: &mut Vec<OrderPlanProblem>) {
        let Some(stock) = self.stocks.get(offer.stock) else {
            problems.push(OrderPlanProblem::OfferStock { offer: number });
            return;
        };
        let usable = u64::from(offer.pack_slats) * u64::from(stock.usable) / u64::from(MILLION);
        if usable == 0 || offer.pack_slats > MOST_PACK_SLATS {
            problems.push(OrderPlanProblem::PackSlats {
                offer: number,
                pack_slats: offer.pack_slats,
                usable,
            });
        }
        let starts = offer.tiers.first().is_some_and(|tier| tier.from_packs == 1);
        let rise = offer
            .tiers
            .windows(2)
            .all(|pair| pair[0].from_packs < pair[1].from_packs);
        if !starts || !rise || offer.tiers.len() > MOST_TIERS {
            problems.push(OrderPlanProblem::Tiers { offer: number });
        }
        for tier in &offer.tiers {
            check_price(Priced::Pack { offer: number }, tier.pack_price, problems);
        }
        check_price(Priced::Order { offer: number }, offer.order_cost, problems);
        let (least, most) = (offer.least_packs, offer.most_packs);
        if least > most || most > MOST_PACKS {
            problems.push(OrderPlanProblem::OrderSize {
                offer: number,
                least,
                most,
            });
        }
    }
}

fn check_price(what: Priced, amount: i64, problems: &mut Vec<OrderPlanProblem>) {
    if !(0..=MOST_PRICE).contains(&amount) {
        problems.push(OrderPlanProblem::Price { what, amount });
    }
}

fn check_share(millionths: u32, problems: &mut Vec<OrderPlanProblem>) {
    if millionths > MILLION {
        problems.push(OrderPlanProblem::Share { millionths });
    }
}
