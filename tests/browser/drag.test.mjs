import assert from "node:assert/strict";
import test, { after, before } from "node:test";
import { assertQuiet, field, gauge, hands, middle, pencils, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const value = async (grip) => Number(await grip.getAttribute("aria-valuenow"));
const button = (page, name) => page.getByRole("button", { name });

/** Presses a grip with the mouse and moves it by some px, without letting go. */
async function drag(page, grip, px) {
  const from = await middle(grip);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + px, from.y + 3, { steps: 8 });
  return from;
}

test("sliding the pitch changes the pencils live, follows the mouse, and is one step", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  const grip = gauge(page, "Pitch");
  assert.equal(await value(grip), 7.24);
  const from = await drag(page, grip, 6);
  // Still held, and everything has followed, which a busy machine may do a moment later.
  await until(page, ".verdict strong", "9 pencils");
  const wider = await value(grip);
  assert.ok(wider > 7.4 && wider < 8.2, `${wider}`);
  assert.equal(await pencils(page), "9 pencils");
  assert.equal(await page.locator(".grooves tbody tr").count(), 9);
  assert.equal(await page.getByRole("radio", { name: "At a given pitch" }).isChecked(), true);
  assert.equal(await page.locator(".driving").getByRole("textbox", { name: /^Pitch/ }).inputValue(), wider.toFixed(2));
  const to = await middle(grip);
  assert.ok(Math.abs(to.x - from.x - 6) < 1, `the jaw moved by ${to.x - from.x} px`);
  await page.mouse.move(from.x + 14, from.y);
  assert.equal(await pencils(page), "8 pencils");
  await page.mouse.up();
  await page.mouse.move(from.x + 60, from.y);
  assert.equal(await pencils(page), "8 pencils", "let go");
  await button(page, "Undo").click();
  assert.equal(await pencils(page), "10 pencils");
  assert.equal(await page.getByRole("radio", { name: /^Closest/ }).isChecked(), true);
  assert.equal(await button(page, "Undo").isDisabled(), true);
  await button(page, "Redo").click();
  assert.equal(await pencils(page), "8 pencils");
  assertQuiet(problems);
});

test("sliding the edge changes its allowance and no spacing", async (t) => {
  const { page } = await start(t, browser, site.url);
  const grip = gauge(page, "Edge allowance");
  assert.equal(await value(grip), 1);
  await drag(page, grip, 20);
  await until(page, ".verdict strong", "9 pencils");
  const wider = await value(grip);
  assert.ok(wider > 1.2, `${wider}`);
  assert.equal(await pencils(page), "9 pencils");
  await page.mouse.up();
  assert.equal(await field(page, "Edge allowance").inputValue(), wider.toFixed(2));
  assert.equal(await page.getByRole("radio", { name: /^Closest/ }).isChecked(), true);
  // Far to the left it stops at nothing.
  await drag(page, grip, -300);
  assert.equal(await value(grip), 0);
  await page.mouse.up();
  await button(page, "Undo").click();
  assert.equal(await value(grip), wider);
});

test("a press alone changes nothing, and neither does another button", async (t) => {
  const { page } = await start(t, browser, site.url);
  await gauge(page, "Pitch").click();
  const from = await middle(gauge(page, "Pitch"));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down({ button: "middle" });
  await page.mouse.move(from.x + 20, from.y);
  await page.mouse.up({ button: "middle" });
  assert.equal(await value(gauge(page, "Pitch")), 7.24);
  assert.equal(await button(page, "Undo").isDisabled(), true);
});

test("Escape takes a drag back, and nothing is left to undo", async (t) => {
  const { page } = await start(t, browser, site.url);
  const grip = gauge(page, "Pitch");
  const from = await drag(page, grip, 10);
  assert.notEqual(await pencils(page), "10 pencils");
  await page.keyboard.press("Escape");
  assert.equal(await pencils(page), "10 pencils");
  assert.equal(await page.getByRole("radio", { name: /^Closest/ }).isChecked(), true);
  await page.mouse.move(from.x + 30, from.y);
  assert.equal(await pencils(page), "10 pencils", "the mouse has lost its hold");
  await page.mouse.up();
  assert.equal(await button(page, "Undo").isDisabled(), true);
  assert.equal(await button(page, "Redo").isDisabled(), true);
});

test("keys move a gauge by even steps, within its range, in one step until it is left", async (t) => {
  const { page } = await start(t, browser, site.url);
  const grip = gauge(page, "Pitch");
  await grip.focus();
  for (const [key, expected] of [
    ["ArrowRight", 7.29],
    ["ArrowUp", 7.34],
    ["ArrowLeft", 7.29],
    ["Shift+ArrowRight", 7.79],
    ["Shift+ArrowDown", 7.29],
    ["PageUp", 8.29],
    ["PageDown", 7.29],
    ["End", 80],
    ["ArrowRight", 80],
    ["Home", 3],
    ["PageDown", 3],
  ]) {
    await page.keyboard.press(key);
    assert.equal(await value(grip), expected, key);
    const focused = await page.evaluate(() => document.activeElement.getAttribute("role"));
    assert.equal(focused, "slider", `${key} keeps the focus`);
  }
  await button(page, "Undo").click();
  assert.equal(await value(grip), 7.24);
  assert.equal(await pencils(page), "10 pencils");
  assert.equal(await button(page, "Undo").isDisabled(), true);
  await grip.focus();
  await page.keyboard.press("PageUp");
  await page.keyboard.press("Escape");
  assert.equal(await value(grip), 7.24);
});

