// Compares the text the solver prints natively with the text it prints as wasm, byte for byte.
// Usage: node agreement.mjs <native text> <wasm module made for Node.js>

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";

const [nativeFile, moduleFile] = process.argv.slice(2).map((path) => resolve(path));
const native = readFileSync(nativeFile);
const { trace } = createRequire(import.meta.url)(moduleFile);
const wasm = Buffer.from(trace(), "utf8");

function fail(message) {
  console.error(message);
  process.exit(1);
}

if (native.length === 0) fail("the native trace is empty: there is nothing to compare");
if (!native.equals(wasm)) {
  const [left, right] = [native, wasm].map((bytes) => bytes.toString("utf8").split("\n"));
  const line = left.findIndex((text, index) => text !== right[index]);
  const at = line < 0 ? left.length : line;
  fail(`native and wasm differ in line ${at + 1}:\n  native ${left[at]}\n  wasm   ${right[at]}`);
}
console.log(`native and wasm agree: ${native.length} bytes`);
