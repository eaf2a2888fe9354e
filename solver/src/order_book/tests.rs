//! Small books, recounted by hand.

use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::quantity::Volume;
use crate::rules::RulesDraft;
use crate::shape::Shape;
use crate::slat::SlatDraft;

/// `(width, thickness, pack slats, price, on hand, most packs)`
type StockRow = (f64, f64, f64, f64, f64, Option<f64>);

/// A hexagon 7.0 named Office and a round pencil 7.3 without a name.
fn project(stocks: &[StockRow], orders: &[(usize, u32)]) -> Project {
    let slat = |(place, row): (usize, &StockRow)| {
        let mut draft = SlatDraft::new(&format!("Stock {}", ["A", "B", "C"][place]));
        draft.width = Typed::Number(row.0);
        draft.thickness = Typed::Number(row.1);
        draft.pack_slats = Typed::Number(row.2);
        draft.pack_price = Typed::Number(row.3);
        draft.on_hand = Typed::Number(row.4);
        draft.pack_limit = row.5.map_or_else(Typed::empty, Typed::Number);
        draft.check().unwrap()
    };
    let barrel = |name, shape| BarrelDraft::new(name, shape).check().unwrap();
    Project {
        barrels: vec![barrel("Office", Shape::Hexagonal), barrel("", Shape::Round)],
        slats: stocks.iter().enumerate().map(slat).collect(),
        rules: RulesDraft::new().check().unwrap(),
        orders: orders
            .iter()
            .map(|&(barrel, pencils)| Order {
                barrel,
                pencils,
                on_hand: 0,
            })
            .collect(),
    }
}

fn purchase(project: &Project) -> Purchase {
    let book = OrderBook::new(project).unwrap();
    let limits = PurchaseLimits::default();
    book.purchase(&limits, &mut |_| {}).unwrap()
}

#[track_caller]
fn cheapest(project: &Project) -> PurchaseList {
    match purchase(project) {
        Purchase::Cheapest { list, .. } => list,
        other => panic!("{other:?}"),
    }
}

#[track_caller]
fn impossible(project: &Project) -> Vec<String> {
    match purchase(project) {
        Purchase::Impossible { obstacles } => obstacles,
        other => panic!("{other:?}"),
    }
}

/// 74 × 5 × 184 in packs of 100 for 20.00, 30 on hand.
const USUAL: StockRow = (74.0, 5.0, 100.0, 20.0, 30.0, None);

#[test]
fn the_best_way_round_is_taken() {
    let project = project(
        &[USUAL, (78.0, 5.2, 1.0, 0.0, 0.0, None)],
        &[(0, 1), (1, 1)],
    );
    let book = OrderBook::new(&project).unwrap();
    let faces = |pencils| {
        let seam = Seam::ThroughFaces;
        Some(BestSeam { seam, pencils })
    };
    assert_eq!(book.best_seam(0, 0), faces(10));
    assert_eq!(book.best_seam(0, 1), faces(10));
    assert_eq!(
        book.best_seam(1, 0).map(|best| best.seam),
        Some(Seam::AnyWay)
    );
}

#[test]
fn nothing_fits_a_stock_that_is_too_thin() {
    let project = project(&[(74.0, 3.0, 1.0, 0.0, 0.0, None)], &[(0, 1)]);
    let book = OrderBook::new(&project).unwrap();
    assert_eq!(book.best_seam(0, 0), None);
    assert_eq!(book.data().pencils_per_sandwich(0, 0), 0);
}

#[test]
fn one_order_recounted_by_hand() {
    // 1000 pencils at 10 a sandwich: 100 sandwiches, 200 slats, 30 on hand, so 2 packs; 5 are
    // made beyond the 995 ordered.
    let list = cheapest(&project(&[USUAL], &[(0, 995)]));
    assert_eq!(
        list.stocks,
        [StockLine {
            stock: 0,
            packs: 2,
            slats_bought: 200,
            cost: 4_000,
            slats_used: 200,
            slats_from_hand: 30,
            slats_left: 30,
        }]
    );
    assert_eq!(
        list.runs,
        [RunLine {
            order: 0,
            barrel: 0,
            stock: 0,
            seam: Seam::ThroughFaces,
            pencils_per_sandwich: 10,
            sandwiches: 100,
            pencils: 1_000,
        }]
    );
    let totals = list.totals;
    assert_eq!(
        (totals.cost, totals.slats_bought, totals.slats_used),
        (4_000, 200, 200)
    );
    assert_eq!((totals.pencils_ordered, totals.pencils_over), (995, 5));
    // 200 slats of 74 × 5 × 184 mm.
    assert_eq!(totals.wood_bought, Volume::cubic_millimetres(13_616_000.0));
    let per_gross = totals.cost_per_gross.unwrap();
    assert!(
        (per_gross - 4_000.0 * 144.0 / 995.0).abs() < 1e-9,
        "{per_gross}"
    );
}

/// [`project`] with a share of slats and one of pencils thrown out, percent.
fn with_rejects(mut project: Project, slats: f64, pencils: f64) -> Project {
    let mut rules = RulesDraft::new();
    rules.slat_rejects = Typed::Number(slats);
    rules.pencil_rejects = Typed::Number(pencils);
    project.rules = rules.check().unwrap();
    project
}

