//! Projects in which any field may hold anything.

use crate::path::any_path;
use proptest::prelude::*;
use solver::sawing::SawingAim;
use solver::{
    AccuracyDraft, AxisChoice, BarrelDraft, BlankDraft, ConditionsDraft, CutDraft, CutterSetDraft,
    Entry, Field, HeadDraft, Id, LayoutDraft, MoistureSource, OrderDraft, Pairs, PlankDraft,
    ProjectDraft, RulesDraft, RunDraft, SawShopDraft, SearchDraft, Shape, SlatDraft, Spacing,
    SpeciesDraft, Turns, Typed, Way,
};

/// Every number there is, and those that break programs more often than others.
fn any_number() -> impl Strategy<Value = f64> {
    let odd = prop::sample::select(vec![
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::MAX,
        f64::MIN_POSITIVE,
        5e-324,
        -5e-324,
        1e308,
        -0.0,
        0.0,
    ]);
    prop_oneof![
        2 => odd,
        2 => any::<u64>().prop_map(f64::from_bits),
        4 => -10.0_f64..250.0,
        1 => 1.0_f64..10.0,
    ]
}

pub(crate) fn any_typed() -> impl Strategy<Value = Typed> {
    prop_oneof![
        5 => any_number().prop_map(Typed::Number),
        1 => "[0-9.,/ +−×()a-zµ°%\"]{0,12}".prop_map(Typed::Text),
        1 => "\\PC{0,20}".prop_map(Typed::Text),
    ]
}

/// A project in which two barrels lie on two stocks, one of them of a species.
fn plain_project(shapes: [Shape; 2], way: Way, spacing: Spacing, ids: [u32; 4]) -> ProjectDraft {
    let barrels = (1..).zip(shapes).map(|(id, shape)| Entry {
        id: Id(id),
        draft: BarrelDraft::new("Barrel", shape),
    });
    let mut slats = [11, 12].map(|id| Entry {
        id: Id(id),
        draft: SlatDraft::new("Slat"),
    });
    slats[0].draft.species = Some(Id(21));
    ProjectDraft {
        name: String::new(),
        barrels: barrels.collect(),
        slats: slats.to_vec(),
        species: vec![Entry {
            id: Id(21),
            draft: SpeciesDraft::new("Wood"),
        }],
        conditions: ConditionsDraft::new(),
        cutter_sets: vec![Entry {
            id: Id(31),
            draft: CutterSetDraft::new("Set"),
        }],
        rules: RulesDraft {
            spacing,
            cutter_set: Some(Id(ids[3])),
            ..RulesDraft::new()
        },
        search: SearchDraft::new(),
        layout: LayoutDraft {
            barrel: Id(ids[0]),
            top: Id(ids[1]),
            bottom: Id(ids[2]),
            way,
            turn: Typed::initial(Field::Turn),
            accuracy: Id(41),
        },
        orders: vec![OrderDraft::new(Id(2))],
        saw_shop: saw_shop(),
        heads: [const { HeadDraft::new() }; 3],
        cut: CutDraft::new(),
        run: RunDraft::new(),
        supply: solver::SupplyDraft::new(),
        title_block: solver::TitleBlock::new(),
        set_aside: None,
        accuracies: vec![Entry {
            id: Id(41),
            draft: AccuracyDraft::new("Line"),
        }],
    }
}

/// A plank, a blank of typed sizes, and one that becomes a slat of a species.
fn saw_shop() -> SawShopDraft {
    let mut blanks = [61, 62].map(|id| Entry {
        id: Id(id),
        draft: BlankDraft::new("Blank"),
    });
    blanks[1].draft.slat = Some(Id(11));
    SawShopDraft {
        planks: vec![Entry {
            id: Id(51),
            draft: PlankDraft::new("Plank"),
        }],
        blanks: blanks.to_vec(),
        ..SawShopDraft::new()
    }
}

