// Runs beside the page in the folder form and hands out the files of one version,
// so that the page opens without a network. A newer version is fetched into a
// cache of its own and offered; which version is handed out stands in a record
// that only the user's consent changes. These few lines are always the newest.
/* global FILES, VERSION */

const OURS = `boxwright ${registration.scope} `; // other pages of the host have caches too
const RECORD = `${OURS}in use`;
const cacheOf = (version) => OURS + version;

// inUse is the version that is handed out; undefined before the first is kept.
async function inUse() {
  const record = await caches.match("in-use", { cacheName: RECORD });
  return record && record.text();
}

const use = async () => (await caches.open(RECORD)).put("in-use", new Response(VERSION));

addEventListener("install", (e) => {
  skipWaiting();
  e.waitUntil(install());
});

async function install() {
  const cache = await caches.open(cacheOf(VERSION));
  await Promise.all(FILES.map((file) => keep(cache, ...file)));
  const core = FILES.find(([name]) => name.endsWith(".bin"))[0].replace(/bin$/, "wasm");
  await unpack(cache, core).catch(() => {}); // no room: it is unpacked at each start
  if (!(await inUse())) await use();
  await offer();
}

// keep fetches a file of this version. The browser refuses one whose hash is
// another, as that of a host that is just being changed.
async function keep(cache, name, integrity) {
  const get = (mode) => fetch(name, { cache: mode, integrity });
  await cache.put(name, await get("no-cache").catch(() => get("reload")));
}

// unpack gives the core as the browser compiles it and keeps it beside the packed
// one: what is fetched from there the browser need not compile again.
async function unpack(cache, url) {
  const packed = await cache.match(url.replace(/wasm$/, "bin"));
  const bytes = await new Response(packed.body.pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
  const core = new Response(bytes, { headers: { "content-type": "application/wasm" } });
  await cache.put(url, core.clone());
  return core;
}

const windows = () => clients.matchAll({ type: "window", includeUncontrolled: true });

// offer tells the windows of a version that waits for consent. It needs no activation:
// a browser may put that off for minutes, and all but the record is alike in every
// version.
async function offer(to) {
  if ((await inUse()) === VERSION) return;
  for (const w of to ? [to] : await windows()) w.postMessage("offer");
}

addEventListener("message", (e) => {
  if (e.data === "ask") e.waitUntil(offer(e.source));
  if (e.data === "use") e.waitUntil(agree());
  if (e.data === "started") e.waitUntil(sweep());
});

async function agree() {
  await use();
  for (const w of await windows()) w.postMessage("used");
}

addEventListener("fetch", (e) => {
  const { request } = e;
  if (request.method !== "GET" || !request.url.startsWith(registration.scope)) return;
  e.respondWith(answer(request));
});

// answer looks in the version in use, then in the others for a window that still
// runs one of them: but for the page itself, files are named by their content.
async function answer(request) {
  const url = request.mode === "navigate" ? registration.scope : request.url;
  const cacheName = cacheOf(await inUse());
  const core = url.endsWith(".wasm");
  if (request.cache !== "reload" || request.mode === "navigate") {
    const kept =
      (await caches.match(url, { ignoreSearch: true, cacheName })) || (await caches.match(url, { ignoreSearch: true }));
    if (kept) return kept;
  }
  return core ? unpack(await caches.open(cacheName), url) : fetch(request);
}

// sweep drops what neither is in use nor waits for consent, when a window has started and
// no other can need it: one that starts while files go may wait for its own for minutes
// (seen in Chromium). The newest version does it, active or not yet: only that one knows
// its own files.
async function sweep() {
  const { installing, waiting } = registration;
  if (installing || (waiting && waiting !== globalThis.serviceWorker) || (await windows()).length > 1) return;
  const stay = [RECORD, cacheOf(VERSION), cacheOf(await inUse())];
  for (const name of await caches.keys()) if (name.startsWith(OURS) && !stay.includes(name)) await caches.delete(name);
}
