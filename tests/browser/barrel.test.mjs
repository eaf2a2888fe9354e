import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, goTo, hands, middle, ready, start, until } from "./bench.mjs";
import { launch, open } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const button = (page, name) => page.getByRole("button", { name, exact: true });
const handle = (page, name) => page.getByRole("slider", { name: `${name}, handle` });
const point = (page, number) => page.getByRole("button", { name: new RegExp(`^Point ${number}:`) });
const across = (page, number) => page.getByRole("textbox", { name: `Point ${number}, point across, mm`, exact: true });
const up = (page, number) => page.getByRole("textbox", { name: `Point ${number}, point up, mm`, exact: true });

async function designer(t, options) {
  const opened = await start(t, browser, site.url, options);
  await goTo(opened.page, "barrel");
  await opened.page.locator(".stocks tbody tr").first().waitFor();
  return opened;
}

/** Presses a grip with the mouse and moves it, without letting go. */
async function drag(page, grip, x, y) {
  const from = await middle(grip);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + x, from.y + y, { steps: 6 });
}

const first = (page) => page.locator(".stocks tbody tr").first().locator("td").first().textContent();

test("a size is dragged on the drawing, the stocks follow, and it is one step", async (t) => {
  const { page, problems } = await designer(t);
  const size = handle(page, "Across flats");
  assert.equal(await size.getAttribute("aria-valuenow"), "7.00");
  assert.equal(await first(page), "10");
  await drag(page, size, 3, -40);
  const held = Number(await size.getAttribute("aria-valuenow"));
  assert.ok(held > 7.5 && held < 9.5, `${held}`);
  assert.equal(Math.round(held * 20) / 20, held, "on the grid of 0.05 mm");
  await page.locator(".stocks tbody td").first().filter({ hasNotText: "10" }).waitFor();
  await page.mouse.up();
  assert.equal(await field(page, "Across flats").inputValue(), held.toFixed(2));
  await button(page, "Undo").click();
  assert.equal(await size.getAttribute("aria-valuenow"), "7.00");
  assert.equal(await button(page, "Undo").isDisabled(), true);
  await drag(page, size, 0, -40);
  await page.keyboard.press("Escape");
  assert.equal(await size.getAttribute("aria-valuenow"), "7.00");
  await page.mouse.up();
  assertQuiet(problems);
});

test("keys move a handle by steps, finer with Shift, to the ends of its range", async (t) => {
  const { page } = await designer(t);
  const corner = handle(page, "Corner radius");
  await corner.focus();
  for (const [key, expected] of [
    ["ArrowUp", "0.55"],
    ["Shift+ArrowUp", "0.56"],
    ["ArrowDown", "0.50"],
    ["PageUp", "1.00"],
    ["End", "3.50"],
    ["Home", "0.00"],
  ]) {
    await page.keyboard.press(key);
    assert.equal(await corner.getAttribute("aria-valuenow"), expected, key);
  }
  await button(page, "Undo").click();
  assert.equal(await corner.getAttribute("aria-valuenow"), "0.50");
});

test("every kind becomes a free outline of the same numbers", async (t) => {
  const { page, problems } = await designer(t);
  const numbers = () => page.locator("#barrel-numbers-title + table tbody tr").evaluateAll((rows) =>
    rows.slice(1).map((row) => [...row.querySelectorAll("td")].map((cell) => cell.textContent)));
  for (const name of ["Writer, hexagonal", "Sketcher, round", "Learner, triangular"]) {
    await button(page, name).click();
    const regular = await numbers();
    await button(page, "Shape it point by point").click();
    await page.locator(".points tbody tr").first().waitFor();
    assert.deepEqual(await numbers(), regular, name);
  }
  assertQuiet(problems);
});

test("points move by mouse, keys and numbers, and keep a symmetry", async (t) => {
  const { page, problems } = await designer(t);
  await button(page, "Shape it point by point").click();
  assert.equal(await page.locator(".points tbody tr").count(), 12);
  await page.getByLabel("Symmetric", { exact: true }).selectOption("Left and right");
  // A point on each crossing of the axis.
  assert.equal(await page.locator(".points tbody tr").count(), 14);
  const rows = () => page.locator(".points tbody tr").evaluateAll((rows) =>
    rows.map((row) => [...row.querySelectorAll("input")].map((input) => Number(input.value.replace("−", "-")))));
  const mirrored = (points) => points.every(([x, y]) =>
    points.some(([a, b]) => Math.abs(a + x) < 0.011 && Math.abs(b - y) < 0.011));
  assert.ok(mirrored(await rows()));
  const place = (await rows()).findIndex(([x, y]) => x > 2 && y > 0) + 1;
  await drag(page, point(page, place), 25, -10);
  await page.mouse.up();
  const moved = await rows();
  assert.ok(mirrored(moved), JSON.stringify(moved));
  const [x] = moved[place - 1];
  await point(page, place).focus();
  await page.keyboard.press("ArrowRight");
  assert.ok((await rows())[place - 1][0] > x);
  await across(page, place).fill("4.2");
  await up(page, place).fill("1.5");
  await up(page, place).press("Tab");
  const typed = await rows();
  assert.deepEqual(typed[place - 1], [4.2, 1.5]);
  assert.ok(mirrored(typed));
  await button(page, "Curve").click();
  await until(page, ".points", "arm after");
  await button(page, "Smooth").click();
  await button(page, "Add a point after it").click();
  await button(page, "Take it out").click();
  assert.ok(mirrored(await rows()));
  for (let step = 0; step < 40 && !(await button(page, "Undo").isDisabled()); step += 1) {
    await button(page, "Undo").click();
  }
  assert.equal(await handle(page, "Across flats").count(), 1);
  assertQuiet(problems);
});

