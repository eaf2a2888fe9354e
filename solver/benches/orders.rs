//! How fast an order plan is proved, beside plain ways of planning or of bounding it.
//!
//! Lots of twelve months beside the textbook's dynamic program over the months (Wagner and Whitin
//! 1958), which knows one pencil and nothing else; and a book of eight pencils, twenty set-ups and three
//! stocks, bought from six offers of three tiers, beside the plain relaxation: every set-up may run as
//! long as all that is due, and every order be as large as all slats that could be taken, so that choices
//! cost next to nothing in it. It ends with a bound; the plan, whole packs and a proof are not its
//! business. What is wanted of the plan: as cheap as the textbook's, and no bound below the plain one.

#![expect(clippy::print_stdout, reason = "a benchmark speaks to the terminal")]

use criterion::{BenchmarkId, Criterion};
use good_lp::{Expression, Solution, SolverModel, Variable, microlp, variable, variables};
use solver::order_plan::{
    Laid, LineSetup, MILLION, Machine, Materials, Offer, OrderPlanData, OrderPlanDraft,
    OrderPlanLimits, OrderPlanOutcome, PencilDemand, PriceTier, Pricing, StockLine, plan_orders,
};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Pieces due in each month, and what changing over costs in it (Wagner and Whitin 1958).
const DUE: [u64; 12] = [69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56];
const CHANGEOVER: [i64; 12] = [85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114];

/// Thousandths of a hundredth in the unit of a plan's costs.
const MONEY: i64 = 1_000;

/// A set-up that makes a pencil of one stock.
fn line(
    pencil: usize,
    stock: usize,
    leads: u32,
    good: u32,
    changeover_cost: Vec<i64>,
) -> LineSetup {
    LineSetup {
        laid: vec![Laid {
            pencil,
            leads,
            good,
        }],
        bottom: stock,
        top: stock,
        milliseconds: 0,
        changeover_cost,
        changeover_seconds: 0,
        credit: 0,
    }
}

/// One pencil of slats that cost nothing: to hold a piece for a month costs 1.
fn lots() -> OrderPlanDraft {
    OrderPlanDraft {
        periods: DUE.len(),
        pencils: vec![PencilDemand {
            holding: 1_000,
            ..PencilDemand::due(&DUE)
        }],
        stocks: vec![StockLine {
            on_hand: 2 * DUE.iter().sum::<u64>(),
            ..StockLine::default()
        }],
        setups: vec![line(0, 0, 1, MILLION, CHANGEOVER.to_vec())],
        machine: Machine {
            hour_cost: 0,
            seconds: vec![None; DUE.len()],
        },
        ..OrderPlanDraft::default()
    }
}

/// The textbook's dynamic program: the cheapest way to the end of each month.
fn textbook() -> i64 {
    let mut cheapest = vec![0; DUE.len() + 1];
    for end in 1..=DUE.len() {
        let from = |first: usize| {
            let months =
                (first..end).map(|month| (month - first) as i64 * DUE[month].cast_signed());
            cheapest[first] + CHANGEOVER[first] + months.sum::<i64>()
        };
        cheapest[end] = (0..end).map(from).min().unwrap_or(0);
    }
    cheapest[DUE.len()] * MONEY
}

/// An invented book by a linear congruential generator (Knuth, The Art of Computer Programming 2, 3.2.1).
fn book() -> OrderPlanDraft {
    const STOCKS: usize = 3;
    const PENCILS: usize = 8;
    let mut state = 1_u32;
    let mut next = |from: u32, to: u32| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        from + (state >> 8) % (to - from)
    };
    let pencils = (0..PENCILS).map(|_| PencilDemand::due(&[144 * u64::from(next(20, 200))]));
    let pencils = pencils.collect();
    let setups = (0..20).map(|setup| {
        let stock = next(0, STOCKS as u32) as usize;
        let (leads, good) = (next(7, 11), 900_000 + 1_000 * next(0, 95));
        let cost = vec![i64::from(3_000 + 100 * next(0, 150))];
        line(setup % PENCILS, stock, leads, good, cost)
    });
    let setups = setups.collect();
    let offers = (0..2 * STOCKS).map(|offer| {
        let pack_slats = [250, 400, 500][next(0, 3) as usize];
        let price = i64::from(pack_slats) * i64::from(next(11, 18));
        let tier = |from_packs, share| PriceTier {
            from_packs,
            pack_price: price * share / 100,
        };
        Offer {
            stock: offer / 2,
            pack_slats,
            tiers: vec![tier(1, 100), tier(8, 96), tier(24, 91)],
            pricing: Pricing::AllUnits,
            order_cost: i64::from(2_000 + 100 * next(0, 60)),
            least_packs: 1,
            most_packs: 200,
            most_packs_in_all: None,
            lead_periods: 0,
            certified: false,
        }
    });
    OrderPlanDraft {
        periods: 1,
        pencils,
        stocks: vec![StockLine::default(); STOCKS],
        setups,
        offers: offers.collect(),
        machine: Machine {
            hour_cost: 0,
            seconds: vec![None],
        },
        materials: Materials {
            thousand_leads: 2_400,
            thousand_glued: 1_100,
            thousand_coated: 900,
        },
        ..OrderPlanDraft::default()
    }
}