test("inches are slid in thousandths", async (t) => {
  const { page } = await start(t, browser, site.url);
  await button(page, /inches/).click();
  const grip = gauge(page, "Pitch");
  assert.equal(await grip.getAttribute("aria-valuetext"), "0.285\u202fin");
  await grip.focus();
  await page.keyboard.press("ArrowRight");
  assert.equal(await value(grip), 0.287);
  const shown = page.locator(".driving").getByRole("textbox", { name: /^Pitch/ });
  await shown.focus();
  assert.equal(await shown.inputValue(), "0.287", "no more digits than were slid");
});

test("both gauges are reached by Tab, seen, and told", async (t) => {
  const { page } = await start(t, browser, site.url);
  const met = [];
  for (let presses = 0; presses < 60 && met.length < 2; presses++) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const { role, ariaLabel, ariaValueMin, ariaValueMax, ariaValueNow, ariaValueText } = document.activeElement;
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement);
      return { role, told: [ariaLabel, ariaValueMin, ariaValueMax, ariaValueNow, ariaValueText], ring: `${outlineStyle} ${outlineWidth}` };
    });
    if (at.role === "slider") met.push(at);
  }
  assert.deepEqual(met.map(({ told }) => told), [
    ["Pitch, sliding gauge", "3.00", "80.00", "7.24", "7.24\u202fmm"],
    ["Edge allowance, sliding gauge", "0.00", "30.00", "1.00", "1.00\u202fmm"],
  ]);
  for (const { ring } of met) assert.equal(ring, "solid 2px");
  assert.equal(await page.locator(".gauge.held").count(), 1, "the gauge in use stands out");
  await until(page, ".hint", /Edge allowance/);
});

test("a finger slides the pitch, and the page stays where it is", async (t) => {
  const { page, problems } = await start(t, browser, site.url, hands.phone[0]);
  const grip = gauge(page, "Pitch");
  const from = await middle(grip);
  const scrolled = () => page.evaluate(() => [scrollX, scrollY, document.querySelector(".board").scrollTop]);
  const before = await scrolled();
  const client = await page.context().newCDPSession(page);
  const touch = (type, x, y) =>
    client.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y }] });
  await touch("touchStart", from.x, from.y);
  for (let step = 1; step <= 8; step++) await touch("touchMove", from.x + 3 * step, from.y - step);
  await page.waitForFunction(() => document.querySelector(".verdict strong").textContent !== "10 pencils");
  assert.ok((await value(grip)) > 8, "under the finger");
  await touch("touchEnd");
  assert.deepEqual(await scrolled(), before);
  await button(page, "Undo").click();
  assert.equal(await pencils(page), "10 pencils");
  assert.equal(await button(page, "Undo").isDisabled(), true);
  // A swipe up that begins on a gauge scrolls the page, and slides nothing.
  await touch("touchStart", from.x, from.y);
  for (let step = 1; step <= 8; step++) await touch("touchMove", from.x, from.y - 12 * step);
  await touch("touchEnd");
  assert.equal(await pencils(page), "10 pencils");
  assert.equal(await button(page, "Undo").isDisabled(), true);
  // A touch that the browser takes for itself leaves nothing behind.
  const again = await middle(grip);
  await touch("touchStart", again.x, again.y);
  for (let step = 1; step <= 8; step++) await touch("touchMove", again.x + 3 * step, again.y);
  await page.waitForFunction(() => document.querySelector(".verdict strong").textContent !== "10 pencils");
  await client.send("Input.dispatchTouchEvent", { type: "touchCancel", touchPoints: [] });
  await page.waitForFunction(() => document.querySelector(".verdict strong").textContent === "10 pencils");
  assertQuiet(problems);
});

test("a gauge is there when no pencil fits, and slides back", async (t) => {
  const { page } = await start(t, browser, site.url);
  await field(page, "Edge allowance").fill("30");
  assert.equal(await pencils(page), "1 pencil");
  await field(page, "Slat width").fill("40");
  assert.equal(await pencils(page), "0 pencils");
  const grip = gauge(page, "Edge allowance");
  await grip.focus();
  await page.keyboard.press("Home");
  assert.notEqual(await pencils(page), "0 pencils");
});

test("no gauge is left on paper, nor on a drawing that is out of date", async (t) => {
  const { page } = await start(t, browser, site.url);
  await field(page, "Slat width").fill("wide");
  assert.equal(await page.locator(".gauge, .grip").count(), 0);
  await field(page, "Slat width").fill("74");
  assert.equal(await page.locator(".grip").count(), 2);
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.locator(".grip:visible, .gauge path:visible").count(), 0);
});
