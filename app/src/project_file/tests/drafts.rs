//! Any draft at all.

use super::super::words::Word;
use super::*;
use proptest::prelude::*;
use solver::{
    AccuracyDraft, BarrelDraft, BlankDraft, Colour, ConditionsDraft, CutDraft, CutterSetDraft,
    Entry, ErrorDraft, FinishDraft, HeadDraft, Id, LayoutDraft, LeadGrade, OfferDraft, OrderDraft,
    PeriodDraft, PlankDraft, ProjectDraft, RulesDraft, RunDraft, SawShopDraft, SawnSlatsDraft,
    SearchDraft, SlatDraft, SpeciesDraft, SupplyDraft, Term, TierDraft, TitleBlock, Typed,
};

fn word<W: Word + std::fmt::Debug>() -> impl Strategy<Value = W> {
    (0..W::WORDS.len()).prop_map(|place| W::WORDS[place].1)
}

fn typed() -> impl Strategy<Value = Typed> {
    prop_oneof![
        any::<f64>().prop_map(Typed::Number),
        (0_u32..100_000).prop_map(|hundredths| Typed::Number(f64::from(hundredths) / 100.0)),
        any::<String>().prop_map(Typed::Text),
    ]
}

fn numbers<const N: usize>() -> impl Strategy<Value = [Typed; N]> {
    proptest::collection::vec(typed(), N)
        .prop_map(|list| list.try_into().expect("the list has this length"))
}

fn finish() -> impl Strategy<Value = FinishDraft> {
    let colour = || any::<[u8; 3]>().prop_map(|[red, green, blue]| Colour::new(red, green, blue));
    let parts = (
        any::<String>(),
        [colour(), colour(), colour()],
        numbers::<10>(),
    );
    parts.prop_map(|(imprint, colours, numbers)| {
        let [point_angle, coat_density, dip, face, margin, ..] = numbers.clone();
        let [.., end_margin, fall, tin_width, tin_height, tin_length] = numbers;
        let [coat_colour, lead_colour, dip_colour] = colours;
        FinishDraft {
            point_angle,
            coat_colour,
            coat_density,
            lead_colour,
            dip,
            dip_colour,
            imprint,
            face,
            margin,
            end_margin,
            fall,
            tin_width,
            tin_height,
            tin_length,
        }
    })
}

fn barrel() -> impl Strategy<Value = BarrelDraft> {
    let parts = (
        any::<[String; 2]>(),
        word::<ShapeWord>(),
        numbers::<10>(),
        finish(),
    );
    parts.prop_map(|([name, path], shape, numbers, finish)| {
        let [size, sides, height, face_radius, corner_radius, ..] = numbers.clone();
        let [.., axis_across, axis_up, coat, length, lead_diameter] = numbers;
        let shape = shape.into();
        BarrelDraft {
            name,
            shape,
            size,
            sides,
            height,
            face_radius,
            corner_radius,
            path,
            axis_across,
            axis_up,
            coat,
            length,
            lead_diameter,
            finish,
        }
    })
}

fn slat() -> impl Strategy<Value = SlatDraft> {
    let parts = (
        any::<String>(),
        any::<Option<u32>>(),
        word::<SawingWord>(),
        numbers::<10>(),
    );
    parts.prop_map(|(name, species, sawing, numbers)| {
        let [
            length,
            width,
            thickness,
            width_tolerance,
            thickness_tolerance,
            ..,
        ] = numbers.clone();
        let [.., moisture, pack_slats, pack_price, on_hand, pack_limit] = numbers;
        SlatDraft {
            name,
            length,
            width,
            thickness,
            width_tolerance,
            thickness_tolerance,
            species: species.map(Id),
            moisture,
            sawing: sawing.into(),
            pack_slats,
            pack_price,
            on_hand,
            pack_limit,
        }
    })
}

fn species() -> impl Strategy<Value = SpeciesDraft> {
    (any::<String>(), numbers::<3>()).prop_map(|(name, numbers)| {
        let [radial, tangential, fibre_saturation] = numbers;
        SpeciesDraft {
            name,
            radial,
            tangential,
            fibre_saturation,
        }
    })
}

fn conditions() -> impl Strategy<Value = ConditionsDraft> {
    (word::<MoistureSourceWord>(), numbers::<3>()).prop_map(|(source, numbers)| {
        let [moisture, temperature, humidity] = numbers;
        ConditionsDraft {
            source: source.into(),
            moisture,
            temperature,
            humidity,
        }
    })
}

fn cutter_set() -> impl Strategy<Value = CutterSetDraft> {
    let parts = (any::<String>(), any::<Option<u32>>(), numbers::<3>());
    parts.prop_map(|(name, barrel, [pitch, most, price])| CutterSetDraft {
        name,
        pitch,
        most,
        barrel: barrel.map(Id),
        price,
    })
}

