import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, goTo, hands, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { extent, pages } from "./pdf.mjs";
import { serve } from "./serve.mjs";

let browser, site;
before(async () => ([browser, site] = await Promise.all([launch(), serve()])));
after(async () => {
  await browser?.close();
  await site?.close();
});

const number = (text) => Number(text.replace(/[^\d.]/g, ""));
const button = (page, name) => page.getByRole("button", { name, exact: true });

/** The rows of a table in a frame, by its label. */
const rows = (page, label) =>
  page.getByRole("group", { name: label, exact: true }).locator("tbody tr").evaluateAll((rows) =>
    rows.map((row) => [...row.cells].map((cell) => cell.textContent)),
  );

/** The groove centres from the datum edge, as the table has them. */
const centres = async (page) =>
  (await page.locator(".grooves tbody td").allTextContents()).map(number);

/** Presses what prints, and reads the pages that come of it. */
async function printed(page, name) {
  // The browser's own dialogue would wait for a hand.
  await page.evaluate(() => (window.print = () => (window.printed = true)));
  await button(page, name).click();
  await page.waitForFunction(() => window.printed);
  return pages(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
}

/** Opens the project of the page with a change, dropped on the page. */
async function drop(page, change) {
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Save a copy").click()]);
  const project = JSON.parse(await readFile(await download.path(), "utf8"));
  change(project);
  await page.locator("main").evaluate((target, text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], "dropped.json", { type: "application/json" }));
    const event = (name) => new DragEvent(name, { dataTransfer, bubbles: true, cancelable: true });
    if (target.dispatchEvent(event("dragover"))) throw new Error("not taken");
    target.dispatchEvent(event("drop"));
  }, JSON.stringify(project));
  await until(page, ".notice", "Opened dropped.json");
}

/** Saves a file by its button. */
async function file(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, name).click()]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

test("the feed gives the marks, and the marks the feed, by the keyboard alone", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await page.locator('nav a[href="#setting"]').focus();
  await page.keyboard.press("Enter");
  await page.locator(".setting-place").waitFor();
  const marks = () => rows(page, "Knife marks of each head");
  // With n turns and z knives the marks are 1000 v / (n z) apart.
  await field(page, "Top head: Head speed").fill("6000");
  await field(page, "Top head: Knives that cut").fill("2");
  await field(page, "Feed, m/min").focus();
  await page.keyboard.type("12");
  await page.waitForFunction(() => document.querySelectorAll(".marked tbody tr")[1].cells[3].textContent === "1.00");
  await page.keyboard.press("Tab"); // the head
  await page.keyboard.press("Tab");
  await page.keyboard.type("1.5");
  await until(page, ".wish .told", "Gives a feed of 18.00 m/min.");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  assert.equal(await field(page, "Feed, m/min").inputValue(), "18");
  assert.equal((await marks())[1][3], "1.50");
  await page.keyboard.press("Tab");
  await page.keyboard.type("9");
  await until(page, ".wish .told.problem", "Wave height must be between");
  await button(page, "Undo").click();
  assert.equal(await field(page, "Feed, m/min").inputValue(), "12");
  // The joints of a knife are folded up, and open by a key.
  const joints = page.locator(".knife").first().locator("summary");
  await joints.focus();
  await page.keyboard.press("Enter");
  assert.ok((await rows(page, "Joints of the first pencil")).length > 2);
  assertQuiet(problems);
});

test("a hook angle of 90° is refused beside its field and in the list", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  await field(page, "Top head: Hook angle").fill("90");
  await until(page, ".column .field .problem:visible", "Hook angle must be between 0 and 89");
  await until(page, ".problems li", "Top head: Hook angle must be between 0 and 89");
  await page.locator(".results.stale").waitFor();
  assert.deepEqual(await broken(page), []);
  await goTo(page, "barrel");
  await page.locator(".problems li button").click();
  await page.waitForFunction(() => document.activeElement.id === "column-Top-HookAngle");
  await page.keyboard.press("Control+A");
  await page.keyboard.type("25");
  await page.locator(".problems").waitFor({ state: "hidden" });
  await until(page, ".verdict", "10 grooves");
  assertQuiet(problems);
});

