// The page as a person uses it: open it, wait until it can be worked with, find fields by name.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { open } from "./launch.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Opens the page in a fresh profile and waits for the work; closes it after the test. */
export async function start(t, browser, url, options = {}) {
  const opened = await open(browser, url, options);
  t.after(() => opened.context.close());
  await ready(opened.page);
  return opened;
}

/** Waits until a place stands on the page. */
export const ready = (page) => page.locator(".place").waitFor();

/** Goes to a place by its fragment: barrel, layout, tolerances, setting, planks, timber or orders. */
export async function goTo(page, place) {
  await page.locator(`nav a[href="#${place}"]`).click();
  await page.locator(`.${place}-place`).waitFor();
}

/** A number field by its name, which ends before its unit. */
export const field = (page, name) =>
  page.getByRole("textbox", { name: new RegExp(`^${name}(, |$)`) }).first();

/** Waits until a condition on the page's text holds. */
export async function until(page, selector, text) {
  await page.locator(selector).filter({ hasText: text }).first().waitFor();
}

/** Waits until the project is stored. */
export const saved = (page) => until(page, ".save-status", /^Saved/);

/** The number of pencils that the page answers with. */
export const pencils = (page) => page.locator(".verdict strong").textContent();

/** The accessibility rules that the page breaks, with where. */
export async function broken(page) {
  // The page's content policy forbids inline script; the rules come in beside it.
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() =>
    // eslint-disable-next-line no-undef
    axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }),
  );
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`);
}

/** Asserts that nothing was complained about and nobody else was asked. */
export const assertQuiet = (problems) => assert.deepEqual(problems, []);

/** A sliding gauge by the size it slides. */
export const gauge = (page, name) => page.getByRole("slider", { name: new RegExp(`^${name}`) });

/** The middle of a grip, px of the window. */
export async function middle(grip) {
  await grip.scrollIntoViewIfNeeded();
  const box = await grip.boundingBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

export const hands = {
  desk: [{ viewport: { width: 1280, height: 800 } }, 24],
  tablet: [{ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true }, 44],
  phone: [{ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }, 44],
};
