// The talk with the worker, without a browser: workers here are spoken for by the test.
import { beforeEach, mock, test } from "node:test";
import assert from "node:assert/strict";
import { Core } from "./core.js";

/** @type {Worker[]} every worker started, in order */
let workers = [];

class Worker {
  constructor(address) {
    this.address = address;
    this.posted = [];
    this.ended = false;
    workers.push(this);
  }

  postMessage(message) {
    this.posted.push(message);
  }

  terminate() {
    this.ended = true;
  }

  says(data) {
    this.onmessage({ data });
    return turn();
  }

  requests() {
    return this.posted.filter((m) => m.request).map((m) => JSON.parse(m.request).acts);
  }
}

const turn = () => new Promise((r) => setImmediate(r));

const tag = { dataset: { worker: "worker.1.js", core: "core.1.bin" } };
const root = { baseURI: "https://quotes.example/a/", querySelector: () => tag };
Object.assign(globalThis, { window: globalThis, Worker, document: root });

beforeEach(() => {
  workers = [];
  delete globalThis.early;
  Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });
  mock.timers.reset();
  mock.timers.enable({ apis: ["setTimeout"] });
});

/** A core with what it said in trouble; the newest worker is at(-1). */
function page() {
  const said = [];
  const core = new Core(
    (text) => said.push(text),
    () => [{ acts: "preface" }],
  );
  const ask = (acts) => {
    const asked = { reply: undefined, why: undefined };
    core.ask({ acts }).then(
      (r) => (asked.reply = r),
      (e) => (asked.why = e.message),
    );
    return asked;
  };
  return { core, said, ask };
}

const id = (worker) => worker.posted.at(-1).id;
const answer = (worker, reply = {}) => worker.says({ id: id(worker), reply: JSON.stringify(reply) });

test("a request goes when the worker is ready, and its reply comes back", async () => {
  const { ask } = page();
  const [w] = workers;
  assert.equal(w.address, "https://quotes.example/a/worker.1.js");
  assert.equal(w.posted[0].core.packed, "https://quotes.example/a/core.1.bin");
  assert.ok(!w.posted[0].core.unpacked, "nobody hands it out unpacked");
  const asked = ask("first");
  await turn();
  assert.deepEqual(w.requests(), []);
  await w.says({ ready: true });
  assert.deepEqual(w.requests(), ["first"]);
  await w.says({ id: 99, reply: "{}" });
  assert.equal(asked.reply, undefined, "the reply to something else");
  await answer(w, { gist: 1 });
  assert.deepEqual(asked.reply, { gist: 1 });
});

test("what a service worker keeps unpacked is asked for", () => {
  Object.defineProperty(globalThis, "navigator", { value: { serviceWorker: { controller: {} } }, configurable: true });
  page();
  assert.equal(workers[0].posted[0].core.unpacked, "https://quotes.example/a/core.1.wasm");
});

test("a worker that was started before the page is taken over, with what it said", async () => {
  const early = new Worker("");
  globalThis.early = { worker: early, heard: [{ type: "message", data: { ready: true } }] };
  const { ask } = page();
  assert.equal(workers.length, 1);
  ask("first");
  await turn();
  assert.deepEqual(early.requests(), ["first"]);
});

test("a worker that ended behind the page's back is found out when the reader comes back", async () => {
  const { core, ask } = page();
  core.check();
  await workers[0].says({ ready: true });
  assert.equal(workers[0].posted.length, 1, "one that starts is not asked");
  const first = ask("first");
  await turn();
  core.check();
  assert.equal(workers[0].posted.length, 2, "nor one that works");
  await answer(workers[0]);
  core.check();
  assert.deepEqual(workers[0].posted.at(-1), { alive: true });
  await workers[0].says({ alive: true });
  mock.timers.tick(20000);
  assert.equal(workers.length, 1, "it is there");
  core.check();
  const pressed = ask("pressed");
  await turn();
  mock.timers.tick(3000);
  assert.ok(workers[0].ended && workers.length === 2, "it is not");
  await workers[1].says({ ready: true });
  assert.deepEqual(workers[1].requests().at(-1), "pressed");
  await answer(workers[1], { gist: 1 });
  assert.deepEqual([first.reply, pressed.reply], [{}, { gist: 1 }]);
});

