//! The task runner of the project: `cargo xtask serve` and `cargo xtask test`.
//!
//! It has no dependencies, so that it compiles in a second on a new machine, and it installs
//! what the build needs by itself. One file per task; the parts that decide without touching
//! the machine (names, lists, texts) are plain functions with tests beside them.

#![expect(clippy::print_stdout, reason = "a task runner speaks to the terminal")]

mod agreement;
mod boot;
mod browser;
mod build;
mod checks;
mod command;
mod failure;
mod files;
mod fingerprint;
mod finish;
mod policy;
mod precache;
mod serve;
mod sizes;
mod steps;
mod tools;
mod wasm;

use std::process::ExitCode;

use failure::Failure;

const USAGE: &str = "\
cargo xtask serve [--port N]   build the page and serve it on 127.0.0.1 (port 8080, or the next free one)
cargo xtask build              build the page into dist/ and weigh it against the size budgets
cargo xtask test               every check: format, lints, tests, docs, native = wasm, the page in Chromium
cargo xtask test fast          the checks that need neither a release build nor a browser
cargo xtask bench              the benchmarks of the solver, and its pace in wasm beside native
cargo xtask shots              pictures of every screen, into tests/browser/shots
cargo xtask timing             how long one step of a dimension takes on the page, as a ratio
cargo xtask help               this text

The first run installs trunk and wasm-bindgen into .tools/ (some minutes); later runs reuse them.";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match perform(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("\n{failure}");
            ExitCode::FAILURE
        }
    }
}

fn perform(words: &[&str]) -> Result<(), Failure> {
    match words {
        ["serve", options @ ..] => serve::serve(serve::port_option(options)?),
        ["build"] => build::build(),
        ["test"] => checks::run(checks::Extent::Everything),
        ["test", "fast"] => checks::run(checks::Extent::Fast),
        ["bench"] => build::bench(),
        ["shots"] => browser::script("shots.mjs"),
        ["timing"] => browser::script("timing.mjs"),
        ["finish"] => finish::finish(), // called by trunk after each build
        [] | ["help" | "--help" | "-h"] => {
            println!("{USAGE}");
            Ok(())
        }
        _ => Err(Failure::new(format!("no such task: {}", words.join(" "))).hint(USAGE)),
    }
}