test("an outline that meets itself is marked, and the last good drawing stays", async (t) => {
  const { page } = await designer(t);
  await button(page, "Shape it point by point").click();
  await across(page, 3).fill("-2");
  await up(page, 3).fill("2");
  await page.locator(".handle-lines .flaw").waitFor();
  assert.equal(await page.locator(".stage .sheet.stale").count(), 1);
  assert.ok((await page.locator(".handle-lines .asked").getAttribute("d")).includes("M"));
  await across(page, 3).fill("2.5");
  await up(page, 3).fill("-3");
  await page.locator(".handle-lines .flaw").waitFor({ state: "detached" });
  await across(page, 3).fill("wide");
  await until(page, ".points .problem", "Point across must be a number");
});

test("the nearest gain is found, used, and taken back", async (t) => {
  const { page, problems } = await designer(t);
  await page.getByLabel("Size, by at most, mm").fill("1");
  await page.getByRole("button", { name: "Look for it" }).click();
  const row = page.locator(".gains tbody tr").filter({ hasText: "Seven-ply, 74" }).filter({ hasText: "11 pencils, not 10" });
  await row.waitFor();
  assert.match(await row.textContent(), /Across flats 7\.00.mm → 6\.34.mm/);
  assert.match(await row.textContent(), /No smaller change/);
  await row.getByRole("button", { name: /^Use this/ }).click();
  assert.equal(await field(page, "Across flats").inputValue(), "6.34");
  await until(page, ".stocks tbody tr", "11");
  await button(page, "Undo").click();
  assert.equal(await field(page, "Across flats").inputValue(), "7.00");
  assertQuiet(problems);
});

test("barrels stand side by side, and the table goes to a file", async (t) => {
  const { page, problems } = await designer(t);
  for (const name of ["Sketcher, round", "Writer, hexagonal", "Learner, triangular"]) {
    await page.getByRole("checkbox", { name }).check();
  }
  await page.locator(".barrels tbody tr").first().waitFor();
  await page.getByRole("button", { name: "Hold the others against Writer, hexagonal" }).click();
  await until(page, ".barrels thead th:nth-child(2)", "Writer, hexagonal");
  assert.equal(await page.locator(".barrels path.compared").count(), 3);
  const saving = page.waitForEvent("download");
  await page.getByRole("button", { name: "Table as CSV" }).click();
  const csv = await readFile(await (await saving).path(), "utf8");
  assert.match(csv, /^Compared,"Writer, hexagonal","Sketcher, round",Difference/);
  assert.match(csv, /Pencils on Seven-ply, 74|"Pencils on Seven-ply, 74"/);
  assertQuiet(problems);
});

test("a link adds the barrel to another's project in one step; a damaged one is refused", async (t) => {
  const { page } = await designer(t);
  await field(page, "Across flats").fill("6.66");
  await page.getByRole("button", { name: "Copy a link to it" }).click();
  const link = await page.locator("textarea.link").inputValue();
  assert.match(link, /#barrel=1\.[\w-]+\.[0-9a-f]{16}$/);
  const other = await open(browser, link);
  t.after(() => other.context.close());
  await ready(other.page);
  await until(other.page, ".notice", "has been added");
  assert.equal(await other.page.locator("[aria-label='Barrels of the project'] .tab").count(), 5);
  assert.equal(await field(other.page, "Across flats").inputValue(), "6.66");
  assert.match(other.page.url(), /#barrel$/);
  await button(other.page, "Undo").click();
  assert.equal(await other.page.locator("[aria-label='Barrels of the project'] .tab").count(), 4);
  assertQuiet(other.problems);
  const bad = await open(browser, link.slice(0, -1) + (link.endsWith("0") ? "1" : "0"));
  t.after(() => bad.context.close());
  await ready(bad.page);
  await until(bad.page, ".banner.failed", "damaged");
  assert.equal(await bad.page.locator("[aria-label='Barrels of the project'] .tab").count(), 4);
});

test("a barrel comes back from its file, and nothing is written over", async (t) => {
  const { page, problems } = await designer(t);
  const saving = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save it as a file" }).click();
  const path = await (await saving).path();
  await page.getByLabel("Project file to open").setInputFiles(path);
  await until(page, ".notice", "has been added");
  assert.equal(await page.locator("[aria-label='Barrels of the project'] .tab").count(), 5);
  assertQuiet(problems);
});

test("the card is printed with both views of the barrel, and is gone then", async (t) => {
  const { page, problems } = await designer(t);
  await page.evaluate(() => {
    window.print = () => {
      window.printed = [...document.querySelectorAll(".office-sheet svg.true-size")].map(
        (drawing) => drawing.querySelectorAll("path[d^='M']").length,
      );
    };
  });
  await page.getByRole("button", { name: "Print the barrel card" }).click();
  await page.waitForFunction(() => window.printed);
  const printed = await page.evaluate(() => window.printed);
  assert.equal(printed.length, 2);
  assert.ok(printed.every((paths) => paths > 5), `${printed}`);
  await page.locator(".office-sheet").waitFor({ state: "detached" });
  assertQuiet(problems);
});

for (const [hand, [options]] of Object.entries(hands)) {
  test(`the designer's place keeps the rules of accessibility: ${hand}`, async (t) => {
    const { page } = await designer(t, options);
    assert.deepEqual(await broken(page), []);
    await button(page, "Shape it point by point").click();
    await page.locator(".points tbody tr").first().waitFor();
    assert.deepEqual(await broken(page), []);
  });
}
