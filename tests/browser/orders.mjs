// The place of the orders as a person uses it: plans it, reads its tables, opens projects.

import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { until } from "./bench.mjs";

export const number = (text) => Number(text.replace(/[^\d.]/g, ""));
export const button = (page, name) => page.getByRole("button", { name, exact: true });

/** The texts of all tables with a label, row by row. */
export const rows = (page, label, part = "tbody") =>
  page.getByRole("group", { name: label }).locator(`${part} tr`).evaluateAll((rows) =>
    rows.map((row) => [...row.cells].map((cell) => cell.textContent)),
  );

/** Plans the orders and waits for the plan. */
export async function plan(page, again = "Plan the orders") {
  await button(page, again).click();
  await page.locator(".plan .proof").waitFor({ timeout: 100_000 });
}

/** Opens the project of the page with a change. */
export async function open(page, change) {
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Save a copy").click()]);
  const project = JSON.parse(await readFile(await download.path(), "utf8"));
  change(project);
  const file = join(tmpdir(), `slatwright-${process.pid}-orders.json`);
  await writeFile(file, JSON.stringify(project));
  await page.getByLabel("Project file to open").setInputFiles(file);
  await until(page, ".notice", "Opened");
}

/** Many kinds of slat and pencil over many periods: a plan comes soon, and no proof within a minute. */
export function manyKinds(project) {
  const [slat, barrel] = [project.slats[0], project.barrels[0]];
  project.slats = Array.from({ length: 14 }, (_, at) => ({ ...slat, id: 200 + at, name: `Stock ${at}`, width_mm: 63 + at }));
  project.barrels = Array.from({ length: 9 }, (_, at) => ({ ...barrel, id: 300 + at, name: `Pencil ${at}`, size_mm: 6.6 + 0.1 * at }));
  Object.assign(project.layout, { barrel: 300, top: 200, bottom: 200 });
  project.cutter_sets = [];
  project.saw_shop.blanks = [];
  const supply = project.supply;
  supply.sawn_slats = [];
  supply.periods = Array.from({ length: 12 }, (_, at) => ({ name: `Week ${at + 1}`, machine_hours: 60 }));
  supply.offers = project.slats.flatMap((slat, at) =>
    [0, 1].map((which) => ({
      ...supply.offers[which],
      id: 400 + 2 * at + which,
      slat: slat.id,
      pack_slats: 397 + 53 * ((at * 7) % 11),
      tiers: [
        { from_packs: 1, pack_price: 81.37 + 7.91 * ((at * 5) % 13) + which },
        { from_packs: 9 + at, pack_price: 77.11 + 7.91 * ((at * 5) % 13) },
      ],
    })),
  );
  project.orders = Array.from({ length: 60 }, (_, at) => ({
    barrel: 300 + (at % 9),
    gross: 17 + ((at * 13) % 41),
    due_period: 1 + (at % 12),
    on_hand_pencils: 0,
  }));
}
