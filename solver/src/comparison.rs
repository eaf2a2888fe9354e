//! Two layouts side by side: what they are laid from, what comes of it, and what differs.
//!
//! Two values differ where they are shown differently: with no more digits than a shop can
//! measure. What is better is told only of what everybody wants more of, or less of, for itself:
//! pencils, the wood in them, margin for error, slats, wood and money for a gross, and checks
//! that pass.

mod barrels;
mod lines;
#[cfg(test)]
mod tests;

pub use barrels::{BarrelLine, BarrelTable, MOST_COMPARED, MOST_STOCKS, compare_barrels};

use crate::figure;
use crate::layout::{Layout, Measure, Outcome, Setup};
use crate::project::LayoutParts;
use crate::quantity::{Angle, Length, Volume};
use crate::unit::LengthUnit;

/// A layout with the parts that it was laid from.
#[derive(Debug, Clone, Copy)]
pub struct Laid<'a> {
    /// The parts.
    pub parts: &'a LayoutParts,
    /// What [`lay_out`](crate::lay_out) makes of them.
    pub layout: &'a Layout,
}

impl<'a> Laid<'a> {
    /// The parts as they were laid out.
    #[must_use]
    pub const fn setup(&self) -> Setup<'a> {
        self.parts.setup()
    }
}

/// Which part of the comparison a line belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Part {
    /// What comes of it.
    Result,
    /// What a gross takes.
    Gross,
    /// The pencil.
    Pencil,
    /// Both slats, where they are of one stock in both layouts.
    Slats,
    /// The slat above the glue plane.
    TopSlat,
    /// The slat below the glue plane.
    BottomSlat,
    /// The machining rules.
    Machining,
    /// The checks, each with its margin.
    Checks,
    /// Where the wood goes.
    Wood,
    /// An order plan: what it makes and takes.
    OrderPlan,
    /// What an order plan costs, by kind.
    Costs,
}

impl Part {
    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Result => "Layout",
            Self::Gross => "For a gross",
            Self::Pencil => "Pencil",
            Self::Slats => "Both slats",
            Self::TopSlat => "Top slat",
            Self::BottomSlat => "Bottom slat",
            Self::Machining => "Machining",
            Self::Checks => "Margin of checks",
            Self::Wood => "Where the wood goes",
            Self::OrderPlan => "Plan",
            Self::Costs => "Costs",
        }
    }
}

/// What one of the layouts has there.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A name, or a choice in words.
    Words(String),
    /// Pieces.
    Count(u64),
    /// Pieces that need not be whole.
    Pieces(f64),
    /// A length.
    Length(Length),
    /// An angle.
    Angle(Angle),
    /// A share of a whole, 0 to 1.
    Share(f64),
    /// A volume.
    Volume(Volume),
    /// Timber by the cubic metre.
    Timber(Volume),
    /// Money, in hundredths of the currency.
    Money(f64),
    /// What a check finds beyond what it asks, and how it came out.
    Margin(Measure, Outcome),
}

/// What is wanted of a value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Wish {
    /// The more, the better.
    More,
    /// The less, the better.
    Less,
    /// That the check passes.
    Pass,
    /// Nothing for itself.
    Nothing,
}

/// One line of a comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Where it belongs.
    pub part: Part,
    /// What is compared.
    pub label: &'static str,
    /// What each of the two layouts has there; `None` where it has no such thing.
    pub values: [Option<Value>; 2],
    wish: Wish,
}

/// Whether the second layout is better or worse than the first in one line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// The second is better.
    Better,
    /// The second is worse.
    Worse,
}

impl Verdict {
    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Better => "better",
            Self::Worse => "worse",
        }
    }
}

