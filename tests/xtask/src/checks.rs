//! `cargo xtask test`: every check, the quick ones first, stopping at the first that fails.

use std::rc::Rc;

use crate::{
    agreement,
    browser::Browser,
    build,
    command::{self, cargo},
    failure::Failure,
    sizes,
    steps::Steps,
    tools, wasm,
};

/// How much is checked.
#[derive(Clone, Copy)]
pub(crate) enum Extent {
    /// All of it.
    Everything,
    /// What needs neither a release build nor a browser.
    Fast,
}

/// One check: its name in the summary and what it does.
struct Check {
    name: &'static str,
    work: Box<dyn Fn() -> Result<(), Failure>>,
}

fn check(name: &'static str, work: impl Fn() -> Result<(), Failure> + 'static) -> Check {
    Check {
        name,
        work: Box::new(work),
    }
}

/// Runs the checks and prints what each took.
pub(crate) fn run(extent: Extent) -> Result<(), Failure> {
    let mut checks = of_the_source();
    if let Extent::Everything = extent {
        let browser = Rc::new(Browser::find()?); // a lack shows at once
        checks.extend(of_the_build(&browser));
    }

    let mut steps = Steps::new();
    let mut left = checks.iter();
    let result = left
        .by_ref()
        .try_for_each(|check| steps.step(check.name, &check.work));
    let not_reached: Vec<&str> = left.map(|check| check.name).collect();
    println!("{}", steps.summary(&not_reached));
    result
}

/// Format, lints, tests and documentation.
fn of_the_source() -> Vec<Check> {
    vec![
        check("format", || command::run(&mut cargo("fmt --all --check"))),
        check("lints", || {
            command::run(&mut cargo(
                "clippy --workspace --all-targets --locked -- -D warnings",
            ))
        }),
        check("the target for the browser", wasm::ready),
        check("lints for the browser", || {
            command::run(wasm::with_flags(
                cargo("clippy --package app --lib --bins --locked --target")
                    .arg(wasm::TARGET)
                    .args(["--", "-D", "warnings"]),
            ))
        }),
        check("tests", || {
            command::run(&mut cargo("test --workspace --locked"))
        }),
        check("documentation", || {
            command::run(
                cargo("doc --workspace --no-deps --locked").env("RUSTDOCFLAGS", "-D warnings"),
            )
        }),
    ]
}

/// Native against wasm, the release build, and the page in Chromium.
fn of_the_build(browser: &Rc<Browser>) -> Vec<Check> {
    let (installing, testing) = (Rc::clone(browser), Rc::clone(browser));
    vec![
        check(tools::READY, tools::ready),
        check(build::FETCH, build::fetch),
        check("native = wasm", agreement::check),
        check(build::RELEASE, build::release),
        check("sizes", sizes::check),
        check("install the browser tests", move || installing.install()),
        check("the page in Chromium", move || testing.test()),
    ]
}
