//! What can be asked on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use solver::measured::Confidence;
use solver::order_plan::OrderPlanLimits;
use solver::sawing::SawingLimits;
use solver::{LengthUnit, PaperSize};

use crate::dice::{Dice, Enough};
use crate::ending;

/// Reads a Slatwright project file and answers about it: grooves, wood, the best layout, good
/// pencils, how the machines are set; and tells what measured slats say of their lot.
#[derive(Debug, Parser)]
#[command(name = "slatwright", version, after_help = ending::TOLD)]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// A question.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Tell everything that is wrong with the file, and what is worth knowing
    #[command(after_help = ending::TOLD)]
    Check(Asked),
    /// Lay the barrel on its slats: grooves, checks with their margins, where the wood goes
    #[command(after_help = ending::TOLD)]
    Layout(Asked),
    /// Find the best layouts of the barrel over all slat stocks and cutter sets
    #[command(after_help = ending::TOLD)]
    Search(Asked),
    /// List the nearest sizes at which the number of pencils or a check of the layout changes
    #[command(after_help = ending::TOLD)]
    Thresholds(Asked),
    /// Look for the least change of the barrel that gains a pencil on a stock, or keeps the count on a cheaper one
    #[command(after_help = ending::TOLD)]
    Gains(AskedGains),
    /// Hold the barrel of the layout against others of the project, and print each as a link
    #[command(after_help = ending::TOLD)]
    Barrels(Asked),
    /// Throw dice for the errors of the machines: how many pencils of the layout come out good
    #[command(after_help = ending::TOLD)]
    Tolerances(AskedDice),
    /// Plan how planks are sawn into slat blanks, with what proves that no plan is better
    #[command(after_help = ending::TOLD)]
    Timber(AskedTimber),
    /// Set the machines for the layout: slats, heights, feed marks, knives; and what a run takes
    #[command(after_help = ending::TOLD)]
    Setting(AskedSetting),
    /// Tell of the finished pencil of a barrel: mass, balance, paint edge, how it rolls, what a tin takes
    #[command(after_help = ending::TOLD)]
    Barrel(AskedBarrel),
    /// Plan what to run, to buy and to saw in each period to fill the order book
    #[command(after_help = ending::TOLD)]
    Orders(AskedOrders),
    /// Tell what the measured widths and thicknesses of delivered slats say of their lot
    #[command(after_help = ending::TOLD)]
    Measured(AskedMeasured),
    /// Print the JSON Schema of the project file, or of what a command prints as JSON
    Schema {
        /// The command; the project file when left out
        #[arg(value_name = "COMMAND")]
        of: Option<Described>,
    },
}

/// How far the sizes of the barrel may move.
#[derive(Debug, Args)]
pub(crate) struct AskedGains {
    #[command(flatten)]
    pub(crate) asked: Asked,
    /// How far its size may move either way, mm
    #[arg(long, value_name = "MM", default_value_t = 0.2, value_parser = reach)]
    pub(crate) size_mm: f64,
    /// How far its corner radius may move either way, mm
    #[arg(long, value_name = "MM", default_value_t = 0.2, value_parser = reach)]
    pub(crate) corner_mm: f64,
    /// How far its coat may move either way, mm
    #[arg(long, value_name = "MM", default_value_t = 0.02, value_parser = reach)]
    pub(crate) coat_mm: f64,
}

/// Of which file, and how it is answered.
#[derive(Debug, Args)]
pub(crate) struct Asked {
    /// The project file; - for standard input
    pub(crate) file: PathBuf,
    /// How the answer is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(crate) format: Format,
    /// The unit of lengths in a text; JSON is always in millimetres
    #[arg(long, value_enum, default_value_t = Unit::Mm)]
    pub(crate) unit: Unit,
}

/// Of which file, how it is answered, and which dice are thrown.
#[derive(Debug, Args)]
pub(crate) struct AskedDice {
    /// Of which file, and how it is answered.
    #[command(flatten)]
    pub(crate) asked: Asked,
    /// Where the dice begin: the same seed gives the same answer
    #[arg(
        long,
        value_name = "NUMBER",
        default_value_t = 1,
        allow_negative_numbers = true
    )]
    pub(crate) seed: u64,
    /// Make so many sandwiches, rounded up to a multiple of 1024
    #[arg(long, value_name = "COUNT", default_value_t = 200_000, conflicts_with = "until",
        allow_negative_numbers = true,
        value_parser = clap::value_parser!(u64).range(1..=MOST_SANDWICHES))]
    pub(crate) sandwiches: u64,
    /// Make sandwiches until the standard error of good pencils of a sandwich is no more than
    /// this, 100 million at most
    #[arg(long, value_name = "ERROR", allow_negative_numbers = true, value_parser = error)]
    pub(crate) until: Option<f64>,
}

