import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test, { after, before } from "node:test";
import { assertQuiet, field, goTo, pencils, ready, saved, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

test("what was typed is there after a reload, right or wrong", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await field(page, "Slat width").fill("70");
  await field(page, "Coat").fill("thin");
  await saved(page);
  await page.reload();
  await ready(page);
  assert.equal(await field(page, "Slat width").inputValue().catch(() => "gone"), "70.00");
  assert.equal(await field(page, "Coat").inputValue(), "thin");
  await until(page, ".problems li", "Coat must be a number");
  assertQuiet(problems);
});

test("what was typed and left at once is not lost", async (t) => {
  const { page } = await start(t, browser, site.url);
  await saved(page);
  await field(page, "Slat width").fill("66");
  await page.goto("about:blank");
  await page.goto(site.url);
  await ready(page);
  assert.equal(await field(page, "Slat width").inputValue(), "66.00");
});

test("a second tab only looks, until it takes over", async (t) => {
  const { context, page } = await start(t, browser, site.url);
  await saved(page);
  const other = await context.newPage();
  await other.goto(site.url);
  await ready(other);
  await until(other, ".banner", "open in another tab");
  await field(page, "Slat width").fill("71");
  await saved(page);
  await other.getByRole("button", { name: "Take over here" }).click();
  await until(page, ".banner", "open in another tab");
  await other.waitForFunction(() => document.querySelector(".grooves tbody tr:nth-child(10)") === null);
  assert.equal(await field(other, "Slat width").inputValue(), "71.00");
  await field(other, "Slat width").fill("72");
  await saved(other);
});

test("a saved copy opens again as the same project", async (t) => {
  const { page } = await start(t, browser, site.url);
  await field(page, "Slat width").fill("69.9");
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save a copy" }).click()]);
  const file = join(tmpdir(), `slatwright-${process.pid}.json`);
  await download.saveAs(file);
  const text = await readFile(file, "utf8");
  assert.equal(JSON.parse(text).format, "slatwright-project");
  await page.getByRole("button", { name: "New", exact: true }).click();
  assert.notEqual(await page.getByLabel("Project name").inputValue(), JSON.parse(text).name);
  await page.getByLabel("Project file to open").setInputFiles(file);
  await until(page, ".notice", "Opened");
  assert.equal(await field(page, "Slat width").inputValue(), "69.90");
  assert.equal(await page.getByLabel("Project name").inputValue(), JSON.parse(text).name);
});

test("a file that is no project is refused with its reasons, and the work stays", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await field(page, "Slat width").fill("73");
  const count = await pencils(page);
  for (const [name, text, words] of [
    ["noise.json", "{ not json", /not JSON from line 1/],
    ["other.json", '{"name": "something else"}', /not a Slatwright project/],
    ["newer.json", '{"format": "slatwright-project", "version": 99}', /newer Slatwright, version 99/],
    ["broken.json", '{"format": "slatwright-project", "version": 1, "barrels": 7, "slats": [{"id": "x"}]}', /barrels/],
    ["huge.json", `"${"x".repeat(6_000_000)}"`, /too large/],
  ]) {
    const file = join(tmpdir(), `slatwright-${process.pid}-${name}`);
    await writeFile(file, text);
    await page.getByLabel("Project file to open").setInputFiles(file);
    await until(page, ".banner.failed", words);
    await until(page, ".banner.failed", name);
    assert.match(await field(page, "Slat width").inputValue(), /^73(\.00)?$/);
    assert.equal(await pencils(page), count);
    await page.locator(".banner.failed").getByRole("button", { name: "Close" }).click();
  }
  assertQuiet(problems);
});

test("a barrel is added, shaped, deleted and brought back", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "barrel");
  const tabs = page.locator(".board .tabs > button");
  assert.equal(await tabs.count(), 4);
  await page.getByRole("button", { name: "Add", exact: true }).click();
  assert.equal(await tabs.count(), 5);
  await page.getByLabel("Shape").selectOption({ label: "Triangular" });
  await page.getByLabel("Barrel name").fill("Newcomer");
  await page.getByLabel("Barrel name").blur();
  await until(page, ".board .tabs > button", "Newcomer");
  await page.getByRole("button", { name: "Delete", exact: true }).click();
  assert.equal(await tabs.count(), 4);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await until(page, ".board .tabs > button", "Newcomer");
  assertQuiet(problems);
});