test("knives deeper than their head are refused with numbers, and nothing is saved of them", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  await field(page, "Top head: Cutting diameter").fill("20");
  await field(page, "Top head: Hook angle").fill("80");
  await until(page, ".board .problem", /Top knife is .* deep, and in a head of 10\.00/);
  assert.equal(await page.locator(".knife").count(), 0);
  await until(page, ".files .empty", "once there is a setting");
  assert.deepEqual(await broken(page), []);
  assertQuiet(problems);
});

test("without slats there is nothing to set, and that is said", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await drop(page, (project) => {
    project.slats = [];
    project.saw_shop.blanks = [];
    project.orders = [];
  });
  await goTo(page, "setting");
  await until(page, ".verdict", "Nothing to set yet");
  await until(page, ".run", "Materials are reckoned once");
  assert.deepEqual(await broken(page), []);
  assertQuiet(problems);
});

for (const [paper, [width, height], bar] of [
  ["A4", [210, 297], 100],
  ["US Letter", [215.9, 279.4], 101.6],
]) {
  test(`the gauge is true on paper within a tenth of a millimetre: ${paper}`, async (t) => {
    const { page, problems } = await start(t, browser, site.url);
    await goTo(page, "setting");
    await page.getByRole("radio", { name: paper }).check();
    const millimetres = await centres(page);
    if (bar !== 100) await button(page, "in, show lengths in inches").click();
    const [sheet, ...more] = await printed(page, "Print the gauge");
    assert.equal(more.length, 0, "one page");
    for (const [found, wanted] of [[sheet.width, width], [sheet.height, height]]) {
      assert.ok(Math.abs(found - wanted) < 0.5, `${found} for ${wanted}`);
    }
    const lines = sheet.paths.map(extent);
    const close = (one, other, room = 0.1) => Math.abs(one - other) < room;
    // The control bar is the level line as long as it says.
    assert.ok(lines.some((line) => close(line.width, bar) && line.height < 6), "the control bar");
    // The slats: two rectangles as wide as the slat is, from the datum edge on.
    const slats = lines.filter((line) => close(line.width, 74) && close(line.height, 9));
    assert.ok(slats.length >= 2, "the slats");
    const datum = slats[0].left;
    // The grooves: as wide as they are, each about its centre.
    const upright = lines.filter((line) => line.width < 0.5 && line.height > 0.5 && line.left > datum + 0.5);
    for (const centre of millimetres) {
      const near = upright.filter((line) => close((line.left + line.right) / 2 - datum, centre));
      assert.ok(near.length > 0, `no line at ${centre} mm`);
    }
    assert.ok(upright.every((line) => millimetres.some((centre) => close((line.left + line.right) / 2 - datum, centre)) || line.height <= 4.1));
    // All on the paper, within its margins.
    assert.ok(lines.every((line) => line.left > 9 && line.right < width - 9));
    assertQuiet(problems);
  });
}

test("the setting sheet is one page, with the cross-section at the scale it tells", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  await until(page, ".expected", "are expected to be good");
  for (const paper of ["A4", "US Letter"]) {
    await page.getByRole("radio", { name: paper }).check();
    const sheets = await printed(page, "Print the setting sheet");
    assert.equal(sheets.length, 1, paper);
    const told = await page.locator(".office-sheet .label").filter({ hasText: "Scale" }).textContent();
    const scale = number(told.split(":")[0]);
    const lines = sheets[0].paths.map(extent);
    const wide = lines.filter((line) => Math.abs(line.width - 74 * scale) < 0.1);
    assert.ok(wide.length > 0, `a slat at ${told}`);
  }
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".office-sheet");
  for (const words of ["Owner", "Number", "Date of issue", "Sheet", "Title", "Created by", "Approved by", "Document type", "To mind", "expected to be good"]) {
    assert.match(await sheet.textContent(), new RegExp(words));
  }
  assert.equal(await page.locator(".board:visible, .column:visible, header:visible, button:visible").count(), 0);
  assertQuiet(problems);
});

