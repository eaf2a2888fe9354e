//! Small books, recounted by hand.

use super::*;
use crate::cutter_set::CutterSetDraft;
use crate::field::{Field, Place, Typed};
use crate::order_plan::{OrderPlanLimits, PlanAim, Pricing};
use crate::project::{Entry, Id, ProjectDraft, trial};
use crate::search_rules::Pairs;
use crate::supply::{OfferDraft, PeriodDraft, SawnSlatsDraft, TierDraft};
use crate::unit::LengthUnit;

/// A hexagon and a round pencil on 74 × 5 and 78 × 5.2, both in packs of 600 for 100.00; nothing is
/// lost in the stages, and the machines have no errors.
fn project() -> ProjectDraft {
    let mut project = trial();
    project.run.yields = [const { Typed::Number(100.0) }; 5];
    project.layout.accuracy = Id(99);
    project.cutter_sets.clear();
    project.orders.truncate(1);
    project.orders[0].gross = Typed::Number(100.0);
    project.offer_each_stock();
    project
}

#[track_caller]
fn answer(project: &ProjectDraft) -> OrderAnswer {
    let job = project.check_order_plan().unwrap();
    job.answer(&OrderPlanLimits::default(), &mut |_| true)
        .unwrap()
}

#[track_caller]
fn proved(project: &ProjectDraft) -> OrderReckoning {
    let answer = answer(project);
    assert_eq!(answer.end, OrderEnd::Proved);
    // Nothing is cheaper by a hundredth of the currency.
    assert!(answer.value.unwrap() - answer.bound.unwrap() < 1_000);
    answer.reckoning.unwrap()
}

fn tier(from: f64, price: f64) -> TierDraft {
    TierDraft {
        from_packs: Typed::Number(from),
        pack_price: Typed::Number(price),
    }
}

#[test]
fn a_book_of_one_period_buys_as_the_purchase_list_does() {
    // 14 400 pencils at ten a sandwich: 1 440 sandwiches, 2 880 slats, five packs of 600.
    let list = proved(&project());
    assert_eq!((list.total, list.cost_per_gross), (50_000.0, Some(500.0)));
    assert_eq!(list.periods[0].runs[0].sandwiches, 1_440);
    let order = &list.orders[0];
    assert_eq!((order.packs, order.slats, order.price), (5, 3_000, 50_000));
    assert_eq!(list.changeovers, 1);
    let slats = &list.slats[0];
    assert_eq!(
        (&slats.comes[..], &slats.goes[..], &slats.spare[..]),
        (&[3_000][..], &[2_880][..], &[120][..])
    );
}

#[test]
fn tiers_are_read_both_ways() {
    let mut project = project();
    project.supply.offers.truncate(1);
    project.supply.offers[0].draft.tiers = vec![tier(1.0, 100.0), tier(4.0, 80.0)];
    assert_eq!(proved(&project).total, 40_000.0);
    project.supply.offers[0].draft.pricing = Pricing::Incremental;
    let list = proved(&project);
    // Three at 100.00 and two at 80.00.
    assert_eq!(list.total, 46_000.0);
    assert_eq!(
        (list.orders[0].from_packs, list.orders[0].pack_price),
        (4, 8_000)
    );
}

#[test]
fn stages_and_errors_leave_fewer_good_pencils() {
    let mut project = project();
    project.run.yields[1] = Typed::Number(90.0);
    project.run.yields[4] = Typed::Number(80.0);
    let list = proved(&project);
    let run = &list.periods[0].runs[0];
    assert!((run.good_per_sandwich - 7.2).abs() < 1e-9, "{run:?}");
    assert_eq!(run.sandwiches, 2_000);
    // The line of the trial project has errors.
    project.layout.accuracy = Id(8);
    let list = proved(&project);
    let run = &list.periods[0].runs[0];
    assert!(
        run.good_per_sandwich < 7.2 && run.sandwiches > 2_000,
        "{run:?}"
    );
}

#[test]
fn what_waits_and_comes_later_is_told_by_period() {
    let mut project = project();
    project.supply.periods = vec![PeriodDraft::new("March"), PeriodDraft::new("")];
    project.supply.offers.truncate(1);
    project.supply.offers[0].draft.lead_periods = Typed::Number(1.0);
    project.supply.offers[0].draft.supplier = "Mill".into();
    project.orders[0].due = Typed::Number(2.0);
    let list = proved(&project);
    let order = &list.orders[0];
    assert_eq!(
        (order.supplier.as_str(), order.ordered.as_str()),
        ("Mill", "March")
    );
    assert_eq!(order.comes.as_deref(), Some("Period 2"));
    assert_eq!(list.periods[1].runs.len(), 1);
    assert_eq!(list.slats[0].comes, [0, 3_000]);
    let csv = list.purchase_csv();
    let row = "March,Mill,74 × 5,5,3000,1,100.00,0.00,500.00,Period 2,no";
    assert_eq!(csv.lines().nth(1), Some(row));
}

