//! The rules a layout is held against, each with what is there, what is asked, and the margin.

use super::{Layout, Setup};
use crate::figure;
use crate::outline::Outline;
use crate::quantity::{Angle, Length};
use crate::unit::LengthUnit;

/// One rule of the trade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Rule {
    /// At least one pencil fits across the slat.
    Width,
    /// The outer pencils keep the edge allowance.
    Edge,
    /// Neighbours keep the land.
    Land,
    /// The top slat holds its part of the pencil and the planing allowance.
    TopThickness,
    /// The bottom slat holds its part of the pencil and the planing allowance.
    BottomThickness,
    /// Wood is left under the grooves of the top slat.
    TopFloor,
    /// Wood is left under the grooves of the bottom slat.
    BottomFloor,
    /// The wall round the groove, for a lead as far off centre as is allowed for.
    Wall,
    /// The glued width on each side of the lead.
    Bond,
    /// The groove stays open, so that the lead can be laid in.
    OpenGroove,
    /// The slats are long enough for the pencil and the trim of both ends.
    Length,
    /// Two level heads reach the whole outline: no wood hangs over a hollow.
    Undercut,
    /// Straight sides lean away from upright, so that the cutter flank is free.
    Relief,
}

/// A size that a check compares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// A length.
    Length(Length),
    /// An angle.
    Angle(Angle),
}

/// How a check came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// As much as asked, or more.
    Passed,
    /// Allowed, but worth knowing.
    Noted,
    /// Less than asked.
    Failed,
}

/// One rule held against a layout.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Check {
    /// The rule.
    pub rule: Rule,
    /// What is there.
    pub found: Measure,
    /// What is asked.
    pub asked: Measure,
    /// How it came out.
    pub outcome: Outcome,
}

/// Every check of a layout.
pub(super) fn all(setup: &Setup<'_>, layout: &Layout) -> Vec<Check> {
    let Setup {
        barrel,
        top,
        bottom,
        rules,
        ..
    } = *setup;
    let (extents, groove) = (layout.extents, layout.groove_shape);
    let (radius, axis) = (groove.radius(), rules.axis_height);
    let mut checks = Vec::with_capacity(12);
    let mut at_least = |rule, found: Length, asked: Length| {
        let outcome = if asked.fits_in(found) {
            Outcome::Passed
        } else {
            Outcome::Failed
        };
        checks.push(Check {
            rule,
            found: Measure::Length(found),
            asked: Measure::Length(asked),
            outcome,
        });
    };

    let width = top.guaranteed_width().min(bottom.guaranteed_width());
    if layout.grooves.is_empty() {
        at_least(Rule::Width, width, extents.width() + rules.edge * 2.0);
    } else {
        at_least(
            Rule::Edge,
            layout.datum_edge.min(layout.far_edge),
            rules.edge,
        );
    }
    if layout.grooves.len() > 1 {
        at_least(Rule::Land, layout.parting(), rules.land);
    }
    at_least(
        Rule::TopThickness,
        top.guaranteed_thickness(),
        axis + extents.up + rules.planing,
    );
    at_least(
        Rule::BottomThickness,
        bottom.guaranteed_thickness(),
        extents.down - axis + rules.planing,
    );
    at_least(
        Rule::TopFloor,
        top.guaranteed_thickness() - groove.top_depth(),
        rules.floor,
    );
    at_least(
        Rule::BottomFloor,
        bottom.guaranteed_thickness() - groove.bottom_depth(),
        rules.floor,
    );
    at_least(
        Rule::Wall,
        layout.bare.least_distance() - radius - rules.eccentricity,
        rules.wall,
    );
    at_least(Rule::Bond, bond_width(layout, radius, axis), rules.bond);
    // With the axis in the glue plane both grooves are open, and there is nothing to check.
    if axis != Length::ZERO {
        at_least(Rule::OpenGroove, radius, axis.abs());
    }
    at_least(
        Rule::Length,
        top.length().min(bottom.length()),
        barrel.length() + rules.end_trim * 2.0,
    );
    checks.extend(undercut(layout));
    checks.extend(relief(layout, rules.relief));
    checks
}

