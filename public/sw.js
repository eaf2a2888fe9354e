// Keeps one whole build of the page, so that it starts without a network.
//
// The build writes its id and the list of its files into the next two constants. In a debug
// build they stay as they are: then nothing is kept and nothing is answered from here.
const BUILD = "__BUILD__";
const FILES = ["__FILES__"];

const DEBUG = BUILD.startsWith("_");
const SCOPE = self.registration.scope;
const FAMILY = `slatwright ${SCOPE} `; // other pages of the same host keep their own
const CACHE = FAMILY + BUILD;

// All or nothing: if one file cannot be had, the build before this one stays in charge.
async function install() {
  if (DEBUG) return self.skipWaiting(); // a developer wants the newest files, not the kept ones
  const cache = await caches.open(CACHE);
  try {
    // "reload" goes past the browser's own cache, so that no older file slips in.
    await cache.addAll(FILES.map((file) => new Request(file, { cache: "reload" })));
  } catch (reason) {
    await caches.delete(CACHE);
    throw reason;
  }
}

async function activate() {
  const old = (await caches.keys()).filter((name) => name.startsWith(FAMILY) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request, address) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true, ignoreVary: true });
  if (kept) return kept;
  // An unknown address of ours is the page, which has only one.
  if (request.mode === "navigate") return Response.redirect(new URL(address.search, SCOPE));
  return fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(install()));

self.addEventListener("activate", (event) => event.waitUntil(activate()));

self.addEventListener("message", (event) => {
  // Never unasked: an open page must not get the worker of a newer build.
  if (event.data === "SKIP_WAITING") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (DEBUG || !address.protocol.startsWith("http")) return;
  if (address.origin !== self.location.origin) {
    event.respondWith(Response.error()); // the page asks no other host
  } else if (request.method === "GET") {
    event.respondWith(answer(request, address));
  }
});
