import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import test, { after, before } from "node:test";
import { assertQuiet, broken, field, goTo, hands, start, until } from "./bench.mjs";
import { launch } from "./launch.mjs";
import { extent, pages } from "./pdf.mjs";
import { levels, rasters, uprights } from "./raster.mjs";
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

/** Presses what prints, and takes the PDF that comes of it. */
async function pdf(page, name) {
  // The browser's own dialogue would wait for a hand.
  await page.evaluate(() => (window.print = () => (window.printed = true)));
  await button(page, name).click();
  await page.waitForFunction(() => window.printed);
  return page.pdf({ preferCSSPageSize: true, printBackground: true });
}

/** The same, read page by page. */
const printed = async (page, name) => pages(await pdf(page, name));

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
  await page.keyboard.type("25");
  await page.locator(".problems").waitFor({ state: "hidden" });
  await until(page, ".verdict", "10 grooves");
  assertQuiet(problems);
});

test("a line of the list leads to its field of the setting, and typing takes its place", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  for (const [name, wrong, right] of [
    ["Top head: Head speed", "50000", "6000"],
    ["Feed", "0", "12"],
    ["Overcut draft", "x", "8"],
    ["Wanted", "many", "7"],
    ["Grooving: yield", "0", "99"],
  ]) {
    await goTo(page, "setting");
    await field(page, name).fill(wrong);
    const id = await field(page, name).getAttribute("id");
    await goTo(page, "barrel");
    await page.locator(".problems li button").click();
    await page.locator(".setting-place").waitFor();
    await page.waitForFunction((id) => document.activeElement.id === id, id);
    await page.keyboard.type(right);
    assert.equal(await field(page, name).inputValue(), right);
    await page.locator(".problems").waitFor({ state: "hidden" });
  }
  assertQuiet(problems);
});

test("knives deeper than their head are refused with numbers, and what can be made without them is offered", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  await field(page, "Top head: Cutting diameter").fill("20");
  await field(page, "Top head: Hook angle").fill("80");
  await until(page, ".board .problem", /Top knife is .* deep, and in a head of 10\.00/);
  assert.equal(await page.locator(".knife").count(), 0);
  for (const part of [".files", ".knives", ".printing"]) {
    await until(page, `${part} .empty`, /knives.*Top knife is .* deep/i);
  }
  assert.equal(await button(page, "Print the setting sheet").isVisible(), false);
  assert.equal(await button(page, "Knives as CSV").isVisible(), false);
  assert.match((await file(page, "Gauge as SVG")).text, /100 mm/);
  assert.match((await file(page, "Cross-section as SVG")).text, /Scale 2:1/);
  assert.match((await file(page, "Outline as DXF")).text, /OUTLINE/);
  assert.equal((await printed(page, "Print the gauge")).length, 1);
  await page.emulateMedia({ media: null });
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
    const paperwork = await pdf(page, "Print the gauge");
    const [sheet, ...more] = pages(paperwork);
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
    // The same once more in the pixels of a page at 600 dpi.
    const [raster] = await rasters(paperwork);
    const long = levels(raster, 70);
    const control = long.at(-1);
    // Its two ends and its middle are marked by longer strokes than the steps between.
    const marks = uprights(raster, [control.y - 3.6, control.y - 2.6], 0.9);
    assert.equal(marks.length, 3, `${marks}`);
    assert.ok(close(marks[2] - marks[0], bar), `${marks[2] - marks[0]}`);
    assert.ok(close(marks[1] - marks[0], bar / 2), `${marks[1] - marks[0]}`);
    const wood = long.slice(0, -1);
    const drawn = uprights(raster, [wood[0].y + 0.5, wood.at(-1).y - 0.5], 0.4);
    assert.equal(drawn.length, millimetres.length + 2, "slat edges and groove centres");
    const expected = [0, ...millimetres, 74];
    for (const [at, line] of drawn.entries()) {
      assert.ok(close(line - drawn[0], expected[at]), `${line - drawn[0]} for ${expected[at]}`);
    }
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
  const [{ text }] = await rasters(await pdf(page, "Print the setting sheet"), { pixels: false });
  assert.match(text, /Sheet 1 of 1/);
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".office-sheet");
  for (const words of ["Owner", "Number", "Date of issue", "Title", "Created by", "Approved by", "Document type", "To mind", "expected to be good"]) {
    assert.match(await sheet.textContent(), new RegExp(words));
  }
  assert.equal(await page.locator(".board:visible, .column:visible, header:visible, button:visible").count(), 0);
  assertQuiet(problems);
});