/// Of which file, how it is answered, and how long a plan is looked for.
#[derive(Debug, Args)]
pub(crate) struct AskedTimber {
    /// Of which file, and how it is answered.
    #[command(flatten)]
    pub(crate) asked: Asked,
    /// Solve so many relaxations at most; more find better plans and higher bounds
    #[arg(long, value_name = "COUNT", default_value_t = SawingLimits::default().relaxations,
        allow_negative_numbers = true,
        value_parser = clap::value_parser!(u64).range(1..=1_000_000))]
    pub(crate) relaxations: u64,
    /// Count the plan of this file once more, which timber printed as JSON, and price its proof anew
    #[arg(long, value_name = "PLAN", conflicts_with = "relaxations")]
    pub(crate) recount: Option<PathBuf>,
}

/// Of which file, how it is answered, and which drawings are written.
#[derive(Debug, Args)]
pub(crate) struct AskedSetting {
    /// Of which file, and how it is answered.
    #[command(flatten)]
    pub(crate) asked: Asked,
    /// Write the section to scale, the gauge, the heads, the outline and the knives into this folder as SVG
    #[arg(long, value_name = "FOLDER")]
    pub(crate) svg: Option<PathBuf>,
    /// Write the outline and the knives at true size into this folder as DXF
    #[arg(long, value_name = "FOLDER")]
    pub(crate) dxf: Option<PathBuf>,
    /// The paper that section and gauge go on, whichever way round they fit
    #[arg(long, value_enum, default_value_t = Sheet::A4, requires = "svg")]
    pub(crate) paper: Sheet,
}

/// Of which file and which barrel, how it is answered, and whether it is drawn.
#[derive(Debug, Args)]
pub(crate) struct AskedBarrel {
    /// Of which file, and how it is answered.
    #[command(flatten)]
    pub(crate) asked: Asked,
    /// The id of the barrel in the file; that of the layout when left out
    #[arg(long, value_name = "ID")]
    pub(crate) barrel: Option<u32>,
    /// Write the drawing of the pencil to scale into this folder as SVG
    #[arg(long, value_name = "FOLDER")]
    pub(crate) svg: Option<PathBuf>,
}

/// Of which file, how it is answered, how long a plan is looked for, and what is written beside it.
#[derive(Debug, Args)]
pub(crate) struct AskedOrders {
    /// Of which file, and how it is answered.
    #[command(flatten)]
    pub(crate) asked: Asked,
    /// Solve so many relaxations and branches at most; more find better plans and higher bounds
    #[arg(long, value_name = "COUNT", default_value_t = OrderPlanLimits::default().steps,
        allow_negative_numbers = true,
        value_parser = clap::value_parser!(u64).range(1..=10_000_000))]
    pub(crate) steps: u64,
    /// Write the purchase list into this file as CSV
    #[arg(long, value_name = "FILE")]
    pub(crate) csv: Option<PathBuf>,
}

/// Of which measurements, how it is answered, and what they are held against.
#[derive(Debug, Args)]
pub(crate) struct AskedMeasured {
    /// The measurements, one slat to a row, its width and its thickness parted by a tab, a
    /// semicolon or a comma; - for standard input
    pub(crate) file: PathBuf,
    /// How the answer is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(crate) format: Format,
    /// The unit of lengths that are given without one, and of those in a text; JSON is always in
    /// millimetres
    #[arg(long, value_enum, default_value_t = Unit::Mm)]
    pub(crate) unit: Unit,
    /// The size that was agreed, like 74 or 2 7/8 in
    #[arg(long, value_name = "LENGTH")]
    pub(crate) nominal: Option<String>,
    /// How far below or above that a slat may lie at least, like -0.2
    #[arg(
        long,
        value_name = "LENGTH",
        requires = "nominal",
        allow_hyphen_values = true
    )]
    pub(crate) lower: Option<String>,
    /// How far above or below that a slat may lie at most, like 0.1
    #[arg(
        long,
        value_name = "LENGTH",
        requires = "nominal",
        allow_hyphen_values = true
    )]
    pub(crate) upper: Option<String>,
    /// Which size was agreed
    #[arg(long, value_enum, value_name = "SIZE", default_value_t = Side::Width, requires = "nominal")]
    pub(crate) of: Side,
    /// How often bounds made this way hold what is true of the lot, 0.5 to 0.9999
    #[arg(long, value_name = "SHARE", default_value = "0.95", value_parser = confidence)]
    pub(crate) confidence: Confidence,
    /// Tell how many more to measure until the mean is known to plus or minus this
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) mean_within: Option<String>,
    /// Tell how many more to measure until the bounds of the standard deviation are no farther
    /// apart than this share of it, like 0.5
    #[arg(long, value_name = "SHARE", allow_negative_numbers = true, value_parser = share)]
    pub(crate) deviation_within: Option<f64>,
}

