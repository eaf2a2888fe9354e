import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, goTo, ready, saved, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const number = (text) => Number(text.replace(/[^\d.]/g, ""));
const button = (page, name) => page.getByRole("button", { name, exact: true });

/** The texts of all tables with a label, row by row. */
const rows = (page, label, part = "tbody") =>
  page.getByRole("group", { name: label }).locator(`${part} tr`).evaluateAll((rows) =>
    rows.map((row) => [...row.cells].map((cell) => cell.textContent)),
  );

/** Plans the orders and waits for the plan. */
async function plan(page, again = "Plan the orders") {
  await button(page, again).click();
  await page.locator(".plan .proof").waitFor({ timeout: 100_000 });
}

/** Opens the project of the page with a change. */
async function open(page, change) {
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Save a copy").click()]);
  const project = JSON.parse(await readFile(await download.path(), "utf8"));
  change(project);
  const file = join(tmpdir(), `slatwright-${process.pid}-orders.json`);
  await writeFile(file, JSON.stringify(project));
  await page.getByLabel("Project file to open").setInputFiles(file);
  await until(page, ".notice", "Opened");
}

/** Many kinds of slat and pencil over many periods: a plan comes soon, and no proof within a minute. */
function manyKinds(project) {
  const [slat, barrel] = [project.slats[0], project.barrels[0]];
  project.slats = Array.from({ length: 14 }, (_, at) => ({ ...slat, id: 200 + at, name: `Stock ${at}`, width_mm: 63 + at }));
  project.barrels = Array.from({ length: 9 }, (_, at) => ({ ...barrel, id: 300 + at, name: `Pencil ${at}`, size_mm: 6.6 + 0.1 * at }));
  Object.assign(project.layout, { barrel: 300, top: 200, bottom: 200 });
  project.cutter_sets = [];
  project.saw_shop.blanks = [];
  const supply = project.supply;
  supply.sawn_slats = [];
  supply.periods = Array.from({ length: 12 }, (_, at) => ({ name: `Week ${at + 1}`, machine_hours: 60 }));
  supply.offers = project.slats.flatMap((slat, at) =>
    [0, 1].map((which) => ({
      ...supply.offers[which],
      id: 400 + 2 * at + which,
      slat: slat.id,
      pack_slats: 397 + 53 * ((at * 7) % 11),
      tiers: [
        { from_packs: 1, pack_price: 81.37 + 7.91 * ((at * 5) % 13) + which },
        { from_packs: 9 + at, pack_price: 77.11 + 7.91 * ((at * 5) % 13) },
      ],
    })),
  );
  project.orders = Array.from({ length: 60 }, (_, at) => ({
    barrel: 300 + (at % 9),
    gross: 17 + ((at * 13) % 41),
    due_period: 1 + (at % 12),
    on_hand_pencils: 0,
  }));
}

test("the plan fills the book, and its sums are those of its parts", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  await plan(page);
  const told = await page.locator(".plan .proof").textContent();
  const total = number(told.match(/[\d\s]+\.\d\d/)[0]);
  // Costs by kind add up, to a rounding of each.
  const costs = await rows(page, "Costs by kind");
  const sum = costs.reduce((sum, row) => sum + number(row[1]), 0);
  assert.ok(Math.abs(sum - total) < 0.01 * costs.length, `${sum} ${total}`);
  // So do the suppliers, and what they get is what slats bought cost.
  const bought = (await rows(page, "What is bought")).reduce((sum, row) => sum + Math.round(number(row[7]) * 100), 0);
  const together = (await rows(page, "What is bought", "tfoot")).reduce((sum, row) => sum + Math.round(number(row[3]) * 100), 0);
  assert.equal(bought, together);
  assert.equal(bought, Math.round(number(costs.find((row) => row[0] === "Slats bought")[1]) * 100));
  // What is due goes out of the store, period by period: 400 gross in the first.
  const pencils = await rows(page, "Pencils that come, go and stay");
  const writer = pencils.find(([of, period]) => of === "Writer, hexagonal" && period === "Week 1");
  assert.equal(number(writer[3]), 400 * 144);
  // Machine hours are kept.
  for (const title of await page.locator(".plan .period h4").allTextContents()) {
    const [, took, had] = title.match(/([\d.]+) of ([\d.]+) machine hours/);
    assert.ok(Number(took) <= Number(had), title);
  }
  assertQuiet(problems);
});

