//! Slatwright on the command line: the project file that the page saves, checked, laid out,
//! searched and thrown dice for.
//!
//! ```text
//! file ── source ──▶ Opened ── layout, search, thresholds, tolerances ──▶ an answer ──▶ text, JSON
//! ```
//!
//! An answer keeps values of `solver`; its text is written by `solver::figure`, its JSON is a
//! type of `document`, which the schema describes.

mod answer;
mod arguments;
mod dice;
mod document;
mod ending;
mod findings;
mod layout;
mod names;
mod note;
mod path;
mod schema;
mod search;
mod source;
mod thresholds;
mod tolerances;

use std::io::{self, Write};
use std::process::ExitCode;

use app::project_file::Opened;
use clap::Parser;

use answer::{Answer, printed};
use arguments::{Arguments, Command, Format};
use ending::Ending;
use findings::Findings;

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
        Command::Check(asked)
        | Command::Layout(asked)
        | Command::Search(asked)
        | Command::Thresholds(asked) => asked,
        Command::Tolerances(with) => &with.asked,
    };
    let bytes = match source::bytes(&asked.file) {
        Ok(bytes) => bytes,
        Err(error) => {
            let told = format!("{} cannot be read: {error}\n", asked.file.display());
            return complain(&told, Ending::Unread);
        }
    };
    let told = source::open(&bytes).and_then(|opened| {
        let answer = answered(command, &opened)?;
        Ok(say(&printed(&*answer, asked), answer.ending()))
    });
    told.unwrap_or_else(|findings| {
        let told = printed(&findings, asked);
        // Whoever reads JSON finds one document, whatever came of it.
        if asked.format == Format::Json || matches!(command, Command::Check(_)) {
            say(&told, Ending::Problems)
        } else {
            complain(&told, Ending::Problems)
        }
    })
}

/// The answer to a question about a project, or what keeps the project from it.
fn answered<'a>(command: &Command, opened: &'a Opened) -> Result<Box<dyn Answer + 'a>, Findings> {
    Ok(match command {
        Command::Layout(_) => Box::new(layout::lay(opened)?),
        Command::Search(_) => Box::new(search::find(opened)?),
        Command::Thresholds(_) => Box::new(thresholds::list(opened)?),
        Command::Tolerances(with) => Box::new(tolerances::throw(opened, with.dice())?),
        // A schema needs no project.
        Command::Check(_) | Command::Schema { .. } => Box::new(Findings::of(opened)),
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