#[test]
fn slats_are_sawn_where_that_is_cheaper() {
    let mut project = project();
    let mut sawn = SawnSlatsDraft::new(Id(3));
    sawn.thousand_cost = Typed::Number(50.0);
    sawn.most_slats = Typed::Number(1_080.0);
    project.supply.sawn = vec![sawn];
    let list = proved(&project);
    // 1 080 sawn for 54.00, and three packs for the other 1 800.
    assert_eq!(list.sawn[0].slats, 1_080);
    assert_eq!(
        (list.costs[0].amount, list.costs[1].amount),
        (30_000.0, 5_400.0)
    );
    assert_eq!(list.total, 35_400.0);
}

#[test]
fn costs_beside_the_slats_are_counted() {
    let mut project = project();
    let supply = &mut project.supply;
    supply.hour_price = Typed::Number(36.0);
    supply.sandwich_seconds = Typed::Number(2.5);
    supply.changeover_minutes = Typed::Number(60.0);
    supply.changeover_cost = Typed::Number(7.0);
    supply.lead_price = Typed::Number(10.0);
    supply.glue_price = Typed::Number(20.0);
    supply.coat_price = Typed::Number(5.0);
    let list = proved(&project);
    // 1 440 · 2.5 s is an hour, and one to change over; 14 400 leads and coats, 1 440 sandwiches.
    assert_eq!(list.periods[0].hours, 2.0);
    let amounts = list.costs.map(|cost| cost.amount);
    let materials = 14_400.0 * 1.5 + 1_440.0 * 2.0;
    assert_eq!(
        amounts,
        [50_000.0, 0.0, materials, 7_200.0, 700.0, 0.0, 0.0]
    );
    assert_eq!(list.total, amounts.iter().sum::<f64>());
}

#[test]
fn a_set_that_is_owned_lays_at_its_pitch_and_one_to_be_paid_does_not() {
    let mut project = project();
    let mut nines = CutterSetDraft::new("Nines");
    nines.pitch = Typed::Number(7.4);
    nines.most = Typed::Number(9.0);
    project.cutter_sets = vec![Entry {
        id: Id(31),
        draft: nines,
    }];
    let run = proved(&project).periods.swap_remove(0).runs.swap_remove(0);
    assert_eq!(
        (run.set.as_deref(), run.pencils_per_sandwich),
        (Some("Nines"), 9)
    );
    project.cutter_sets[0].draft.price = Typed::Number(300.0);
    let run = proved(&project).periods.swap_remove(0).runs.swap_remove(0);
    assert_eq!((run.set, run.pencils_per_sandwich), (None, 10));
}

#[test]
fn every_pair_is_laid_where_the_search_may_try_it() {
    let mut project = project();
    let pairs = |project: &ProjectDraft| {
        let job = project.check_order_plan().unwrap();
        let pairs = job.setups().iter().map(|laid| (laid.bottom, laid.top));
        // Both ways round stay: one gives more pencils, the other takes fewer leads.
        let mut pairs: Vec<_> = pairs.collect();
        pairs.dedup();
        pairs
    };
    assert_eq!(pairs(&project), [(0, 0), (1, 1)]);
    project.search.pairs = Pairs::Any;
    // The same two slats the other way round give no more.
    assert_eq!(pairs(&project), [(0, 0), (0, 1), (1, 1)]);
}

#[test]
fn nothing_is_kept_that_gives_less_from_as_many_leads() {
    let job = trial().check_order_plan().unwrap();
    for (place, one) in job.setups().iter().enumerate() {
        for other in &job.setups()[..place] {
            let same = (one.barrel, one.bottom, one.top) == (other.barrel, other.bottom, other.top);
            assert!(
                !same
                    || (one.pencils > other.pencils) == (one.good_pencils() > other.good_pencils())
            );
        }
    }
}

#[test]
fn orders_of_one_barrel_are_one_demand() {
    let mut project = project();
    project.supply.periods.push(PeriodDraft::new(""));
    let mut more = project.orders[0].clone();
    more.due = Typed::Number(2.0);
    project.orders.push(more);
    let job = project.check_order_plan().unwrap();
    assert_eq!(job.data().pencils().len(), 1);
    assert_eq!(job.data().pencils()[0].due, [14_400, 14_400]);
}

