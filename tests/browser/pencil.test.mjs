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

const facts = (page, name) => page.locator(".finished tr", { hasText: name }).locator("td").last().textContent();

/** What the picture looks like once the page has drawn it. */
async function picture(page) {
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
  return (await page.locator(".pencil-picture canvas").screenshot()).toString("base64");
}

test("the pencil is drawn, and turned by keys, mouse and buttons", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "barrel");
  const canvas = page.locator(".pencil-picture canvas");
  await canvas.scrollIntoViewIfNeeded();
  assert.match(await canvas.getAttribute("aria-label"), /^Hexagonal pencil, .* sharpened to 22\.0°/);
  const first = await picture(page);
  await canvas.focus();
  await page.keyboard.press("ArrowRight");
  const swung = await picture(page);
  assert.notEqual(swung, first);
  await page.keyboard.press("Home");
  assert.equal(await picture(page), first, "Home brings the view back, to the last pixel");
  const box = await canvas.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2 + 20);
  await page.mouse.up();
  assert.notEqual(await picture(page), first);
  await page.getByRole("button", { name: "Point", exact: true }).click();
  assert.equal(await picture(page), first);
  await page.getByRole("button", { name: "Roll upwards" }).click();
  assert.notEqual(await picture(page), first);
  assert.equal(await canvas.evaluate((element) => getComputedStyle(element).touchAction), "pan-y");
  assertQuiet(problems);
});

test("what is typed is told and drawn; what cannot be keeps the last good pencil, marked", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "barrel");
  // Across corners 7.93 of the rounded hexagon less 7, over 2·tan 11°.
  assert.equal(await facts(page, "Depth of the scallops"), "2.39\u202fmm");
  await field(page, "Point angle").fill("30");
  await until(page, ".finished tr", "1.73");
  await field(page, "Point angle").fill("abc");
  await until(page, ".finished.stale .problem", "From before the last change");
  assert.equal(await facts(page, "Depth of the scallops"), "1.73\u202fmm");
  await field(page, "Point angle").fill("24");
  await page.locator(".finished:not(.stale)").waitFor();
  await page.getByLabel("Colour of the coat").fill("#8a1c2b");
  await until(page, ".finished tr", "Mass");
  await page.waitForFunction(() => document.querySelector('.finished svg path.filled[fill="#8a1c2b"]'));
  assertQuiet(problems);
});

test("without three dimensions the drawing stands for the picture", async (t) => {
  const context = await browser.newContext();
  t.after(() => context.close());
  const page = await context.newPage();
  await page.addInitScript(() => {
    const real = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (kind, ...more) {
      return kind === "webgl2" ? null : real.call(this, kind, ...more);
    };
  });
  await page.goto(site.url);
  await goTo(page, "barrel");
  await until(page, ".finished .hint", "draws nothing in three dimensions");
  assert.equal(await page.locator(".pencil-picture").isVisible(), false);
  assert.equal(await page.locator(".finished svg.true-size").isVisible(), true);
});

test("a graphics card that is lost and comes back draws the same pencil", async (t) => {
  const { page } = await start(t, browser, site.url);
  await goTo(page, "barrel");
  const canvas = page.locator(".pencil-picture canvas");
  await canvas.scrollIntoViewIfNeeded();
  const first = await picture(page);
  await canvas.evaluate(async (element) => {
    const card = element.getContext("webgl2").getExtension("WEBGL_lose_context");
    const back = new Promise((told) => element.addEventListener("webglcontextrestored", told, { once: true }));
    card.loseContext();
    await new Promise((later) => setTimeout(later, 100));
    card.restoreContext();
    await back;
  });
  assert.equal(await picture(page), first);
});

test("the finished pencil keeps the rules of accessibility, on a phone too", async (t) => {
  for (const options of [{}, { viewport: { width: 390, height: 844 }, colorScheme: "dark" }]) {
    const { page } = await start(t, browser, site.url, options);
    await goTo(page, "barrel");
    await page.locator(".finished canvas").scrollIntoViewIfNeeded();
    assert.deepEqual(await broken(page), []);
  }
});
