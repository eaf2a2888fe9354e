// How long the solver takes as wasm, beside this machine's own code: ratios of the shortest of
// some runs. Usage: node pace.mjs <native times, JSON> <wasm module made for Node.js>

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";

const RUNS = 15;

const [nativeFile, moduleFile] = process.argv.slice(2).map((path) => resolve(path));
const native = JSON.parse(readFileSync(nativeFile, "utf8"));
const { work } = createRequire(import.meta.url)(moduleFile);

for (const [kind, [name, ours]] of Object.entries(native).entries()) {
  let shortest = Infinity;
  for (let run = 0; run < RUNS; run += 1) {
    const start = performance.now();
    work(kind);
    shortest = Math.min(shortest, performance.now() - start);
  }
  const ratio = (shortest / ours).toFixed(2);
  console.log(`${name.padEnd(44)} native ${ours.toFixed(2)} ms, wasm ${shortest.toFixed(2)} ms, ratio ${ratio}`);
}