#[test]
fn what_clashes_is_told_in_sentences() {
    let mut project = project();
    project.supply.periods[0].hours = Typed::Number(1.0);
    project.supply.sandwich_seconds = Typed::Number(3.0);
    project.supply.changeover_minutes = Typed::Number(0.0);
    let answer = answer(&project);
    assert_eq!((answer.end, answer.value), (OrderEnd::NoPlan, None));
    let told: Vec<String> = (answer.clashes.iter())
        .map(|clash| {
            clash
                .sentence(LengthUnit::Millimetre)
                .replace('\u{202f}', " ")
        })
        .collect();
    // 1 200 sandwiches of ten in an hour; 1 440 · 3 s are 1.2 h. Where no machine is limited but this.
    assert_eq!(
        told,
        [
            "Due of Office: 14 400 pencils; with all else as it is, at most 12 000 pencils",
            "Machine hours in Period 1: 1.0 h; with all else as it is, at least 1.2 h",
        ]
    );
}

#[test]
fn a_pencil_that_fits_no_slats_says_so() {
    let mut project = project();
    for slat in &mut project.slats {
        slat.draft.thickness = Typed::Number(3.0);
    }
    let answer = answer(&project);
    let told = answer.clashes[0].sentence(LengthUnit::Millimetre);
    assert!(told.contains("no slats hold it"), "{told}");
}

#[test]
fn what_would_save_is_told() {
    let mut project = project();
    project.supply.offers.truncate(1);
    let answer = answer(&project);
    let gross = &answer.worths[0];
    assert_eq!(
        gross.change,
        "One gross less of Office, of what is due last"
    );
    // 28.8 slats less at 100.00 for 600.
    assert!((gross.saves - 480_000).abs() <= 1, "{gross:?}");
    assert_eq!(
        PlanAim::Cost.shown(gross.saves, LengthUnit::Millimetre),
        "4.80"
    );
}

#[test]
fn problems_elsewhere_do_not_keep_from_the_plan() {
    let mut project = project();
    project.heads[0].hook = Typed::Number(90.0);
    project.cut.feed = Typed::Text("fast".into());
    project.saw_shop.rip_kerf = Typed::Text("thin".into());
    assert!(project.check_order_plan().is_ok());
    project.supply.offers.push(Entry {
        id: Id(200),
        draft: OfferDraft::new("Gone", Id(77)),
    });
    project.run.yields[2] = Typed::empty();
    let places: Vec<(Place, Field)> = (project.check_order_plan().unwrap_err().iter())
        .map(|problem| (problem.place, problem.problem.field))
        .collect();
    let stage = Place::Stage(crate::materials::Stage::Shaping);
    assert_eq!(
        places,
        [
            (stage, Field::StageYield),
            (Place::Offer(2), Field::PackSlats)
        ]
    );
}

#[test]
fn pencils_on_hand_are_not_made_again() {
    let mut project = project();
    project.orders[0].on_hand = Typed::Number(4_400.0);
    let list = proved(&project);
    // 10 000 are left: a thousand sandwiches, 2 000 slats, four packs.
    assert_eq!(list.periods[0].runs[0].sandwiches, 1_000);
    assert_eq!(list.total, 40_000.0);
    assert_eq!((list.pencils[0].on_hand, list.gross), (4_400, 100.0));
    // So does the list of slats to buy.
    let checked = project.check().unwrap();
    assert_eq!(checked.orders[0].to_make(), 10_000);
}

#[test]
fn chips_are_sold_by_the_tonne() {
    let mut project = project();
    project.supply.lead_price = Typed::Number(20.0);
    let plain = proved(&project);
    project.supply.chip_price = Typed::Number(50.0);
    let sold = proved(&project);
    assert_eq!(sold.costs[6].label, "Chips sold");
    let credit = -sold.costs[6].amount;
    assert_eq!(sold.total, plain.total - credit);
    // From memory: dry cedar and the like weigh some 300 to 600 kg/m³, and a third to a half of a sandwich
    // of two slats of 184 × 74 × 5 becomes chips: 20 to 40 g of each of 1 440.
    let kilograms = credit / 100.0 / 50.0 * 1_000.0;
    assert!(
        (1.44 * 15.0..1.44 * 45.0).contains(&kilograms),
        "{kilograms}"
    );
    let job = project.check_order_plan().unwrap();
    let weight =
        |run: &PlannedRun| f64::from(job.setups()[run.setup].chips) * run.sandwiches as f64;
    let weighed = sold.periods[0].runs.iter().map(weight).sum::<f64>() / 1_000.0;
    assert!((kilograms - weighed).abs() < 0.5, "{kilograms}, {weighed}");
}

#[test]
fn chips_that_bring_more_than_a_sandwich_costs_are_told() {
    let mut project = project();
    project.supply.chip_price = Typed::Number(50.0);
    project.supply.lead_price = Typed::Number(0.0);
    let problems = project.check_order_plan().unwrap_err();
    let found = (problems[0].place, problems[0].problem.field);
    assert_eq!(found, (Place::Supply, Field::ChipPrice));
}

