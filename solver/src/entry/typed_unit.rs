//! The units a person may type, and how they are spelt.

use super::Dimension;
use crate::decimal::Decimal;

/// A unit that was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct TypedUnit {
    /// What it measures.
    pub(super) dimension: Dimension,
    /// Its size in millimetres, degrees, pieces or percent.
    pub(super) scale: Decimal,
}

impl TypedUnit {
    /// The unit spelt `word`, with or without a final full stop, in small letters or capitals.
    ///
    /// A lone `M` is none: the trade means a thousand by it.
    pub(super) fn named(word: &str) -> Option<Self> {
        let word = word.strip_suffix('.').unwrap_or(word);
        if word == "M" {
            return None;
        }
        let (dimension, scale) = match word.to_lowercase().as_str() {
            "mm" => (Dimension::Length, Decimal::ONE),
            "cm" => (Dimension::Length, Decimal::new(1, 1)),
            "m" => (Dimension::Length, Decimal::new(1, 3)),
            // The micro sign, the Greek letter and what stands in for them.
            "\u{b5}m" | "\u{3bc}m" | "um" => (Dimension::Length, Decimal::new(1, -3)),
            // Double prime, and the quotation marks a keyboard or a word processor makes of it.
            "in" | "inch" | "inches" | "\"" | "\u{2033}" | "\u{201d}" | "\u{201c}" | "''" => {
                (Dimension::Length, Decimal::INCH)
            }
            // The ordinal sign sits where some keyboards should have the degree sign.
            "°" | "º" | "deg" | "degree" | "degrees" => (Dimension::Angle, Decimal::ONE),
            "%" | "percent" => (Dimension::Percent, Decimal::ONE),
            "pcs" => (Dimension::Count, Decimal::ONE),
            _ => return None,
        };
        Some(Self { dimension, scale })
    }
}
