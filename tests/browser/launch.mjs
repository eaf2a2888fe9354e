// A real Chromium, and pages in it that remember every complaint.

import { chromium } from "playwright-core";

/** Starts Chromium: the one named by CHROMIUM, or Debian's. */
export function launch() {
  const asRoot = process.getuid?.() === 0; // Chromium's sandbox does not start for root
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    chromiumSandbox: !asRoot,
    args: [
      "--disable-gpu",
      "--disable-quic",
      "--disable-sync",
      "--disable-background-networking",
      "--disable-component-update",
      "--no-first-run",
    ],
  });
}

/**
 * Opens an address in a fresh profile. `problems` fills with whatever the page complains about:
 * console warnings and errors, uncaught exceptions, failed and foreign requests.
 */
export async function open(browser, url, options = {}) {
  const context = await browser.newContext(options);
  const problems = [];
  context.on("console", (message) => {
    const ofTheDriver = message.text().includes("GL Driver Message"); // the processor draws, and says it is slow
    if (["error", "warning"].includes(message.type()) && !ofTheDriver) problems.push(message.text());
  });
  context.on("weberror", (error) => problems.push(String(error.error())));
  context.on("requestfailed", (request) => {
    const reason = request.failure()?.errorText;
    const leftBehind = reason === "net::ERR_ABORTED"; // the page went on before the answer came
    if (!leftBehind) problems.push(`${request.url()}: ${reason}`);
  });
  const home = new URL(url).origin;
  context.on("request", (request) => {
    const { protocol, origin } = new URL(request.url());
    if (protocol.startsWith("http") && origin !== home) problems.push(`asked ${origin}`);
  });
  const page = await context.newPage();
  await page.goto(url);
  return { context, page, problems };
}