test("a worker that dies is replaced; the next is told what it has to know, then asked again", async () => {
  const { ask, said } = page();
  await workers[0].says({ ready: true });
  const asked = ask("pick");
  await turn();
  await workers[0].says({ dead: "the core ended" });
  assert.ok(workers[0].ended);
  assert.equal(workers.length, 2);
  await workers[1].says({ ready: true });
  assert.deepEqual(workers[1].requests(), ["preface", "pick"]);
  await answer(workers[1], { done: 1 });
  assert.deepEqual([asked.reply, said], [{ done: 1 }, []]);
});

test("a request that kills two workers is given up, and the page goes on", async () => {
  const { ask, said } = page();
  await workers[0].says({ ready: true });
  const asked = ask("deadly");
  await turn();
  await workers[0].says({ dead: "ended" });
  await workers[1].says({ ready: true });
  await workers[1].says({ dead: "ended again" });
  assert.equal(asked.why, "ended again");
  await workers[2].says({ ready: true });
  assert.deepEqual(workers[2].requests(), ["preface"]);
  const next = ask("pick");
  await turn();
  await answer(workers[2], { done: 1 });
  assert.deepEqual([next.reply, said], [{ done: 1 }, []]);
});

test("a worker may die as often as it likes when it answers in between", async () => {
  const { ask, said } = page();
  for (let i = 0; i < 10; i++) {
    const w = workers.at(-1);
    await w.says({ ready: true });
    const asked = ask(`pick ${i}`);
    await turn();
    await answer(w, { i });
    assert.deepEqual(asked.reply, { i });
    w.onerror({ message: "gone" });
  }
  assert.deepEqual(said, []);
  assert.equal(workers.length, 11);
});

test("when one worker after another dies it is said, and no more are started", async () => {
  const { said } = page();
  for (let i = 0; i < 6; i++) workers.at(-1).onerror({});
  assert.equal(workers.length, 6);
  assert.equal(said.length, 1);
  assert.match(said[0], /cannot run in this browser \(the worker failed to start\)\. What you entered is kept/);
});

test("a program that cannot be had is said at once, and what was asked is answered", async () => {
  const { ask, said } = page();
  const asked = ask("first");
  await workers[0].says({ failed: "the host answers 404" });
  assert.match(said[0], /the host answers 404; reload the page to try again/);
  assert.match(asked.why, /404/);
  assert.equal(workers.length, 1);
});

test("a silent worker counts as dead: later while it starts and for its first answer", async () => {
  const { ask } = page();
  const first = ask("first");
  mock.timers.tick(59_000);
  assert.equal(workers.length, 1, "starting");
  await workers[0].says({ ready: true });
  mock.timers.tick(59_000);
  assert.equal(workers.length, 1, "its first answer");
  await answer(workers[0], { done: 1 });
  assert.deepEqual(first.reply, { done: 1 });
  ask("second");
  await turn();
  mock.timers.tick(19_000);
  assert.equal(workers.length, 1);
  mock.timers.tick(1_000);
  assert.equal(workers.length, 2, "a later answer");
  mock.timers.tick(60_000);
  assert.equal(workers.length, 3, "the next one does not start");
});

test("the page waits for the first core, but not long", async () => {
  const { core } = page();
  let begun = false;
  core.started.then(() => (begun = true));
  mock.timers.tick(4_900);
  await turn();
  assert.equal(begun, false);
  mock.timers.tick(100);
  await turn();
  assert.equal(begun, true);
});

test("in the one file the worker and the core are texts of the page", () => {
  const texts = { "worker-text": btoa("postMessage(1)"), "core-text": "AAAA" };
  const plain = document.querySelector;
  document.querySelector = () => null;
  document.getElementById = (name) => ({ textContent: texts[name] });
  page();
  document.querySelector = plain;
  assert.match(workers[0].address, /^blob:/);
  assert.deepEqual(workers[0].posted, [{ core: { text: "AAAA" } }]);
});