/// The narrower of the two glued widths beside the groove, on the glue plane.
///
/// The slat that holds the larger part of the lead has upright groove sides, so the groove
/// is as wide as its diameter there whatever the height of the axis.
fn bond_width(layout: &Layout, radius: Length, axis: Length) -> Length {
    // The glue plane may miss the pencil altogether.
    glue_reach(&layout.bare, -axis).unwrap_or(Length::ZERO) - radius
}

/// How far the wood reaches beside the lead axis on a level line, on the shorter side.
pub(crate) fn glue_reach(wood: &Outline, level: Length) -> Option<Length> {
    wood.chord(level).map(|(left, right)| (-left).min(right))
}

/// Angles nearer than this are the same: a hundred-thousandth of a second of arc, in degrees.
const HAIR: f64 = 1e-9;

/// Whether every straight side leans as much from upright as is asked.
pub(crate) fn relief_holds(wood: &Outline, asked: Angle) -> bool {
    wood.least_lean()
        .is_none_or(|lean| lean.in_degrees() + HAIR >= asked.in_degrees())
}

/// How far straight sides lean from upright; nothing to check where no side is straight.
///
/// Of a curved side only a line stands upright, where the two cuts meet; only straight
/// sides rub over their whole height.
fn relief(layout: &Layout, asked: Angle) -> Option<Check> {
    let lean = layout.bare.least_lean()?;
    let outcome = if !relief_holds(&layout.bare, asked) {
        Outcome::Failed
    } else if lean.in_degrees() < HAIR {
        Outcome::Noted
    } else {
        Outcome::Passed
    };
    Some(Check {
        rule: Rule::Relief,
        found: Measure::Angle(lean),
        asked: Measure::Angle(asked),
        outcome,
    })
}

/// How far wood hangs over a hollow that no level head reaches; nothing to check on an outline
/// without hollows.
fn undercut(layout: &Layout) -> Option<Check> {
    if layout.bare.is_convex() {
        return None;
    }
    let undercut = layout.bare.undercut();
    let depth = undercut.map_or(Length::ZERO, |undercut| undercut.depth);
    Some(Check {
        rule: Rule::Undercut,
        found: Measure::Length(depth),
        asked: Measure::Length(Length::ZERO),
        outcome: if undercut.is_some() {
            Outcome::Failed
        } else {
            Outcome::Passed
        },
    })
}

impl Rule {
    /// Every rule, in the order a lead reads them.
    pub const ALL: [Self; 13] = [
        Self::Width,
        Self::Edge,
        Self::Land,
        Self::TopThickness,
        Self::BottomThickness,
        Self::TopFloor,
        Self::BottomFloor,
        Self::Wall,
        Self::Bond,
        Self::OpenGroove,
        Self::Length,
        Self::Undercut,
        Self::Relief,
    ];

    /// Whether its margin is room for error that a layout has on its slats; what is checked of
    /// the pencil alone is not.
    #[must_use]
    pub const fn counts_in_margin(self) -> bool {
        matches!(
            self,
            Self::Width
                | Self::Edge
                | Self::Land
                | Self::TopThickness
                | Self::BottomThickness
                | Self::TopFloor
                | Self::BottomFloor
        )
    }

    /// Whether what is asked is the most there may be, and not the least.
    const fn asks_for_most(self) -> bool {
        matches!(self, Self::Undercut)
    }

