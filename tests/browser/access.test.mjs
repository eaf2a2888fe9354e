import assert from "node:assert/strict";
import test, { after, before } from "node:test";
import { broken, field, goTo, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const sizes = {
  desktop: { viewport: { width: 1280, height: 800 } },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
};

for (const [size, options] of Object.entries(sizes)) {
  for (const colorScheme of ["light", "dark"]) {
    test(`no accessibility rule is broken: ${size}, ${colorScheme}`, async (t) => {
      const { page } = await start(t, browser, site.url, { ...options, colorScheme });
      for (const place of ["layout", "barrel", "tolerances", "setting", "planks", "timber", "orders"]) {
        await goTo(page, place);
        if (place === "timber") await until(page, ".proof", /./);
        if (place === "layout") await until(page, ".ranking tbody tr", /./);
        if (place === "tolerances") await until(page, ".positions tbody tr", /./);
        assert.deepEqual(await broken(page), [], place);
        const overhang = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.ok(overhang <= 0, `${place} is ${overhang} px too wide`);
      }
      await goTo(page, "layout");
      await field(page, "Coat").fill("thick");
      await until(page, ".problems li", "Coat");
      assert.deepEqual(await broken(page), [], "with a problem");
    });
  }
}

test("everything that is pressed or typed in is large enough for a finger", async (t) => {
  const { page } = await start(t, browser, site.url, sizes.tablet);
  for (const place of ["layout", "barrel", "tolerances", "setting", "planks", "timber", "orders"]) {
    await goTo(page, place);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll("button, select, input:not([type=radio], [type=checkbox], [type=file]), nav a, label.choice")]
        .map((element) => [element, element.getBoundingClientRect()])
        .filter(([, box]) => box.width > 0 && (box.height < 40 || box.width < 40))
        .map(([element, box]) => `${element.id || element.textContent}: ${box.width.toFixed(0)} × ${box.height.toFixed(0)}`),
    );
    assert.deepEqual(small, [], place);
  }
});

test("at twice the size nothing runs off the page", async (t) => {
  const { page } = await start(t, browser, site.url, { viewport: { width: 640, height: 400 } });
  for (const place of ["layout", "barrel", "tolerances", "setting", "planks", "timber", "orders"]) {
    await goTo(page, place);
    const overhang = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(overhang <= 0, `${place} is ${overhang} px too wide`);
  }
});

test("the drawing in words says what the drawing shows", async (t) => {
  const { page } = await start(t, browser, site.url);
  const words = () => page.locator(".layout-place .sheet svg desc").textContent();
  assert.match(await words(), /10 hexagonal barrels/);
  await field(page, "Slat width").fill("60");
  assert.match(await words(), /8 hexagonal barrels/);
});

test("on paper the drawing shows its numbers itself, and nothing is left to press", async (t) => {
  const { page } = await start(t, browser, site.url);
  await page.emulateMedia({ media: "print" });
  const numbers = await page.locator(".layout-place .sheet .drives text").evaluateAll((texts) =>
    texts
      .filter((text) => text.getBoundingClientRect().width > 0)
      .map((text) => text.textContent.replace(text.querySelector("title").textContent, "")),
  );
  assert.ok(numbers.includes("74.00") && numbers.includes("0.40"), numbers.join(", "));
  assert.equal(await page.locator(".driving:visible").count(), 0);
  assert.equal(await page.getByRole("button", { name: "Undo" }).isVisible(), false);
  assert.equal(await page.locator(".grooves tbody tr").first().isVisible(), true);
  const pdf = await page.pdf({ format: "A4" });
  assert.ok(pdf.length > 20_000, `${pdf.length} bytes`);
});
