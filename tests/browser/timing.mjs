// How long one step of a dimension takes on the page, beside the least any page could do: putting
// a ready-made drawing of the same size into the document. Prints a ratio; it is no test.

import { field, ready } from "./bench.mjs";
import { launch, open } from "./launch.mjs";
import { serve } from "./serve.mjs";

const STEPS = 200;

const [browser, site] = await Promise.all([launch(), serve()]);
const { page } = await open(browser, site.url, { viewport: { width: 1280, height: 800 } });
await ready(page);
await field(page, "Slat width").focus();

const times = await page.evaluate(async (steps) => {
  const input = document.activeElement;
  const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set;
  const settled = () =>
    new Promise((done) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = done;
      port2.postMessage(null);
    });
  const timed = async (work) => {
    const start = performance.now();
    await work();
    document.body.getBoundingClientRect(); // the layout of the page belongs to the step
    return performance.now() - start;
  };
  const ready = document.querySelector(".sheet svg").outerHTML;
  const shelf = document.body.appendChild(document.createElement("div"));
  const ours = [];
  const plain = [];
  for (let step = 0; step < steps; step++) {
    ours.push(
      await timed(() => {
        put.call(input, (60 + step / 10).toFixed(1));
        input.dispatchEvent(new Event("input", { bubbles: true }));
        return settled();
      }),
    );
    plain.push(await timed(() => ((shelf.innerHTML = ready), settled())));
  }
  shelf.remove();
  return { ours, plain };
}, STEPS);

const share = (values, part) => [...values].sort((a, b) => a - b)[Math.floor(part * (values.length - 1))];
const tell = (name, values) =>
  console.log(`${name.padEnd(34)} median ${share(values, 0.5).toFixed(2)} ms, 95 % ${share(values, 0.95).toFixed(2)} ms`);
tell("one step of the slat width", times.ours);
tell("a ready-made drawing put in place", times.plain);
console.log(`ratio of the medians ${(share(times.ours, 0.5) / share(times.plain, 0.5)).toFixed(1)}`);
await browser.close();
await site.close();
