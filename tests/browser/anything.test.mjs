import assert from "node:assert/strict";
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

const TEXTS = [
  "", " ", "0", "-1", "1e308", "-1e308", "NaN", "inf", "1/0", "1,234", "3 in", '5/16"', "2*3.5", "((", "7.2 + 0.4",
  "0.000001", "400", "39.9", "２", "٣", "<b>7</b>", "7;7", "\u202e7", "x".repeat(500), "12", "5", "74", "60", "2.2",
];

test("three hundred random edits leave the page alive and quiet", async (t) => {
  const seed = 20260;
  t.diagnostic(`seed ${seed}`);
  const { page, problems } = await start(t, browser, site.url);
  for (const [round, place] of ["layout", "barrel", "tolerances", "planks", "timber"].entries()) {
    await goTo(page, place);
    const edits = await page.evaluate(
      async ([seed, texts]) => {
        // A small generator of its own, so that a failure can be seen again.
        let state = seed;
        const below = (count) => {
          state = (Math.imul(state, 1103515245) + 12345) >>> 0;
          return (state >>> 8) % count;
        };
        const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set;
        let done = 0;
        for (let edit = 0; edit < 100; edit++) {
          const choices = [...document.querySelectorAll(".place input[type=radio]:not(:disabled)")];
          const inputs = [...document.querySelectorAll(".place input.number")];
          if (choices.length > 0 && below(4) === 0) choices[below(choices.length)].click();
          else {
            const input = inputs[below(inputs.length)];
            input.focus();
            put.call(input, texts[below(texts.length)]);
            input.dispatchEvent(new Event("input", { bubbles: true }));
            if (below(2) === 0) input.blur();
          }
          await new Promise((settled) => setTimeout(settled));
          done++;
        }
        return done;
      },
      [seed + round, TEXTS],
    );
    assert.equal(edits, 100, place);
  }
  // Alive: the example can be laid on the bench and answers as at first.
  await page.getByRole("button", { name: "Example" }).click();
  await goTo(page, "layout");
  await until(page, ".verdict strong", "10 pencils");
  assertQuiet(problems);
});
