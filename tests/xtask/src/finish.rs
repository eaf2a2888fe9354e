//! The last step of a build, called by trunk when all files lie in its staging folder.
//!
//! It moves the start of the page into a file, computes one build id from all contents, writes
//! it where page, worker and service worker read it, and tells the service worker what to keep.
//! In a debug build the service worker is left as it is and keeps nothing.

use std::{env, path::PathBuf};

use crate::{
    boot,
    failure::Failure,
    files,
    fingerprint::Fingerprint,
    policy,
    precache::{self, PAGE, SERVICE_WORKER},
};

/// The script that starts a worker: the program of the page, which finds that it is one.
const WORKER_START: &str = "worker_loader.js";

/// Finishes the staged build.
pub(crate) fn finish() -> Result<(), Failure> {
    let staged = env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .ok_or_else(|| {
            Failure::new("no staged build").hint("trunk runs this step; run `cargo xtask build`.")
        })?;
    let release = env::var("TRUNK_PROFILE").is_ok_and(|profile| profile == "release");

    let booted = boot::extract(&files::read_text(&staged.join(PAGE))?)?;
    files::write(&staged.join(&booted.file), &booted.script)?;
    files::write(&staged.join(PAGE), &booted.page)?;
    policy::check(&booted.page)?;

    let names = files::names_below(&staged)?;
    let mut fingerprint = Fingerprint::new();
    for name in &names {
        fingerprint.add(name.as_bytes());
        fingerprint.add(&files::read(&staged.join(name))?);
    }
    let build = fingerprint.text();

    files::write(&staged.join(PAGE), stamp_page(&booted.page, &build)?)?;
    files::write(
        &staged.join(WORKER_START),
        worker_start(program(&names)?, &build),
    )?;
    if release {
        let mut kept = precache::kept(&names);
        kept.push(WORKER_START);
        kept.sort();
        let worker = staged.join(SERVICE_WORKER);
        let filled = precache::fill(&files::read_text(&worker)?, &kept, &build)?;
        files::write(&worker, filled)?;
        println!("build {build}: {} files kept for offline use", kept.len());
    }
    Ok(())
}

const UNSTAMPED: &str = "<meta name=\"build\" content=\"\"";

/// The page learns its build from `<meta name="build">`.
fn stamp_page(page: &str, build: &str) -> Result<String, Failure> {
    if page.matches(UNSTAMPED).count() != 1 {
        return Err(Failure::new(
            "the page does not hold one empty <meta name=\"build\">",
        ));
    }
    Ok(page.replace(
        UNSTAMPED,
        &format!("<meta name=\"build\" content=\"{build}\""),
    ))
}

/// The script of the program among the staged files.
fn program(names: &[String]) -> Result<&str, Failure> {
    let mut programs = names
        .iter()
        .filter(|name| name.starts_with("app-") && name.ends_with(".js"));
    match (programs.next(), programs.next()) {
        (Some(name), None) => Ok(name),
        _ => Err(Failure::new(
            "the build does not hold one script app-….js that starts the program",
        )),
    }
}

/// The worker learns its build from the property `slatwrightBuild` of its global scope.
fn worker_start(program: &str, build: &str) -> String {
    let wasm = program.trim_end_matches(".js");
    format!(
        "self.slatwrightBuild = \"{build}\";\nimport init from \"./{program}\";\n\
         await init({{ module_or_path: \"./{wasm}_bg.wasm\" }});\n"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn our_page_has_the_place_for_the_build() {
        let page = stamp_page(include_str!("../../../app/index.html"), "0f").unwrap();
        assert!(
            page.contains("<meta name=\"build\" content=\"0f\""),
            "{page}"
        );
    }

    #[test]
    fn a_page_without_the_place_is_refused() {
        assert!(stamp_page("<head></head>", "0f").is_err());
    }

    #[test]
    fn the_worker_starts_the_program_with_its_build() {
        let names = ["app-1f.js", "app-1f_bg.wasm", "boot-2.js"].map(str::to_owned);
        assert_eq!(
            worker_start(program(&names).unwrap(), "0f"),
            "self.slatwrightBuild = \"0f\";\nimport init from \"./app-1f.js\";\n\
             await init({ module_or_path: \"./app-1f_bg.wasm\" });\n"
        );
        assert!(program(&names[1..]).is_err());
    }
}
