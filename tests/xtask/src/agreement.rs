//! Native and wasm give the same text, byte for byte.
//!
//! The crate `tests` prints a trace of everything the solver computes for a fixed set of cases:
//! natively by its program `agreement`, in wasm by its function `trace`. The same crate has work
//! to be timed on both sides, natively by its program `pace`.

use crate::{
    command::{cargo, command, output_of, run, target_folder},
    failure::Failure,
    files, tools, wasm,
};

/// Builds both sides and compares their texts.
pub(crate) fn check() -> Result<(), Failure> {
    compare("agreement", "native.txt")
}

/// Times the same work on both sides and prints the ratios.
pub(crate) fn pace() -> Result<(), Failure> {
    compare("pace", "pace.json")
}

/// Hands what the native program prints, and the wasm, to the script of the same name.
fn compare(program: &str, printed: &str) -> Result<(), Failure> {
    let folder = target_folder().join("agreement");
    files::make_folder(&folder)?;

    let native =
        output_of(cargo("run --quiet --release --locked --package tests --bin").arg(program))?;
    let text = folder.join(printed);
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

    run(command("node", "")
        .arg(format!("tests/browser/{program}.mjs"))
        .arg(&text)
        .arg(folder.join("tests.js")))
}
