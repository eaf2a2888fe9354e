//! The scenario that stands there at first start: a small works, invented, with invented numbers.

use solver::order_plan::Pricing;
use solver::{
    AccuracyDraft, BarrelDraft, BlankDraft, Colour, ConditionsDraft, CutDraft, CutterSetDraft,
    Entry, HeadDraft, Id, LayoutDraft, OfferDraft, OrderDraft, PeriodDraft, PlankDraft,
    ProjectDraft, RulesDraft, RunDraft, SawShopDraft, SawnSlatsDraft, Seam, SearchDraft, Shape,
    SlatDraft, SpeciesDraft, Stage, SupplyDraft, Term, TierDraft, TitleBlock, Typed, Way,
};

/// The name of the invented works.
pub const NAME: &str = "Alder Brook works (invented)";

/// The name of the line of machines that a new project begins with.
pub const FIRST_LINE: &str = "Common shop, assumed";

/// Imprint, colour of the coat and dip in mm of the barrels.
const FINISHES: [(&str, Colour, f64); 4] = [
    ("WRITER  invented  HB", Colour::new(0x1f, 0x5f, 0x6b), 9.0),
    ("SKETCHER  invented  2B", Colour::new(0x7a, 0x26, 0x2e), 0.0),
    ("LEARNER  invented  B", Colour::new(0xd9, 0xa4, 0x2b), 0.0),
    ("JUMBO  invented", Colour::new(0x2f, 0x4a, 0x85), 14.0),
];

/// A fresh copy of the scenario.
#[must_use]
pub fn project() -> ProjectDraft {
    let mut barrels = vec![
        barrel(1, "Writer, hexagonal", Shape::Hexagonal, 7.0, 0.5, 2.2),
        barrel(2, "Sketcher, round", Shape::Round, 7.3, 0.0, 2.2),
        barrel(3, "Learner, triangular", Shape::Triangular, 7.6, 1.2, 2.2),
        barrel(4, "Jumbo, round", Shape::Round, 9.8, 0.0, 3.3),
    ];
    for (barrel, (imprint, coat, dip)) in barrels.iter_mut().zip(FINISHES) {
        let finish = &mut barrel.draft.finish;
        finish.imprint = imprint.to_owned();
        finish.coat_colour = coat;
        finish.dip = Typed::Number(dip);
    }
    barrels[3].draft.finish.tin_height = Typed::Number(11.0);
    let mut slats = vec![
        slat(11, "Seven-ply, 74", 74.0, 5.0, 60, 11.8, 1400, None),
        slat(12, "Wide, 78", 78.0, 5.2, 60, 13.75, 0, Some(600)),
        slat(13, "Thin, 70", 69.85, 4.76, 60, 10.3, 0, None),
        slat(14, "Six-ply, 66", 66.0, 5.0, 80, 12.7, 350, Some(400)),
        slat(15, "Thick, 74", 74.0, 6.8, 40, 10.9, 0, None),
    ];
    // As dry at the groove head as they are delivered, so that the slats do not move yet.
    for (slat, species) in slats.iter_mut().zip([21, 21, 21, 22, 22]) {
        slat.draft.species = Some(Id(species));
    }
    let cutter_sets = vec![
        cutter_set(31, "Writer head, tens", 7.24, 10.0, Some(1), 0.0),
        cutter_set(32, "Sketcher head, nines", 7.6, 9.0, Some(2), 0.0),
        cutter_set(33, "Wide head, sevens", 10.2, 7.0, None, 640.0),
    ];
    ProjectDraft {
        name: NAME.to_owned(),
        layout: LayoutDraft {
            barrel: Id(1),
            top: Id(11),
            bottom: Id(11),
            way: Way::Usual(Seam::ThroughFaces),
            turn: Typed::Number(0.0),
            accuracy: Id(41),
        },
        barrels,
        slats,
        species: vec![
            species(21, "Brook cedar (invented)", 3.1, 5.4),
            species(22, "Mill lime (invented)", 5.9, 8.8),
        ],
        conditions: ConditionsDraft::new(),
        cutter_sets,
        rules: RulesDraft::new(),
        search: SearchDraft::new(),
        orders: vec![
            order(1, 400.0, 1.0),
            order(2, 150.0, 2.0),
            order(3, 90.0, 2.0),
            order(4, 60.0, 3.0),
        ],
        accuracies: vec![
            accuracy(41, "Line 1 (invented)"),
            worn(accuracy(42, "Line 2, worn (invented)")),
        ],
        saw_shop: saw_shop(),
        heads: heads(),
        cut: CutDraft::new(),
        run: run(),
        supply: supply(),
        title_block: TitleBlock::new(),
        set_aside: None,
    }
}

