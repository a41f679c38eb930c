// Keeps the program for offline use: every file of one build together, under that build's name. A new build is fetched beside the old one
// and waits until the page lets it in; pages that are open go on with the files they began with. Answers of an API, shared links and anything
// else that is no file of the program are never kept.
self.importScripts("./service-worker-assets.js");

const name = "tautline " + self.assetsManifest.version;
const base = new URL("./", self.location);
const page = new URL("index.html", base).href;
const notKept = [/^service-worker/, /\.(pdb|gz|br|map)$/, /^_framework\/.*\.symbols$/];
const known = self.assetsManifest.assets.filter((file) => !notKept.some((pattern) => pattern.test(file.url)));
// The reader of PDF is as large as all the rest of the drawing and few need it: it is kept from its first use on.
const keptOnUse = /^scripts\/(pdf|pdfworker|jbig2|openjpeg)\./;
const files = known.filter((file) => !keptOnUse.test(file.url));
const late = new Set(known.filter((file) => keptOnUse.test(file.url)).map((file) => new URL(file.url, base).href));
const addresses = new Set(known.map((file) => new URL(file.url, base).href));

self.addEventListener("install", (event) => event.waitUntil(fetchAll()));
self.addEventListener("activate", (event) => event.waitUntil(clearOthers()));
self.addEventListener("message", (event) => { if (event.data === "let in") self.skipWaiting(); });
self.addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  const asked = new URL(event.request.url);
  const wanted = event.request.mode === "navigate" && asked.href.split(/[?#]/)[0] === base.href ? page : asked.href;
  if (addresses.has(wanted)) event.respondWith(answer(wanted, event.request));
});

async function fetchAll() {
  const cache = await caches.open(name);
  // What is already kept of another build and has the same content need not be fetched again.
  await Promise.all(files.map(async (file) => {
    const address = new URL(file.url, base).href;
    const same = file.hash && await sameInAnother(address);
    if (same) return cache.put(address, same);
    const got = await fetch(new Request(address, { integrity: file.hash, cache: "no-cache" }));
    if (!got.ok) throw new Error(`${file.url}: ${got.status}`);
    return cache.put(address, got);
  }));
}

// Only addresses that hold a digest of their content may be taken from another build unread.
async function sameInAnother(address) {
  return /\.[a-z0-9]{10}\.(wasm|js|mjs|dat)$/.test(address) ? caches.match(address) : undefined;
}

async function clearOthers() {
  for (const key of await caches.keys()) if (key.startsWith("tautline ") && key !== name) await caches.delete(key);
}

async function answer(address, request) {
  const cache = await caches.open(name);
  const kept = await cache.match(address);
  if (kept || !late.has(address)) return kept ?? fetch(request);
  const got = await fetch(request);
  if (got.ok) await cache.put(address, got.clone());
  return got;
}
