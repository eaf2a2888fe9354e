//! What the page weighs on the wire, against what it may weigh.
//!
//! Compressed with Brotli, as browsers ask for it and static hosts send it; Node.js has it built in.

use std::path::Path;

use crate::{
    command::{checkout, command, on_path, output_of},
    failure::Failure,
    files, precache,
};

/// The program, page and workers in one, compressed, in bytes.
const WASM_BUDGET: u64 = 1_015_000;

/// All files kept for offline use, compressed, in bytes.
const TOTAL_BUDGET: u64 = 1_500_000;

/// Prints the size of a file after Brotli.
const COMPRESSED_SIZE: &str = "const {readFileSync} = require('node:fs'); \
    const {brotliCompressSync} = require('node:zlib'); \
    console.log(brotliCompressSync(readFileSync(process.argv[1])).length)";

/// The size of one file, in bytes.
struct Weight {
    name: String,
    raw: u64,
    compressed: u64,
}

/// Prints the sizes of the files in `dist/` and refuses a build over its budget.
pub(crate) fn check() -> Result<(), Failure> {
    if on_path("node").is_none() {
        println!("no Node.js here: the sizes are not checked");
        return Ok(());
    }
    let dist = checkout().join("dist");
    let names = files::names_below(&dist)?;
    let weights = precache::kept(&names)
        .into_iter()
        .map(|name| weigh(&dist, name))
        .collect::<Result<Vec<_>, _>>()?;
    println!("{}", table(&weights));
    judge(&weights)
}

fn weigh(dist: &Path, name: &str) -> Result<Weight, Failure> {
    let file = dist.join(name);
    let mut node = command("node", "--eval");
    let size = output_of(node.arg(COMPRESSED_SIZE).arg(&file))?;
    let compressed = String::from_utf8_lossy(&size)
        .trim()
        .parse()
        .map_err(|_| Failure::new(format!("Node.js could not tell how {name} compresses")))?;
    Ok(Weight {
        name: name.to_string(),
        raw: files::read(&file)?.len() as u64,
        compressed,
    })
}

fn is_wasm(weight: &Weight) -> bool {
    weight.name.ends_with(".wasm")
}

/// The wasm files one by one, and the whole.
fn table(weights: &[Weight]) -> String {
    let line =
        |name: &str, raw: u64, compressed: u64| format!("{raw:>9} {compressed:>9}  {name}\n");
    let mut text = String::from("    bytes    brotli\n");
    for weight in weights.iter().filter(|weight| is_wasm(weight)) {
        text += &line(&weight.name, weight.raw, weight.compressed);
    }
    let raw = weights.iter().map(|weight| weight.raw).sum();
    let whole = format!("all {} files kept for offline use", weights.len());
    text + line(&whole, raw, total(weights)).trim_end()
}

fn total<'w>(weights: impl IntoIterator<Item = &'w Weight>) -> u64 {
    weights.into_iter().map(|weight| weight.compressed).sum()
}

fn judge(weights: &[Weight]) -> Result<(), Failure> {
    let wasm = total(weights.iter().filter(|weight| is_wasm(weight)));
    for (what, size, budget) in [
        ("page and worker", wasm, WASM_BUDGET),
        (
            "the files kept for offline use",
            total(weights),
            TOTAL_BUDGET,
        ),
    ] {
        if size > budget {
            return Err(Failure::new(format!(
                "{what}: {size} bytes compressed, {} more than the budget of {budget}",
                size - budget
            )));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weights(compressed: &[(&str, u64)]) -> Vec<Weight> {
        compressed
            .iter()
            .map(|(name, compressed)| Weight {
                name: name.to_string(),
                raw: 2 * compressed,
                compressed: *compressed,
            })
            .collect()
    }

    #[test]
    fn the_budgets_are_limits() {
        let at = |wasm, rest| judge(&weights(&[("app.wasm", wasm), ("font.woff2", rest)]));
        assert_eq!(at(WASM_BUDGET, TOTAL_BUDGET - WASM_BUDGET), Ok(()));
        assert!(at(WASM_BUDGET + 1, 0).is_err());
        assert!(at(WASM_BUDGET, TOTAL_BUDGET - WASM_BUDGET + 1).is_err());
    }

    #[test]
    fn both_wasm_files_count_together() {
        let half = WASM_BUDGET / 2 + 1;
        assert!(judge(&weights(&[("app.wasm", half), ("worker.wasm", half)])).is_err());
    }

    #[test]
    fn the_table_tells_wasm_and_whole() {
        assert_eq!(
            table(&weights(&[("app.wasm", 10), ("style.css", 5)])),
            "    bytes    brotli\n       20        10  app.wasm\n       30        15  all 2 files kept for offline use"
        );
    }
}