#[test]
fn rejects_are_laid_on_top_of_the_order() {
    // 995 / (0.9 · 0.8) = 1381.9 pencils to lay: 139 sandwiches, 278 slats, 30 on hand, 3 packs.
    // Of 1390 pencils 1000.8 are good, 5 more than ordered.
    let list = cheapest(&with_rejects(project(&[USUAL], &[(0, 995)]), 20.0, 10.0));
    assert_eq!((list.stocks[0].packs, list.stocks[0].slats_used), (3, 278));
    assert_eq!(list.runs[0].pencils, 1_390);
    let totals = list.totals;
    assert_eq!((totals.pencils_ordered, totals.pencils_over), (995, 5));
    let per_gross = totals.cost_per_gross.unwrap();
    assert!(
        (per_gross - 6_000.0 * 144.0 / 995.0).abs() < 1e-9,
        "{per_gross}"
    );
}

#[test]
fn a_shortage_says_that_rejects_are_counted() {
    let scarce = (74.0, 5.0, 10.0, 1.0, 0.0, Some(1.0));
    let told = impossible(&with_rejects(project(&[scarce], &[(0, 60)]), 0.0, 25.0));
    assert!(
        told[0].contains("short by 30 pencils with rejects: "),
        "{told:?}"
    );
}

#[test]
fn what_is_on_hand_may_be_enough() {
    let list = cheapest(&project(&[USUAL], &[(0, 150)]));
    assert_eq!(
        (list.stocks[0].packs, list.stocks[0].slats_from_hand),
        (0, 30)
    );
    assert_eq!(list.totals.wood_bought, Volume::ZERO);
    assert_eq!(list.totals.cost_per_gross, Some(0.0));
}

#[test]
fn orders_of_one_barrel_stay_apart() {
    let list = cheapest(&project(&[USUAL], &[(0, 100), (0, 100)]));
    let orders: Vec<usize> = list.runs.iter().map(|run| run.order).collect();
    assert_eq!(orders, [0, 1]);
    assert_eq!(list.totals.slats_used, 40);
}

#[test]
fn a_stock_that_is_not_used_has_no_line() {
    let dear = (74.0, 5.0, 100.0, 90.0, 0.0, None);
    let list = cheapest(&project(&[dear, USUAL], &[(0, 995)]));
    let stocks: Vec<usize> = list.stocks.iter().map(|line| line.stock).collect();
    assert_eq!(stocks, [1]);
}

#[test]
fn no_orders_need_nothing() {
    let list = cheapest(&project(&[USUAL], &[]));
    assert_eq!((list.stocks, list.runs), (Vec::new(), Vec::new()));
    assert_eq!(list.totals.cost_per_gross, None);
}

#[test]
fn an_order_of_nothing_needs_nothing() {
    let list = cheapest(&project(&[], &[(0, 0)]));
    assert_eq!(list.totals.cost_per_gross, None);
}

#[test]
fn obstacles_name_barrels_and_stocks() {
    assert_eq!(
        impossible(&project(&[], &[(0, 1)])),
        ["“Office” of order 1 cannot be made, as there is no slat stock: add one"]
    );
    let thin = (74.0, 3.0, 1.0, 0.0, 0.0, None);
    assert_eq!(
        impossible(&project(&[thin], &[(1, 1)])),
        [
            "barrel 2 of order 1 fits none of its usual ways round on “Stock A”: \
          add a larger stock, or see in its layout which check fails"
        ]
    );
    let scarce = (74.0, 5.0, 10.0, 1.0, 0.0, Some(1.0));
    assert_eq!(
        impossible(&project(&[thin, scarce], &[(0, 60)])),
        [
            "“Office” of order 1 is short by 10 pencils: all slats to be had of “Stock B” give 50; \
          raise the most packs, or add a stock"
        ]
    );
    assert_eq!(
        impossible(&project(&[scarce], &[(0, 50), (0, 10)])),
        [
            "the orders share too few slats: at least 10 pencils will be missing, shared out best so far: \
          10 of “Office” of order 2; raise the most packs, or add a stock"
        ]
    );
}

#[test]
fn an_open_gap_is_told_over_the_cost() {
    let project = project(&[USUAL], &[(0, 995)]);
    let book = OrderBook::new(&project).unwrap();
    let plan = PurchasePlan {
        runs: vec![vec![100]],
        packs: vec![2],
        cost: 4_000,
        slats_used: 200,
    };
    let bound = 3_000;
    let outcome = PurchaseOutcome::WithinGap { plan, bound };
    let Purchase::WithinGap { list, bound, gap } = book.read(&outcome) else {
        panic!("an open gap stays one");
    };
    assert_eq!((list.totals.cost, bound, gap), (4_000, 3_000, 0.25));
    let outcome = PurchaseOutcome::NoneFound { bound };
    assert_eq!(book.read(&outcome), Purchase::NoneFound { bound });
}

#[test]
fn too_large_a_book_is_refused_before_anything_is_laid_out() {
    let orders = vec![(0, 14_400_000); 65];
    let problems = OrderBook::new(&project(&[USUAL], &orders)).unwrap_err();
    assert_eq!(
        problems,
        [
            PurchaseProblem::TooManyOrders { lines: 65 },
            PurchaseProblem::TooManyPencils {
                pencils: 936_000_000
            },
        ]
    );
}
