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

/// The script trunk writes to start the worker.
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
    let start = staged.join(WORKER_START);
    files::write(&start, stamp_worker(&files::read_text(&start)?, &build))?;
    if release {
        let kept = precache::kept(&names);
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

/// The worker learns its build from the property `slatwrightBuild` of its global scope.
fn stamp_worker(start: &str, build: &str) -> String {
    format!("self.slatwrightBuild = \"{build}\";\n{}\n", start.trim())
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
    fn the_worker_starts_with_its_build() {
        assert_eq!(
            stamp_worker("await init();", "0f"),
            "self.slatwrightBuild = \"0f\";\nawait init();\n"
        );
    }
}