fn rules() -> impl Strategy<Value = RulesDraft> {
    let parts = (
        word::<SpacingWord>(),
        any::<Option<u32>>(),
        numbers::<6>(),
        numbers::<10>(),
    );
    parts.prop_map(|(spacing, cutter_set, few, many)| {
        let [pitch, most, clearance, axis_height, land, edge] = few;
        let [planing, floor, wall, eccentricity, bond, ..] = many.clone();
        let [.., relief, end_trim, saw_kerf, slat_rejects, pencil_rejects] = many;
        RulesDraft {
            spacing: spacing.into(),
            pitch,
            cutter_set: cutter_set.map(Id),
            most,
            clearance,
            axis_height,
            land,
            edge,
            planing,
            floor,
            wall,
            eccentricity,
            bond,
            relief,
            end_trim,
            saw_kerf,
            slat_rejects,
            pencil_rejects,
        }
    })
}

fn accuracy() -> impl Strategy<Value = AccuracyDraft> {
    let readings = proptest::array::uniform10(word::<ReadingWord>());
    let parts = (any::<String>(), numbers::<10>(), readings, numbers::<3>());
    parts.prop_map(
        |(name, sizes, readings, [sigmas, width_offset, thickness_offset])| {
            let mut draft = AccuracyDraft {
                sigmas,
                width_offset,
                thickness_offset,
                ..AccuracyDraft::new(&name)
            };
            for (term, (size, reading)) in
                Term::ALL.into_iter().zip(sizes.into_iter().zip(readings))
            {
                *draft.error_mut(term) = ErrorDraft {
                    size,
                    reading: reading.into(),
                };
            }
            draft
        },
    )
}

fn search() -> impl Strategy<Value = SearchDraft> {
    let words = (word::<TurnsWord>(), word::<AxisWord>(), word::<PairsWord>());
    (words, numbers::<2>()).prop_map(|((turns, axis, pairs), [new_set_price, year_gross])| {
        SearchDraft {
            turns: turns.into(),
            axis: axis.into(),
            pairs: pairs.into(),
            new_set_price,
            year_gross,
        }
    })
}

fn plank() -> impl Strategy<Value = PlankDraft> {
    (any::<String>(), numbers::<7>()).prop_map(|(name, numbers)| {
        let [
            length,
            width,
            thickness,
            price,
            on_hand,
            end_trim,
            edge_trim,
        ] = numbers;
        PlankDraft {
            name,
            length,
            width,
            thickness,
            price,
            on_hand,
            end_trim,
            edge_trim,
        }
    })
}

fn blank() -> impl Strategy<Value = BlankDraft> {
    let parts = (any::<String>(), any::<Option<u32>>(), numbers::<9>());
    parts.prop_map(|(name, slat, numbers)| {
        let [length, width, thickness, length_dressing, ..] = numbers.clone();
        let [
            ..,
            width_dressing,
            thickness_dressing,
            demand,
            over_worth,
            most_over,
        ] = numbers;
        BlankDraft {
            name,
            slat: slat.map(Id),
            length,
            width,
            thickness,
            length_dressing,
            width_dressing,
            thickness_dressing,
            demand,
            over_worth,
            most_over,
        }
    })
}

fn saw_shop() -> impl Strategy<Value = SawShopDraft> {
    let lists = (entries(plank()), entries(blank()));
    let parts = (lists, word::<AimOfSawingWord>(), numbers::<5>());
    parts.prop_map(|((planks, blanks), aim, numbers)| {
        let [
            crosscut_kerf,
            rip_kerf,
            moisture,
            shortest_offcut,
            offcut_price,
        ] = numbers;
        SawShopDraft {
            planks,
            blanks,
            crosscut_kerf,
            rip_kerf,
            moisture,
            shortest_offcut,
            offcut_price,
            aim: aim.into(),
        }
    })
}

/// Heads, cut and run.
fn line() -> impl Strategy<Value = ([HeadDraft; 3], CutDraft, RunDraft)> {
    let head = numbers::<5>().prop_map(|[diameter, hook, knives, speed, marked]| HeadDraft {
        diameter,
        hook,
        knives,
        speed,
        marked,
    });
    let heads = proptest::array::uniform3(head);
    let cut = numbers::<3>().prop_map(|[feed, overcut, draft]| CutDraft {
        feed,
        overcut,
        draft,
    });
    (heads, cut, run())
}

fn run() -> impl Strategy<Value = RunDraft> {
    let grade = proptest::sample::select(LeadGrade::all().collect::<Vec<_>>());
    let parts = (grade, numbers::<12>(), numbers::<5>());
    parts.prop_map(|(grade, numbers, yields)| {
        let [
            gross,
            lead_tolerance,
            lead_density,
            lead_breakage,
            glue_spread,
            clamp_pressure,
            ..,
        ] = numbers.clone();
        let [
            ..,
            press_hours,
            press_load,
            coat_solids,
            coat_passes,
            specific_gravity,
            volumetric_shrinkage,
        ] = numbers;
        RunDraft {
            gross,
            grade,
            lead_tolerance,
            lead_density,
            lead_breakage,
            glue_spread,
            clamp_pressure,
            press_hours,
            press_load,
            coat_solids,
            coat_passes,
            specific_gravity,
            volumetric_shrinkage,
            yields,
        }
    })
}

