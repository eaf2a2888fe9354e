import assert from "node:assert/strict";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, goTo, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

/** Pastes text in an element, as the keyboard does. */
async function paste(element, text) {
  await element.focus();
  await element.evaluate((target, text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", text);
    target.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

const names = (page, table) =>
  page.locator(`.${table} tbody .name`).evaluateAll((inputs) => inputs.map((input) => input.value));

/** What follows in a row of the slat table: guaranteed width and thickness. */
const driven = (page, row) =>
  page.locator(".slats tbody tr").nth(row).locator("td.driven").allTextContents();

test("a species and its moisture decide what width is guaranteed", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "timber");
  assert.deepEqual(await driven(page, 0), ["74.00", "5.00"]);
  // From 8 to 12 %, with C = S/30 / (100 − S·20/30): the tangential 5.4 % give 74 · (1 + 4 · 0.0018672),
  // the radial 3.1 % give 5 · (1 + 4 · 0.0010551), reckoned by hand.
  await field(page, "Moisture at grooving").fill("12");
  await page.waitForFunction(() => document.querySelector(".slats td.driven").textContent !== "74.00");
  assert.deepEqual(await driven(page, 0), ["74.55", "5.02"]);
  await page.getByRole("combobox", { name: "Seven-ply, 74, Sawn" }).selectOption("Quarter-sawn");
  assert.deepEqual(await driven(page, 0), ["74.31", "5.04"]);
  await page.getByRole("combobox", { name: "Seven-ply, 74, Species" }).selectOption("None");
  assert.deepEqual(await driven(page, 0), ["74.00", "5.00"]);
  await page.getByRole("radio", { name: "From the air of the shop" }).check();
  await field(page, "Relative humidity").fill("42");
  await until(page, ".conditions output", /^[78]\.\d/);
  assertQuiet(problems);
});

test("species come from the handbook, and slats of a deleted one are of none", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "timber");
  await page.getByRole("combobox", { name: "From the handbook" }).selectOption("Yellow-poplar");
  await page.getByRole("button", { name: "Add this species from the handbook" }).click();
  assert.deepEqual((await names(page, "species")).slice(2), ["Yellow-poplar"]);
  assert.equal(await field(page, "Yellow-poplar, Tangential shrinkage").inputValue(), "8.2");
  await page.getByRole("button", { name: "Delete Brook cedar" }).click();
  const first = page.getByRole("combobox", { name: "Seven-ply, 74, Species" });
  assert.equal(await first.evaluate((select) => select.selectedOptions[0].textContent), "None");
  assertQuiet(problems);
});

test("cells of a spreadsheet fill the table in one step", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "timber");
  const before = await names(page, "slats");
  const text = 'Narrow\t61,5\t4.9\n"Two\nlines"\t3 in\t5\nOdd\twide\t5\nNew one\t70\t5\t184\n';
  await paste(page.locator(".slats tbody tr").nth(3).locator(".name"), text);
  await until(page, ".notice", "Pasted 13 cells in 4 rows, 2 new. One cell is to be mended.");
  assert.deepEqual((await names(page, "slats")).slice(3), ["Narrow", "Two lines", "Odd", "New one"]);
  assert.equal(await field(page, "Narrow, Slat width").inputValue(), "61.50");
  assert.equal(await field(page, "Two lines, Slat width").inputValue(), "76.20");
  assert.equal(await field(page, "Odd, Slat width").inputValue(), "wide");
  await until(page, ".problems li", "Odd: Slat width");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.deepEqual(await names(page, "slats"), before);
  assert.equal(await page.locator(".problems li").count(), 0);
  assertQuiet(problems);
});

test("semicolons part cells too, and what follows is passed over", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "timber");
  await paste(page.getByRole("combobox", { name: "Wide, 78, Sawn" }), "quarter-sawn;9,5;1;2;500");
  await until(page, ".notice", "Guaranteed width is skipped");
  assert.equal(await field(page, "Wide, 78, Moisture as delivered").inputValue(), "9.5");
  assert.equal(await field(page, "Wide, 78, Slats per pack").inputValue(), "500");
});

test("one number that is pasted is left to its field", async (t) => {
  const { context, page, problems } = await start(t, browser, site.url);
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await goTo(page, "timber");
  const width = field(page, "Wide, 78, Slat width");
  await page.evaluate(() => navigator.clipboard.writeText("71,5\n"));
  await width.focus();
  await page.keyboard.press("Control+V");
  await page.keyboard.press("Tab");
  assert.equal(await width.inputValue(), "71.50");
  assert.equal(await page.locator(".notice").isHidden(), true);
  assertQuiet(problems);
});

