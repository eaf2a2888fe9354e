// A static host without dependencies, which sends the headers of Trunk.toml.

import { readFile } from "node:fs/promises";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";

const CHECKOUT = fileURLToPath(new URL("../../", import.meta.url));

/** The built page: `dist`, or the folder named by DIST. */
export const DIST = process.env.DIST ?? join(CHECKOUT, "dist");

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
};

/** The table `[serve.headers]` of Trunk.toml. */
export const HEADERS = (() => {
  const toml = readFileSync(join(CHECKOUT, "Trunk.toml"), "utf8");
  const table = toml.split("[serve.headers]\n")[1]?.split("\n[")[0] ?? "";
  const lines = [...table.matchAll(/^"([^"]+)" = "([^"]*)"$/gm)];
  if (lines.length === 0) throw new Error("Trunk.toml has no headers to send");
  return Object.fromEntries(lines.map(([, name, value]) => [name, value]));
})();

/**
 * Serves a folder on this machine, below `base`, until closed.
 * `asked` lists the paths below `base` that were asked for, in order; `show(folder)` exchanges
 * the folder, as a host does when a new build is published.
 */
export async function serve(folder = DIST, { port = 0, base = "/" } = {}) {
  const asked = [];
  const server = createServer(async (request, response) => {
    const send = (status, headers, body) =>
      response.writeHead(status, { ...HEADERS, ...headers }).end(body);
    try {
      // Parsing resolves every "..", so the path stays below the folder.
      const path = decodeURIComponent(new URL(request.url, "http://host").pathname);
      if (!path.startsWith(base) || path.includes("\\")) throw new Error("not here");
      const name = path.slice(base.length);
      asked.push(name);
      const file = name === "" || name.endsWith("/") ? `${name}index.html` : name;
      if (file.split("/").includes("..")) throw new Error("not here");
      const body = await readFile(join(folder, file));
      send(200, { "Content-Type": TYPES[extname(file)] ?? "application/octet-stream" }, body);
    } catch {
      send(404, { "Content-Type": "text/plain; charset=utf-8" }, "not found");
    }
  });
  await new Promise((listening, failed) => {
    server.once("error", failed).listen(port, "127.0.0.1", listening);
  });
  return {
    url: `http://127.0.0.1:${server.address().port}${base}`,
    asked,
    show(next) {
      folder = next;
    },
    close() {
      server.closeAllConnections();
      return new Promise((closed) => server.close(closed));
    },
  };
}
