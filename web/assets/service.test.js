// What the service worker keeps, hands out and drops, with the browser's caches
// and windows played by objects.
import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import vm from "node:vm";

const SCOPE = "https://host.test/boxwright/";
const source = readFileSync(new URL("./service.js", import.meta.url), "utf8");

/** the browser's caches, by name: what each holds, by address */
let stores;
/** the windows that are open, with what each was told */
let open;
/** what the host has, by name */
let host;
/** the addresses asked of the host */
let asked;

const absolute = (url) => new URL(url, SCOPE).href;
const textOf = async (response) => response && response.text();

const caches = {
  open: async (name) => {
    if (!stores.has(name)) stores.set(name, new Map());
    const store = stores.get(name);
    return {
      put: async (url, response) => void store.set(absolute(url), await response.arrayBuffer()),
      match: async (url) => (store.has(absolute(url)) ? new Response(store.get(absolute(url))) : undefined),
    };
  },
  match: async (url, { cacheName, ignoreSearch } = {}) => {
    const at = ignoreSearch ? absolute(url).split("?")[0] : absolute(url);
    for (const [name, store] of stores)
      if ((!cacheName || name === cacheName) && store.has(at)) return new Response(store.get(at));
    return undefined;
  },
  keys: async () => [...stores.keys()],
  delete: async (name) => stores.delete(name),
};

/** worker runs the service worker of a version; what it hears can be said to it. */
function worker(version, { installing = null, waiting = null, serviceWorker } = {}) {
  const heard = {};
  const registration = { scope: SCOPE, installing, waiting };
  const clients = { matchAll: async () => open };
  const fetch = async (url, options) => {
    const at = absolute(url.url || url);
    asked.push(at);
    if (!host.has(at)) throw new TypeError("not there");
    if (options?.integrity && options.integrity !== host.get(at).integrity) throw new TypeError("another hash");
    return new Response(host.get(at).body);
  };
  const name = (file) => [file, host.get(absolute(file)).integrity];
  vm.runInNewContext(source, {
    ...{ caches, clients, registration, serviceWorker, fetch, Response, DecompressionStream, Promise },
    VERSION: version,
    FILES: [name("./"), name(`core-${version}.bin`)],
    skipWaiting: () => {},
    addEventListener: (kind, fn) => (heard[kind] = fn),
  });
  /** hear gives the worker an event, waits for what it puts off, and gives its answer. */
  return async function hear(kind, event = {}) {
    const waits = [];
    let response;
    heard[kind]({ ...event, waitUntil: (p) => waits.push(p), respondWith: (p) => (response = p) });
    const answer = await response;
    await Promise.all(waits);
    return answer;
  };
}

/** publish puts a version on the host. */
function publish(version) {
  host.set(SCOPE, { body: `page ${version}`, integrity: `hash of page ${version}` });
  host.set(absolute(`core-${version}.bin`), { body: gzipSync(`core ${version}`), integrity: `hash of core ${version}` });
}

/** a window, with what it is told */
const windowOpen = () => {
  const w = { told: [], postMessage: (m) => w.told.push(m) };
  open.push(w);
  return w;
};

const page = { method: "GET", url: SCOPE, mode: "navigate", cache: "default" };
const core = (version) => ({ method: "GET", url: absolute(`core-${version}.wasm`), mode: "cors", cache: "default" });
const visit = async (hear) => textOf(await hear("fetch", { request: page }));
/** starts has a window start, which has the worker look at what can go. */
const starts = (hear) => hear("message", { data: "started" });

beforeEach(() => {
  [stores, open, host, asked] = [new Map(), [], new Map(), []];
  publish("1");
});

/** installed is version 1 in use and version 2 kept beside it; gives the worker of the latter. */
async function twoVersions() {
  await worker("1")("install");
  publish("2");
  const second = worker("2");
  await second("install");
  return second;
}

test("the first version is kept and used, its core unpacked", async () => {
  const first = worker("1");
  await first("install");
  asked = [];
  assert.equal(await visit(first), "page 1");
  assert.equal(await textOf(await first("fetch", { request: core("1") })), "core 1");
  assert.deepEqual(asked, [], "nothing is asked of the host");
});

test("a newer version waits until somebody agrees", async () => {
  const first = worker("1");
  await first("install");
  publish("2");
  const w = windowOpen();
  const second = worker("2");
  await second("install");
  assert.deepEqual(w.told, ["offer"], "before it is active");
  assert.equal(await visit(second), "page 1", "it is not used yet");
  await second("message", { data: "use" });
  assert.deepEqual(w.told, ["offer", "used"]);
  assert.equal(await visit(second), "page 2");
});

test("nothing is offered where the newest is in use", async () => {
  const w = windowOpen();
  const first = worker("1");
  await first("install");
  await first("message", { data: "ask", source: w });
  assert.deepEqual(w.told, []);
});

test("a window that asks is told alone", async () => {
  const second = await twoVersions();
  const [asks, other] = [windowOpen(), windowOpen()];
  await second("message", { data: "ask", source: asks });
  assert.deepEqual([asks.told, other.told], [["offer"], []]);
});

test("a file of another hash is not kept", async () => {
  host.get(absolute("core-1.bin")).integrity = "hash of something else";
  const files = worker("1");
  host.get(absolute("core-1.bin")).integrity = "hash of core 1";
  await assert.rejects(files("install"), /another hash/);
  assert.equal(await caches.match("in-use"), undefined, "nor is its version used");
});

test("an old version stays while another window is open, and goes when one starts alone", async () => {
  const second = await twoVersions();
  await second("message", { data: "use" });
  const old = [...stores.keys()].find((name) => name.endsWith(" 1"));
  const last = windowOpen();
  windowOpen();
  await starts(second);
  assert.ok(stores.has(old), "a window may still run it");
  assert.equal(await textOf(await second("fetch", { request: core("1") })), "core 1");
  open = [last];
  await visit(second);
  assert.ok(stores.has(old), "nothing goes while a window comes");
  await starts(second);
  assert.ok(!stores.has(old));
  assert.equal(await visit(second), "page 2");
});

test("the version in use stays, and one that waits", async () => {
  const second = await twoVersions();
  await starts(second);
  assert.equal(await visit(second), "page 1");
  await second("message", { data: "use" });
  await starts(second);
  assert.equal(await visit(second), "page 2");
});

test("nothing is dropped while another version is being fetched or waits, nor what is another page's", async () => {
  await (await twoVersions())("message", { data: "use" });
  await caches.open("somebody else's");
  const before = stores.size;
  await starts(worker("2", { installing: {} }));
  assert.equal(stores.size, before);
  await starts(worker("2", { waiting: {}, serviceWorker: {} }));
  await starts(worker("2", { waiting: {} }));
  assert.equal(stores.size, before, "what waits to be active has files too");
  const itself = {};
  await starts(worker("2", { waiting: itself, serviceWorker: itself }));
  assert.ok(stores.has("somebody else's"));
  assert.equal(stores.size, before - 1);
});

test("what is fetched past the browser's cache comes from the host, and a post is left alone", async () => {
  const first = worker("1");
  await first("install");
  asked = [];
  const fresh = { method: "GET", url: absolute("core-1.bin"), mode: "cors", cache: "reload" };
  await first("fetch", { request: fresh });
  assert.deepEqual(asked, [fresh.url]);
  assert.equal(await first("fetch", { request: { ...page, method: "POST" } }), undefined);
  assert.equal(await first("fetch", { request: { ...page, url: "https://host.test/else/" } }), undefined);
});
