//! Work to be timed, natively and as wasm: the same calls, so that their times are a ratio.

use crate::dice::Dice;
use crate::orders::{BookSize, order_book};
use crate::shop::{barrel, rules};
use solver::order_plan::{OrderPlanLimits, OrderPlanOutcome, plan_orders};
use solver::sawing::{
    BlankOrder, Dimensions, PlankStock, SawingAim, SawingDraft, SawingLimits, SawingOutcome, saw,
};
use solver::{
    AxisChoice, CutterSet, CutterSetDraft, Pairs, Question, SearchDraft, Setup, Shape, Slat,
    SlatDraft, Turns, Typed, lay_out, search,
};

#[cfg(target_arch = "wasm32")]
use wasm_bindgen::prelude::wasm_bindgen;

/// A kind of work: its name, and what does it.
pub type Kind = (&'static str, fn() -> u32);

/// What can be timed.
pub const KINDS: [Kind; 7] = [
    ("search of 1600 pairs, 20 sets, hexagon", search_hexagon),
    ("search of 1600 pairs, 20 sets, oval", search_oval),
    ("2000 layouts of every shape but a free one", layouts),
    (
        "200 pieces of any size cut from planks, to the proof",
        cutting,
    ),
    (
        "30 kinds of blank from 3 kinds of plank, 60 relaxations",
        sawing,
    ),
    (
        "orders of 8 pencils, 20 set-ups, to the proof",
        orders_of_20,
    ),
    (
        "orders of 20 pencils, 50 set-ups, to the proof",
        orders_of_50,
    ),
];

/// Does one kind of the work, by its place in [`KINDS`]; what it gives back is of no use.
#[must_use]
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn work(kind: usize) -> u32 {
    KINDS.get(kind).map_or(0, |(_, work)| work())
}

fn search_hexagon() -> u32 {
    full_search(Shape::Hexagonal)
}

fn search_oval() -> u32 {
    full_search(Shape::Oval)
}

/// Forty stocks of which any two make a sandwich, twenty cutter sets, any turn, any height.
fn full_search(shape: Shape) -> u32 {
    let barrel = barrel(shape, 7.3, 0.5);
    let slats: Vec<Slat> = (0..40).map(slat).collect();
    let sets: Vec<CutterSet> = (0..20).map(set).collect();
    let mut choice = SearchDraft::new();
    (choice.turns, choice.axis, choice.pairs) = (Turns::Any, AxisChoice::Any, Pairs::Any);
    let question = Question {
        barrel: &barrel,
        slats: &slats,
        sets: &sets,
        rules: &rules(|_| ()),
        search: &choice.check().expect("first values are sound"),
        accuracy: None,
    };
    let answer = search(&question, &mut |_, _| ());
    answer.best.iter().map(|best| best.len() as u32).sum()
}

/// Uniform sizes from 20 to 100 in 150 (Falkenauer 1996).
fn cutting() -> u32 {
    let mut dice = Dice::new(7_000_000);
    let mut pieces: Vec<(i64, u64)> = (20..=100).map(|size| (size, 0)).collect();
    for _ in 0..200 {
        let at = dice.bits() % pieces.len() as u64;
        pieces[at as usize].1 += 1;
    }
    planks(SawingDraft::along(150, 0, &pieces), 200)
}

fn orders_of_20() -> u32 {
    orders(20, 3)
}

fn orders_of_50() -> u32 {
    orders(50, 6)
}

/// An invented book of one period, whose plan is proved best.
fn orders(setups: usize, stocks: usize) -> u32 {
    let size = BookSize {
        setups,
        stocks,
        periods: 1,
    };
    let data = order_book(3, size).check();
    let data = data.expect("invented books are sound");
    let limits = OrderPlanLimits {
        steps: 1_000_000,
        gap: 0,
    };
    match plan_orders(&data, &limits, &mut |_| true) {
        Ok(OrderPlanOutcome::Proved { plan, .. }) => plan.changeovers as u32,
        other => panic!("not proved: {other:?}"),
    }
}

fn sawing() -> u32 {
    planks(shop_of_two_stages(1, 1), 60)
}

/// A shop with thirty kinds of blank of five lengths, from three kinds of plank: about sixty planks in
/// all, times the scale.
#[must_use]
pub fn shop_of_two_stages(seed: u64, scale: u64) -> SawingDraft {
    let mut draft = shop(8_000_000 + seed);
    for blank in &mut draft.blanks {
        blank.demand *= scale;
    }
    draft
}

fn shop(seed: u64) -> SawingDraft {
    let mut dice = Dice::new(seed);
    let mut whole = |least: i64, most: i64| {
        least + (dice.bits() % (most - least + 1).unsigned_abs()).cast_signed()
    };
    let plank = |length, width, price| PlankStock {
        size: Dimensions {
            length,
            width,
            thickness: 80_000,
        },
        end_trim: 20_000,
        edge_trim: 3_000,
        price,
        on_hand: None,
    };
    let blank = |_| BlankOrder {
        size: Dimensions {
            length: 186_000 + whole(0, 4) * 40_000,
            width: 76_000,
            thickness: whole(50, 120) * 100,
        },
        demand: whole(20, 800).unsigned_abs(),
        over_worth: 0,
        most_over: 0,
    };
    SawingDraft {
        planks: vec![
            plank(2_400_000, 105_000, 505),
            plank(3_000_000, 125_000, 755),
            plank(4_000_000, 150_000, 1_215),
        ],
        blanks: (0..30).map(blank).collect(),
        crosscut_kerf: 3_000,
        rip_kerf: 1_200,
        offcuts: None,
        aim: SawingAim::Cost,
    }
}

/// Planks of the plan; 0 where there is none.
fn planks(draft: SawingDraft, relaxations: u64) -> u32 {
    let data = draft.check().expect("a shop within its ranges");
    let outcome = saw(&data, &SawingLimits { relaxations }, &mut |_| true);
    match outcome {
        Ok(SawingOutcome::Proved { plan, .. } | SawingOutcome::WithinGap { plan, .. }) => {
            plan.planks() as u32
        }
        _ => 0,
    }
}

fn layouts() -> u32 {
    let shapes = [
        Shape::Round,
        Shape::Hexagonal,
        Shape::Triangular,
        Shape::Polygonal,
        Shape::Oval,
    ];
    let barrels = shapes.map(|shape| barrel(shape, 7.3, 0.5));
    let rules = rules(|_| ());
    let mut pencils = 0;
    for number in 0..400 {
        let slat = slat(number % 40);
        for barrel in &barrels {
            let setup = Setup {
                barrel,
                turn: barrel.usual_turns()[0],
                top: &slat,
                bottom: &slat,
                rules: &rules,
            };
            pencils += lay_out(&setup).pencils();
        }
    }
    pencils
}

fn slat(number: u32) -> Slat {
    let mut draft = SlatDraft::new("");
    draft.width = Typed::Number(66.0 + 0.5 * f64::from(number * 7 % 40));
    draft.thickness = Typed::Number(4.0 + 0.08 * f64::from(number * 3 % 40));
    draft.check().expect("a usual size")
}

fn set(number: u32) -> CutterSet {
    let mut draft = CutterSetDraft::new("");
    draft.pitch = Typed::Number(7.3 + 0.2 * f64::from(number * 7 % 20));
    draft.most = Typed::Number(10.0);
    draft.check().expect("a usual pitch")
}
