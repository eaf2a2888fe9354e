import assert from "node:assert/strict";
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

const good = async (page) => Number.parseFloat(await page.locator(".verdict strong").textContent());
const counted = (page) => until(page, ".dice .running", /sandwiches made: as exact/);

test("good pencils are counted, and the integrals agree", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await counted(page);
  await until(page, ".integrals tbody tr", "Half grooves");
  const cell = await page.locator(".integrals tr", { hasText: "Half grooves" }).locator("td").textContent();
  // Of the first line nothing but tight grooves goes wrong: ten times their chance.
  const expected = Number.parseFloat(cell) / 10;
  assert.ok(Math.abs((await good(page)) - expected) < 0.01, `${await good(page)} against ${expected}`);
  assertQuiet(problems);
});

test("the same dice give the same count, other dice another one", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await counted(page);
  const cells = () => page.locator(".positions td:nth-child(2)").allTextContents();
  const first = await cells();
  const dice = page.getByLabel("Dice number");
  await dice.fill("2");
  await dice.press("Enter");
  await page.waitForFunction((old) => document.querySelector(".positions tbody").textContent !== old, await page.locator(".positions tbody").textContent());
  await counted(page);
  assert.notDeepEqual(await cells(), first);
  await dice.fill("1");
  await dice.press("Enter");
  await page.waitForTimeout(400);
  await counted(page);
  assert.deepEqual(await cells(), first);
});

test("a worn line loses pencils, and says which error to fight first", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await counted(page);
  const before = await good(page);
  await page.getByLabel("Line", { exact: true }).selectOption({ label: "Line 2, worn (invented)" });
  await page.waitForFunction((old) => Number.parseFloat(document.querySelector(".verdict strong").textContent) < old - 0.5, before);
  await until(page, ".errors tbody tr", "Groove head to fence");
  assert.equal(await page.locator(".errors tbody tr").count(), 10);
  // The gains are those of the first line until the others are counted.
  await page.waitForFunction(() =>
    [...document.querySelectorAll(".errors td.strong")].some((cell) => Number.parseFloat(cell.textContent) > 0.1),
  );
  await page.getByRole("button", { name: "Undo" }).click();
  await page.waitForFunction((old) => document.querySelector(".verdict strong").textContent.startsWith(old.toFixed(3)), before);
});

test("an error is typed as limits, in any unit, and comes back after a reload", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await field(page, "Shift at gluing").fill("0.06");
  await page.getByLabel("Shift at gluing: how its size is meant").selectOption("limits");
  await saved(page);
  await page.reload();
  await ready(page);
  assert.equal(await field(page, "Shift at gluing").inputValue(), "0.060");
  assert.equal(await page.getByLabel("Shift at gluing: how its size is meant").inputValue(), "limits");
  await field(page, "Shift at gluing").fill("-1");
  await until(page, ".problems li", "Shift at gluing");
  await until(page, ".dice .running", /Shift at gluing/);
});

test("a better count is laid out from the table", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await until(page, ".curves tbody tr", "best");
  const row = page.locator(".curves table").first().locator("tbody tr").nth(7);
  await row.getByRole("button").click();
  await until(page, ".verdict span", "of 8 in a sandwich");
  await goTo(page, "layout");
  await until(page, ".verdict strong", "8 pencils");
});

test("the dice are stopped, keep what they have, and start again", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await counted(page);
  await page.getByLabel("Line", { exact: true }).selectOption({ label: "Line 2, worn (invented)" });
  await page.getByLabel(/Until the standard error/).selectOption("0.0003");
  await page.getByRole("button", { name: "Stop the dice" }).click();
  await until(page, ".dice .running", "then stopped");
  await page.getByRole("button", { name: "Throw again" }).click();
  await until(page, ".dice .running", /sandwiches made …/);
});

test("lines are added, copied and deleted, but the last one stays", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  const lines = () => page.getByLabel("Line", { exact: true }).locator("option").allTextContents();
  await page.locator(".column").getByRole("button", { name: "Copy" }).click();
  assert.equal((await lines()).length, 3);
  for (let left = 0; left < 2; left += 1) await page.locator(".column").getByRole("button", { name: "Delete" }).click();
  assert.equal((await lines()).length, 1);
  assert.equal(await page.locator(".column").getByRole("button", { name: "Delete" }).isDisabled(), true);
});

