//! Where the text of a project comes from.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use app::project_file::{self, MOST_BYTES, Opened};

use crate::document::SawnPart;
use crate::findings::{Findings, Told};

/// The most bytes of a project.
pub(crate) const MOST_PROJECT: usize = MOST_BYTES;

/// The most bytes of measurements: a million rows with other columns beside them.
pub(crate) const MOST_MEASURED: usize = 100_000_000;

/// The most bytes of a plan with its proof: thousands of cases of many kinds of blank each.
const MOST_PLAN: usize = 100_000_000;

/// The bytes of a file, or of standard input for `-`: all of them, or one more than the most it
/// may have.
///
/// # Errors
/// When the file is not there or cannot be read.
pub(crate) fn bytes(file: &Path, most: usize) -> io::Result<Vec<u8>> {
    let mut read = Vec::new();
    let most = most as u64 + 1;
    if file == Path::new("-") {
        io::stdin().lock().take(most).read_to_end(&mut read)?;
    } else {
        File::open(file)?.take(most).read_to_end(&mut read)?;
    }
    Ok(read)
}

/// The project in these bytes.
///
/// # Errors
/// Everything that keeps them from being a project.
pub(crate) fn open(bytes: &[u8]) -> Result<Opened, Findings> {
    let text = text(
        bytes,
        MOST_PROJECT,
        "choose a file that was saved by Slatwright",
    )?;
    project_file::read(text)
        .map_err(|problems| Findings::unopened(problems.iter().map(Told::from).collect()))
}

/// The plan in a file that `timber` printed as JSON.
///
/// # Errors
/// When the file cannot be read, or holds no plan.
pub(crate) fn plan(file: &Path) -> Result<SawnPart, Findings> {
    let hint = "give a file that timber --format json printed";
    let whole = |message| Findings::unopened(vec![Told::whole(message, hint)]);
    let bytes = bytes(file, MOST_PLAN)
        .map_err(|error| whole(format!("{} cannot be read: {error}", file.display())))?;
    let text = text(&bytes, MOST_PLAN, hint)?;
    serde_json::from_str(text)
        .map_err(|error| whole(format!("{} holds no plan: {error}", file.display())))
}

/// The text in these bytes, of which there are at most so many.
///
/// # Errors
/// When there are more, with what to try then, and when they are no text.
pub(crate) fn text<'a>(
    bytes: &'a [u8],
    most: usize,
    where_more: &'static str,
) -> Result<&'a str, Findings> {
    let whole = |message, hint| Findings::unopened(vec![Told::whole(message, hint)]);
    if bytes.len() > most {
        let message = format!("the file has more than {most} bytes, the most that are read");
        return Err(whole(message, where_more));
    }
    std::str::from_utf8(bytes).map_err(|error| {
        let byte = error.valid_up_to() + 1;
        let message = format!("the file is not text in UTF-8 from byte {byte} on");
        whole(
            message,
            "choose another copy of the file, or save it as UTF-8",
        )
    })
}