/// A project with one barrel and one slat stock, both with the first values, and no orders.
#[must_use]
pub fn blank() -> ProjectDraft {
    ProjectDraft {
        name: "New project".to_owned(),
        barrels: vec![Entry {
            id: Id(1),
            draft: BarrelDraft::new("Barrel 1", Shape::Hexagonal),
        }],
        slats: vec![Entry {
            id: Id(2),
            draft: SlatDraft::new("Slat 1"),
        }],
        species: Vec::new(),
        conditions: ConditionsDraft::new(),
        cutter_sets: Vec::new(),
        rules: RulesDraft::new(),
        search: SearchDraft::new(),
        layout: LayoutDraft {
            barrel: Id(1),
            top: Id(2),
            bottom: Id(2),
            way: Way::Usual(Seam::ThroughCorners),
            turn: Typed::Number(0.0),
            accuracy: Id(3),
        },
        orders: Vec::new(),
        accuracies: vec![accuracy(3, FIRST_LINE)],
        saw_shop: SawShopDraft::new(),
        heads: [const { HeadDraft::new() }; 3],
        cut: CutDraft::new(),
        run: RunDraft::new(),
        supply: SupplyDraft {
            offers: vec![offer(4, "", 2, &[(1.0, 100.0)])],
            ..SupplyDraft::new()
        },
        title_block: TitleBlock::new(),
        set_aside: None,
    }
}

fn barrel(
    id: u32,
    name: &str,
    shape: Shape,
    size: f64,
    corner: f64,
    lead: f64,
) -> Entry<BarrelDraft> {
    let mut draft = BarrelDraft::new(name, shape);
    draft.size = Typed::Number(size);
    draft.corner_radius = Typed::Number(corner);
    draft.lead_diameter = Typed::Number(lead);
    Entry { id: Id(id), draft }
}

#[expect(clippy::too_many_arguments, reason = "one row of a table, read across")]
fn slat(
    id: u32,
    name: &str,
    width: f64,
    thickness: f64,
    pack: u32,
    price: f64,
    on_hand: u32,
    limit: Option<u32>,
) -> Entry<SlatDraft> {
    let mut draft = SlatDraft::new(name);
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.pack_slats = Typed::Number(f64::from(pack));
    draft.pack_price = Typed::Number(price);
    draft.on_hand = Typed::Number(f64::from(on_hand));
    draft.pack_limit = limit.map_or_else(Typed::empty, |limit| Typed::Number(f64::from(limit)));
    Entry { id: Id(id), draft }
}

fn species(id: u32, name: &str, radial: f64, tangential: f64) -> Entry<SpeciesDraft> {
    let mut draft = SpeciesDraft::new(name);
    draft.radial = Typed::Number(radial);
    draft.tangential = Typed::Number(tangential);
    Entry { id: Id(id), draft }
}

fn cutter_set(
    id: u32,
    name: &str,
    pitch: f64,
    most: f64,
    barrel: Option<u32>,
    price: f64,
) -> Entry<CutterSetDraft> {
    let draft = CutterSetDraft {
        name: name.to_owned(),
        pitch: Typed::Number(pitch),
        most: Typed::Number(most),
        barrel: barrel.map(Id),
        price: Typed::Number(price),
    };
    Entry { id: Id(id), draft }
}

fn order(barrel: u32, gross: f64, due: f64) -> OrderDraft {
    OrderDraft {
        barrel: Id(barrel),
        gross: Typed::Number(gross),
        due: Typed::Number(due),
        on_hand: Typed::Number(0.0),
    }
}

fn accuracy(id: u32, name: &str) -> Entry<AccuracyDraft> {
    let draft = AccuracyDraft::new(name);
    Entry { id: Id(id), draft }
}

