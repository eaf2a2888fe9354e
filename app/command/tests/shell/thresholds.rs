//! `thresholds`: what the next pencil asks for.

use app::demo;
use serde_json::json;

use crate::program::{ask, json_of};

#[test]
fn the_next_pencil_asks_for_one_pitch_more_of_slat() {
    let answer = json_of("thresholds", &demo::project());
    let sizes = answer["sizes"].as_array().unwrap();
    let width = sizes
        .iter()
        .find(|size| size["path"] == "slats[0].width_mm")
        .unwrap();
    let above = &width["above"][0];
    assert_eq!(
        (&above["pencils_before"], &above["pencils_after"]),
        (&json!(10), &json!(11))
    );
    // Two edges of 1.0, a bare pencil of 6.84 and ten pitches of 7.24.
    let miss = above["at_mm"].as_f64().unwrap() - 81.24;
    assert!(miss.abs() < 1e-6, "{miss}");
    let (_, text, _) = ask(&["thresholds", "-"], &demo::project());
    assert!(text.contains("10 → 11 pencils"), "{text}");
}
