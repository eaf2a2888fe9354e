// The gauges in every hand: large enough to be hit, covered by nothing, and within the rules of
// accessibility, light and dark.

import assert from "node:assert/strict";
import test, { after, before } from "node:test";
import { broken, gauge, hands, middle, start } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

for (const [hand, [options, least]] of Object.entries(hands)) {
  test(`a gauge can be hit and breaks no accessibility rule: ${hand}`, async (t) => {
    for (const colorScheme of ["light", "dark"]) {
      const { page } = await start(t, browser, site.url, { ...options, colorScheme });
      for (const name of ["Pitch", "Edge allowance"]) {
        const grip = gauge(page, name);
        await grip.scrollIntoViewIfNeeded();
        const box = await grip.boundingBox();
        assert.ok(box.width >= least && box.height >= least, `${name}: ${box.width} × ${box.height}`);
        const hit = await page.evaluate(
          ({ x, y }) => document.elementFromPoint(x, y).getAttribute("aria-label"),
          await middle(grip),
        );
        assert.ok(hit?.startsWith(name), `${name} is covered by ${hit}`);
        await grip.focus();
        await page.keyboard.press("Shift+ArrowRight");
        assert.deepEqual(await broken(page), [], `${name}, ${colorScheme}`);
      }
    }
  });
}
