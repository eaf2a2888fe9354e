//! The scales of a plank, which may differ along and across.

use crate::figure;

/// Micrometres of an inch, and pixels that stand for one: CSS Values and Units, section on absolute
/// lengths, where 1in is 96px.
const INCH: f64 = 25_400.0;
const PIXELS: f64 = 96.0;

/// Pixels per micrometre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scales {
    pub(super) along: f64,
    pub(super) across: f64,
}

impl Scales {
    /// Both scales as ratios after ISO 5455, drawing to plank, of a drawing shown at its own size;
    /// one where they are the same.
    pub(super) fn in_words(&self) -> String {
        let (along, across) = (ratio(self.along), ratio(self.across));
        if along == across {
            format!("Scale {along}")
        } else {
            format!("Scale {along} along, {across} across")
        }
    }
}

/// Three digits of a ratio, with the 1 on the smaller side.
fn ratio(scale: f64) -> String {
    let plank = PIXELS / INCH / scale;
    // Where both sides are the same in three digits, the 1 stands first.
    if plank >= 0.995 {
        format!("1:{}", three_digits(plank))
    } else {
        format!("{}:1", three_digits(1.0 / plank))
    }
}

fn three_digits(number: f64) -> String {
    let decimals = if number < 9.995 {
        2
    } else if number < 99.95 {
        1
    } else {
        0
    };
    figure::plain(number, decimals)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The words for a plank of so many millimetres drawn over so many pixels each way.
    #[track_caller]
    fn check(along: (f64, f64), across: (f64, f64), expected: &str) {
        let scale = |(millimetres, pixels): (f64, f64)| pixels / millimetres / 1000.0;
        let (along, across) = (scale(along), scale(across));
        assert_eq!(Scales { along, across }.in_words(), expected);
    }

    // By hand: 96 px are 25.4 mm.
    #[test]
    fn an_inch_in_96_pixels_is_true_to_size() {
        check((25.4, 96.0), (50.8, 192.0), "Scale 1:1.00");
    }
    #[test]
    fn each_way_has_its_own() {
        check(
            (508.0, 96.0),
            (76.2, 96.0),
            "Scale 1:20.0 along, 1:3.00 across",
        );
    }
    #[test]
    fn enlarged_and_far_reduced() {
        check(
            (2.54, 96.0),
            (3175.0, 96.0),
            "Scale 10.0:1 along, 1:125 across",
        );
    }
}
