//! `layout`: the layout of a project.

use app::demo;

use crate::program::{ask, json_of};

#[test]
fn the_demo_is_laid_as_on_the_page() {
    let (code, text, complaint) = ask(&["layout", "-"], &demo::project());
    assert_eq!((code, complaint.as_str()), (0, ""));
    for line in [
        "Alder Brook works (invented)",
        "Barrel         Writer, hexagonal",
        "Way            Seam through faces, 30.0°",
        "Pencils        10 from a sandwich; 10 across, 1 along",
        "Pitch          7.24\u{202f}mm",
        // An edge of 1.0 and half a bare pencil of 6.84.
        " 1   4.42",
        "Slats  28.8",
    ] {
        assert!(text.lines().any(|told| told == line), "{line} in\n{text}");
    }
    assert!(text.contains("pass  Land "), "{text}");
    assert!(!text.contains("FAIL"), "{text}");
}

#[test]
fn inches_are_told_where_they_are_asked_for() {
    let (_, text, _) = ask(&["layout", "-", "--unit", "in"], &demo::project());
    assert!(text.contains("Pitch          0.285\u{202f}in"), "{text}");
}

#[test]
fn the_wood_of_the_balance_adds_up() {
    let balance = &json_of("layout", &demo::project())["balance"];
    let classes = balance["classes"].as_array().unwrap();
    let sum: f64 = classes
        .iter()
        .map(|class| class["volume_mm3"].as_f64().unwrap())
        .sum();
    let bought = balance["bought_mm3"].as_f64().unwrap();
    assert!((sum - bought).abs() < 1e-9 * bought, "{sum} of {bought}");
}
