import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test, { after, before } from "node:test";
import { assertQuiet, field, goTo, saved, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { button, manyKinds, number, open, plan, rows } from "./orders.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

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
