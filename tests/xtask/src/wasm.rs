//! Building for the browser: the target, and one set of flags for every such build.

use std::{
    env,
    path::{Path, PathBuf},
    process::Command,
};

use crate::{
    command::{checkout, command, on_path, output_of, run},
    failure::Failure,
};

/// What the page and the worker are compiled for.
pub(crate) const TARGET: &str = "wasm32-unknown-unknown";

/// Adds the target to the Rust installation when it is missing.
pub(crate) fn ready() -> Result<(), Failure> {
    let sysroot = output_of(&mut command("rustc", "--print sysroot"))?;
    let sysroot = String::from_utf8_lossy(&sysroot).trim().to_string();
    let library = Path::new(&sysroot).join("lib/rustlib").join(TARGET);
    if library.is_dir() {
        return Ok(());
    }
    if on_path("rustup").is_none() {
        return Err(
            Failure::new(format!("this Rust cannot compile for {TARGET}")).hint(
                "There is no rustup here to add the target. Either install Rust from \
                 https://rustup.rs and run this again, or add the target with the package \
                 manager your Rust came from (Debian: apt-get install libstd-rust-dev-wasm32).",
            ),
        );
    }
    run(command("rustup", "target add").arg(TARGET))
}

/// Gives a command the flags of all builds for the browser.
///
/// They must be the same everywhere, or each build would throw away what another one compiled.
/// The variable names the target, so builds for this machine never see them.
pub(crate) fn with_flags(command: &mut Command) -> &mut Command {
    command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", flags())
}

/// The messages of a panic name source files. These flags keep the folders of the builder's
/// machine out of them, and so out of the published files.
fn flags() -> String {
    let mut renamed = vec![(checkout(), "/slatwright")];
    if let Some(home) = cargo_home() {
        renamed.push((home, "/cargo"));
    }
    format!("{} {ERASE_COMPONENTS}", rename_flags(&renamed))
}

/// Leptos then keeps one type for all views instead of one for each: a much smaller page.
const ERASE_COMPONENTS: &str = "--cfg=erase_components";

fn cargo_home() -> Option<PathBuf> {
    let below_home = |home| Path::new(&home).join(".cargo");
    env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| env::home_dir().map(below_home))
}

/// Cargo splits the flags at spaces, so a folder with a space in its name keeps its name.
fn rename_flags(renamed: &[(PathBuf, &str)]) -> String {
    renamed
        .iter()
        .filter_map(|(folder, name)| Some((folder.to_str()?, name)))
        .filter(|(folder, _)| !folder.contains(char::is_whitespace))
        .map(|(folder, name)| format!("--remap-path-prefix={folder}={name}"))
        .collect::<Vec<_>>()
        .join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn folders_are_renamed() {
        assert_eq!(
            rename_flags(&[("/home/ada/.cargo".into(), "/cargo"), ("/src".into(), "/s")]),
            "--remap-path-prefix=/home/ada/.cargo=/cargo --remap-path-prefix=/src=/s"
        );
    }

    #[test]
    fn a_folder_with_a_space_is_left_out() {
        assert_eq!(rename_flags(&[("/my files".into(), "/s")]), "");
    }
}
