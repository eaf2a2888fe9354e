//! The stretch of a knife at a hook angle: K = √(R² − e²) − √((R − d)² − e²), e = R·sin γ.

use super::head;
use solver::{Length, knife_stretch};

#[test]
fn the_stretch_is_that_of_plane_geometry() {
    // Computed from the formula with 25 digits, printed to four decimals.
    for (radius, depth, hook, printed) in [
        (62.5, 3.5, 20.0, "3.7394"),
        (62.5, 3.5, 15.0, "3.6312"),
        (50.0, 3.5, 20.0, "3.7434"),
        (60.0, 10.0, 20.0, "10.7868"),
    ] {
        let head = head(2.0 * radius, hook, 2.0, 6_000.0);
        let found = knife_stretch(&head, Length::millimetres(depth)).expect("it is deep enough");
        assert_eq!(format!("{:.4}", found.in_millimetres()), printed);
    }
}

#[test]
fn a_point_on_the_face_runs_on_the_circle_that_its_depth_asks_for() {
    // Turned about the axis of the head, the point at K on the face at a distance e from the axis
    // runs on a circle of radius √((√(R² − e²) − K)² + e²), which must be R − d.
    for (radius, hook) in [(40.0, 5.0), (62.5, 20.0), (90.0, 35.0), (30.0, 60.0)] {
        let head = head(2.0 * radius, hook, 2.0, 6_000.0);
        let offset = radius * libm::sin(f64::to_radians(hook));
        for tenth in 0..40 {
            let depth = f64::from(tenth) / 10.0;
            let on_face = knife_stretch(&head, Length::millimetres(depth)).expect("it is deep");
            let rest = (radius * radius - offset * offset).sqrt() - on_face.in_millimetres();
            let circle = (rest * rest + offset * offset).sqrt();
            assert!(
                (circle - (radius - depth)).abs() < 1e-12,
                "{depth} at {hook}"
            );
        }
    }
}

#[test]
fn there_is_no_depth_beyond_the_face() {
    // R·(1 − sin 30°) = 25.
    let head = head(100.0, 30.0, 2.0, 6_000.0);
    let stretch = |depth| knife_stretch(&head, Length::millimetres(depth));
    assert!(stretch(24.999).is_some());
    for depth in [25.001, 1e9, -0.001, f64::NAN] {
        assert_eq!(stretch(depth), None, "{depth}");
    }
}
