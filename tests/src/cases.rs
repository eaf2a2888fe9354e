//! Cases by throwing dice: the same on every machine.

use crate::dice::Dice;
use solver::measured::Limits;
use solver::purchase::{PencilOrder, PurchaseDraft, SlatStock};
use solver::{
    Accuracy, AccuracyDraft, Angle, AxisChoice, Barrel, BarrelDraft, CutterSet, CutterSetDraft,
    Length, Offsets, Pairs, Rules, RulesDraft, SearchDraft, SearchRules, Shape, Slat, SlatDraft,
    Spacing, Term, Turns, Typed,
};

/// Turns at which sines are exact, nearly so, and not at all.
pub(crate) const ODD_TURNS: [f64; 10] = [
    0.0,
    30.0,
    90.0,
    180.0,
    17.3,
    -44.999_999,
    59.999_999_999,
    1e-9,
    123.456_789,
    359.9,
];

pub(crate) fn any_turn(dice: &mut Dice) -> Angle {
    let odd = dice.one_of(&ODD_TURNS);
    let any = dice.between(-360.0, 360.0);
    Angle::degrees(dice.one_of(&[odd, any]))
}

pub(crate) fn any_barrel(dice: &mut Dice) -> Option<Barrel> {
    let shape = dice.one_of(&Shape::ALL);
    any_barrel_draft(dice, shape).check().ok()
}

/// A barrel of a shape with all the numbers that any shape asks for.
pub(crate) fn any_barrel_draft(dice: &mut Dice, shape: Shape) -> BarrelDraft {
    let mut draft = BarrelDraft::new("Barrel", shape);
    let size = dice.between(5.0, 12.0);
    let corner = dice.between(0.0, size / 4.0);
    draft.size = Typed::Number(size);
    draft.corner_radius = Typed::Number(corner);
    draft.coat = Typed::Number(dice.between(0.0, 0.2));
    draft.lead_diameter = Typed::Number(dice.between(1.0, 3.0));
    draft.height = Typed::Number(size * dice.between(0.6, 1.2));
    draft.sides = Typed::Number(dice.one_of(&[3.0, 4.0, 5.0, 7.0, 8.0, 12.0, 24.0]));
    // Flat faces, and bulged ones from constant width on.
    let face = size - corner + dice.between(0.0, 20.0);
    draft.face_radius = dice
        .one_of(&[None, Some(face)])
        .map_or(Typed::empty(), Typed::Number);
    draft.path = any_path(dice);
    draft.axis_across = Typed::Number(dice.between(-0.2, 0.2));
    draft.axis_up = Typed::Number(dice.between(-0.2, 0.2));
    draft
}

/// A free outline: known ones with flutes, hollow faces and slanting ellipses, or curves and lines
/// round eight corners. Some cross themselves.
pub(crate) fn any_path(dice: &mut Dice) -> String {
    const KNOWN: [&str; 6] = [
        "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z",
        "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z",
        "M0 5 A5 3 20 0 1 10 5 A5 3 20 0 1 0 5 Z",
        "m0 0c3-2 6-2 9 0s2 6 0 9-6 2-9 0-2-6 0-9z",
        "M0 0 Q4 -2 8 0 T8 7 L0 7 Z",
        "M0 0 L8 8 L8 0 L0 8 Z",
    ];
    const CORNERS: [[f64; 2]; 8] = [
        [5.0, 0.0],
        [3.5, 3.5],
        [0.0, 5.0],
        [-3.5, 3.5],
        [-5.0, 0.0],
        [-3.5, -3.5],
        [0.0, -5.0],
        [3.5, -3.5],
    ];
    if dice.bits().is_multiple_of(2) {
        return dice.one_of(&KNOWN).to_owned();
    }
    let mut text = String::new();
    for (k, [x, y]) in CORNERS.into_iter().enumerate() {
        let far = dice.between(0.8, 1.1);
        let (x, y) = (x * far, y * far);
        let control = [x + dice.between(-1.0, 1.0), y + dice.between(-1.0, 1.0)];
        let control = format!("{} {}", control[0], control[1]);
        let piece = match (k, dice.bits() % 3) {
            (0, _) => format!("M{x} {y}"),
            (_, 0) => format!("L{x} {y}"),
            (_, 1) => format!("S{control} {x} {y}"),
            _ => format!("Q{control} {x} {y}"),
        };
        text.push_str(&piece);
    }
    text + "Z"
}

pub(crate) fn any_set(dice: &mut Dice) -> Option<CutterSet> {
    let mut draft = CutterSetDraft::new("Set");
    draft.pitch = Typed::Number(dice.between(6.0, 13.0));
    draft.most = Typed::Number(dice.one_of(&[4.0, 8.0, 12.0]));
    draft.price = Typed::Number(dice.one_of(&[0.0, 480.0]));
    draft.check().ok()
}

pub(crate) fn any_search(dice: &mut Dice) -> Option<SearchRules> {
    let mut draft = SearchDraft::new();
    draft.turns = dice.one_of(&[Turns::Any, Turns::Any, Turns::Usual]);
    draft.axis = dice.one_of(&AxisChoice::ALL);
    draft.pairs = dice.one_of(&Pairs::ALL);
    draft.new_set_price = Typed::Number(dice.between(100.0, 900.0));
    draft.check().ok()
}

pub(crate) fn any_slat(dice: &mut Dice) -> Option<Slat> {
    any_slat_draft(dice).check().ok()
}