    /// The name of what is checked, in sentence case.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Width => "Slat width",
            Self::Edge => "Edge",
            Self::Land => "Land",
            Self::TopThickness => "Top slat thickness",
            Self::BottomThickness => "Bottom slat thickness",
            Self::TopFloor => "Wood under the top grooves",
            Self::BottomFloor => "Wood under the bottom grooves",
            Self::Wall => "Wall, lead off centre",
            Self::Bond => "Bond width beside the lead",
            Self::OpenGroove => "Groove radius against the axis height",
            Self::Length => "Slat length",
            Self::Undercut => "Hollow out of reach of the heads",
            Self::Relief => "Relief of straight sides",
        }
    }

    /// What to change when the check fails.
    const fn remedy(self) -> &'static str {
        match self {
            Self::Width => "choose a wider slat, or a smaller edge allowance",
            Self::Edge => "choose a wider slat, or a smaller edge allowance",
            Self::Land => "widen the pitch",
            Self::TopThickness => "choose a thicker top slat, lower the lead axis, or plane less",
            Self::BottomThickness => {
                "choose a thicker bottom slat, raise the lead axis, or plane less"
            }
            Self::TopFloor => "choose a thicker top slat or a thinner lead",
            Self::BottomFloor => "choose a thicker bottom slat or a thinner lead",
            Self::Wall => "choose a thinner lead, less coat, or a larger barrel",
            Self::Bond => "choose a thinner lead, or turn the barrel",
            Self::OpenGroove => "bring the lead axis nearer to the glue plane",
            Self::Length => "choose a longer slat, a shorter pencil, or trim less",
            Self::Undercut => "turn the barrel, or make the hollow shallower",
            Self::Relief => "turn the barrel, or allow a smaller relief",
        }
    }
}

impl Measure {
    /// The number with its unit.
    #[must_use]
    pub fn text(self, unit: LengthUnit) -> String {
        match self {
            Self::Length(length) => figure::length_with_unit(length.in_millimetres(), unit),
            Self::Angle(angle) => figure::angle(angle.in_degrees()),
        }
    }
}

impl Check {
    /// How much better than asked it is; negative when the check fails.
    #[must_use]
    pub fn margin(&self) -> Measure {
        let (more, less) = if self.rule.asks_for_most() {
            (self.asked, self.found)
        } else {
            (self.found, self.asked)
        };
        match (more, less) {
            (Measure::Length(found), Measure::Length(asked)) => Measure::Length(found - asked),
            (Measure::Angle(found), Measure::Angle(asked)) => Measure::Angle(found + -asked),
            // A check compares like with like.
            (found, _) => found,
        }
    }

    /// The check as a statement: what is there, and how much more or less than asked.
    ///
    /// ```
    /// use solver::{Check, Length, LengthUnit, Measure, Outcome, Rule};
    /// let check = Check {
    ///     rule: Rule::Wall,
    ///     found: Measure::Length(Length::millimetres(2.27)),
    ///     asked: Measure::Length(Length::millimetres(1.5)),
    ///     outcome: Outcome::Passed,
    /// };
    /// assert_eq!(check.statement(LengthUnit::Millimetre), "2.27\u{202f}mm, 0.77\u{202f}mm more than asked");
    /// ```
    #[must_use]
    pub fn statement(&self, unit: LengthUnit) -> String {
        let found = self.found.text(unit);
        if self.rule == Rule::Relief && self.outcome == Outcome::Noted {
            return format!(
                "{found}: sides stand upright, the cutter flank rubs and needs side clearance"
            );
        }
        let margin = self.margin();
        let (size, amount) = match margin {
            Measure::Length(margin) => (margin.in_millimetres(), Measure::Length(margin.abs())),
            Measure::Angle(margin) => (
                margin.in_degrees(),
                Measure::Angle(Angle::degrees(margin.in_degrees().abs())),
            ),
        };
        let amount = amount.text(unit);
        let short = if self.rule.asks_for_most() {
            "more than is allowed"
        } else {
            "less than asked"
        };
        match self.outcome {
            Outcome::Failed => format!("{found}, {amount} {short}: {}", self.rule.remedy()),
            _ if size.abs() <= Length::SLACK.in_millimetres() => format!("{found}, just as asked"),
            _ => format!("{found}, {amount} more than asked"),
        }
    }
}
