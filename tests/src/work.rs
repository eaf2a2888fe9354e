//! Work to be timed, natively and as wasm: the same calls, so that their times are a ratio.

use crate::shop::{barrel, rules};
use solver::{
    AxisChoice, CutterSet, CutterSetDraft, Pairs, Question, SearchDraft, Setup, Shape, Slat,
    SlatDraft, Turns, Typed, lay_out, search,
};

#[cfg(target_arch = "wasm32")]
use wasm_bindgen::prelude::wasm_bindgen;

/// A kind of work: its name, and what does it.
pub type Kind = (&'static str, fn() -> u32);

/// What can be timed.
pub const KINDS: [Kind; 3] = [
    ("search of 1600 pairs, 20 sets, hexagon", search_hexagon),
    ("search of 1600 pairs, 20 sets, oval", search_oval),
    ("2000 layouts of every shape but a free one", layouts),
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