/// Every field of a project but the paths.
fn fields(project: &mut ProjectDraft) -> Vec<&mut Typed> {
    let mut fields = vec![&mut project.layout.turn];
    for Entry { draft, .. } in &mut project.barrels {
        fields.extend([
            &mut draft.size,
            &mut draft.sides,
            &mut draft.height,
            &mut draft.face_radius,
            &mut draft.corner_radius,
            &mut draft.axis_across,
            &mut draft.axis_up,
            &mut draft.coat,
            &mut draft.length,
            &mut draft.lead_diameter,
        ]);
    }
    for Entry { draft, .. } in &mut project.slats {
        fields.extend([
            &mut draft.length,
            &mut draft.width,
            &mut draft.thickness,
            &mut draft.width_tolerance,
            &mut draft.thickness_tolerance,
            &mut draft.moisture,
            &mut draft.pack_slats,
            &mut draft.pack_price,
            &mut draft.on_hand,
            &mut draft.pack_limit,
        ]);
    }
    for Entry { draft, .. } in &mut project.species {
        fields.extend([
            &mut draft.radial,
            &mut draft.tangential,
            &mut draft.fibre_saturation,
        ]);
    }
    for Entry { draft, .. } in &mut project.cutter_sets {
        fields.extend([&mut draft.pitch, &mut draft.most, &mut draft.price]);
    }
    let (conditions, search) = (&mut project.conditions, &mut project.search);
    fields.extend([
        &mut conditions.moisture,
        &mut conditions.temperature,
        &mut conditions.humidity,
        &mut search.new_set_price,
        &mut search.year_gross,
    ]);
    let rules = &mut project.rules;
    fields.extend([
        &mut rules.pitch,
        &mut rules.most,
        &mut rules.clearance,
        &mut rules.axis_height,
        &mut rules.land,
        &mut rules.edge,
        &mut rules.planing,
        &mut rules.floor,
        &mut rules.wall,
        &mut rules.eccentricity,
        &mut rules.bond,
        &mut rules.relief,
        &mut rules.end_trim,
        &mut rules.saw_kerf,
        &mut rules.slat_rejects,
        &mut rules.pencil_rejects,
    ]);
    for order in &mut project.orders {
        fields.extend([&mut order.gross, &mut order.due, &mut order.on_hand]);
    }
    for head in &mut project.heads {
        fields.extend([
            &mut head.diameter,
            &mut head.hook,
            &mut head.knives,
            &mut head.speed,
            &mut head.marked,
        ]);
    }
    let cut = &mut project.cut;
    fields.extend([&mut cut.feed, &mut cut.overcut, &mut cut.draft]);
    let run = &mut project.run;
    fields.extend([
        &mut run.gross,
        &mut run.lead_tolerance,
        &mut run.lead_density,
        &mut run.lead_breakage,
        &mut run.glue_spread,
        &mut run.clamp_pressure,
        &mut run.press_hours,
        &mut run.press_load,
        &mut run.coat_solids,
        &mut run.coat_passes,
        &mut run.specific_gravity,
        &mut run.volumetric_shrinkage,
    ]);
    fields.extend(&mut run.yields);
    let supply = &mut project.supply;
    fields.extend(supply.periods.iter_mut().map(|period| &mut period.hours));
    fields.extend([
        &mut supply.hour_price,
        &mut supply.sandwich_seconds,
        &mut supply.changeover_cost,
        &mut supply.changeover_minutes,
        &mut supply.pencil_holding,
        &mut supply.slat_holding,
        &mut supply.lead_price,
        &mut supply.glue_price,
        &mut supply.coat_price,
        &mut supply.chip_price,
        &mut supply.least_certified,
        &mut supply.most_slats_stored,
        &mut supply.cost_limit,
    ]);
    let shop = &mut project.saw_shop;
    for Entry { draft, .. } in &mut shop.planks {
        fields.extend([
            &mut draft.length,
            &mut draft.width,
            &mut draft.thickness,
            &mut draft.price,
            &mut draft.on_hand,
            &mut draft.end_trim,
            &mut draft.edge_trim,
        ]);
    }
    for Entry { draft, .. } in &mut shop.blanks {
        fields.extend([
            &mut draft.length,
            &mut draft.width,
            &mut draft.thickness,
            &mut draft.length_dressing,
            &mut draft.width_dressing,
            &mut draft.thickness_dressing,
            &mut draft.demand,
            &mut draft.over_worth,
            &mut draft.most_over,
        ]);
    }
    fields.extend([
        &mut shop.crosscut_kerf,
        &mut shop.rip_kerf,
        &mut shop.moisture,
        &mut shop.shortest_offcut,
        &mut shop.offcut_price,
    ]);
    fields
}

