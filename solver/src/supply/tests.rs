use super::*;
use crate::field::{Cause, Place, Problem};
use crate::order_plan::{OrderPlanProblem, Pricing};
use crate::project::{Id, trial};

fn told(change: impl FnOnce(&mut ProjectDraft)) -> Vec<(Place, Field)> {
    let mut project = trial();
    project.offer_each_stock();
    change(&mut project);
    let problems = project.check().err().unwrap_or_default();
    (problems.iter())
        .map(|Problem { place, problem }| (*place, problem.field))
        .collect()
}

#[test]
fn each_stock_is_offered_once_at_its_own_pack_price_and_limit() {
    let mut project = trial();
    project.slats[1].draft.pack_limit = Typed::Number(7.0);
    project.slats[1].draft.pack_price = Typed::Text("dear".into());
    project.offer_each_stock();
    project.offer_each_stock();
    let offers = &project.supply.offers;
    assert_eq!(offers.len(), 2);
    assert_ne!(offers[0].id, offers[1].id);
    let second = &offers[1].draft;
    assert_eq!(second.slat, project.slats[1].id);
    assert_eq!(second.pack_limit, Typed::Number(7.0));
    assert_eq!(second.tiers[0].pack_price, Typed::Text("dear".into()));
}

#[test]
fn every_bad_field_is_told_at_its_place() {
    let wrong = || Typed::Number(-1.0);
    let found = told(|project| {
        let supply = &mut project.supply;
        supply.periods[0].hours = wrong();
        supply.offers[0].draft.lead_periods = wrong();
        supply.offers[1].draft.tiers[0].pack_price = wrong();
        supply.sawn = vec![SawnSlatsDraft::new(Id(4))];
        supply.sawn[0].most_slats = wrong();
        supply.slat_holding = wrong();
        supply.changeover_limit = wrong();
        project.orders[1].due = wrong();
    });
    assert_eq!(
        found,
        [
            (Place::Period(0), Field::MachineHours),
            (Place::Offer(0), Field::LeadPeriods),
            (Place::Tier(1, 0), Field::PackPrice),
            (Place::SawnSlats(0), Field::SawnMost),
            (Place::Order(1), Field::DuePeriod),
            (Place::Supply, Field::ChangeoverLimit),
            (Place::Supply, Field::SlatHolding),
        ]
    );
}

#[test]
fn what_only_fits_together_is_told_where_it_is_mended() {
    let found = told(|project| {
        let supply = &mut project.supply;
        let first = &mut supply.offers[0].draft;
        first.least_packs = Typed::Number(9.0);
        first.most_packs = Typed::Number(8.0);
        first.pricing = Pricing::Incremental;
        first.tiers.push(TierDraft::from_first(Typed::Number(90.0)));
    });
    assert_eq!(
        found,
        [
            (Place::Tier(0, 0), Field::TierFrom),
            (Place::Offer(0), Field::LeastOrder),
        ]
    );
}

#[test]
fn what_is_too_much_for_a_plan_only_keeps_from_the_plan() {
    let mut project = trial();
    project.offer_each_stock();
    project.supply.offers[1].draft.tiers[0].pack_price = Typed::Number(100_000.01);
    assert!(project.check().is_ok());
    let problems = project.check_order_plan().unwrap_err();
    assert_eq!(problems.len(), 1);
    let found = (problems[0].place, problems[0].problem.field);
    assert_eq!(found, (Place::Tier(1, 0), Field::PackPrice));
}

#[test]
fn what_has_gone_and_what_stands_twice_is_told() {
    let mut project = trial();
    project.supply.offers = vec![Entry {
        id: Id(90),
        draft: OfferDraft::new("Mill", Id(99)),
    }];
    project.supply.sawn = [99, 3, 3].map(|id| SawnSlatsDraft::new(Id(id))).to_vec();
    project.orders[0].due = Typed::Number(2.0);
    let causes: Vec<Cause> = (project.check().unwrap_err().into_iter())
        .map(|problem| problem.problem.cause)
        .collect();
    let (due, periods) = (2, 1);
    assert_eq!(
        causes,
        [
            Cause::NoSuchOffered,
            Cause::NoSuchSawn,
            Cause::SawnTwice,
            Cause::AfterLastPeriod { due, periods },
        ]
    );
}

#[test]
fn a_plan_needs_a_period() {
    let mut project = trial();
    project.orders.clear();
    project.supply.periods.clear();
    let problems = project.check().unwrap_err();
    let cause = Cause::OrderPlan(OrderPlanProblem::Periods { periods: 0 });
    assert_eq!(problems[0].problem.cause, cause);
}

#[test]
fn what_grooving_throws_out_is_counted_on_hand_and_of_what_is_sawn() {
    let mut project = trial();
    project.run.yields[0] = Typed::Number(80.0);
    let mut sawn = SawnSlatsDraft::new(Id(3));
    sawn.thousand_cost = Typed::Number(10.0);
    sawn.most_slats = Typed::Number(1_001.0);
    project.supply.sawn = vec![sawn];
    let draft = project.check_supply().unwrap().draft(&[(101, 5), (0, 5)]);
    let stock = draft.stocks[0];
    // 80.8, 800.8 and 10.00 / 0.8.
    let sawing = stock.sawing.unwrap();
    assert_eq!((stock.on_hand, stock.usable), (80, 800_000));
    assert_eq!((sawing.most_slats, sawing.thousand_cost), (800, 1_250));
    assert_eq!(draft.stocks[1].sawing, None);
}