test("from the order book to a printed purchase list with the keyboard alone", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  // To the place, by Tab and Enter.
  const press = async (key, times = 1) => {
    for (; times > 0; times--) await page.keyboard.press(key);
  };
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.textContent ?? "");
  const tabTo = async (name, most = 400) => {
    for (let left = most; left > 0; left--) {
      if ((await focused()).trim().startsWith(name)) return;
      await press("Tab");
    }
    assert.fail(`${name} is not reached; the cursor is on ${await focused()}`);
  };
  await tabTo("Orders");
  await press("Enter");
  await page.locator(".orders-place").waitFor();
  await tabTo("Order 1, Ordered");
  await page.keyboard.type("300");
  await tabTo("Add an order");
  await press("Enter");
  await page.waitForFunction(() => document.activeElement?.getAttribute("aria-label") === "Order 5, Pencil");
  await press("ArrowDown"); // the next pencil
  await press("Tab");
  await page.keyboard.type("12.5");
  await press("Tab");
  await page.keyboard.type("2");
  await tabTo("Plan the orders");
  await press("Enter");
  await page.locator(".plan .proof").waitFor({ timeout: 100_000 });
  await tabTo("Print the plan");
  await page.evaluate(() => {
    window.printed = 0;
    window.print = () => (window.printed += 1);
  });
  await press("Enter");
  assert.equal(await page.evaluate(() => window.printed), 1);
  const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
  const pages = pdf.match(/\/Type\s*\/Page\b/g).length;
  assert.ok(pages >= 1 && pages <= 5, `${pages} pages`);
  await page.emulateMedia({ media: "print" });
  assert.ok(await page.getByText("Purchase list", { exact: true }).isVisible());
  assert.ok(!(await page.getByText("Offers of slats").isVisible()));
  assertQuiet(problems);
});

test("the purchase list is a file, and so is the order book, there and back", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  await plan(page);
  const [list] = await Promise.all([page.waitForEvent("download"), button(page, "Save the purchase list as CSV").click()]);
  const lines = (await readFile(await list.path(), "utf8")).trim().split("\r\n");
  assert.equal(lines.length - 1, (await rows(page, "What is bought")).length);
  assert.match(lines[0], /^Order in,Supplier,Slat stock,Packs,/);
  const [book] = await Promise.all([page.waitForEvent("download"), button(page, "Save as CSV: Order book").click()]);
  const text = await readFile(await book.path(), "utf8");
  assert.match(text, /^Pencil,"Ordered, gross of 144",Due in period,That is,Pencils on hand\r\n"Writer, hexagonal",400,1,Week 1,0\r\n/);
  const file = join(tmpdir(), `slatwright-${process.pid}-book.csv`);
  await writeFile(file, text.replace("400,1", "401,1"));
  await page.getByLabel("CSV file to open: Order book").setInputFiles(file);
  await until(page, ".notice", "4 rows from");
  assert.equal(await field(page, "Order 1, Ordered").inputValue(), "401");
  await until(page, ".plan .before", "before the last change");
  await saved(page);
  assertQuiet(problems);
});

test("ten thousand lines are gathered at once, and what is wrong is told with its place", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  const file = join(tmpdir(), `slatwright-${process.pid}-lines.csv`);
  const pencils = ["Writer, hexagonal", "Sketcher, round", "Learner, triangular", "Jumbo, round"];
  const line = (at) => `"${pencils[at % 4]}",0.05,${1 + (at % 3)}`;
  await writeFile(file, Array.from({ length: 10_000 }, (_, at) => line(at)).join("\n"));
  const began = Date.now();
  await page.getByLabel("CSV file to open: Order book").setInputFiles(file);
  await until(page, ".notice", "gathered by pencil and period into 12 lines");
  assert.ok(Date.now() - began < 5_000, `${Date.now() - began} ms`);
  await plan(page);
  await writeFile(file, `${Array.from({ length: 9_999 }, (_, at) => line(at)).join("\n")}\nQuill,many,0`);
  await page.getByLabel("CSV file to open: Order book").setInputFiles(file);
  await until(page, ".banner, .refused, [role=alert]", "Row 10000, column A: Pencil: “Quill” is not known here");
  assert.equal(await page.locator(".orders tbody tr").count(), 12);
  assertQuiet(problems);
});

