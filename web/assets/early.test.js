// What runs before anything is painted, without a browser: the script once more for each page.
import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";

let pages = 0;
const workers = [];
const frames = [];
const heard = {};

/** opened runs the script in a page with an address, its own data and something kept or not. */
async function opened(hash, dataset = {}, kept = "", navigator = {}) {
  const store = { "boxwright.screen": kept };
  Object.assign(globalThis, {
    window: globalThis,
    location: { hash },
    localStorage: { getItem: (key) => store[key] || null },
    document: { baseURI: "https://quotes.example/a/", currentScript: { dataset }, documentElement: { dataset: {} } },
    addEventListener: (kind, f, first) => (heard[kind] = first && f),
    requestAnimationFrame: (f) => (frames.push(f), 0),
    Worker: class {
      posted = [];

      constructor(address) {
        this.address = address;
        workers.push(this);
      }

      postMessage(message) {
        this.posted.push(message);
      }
    },
  });
  Object.defineProperty(globalThis, "navigator", { value: navigator, configurable: true });
  await import(`./early.js?page=${pages++}`);
  return document.documentElement.dataset.opening;
}

/** painted lets the page's first picture be drawn. */
async function painted() {
  for (const f of frames.splice(0)) f();
  await new Promise((done) => setTimeout(done));
}

beforeEach(() => {
  workers.splice(0);
  frames.splice(0);
});

test("which screen may be seen first", async () => {
  assert.equal(await opened(""), undefined, "a new visitor sees the page as it was built");
  assert.equal(await opened("#q=AAAA"), "link");
  assert.equal(await opened("", {}, "{}"), "kept");
  assert.equal(await opened("#q=AAAA", {}, "{}"), "link", "a link goes before what is kept");
});

test("what is pressed is held in its order until the page attends to it", async () => {
  await opened("");
  for (const [kind, name] of [["click", "a"], ["change", "b"], ["click", "c"]]) heard[kind](name);
  assert.deepEqual(globalThis.early.pressed, ["a", "b", "c"]);
  delete globalThis.early.pressed;
  heard.click("d"); // is no longer held
});

test("the folder form sets its core off, unpacked where that is kept; what the worker says is held", async () => {
  const form = { firstWorker: "worker.1.js", firstCore: "core.1.bin", version: "v1" };
  await opened("", form);
  await opened("", form, "", { serviceWorker: { controller: {} } });
  const [plain, kept] = workers;
  assert.deepEqual([plain.posted, kept.posted], [[], []], "the first picture goes before the core");
  await painted();
  assert.equal(plain.address, "https://quotes.example/a/worker.1.js");
  assert.equal(plain.posted.length, 1);
  assert.equal(plain.posted[0].core.packed, "https://quotes.example/a/core.1.bin");
  assert.ok(!plain.posted[0].core.unpacked);
  assert.equal(kept.posted[0].core.unpacked, "https://quotes.example/a/core.1.wasm");
  const { early } = globalThis;
  assert.deepEqual([early.version, early.worker], ["v1", kept]);
  kept.onmessage("ready");
  assert.deepEqual(early.heard, ["ready"]);
});

test("a page that is never painted sets its core off all the same, and only once", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  await opened("", { firstWorker: "worker.1.js", firstCore: "core.1.bin" });
  t.mock.timers.tick(400);
  assert.equal(workers[0].posted.length, 1);
  for (const f of frames.splice(0)) f();
  t.mock.timers.tick(400);
  assert.equal(workers[0].posted.length, 1);
});

test("the single file sets off no core of its own", async () => {
  await opened("");
  assert.deepEqual(workers, []);
});
