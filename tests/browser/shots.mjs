// Pictures of every place, at three sizes, light and dark, and on paper: for eyes, not for tests.
// node shots.mjs [folder]; the page is taken from dist.

import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { launch, open } from "./launch.mjs";
import { serve } from "./serve.mjs";

const folder = process.argv[2] ?? new URL("shots", import.meta.url).pathname;
const sizes = {
  desktop: { viewport: { width: 1280, height: 800 } },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
};

/** Sets the layout aside and lays out another one. */
async function compare(page) {
  await page.getByRole("button", { name: "Set this layout aside" }).click();
  await page.getByLabel("Top slat", { exact: true }).selectOption({ label: "Wide, 78" });
  await page.getByLabel("Bottom slat", { exact: true }).selectOption({ label: "Wide, 78" });
}

await mkdir(folder, { recursive: true });
const [browser, site] = await Promise.all([launch(), serve()]);
for (const [size, options] of Object.entries(sizes)) {
  for (const colorScheme of ["light", "dark"]) {
    const { context, page, problems } = await open(browser, site.url, { ...options, colorScheme });
    for (const place of ["layout", "barrel", "tolerances", "setting", "planks", "timber", "orders"]) {
      await page.locator(`nav a[href="#${place}"]`).click();
      await page.locator(`.${place}-place`).waitFor();
      if (place === "layout") await compare(page);
      await page.waitForTimeout(1500); // the workers answer, the fonts are there
      await page.evaluate(() => scrollTo(0, 0));
      await page.screenshot({ path: join(folder, `${size}-${colorScheme}-${place}.png`) });
      await page.screenshot({ path: join(folder, `${size}-${colorScheme}-${place}-whole.png`), fullPage: true });
      if (size === "desktop" && colorScheme === "light") {
        await page.pdf({ path: join(folder, `${place}.pdf`), format: "A4" });
      }
    }
    if (problems.length > 0) console.error(size, colorScheme, problems);
    await context.close();
  }
}
await browser.close();
await site.close();