fn supply() -> impl Strategy<Value = SupplyDraft> {
    let period = (any::<String>(), typed()).prop_map(|(name, hours)| PeriodDraft { name, hours });
    let sawn = (any::<u32>(), numbers::<2>(), any::<bool>());
    let sawn = sawn.prop_map(
        |(slat, [thousand_cost, most_slats], is_certified)| SawnSlatsDraft {
            slat: Id(slat),
            thousand_cost,
            most_slats,
            is_certified,
        },
    );
    let lists = (
        proptest::collection::vec(period, 0..4),
        entries(offer()),
        proptest::collection::vec(sawn, 0..3),
    );
    let parts = (
        lists,
        word::<AimOfPlanWord>(),
        numbers::<8>(),
        numbers::<8>(),
    );
    parts.prop_map(|((periods, offers, sawn), aim, few, many)| {
        let [
            hour_price,
            sandwich_seconds,
            changeover_cost,
            changeover_minutes,
            pencil_holding,
            slat_holding,
            lead_price,
            chip_price,
        ] = few;
        let [
            glue_price,
            coat_price,
            least_certified,
            most_pencils_stored,
            ..,
        ] = many.clone();
        let [
            ..,
            most_slats_stored,
            cost_limit,
            timber_limit,
            changeover_limit,
        ] = many;
        SupplyDraft {
            periods,
            offers,
            sawn,
            hour_price,
            sandwich_seconds,
            changeover_cost,
            changeover_minutes,
            pencil_holding,
            slat_holding,
            lead_price,
            glue_price,
            coat_price,
            chip_price,
            least_certified,
            most_pencils_stored,
            most_slats_stored,
            aim: aim.into(),
            cost_limit,
            timber_limit,
            changeover_limit,
        }
    })
}

fn offer() -> impl Strategy<Value = OfferDraft> {
    let tier = numbers::<2>().prop_map(|[from_packs, pack_price]| TierDraft {
        from_packs,
        pack_price,
    });
    let parts = (
        any::<(String, u32, bool)>(),
        proptest::collection::vec(tier, 0..4),
        word::<PricingWord>(),
        numbers::<6>(),
    );
    parts.prop_map(
        |((supplier, slat, is_certified), tiers, pricing, numbers)| {
            let [
                pack_slats,
                order_cost,
                least_packs,
                most_packs,
                pack_limit,
                lead_periods,
            ] = numbers;
            OfferDraft {
                supplier,
                slat: Id(slat),
                pack_slats,
                tiers,
                pricing: pricing.into(),
                order_cost,
                least_packs,
                most_packs,
                pack_limit,
                lead_periods,
                is_certified,
            }
        },
    )
}

fn layout() -> impl Strategy<Value = LayoutDraft> {
    let parts = (any::<[u32; 4]>(), word::<WayWord>(), typed());
    parts.prop_map(|([barrel, top, bottom, accuracy], way, turn)| LayoutDraft {
        accuracy: Id(accuracy),
        barrel: Id(barrel),
        top: Id(top),
        bottom: Id(bottom),
        way: way.into(),
        turn,
    })
}

fn title_block() -> impl Strategy<Value = TitleBlock> {
    let texts = any::<[String; 6]>();
    texts.prop_map(
        |[owner, number, title, creator, approver, issued]| TitleBlock {
            owner,
            number,
            title,
            creator,
            approver,
            issued,
        },
    )
}

/// Members with names that are told apart.
fn entries<T: std::fmt::Debug>(
    member: impl Strategy<Value = T>,
) -> impl Strategy<Value = Vec<Entry<T>>> {
    proptest::collection::btree_map(any::<u32>(), member, 0..4).prop_map(|members| {
        let entry = |(id, draft)| Entry { id: Id(id), draft };
        members.into_iter().map(entry).collect()
    })
}

pub(super) fn draft() -> impl Strategy<Value = ProjectDraft> {
    let order =
        (any::<u32>(), numbers::<3>()).prop_map(|(barrel, [gross, due, on_hand])| OrderDraft {
            barrel: Id(barrel),
            gross,
            due,
            on_hand,
        });
    let orders = proptest::collection::vec(order, 0..4);
    let wood = (entries(slat()), entries(species()), conditions());
    let machines = (entries(cutter_set()), rules(), entries(accuracy()));
    let parts = (
        any::<String>(),
        entries(barrel()),
        wood,
        machines,
        layout(),
        search(),
        (orders, saw_shop(), line(), supply(), title_block()),
    );
    parts.prop_map(
        |(name, barrels, (slats, species, conditions), machines, layout, search, work)| {
            let (orders, saw_shop, (heads, cut, run), supply, title_block) = work;
            let (cutter_sets, rules, accuracies) = machines;
            ProjectDraft {
                name,
                barrels,
                slats,
                species,
                conditions,
                cutter_sets,
                rules,
                layout,
                search,
                orders,
                saw_shop,
                heads,
                cut,
                run,
                supply,
                accuracies,
                title_block,
                set_aside: None,
            }
        },
    )
}
