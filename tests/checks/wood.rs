//! Moisture and movement against the tables and examples of the USDA Forest Products Laboratory's
//! *Wood Handbook*, FPL-GTR-190; "recalled" marks what is from memory.

use solver::wood::change;
use solver::{Length, Species, equilibrium_moisture};

/// Shrinkage begins here unless a table says otherwise, percent.
const USUAL: f64 = 30.0;

/// The change of a dimension of 100 mm, mm.
fn of_100(shrinkage: f64, saturation: f64, from: f64, to: f64) -> f64 {
    change(Length::millimetres(100.0), shrinkage, saturation, from, to).in_millimetres()
}

/// The coefficient of dimensional change: the change of one percent, over the dimension.
fn coefficient(shrinkage: f64, saturation: f64) -> f64 {
    of_100(shrinkage, saturation, 10.0, 11.0) / 100.0
}

/// Radial and tangential shrinkage and the begin of it in the list that a project starts from.
fn wood(name: &str) -> Species {
    let mut woods = Species::handbook().into_iter();
    let draft = woods
        .find(|wood| wood.name == name)
        .expect("the list has it");
    draft.check().expect("the list holds species that can be")
}

#[test]
fn shrinkage_is_that_of_the_table() {
    // Table 4-3, radial and tangential, percent from green to ovendry; white pine and jelutong
    // (Table 4-4) recalled.
    let table = [
        ("Incense-cedar", 3.3, 5.2),
        ("American basswood", 6.6, 9.3),
        ("Yellow-poplar", 4.6, 8.2),
        ("Western redcedar", 2.4, 5.0),
        ("Port-Orford-cedar", 4.6, 6.9),
        ("Eastern redcedar", 3.1, 4.7),
        ("Quaking aspen", 3.5, 6.7),
        ("Eastern white pine", 2.1, 6.1),
        ("Jelutong", 2.3, 5.5),
    ];
    assert_eq!(Species::handbook().len(), table.len());
    for (name, radial, tangential) in table {
        let wood = wood(name);
        assert_eq!((wood.radial(), wood.tangential()), (radial, tangential));
    }
}

#[test]
fn coefficients_of_dimensional_change_are_those_printed() {
    // Table 13-5, radial and tangential, to the fifth decimal. Western redcedar, whose shrinkage
    // begins at 22 %, is recalled.
    let table = [
        ("American basswood", 0.002_30, 0.003_30),
        ("Quaking aspen", 0.001_19, 0.002_34),
        ("Western redcedar", 0.001_11, 0.002_34),
    ];
    for (name, radial, tangential) in table {
        let wood = wood(name);
        let both = [(wood.radial(), radial), (wood.tangential(), tangential)];
        for (shrinkage, printed) in both {
            let found = coefficient(shrinkage, wood.fibre_saturation());
            assert!(
                (found - printed).abs() <= 0.000_005,
                "{name}: {found} for {printed}"
            );
        }
    }
}

#[test]
fn the_worked_example_of_a_wide_board() {
    // Example of Eq. 13-2 (inputs recalled): 232 mm from 8 to 11 % with C = 0.00245 grow by
    // 1.7 mm to 233.7 mm. The shrinkage with that coefficient is 100·C·F / (1 + C·(F − 10)).
    let shrinkage = 100.0 * 0.002_45 * USUAL / (1.0 + 0.002_45 * 20.0);
    assert!((coefficient(shrinkage, USUAL) - 0.002_45).abs() < 1e-12);
    let board = Length::millimetres(232.0);
    let grown = change(board, shrinkage, USUAL, 8.0, 11.0);
    assert_eq!(format!("{:.1}", grown.in_millimetres()), "1.7");
    assert_eq!(format!("{:.1}", (board + grown).in_millimetres()), "233.7");
}

#[test]
fn the_general_form_within_a_few_hundredths_where_the_coefficient_holds() {
    // Eq. 13-3 (form recalled), 100 mm from 12 to 8 %, computed with ten digits. Within 6 to 14 %
    // the coefficient is used, which takes the dimension at 10 %.
    for (shrinkage, general) in [
        (5.2, -0.715_661_987_3),
        (3.3, -0.448_887_982),
        (9.3, -1.313_281_084_5),
    ] {
        let found = of_100(shrinkage, USUAL, 12.0, 8.0);
        assert!(
            (found / general - 1.0).abs() < 0.01,
            "{found} for {general}"
        );
    }
}

#[test]
fn the_general_form_beyond_the_coefficient() {
    // Eq. 13-3 (form recalled) by hand: ΔD = D·ΔM / (30·100/S − 30 + M). S 5.2, 100 mm:
    // from 20 to 8 %, −1200 / (576.923 − 10); from 5 to 8 %, 300 / (576.923 − 25).
    let close = |found: f64, expected: f64| {
        assert!((found - expected).abs() < 1e-9, "{found} for {expected}");
    };
    close(
        of_100(5.2, USUAL, 20.0, 8.0),
        -1200.0 / (3000.0 / 5.2 - 10.0),
    );
    close(of_100(5.2, USUAL, 5.0, 8.0), 300.0 / (3000.0 / 5.2 - 25.0));
    // Eq. 4-7: from green to 12 % wood of 5.2 % shrinks by 3.12 %.
    close(of_100(5.2, USUAL, 30.0, 12.0), -3.12);
}

#[test]
fn equilibrium_moisture_at_70_fahrenheit_is_that_printed() {
    // The table of moisture contents at 70 °F, 5 to 90 % relative humidity by 5; the formula
    // (coefficients recalled) is a fit, held to 0.07 %.
    let printed = [
        1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9,
        20.5,
    ];
    let celsius = (70.0 - 32.0) / 1.8;
    for (step, printed) in (1..).zip(printed) {
        let humidity = f64::from(step) * 0.05;
        let found = equilibrium_moisture(celsius, humidity);
        assert!(
            (found - printed).abs() <= 0.07,
            "{found} for {printed} at {humidity}"
        );
    }
}
