import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test, { after, before } from "node:test";
import { assertQuiet, goTo, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const number = (text) => Number(text.replace(/[^\d.]/g, ""));
const cost = async (page) => number((await page.locator(".proof").textContent()).match(/[\d\s]+\.\d\d/)[0]);

test("the purchase is proved, and its cost is that of its packs", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "timber");
  await until(page, ".proof.proved", "Proved cheapest");
  const costs = await page.locator(".purchase .scroll").first().locator("tbody td:nth-child(4)").allTextContents();
  const hundredths = costs.reduce((sum, text) => sum + Math.round(number(text) * 100), 0);
  assert.equal(hundredths, Math.round((await cost(page)) * 100));
  // Nobody gets fewer pencils than ordered.
  const made = await page.locator(".purchase .scroll").nth(1).locator("tbody tr").evaluateAll((rows) =>
    rows.map((row) => [row.cells[0].textContent, Number(row.cells[6].textContent.replace(/\s/g, ""))]),
  );
  for (const [order, gross] of [["1", 400], ["2", 150], ["3", 90], ["4", 60]]) {
    const pencils = made.filter(([line]) => line === order).reduce((sum, [, count]) => sum + count, 0);
    assert.ok(pencils >= gross * 144, `order ${order}: ${pencils}`);
  }
  assertQuiet(problems);
});

test("a larger order costs more, and no orders cost nothing", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "timber");
  await until(page, ".proof.proved", "Proved cheapest");
  const before = await cost(page);
  await page.getByRole("textbox", { name: "Order 1, Ordered" }).fill("900");
  await page.waitForFunction((before) => {
    const text = document.querySelector(".proof.proved")?.textContent.match(/[\d\s]+\.\d\d/)?.[0];
    return text && Number(text.replace(/[^\d.]/g, "")) > before;
  }, before);
  for (let left = 4; left > 0; left--) await page.getByRole("button", { name: "Delete Order 1" }).click();
  await until(page, ".orders .empty", "No orders yet");
  await until(page, ".purchase", "Nothing is ordered");
});

test("a book that cannot be filled says what is short", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "timber");
  for (const stock of ["Seven-ply, 74", "Wide, 78", "Thin, 70", "Six-ply, 66", "Thick, 74"]) {
    await page.getByRole("textbox", { name: `${stock}, Most packs` }).fill("1");
  }
  await until(page, ".proof.failed", "cannot be filled");
  assert.match(await page.locator(".purchase ul").innerText(), /\d/);
});

test("a long solve is stopped at once, and started again", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "timber");
  await until(page, ".proof.proved", "Proved cheapest");
  // Many stocks of odd packs and prices against many orders: no proof comes soon.
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save a copy" }).click(),
  ]);
  const project = JSON.parse(await readFile(await download.path(), "utf8"));
  const slat = project.slats[0];
  project.slats = Array.from({ length: 50 }, (_, at) => ({
    ...slat,
    id: 100 + at,
    name: `Stock ${at}`,
    width_mm: 60 + ((at * 7) % 23),
    on_hand_slats: (at * 37) % 400,
    pack_slats: 397 + 53 * ((at * 7) % 11),
    pack_price: 81.37 + 7.91 * ((at * 5) % 13),
    pack_limit: 9,
  }));
  project.layout.top = project.layout.bottom = 100;
  project.orders = Array.from({ length: 40 }, (_, at) => ({ barrel: 1 + (at % 3), gross: 17 + ((at * 13) % 41), due_period: 1, on_hand_pencils: 0 }));
  const file = join(tmpdir(), `slatwright-${process.pid}-hard.json`);
  await writeFile(file, JSON.stringify(project));
  await page.getByLabel("Project file to open").setInputFiles(file);
  await until(page, ".notice", "Opened");
  await page.getByRole("button", { name: "Stop", exact: true }).click();
  await until(page, ".purchase", "Stopped before an answer was found");
  await page.getByRole("button", { name: "Start again" }).click();
  await page.getByRole("button", { name: "Stop", exact: true }).waitFor();
  assertQuiet(problems);
});

test("stocks are added, copied, moved, deleted and brought back", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "timber");
  const names = () => page.locator(".slats tbody .name").evaluateAll((inputs) => inputs.map((input) => input.value));
  const first = await names();
  await page.getByRole("button", { name: "Copy Wide, 78" }).click();
  assert.deepEqual((await names()).slice(1, 3), ["Wide, 78", "Wide, 78 copy"]);
  await page.getByRole("button", { name: "Move Wide, 78 copy up" }).click();
  assert.deepEqual((await names()).slice(1, 3), ["Wide, 78 copy", "Wide, 78"]);
  await page.getByRole("button", { name: "Add a slat stock" }).click();
  assert.equal((await names()).length, first.length + 2);
  await page.getByRole("button", { name: "Delete Seven-ply, 74" }).click();
  assert.ok(!(await names()).includes("Seven-ply, 74"));
  for (let steps = 0; steps < 4; steps++) await page.getByRole("button", { name: "Undo" }).click();
  assert.deepEqual(await names(), first);
});
