//! Programs run in the checkout, with failures that name the command.

use std::{
    env,
    ffi::OsStr,
    path::{Path, PathBuf},
    process::{Command, Stdio},
};

use crate::failure::Failure;

/// The checkout: the folder of the workspace's `Cargo.toml`.
pub(crate) fn checkout() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .ancestors()
        .nth(2)
        .expect("this crate lies in tests/xtask")
        .to_path_buf()
}

/// Where cargo puts what it builds.
pub(crate) fn target_folder() -> PathBuf {
    let asked = env::var_os("CARGO_TARGET_DIR").unwrap_or_else(|| "target".into());
    checkout().join(asked)
}

/// A command that will run in the checkout and read nothing from the terminal. The words are its
/// arguments, with spaces between; an argument that may hold a space is added to the result.
pub(crate) fn command(program: impl AsRef<OsStr>, words: &str) -> Command {
    let mut command = Command::new(program);
    command
        .args(words.split_whitespace())
        .current_dir(checkout())
        .stdin(Stdio::null());
    command
}

/// Cargo, as it was called for this task.
pub(crate) fn cargo(words: &str) -> Command {
    command(
        env::var_os("CARGO").unwrap_or_else(|| "cargo".into()),
        words,
    )
}

/// Runs a command whose output goes to the terminal.
pub(crate) fn run(command: &mut Command) -> Result<(), Failure> {
    let status = command.status().map_err(|error| missing(command, &error))?;
    if status.success() {
        Ok(())
    } else {
        Err(Failure::new(format!(
            "`{}` ended with {status}",
            spelled(command)
        )))
    }
}

/// Runs a command and returns what it wrote to its standard output, byte for byte.
pub(crate) fn output_of(command: &mut Command) -> Result<Vec<u8>, Failure> {
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| missing(command, &error))?;
    if output.status.success() {
        Ok(output.stdout)
    } else {
        Err(Failure::new(format!(
            "`{}` ended with {}",
            spelled(command),
            output.status
        )))
    }
}

/// The first program of this name on the search path.
pub(crate) fn on_path(program: &str) -> Option<PathBuf> {
    let name = format!("{program}{}", env::consts::EXE_SUFFIX);
    env::split_paths(&env::var_os("PATH")?)
        .map(|folder| folder.join(&name))
        .find(|file| file.is_file())
}

fn missing(command: &Command, error: &std::io::Error) -> Failure {
    Failure::new(format!("`{}` did not start: {error}", spelled(command)))
}

/// The command as one would type it, without quoting.
fn spelled(command: &Command) -> String {
    std::iter::once(command.get_program())
        .chain(command.get_args())
        .map(OsStr::to_string_lossy)
        .collect::<Vec<_>>()
        .join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_failed_command_is_named() {
        let failure = run(&mut cargo("no-such-subcommand")).unwrap_err();
        assert!(
            failure.to_string().contains("no-such-subcommand"),
            "{failure}"
        );
    }

    #[test]
    fn the_checkout_holds_the_workspace() {
        assert!(checkout().join("solver/Cargo.toml").is_file());
    }

    #[test]
    fn a_program_that_is_nowhere() {
        assert_eq!(on_path("a-program-nobody-has"), None);
    }
}