#[test]
fn what_suppliers_have_left_is_told() {
    let mut project = project();
    project.supply.offers.truncate(1);
    let offer = &mut project.supply.offers[0].draft;
    offer.supplier = "Mill".into();
    offer.most_packs = Typed::Number(5.0);
    offer.pack_limit = Typed::Number(8.0);
    let told = answer(&project).slack[0].sentence();
    assert_eq!(
        told,
        "Mill for 74 × 5: the largest order is as large as it may be; 3 packs less than may be had in all"
    );
}

#[test]
fn stocks_that_are_not_bought_have_a_price_at_which_they_pay() {
    let mut project = project();
    // The other stock is dearer and gives no more pencils.
    project.supply.offers[1].draft.tiers[0].pack_price = Typed::Number(150.0);
    let job = project.check_order_plan().unwrap();
    let limits = OrderPlanLimits::default();
    let plan = job.answer(&limits, &mut |_| true).unwrap().plan.unwrap();
    assert_eq!(job.unbought(&plan.packs), [1]);
    assert_eq!(job.run_stocks(&plan.runs), [0]);
    let price = job.paying_price(1, plan.cost.total(), &limits);
    // 150.00 for 600 slats.
    assert_eq!(price.offered_at, Some(25_000));
    let pays_at = price.pays_at.unwrap();
    project.supply.offers[1].draft.tiers[0].pack_price =
        Typed::Number((pays_at as f64 * 0.6).floor() / 100.0);
    assert!(proved(&project).total <= 50_000.0);
}

#[test]
fn wider_slats_that_hold_one_pencil_more_save() {
    let mut project = project();
    project.supply.offers.truncate(1);
    // So many that packs do not hide it.
    project.orders[0].gross = Typed::Number(1_000.0);
    // Nine pencils lie on 68 mm, ten need 74 mm less some: one millimetre more is nothing at 68, and a
    // pencil where the tenth just does not fit.
    let across = |width: f64| {
        let mut other = project.clone();
        other.slats[0].draft.width = Typed::Number(width);
        other.check_order_plan().unwrap().setups()[0].across
    };
    let widths = (660..740).map(|tenths| f64::from(tenths) / 10.0);
    let before = widths
        .into_iter()
        .find(|width| across(*width) < across(width + 1.0));
    let before = before.unwrap();
    let limits = OrderPlanLimits::default();
    let now = |project: &ProjectDraft| {
        let value = answer(project).value.unwrap();
        [value, value]
    };
    let by = crate::quantity::Length::millimetres(1.0);
    project.slats[0].draft.width = Typed::Number(before);
    let wider = project
        .with_wider_slats(0, by, now(&project), &limits)
        .unwrap();
    assert!(wider.then.unwrap()[0] < wider.now[0], "{wider:?}");
    assert!(
        wider
            .sentence(LengthUnit::Millimetre)
            .contains("would save")
    );
    project.slats[0].draft.width = Typed::Number(before + 1.0);
    let wider = project
        .with_wider_slats(0, by, now(&project), &limits)
        .unwrap();
    assert!(
        wider
            .sentence(LengthUnit::Millimetre)
            .contains("would change nothing")
    );
    assert_eq!(project.with_wider_slats(9, by, [0, 0], &limits), None);
}

#[test]
fn plans_are_alike_where_only_other_things_differ() {
    let one = project();
    let mut other = project();
    other.name = "Another".into();
    other.saw_shop.rip_kerf = Typed::Number(3.0);
    other.layout.turn = Typed::Number(7.0);
    assert_eq!(one.for_orders(), other.for_orders());
    other.supply.slat_holding = Typed::Number(1.0);
    assert_ne!(one.for_orders(), other.for_orders());
}

#[test]
fn what_is_over_stays_in_the_store() {
    let mut project = project();
    project.supply.periods.push(PeriodDraft::new(""));
    let list = proved(&project);
    // 3 000 bought, 2 880 used in the first period.
    assert_eq!(list.slats[0].stands(), [[0, 120], [0, 120]]);
}

#[test]
fn totals_are_those_of_the_parts() {
    let list = proved(&project());
    let totals = list.totals();
    assert_eq!(
        (totals.packs, totals.sandwiches, totals.sawn),
        (5, 1_440, 0)
    );
    assert_eq!(totals.per_gross(totals.total), list.cost_per_gross);
    let costs: Vec<_> = totals
        .costs()
        .map(|cost| (cost.label, cost.amount))
        .collect();
    assert_eq!(costs, [("Slats bought", 50_000.0)]);
    let lines = compare_plans(&totals, &totals);
    assert!(
        lines
            .iter()
            .all(|line| line.verdict(LengthUnit::Millimetre).is_none())
    );
}
