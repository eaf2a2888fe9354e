//! What is wrong with a field, in words that say where, how much, against what, and what to try.

use super::Field;
use crate::entry::{Dimension, EntryProblem};
use crate::figure;
use crate::materials::Stage;
use crate::order_plan::{MOST_PRICE, MOST_TIERS, OrderPlanProblem};
use crate::outline::{MOST_PIECES, PathProblem};
use crate::quantity::Length;
use crate::sawing::{Dimensions, SawingProblem};
use crate::tooling::HeadKind;
use crate::unit::LengthUnit;
use std::fmt;

/// A broken rule of one field.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldProblem {
    /// The field to mend.
    pub field: Field,
    /// What is wrong with it.
    pub cause: Cause,
}

/// What is wrong with a field.
#[derive(Debug, Clone, PartialEq)]
pub enum Cause {
    /// The text is not a number of the kind asked for.
    Unreadable(EntryProblem),
    /// The number lies outside the range of the field.
    OutOfRange {
        /// The number that stands there, in the unit of the field.
        found: f64,
    },
    /// The corner radius does not fit in the outline.
    CornerTooLarge {
        /// The radius asked for.
        corner: Length,
        /// The largest the outline allows.
        most: Length,
    },
    /// The coat leaves no wood.
    CoatTooThick {
        /// The coat asked for, per side.
        coat: Length,
        /// The distance from the axis to the nearest face, over the coat.
        inradius: Length,
    },
    /// The faces of a triangle bulge beyond a curve of constant width.
    FaceTooRound {
        /// The face radius asked for.
        face: Length,
        /// The least, that of constant width.
        least: Length,
    },
    /// The coat leaves the wood in several pieces.
    CoatSplits {
        /// The coat asked for, per side.
        coat: Length,
    },
    /// The path is no outline.
    Path(PathProblem),
    /// The lead is as wide as the wood or wider.
    LeadTooWide {
        /// The lead asked for.
        lead: Length,
        /// The least width of the bare barrel through its axis.
        wood: Length,
    },
    /// The sharpened point and the dip do not leave a piece of the pencil between them.
    PointTooLong {
        /// From the tip to the end of the paint edge.
        point: Length,
        /// The dip at the other end.
        dip: Length,
        /// The pencil.
        length: Length,
    },
    /// The barrel has fewer faces.
    NoSuchFace {
        /// How many it has.
        faces: u32,
    },
    /// An order names a barrel that is not in the project.
    NoSuchBarrel,
    /// A slat stock names a species that is not in the project.
    NoSuchSpecies,
    /// The grooves are spaced by a cutter set, and none that is in the project is named.
    NoSuchSet,
    /// The cutter set is ground for a barrel other than the one of the layout.
    SetForOtherBarrel,
    /// A blank becomes a slat of a stock that is not in the project.
    NoSuchStock,
    /// The trims of both ends or edges leave nothing of a plank.
    NothingBetweenTrims {
        /// What each takes.
        trim: Length,
        /// The size of the plank that they take it of.
        size: Length,
    },
    /// Planks and blanks break a limit of sawing together.
    Sawing(SawingProblem),
    /// An offer is of a slat stock that is not in the project.
    NoSuchOffered,
    /// Slats are sawn for a stock that is not in the project.
    NoSuchSawn,
    /// Two lines say what sawing slats of one stock costs.
    SawnTwice,
    /// An order is due after the last period.
    AfterLastPeriod {
        /// The period it is due in, counted from 1.
        due: usize,
        /// Periods that there are.
        periods: usize,
    },
    /// A pack costs more in an order of more packs. Prices in hundredths of the currency.
    DearerForMore {
        /// The price.
        price: i64,
        /// The price for fewer packs.
        fewer: i64,
    },
    /// What is ordered in the first period comes after the last one.
    NeverInTime {
        /// Periods from order to use.
        lead: usize,
        /// Periods that there are.
        periods: usize,
    },
    /// A limit of order plans is broken.
    OrderPlan(OrderPlanProblem),
    /// A cutterhead would turn faster than is marked on it.
    OverMarkedSpeed {
        /// The speed asked for, 1/min.
        speed: f64,
        /// The speed that is marked on it, 1/min.
        marked: f64,
    },
}

