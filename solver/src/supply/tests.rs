use super::*;
use crate::field::{Cause, Place, Problem};
use crate::order_plan::{OrderPlanProblem, Pricing};
use crate::project::{Id, trial};
use crate::unit::LengthUnit;

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
            (Place::Tier(0, 1), Field::TierFrom),
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

#[test]
fn prices_that_rise_and_slats_that_never_come_are_told_all_at_once() {
    let found = told(|project| {
        let [first, second] = &mut project.supply.offers[..] else {
            panic!("two stocks, two offers")
        };
        let tier = |from, price| TierDraft {
            from_packs: Typed::Number(from),
            pack_price: Typed::Number(price),
        };
        first.draft.tiers = vec![tier(1.0, 90.0), tier(5.0, 90.0), tier(9.0, 90.01)];
        second.draft.lead_periods = Typed::Number(1.0);
    });
    assert_eq!(
        found,
        [
            (Place::Tier(0, 2), Field::PackPrice),
            (Place::Offer(1), Field::LeadPeriods),
        ]
    );
}

#[test]
fn stocks_follow_their_cheapest_offer_when_asked() {
    let mut project = trial();
    assert!(project.has_unoffered());
    assert_eq!(project.priced_apart(), []);
    project.offer_each_stock();
    assert!(!project.has_unoffered());
    assert_eq!(project.priced_apart(), []);
    let id = project.slats[0].id;
    // 100.00 for 500, 115.00 for 600, and one that cannot be read.
    let offers = [("500", "100"), ("600", "115"), ("many", "1")].map(|(pack, price)| {
        let mut draft = OfferDraft::new("Mill", id);
        draft.pack_slats = Typed::new(pack, Field::PackSlats, LengthUnit::Millimetre);
        draft.tiers[0].pack_price = Typed::new(price, Field::PackPrice, LengthUnit::Millimetre);
        draft.pack_limit = Typed::Number(7.0);
        draft
    });
    project.supply.offers[0].draft = offers[0].clone();
    for draft in offers {
        let id = project.free_id();
        project.supply.offers.push(Entry { id, draft });
    }
    assert_eq!(project.priced_apart(), [0]);
    project.price_as_offered();
    let stock = &project.slats[0].draft;
    assert_eq!(stock.pack_slats, Typed::Number(600.0));
    assert_eq!(stock.pack_price, Typed::Number(115.0));
    assert_eq!(stock.pack_limit, Typed::Number(7.0));
    assert_eq!(project.priced_apart(), []);
}

#[test]
fn what_sawn_slats_cost_is_taken_from_a_cutting_plan() {
    use crate::saw_shop::{BlankDraft, PlankDraft};
    use crate::sawing::{CutPattern, SawingPlan, Section};
    let mut project = trial();
    let entry = |id, draft| Entry { id: Id(id), draft };
    project.saw_shop.planks = vec![Entry {
        id: Id(20),
        draft: PlankDraft::new("Long"),
    }];
    let blank = |slat| BlankDraft {
        slat,
        ..BlankDraft::new("Blank")
    };
    project.saw_shop.blanks = vec![entry(21, blank(Some(Id(3)))), entry(22, blank(None))];
    let data = project.check_sawing().unwrap();
    // Ten planks, each with a section of five blanks of the stock and one of two typed ones.
    let section = |blank, pieces| Section {
        blanks: vec![(blank, pieces)],
    };
    let sections = vec![(section(0, 5), 1), (section(1, 2), 1)];
    let price = data.planks()[0].price;
    let plan = SawingPlan {
        cuts: vec![(CutPattern { plank: 0, sections }, 10)],
        cost: 10 * price,
    };
    assert_eq!(project.take_sawn(&data, &plan), 1);
    let sawn = &project.supply.sawn[0];
    assert_eq!((sawn.slat, &sawn.most_slats), (Id(3), &Typed::Number(50.0)));
    // The whole price over the volume of all, times that of a thousand.
    let volume = |at: usize| {
        let size = data.blanks()[at].size;
        size.length as f64 * size.width as f64 * size.thickness as f64
    };
    let all = 50.0 * volume(0) + 20.0 * volume(1);
    let expected = 10.0 * price as f64 / 100.0 * 1_000.0 * volume(0) / all;
    let Typed::Number(cost) = sawn.thousand_cost else {
        panic!("a number is put down")
    };
    assert!((cost - expected).abs() <= 0.01, "{cost}, {expected}");
    assert!(project.check_supply().is_ok());
    // A second time the same line is changed.
    project.supply.sawn[0].is_certified = true;
    project.take_sawn(&data, &plan);
    assert_eq!(project.supply.sawn.len(), 1);
    assert!(project.supply.sawn[0].is_certified);
}

#[test]
fn lines_of_one_pencil_and_period_are_gathered() {
    let mut project = trial();
    let line = |barrel, gross: &str, due| {
        let mut order = crate::project::OrderDraft::new(Id(barrel));
        order.gross = Typed::new(gross, Field::OrderGross, LengthUnit::Millimetre);
        order.due = Typed::Number(due);
        order.on_hand = Typed::Number(10.0);
        order
    };
    project.orders = vec![
        line(1, "2", 1.0),
        line(2, "1.5", 1.0),
        line(1, "many", 1.0),
        line(1, "3", 2.0),
        line(1, "0.25", 1.0),
    ];
    project.gather_orders();
    let lines: Vec<(u32, &Typed)> = (project.orders.iter())
        .map(|order| (order.barrel.0, &order.gross))
        .collect();
    let many = Typed::Text("many".into());
    let [first, second, third] = [2.25, 1.5, 3.0].map(Typed::Number);
    assert_eq!(lines, [(1, &first), (2, &second), (1, &many), (1, &third)]);
    assert_eq!(project.orders[0].on_hand, Typed::Number(20.0));
}
