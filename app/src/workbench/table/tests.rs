//! Rows of every table, and what goes by them.

use super::*;
use crate::demo;
use solver::PeriodDraft;

#[test]
fn the_layout_moves_to_the_stock_that_takes_the_place_of_a_deleted_one() {
    let mut project = demo::project();
    let (first, second) = (project.slats[0].id, project.slats[1].id);
    assert_eq!(Table::Slats.delete(&mut project, first), Some(second));
    assert_eq!(
        (project.layout.top, project.layout.bottom),
        (second, second)
    );
}

#[test]
fn a_layout_without_slats_takes_the_next_one_added() {
    let mut project = demo::project();
    for row in Table::Slats.rows(&project) {
        Table::Slats.delete(&mut project, row);
    }
    assert!(project.check_layout().is_err());
    Table::Slats.append(&mut project);
    assert!(project.check_layout().is_ok());
}

#[test]
fn stocks_of_a_deleted_species_are_of_none() {
    let mut project = demo::project();
    Table::Species.delete(&mut project, Id(21));
    let species: Vec<Option<Id>> = project
        .slats
        .iter()
        .map(|slat| slat.draft.species)
        .collect();
    assert_eq!(species, [None, None, None, Some(Id(22)), Some(Id(22))]);
    assert!(project.check().is_ok());
}

#[test]
fn a_copy_stands_behind_its_row_with_a_name_of_its_own() {
    for table in Table::ALL {
        let mut project = demo::project();
        let rows = table.rows(&project);
        let copy = table.copy(&mut project, rows[0]).unwrap();
        assert_eq!(table.place(&project, copy), Some(1));
        if let Some(name) = table
            .name(&project, copy)
            .filter(|_| table != Table::Offers)
        {
            assert!(name.ends_with(" copy"), "{name}");
        }
        let next = rows.get(1).or(rows.first()).copied();
        assert_eq!(table.delete(&mut project, copy), next);
        assert_eq!(project, demo::project());
    }
}

#[test]
fn rows_move_up_and_down_and_stop_at_the_ends() {
    for table in Table::ALL {
        let mut project = demo::project();
        if table.rows(&project).len() == 1 {
            table.copy(&mut project, table.rows(&demo::project())[0]);
        }
        let before = project.clone();
        let rows = table.rows(&project);
        table.shift(&mut project, rows[0], Step::Up);
        assert_eq!(project, before);
        let moved = table.shift(&mut project, rows[0], Step::Down);
        assert_eq!(table.place(&project, moved), Some(1));
        assert_eq!(table.shift(&mut project, moved, Step::Up), rows[0]);
        assert_eq!(project, before);
        table.shift(&mut project, rows[rows.len() - 1], Step::Down);
        assert_eq!(project, before);
    }
}

#[test]
fn what_is_due_stays_with_its_period() {
    let due = |project: &ProjectDraft| {
        let orders = 0..project.orders.len();
        let periods = orders.map(|order| project.due_period(order));
        let name = |at: usize| Table::Periods.spoken_name(project, Id(at as u32));
        periods
            .map(|period| period.map(name).unwrap())
            .collect::<Vec<String>>()
    };
    let mut project = demo::project();
    let before = due(&project);
    Table::Periods.copy(&mut project, Id(0));
    assert_eq!(due(&project), before);
    Table::Periods.shift(&mut project, Id(1), Step::Down);
    assert_eq!(due(&project), before);
    Table::Periods.delete(&mut project, Id(2));
    assert_eq!((due(&project), project), (before, demo::project()));
}

#[test]
fn one_period_stays() {
    let mut project = demo::project();
    for _ in 0..4 {
        Table::Periods.delete(&mut project, Id(0));
    }
    assert_eq!(project.supply.periods, [PeriodDraft::new("")]);
    assert!(!Column::Number(Field::PackLimit).may_be_unwanted());
}

#[test]
fn prices_of_an_offer_come_and_go_with_what_is_typed() {
    use solver::Typed;
    let mut project = demo::project();
    let tiers = |project: &ProjectDraft| project.supply.offers[4].draft.tiers.len();
    let offer = project.supply.offers[4].id;
    let slot = |at, field| Slot::Tier(offer, at, field);
    slot(2, Field::PackPrice).set(&mut project, Typed::Number(90.0));
    assert_eq!(tiers(&project), 3);
    assert_eq!(
        slot(1, Field::TierFrom).get(&project),
        Some(&Typed::empty())
    );
    assert!(Column::Tier(3, Field::TierFrom).is_wanted(&project));
    slot(2, Field::PackPrice).set(&mut project, Typed::empty());
    assert_eq!(project, demo::project());
    slot(9, Field::PackPrice).set(&mut project, Typed::Number(1.0));
    assert_eq!(project, demo::project());
    assert!(!Column::Tier(4, Field::TierFrom).is_wanted(&project));
}

#[test]
fn headings_carry_the_unit_shown() {
    let heading = |unit| Column::Number(Field::SlatWidth).heading(unit);
    assert_eq!(heading(LengthUnit::Millimetre), "Slat width, mm");
    assert_eq!(heading(LengthUnit::Inch), "Slat width, in");
    let moisture = Column::Number(Field::DeliveryMoisture);
    assert_eq!(
        moisture.heading(LengthUnit::Inch),
        "Moisture as delivered, %"
    );
}
