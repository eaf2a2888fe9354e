//! The marks that the knives of a turning head leave along the wood.

use crate::figure;
use crate::quantity::Length;
use crate::tooling::Head;
use crate::unit::LengthUnit;
use std::fmt;

/// The marks of a head at a feed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnifeMarks {
    /// The feed, m/min.
    pub feed: f64,
    /// Distance p between two marks.
    pub pitch: Length,
    /// Height h of the waves from valley to crest.
    pub wave: Length,
    /// Marks in an inch of 25.4 mm.
    pub per_inch: f64,
}

/// What keeps a feed from being told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FeedProblem {
    /// The feed, or what was asked of the marks, is no number above 0.
    NotAboveZero {
        /// What was found: m/min, or mm.
        found: f64,
    },
    /// The wood runs past between two knives: they leave wood uncut.
    WoodLeftUncut {
        /// The distance between two marks.
        pitch: Length,
        /// The diameter of the cutting circle.
        diameter: Length,
    },
}

impl FeedProblem {
    /// What is wrong, against what, and what to try.
    ///
    /// ```
    /// use solver::{HeadDraft, KnifeMarks, LengthUnit};
    /// let head = HeadDraft::new().check().unwrap();
    /// let told = KnifeMarks::at_feed(&head, 0.0).unwrap_err().message(LengthUnit::Millimetre);
    /// assert!(told.contains("above 0; this one is 0"));
    /// ```
    #[must_use]
    pub fn message(self, unit: LengthUnit) -> String {
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        match self {
            Self::NotAboveZero { found } => format!(
                "A feed, a mark pitch and a wave height must each be above 0; this one is {}",
                figure::exact(found)
            ),
            Self::WoodLeftUncut { pitch, diameter } => format!(
                "The knives come {} apart and cut no wider than the {} of the head: feed slower, or turn faster",
                length(pitch),
                length(diameter)
            ),
        }
    }
}

impl fmt::Display for FeedProblem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message(LengthUnit::Millimetre))
    }
}

impl std::error::Error for FeedProblem {}

impl KnifeMarks {
    /// The marks that a feed of v m/min gives.
    ///
    /// With n turns in a minute, z knives that cut and a cutting circle of radius R and diameter D,
    /// mm: p = 1000·v/(n·z), and h = R − √(R² − p²/4), which is p²/(4D) but for a few parts in ten
    /// thousand. The arcs are taken as circles; the trochoid that an edge runs on in the wood
    /// differs in height by 1 to 5 %. Source: trade formula; geometry of equal circles.
    ///
    /// # Errors
    /// Where the feed is not above 0, or p is more than D.
    ///
    /// ```
    /// use solver::{HeadDraft, KnifeMarks, Typed};
    /// let mut head = HeadDraft::new(); // 125 mm, two knives
    /// head.speed = Typed::Number(6_000.0);
    /// let marks = KnifeMarks::at_feed(&head.check().unwrap(), 12.0).unwrap();
    /// assert_eq!(marks.pitch.in_millimetres(), 1.0);
    /// assert!((marks.wave.in_millimetres() - 0.002_000_032).abs() < 1e-9);
    /// ```
    pub fn at_feed(head: &Head, feed: f64) -> Result<Self, FeedProblem> {
        let feed = above_zero(feed)?;
        let pitch = 1000.0 * feed / cuts(head);
        let (radius, diameter) = (
            head.radius().in_millimetres(),
            head.diameter().in_millimetres(),
        );
        if pitch > diameter {
            return Err(uncut(pitch, head));
        }
        let quarter = pitch * pitch / 4.0;
        // The same as R − √(R² − p²/4), without taking one of two numbers alike from the other.
        let wave = quarter / (radius + (radius * radius - quarter).max(0.0).sqrt());
        Ok(Self {
            feed,
            pitch: Length::millimetres(pitch),
            wave: Length::millimetres(wave),
            per_inch: 25.4 / pitch,
        })
    }

