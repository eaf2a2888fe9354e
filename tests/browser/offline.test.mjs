import assert from "node:assert/strict";
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test, { after, before } from "node:test";
import { assertQuiet, field, goTo, pencils, ready, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { DIST, serve } from "./serve.mjs";

let browser;
before(async () => (browser = await launch()));
after(() => browser?.close());

const controlled = (page) => page.waitForFunction(() => navigator.serviceWorker.controller !== null);

test("with the server gone, the page starts, draws and solves, in a new tab too", async (t) => {
  const site = await serve();
  const { context, page, problems } = await start(t, browser, site.url);
  await controlled(page);
  // Workers that are still loading would be cut off with the network.
  for (const answer of [".ranking tbody tr", ".found tbody tr", ".steps tbody tr"]) await until(page, answer, /./);
  await context.setOffline(true);
  await site.close();
  await page.reload();
  await ready(page);
  await field(page, "Slat width").fill("73.9");
  assert.equal(await pencils(page), "9 pencils");
  await until(page, ".ranking tbody tr.chosen .strong", "9");
  await goTo(page, "timber");
  await until(page, ".proof.proved", "Proved cheapest");
  const other = await context.newPage();
  await other.goto(`${site.url}?tab=2#barrel`);
  await other.locator(".barrel-place").waitFor();
  assertQuiet(problems);
});

test("what is kept for offline use is just what the page asks for", async (t) => {
  const site = await serve();
  t.after(() => site.close());
  const { page } = await start(t, browser, site.url);
  await until(page, ".ranking tbody tr", "Seven-ply");
  await goTo(page, "timber");
  await until(page, ".proof", /./);
  const asked = await page.evaluate(() =>
    performance.getEntriesByType("resource").map((entry) => new URL(entry.name).pathname),
  );
  const list = JSON.parse(/const FILES = (\[.*?\]);/s.exec(await readFile(join(DIST, "sw.js"), "utf8"))[1].replace(/,\s*\]/, "]"));
  const kept = new Set(list.map((name) => new URL(name, site.url).pathname));
  for (const path of asked) {
    if (!path.endsWith("/sw.js")) assert.ok(kept.has(path), `${path} is asked for and not kept`);
  }
});

test("a newer version waits for the button", async (t) => {
  const folder = await mkdtemp(join(tmpdir(), "slatwright-newer-"));
  t.after(() => rm(folder, { recursive: true }));
  await cp(DIST, folder, { recursive: true });
  const worker = await readFile(join(folder, "sw.js"), "utf8");
  await writeFile(join(folder, "sw.js"), worker.replace(/const BUILD = "(.)/, 'const BUILD = "newer$1'));
  const site = await serve();
  t.after(() => site.close());
  const { page, problems } = await start(t, browser, site.url);
  await controlled(page);
  await field(page, "Slat width").fill("72");
  site.show(folder);
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  const button = page.getByRole("button", { name: "Change to the new version" });
  await button.waitFor();
  assert.match(await field(page, "Slat width").inputValue(), /^72/);
  const reloaded = page.waitForEvent("load");
  await button.click();
  await reloaded;
  await ready(page);
  assert.equal(await field(page, "Slat width").inputValue(), "72.00");
  assertQuiet(problems);
});