/// A sheet of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Sheet {
    /// 210 by 297 mm
    A4,
    /// 8.5 by 11 in
    Letter,
}

/// A size of a slat that is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Side {
    /// The width
    Width,
    /// The thickness
    Thickness,
}

/// A confidence that bounds can have.
fn confidence(text: &str) -> Result<Confidence, &'static str> {
    let level = text.parse().ok();
    (level.and_then(Confidence::new)).ok_or("the confidence must be between 0.5 and 0.9999")
}

/// A share of a standard deviation.
fn share(text: &str) -> Result<f64, &'static str> {
    match text.parse() {
        Ok(share) if f64::is_finite(share) && share > 0.0 => Ok(share),
        _ => Err("the share must be a number above 0, like 0.5"),
    }
}

/// The most sandwiches that can be asked for.
const MOST_SANDWICHES: u64 = 1_000_000_000;

/// A standard error that sandwiches can be made until.
fn error(text: &str) -> Result<f64, &'static str> {
    match text.parse() {
        Ok(error) if f64::is_finite(error) && error > 0.0 => Ok(error),
        _ => Err("the error must be a number above 0, like 0.001"),
    }
}

/// How far a size of the barrel may move.
fn reach(text: &str) -> Result<f64, &'static str> {
    match text.parse() {
        Ok(reach) if (0.0..=5.0).contains(&reach) => Ok(reach),
        _ => Err("a size may move by 0 to 5 mm"),
    }
}

/// How an answer is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// For eyes
    Text,
    /// For programs
    Json,
}

/// A unit of lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Unit {
    /// Millimetres
    Mm,
    /// Inches
    In,
}

impl AskedDice {
    /// The dice that are asked for.
    pub(crate) fn dice(&self) -> Dice {
        Dice {
            seed: self.seed,
            enough: match self.until {
                None => Enough::Sandwiches(self.sandwiches),
                Some(error) => Enough::Error(error),
            },
        }
    }
}

impl AskedTimber {
    /// How long a plan is looked for.
    pub(crate) const fn limits(&self) -> SawingLimits {
        SawingLimits {
            relaxations: self.relaxations,
        }
    }
}

impl AskedOrders {
    /// How long a plan is looked for.
    pub(crate) fn limits(&self) -> OrderPlanLimits {
        OrderPlanLimits {
            steps: self.steps,
            ..OrderPlanLimits::default()
        }
    }
}

/// A command whose JSON is described by a schema.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Described {
    /// What check prints, and every other command on a file with problems
    Check,
    /// What layout prints
    Layout,
    /// What search prints
    Search,
    /// What thresholds prints
    Thresholds,
    /// What gains prints
    Gains,
    /// What barrels prints
    Barrels,
    /// What tolerances prints
    Tolerances,
    /// What setting prints
    Setting,
    /// What barrel prints
    Barrel,
    /// What timber prints
    Timber,
    /// What timber --recount prints
    Recount,
    /// What orders prints
    Orders,
    /// What measured prints
    Measured,
}

impl From<Sheet> for PaperSize {
    fn from(sheet: Sheet) -> Self {
        match sheet {
            Sheet::A4 => Self::A4,
            Sheet::Letter => Self::Letter,
        }
    }
}

impl From<Unit> for LengthUnit {
    fn from(unit: Unit) -> Self {
        match unit {
            Unit::Mm => Self::Millimetre,
            Unit::In => Self::Inch,
        }
    }
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;

    #[test]
    fn the_arguments_do_not_contradict_each_other() {
        Arguments::command().debug_assert();
    }
}