    /// The feed that gives a distance between marks: v = p·n·z/1000.
    ///
    /// # Errors
    /// Where p is not above 0 or more than D.
    pub fn with_pitch(head: &Head, pitch: Length) -> Result<Self, FeedProblem> {
        let pitch = above_zero(pitch.in_millimetres())?;
        Self::at_feed(head, pitch * cuts(head) / 1000.0)
    }

    /// The feed that gives a height of waves: p = 2·√(h·(2R − h)).
    ///
    /// # Errors
    /// Where h is not above 0 or more than R.
    pub fn with_wave(head: &Head, wave: Length) -> Result<Self, FeedProblem> {
        let wave = above_zero(wave.in_millimetres())?;
        let diameter = head.diameter().in_millimetres();
        if wave > diameter / 2.0 {
            return Err(uncut(2.0 * wave, head));
        }
        let pitch = 2.0 * (wave * (diameter - wave)).sqrt();
        Self::at_feed(head, pitch.min(diameter) * cuts(head) / 1000.0)
    }
}

/// Knives so many millimetres apart leave wood uncut.
const fn uncut(pitch: f64, head: &Head) -> FeedProblem {
    FeedProblem::WoodLeftUncut {
        pitch: Length::millimetres(pitch),
        diameter: head.diameter(),
    }
}

/// Cuts in a minute.
fn cuts(head: &Head) -> f64 {
    head.speed() * f64::from(head.knives())
}

/// A number above 0; one that is none is not.
fn above_zero(found: f64) -> Result<f64, FeedProblem> {
    if found > 0.0 && found.is_finite() {
        Ok(found)
    } else {
        Err(FeedProblem::NotAboveZero { found })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::field::Typed;
    use crate::tooling::HeadDraft;
    use proptest::prelude::*;

    fn head(diameter: f64, knives: f64, speed: f64) -> Head {
        let mut draft = HeadDraft::new();
        draft.diameter = Typed::Number(diameter);
        draft.knives = Typed::Number(knives);
        draft.speed = Typed::Number(speed);
        draft.marked = Typed::Number(speed);
        draft.check().unwrap()
    }

    #[test]
    fn nothing_comes_of_no_feed() {
        let head = head(125.0, 2.0, 6_000.0);
        for nothing in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            let length = Length::millimetres(nothing);
            assert!(KnifeMarks::at_feed(&head, nothing).is_err());
            assert!(KnifeMarks::with_pitch(&head, length).is_err());
            assert!(KnifeMarks::with_wave(&head, length).is_err());
        }
    }

    #[test]
    fn wood_that_runs_past_between_the_knives_is_refused() {
        let head = head(100.0, 1.0, 10.0);
        assert!(KnifeMarks::at_feed(&head, 1.0).is_ok());
        let refused = KnifeMarks::at_feed(&head, 1.001).unwrap_err();
        assert!(
            refused.to_string().contains("100.10\u{202f}mm"),
            "{refused}"
        );
        assert!(KnifeMarks::with_wave(&head, Length::millimetres(50.1)).is_err());
    }

    proptest! {
        #[test]
        fn the_ways_back_give_the_same_feed(
            diameter in 20.0_f64..500.0, knives in 1_u32..20, speed in 100.0_f64..20_000.0, share in 0.0001_f64..0.99,
        ) {
            let head = head(diameter, f64::from(knives), speed);
            let feed = share * diameter * cuts(&head) / 1000.0;
            let marks = KnifeMarks::at_feed(&head, feed).unwrap();
            let by_pitch = KnifeMarks::with_pitch(&head, marks.pitch).unwrap();
            let by_wave = KnifeMarks::with_wave(&head, marks.wave).unwrap();
            prop_assert!((by_pitch.feed / feed - 1.0).abs() < 1e-12);
            prop_assert!((by_wave.feed / feed - 1.0).abs() < 1e-9);
        }
    }
}
