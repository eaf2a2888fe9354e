//! Whatever may be typed or pasted as the path of a free outline.

use proptest::prelude::*;
use solver::{Length, Outline};
use std::fmt::Write;

/// A flute on top and at the side, hollow faces, an ellipse, a curve of cubics.
const SOUND: [&str; 5] = [
    "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z",
    "M0 0 H8 V2 A2 2 0 0 0 8 6 V8 H0 Z",
    "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z",
    "M0 5 A5 3 20 0 1 10 5 A5 3 20 0 1 0 5 Z",
    "m0 0c3-2 6-2 9 0s2 6 0 9-6 2-9 0-2-6 0-9z",
];
/// Lines that cross, touch, run back over themselves, stay open or enclose nothing.
const BROKEN: [&str; 9] = [
    "M0 0 L8 8 L8 0 L0 8 Z",
    "M0 -5 L3 4 L-5 -2 L5 -2 L-3 4 Z",
    "M0 0 H8 V8 H4 V0 H4 V8 H0 Z",
    "M0 0 H8 V8",
    "M0 0 L8 0 L4 0 Z",
    "M0 0 H8 V8 H0 Z M2 2 H4 V4 Z",
    "M1e308 0 L-1e308 0 L0 1e308 Z",
    "M0 0 V-15 L-11 5e160 Z",
    "M0 0 V-15 L-11 5e90 Z",
];

/// Numbers of path data, those among them that no drawing has.
fn any_figure() -> impl Strategy<Value = String> {
    let odd = [
        "1e308", "-1e308", "1e-320", "NaN", "inf", "1e999", "0", "-0", ".", "1.5.5", "٣",
    ];
    prop_oneof![
        8 => (-20.0_f64..20.0).prop_map(|number| number.to_string()),
        2 => (-9_i32..10).prop_map(|number| number.to_string()),
        1 => prop::sample::select(odd.map(str::to_owned).to_vec()),
        1 => any::<f64>().prop_map(|number| format!("{number:e}")),
    ]
}

/// A command with a number of figures, mostly as many as it takes.
fn any_command() -> impl Strategy<Value = String> {
    const TAKES: [(char, usize); 10] = [
        ('M', 2),
        ('L', 2),
        ('H', 1),
        ('V', 1),
        ('C', 6),
        ('S', 4),
        ('Q', 4),
        ('T', 2),
        ('A', 7),
        ('Z', 0),
    ];
    let figures = prop::collection::vec(any_figure(), 8);
    let command = prop::sample::select(TAKES.to_vec());
    (command, any::<bool>(), 0..12_usize, figures).prop_map(
        |((letter, takes), relative, other, mut figures)| {
            // Sometimes one figure more or less.
            let count = match other {
                0 => takes + 1,
                1 => takes.saturating_sub(1),
                _ => takes,
            };
            if letter == 'A' {
                // Flags are 0 or 1 in a drawing that means something.
                for (place, flag) in [(3, other % 2), (4, other / 2 % 2)] {
                    figures[place] = flag.to_string();
                }
            }
            figures.truncate(count);
            let letter = if relative {
                letter.to_ascii_lowercase()
            } else {
                letter
            };
            format!("{letter}{}", figures.join(" "))
        },
    )
}

/// A closed line of many points round a middle, evenly or all over the place.
fn many_points(points: u32, wild: bool) -> String {
    let mut text = String::new();
    for k in 0..points {
        let turns = if wild { 7.0 } else { 1.0 };
        let angle = f64::from(k) / f64::from(points) * std::f64::consts::TAU * turns;
        let radius = if wild {
            20.0 + f64::from(k * 37 % 101)
        } else {
            50.0
        };
        let (sine, cosine) = libm::sincos(angle);
        let letter = if k == 0 { 'M' } else { 'L' };
        // Writing to a string cannot fail.
        let _ = write!(text, "{letter}{} {} ", radius * cosine, radius * sine);
    }
    text + "Z"
}

/// Any path: sound ones, broken ones, and noise.
pub(crate) fn any_path() -> impl Strategy<Value = String> {
    prop_oneof![
        8 => prop::sample::select(SOUND.map(str::to_owned).to_vec()),
        3 => prop::sample::select(BROKEN.map(str::to_owned).to_vec()),
        4 => prop::collection::vec(any_command(), 0..12).prop_map(|commands| commands.join(" ")),
        4 => prop::collection::vec(any_command(), 1..12)
            .prop_map(|commands| format!("M0 0 {} Z", commands.join(" "))),
        1 => prop::collection::vec(any::<u8>(), 0..80)
            .prop_map(|bytes| String::from_utf8_lossy(&bytes).into_owned()),
        1 => "\\PC{0,40}",
        1 => (prop::sample::select(vec![40, 400, 10_000]), any::<bool>())
            .prop_map(|(points, wild)| many_points(points, wild)),
    ]
}

#[test]
fn sound_paths_are_outlines_and_broken_ones_are_not() {
    let outline = |path: &&str| {
        let (size, zero) = (Length::millimetres(8.0), Length::ZERO);
        Outline::from_path(path, size, zero, zero)
    };
    for path in SOUND {
        assert!(outline(&path).is_ok(), "{path}: {:?}", outline(&path));
    }
    for path in BROKEN {
        assert!(outline(&path).is_err(), "{path}");
    }
}