test("a long search is stopped at once, and the best plan stays", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  await open(page, manyKinds);
  await goTo(page, "orders");
  await button(page, "Plan the orders").click();
  await until(page, ".plan .running", /Best plan so far: [\d\s]+\.\d\d/);
  const began = Date.now();
  await button(page, "Stop").click();
  await until(page, ".plan .proof.open", /Stopped\. The best plan so far comes to/);
  assert.ok(Date.now() - began < 2_000, `${Date.now() - began} ms`);
  assert.ok((await rows(page, "What is bought")).length > 0);
  assert.equal(await page.locator(".plan .proof").filter({ hasText: "Proved" }).count(), 0);
  await button(page, "Start again").click();
  await button(page, "Stop").waitFor();
  assertQuiet(problems);
});

test("what cannot be kept together is told with its amounts", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  await field(page, "Week 1, Machine hours").fill("2");
  await plan(page);
  await until(page, ".plan .proof.failed", "There is no plan");
  await until(page, ".plan .clashes li", /Machine hours in Week 1: 2\.0.h; with all else as it is, at least [\d.]+.h/);
  assert.equal(await page.locator(".plan .planned").count(), 0);
  assertQuiet(problems);
});

test("everything that is wrong is told at once, and leads to its field", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  await field(page, "Order 2, Due in period").fill("7");
  await field(page, "Brook mill \\(invented\\) for Seven-ply, 74, From packs 2").fill("1");
  await field(page, "Weir timber \\(invented\\) for Six-ply, 66, Least order").fill("401");
  await field(page, "Weir timber \\(invented\\) for Thin, 70, Lead time").fill("99");
  await page.locator("summary", { hasText: "Costs, limits" }).click();
  await field(page, "Machine hour").fill("much");
  await page.locator("summary", { hasText: "Costs, limits" }).click();
  const list = page.locator(".problems li");
  for (const told of [/Due in period 7 comes after the last period, 3/, /Lead time must be between/, /Machine hour must be a number/]) {
    await list.filter({ hasText: told }).waitFor();
  }
  await button(page, "Plan the orders").click();
  await until(page, ".plan", "The plan is made when this is mended");
  // A line leads to its field, though it is folded away.
  await list.filter({ hasText: "Machine hour must be a number" }).getByRole("button").click();
  await page.waitForFunction(() => document.activeElement?.id.endsWith("MachineHourPrice"));
  await page.keyboard.type("46");
  await field(page, "Weir timber \\(invented\\) for Thin, 70, Lead time").fill("1");
  await field(page, "Order 2, Due in period").fill("2");
  // What is broken together is told once every number can be read.
  await list.filter({ hasText: "hold from ever more packs on" }).waitFor();
  await list.filter({ hasText: "The least order, 401 packs, is more than the most of an order, 400" }).waitFor();
  assert.deepEqual(await broken(page), []);
  assertQuiet(problems);
});

test("a plan stands beside the one that was set aside", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  await plan(page);
  await button(page, "Set this plan aside").click();
  await field(page, "Order 1, Ordered").fill("500");
  await until(page, ".plan .before", "before the last change");
  await button(page, "Plan the orders again").click();
  await page.locator(".plan .before").waitFor({ state: "detached", timeout: 100_000 });
  const differs = page.getByRole("group", { name: "What differs" });
  await differs.waitFor({ timeout: 100_000 });
  const [cost] = (await rows(page, "What differs")).filter(([name]) => name === "Cost in all");
  assert.ok(number(cost[2]) > number(cost[1]), cost.join());
  assert.match(cost[3], /^\+[\d\s.]+, worse$/);
  await button(page, "Take it away").click();
  await differs.waitFor({ state: "detached" });
  assertQuiet(problems);
});

test("prices at which other stocks pay, and wider slats, are asked for", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "orders");
  await plan(page);
  await button(page, "What would slats one millimetre wider save?").click();
  await page.locator(".plan .question .told li").first().waitFor({ timeout: 110_000 });
  const told = await page.locator(".plan .question .told li").allTextContents();
  assert.ok(told.every((line) => /save|change nothing|more/.test(line)), told.join());
  assertQuiet(problems);
});

test("one period and one price are enough, and stay simple", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await button(page, "New").click();
  await ready(page);
  await goTo(page, "orders");
  assert.equal(await page.locator("details.folded[open]").count(), 0);
  await button(page, "Add an order").click();
  assert.ok(!(await page.getByRole("columnheader", { name: "Due in period" }).isVisible()));
  await plan(page);
  await until(page, ".plan .proof.proved", "Proved best");
  assertQuiet(problems);
});
