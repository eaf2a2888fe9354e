//! The grades of lead.

/// A grade of lead.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct LeadGrade(u8);

/// The grades of black lead, soft to hard: B for black, F for fine, H for hard.
const BLACK: [&str; 20] = [
    "9B", "8B", "7B", "6B", "5B", "4B", "3B", "2B", "B", "HB", "F", "H", "2H", "3H", "4H", "5H",
    "6H", "7H", "8H", "9H",
];

impl LeadGrade {
    /// The usual grade for writing.
    pub const HB: Self = Self(9);

    /// Coloured lead, which has no grade.
    pub const COLOURED: Self = Self(20);

    /// Every grade of black lead from soft to hard, and coloured lead after them.
    pub fn all() -> impl Iterator<Item = Self> {
        (0..=Self::COLOURED.0).map(Self)
    }

    /// The grade of a label, as the trade writes it.
    ///
    /// ```
    /// use solver::LeadGrade;
    /// assert_eq!(LeadGrade::of_label("HB"), Some(LeadGrade::HB));
    /// assert!(LeadGrade::of_label("2B") < LeadGrade::of_label("2H"));
    /// assert_eq!(LeadGrade::of_label("10H"), None);
    /// ```
    #[must_use]
    pub fn of_label(label: &str) -> Option<Self> {
        Self::all().find(|grade| grade.label() == label)
    }

    /// As the trade writes it.
    #[must_use]
    pub fn label(self) -> &'static str {
        BLACK
            .get(usize::from(self.0))
            .copied()
            .unwrap_or("Coloured")
    }

    /// The least bending strength that a national standard asks for, MPa (JIS S 6006, older edition,
    /// section 6.2, second hand); none for grades it does not name.
    #[must_use]
    pub fn least_strength(self) -> Option<f64> {
        Some(match self.label() {
            "9H" | "8H" | "7H" => 90.0,
            "6H" | "5H" => 80.0,
            "4H" | "3H" | "2H" | "H" => 70.0,
            "F" | "HB" => 60.0,
            "B" => 45.0,
            "2B" | "3B" => 35.0,
            "4B" => 30.0,
            "5B" => 25.0,
            "6B" => 20.0,
            "Coloured" => 5.0,
            _ => return None,
        })
    }
}