for (const [hand, options] of Object.entries({
  desk: { viewport: { width: 1280, height: 800 } },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, colorScheme: "dark" },
})) {
  test(`good pencils break no accessibility rule: ${hand}`, async (t) => {
    const { page } = await start(t, browser, site.url, options);
    await goTo(page, "tolerances");
    await counted(page);
    await until(page, ".curves tbody tr", "best");
    assert.deepEqual(await broken(page), []);
  });
}

test("measured slats are told, drawn, and used in place of the assumption in one step", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  const list = page.getByLabel(/Widths of a delivery/);
  await list.fill("width;thickness\n74,05;5,01\n73,95;4,99\n74,10;5,03\nwide;4,98\n73,98;5,00\n74,02;5,02\n74,00;4,97\n74,06;5,01\n73,94;5,00\n");
  await until(page, ".measured .problem li", /Row 5, column 1: “wide”/);
  const lot = page.locator(".measured table");
  assert.equal(await lot.count(), 2);
  await until(page, ".measured table td", "8");
  await page.getByLabel(/Agreed as ±/).fill("0.2");
  await page.getByLabel(/Agreed as ±/).press("Enter");
  await until(page, ".measured table th", "Cpk");
  await page.getByRole("button", { name: "Use in place of the assumption" }).click();
  // Widths: mean 74.0125, s 0.0557 by Python's statistics module.
  assert.equal(await field(page, "Mean slat width over nominal").inputValue(), "0.013");
  assert.equal(await field(page, "Slat width spread").inputValue(), "0.056");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await field(page, "Mean slat width over nominal").inputValue(), "0.000");
  assert.deepEqual(await broken(page), []);
  assertQuiet(problems);
});

test("a list of a million slats keeps nobody waiting", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await counted(page);
  const rows = Array.from({ length: 1_000_000 }, (_, at) => (74 + (((at * 7919) % 1009) - 504) / 5000).toFixed(3));
  // While the list is read, the page is drawn, and a keystroke is answered.
  const seen = await page.evaluateHandle(() => {
    const seen = { frames: 0, answered: false, typed: false };
    const agreed = document.querySelector('[aria-describedby="agreed-message"], .measured input.short');
    const look = () => {
      const reading = document.querySelector(".measured .running").textContent.includes("Reading");
      if (reading) {
        seen.frames += 1;
        if (!seen.typed) {
          seen.typed = true;
          agreed.value = "7";
          agreed.dispatchEvent(new Event("change", { bubbles: true }));
        } else if (!document.querySelector("#agreed-message").hidden) {
          seen.answered = true;
        }
      }
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
    return seen;
  });
  await page.locator(".measured input[type=file]").setInputFiles({
    name: "lot.csv",
    mimeType: "text/csv",
    buffer: Buffer.from(rows.join("\n")),
  });
  await until(page, ".measured table td", /^1.000.000$/);
  const { frames, answered } = await seen.jsonValue();
  assert.ok(frames >= 3, `${frames} frames`);
  assert.ok(answered);
  assertQuiet(problems);
});

test("what cannot be read is told beside its field, and what stood there still counts", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "tolerances");
  await counted(page);
  const before = await good(page);
  const dice = page.getByLabel("Dice number");
  await dice.fill("-4");
  await dice.press("Enter");
  await until(page, "#dice-message", "-4");
  assert.equal(await dice.getAttribute("aria-invalid"), "true");
  assert.equal(await good(page), before);
  const agreed = page.getByLabel(/Agreed as ±/);
  await agreed.fill("7");
  await agreed.press("Enter");
  await until(page, "#agreed-message", /at most 5\.00/);
  assert.equal(await agreed.getAttribute("aria-invalid"), "true");
  assert.deepEqual(await broken(page), []);
  await agreed.fill("0.2");
  await agreed.press("Enter");
  await page.waitForFunction(() => document.querySelector("#agreed-message").hidden);
  await dice.fill("1");
  await dice.press("Enter");
  await page.waitForFunction(() => document.querySelector("#dice-message").hidden);
  assertQuiet(problems);
});
