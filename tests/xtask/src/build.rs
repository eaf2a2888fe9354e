//! Building the page with trunk, and the benchmarks with cargo.

use std::process::Command;

use crate::{
    agreement,
    command::{cargo, command, run},
    failure::Failure,
    sizes,
    steps::Steps,
    tools, wasm,
};

/// `cargo xtask build`: the page in `dist/`, and its sizes.
pub(crate) fn build() -> Result<(), Failure> {
    let mut steps = Steps::new();
    page(&mut steps)?;
    steps.step("sizes", sizes::check)
}

/// Builds the page into `dist/`, from whatever this machine has so far.
pub(crate) fn page(steps: &mut Steps) -> Result<(), Failure> {
    steps.step("the target for the browser", wasm::ready)?;
    steps.step(tools::READY, tools::ready)?;
    steps.step(FETCH, fetch)?;
    steps.step(RELEASE, release)
}

pub(crate) const FETCH: &str = "fetch the libraries in Cargo.lock";

/// Trunk is told to stay off the network, and hands that on to cargo; so this goes first.
pub(crate) fn fetch() -> Result<(), Failure> {
    run(&mut cargo("fetch --locked"))
}

pub(crate) const RELEASE: &str =
    "build page and worker (release; some minutes the first time, later some seconds)";

/// Compiles page and worker and lays all files into `dist/`.
pub(crate) fn release() -> Result<(), Failure> {
    run(&mut trunk("build --release")?)
}

/// A trunk command with everything it needs.
pub(crate) fn trunk(words: &str) -> Result<Command, Failure> {
    let mut trunk = command("trunk", words);
    trunk.env("PATH", tools::search_path()?);
    trunk.env_remove("NO_COLOR"); // trunk takes nothing but true or false there
    wasm::with_flags(&mut trunk);
    Ok(trunk)
}

/// `cargo xtask bench`: the benchmarks of the solver, and its pace as wasm beside native.
pub(crate) fn bench() -> Result<(), Failure> {
    run(&mut cargo("bench --locked --package solver"))?;
    wasm::ready()?;
    tools::ready()?;
    agreement::pace()
}