/** What runs over the edge of its box on the sheet, by its text. */
const cut = (page) =>
  page.locator(".office-sheet :is(dd, dt, td, th, li, h3, p)").evaluateAll((all) =>
    all.filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.textContent),
  );

test("the sheet is one page with its gauge of 1/64 for slats as wide as can be, and in both units", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  await until(page, ".expected", "are expected to be good");
  await button(page, "in, show lengths in inches").click();
  for (const paper of ["A4", "US Letter"]) {
    await page.getByRole("radio", { name: paper }).check();
    const [sheet, ...more] = await rasters(await pdf(page, "Print the setting sheet"), { pixels: false });
    assert.equal(more.length, 0, paper);
    // 4.42 mm are 0.174 in, and 11.1 sixty-fourths; 74 mm are 2 in and 58.5 of them.
    assert.match(sheet.text, /0\.174\s+11\/64/);
    assert.match(sheet.text, /2\.913\s*·\s*2\s29\/32/);
  }
  await page.emulateMedia({ media: null });
  await button(page, "mm, show lengths in millimetres").click();
  await drop(page, (project) => (project.slats[0].width_mm = 195));
  for (const paper of ["A4", "US Letter"]) {
    await page.getByRole("radio", { name: paper }).check();
    const sheets = await printed(page, "Print the setting sheet");
    assert.equal(sheets.length, 1, paper);
    assert.ok(sheets[0].height > sheets[0].width, "upright");
    // The section is drawn at 1:2 then.
    const lines = sheets[0].paths.map(extent);
    assert.ok(lines.some((line) => Math.abs(line.width - 97.5) < 0.1), paper);
    await page.emulateMedia({ media: null });
  }
  assertQuiet(problems);
});

test("what is typed for the title block is printed, kept, and taken back by undo", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "setting");
  const typed = { Owner: "Alder Brook works", Number: 'S-0117 "b" \\', "Created by": "A. Setter", "Approved by": "B. Lead", "Date of issue": "26 Nov" };
  for (const [name, text] of Object.entries(typed)) {
    await page.getByLabel(name, { exact: true }).fill(text);
    await page.keyboard.press("Enter");
  }
  const sheet = async () => (await rasters(await pdf(page, "Print the setting sheet"), { pixels: false }))[0].text;
  const told = await sheet();
  for (const text of Object.values(typed)) assert.ok(told.includes(text), `${text} in ${told}`);
  assert.ok(told.includes("Writer, hexagonal on Seven-ply, 74"), "a title of its own");
  // The foot of the page tells the number again.
  assert.equal(told.split(typed.Number).length, 3);
  await page.emulateMedia({ media: null });
  await page.getByLabel("Title", { exact: true }).fill("Setting for the autumn run");
  await page.keyboard.press("Enter");
  assert.ok((await sheet()).includes("Setting for the autumn run"));
  await page.emulateMedia({ media: null });
  await button(page, "Undo").click();
  await button(page, "Undo").click();
  assert.equal(await page.getByLabel("Title", { exact: true }).inputValue(), "");
  assert.equal(await page.getByLabel("Date of issue", { exact: true }).inputValue(), "");
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Save a copy").click()]);
  const kept = JSON.parse(await readFile(await download.path(), "utf8"));
  assert.deepEqual(kept.title_block, {
    owner: typed.Owner, number: typed.Number, title: "", created_by: typed["Created by"], approved_by: typed["Approved by"], date_of_issue: "",
  });
  assertQuiet(problems);
});

