//! Knife marks: p = 1000·v/(n·z) and h = R − √(R² − p²/4), and marks in an inch N·n/(12·v).

use super::head;
use solver::{KnifeMarks, Length};

/// Marks at a feed in m/min.
fn marks(diameter: f64, knives: f64, speed: f64, feed: f64) -> KnifeMarks {
    KnifeMarks::at_feed(&head(diameter, 0.0, knives, speed), feed).expect("the knives cut")
}

#[test]
fn pitch_and_wave_are_those_of_the_textbook() {
    // The formulas as printed in the trade; values computed with 25 digits.
    for (feed, speed, knives, diameter, pitch, wave) in [
        (12.0, 6_000.0, 2.0, 125.0, 1.0, 0.002_000_032),
        (60.0, 12_000.0, 1.0, 80.0, 5.0, 0.078_201_443),
    ] {
        let found = marks(diameter, knives, speed, feed);
        assert!((found.pitch.in_millimetres() - pitch).abs() < 1e-12);
        assert!((found.wave.in_millimetres() - wave).abs() < 1e-9);
        // The short form p²/(4D) is near.
        let short = pitch * pitch / (4.0 * diameter);
        assert!((found.wave.in_millimetres() / short - 1.0).abs() < 1e-3);
    }
}

#[test]
fn marks_in_an_inch_are_those_of_a_trade_magazine() {
    // Turns × knives / (12 × feet in a minute).
    for (speed, knives, feet, printed) in [(7_200.0, 2.0, 60.0, 20.0), (5_000.0, 3.0, 40.0, 31.25)]
    {
        let feed = feet * 0.3048;
        let found = marks(125.0, knives, speed, feed).per_inch;
        assert!((found - printed).abs() < 1e-9, "{found} for {printed}");
    }
}

#[test]
fn the_feed_for_a_mark_pitch_and_for_a_wave() {
    let head = head(125.0, 0.0, 2.0, 6_000.0);
    let by_pitch = KnifeMarks::with_pitch(&head, Length::millimetres(1.0)).expect("it cuts");
    assert!((by_pitch.feed - 12.0).abs() < 1e-12);
    // Waves under 5 µm at about 1 mm: 1.58 mm is the pitch of 5 µm on 125 mm.
    let by_wave = KnifeMarks::with_wave(&head, Length::millimetres(0.005)).expect("it cuts");
    assert!((by_wave.pitch.in_millimetres() - 2.0 * (0.005_f64 * 124.995).sqrt()).abs() < 1e-12);
}