/// The relaxation of a book of one period as a textbook states it, with one large number for each
/// choice; in hundredths.
fn plain_bound(draft: &OrderPlanDraft) -> f64 {
    let due: u64 = draft.pencils.iter().flat_map(|pencil| &pencil.due).sum();
    let large = due as f64;
    let mut model = variables!();
    let mut cost = Expression::from(0.0);
    let mut made = vec![Expression::from(0.0); draft.pencils.len()];
    let mut slats = vec![Expression::from(0.0); draft.stocks.len()];
    let mut rows: Vec<(Variable, Variable, f64)> = Vec::new();
    for setup in &draft.setups {
        let run = model.add(variable().min(0.0));
        let open = model.add(variable().min(0.0).max(1.0));
        rows.push((run, open, large));
        let laid = setup.laid[0];
        let (leads, good) = (f64::from(laid.leads), f64::from(laid.good) / 1e6);
        made[laid.pencil] += leads * good * run;
        slats[setup.bottom] -= run;
        slats[setup.top] -= run;
        let materials = draft.materials;
        let each = leads * (materials.thousand_leads + materials.thousand_coated) as f64
            + materials.thousand_glued as f64;
        cost += each / 1e3 * run + setup.changeover_cost[0] as f64 * open;
    }
    for offer in &draft.offers {
        for tier in &offer.tiers {
            let packs = model.add(variable().min(0.0));
            let order = model.add(variable().min(0.0).max(1.0));
            rows.push((packs, order, large));
            slats[offer.stock] += f64::from(offer.pack_slats) * packs;
            cost += tier.pack_price as f64 * packs + offer.order_cost as f64 * order;
        }
    }
    let mut model = model.minimise(cost.clone()).using(microlp);
    for (amount, choice, large) in rows {
        model.add_constraint((amount - large * choice).leq(0.0));
    }
    for (made, pencil) in made.into_iter().zip(&draft.pencils) {
        model.add_constraint(made.geq(pencil.due[0] as f64));
    }
    for slats in slats {
        model.add_constraint(slats.geq(0.0));
    }
    model.solve().map_or(0.0, |solution| solution.eval(cost))
}

/// What the best plan costs.
fn proved(data: &OrderPlanData) -> i64 {
    let outcome = plan_orders(black_box(data), &OrderPlanLimits::default(), &mut |_| true);
    match outcome.expect("a plan stands its recount") {
        OrderPlanOutcome::Proved { plan, .. } => plan.cost.total(),
        other => panic!("small and proved, not {other:?}"),
    }
}

/// The shortest of some runs: what the machine can do when nothing else disturbs it.
fn shortest(runs: u32, mut work: impl FnMut()) -> Duration {
    let run = |_| {
        let start = Instant::now();
        work();
        start.elapsed()
    };
    (0..runs).map(run).min().unwrap_or_default()
}

fn main() {
    let cases = [
        ("lots of twelve months", lots()),
        ("book of eight pencils", book()),
    ];
    let cases = cases.map(|(name, draft)| {
        let data = draft.clone().check().expect("usual numbers are sound");
        (name, draft, data)
    });
    let mut criterion = Criterion::default()
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(2))
        .sample_size(10)
        .configure_from_args();
    let mut group = criterion.benchmark_group("order plan");
    for (name, _, data) in &cases {
        group.bench_function(BenchmarkId::from_parameter(name), |bencher| {
            bencher.iter(|| proved(data));
        });
    }
    group.finish();

    let [(lots_name, _, lots), (book_name, draft, book)] = &cases;
    assert_eq!(
        proved(lots),
        textbook(),
        "{lots_name}: as cheap as the textbook's"
    );
    let (cost, relaxed) = (proved(book), plain_bound(draft) * MONEY as f64);
    assert!(
        relaxed <= cost as f64 * (1.0 + 1e-9),
        "{book_name}: {cost} proved, though its relaxation comes to {relaxed}"
    );
    let plain_lots = shortest(20, || {
        black_box(textbook());
    });
    let plain_book = shortest(5, || {
        black_box(plain_bound(draft));
    });
    for (name, data, plain) in [(lots_name, lots, plain_lots), (book_name, book, plain_book)] {
        let ours = shortest(5, || {
            proved(data);
        });
        let ratio = ours.as_secs_f64() / plain.as_secs_f64().max(1e-9);
        println!(
            "{name}: proved in {ours:?}, {ratio:.1} times as long as the plain way ({plain:?})"
        );
    }
    let gap = 100.0 * (1.0 - relaxed / cost as f64);
    println!("{book_name}: the plain bound lies {gap:.1} % below the plan");
}
