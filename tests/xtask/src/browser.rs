//! The tests of the built page in a real Chromium.

use std::{
    env,
    path::{Path, PathBuf},
    process::Command,
};

use crate::{
    build,
    command::{checkout, command, on_path, output_of, run},
    failure::Failure,
    steps::Steps,
    tools::version_in,
};

/// What the browser tests need on this machine.
pub(crate) struct Browser {
    chromium: PathBuf,
}

/// The oldest Node.js whose test runner knows all our options.
const NODE: [u32; 2] = [20, 10];

const NPM: &str = if cfg!(windows) { "npm.cmd" } else { "npm" };

impl Browser {
    /// Looks for Node.js and Chromium, and says how to get what is missing.
    pub(crate) fn find() -> Result<Self, Failure> {
        let node = on_path("node")
            .and_then(|node| output_of(Command::new(node).arg("--version")).ok())
            .and_then(|answer| String::from_utf8(answer).ok());
        let version = node.as_deref().and_then(version_in);
        if version.and_then(leading_numbers) < Some(NODE) {
            return Err(Failure::new(format!(
                "the browser tests need Node.js {}.{} or later, and {}",
                NODE[0],
                NODE[1],
                version.map_or("there is none".to_string(), |found| format!(
                    "this is {found}"
                ))
            ))
            .hint("Get it from https://nodejs.org, or run `cargo xtask test fast` without it."));
        }
        let asked = env::var_os("CHROMIUM").map(PathBuf::from);
        let chromium = asked
            .or_else(|| on_path("chromium"))
            .or_else(|| on_path("chromium-browser"))
            .or_else(|| on_path("google-chrome"))
            .filter(|chromium| Path::new(chromium).is_file())
            .ok_or_else(|| {
                Failure::new("the browser tests need Chromium, and it is not there").hint(
                    "Debian, Ubuntu: apt-get install chromium\n\
                     Elsewhere: set CHROMIUM to the program of any Chromium.\n\
                     Without it: cargo xtask test fast",
                )
            })?;
        Ok(Self { chromium })
    }

    /// Installs the libraries of the browser tests, exactly as locked.
    pub(crate) fn install(&self) -> Result<(), Failure> {
        run(self
            .command(NPM, "ci --no-audit --no-fund")
            .env("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1"))
    }

    /// Runs the browser tests, one file at a time.
    pub(crate) fn test(&self) -> Result<(), Failure> {
        run(&mut self.command("node", "--test --test-timeout=120000 --test-concurrency=1"))
    }

    fn command(&self, program: &str, words: &str) -> Command {
        let mut command = command(program, words);
        command
            .current_dir(folder())
            .env("CHROMIUM", &self.chromium);
        command
    }
}

/// Builds the page and runs a script of `tests/browser` on it: for eyes and stopwatches, no tests.
pub(crate) fn script(name: &str) -> Result<(), Failure> {
    let mut steps = Steps::new();
    let browser = Browser::find()?;
    build::page(&mut steps)?;
    steps.step("install the browser tests", || browser.install())?;
    steps.step(name, || run(&mut browser.command("node", name)))
}

fn folder() -> PathBuf {
    checkout().join("tests/browser")
}

/// The first two numbers of a version.
fn leading_numbers(version: &str) -> Option<[u32; 2]> {
    let mut numbers = version.split('.').map(|number| number.parse().ok());
    Some([numbers.next()??, numbers.next()??])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn versions_are_compared_by_number() {
        assert_eq!(leading_numbers("20.20.2"), Some([20, 20]));
        assert!(leading_numbers("20.9.0") < Some(NODE));
        assert!(leading_numbers("100.0.0") > Some(NODE));
        assert!(leading_numbers("18.20.4") < Some(NODE));
    }

    #[test]
    fn what_is_no_version_is_too_old() {
        assert_eq!(leading_numbers("twenty"), None);
        assert!(leading_numbers("20") < Some(NODE));
    }
}
