use super::*;
use crate::quantity::Angle;

fn square() -> Outline {
    Outline::regular(4, Length::millimetres(1.0), Length::ZERO, Angle::ZERO)
}

#[test]
fn a_square_is_written_in_full_and_by_hand() {
    let svg = TrueSize::of_outline(&square(), "□").to_svg();
    assert!(svg.starts_with(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"6.000000mm\" height=\"6.000000mm\" viewBox=\"-3.000000 -3.000000 6.000000 6.000000\">"
    ));
    assert_eq!(svg.matches("L").count(), 4 + 2, "four sides and a cross");
    assert!(!svg.contains("-0.000000"), "{svg}");
}

#[test]
fn the_halves_of_a_circle_are_bulges_of_one() {
    let dxf = TrueSize::of_outline(&Outline::round(Length::millimetres(3.0)), "").to_dxf();
    let halves = dxf.matches("42\n1.000000000000\n").count();
    let straight = dxf.matches("42\n0.000000000000\n").count();
    // A quarter of half a turn has the tangent 1; two strokes of two ends are straight.
    assert_eq!((halves, straight), (2, 4));
    assert!(dxf.ends_with("0\nENDSEC\n0\nEOF\n"));
}

#[test]
fn a_file_has_as_many_values_as_codes() {
    let dxf = TrueSize::of_outline(&square(), "one\n0\nEOF").to_dxf();
    let lines: Vec<&str> = dxf.lines().collect();
    assert!(lines.len().is_multiple_of(2));
    assert!(
        lines
            .iter()
            .step_by(2)
            .all(|code| code.parse::<u16>().is_ok())
    );
    let ends = lines.chunks_exact(2).filter(|pair| pair == &["0", "EOF"]);
    assert_eq!(ends.count(), 1);
}

#[test]
fn a_name_without_a_letter_is_no_text() {
    let texts = |name: &str| {
        let dxf = TrueSize::of_outline(&square(), name).to_dxf();
        dxf.matches("0\nTEXT\n").count()
    };
    assert_eq!(
        (texts(""), texts("a"), texts(&"鉛".repeat(500))),
        (1, 2, 1 + 500_usize.div_ceil(34))
    );
}