/// A plain project with some fields changed to anything, from none to most.
pub(crate) fn any_project() -> impl Strategy<Value = ProjectDraft> {
    let shape = || prop::sample::select(Shape::ALL.to_vec());
    let way = shape().prop_flat_map(|shape| prop::sample::select(Way::of(shape)));
    let ways = prop_oneof![way, Just(Way::Turned)];
    let spacings: Vec<Spacing> = Spacing::ALL.into_iter().chain([Spacing::Set]).collect();
    let spacing = prop::sample::select(spacings);
    // Some of them name nothing.
    let ids = (1..=3_u32, 11..=13_u32, 10..=12_u32, 31..=32_u32);
    let ids = ids.prop_map(|(a, b, c, d)| [a, b, c, d]);
    let source = prop::sample::select(MoistureSource::ALL.to_vec());
    let search = (
        prop::sample::select(Turns::ALL.to_vec()),
        prop::sample::select(AxisChoice::ALL.to_vec()),
        prop::sample::select(Pairs::ALL.to_vec()),
        prop::option::of(any_typed()),
    );
    let paths = [any_path(), any_path()];
    let changes = prop_oneof![
        4 => prop::collection::vec((any::<prop::sample::Index>(), any_typed()), 0..4),
        1 => prop::collection::vec((any::<prop::sample::Index>(), any_typed()), 0..40),
    ];
    let kinds = ([shape(), shape()], ways, spacing, ids, source);
    (kinds, paths, search, changes).prop_map(
        |((shapes, way, spacing, ids, source), paths, search, changes)| {
            let mut project = plain_project(shapes, way, spacing, ids);
            project.conditions.source = source;
            for (Entry { draft, .. }, path) in project.barrels.iter_mut().zip(paths) {
                draft.path = path;
            }
            let (turns, axis, pairs, new_set_price) = search;
            project.search = SearchDraft {
                turns,
                axis,
                pairs,
                new_set_price: new_set_price.unwrap_or(Typed::empty()),
                ..SearchDraft::new()
            };
            for (place, typed) in changes {
                let mut fields = fields(&mut project);
                let place = place.index(fields.len());
                *fields[place] = typed;
            }
            project
        },
    )
}

/// As [`any_project`], with anything in the saw shop alone.
pub(crate) fn any_saw_shop() -> impl Strategy<Value = ProjectDraft> {
    let aim = prop::sample::select(SawingAim::ALL.to_vec());
    let changes = prop::collection::vec((any::<prop::sample::Index>(), any_typed()), 0..8);
    (aim, changes).prop_map(|(aim, changes)| {
        let way = Way::of(Shape::Round)[0];
        let mut project = plain_project([Shape::Round; 2], way, Spacing::Closest, [1, 11, 11, 31]);
        project.saw_shop.aim = aim;
        let of_project = fields(&mut project).len();
        let mut bare = project.clone();
        bare.saw_shop = SawShopDraft::new();
        // The saws have five fields of their own; those of the shop stand last.
        let of_shop = of_project - (fields(&mut bare).len() - 5);
        for (place, typed) in changes {
            let mut fields = fields(&mut project);
            let place = of_project - 1 - place.index(of_shop);
            *fields[place] = typed;
        }
        project
    })
}
