import assert from "node:assert/strict";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, goTo, ready, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { button, number, plan, rows } from "./orders.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
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
