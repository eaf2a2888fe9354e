//! Where the text of a project comes from.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use app::project_file::{self, MOST_BYTES, Opened};

use crate::findings::{Findings, Told};

/// The bytes of a file, or of standard input for `-`: all of them, or one more than a project
/// may have.
///
/// # Errors
/// When the file is not there or cannot be read.
pub(crate) fn bytes(file: &Path) -> io::Result<Vec<u8>> {
    let mut read = Vec::new();
    let most = MOST_BYTES as u64 + 1;
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
    if bytes.len() > MOST_BYTES {
        let message = format!("the file has more than {MOST_BYTES} bytes, the most of a project");
        return Err(Findings::unopened(vec![Told::whole(
            message,
            "choose a file that was saved by Slatwright",
        )]));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let message = format!(
            "the file is not text in UTF-8 from byte {} on",
            error.valid_up_to() + 1
        );
        Findings::unopened(vec![Told::whole(
            message,
            "choose another copy of the file",
        )])
    })?;
    project_file::read(text)
        .map_err(|problems| Findings::unopened(problems.iter().map(Told::from).collect()))
}
