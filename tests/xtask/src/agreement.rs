//! Native and wasm give the same text, byte for byte.
//!
//! The crate `tests` prints a trace of everything the solver computes for a fixed set of cases:
//! natively by its program `agreement`, in wasm by its function `trace`.

use crate::{
    command::{cargo, command, output_of, run, target_folder},
    failure::Failure,
    files, tools, wasm,
};

/// Builds both sides and compares their texts.
pub(crate) fn check() -> Result<(), Failure> {
    let folder = target_folder().join("agreement");
    files::make_folder(&folder)?;

    let native = output_of(&mut cargo(
        "run --quiet --release --locked --package tests --bin agreement",
    ))?;
    let text = folder.join("native.txt");
    files::write(&text, native)?;

    run(wasm::with_flags(
        cargo("build --release --locked --package tests --lib --target").arg(wasm::TARGET),
    ))?;
    let built = target_folder()
        .join(wasm::TARGET)
        .join("release/tests.wasm");
    run(command("wasm-bindgen", "--target nodejs --out-dir")
        .arg(&folder)
        .arg(&built)
        .env("PATH", tools::search_path()?))?;

    run(command("node", "tests/browser/agreement.mjs")
        .arg(&text)
        .arg(folder.join("tests.js")))
}
