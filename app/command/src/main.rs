//! Slatwright on the command line: the project file that the page saves, checked, laid out,
//! searched and thrown dice for; and measurements of slats told.
//!
//! ```text
//! file ── source ──▶ Opened ── layout, search, setting, timber, … ──────▶ an answer ──▶ text, JSON
//!             └────▶ text ── measured ────────────────────────────────────┘
//! ```
//!
//! An answer keeps values of `solver`; its text is written by `solver::figure`, its JSON is a
//! type of `document`, which the schema describes.

mod answer;
mod arguments;
mod barrel;
mod barrels;
mod dice;
mod digits;
mod document;
mod ending;
mod findings;
mod gains;
mod layout;
mod measured;
mod names;
mod note;
mod orders;
mod path;
mod schema;
mod search;
mod setting;
mod source;
mod thresholds;
mod timber;
mod tolerances;

use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;

use app::project_file::Opened;
use clap::Parser;
use solver::LengthUnit;

use answer::{Answer, printed};
use arguments::{Arguments, AskedMeasured, Command, Format};
use ending::Ending;
use findings::Findings;
use measured::Against;

fn main() -> ExitCode {
    let ending = match Arguments::try_parse() {
        Ok(arguments) => perform(&arguments.command),
        Err(told) => {
            // Help and version come this way too, and end well.
            let ending = if told.use_stderr() {
                Ending::WrongUse
            } else {
                Ending::Fine
            };
            match told.print() {
                Ok(()) => ending,
                Err(error) => ending.unless_unwritten(&error),
            }
        }
    };
    ending.into()
}

fn perform(command: &Command) -> Ending {
    let asked = match command {
        Command::Schema { of } => return say(&schema::text(*of), Ending::Fine),
        Command::Measured(asked) => return measure(asked),
        Command::Check(asked)
        | Command::Layout(asked)
        | Command::Search(asked)
        | Command::Barrels(asked)
        | Command::Thresholds(asked) => asked,
        Command::Tolerances(with) => &with.asked,
        Command::Timber(with) => &with.asked,
        Command::Setting(with) => &with.asked,
        Command::Barrel(with) => &with.asked,
        Command::Orders(with) => &with.asked,
        Command::Gains(with) => &with.asked,
    };
    let bytes = match source::bytes(&asked.file, source::MOST_PROJECT) {
        Ok(bytes) => bytes,
        Err(error) => return unread(&asked.file, &error),
    };
    let (format, unit) = (asked.format, asked.unit.into());
    let told = source::open(&bytes).and_then(|opened| {
        let answer = answered(command, &opened)?;
        Ok(say(&printed(&*answer, format, unit), answer.ending()))
    });
    told.unwrap_or_else(|findings| {
        // What is found is what `check` asks for.
        let is_asked_for = matches!(command, Command::Check(_));
        tell(&findings, format, unit, is_asked_for)
    })
}

/// Tells what measurements say of their lot.
fn measure(asked: &AskedMeasured) -> Ending {
    let against = match Against::read(asked) {
        Ok(against) => against,
        Err(told) => return complain(&format!("{told}\n"), Ending::WrongUse),
    };
    let bytes = match source::bytes(&asked.file, source::MOST_MEASURED) {
        Ok(bytes) => bytes,
        Err(error) => return unread(&asked.file, &error),
    };
    let (format, unit) = (asked.format, asked.unit.into());
    let told = source::text(
        &bytes,
        source::MOST_MEASURED,
        "give a part that was picked blindly",
    )
    .and_then(|text| measured::tell(text, unit, against));
    match told {
        Ok(answer) => say(&printed(&answer, format, unit), answer.ending()),
        Err(findings) => tell(&findings, format, unit, false),
    }
}

/// Tells what keeps from an answer.
fn tell(findings: &Findings, format: Format, unit: LengthUnit, is_asked_for: bool) -> Ending {
    let told = printed(findings, format, unit);
    // Whoever reads JSON finds one document, whatever came of it.
    if is_asked_for || format == Format::Json {
        say(&told, Ending::Problems)
    } else {
        complain(&told, Ending::Problems)
    }
}

fn unread(file: &Path, error: &io::Error) -> Ending {
    let told = format!("{} cannot be read: {error}\n", file.display());
    complain(&told, Ending::Unread)
}

/// The answer to a question about a project, or what keeps the project from it.
fn answered<'a>(command: &Command, opened: &'a Opened) -> Result<Box<dyn Answer + 'a>, Findings> {
    Ok(match command {
        Command::Layout(_) => Box::new(layout::lay(opened)?),
        Command::Search(_) => Box::new(search::find(opened)?),
        Command::Barrels(_) => Box::new(barrels::compare(opened)?),
        Command::Gains(with) => Box::new(gains::find(opened, with)?),
        Command::Thresholds(_) => Box::new(thresholds::list(opened)?),
        Command::Tolerances(with) => Box::new(tolerances::throw(opened, with.dice())?),
        Command::Timber(with) => match &with.recount {
            None => Box::new(timber::plan(opened, with.limits())?),
            Some(file) => Box::new(timber::recount(opened, &source::plan(file)?)?),
        },
        Command::Setting(with) => Box::new(setting::set(opened, with)?),
        Command::Barrel(with) => Box::new(barrel::finish(opened, with)?),
        Command::Orders(with) => Box::new(orders::plan(opened, with)?),
        // A schema and measurements need no project.
        Command::Check(_) | Command::Schema { .. } | Command::Measured(_) => {
            Box::new(Findings::of(opened))
        }
    })
}

/// Writes an answer to standard output.
fn say(text: &str, ending: Ending) -> Ending {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => ending,
        Err(error) => ending.unless_unwritten(&error),
    }
}

/// Writes what keeps from an answer to standard error; where that is closed nobody listens.
fn complain(text: &str, ending: Ending) -> Ending {
    match io::stderr().lock().write_all(text.as_bytes()) {
        Ok(()) | Err(_) => ending,
    }
}