/// Planks and blanks of invented sizes, numbers and prices.
fn saw_shop() -> SawShopDraft {
    SawShopDraft {
        planks: vec![
            plank(
                51,
                "Brook cedar, 3 m (invented)",
                [3050.0, 205.0, 80.0],
                23.6,
                None,
            ),
            plank(
                52,
                "Brook cedar, wide (invented)",
                [2440.0, 280.0, 80.0],
                26.9,
                Some(90),
            ),
            plank(
                53,
                "Brook cedar, short (invented)",
                [1830.0, 155.0, 83.0],
                10.2,
                Some(22),
            ),
        ],
        blanks: vec![
            slat_blank(61, "For Seven-ply, 74", 11, 5400.0),
            slat_blank(62, "For Wide, 78", 12, 2600.0),
            slat_blank(63, "For Thick, 74", 15, 1500.0),
        ],
        shortest_offcut: Typed::Number(400.0),
        ..SawShopDraft::new()
    }
}

fn plank(
    id: u32,
    name: &str,
    [length, width, thickness]: [f64; 3],
    price: f64,
    on_hand: Option<u32>,
) -> Entry<PlankDraft> {
    let mut draft = PlankDraft::new(name);
    draft.length = Typed::Number(length);
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.price = Typed::Number(price);
    draft.on_hand = on_hand.map_or_else(Typed::empty, |planks| Typed::Number(f64::from(planks)));
    Entry { id: Id(id), draft }
}

fn slat_blank(id: u32, name: &str, slat: u32, wanted: f64) -> Entry<BlankDraft> {
    let mut draft = BlankDraft::new(name);
    draft.slat = Some(Id(slat));
    draft.demand = Typed::Number(wanted);
    Entry { id: Id(id), draft }
}

/// Three invented heads: one that grooves, and two with more hook that shape.
fn heads() -> [HeadDraft; 3] {
    [
        head(125.0, 15.0, 2.0, 9_000.0, 12_000.0),
        head(140.0, 20.0, 4.0, 7_200.0, 9_000.0),
        head(140.0, 20.0, 4.0, 7_200.0, 9_000.0),
    ]
}

fn head(diameter: f64, hook: f64, knives: f64, speed: f64, marked: f64) -> HeadDraft {
    HeadDraft {
        diameter: Typed::Number(diameter),
        hook: Typed::Number(hook),
        knives: Typed::Number(knives),
        speed: Typed::Number(speed),
        marked: Typed::Number(marked),
    }
}

/// A run of invented size, with yields that no works has told.
fn run() -> RunDraft {
    let mut run = RunDraft::new();
    run.gross = Typed::Number(420.0);
    let yields = [
        (Stage::Grooving, 98.0),
        (Stage::Gluing, 98.5),
        (Stage::Shaping, 96.0),
        (Stage::Coating, 98.0),
        (Stage::Finishing, 97.5),
    ];
    for (stage, percent) in yields {
        run.yields[stage as usize] = Typed::Number(percent);
    }
    run
}

/// Three periods, offers of invented suppliers, slats sawn in the works, and costs that no works has told.
fn supply() -> SupplyDraft {
    let period = |name| PeriodDraft {
        hours: Typed::Number(40.0),
        ..PeriodDraft::new(name)
    };
    let mill = "Brook mill (invented)";
    let trader = "Weir timber (invented)";
    let mut wide = offer(72, mill, 12, &[(1.0, 13.75), (91.0, 13.1)]);
    wide.draft.pack_limit = Typed::Number(600.0);
    let mut thin = offer(73, trader, 13, &[(1.0, 10.3), (71.0, 9.9), (191.0, 9.45)]);
    thin.draft.lead_periods = Typed::Number(1.0);
    let mut narrow = offer(74, trader, 14, &[(1.0, 12.7)]);
    narrow.draft.most_packs = Typed::Number(400.0);
    narrow.draft.order_cost = Typed::Number(35.0);
    let mut other = offer(76, trader, 11, &[(1.0, 12.1), (111.0, 11.25)]);
    other.draft.least_packs = Typed::Number(40.0);
    for further in [&mut wide, &mut thin, &mut other] {
        further.draft.pricing = Pricing::Incremental;
    }
    let mut offers = vec![
        offer(71, mill, 11, &[(1.0, 11.8), (141.0, 11.4)]),
        wide,
        thin,
        narrow,
        offer(75, mill, 15, &[(1.0, 10.9)]),
        other,
    ];
    for certified in [0, 1, 4] {
        offers[certified].draft.is_certified = true;
    }
    let mut sawn = SawnSlatsDraft::new(Id(15));
    sawn.thousand_cost = Typed::Number(268.0);
    sawn.most_slats = Typed::Number(1_500.0);
    SupplyDraft {
        periods: vec![period("Week 1"), period("Week 2"), period("Week 3")],
        offers,
        sawn: vec![sawn],
        hour_price: Typed::Number(46.0),
        changeover_cost: Typed::Number(18.0),
        pencil_holding: Typed::Number(0.4),
        slat_holding: Typed::Number(1.1),
        lead_price: Typed::Number(14.5),
        glue_price: Typed::Number(9.0),
        coat_price: Typed::Number(6.5),
        least_certified: Typed::Number(30.0),
        ..SupplyDraft::new()
    }
}