impl FieldProblem {
    /// The message that stands beside the field: what is wrong, against what, and what to try.
    ///
    /// ```
    /// use solver::{Field, LengthUnit, Typed};
    /// let problem = Typed::Number(12.0).read(Field::SlatWidth).unwrap_err();
    /// assert_eq!(problem.message(LengthUnit::Millimetre), "Slat width must be between 20 and 200\u{202f}mm; it is 12");
    /// ```
    #[must_use]
    pub fn message(&self, unit: LengthUnit) -> String {
        let spec = self.field.spec();
        let label = spec.label;
        let length = |value: Length| figure::length_with_unit(value.in_millimetres(), unit);
        match &self.cause {
            Cause::Unreadable(problem) => match (spec.dimension, problem) {
                (Dimension::Count, EntryProblem::Empty) => {
                    format!("{label} needs a whole number, like 10")
                }
                (Dimension::Count, EntryProblem::NotANumber) => {
                    format!("{label} must be a whole number, like 10")
                }
                _ => format!("{label} {problem}"),
            },
            Cause::OutOfRange { found } => {
                let bound = |value| bound(value, spec.dimension, unit);
                let suffix = suffix(spec.dimension, unit);
                let range = format!(
                    "{label} must be between {} and {}{suffix}",
                    bound(spec.least),
                    bound(spec.most)
                );
                if found.is_finite() {
                    format!("{range}; it is {}", bound(*found))
                } else {
                    range
                }
            }
            Cause::CornerTooLarge { corner, most } => format!(
                "{label} {} is more than this outline allows: type {} or less",
                length(*corner),
                length(*most)
            ),
            Cause::CoatTooThick { coat, inradius } => format!(
                "{label} {} leaves no wood: the barrel reaches {} from its axis to a face; type less than that",
                length(*coat),
                length(*inradius)
            ),
            Cause::LeadTooWide { lead, wood } => format!(
                "{label} {} is wider than the wood, {} under the coat: choose a thinner lead or a larger barrel",
                length(*lead),
                length(*wood)
            ),
            Cause::FaceTooRound { face, least } => format!(
                "{label} {} is less than a curve of constant width has: type {} or more, or leave it empty for flat faces",
                length(*face),
                length(*least)
            ),
            Cause::CoatSplits { coat } => format!(
                "{label} {} leaves the wood in several pieces: make narrow places wider, or the coat thinner",
                length(*coat)
            ),
            Cause::Path(problem) => path_message(label, problem, unit),
            Cause::PointTooLong { point, dip, length: whole } if *dip > Length::ZERO => format!(
                "{label}: the point takes {} and the dip {} of a pencil {} long: make the angle larger, or the dip shorter",
                length(*point),
                length(*dip),
                length(*whole)
            ),
            Cause::PointTooLong { point, length: whole, .. } => format!(
                "{label}: the point takes {} of a pencil {} long: make the angle larger",
                length(*point),
                length(*whole)
            ),
            Cause::NoSuchFace { faces: 1 } => {
                format!("{label}: this barrel has one face: type 1")
            }
            Cause::NoSuchFace { faces } => {
                format!("{label}: this barrel has {faces} faces: type 1 to {faces}")
            }
            Cause::NoSuchBarrel => {
                "The barrel of this order is not in the project any more: choose another".to_owned()
            }
            Cause::NoSuchSpecies => {
                "The species of this stock is not in the project any more: choose another, or none"
                    .to_owned()
            }
            Cause::NoSuchSet => {
                "No cutter set of the project sets the pitch: choose one, or space the grooves in another way"
                    .to_owned()
            }
            Cause::SetForOtherBarrel => {
                "The cutter set is ground for another barrel: choose one that fits, or space the grooves in another way"
                    .to_owned()
            }
            Cause::NoSuchStock => {
                "The slat stock of this blank is not in the project any more: choose another, or type the sizes"
                    .to_owned()
            }
            Cause::NoSuchOffered => {
                "The slat stock of this offer is not in the project any more: choose another, or delete the offer"
                    .to_owned()
            }
            Cause::NoSuchSawn => {
                "The slat stock that is sawn is not in the project any more: choose another, or delete the line"
                    .to_owned()
            }
            Cause::SawnTwice => {
                "Another line says already what slats of this stock cost to saw: delete one of them"
                    .to_owned()
            }
            Cause::AfterLastPeriod { due, periods } => format!(
                "{label} {due} comes after the last period, {periods}: choose an earlier one, or add periods"
            ),
            Cause::DearerForMore { price, fewer } => format!(
                "{label} {} is more than the {} for fewer packs: type that or less, or take the price away",
                figure::money(*price),
                figure::money(*fewer)
            ),
            Cause::NeverInTime { lead, periods } => format!(
                "{label} {lead} is too long for {periods} periods, so nothing of this offer comes in time: add periods, or delete the offer"
            ),
            Cause::OrderPlan(problem) => order_plan_message(problem),
            Cause::OverMarkedSpeed { speed, marked } => format!(
                "{label}: {} is over the {} marked on the head, which is never passed: slow it down, or take a head that is marked for it",
                figure::plain(*speed, 0),
                figure::plain(*marked, 0)
            ),
            Cause::NothingBetweenTrims { trim, size } => format!(
                "{label} {} leaves nothing of {}: type less than {}, or a plank of more than {}",
                length(*trim),
                length(*size),
                length(*size * 0.5),
                length(*trim * 2.0)
            ),
            Cause::Sawing(problem) => sawing_message(problem, unit),
        }
    }
}