/// Holds two layouts side by side, in the order a lead reads them: what comes of each, what a
/// gross takes, then what they are laid from, the checks, and where the wood goes.
///
/// Lines that neither layout has are left out; lines in which both are alike are among them.
///
/// ```
/// use solver::{
///     BarrelDraft, Laid, LayoutParts, Length, LengthUnit, RulesDraft, Seam, Shape, SlatDraft,
///     Verdict, compare, lay_out,
/// };
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let first = LayoutParts {
///     turn: barrel.turn(Seam::ThroughFaces),
///     top: slat.clone(),
///     bottom: slat,
///     rules: RulesDraft::new().check().unwrap(),
///     cutter_set: None,
///     barrel,
/// };
/// let mut second = first.clone();
/// second.rules.edge = Length::millimetres(2.0);
/// let layouts = [lay_out(&first.setup()), lay_out(&second.setup())];
/// let lines = compare(
///     Laid { parts: &first, layout: &layouts[0] },
///     Laid { parts: &second, layout: &layouts[1] },
/// );
/// let unit = LengthUnit::Millimetre;
/// assert_eq!(lines[0].texts(unit), ["10", "9"]);
/// assert_eq!(lines[0].change(unit).unwrap(), "−1");
/// assert_eq!(lines[0].verdict(unit), Some(Verdict::Worse));
/// ```
#[must_use]
pub fn compare(first: Laid<'_>, second: Laid<'_>) -> Vec<Line> {
    lines::all(first, second)
}

impl Value {
    /// The value as it is shown, with its unit.
    #[must_use]
    pub fn text(&self, unit: LengthUnit) -> String {
        match self {
            Self::Words(words) => words.clone(),
            Self::Count(pieces) => figure::count(*pieces),
            Self::Pieces(pieces) => figure::plain(*pieces, 2),
            Self::Length(length) => figure::length_with_unit(length.in_millimetres(), unit),
            Self::Angle(angle) => figure::angle(angle.in_degrees()),
            Self::Share(share) => figure::ratio(*share),
            Self::Volume(volume) => volume_text(volume.in_cubic_millimetres(), unit),
            Self::Timber(volume) => figure::timber(volume.in_cubic_millimetres(), unit),
            Self::Money(amount) => figure::money_rounded(*amount),
            Self::Margin(margin, outcome) => match outcome {
                Outcome::Passed => margin.text(unit),
                Outcome::Noted => format!("{}, noted", margin.text(unit)),
                Outcome::Failed => format!("{}, fails", margin.text(unit)),
            },
        }
    }

    /// The number behind it, in the unit in which it is kept.
    fn number(&self) -> Option<f64> {
        Some(match self {
            Self::Words(_) => return None,
            Self::Count(pieces) => *pieces as f64,
            Self::Pieces(number) | Self::Share(number) | Self::Money(number) => *number,
            Self::Length(length) | Self::Margin(Measure::Length(length), _) => {
                length.in_millimetres()
            }
            Self::Angle(angle) | Self::Margin(Measure::Angle(angle), _) => angle.in_degrees(),
            Self::Volume(volume) | Self::Timber(volume) => volume.in_cubic_millimetres(),
        })
    }

    /// A difference between two values of this kind, without its sign.
    fn amount_text(&self, amount: f64, unit: LengthUnit) -> String {
        match self {
            Self::Words(_) => String::new(),
            Self::Count(_) => figure::plain(amount, 0),
            Self::Pieces(_) => figure::plain(amount, 2),
            Self::Length(_) | Self::Margin(Measure::Length(_), _) => {
                figure::length_with_unit(amount, unit)
            }
            Self::Angle(_) | Self::Margin(Measure::Angle(_), _) => figure::angle(amount),
            // Percentage points, not a share of a share.
            Self::Share(_) => format!("{} points", figure::plain(amount * 100.0, 1)),
            Self::Volume(_) => volume_text(amount, unit),
            Self::Timber(_) => figure::timber(amount, unit),
            Self::Money(_) => figure::money_rounded(amount),
        }
    }
}

fn volume_text(cubic_millimetres: f64, unit: LengthUnit) -> String {
    let number = figure::volume(cubic_millimetres, unit);
    format!("{number}{}{}", figure::THIN_SPACE, unit.volume_label())
}

impl Line {
    /// A line of which less is better.
    pub(crate) const fn of_less(
        part: Part,
        label: &'static str,
        values: [Option<Value>; 2],
    ) -> Self {
        Self {
            part,
            label,
            values,
            wish: Wish::Less,
        }
    }

    /// What each layout has there, as it is shown; a dash where it has no such thing.
    #[must_use]
    pub fn texts(&self, unit: LengthUnit) -> [String; 2] {
        let text = |value: &Option<Value>| {
            value
                .as_ref()
                .map_or_else(|| figure::NO_FIGURE.to_owned(), |value| value.text(unit))
        };
        [text(&self.values[0]), text(&self.values[1])]
    }

    /// Whether the two are shown differently.
    #[must_use]
    pub fn differs(&self, unit: LengthUnit) -> bool {
        let [first, second] = self.texts(unit);
        first != second
    }

    /// How much more or less the second has, with its sign and unit; nothing where both are shown
    /// alike or the change is too small to be shown, and where they are no numbers of one kind.
    #[must_use]
    pub fn change(&self, unit: LengthUnit) -> Option<String> {
        let [Some(first), Some(second)] = &self.values else {
            return None;
        };
        let change = second.number()? - first.number()?;
        let amount = first.amount_text(change.abs(), unit);
        // Two that are rounded apart may differ by less than is shown.
        let is_shown = self.differs(unit) && amount != first.amount_text(0.0, unit);
        let sign = if change < 0.0 { figure::MINUS } else { '+' };
        is_shown.then(|| format!("{sign}{amount}"))
    }

    /// Whether the second is better or worse; nothing where no change is shown or the one is as
    /// good as the other.
    #[must_use]
    pub fn verdict(&self, unit: LengthUnit) -> Option<Verdict> {
        self.change(unit)?;
        let gain = self.gain()?;
        if gain > 0.0 {
            Some(Verdict::Better)
        } else if gain < 0.0 {
            Some(Verdict::Worse)
        } else {
            None
        }
    }

    /// How much better the second is, in any unit.
    fn gain(&self) -> Option<f64> {
        let [Some(first), Some(second)] = &self.values else {
            return None;
        };
        let more = second.number()? - first.number()?;
        match self.wish {
            Wish::More => Some(more),
            Wish::Less => Some(-more),
            Wish::Pass => match (fails(first), fails(second)) {
                (false, false) => None,
                (true, false) => Some(1.0),
                (false, true) => Some(-1.0),
                // Nearer to what is asked.
                (true, true) => Some(more),
            },
            Wish::Nothing => None,
        }
    }
}

fn fails(value: &Value) -> bool {
    matches!(value, Value::Margin(_, Outcome::Failed))
}
