import assert from "node:assert/strict";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, goTo, pencils, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const rows = (page) => page.locator(".found tbody tr");
const numbers = async (page, column) =>
  (await page.locator(`.found tbody td:nth-child(${column})`).allTextContents()).map((text) =>
    Number(text.replace(/\s/g, "").replace("\u2212", "-")),
  );

test("the best layouts are found, sorted by any column, and say how many were compared", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await until(page, ".found .proof", "all 10 combinations");
  for (const [name, column] of [["Margin", 8], ["Money a gross", 10], ["Good pencils", 11], ["Money a good gross", 12]]) {
    const head = page.locator(".found thead").getByRole("button", { name });
    await head.click();
    assert.equal(await page.locator(".found th[aria-sort=ascending]").count(), 1);
    const up = await numbers(page, column);
    assert.deepEqual(up, [...up].sort((a, b) => a - b), name);
    await head.click();
    assert.equal(await page.locator(".found th[aria-sort=descending]").count(), 1);
    const down = await numbers(page, column);
    assert.deepEqual(down, [...down].sort((a, b) => b - a), name);
  }
  assertQuiet(problems);
});

test("a found layout is laid on the drawing in one step, and is marked", async (t) => {
  const { page } = await start(t, browser, site.url);
  await until(page, ".found .proof", /combinations/);
  await page.locator(".found thead").getByRole("button", { name: "Margin" }).click();
  const button = rows(page).getByRole("button", { name: "Lay out" }).first();
  const row = rows(page).filter({ has: page.getByRole("button", { name: "Lay out" }) }).first();
  const count = (await row.locator(".strong").textContent()).trim();
  const before = await pencils(page);
  await button.click();
  await page.locator(".found tr.chosen").waitFor();
  assert.equal(await pencils(page), `${count} pencils`);
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await pencils(page), before);
  assert.equal(await page.getByRole("button", { name: "Undo" }).isDisabled(), true);
});

test("a wider search compares more, and a new set may be bought", async (t) => {
  const { page } = await start(t, browser, site.url);
  await page.getByRole("radio", { name: "Any turn" }).check();
  await page.getByRole("radio", { name: "Any two stocks" }).check();
  await page.getByRole("radio", { name: "Any height that fits" }).check();
  await until(page, ".found .proof", "all 50 combinations");
  await field(page, "New set price").fill("480");
  await until(page, ".found .proof", "all 75 combinations");
  await until(page, ".found tbody tr", "New set");
});

test("good pencils have a goal of their own, and what is wrong with the line is told", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await until(page, ".found tbody tr", "Least money for good pencils");
  const good = await numbers(page, 11);
  const all = await numbers(page, 7);
  assert.ok(good.every((number, at) => number > 0 && number <= all[at]), `${good} of ${all}`);
  await until(page, ".expected", /of 10 pencils of a sandwich are expected to be good/);
  await goTo(page, "tolerances");
  await field(page, "Shift at gluing").fill("little");
  await goTo(page, "layout");
  await until(page, ".found .problem", "Good pencils are not told. Line “");
  assert.ok((await rows(page).count()) > 0);
  assertQuiet(problems);
});

test("what keeps from searching is told", async (t) => {
  const { page } = await start(t, browser, site.url);
  await field(page, "Gross a year").fill("many");
  await until(page, ".found .empty", "Search: ");
});

test("the answers break no accessibility rule on a phone in the dark", async (t) => {
  const { page } = await start(t, browser, site.url, {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    colorScheme: "dark",
  });
  await until(page, ".found .proof", /combinations/);
  assert.deepEqual(await broken(page), []);
});