/// What planks and blanks break together, and what to change.
fn sawing_message(problem: &SawingProblem, unit: LengthUnit) -> String {
    match problem {
        SawingProblem::NoPlanks => "There is no plank to saw from: add one".to_owned(),
        SawingProblem::FitsNoPlank { size, .. } => {
            let Dimensions {
                length,
                width,
                thickness,
            } = *size;
            let [length, width, thickness] = [length, width, thickness]
                .map(|micrometres| figure::length_with_unit(micrometres as f64 / 1000.0, unit));
            format!(
                "This blank fits no plank: between the trims it takes one {length} long, {thickness} wide and {width} thick, or larger"
            )
        }
        // Told of the whole list, or of a number that the range of its field keeps already.
        other => other.to_string(),
    }
}

/// What an order plan breaks, and what to change.
fn order_plan_message(problem: &OrderPlanProblem) -> String {
    match problem {
        OrderPlanProblem::Tiers { .. } => format!(
            "The prices of an offer must start from 1 pack and hold from ever more packs on, and there may be 1 to {MOST_TIERS}"
        ),
        OrderPlanProblem::OrderSize { least, most, .. } => format!(
            "The least order, {least} packs, is more than the most of an order, {most}: ask for less, or allow more"
        ),
        OrderPlanProblem::PackSlats { pack_slats, .. } => format!(
            "A pack of {} has no slat left when some are thrown out: put more in a pack, or raise the yield of grooving",
            figure::count(u64::from(*pack_slats))
        ),
        OrderPlanProblem::Price { amount, .. } => format!(
            "A price of {} is more than the {} that can be planned with: count in a larger unit of the currency",
            figure::money(*amount),
            figure::money(MOST_PRICE)
        ),
        OrderPlanProblem::Credit { .. } => {
            "Chips would bring more than leads, glue, coat and machine time of a sandwich cost: give those costs, or take what chips bring off the prices of the slats"
                .to_owned()
        }
        // Told of the whole list, or of a number that the range of its field keeps already.
        other => other.to_string(),
    }
}