test("names of any length and script stand whole on the sheet, whose pages are counted", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  const long = `<b>${"鉛筆工場「アルダー」\u202eمصنع".repeat(40)}`.slice(0, 500);
  await drop(page, (project) => {
    project.name = long;
    project.barrels[0].name = "W".repeat(500);
    project.slats[0].name = long;
    for (const field of Object.keys(project.title_block)) project.title_block[field] = long;
    project.title_block.title = "";
  });
  await goTo(page, "setting");
  for (const paper of ["A4", "US Letter"]) {
    await page.getByRole("radio", { name: paper }).check();
    // Eight names of 500 characters take a second page; nothing of them is cut, and every page tells.
    const sheets = await rasters(await pdf(page, "Print the setting sheet"), { pixels: false });
    for (const [at, { text }] of sheets.entries()) {
      assert.match(text, new RegExp(`Sheet ${at + 1} of ${sheets.length}`));
    }
    await page.emulateMedia({ media: "print" });
    assert.deepEqual(await cut(page), []);
    assert.ok((await page.locator(".title-block").textContent()).includes(long));
    assert.equal(await page.locator(".title-block b").count(), 0);
    await page.emulateMedia({ media: null });
  }
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
  await page.emulateMedia({ media: null });
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

for (const place of ["barrel", "layout", "tolerances", "setting", "planks", "timber"]) {
  test(`every table and drawing is a file that tells what it shows: ${place}`, async (t) => {
    const { page, problems } = await start(t, browser, site.url);
    await goTo(page, place);
    await page.waitForTimeout(1500);
    await page.locator(".place-files summary").click();
    // What the workers still answer changes what stands there.
    let [names, count, tables, drawings] = [[], () => 0, -1, -1];
    for (let looked = 0; looked < 20 && (count("CSV") !== tables || count("SVG") !== drawings); looked += 1) {
      await page.waitForTimeout(500);
      await button(page, "Look again").click();
      names = await page.locator(".place-files .actions button").allTextContents();
      count = (end) => names.filter((name) => name.endsWith(`, ${end}`)).length;
      [tables, drawings] = await page.evaluate(() =>
        ["main table", "main svg[viewBox]:not(.unseen)"].map((what) => [...document.querySelectorAll(what)].filter((each) => each.getBoundingClientRect().width > 0).length),
      );
    }
    assert.ok(tables + drawings > 0, place);
    // A browser holds back more than ten downloads in a row, so the texts are taken before that.
    await page.evaluate(() => {
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => make.call(URL, (window.saved = blob));
      HTMLAnchorElement.prototype.click = () => {};
    });
    assert.deepEqual([count("CSV"), count("SVG")], [tables, drawings], `${place}: ${names}`);
    assert.equal(new Set(names).size, names.length, `${names}`);
    for (const name of names.filter((name) => /, (CSV|SVG)$/.test(name))) {
      await page.evaluate(() => (window.saved = null));
      await button(page, name).click();
      await page.waitForFunction(() => window.saved, null, { timeout: 5_000 });
      const text = await page.evaluate(() => window.saved.text());
      assert.ok(!/NaN|undefined|\[object/.test(text), name);
      if (name.endsWith("SVG")) {
        const wrong = await page.evaluate((text) => {
          const read = new DOMParser().parseFromString(text, "image/svg+xml");
          const width = parseFloat(read.documentElement.getAttribute("width"));
          if (read.querySelector("parsererror") || !(width > 5)) return read.documentElement.outerHTML.slice(0, 300);
          return read.querySelectorAll("path, rect, line").length > 1 ? null : "empty";
        }, text);
        assert.equal(wrong, null, name);
      } else {
        const rows = text.trimEnd().split("\r\n");
        assert.ok(rows.length > 1 || place === "timber", `${name}: ${text}`);
      }
    }
    assertQuiet(problems);
  });
}

test("all files of a place are saved at once, with plain numbers in their cells", async (t) => {
  const { page, problems } = await start(t, browser, site.url);
  await goTo(page, "layout");
  await page.locator(".place-files summary").click();
  const balance = await file(page, "Where the wood of a sandwich goes, CSV");
  const shares = balance.text.split("\r\n").slice(1, -1).map((row) => row.split(","));
  assert.equal(shares.at(-1)[0], "Bought");
  assert.match(shares[0][2], /^[\d.]+$/);
  const names = new Set();
  page.on("download", (download) => names.add(download.suggestedFilename()));
  // What the workers still answer comes to stand there too.
  let [listed, before] = [0, -1];
  while (listed !== before || listed < 8) {
    await page.waitForTimeout(1_000);
    await button(page, "Look again").click();
    [listed, before] = [(await page.locator(".place-files .actions button").count()) - 2, listed];
  }
  await page.locator(".place-files .all").click();
  for (let waited = 0; waited < 50 && names.size < listed; waited += 1) await page.waitForTimeout(200);
  assert.equal(names.size, listed, `${[...names]}`);
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
