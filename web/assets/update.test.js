// How a new version is offered, without a browser.
import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { install } from "./update.js";

/** A node of the bar: text, buttons, and what a press does. */
class Node {
  children = [];

  replaceChildren() {
    this.children = [];
  }

  focus() {}

  append(child) {
    this.children.push(child);
  }

  addEventListener(kind, heard) {
    this[kind] = heard;
  }
}

let bar, posted, registered, reloads, says;

/** page installs the page; a service worker says things to it. */
async function page(register = async () => {}, waiting = null, started = new Promise(() => {})) {
  bar = new Node();
  [posted, registered, reloads] = [[], [], 0];
  const tag = { dataset: { service: "service.js" } };
  globalThis.document = { querySelector: () => tag, getElementById: () => bar, createElement: () => new Node() };
  globalThis.location = { reload: () => reloads++ };
  const active = { postMessage: (m) => posted.push(m) };
  const source = waiting || active;
  const serviceWorker = {
    ready: Promise.resolve({ active, waiting }),
    addEventListener: (_, heard) => (says = (data) => heard({ data, source })),
    register: (...all) => (registered.push(all), register()),
  };
  Object.defineProperty(globalThis, "navigator", { value: { serviceWorker }, configurable: true });
  install(started);
  await new Promise((r) => setImmediate(r));
}

const press = async (label) => {
  bar.children.find((c) => c.textContent === label).click();
  await new Promise((r) => setImmediate(r));
};

test("the page is installed, and asks whether a version waits", async () => {
  await page();
  assert.deepEqual(registered, [["service.js", { updateViaCache: "none" }]]);
  assert.deepEqual(posted, ["ask"]);
});

test("a version that the browser has not made active yet is asked, and told to be used", async () => {
  const told = [];
  await page(async () => {}, { postMessage: (m) => told.push(m) });
  says("offer");
  await press("Use it now");
  assert.deepEqual([posted, told], [[], ["ask", "use"]]);
});

test("a new version is used when somebody says so, and later when they say that", async () => {
  await page();
  says("offer");
  await press("Later");
  assert.deepEqual([posted, reloads, bar.hidden], [["ask"], 0, true]);
  says("offer");
  await press("Use it now");
  assert.deepEqual([posted, reloads], [["ask", "use"], 0], "it reloads when the version is in use");
  says("used");
  assert.equal(reloads, 1);
});

test("what another window agreed to is not loaded here unasked", async () => {
  await page();
  says("used");
  assert.equal(reloads, 0);
  await press("Load it here");
  assert.equal(reloads, 1);
});

test("where nothing can be installed the page works all the same", async () => {
  await page(() => Promise.reject(new Error("no secure connection")));
  assert.deepEqual(posted, []);
  document.querySelector = () => null; // the single file
  await install();
  assert.equal(registered.length, 1);
});

test("the worker is told when the page has started", async () => {
  await page(undefined, null, Promise.resolve());
  assert.deepEqual(posted, ["ask", "started"]);
});