/// What is wrong with a path, and what to draw instead.
fn path_message(label: &str, problem: &PathProblem, unit: LengthUnit) -> String {
    let length = |value: f64| figure::length_with_unit(value, unit);
    match problem {
        PathProblem::Empty => format!(
            "{label} is empty: give the path data of one closed curve, like M0 0 H8 V6 H0 Z"
        ),
        PathProblem::Unreadable { at } => format!(
            "{label} cannot be read from character {at} on: use the letters M L H V C S Q T A Z with their numbers"
        ),
        PathProblem::SeveralCurves => {
            format!("{label} lifts the pen: draw one closed curve, with one M and one Z")
        }
        PathProblem::Open { gap } => format!(
            "{label} ends {} from its start: close it with Z",
            length(gap.in_millimetres())
        ),
        PathProblem::TooManyPieces { found } => format!(
            "{label} has {found} pieces or more, and {MOST_PIECES} are the most: draw it with fewer points"
        ),
        PathProblem::NoArea => {
            format!("{label} encloses nothing that can be measured: draw a curve round some wood")
        }
        PathProblem::CrossesItself { at } => format!(
            "{label} meets itself {} to the right of its centre and {} above: draw it without crossing",
            length(at.x),
            length(at.y)
        ),
        PathProblem::AxisOutside => {
            format!("{label} does not go round the lead axis: move the axis, or draw round it")
        }
    }
}

/// A bound of a range, as short as it can be said.
fn bound(value: f64, dimension: Dimension, unit: LengthUnit) -> String {
    match dimension {
        Dimension::Length if unit == LengthUnit::Inch => figure::length(value, unit),
        _ => figure::exact(value),
    }
}

/// The unit behind a range.
fn suffix(dimension: Dimension, unit: LengthUnit) -> String {
    match dimension {
        Dimension::Length => format!("{}{}", figure::THIN_SPACE, unit.label()),
        Dimension::Angle => "°".to_owned(),
        Dimension::Percent => format!("{}%", figure::THIN_SPACE),
        Dimension::Count | Dimension::Money | Dimension::Plain => String::new(),
    }
}

impl fmt::Display for FieldProblem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message(LengthUnit::Millimetre))
    }
}

impl std::error::Error for FieldProblem {}

/// Where in a project a field stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Place {
    /// A barrel, by its place in the list.
    Barrel(usize),
    /// A slat stock, by its place in the list.
    Slat(usize),
    /// A species of wood, by its place in the list.
    Species(usize),
    /// The conditions in which the slats are grooved.
    Conditions,
    /// A cutter set, by its place in the list.
    CutterSet(usize),
    /// The accuracy of a line of machines, by its place in the list.
    Accuracy(usize),
    /// The machining rules.
    Rules,
    /// The layout that is looked at.
    Layout,
    /// What a search for the best layout may try.
    Search,
    /// A line of the order book, by its place in the list.
    Order(usize),
    /// A kind of plank, by its place in the list.
    Plank(usize),
    /// A kind of blank, by its place in the list.
    Blank(usize),
    /// The saws, and what they saw all together.
    SawShop,
    /// One of the three heads of the line.
    Head(HeadKind),
    /// What is common to the heads.
    Cut,
    /// The run for which materials are reckoned.
    Run,
    /// A stage of the run.
    Stage(Stage),
    /// A period of the order plan, by its place in the list.
    Period(usize),
    /// An offer of slats, by its place in the list.
    Offer(usize),
    /// A price of an offer, by the places of both in their lists.
    Tier(usize, usize),
    /// What sawing slats of a stock costs, by its place in the list.
    SawnSlats(usize),
    /// What an order plan counts with beside them.
    Supply,
}

/// A broken rule of a project.
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// Where it stands.
    pub place: Place,
    /// What is wrong there.
    pub problem: FieldProblem,
}
