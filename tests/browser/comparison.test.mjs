import assert from "node:assert/strict";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, pencils, ready, saved, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const section = (page) => page.locator(".comparison");
const press = (page, name) => section(page).getByRole("button", { name }).click();

/** The cells of a line: what was set aside, what is on the drawing, the change. */
async function line(page, label) {
  const row = section(page).locator("tbody tr").filter({ has: page.locator("th", { hasText: label }) });
  const cells = await row.first().locator("td").allTextContents();
  return cells.map((cell) => cell.replace(/\s/g, " "));
}

test("a layout set aside stands beside the one on the drawing, with what differs", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await until(page, ".comparison .empty", /Set the layout on the drawing aside/);
  await press(page, "Set this layout aside");
  await until(page, ".comparison .empty", "Nothing differs");
  await field(page, "Edge allowance").fill("2");
  await until(page, ".comparison figcaption", "On the drawing, 9 pencils");
  await until(page, ".comparison figcaption", "Set aside, 10 pencils");
  assert.deepEqual(await line(page, "Pencils from a sandwich"), ["10", "9", "\u22121, worse"]);
  assert.deepEqual(await line(page, "Edge allowance"), ["1.00 mm", "2.00 mm", "+1.00 mm"]);
  assert.deepEqual(await line(page, "Lead diameter"), []);
  await section(page).getByRole("checkbox", { name: /alike/ }).check();
  assert.deepEqual(await line(page, "Lead diameter"), ["2.20 mm", "2.20 mm", "alike"]);
  assert.deepEqual(await broken(page), []);
  assertQuiet(problems);
});

test("both drawings have one scale", async (t) => {
  const { page } = await start(t, browser, site.url);
  await press(page, "Set this layout aside");
  await page.getByLabel("Bottom slat", { exact: true }).selectOption({ label: "Wide, 78" });
  await page.getByLabel("Top slat", { exact: true }).selectOption({ label: "Wide, 78" });
  await until(page, ".comparison figcaption", "On the drawing");
  const widths = await section(page)
    .locator("svg .slat:first-child")
    .evaluateAll((slats) => slats.map((slat) => slat.getBBox().width));
  assert.ok(Math.abs(widths[1] / widths[0] - 78 / 74) < 1e-3, `${widths}`);
});

test("the two change places, each with its own sizes, and undo takes every step back", async (t) => {
  const { page } = await start(t, browser, site.url);
  await press(page, "Set this layout aside");
  await field(page, "Edge allowance").fill("2");
  await field(page, "Edge allowance").press("Enter");
  await until(page, ".verdict strong", "9 pencils");
  await press(page, "Let them change places");
  await until(page, ".comparison figcaption", "Set aside, 9 pencils");
  assert.equal(await pencils(page), "10 pencils");
  assert.equal(await field(page, "Edge allowance").inputValue(), "1.00");
  await press(page, "Take it away");
  await until(page, ".comparison .empty", /Set the layout on the drawing aside/);
  for (let step = 0; step < 4; step += 1) await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await page.getByRole("button", { name: "Undo" }).isDisabled(), true);
  assert.equal(await section(page).locator("table").count(), 0);
});

test("what was set aside is there after a reload, and does not change with the project", async (t) => {
  const { page } = await start(t, browser, site.url);
  await press(page, "Set this layout aside");
  await field(page, "Slat width").fill("73.9");
  await until(page, ".verdict strong", "9 pencils");
  await saved(page);
  await page.reload();
  await ready(page);
  await until(page, ".comparison figcaption", "Set aside, 10 pencils");
  assert.deepEqual(await line(page, "Slat width"), ["74.00 mm", "73.90 mm", "\u22120.10 mm"]);
});

test("only what can be laid out is set aside", async (t) => {
  const { page } = await start(t, browser, site.url);
  await field(page, "Land").fill("much");
  await until(page, ".comparison .hint", "Only what can be laid out");
  assert.equal(await section(page).getByRole("button", { name: "Set this layout aside" }).isDisabled(), true);
});
