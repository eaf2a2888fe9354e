//! What is asked of a search: what may be chosen from, and what is better.

use crate::accuracy::Accuracy;
use crate::barrel::Barrel;
use crate::cutter_set::CutterSet;
use crate::rules::Rules;
use crate::search_rules::SearchRules;
use crate::slat::Slat;

/// What is to be laid, and from what may be chosen.
#[derive(Debug, Clone, Copy)]
pub struct Question<'a> {
    /// The pencil.
    pub barrel: &'a Barrel,
    /// The stocks.
    pub slats: &'a [Slat],
    /// The cutter sets that fit the barrel.
    pub sets: &'a [CutterSet],
    /// The machining rules; spacing, axis height and the cap on the count are searched or taken as said below.
    pub rules: &'a Rules,
    /// How far the search goes.
    pub search: &'a SearchRules,
    /// The errors of the line of machines; without them no good pencils are told.
    pub accuracy: Option<&'a Accuracy>,
}

/// What makes one layout better than another; equals go by the order given, then by the order of the
/// lists.
///
/// Wood and money are equal to the least of all where they exceed it by no more than one part in
/// 10¹², margins where they miss the widest by no more than [`Length::SLACK`](crate::quantity::Length::SLACK): rounding makes as much. Only where good pencils
/// are paid for is money equal up to one part in 10⁶: integrals do not tell less, and nobody would lay
/// pencils on less land for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Goal {
    /// Most pencils from a sandwich; then least wood, least money, widest margin.
    Pencils,
    /// Least wood bought for a gross; then least money, widest margin.
    Wood,
    /// Least money for a gross; then least wood, widest margin.
    Money,
    /// Widest margin for error; then least wood, least money.
    Margin,
    /// Least money for a gross of the pencils that errors leave good; then least wood, widest margin.
    Good,
}

impl Goal {
    /// Every goal.
    pub const ALL: [Self; Self::COUNT] = [
        Self::Pencils,
        Self::Wood,
        Self::Money,
        Self::Margin,
        Self::Good,
    ];

    /// How many there are.
    pub const COUNT: usize = 5;

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Pencils => "Most pencils",
            Self::Wood => "Least wood",
            Self::Money => "Least money",
            Self::Margin => "Widest margin",
            Self::Good => "Least money for good pencils",
        }
    }
}