test("a thousand rows are pasted without a hang, and each can be reached", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "layout");
  const wrong = (at) => (at === 777 ? "narrow" : 7 + (at % 30) / 10);
  const text = Array.from({ length: 1000 }, (_, at) => `Set ${at}\t${wrong(at)}`).join("\n");
  const began = Date.now();
  await paste(page.locator(".cutter-sets tbody .name").first(), text);
  await until(page, ".notice", "Pasted 2000 cells in 1000 rows, 997 new. One cell is to be mended.");
  const seconds = (Date.now() - began) / 1000;
  t.diagnostic(`${seconds} s`);
  assert.ok(seconds < 3, `${seconds} s`);
  await until(page, ".cutter-sets .parts", /Rows 1 to 50 of 1\s?000/);
  await page.getByRole("button", { name: "Rows after" }).click();
  await until(page, ".cutter-sets .parts", /Rows 51 to 100/);
  // What is wrong leads to its row, wherever it stands.
  await page.locator(".problems li button").filter({ hasText: "Set 777" }).first().click();
  await page.waitForFunction(() => document.activeElement?.value === "narrow");
  assertQuiet(problems);
});

test("a table is copied for a spreadsheet, with units in its headings", async (t) => {
  const { context, page, problems } = await start(t, browser, site.url);
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await goTo(page, "timber");
  await page.getByRole("button", { name: "Copy table: Slat stocks" }).click();
  await until(page, ".notice", "on the clipboard");
  const lines = (await page.evaluate(() => navigator.clipboard.readText())).trimEnd().split(/\r?\n/);
  assert.equal(lines.length, 6);
  assert.match(lines[0], /^Name\tSlat width, mm\tSlat thickness, mm\t/);
  assert.match(lines[3], /^Thin, 70\t69\.85\t4\.76\t/);
  assertQuiet(problems);
});

test("the cursor stays with a row that moves, and goes to one that is added", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "layout");
  const focused = (name) =>
    page.waitForFunction((name) => document.activeElement?.getAttribute("aria-label") === name, name);
  const down = page.getByRole("button", { name: "Move Writer head, tens down" });
  await down.focus();
  await page.keyboard.press("Enter");
  await focused("Move Writer head, tens down");
  await page.keyboard.press("Enter");
  // At the end of the table only the way up is left.
  await focused("Move Writer head, tens up");
  assert.deepEqual(await names(page, "cutter-sets"), ["Sketcher head, nines", "Wide head, sevens", "Writer head, tens"]);
  await page.getByRole("button", { name: "Add a cutter set" }).click();
  await focused("Name of the cutter set");
  await page.keyboard.type("Fresh head");
  await page.keyboard.press("Tab");
  assert.equal((await names(page, "cutter-sets")).at(-1), "Fresh head");
});

test("grooves are spaced by a cutter set, and a set for another barrel is told", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await page.getByRole("radio", { name: /cutter set/i }).check();
  const set = page.locator(".column").getByRole("combobox", { name: "Cutter set" });
  assert.equal(await set.evaluate((select) => select.selectedOptions[0].textContent), "Writer head, tens");
  await set.selectOption({ label: "Sketcher head, nines (for another barrel)" });
  await page.locator(".column .problem:visible").first().waitFor();
  await set.selectOption({ label: "Wide head, sevens" });
  await page.waitForFunction(() => document.querySelectorAll(".problems li").length === 0);
  assert.deepEqual(await broken(page), []);
  assertQuiet(problems);
});

test("a free outline that is wrong is told beside it, and mended", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "barrel");
  await page.getByRole("combobox", { name: "Shape" }).selectOption("Free outline");
  const path = page.getByRole("textbox", { name: "Outline path" });
  await path.fill("M 0 0 L 9");
  await page.locator(".field.path .problem:visible").waitFor();
  await page.locator(".problems li button").filter({ hasText: "Outline path" }).first().click();
  await page.waitForFunction(() => document.activeElement?.tagName === "TEXTAREA");
  assert.deepEqual(await broken(page), []);
  await page.getByRole("button", { name: "Put in an example" }).click();
  await page.waitForFunction(() => document.querySelectorAll(".problems li").length === 0);
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await path.inputValue(), "M 0 0 L 9");
  assertQuiet(problems);
});
