//! The start of the page, moved out of the page.
//!
//! Trunk writes the code that starts the wasm into the page itself. Our content policy allows no
//! script there, so the code goes into a file of its own, named after its content.

use crate::{failure::Failure, fingerprint};

/// A page whose start lies in a file.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Booted {
    /// The page, which now loads the file.
    pub(crate) page: String,
    /// The name of the file, beside the page.
    pub(crate) file: String,
    /// The content of the file.
    pub(crate) script: String,
}

const OPENING: &str = "<script type=\"module\">";
const CLOSING: &str = "</script>";

/// Moves the one inline module script of a page into a file.
pub(crate) fn extract(page: &str) -> Result<Booted, Failure> {
    let odd = || {
        Failure::new("the page trunk wrote does not hold exactly one inline module script")
            .hint("Does the pinned version of trunk write it in another way?")
    };
    let (before, rest) = page.split_once(OPENING).ok_or_else(odd)?;
    let (script, after) = rest.split_once(CLOSING).ok_or_else(odd)?;
    if after.contains(OPENING) {
        return Err(odd());
    }
    let script = format!("{}\n", script.trim());
    let file = format!("boot-{}.js", fingerprint::of(script.as_bytes()));
    let page = format!("{before}<script type=\"module\" src=\"./{file}\">{CLOSING}{after}");
    Ok(Booted { page, file, script })
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<head><link>\n<script type=\"module\">\nimport init from './app.js';\nawait init();\n</script></head>";

    #[test]
    fn the_script_moves_whole() {
        let booted = extract(PAGE).unwrap();
        assert_eq!(
            booted.script,
            "import init from './app.js';\nawait init();\n"
        );
        assert_eq!(
            booted.page,
            format!(
                "<head><link>\n<script type=\"module\" src=\"./{}\"></script></head>",
                booted.file
            )
        );
    }

    #[test]
    fn the_file_is_named_after_its_content() {
        let other = PAGE.replace("app.js", "app-2.js");
        assert_ne!(extract(PAGE).unwrap().file, extract(&other).unwrap().file);
    }

    #[test]
    fn no_script_is_refused() {
        assert!(extract("<head></head>").is_err());
    }

    #[test]
    fn two_scripts_are_refused() {
        assert!(extract(&PAGE.repeat(2)).is_err());
    }

    #[test]
    fn an_unclosed_script_is_refused() {
        assert!(extract("<script type=\"module\">let x;").is_err());
    }
}