fn offer(id: u32, supplier: &str, slat: u32, tiers: &[(f64, f64)]) -> Entry<OfferDraft> {
    let mut draft = OfferDraft::new(supplier, Id(slat));
    let tier = |&(from, price)| TierDraft {
        from_packs: Typed::Number(from),
        pack_price: Typed::Number(price),
    };
    draft.tiers = tiers.iter().map(tier).collect();
    draft.pack_slats = Typed::Number(match slat {
        14 => 80.0,
        15 => 40.0,
        _ => 60.0,
    });
    Entry { id: Id(id), draft }
}

/// Each error of the machines two and a half times as large.
fn worn(mut line: Entry<AccuracyDraft>) -> Entry<AccuracyDraft> {
    for term in Term::ALL {
        let size = &mut line.draft.error_mut(term).size;
        if let Typed::Number(number) = size {
            *number *= 2.5;
        }
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_first_projects_can_be_worked_with() {
        assert!(project().check().is_ok());
        assert!(blank().check().is_ok());
    }

    #[test]
    fn the_scenario_opens_on_a_layout_that_gives_pencils() {
        let parts = project().check_layout().unwrap();
        assert_eq!(solver::lay_out(&parts.setup()).pencils(), 10);
    }

    #[test]
    fn the_blanks_of_the_scenario_can_be_sawn() {
        use solver::sawing::{SawingLimits, SawingOutcome, saw};
        let data = project().check_sawing().unwrap();
        let outcome = saw(&data, &SawingLimits::default(), &mut |_| true);
        assert!(matches!(
            outcome,
            Ok(SawingOutcome::Proved { .. } | SawingOutcome::WithinGap { .. })
        ));
    }

    #[test]
    fn the_orders_of_the_scenario_can_be_planned() {
        use solver::OrderEnd;
        use solver::order_plan::OrderPlanLimits;
        let job = project().check_order_plan().unwrap();
        let limits = OrderPlanLimits {
            steps: 300,
            ..OrderPlanLimits::default()
        };
        let answer = job.answer(&limits, &mut |_| true).unwrap();
        let end = answer.end;
        assert!(
            matches!(end, OrderEnd::Proved | OrderEnd::WithinGap),
            "{end:?}"
        );
        assert!(answer.gap.unwrap() < 0.01, "{answer:?}");
        assert!(project().priced_apart().is_empty());
    }

    #[test]
    fn the_slats_of_the_scenario_do_not_move() {
        for slat in project().check().unwrap().slats {
            assert_eq!(slat.grooved_width(), slat.width());
            assert_eq!(slat.grooved_thickness(), slat.thickness());
        }
    }

    #[test]
    fn it_says_that_it_is_invented() {
        assert!(NAME.contains("invented"));
        let woods = project().species;
        assert!(
            woods
                .iter()
                .all(|wood| wood.draft.name.contains("invented"))
        );
        let planks = project().saw_shop.planks;
        assert!((planks.iter()).all(|plank| plank.draft.name.contains("invented")));
        let offers = project().supply.offers;
        assert!((offers.iter()).all(|offer| offer.draft.supplier.contains("invented")));
    }
}
