//! The two programs the build needs beside Rust: installed into `.tools/` when absent.

use std::{
    env,
    ffi::OsString,
    path::{Path, PathBuf},
    process::{Command, Stdio},
};

use crate::{
    command::{cargo, checkout, on_path, run, target_folder},
    failure::Failure,
};

/// One program at its pinned version.
struct Tool {
    /// The package that holds it.
    package: &'static str,
    version: &'static str,
    program: &'static str,
    /// What the first installation takes on two cores.
    takes: &'static str,
}

const TRUNK: Tool = Tool {
    package: "trunk",
    version: "0.21.14",
    program: "trunk",
    takes: "about 6 minutes",
};

/// Must be the version of the `wasm-bindgen` library in `Cargo.lock`.
const WASM_BINDGEN: Tool = Tool {
    package: "wasm-bindgen-cli",
    version: "0.2.129",
    program: "wasm-bindgen",
    takes: "about 2 minutes",
};

pub(crate) const READY: &str = "the build tools: trunk, wasm-bindgen";

/// Installs what is missing.
pub(crate) fn ready() -> Result<(), Failure> {
    for tool in [TRUNK, WASM_BINDGEN] {
        if let Some(program) = tool.present() {
            println!(
                "{} {} is there: {}",
                tool.program,
                tool.version,
                program.display()
            );
        } else {
            println!(
                "{} {} is compiled into .tools/, this once ({} on two cores)",
                tool.package, tool.version, tool.takes
            );
            tool.install()?;
        }
    }
    Ok(())
}

/// A search path on which `trunk` and `wasm-bindgen` are the pinned ones.
pub(crate) fn search_path() -> Result<OsString, Failure> {
    let mut folders: Vec<PathBuf> = Vec::new();
    for tool in [TRUNK, WASM_BINDGEN] {
        let program = tool.present().ok_or_else(|| {
            Failure::new(format!(
                "{} {} was installed but does not answer with its version",
                tool.program, tool.version
            ))
        })?;
        folders.extend(program.parent().map(Path::to_path_buf));
    }
    folders.extend(env::split_paths(&env::var_os("PATH").unwrap_or_default()));
    env::join_paths(folders).map_err(|error| Failure::new(format!("the search path: {error}")))
}

impl Tool {
    /// The program, from `.tools/` or else from the search path, when it has the right version.
    fn present(&self) -> Option<PathBuf> {
        let own = checkout().join(".tools/bin").join(format!(
            "{}{}",
            self.program,
            env::consts::EXE_SUFFIX
        ));
        [Some(own), on_path(self.program)]
            .into_iter()
            .flatten()
            .find(|program| installed_version(program).as_deref() == Some(self.version))
    }

    /// Both packages ship a release profile made for small, fast programs; ours is for a short
    /// wait. Without their default features neither of them can download anything later.
    fn install(&self) -> Result<(), Failure> {
        let mut install = cargo("install --locked --force --no-default-features");
        install
            .args([self.package, "--version", self.version])
            .args(["--bin", self.program])
            .arg("--root")
            .arg(checkout().join(".tools"))
            .env("CARGO_TARGET_DIR", target_folder().join("tools"))
            .env("CARGO_PROFILE_RELEASE_LTO", "off")
            .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
            .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1");
        run(&mut install).map_err(|failure| {
            failure.hint(format!(
                "The first run needs the network and a C linker (Debian: apt-get install \
                 build-essential). You can also install {} {} yourself, by any means, and put \
                 `{}` on the PATH.",
                self.package, self.version, self.program
            ))
        })
    }
}

fn installed_version(program: &Path) -> Option<String> {
    let output = Command::new(program)
        .arg("--version")
        .env_remove("NO_COLOR") // trunk takes nothing but true or false there
        .stdin(Stdio::null())
        .output()
        .ok()?;
    version_in(&String::from_utf8(output.stdout).ok()?).map(str::to_string)
}

/// The version in an answer to `--version`: the first word that starts with a digit.
pub(crate) fn version_in(answer: &str) -> Option<&str> {
    answer
        .split_whitespace()
        .map(|word| word.trim_start_matches('v'))
        .find(|word| word.starts_with(|first: char| first.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn versions_are_read() {
        assert_eq!(version_in("trunk 0.21.14\n"), Some("0.21.14"));
        assert_eq!(
            version_in("wasm-bindgen 0.2.129 (1a2b3c4d5)"),
            Some("0.2.129")
        );
        assert_eq!(version_in("v20.20.2\n"), Some("20.20.2"));
        assert_eq!(version_in("error: nothing here"), None);
        assert_eq!(version_in(""), None);
    }

    #[test]
    fn a_program_that_does_not_start_has_no_version() {
        assert_eq!(installed_version(Path::new("no/such/program")), None);
    }

    #[test]
    fn the_binding_generator_matches_the_lock_file() {
        let entry = format!(
            "name = \"wasm-bindgen\"\nversion = \"{}\"\n",
            WASM_BINDGEN.version
        );
        assert!(include_str!("../../../Cargo.lock").contains(&entry));
    }

    #[test]
    fn trunk_matches_its_configuration() {
        let entry = format!("trunk-version = \"={}\"", TRUNK.version);
        assert!(include_str!("../../../Trunk.toml").contains(&entry));
    }
}
