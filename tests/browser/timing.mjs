// How long one step of a dimension takes on the page, beside the least any page could do: putting
// a ready-made drawing of the same size into the document. Then the script of one step of a gauge
// that is slid with the mouse. Prints what it finds; it is no test.

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
  console.log(`${name.padEnd(36)} median ${share(values, 0.5).toFixed(2)} ms, 95 % ${share(values, 0.95).toFixed(2)} ms`);
tell("one step of the slat width", times.ours);
tell("a ready-made drawing put in place", times.plain);
console.log(`ratio of the medians ${(share(times.ours, 0.5) / share(times.plain, 0.5)).toFixed(1)}`);

/**
 * What the events of a trace spend in script, ms; what is nested counts once. Once by the clock,
 * and once by the processor, which leaves out what others do on this machine meanwhile.
 */
function scriptOf(events) {
  const names = new Set(["EventDispatch", "FunctionCall", "RunMicrotasks", "TimerFire", "FireAnimationFrame"]);
  const script = events.filter(({ name, dur }) => names.has(name) && dur > 0);
  const covered = (start, length) => {
    const spans = script.map((event) => [event[start], event[length] ?? 0]).sort(([one], [other]) => one - other);
    let [total, end] = [0, -Infinity];
    for (const [from, span] of spans) {
      total += Math.max(0, from + span - Math.max(from, end));
      end = Math.max(end, from + span);
    }
    return total / 1000;
  };
  return { clock: covered("ts", "dur"), processor: covered("tts", "tdur") };
}

/** Slides a gauge to and fro with the mouse, px; the script of each step. */
async function slide(name, reach) {
  const grip = page.getByRole("slider", { name: new RegExp(`^${name}`) });
  const box = await grip.boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await browser.startTracing(page, { categories: ["devtools.timeline"] });
  for (let step = 1; step <= STEPS; step++) {
    const phase = step % (2 * reach);
    await page.mouse.move(x + Math.min(phase, 2 * reach - phase), y);
  }
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  await page.mouse.up();
  const moves = traceEvents
    .filter((event) => event.name === "EventDispatch" && event.args.data?.type === "pointermove" && event.dur > 0)
    .sort((one, other) => one.ts - other.ts);
  return moves.map(({ ts, pid, tid }, at) => {
    const next = moves[at + 1]?.ts ?? Infinity;
    return scriptOf(traceEvents.filter((event) => event.pid === pid && event.tid === tid && event.ts >= ts && event.ts < next));
  });
}

for (const [name, reach] of [["Pitch", 40], ["Edge allowance", 60]]) {
  const steps = await slide(name, reach);
  console.log(`script of a step of the ${name.toLowerCase()}, ${steps.length} steps`);
  for (const by of ["clock", "processor"]) tell(`  by the ${by}`, steps.map((step) => step[by]));
}
await browser.close();
await site.close();
