// Keeps the page on the device, so that it opens without a network, and always as one whole version.
//
// `finish.mjs` writes two constants above this text when the page is built: FILES, the path and content hash of each file
// of the page, and VERSION, the hash of all of it. A browser that finds this script changed installs the new one beside
// the old; it takes over only when the page says so, or once no page is open any more.

// The folder is part of the name: another copy of the page on the same host keeps its own.
const OWN_CACHES = `noonday ${registration.scope} `;
const CACHE = OWN_CACHES + VERSION;

const PAGE = new URL("./", registration.scope).href;
const KEPT = new Map(Object.keys(FILES).map((path) => [new URL(path, registration.scope).href, path]));
KEPT.set(`${PAGE}index.html`, "./");

addEventListener("install", (event) => event.waitUntil(keepFiles()));

addEventListener("activate", (event) => event.waitUntil(forgetOlder().then(() => clients.claim())));

addEventListener("message", ({ data }) => {
  if (data === "take over") skipWaiting();
});

addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  const path = KEPT.get(url.split(/[?#]/, 1)[0]);
  if (method === "GET" && path !== undefined) event.respondWith(kept(path, event.request));
});

// The hashes make it all or nothing: in the middle of an upload, old and new files are never kept together.
async function keepFiles() {
  const cache = await caches.open(CACHE);
  await cache.addAll(Object.entries(FILES).map(([path, integrity]) => new Request(path, { integrity, cache: "no-cache" })));
}

async function forgetOlder() {
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(OWN_CACHES) && name !== CACHE);
  await Promise.all(older.map((name) => caches.delete(name)));
}

// A browser short of room may have thrown the files away.
async function kept(path, request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(path, { ignoreVary: true })) ?? fetch(request);
}