test("names of any length and script stand whole on the sheet", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  const long = `<b>${"鉛筆工場「アルダー」\u202eمصنع".repeat(40)}`.slice(0, 500);
  await drop(page, (project) => {
    project.name = long;
    project.barrels[0].name = "W".repeat(500);
    project.slats[0].name = long;
  });
  await goTo(page, "setting");
  await page.getByRole("radio", { name: "A4" }).check();
  // Three names of 500 characters may take a second page; nothing of them is cut.
  assert.ok((await printed(page, "Print the setting sheet")).length <= 2);
  await page.emulateMedia({ media: "print" });
  const cut = await page.locator(".office-sheet :is(dd, dt, td, th, li, h3, p)").evaluateAll((all) =>
    all.filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.textContent),
  );
  assert.deepEqual(cut, []);
  assert.ok((await page.locator(".title-block").textContent()).includes(long));
  assertQuiet(problems);
});

test("each knife is printed at the scale it tells, and saved at true size", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  const sheets = await printed(page, "Print the knives");
  const told = await page.locator(".knife .label").filter({ hasText: "Scale" }).allTextContents();
  assert.equal(told.length, 4);
  const lines = sheets.flatMap((sheet) => sheet.paths.map(extent));
  assert.ok(lines.some((line) => line.width > 74), "an edge across the slat");
  await page.emulateMedia({ media: "screen" });
  const dxf = await file(page, "Save as DXF: Top knife");
  assert.match(dxf.name, /-top-knife\.dxf$/);
  assert.ok(dxf.text.startsWith("0\nSECTION\n") && dxf.text.trimEnd().endsWith("EOF"));
  const svg = await file(page, "Save as SVG: Top knife");
  assert.match(svg.text, /^<svg [^>]*width="[\d.]+mm"/);
  assertQuiet(problems);
});

test("drawings and tables are saved as files that tell the same", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  const millimetres = await centres(page);
  const { name, text } = await file(page, "Setting as CSV");
  assert.match(name, /-setting\.csv$/);
  const saved = text.split("\r\n").filter((line) => line.startsWith("Centre")).map((line) => Number(line.split(",")[2]));
  assert.deepEqual(saved.map((centre) => Number(centre.toFixed(2))), millimetres);
  assert.match((await file(page, "Knives as CSV")).text, /^Knife,Joint,Across \(mm\)/);
  assert.match((await file(page, "Materials as CSV")).text, /^Material,Of,Value,Unit\r\n/);
  assert.match((await file(page, "Gauge as SVG")).text, /100 mm/);
  assert.match((await file(page, "Cross-section as SVG")).text, /Scale 2:1/);
  assert.match((await file(page, "Outline as DXF")).text, /OUTLINE/);
  assertQuiet(problems);
});

test("the counts of the stages follow each other back from the pencils wanted", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  await field(page, "Wanted").fill("100");
  for (const stage of ["Grooving", "Laying leads and gluing", "Shaping", "Coating", "Finishing and sorting"]) {
    await field(page, `${stage}: yield`).fill("100");
  }
  await until(page, ".run", "For 14\u202f400 good pencils:");
  const counts = (await rows(page, "Pieces, stage by stage")).map((row) => number(row[2]));
  assert.deepEqual(counts, [2 * 1_440, 1_440, 14_400, 14_400, 14_400]);
  await field(page, "Finishing and sorting: yield").fill("50");
  await until(page, ".run tbody tr:last-child", "28\u202f800");
  assertQuiet(problems);
});

test("the cutter set that saves most is told with its price and when it is paid for", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  await until(page, ".cutters tbody tr", "Writer head, tens");
  // No set that is owned makes the two others of the order book: 90 and 60 gross.
  await until(page, ".cutters .proof", "“Wide head, sevens” for 640.00 makes 150 gross that no owned set makes");
  await field(page, "New set price").fill("480");
  await until(page, ".cutters .proof", /The set that saves most is a set of \d+ made to measure for “.*It costs 480\.00, saves [\d.\s]+ of slats/);
  assertQuiet(problems);
});

for (const [name, [options]] of Object.entries(hands)) {
  test(`nothing breaks a rule of accessibility or runs off the page: ${name}`, async (t) => {
    const { page, problems } = await start(t, browser, site.url, { ...options, colorScheme: name === "phone" ? "dark" : "light" });
    await goTo(page, "setting");
    await until(page, ".cutters tbody tr", /./);
    await page.locator(".knife summary").first().click();
    assert.deepEqual(await broken(page), []);
    const overhang = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(overhang <= 0, `${overhang} px too wide`);
    assertQuiet(problems);
  });
}