pub(crate) fn any_slat_draft(dice: &mut Dice) -> SlatDraft {
    let mut draft = SlatDraft::new("Slat");
    draft.width = Typed::Number(dice.between(30.0, 110.0));
    draft.thickness = Typed::Number(dice.between(3.5, 8.0));
    draft.length = Typed::Number(dice.between(175.0, 190.0));
    draft.width_tolerance = Typed::Number(dice.between(0.0, 0.3));
    draft.pack_price = Typed::Number(dice.between(10.0, 200.0));
    draft
}

pub(crate) fn any_rules(dice: &mut Dice) -> Option<Rules> {
    any_rules_draft(dice).check().ok()
}

pub(crate) fn any_rules_draft(dice: &mut Dice) -> RulesDraft {
    let mut draft = RulesDraft::new();
    draft.spacing = dice.one_of(&Spacing::ALL);
    draft.pitch = Typed::Number(dice.between(7.0, 14.0));
    let height = dice.between(-0.5, 0.5);
    draft.axis_height = Typed::Number(dice.one_of(&[0.0, height]));
    draft.land = Typed::Number(dice.between(0.0, 1.0));
    draft.edge = Typed::Number(dice.between(0.0, 3.0));
    draft
}

/// Errors from none at all to what makes most pencils bad, on slats with means off nominal.
pub(crate) fn any_accuracy(dice: &mut Dice) -> Option<Accuracy> {
    let mut draft = AccuracyDraft::new("Accuracy");
    for term in Term::ALL {
        let size = dice.between(0.0, 0.15);
        draft.error_mut(term).size = Typed::Number(dice.one_of(&[0.0, 0.02, size]));
    }
    let mut offset = || Length::millimetres(dice.between(-0.3, 0.1));
    let offsets = Offsets {
        top_width: offset(),
        bottom_width: offset(),
        bottom_thickness: offset(),
    };
    draft.check().ok()?.with_offsets(offsets)
}

pub(crate) fn any_book(dice: &mut Dice) -> PurchaseDraft {
    let (orders, stocks) = (1 + dice.bits() % 3, 2 + dice.bits() % 2);
    let mut stock = || SlatStock {
        pack_slats: 10 + (dice.bits() % 500) as u32,
        pack_price: 1_000 + (dice.bits() % 20_000) as i64,
        on_hand: dice.bits() % 400,
        pack_limit: None,
    };
    let stocks: Vec<SlatStock> = (0..stocks).map(|_| stock()).collect();
    let orders: Vec<PencilOrder> = (0..orders)
        .map(|_| PencilOrder {
            pencils: dice.bits() % 20_000,
        })
        .collect();
    let mut row = || {
        stocks
            .iter()
            .map(|_| (6 + dice.bits() % 6) as u32)
            .collect()
    };
    PurchaseDraft {
        yields: orders.iter().map(|_| row()).collect(),
        orders,
        stocks,
    }
}

/// Measurements of one size, spread like a sum of four throws, some read in steps of a caliper,
/// some with a slip among them.
pub(crate) fn any_measurements(dice: &mut Dice) -> Vec<Length> {
    let count = dice.one_of(&[1, 2, 3, 8, 9, 30, 31, 200, 1000]);
    let (mean, spread) = (dice.between(3.0, 110.0), dice.between(0.0, 0.3));
    let step = dice.one_of(&[0.0, 0.01, 0.02, 0.05, 0.1, 0.0254]);
    let mut values: Vec<f64> = (0..count)
        .map(|_| {
            let throws: f64 = (0..4).map(|_| dice.between(-1.0, 1.0)).sum();
            let value = mean + spread * throws;
            if step > 0.0 {
                (value / step).round() * step
            } else {
                value
            }
        })
        .collect();
    if dice.bits().is_multiple_of(4) {
        values[0] /= 10.0;
    }
    values.into_iter().map(Length::millimetres).collect()
}

/// Limits round the sizes of [`any_measurements`], some with one side only.
pub(crate) fn any_limits(dice: &mut Dice) -> Option<Limits> {
    let nominal = Length::millimetres(dice.between(3.0, 110.0));
    let (lower, upper) = (dice.between(-0.5, 0.1), dice.between(0.0, 0.5));
    let lower = dice.one_of(&[Some(lower), Some(lower), None]);
    let upper = dice.one_of(&[Some(upper), Some(upper), None]);
    let [lower, upper] = [lower, upper].map(|deviation| deviation.map(Length::millimetres));
    Limits::new(nominal, lower, upper).ok()
}

/// A list of measurements as text, with headings, separators and slips of all kinds.
pub(crate) fn any_list(dice: &mut Dice) -> String {
    const HEADINGS: [&str; 6] = [
        "",
        "Width;Thickness",
        "Thickness\tWidth (in)",
        "w,t",
        "No.;Width in mm",
        "Width (cm)",
    ];
    const SLIPS: [&str; 8] = [
        "",
        "wide",
        "1,000",
        "4,985",
        "5/16\"",
        "0",
        "7..4",
        "\"74,02\"",
    ];
    let separator = dice.one_of(&["\t", ";", ",", ", "]);
    let mut text = format!("{}\n", dice.one_of(&HEADINGS));
    for _ in 0..dice.one_of(&[0, 1, 12, 40]) {
        let width = format!("{:.2}", dice.between(73.0, 75.0));
        let thickness = format!("{:.3}", dice.between(4.9, 5.1));
        let slip = dice.one_of(&SLIPS);
        let [width, thickness] = match dice.bits() % 8 {
            0 => [slip, &thickness],
            1 => [&width, slip],
            _ => [width.as_str(), thickness.as_str()],
        };
        text += &format!("{width}{separator}{thickness}\n");
    }
    if dice.bits().is_multiple_of(3) {
        text = text.replace('.', ",");
    }
    text
}
