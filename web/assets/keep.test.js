// What the browser keeps, in a database in memory; each test has one of its own.
import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import * as last from "./last.js";
import { MAX_STEPS } from "./protocol.js";

const storage = {
  getItem(key) {
    return this[key] ?? null;
  },
  setItem(key, text) {
    this[key] = text;
  },
  removeItem(key) {
    delete this[key];
  },
};

let windows = 0;
/** open is the script as another window loads it. */
const open = async () => {
  const keep = await import(`./keep.js?window=${windows++}`);
  assert.equal(await keep.open(), true);
  return keep;
};

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  globalThis.IDBKeyRange = IDBKeyRange;
  globalThis.localStorage = Object.create(storage);
  Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });
});

const quote = (id, count, at, title, saved = "2026-11-25") => ({
  id,
  count,
  saved,
  at,
  draft: { title },
  view: null,
  pins: [],
  gist: { name: title, line: "" },
});
const step = (title) => ({ draft: { title }, said: title, when: "" });
const titles = async (keep, id) => (await keep.load(id)).steps.map((s) => s.said);

/** written saves one state after another; the count begins at 1. */
async function written(keep, id, names) {
  for (const [i, name] of names.entries()) {
    assert.equal(await keep.save(quote(id, i + 1, i, name), step(name), true), true);
  }
}

test("a quote comes back with its states, in another window too", async () => {
  const keep = await open();
  await written(keep, "q", ["a", "b", "c"]);
  const again = await (await open()).load("q");
  assert.deepEqual([again.count, again.at, again.first, again.draft.title], [3, 2, 0, "c"]);
  assert.deepEqual(
    again.steps.map((s) => s.said),
    ["a", "b", "c"],
  );
  assert.equal(await keep.load("unknown"), null);
});

test("a new state takes away those after it, one shown again does not", async () => {
  const keep = await open();
  await written(keep, "q", ["a", "b", "c"]);
  await written(keep, "r", ["x"]);
  assert.equal(await keep.save(quote("q", 4, 0, "a"), step("a"), false), true);
  assert.deepEqual(await titles(keep, "q"), ["a", "b", "c"], "an undo");
  assert.equal(await keep.save(quote("q", 5, 1, "d"), step("d"), true), true);
  assert.deepEqual(await titles(keep, "q"), ["a", "d"]);
  assert.deepEqual(await titles(keep, "r"), ["x"], "the states of another quote stay");
});

test("the oldest states go when there are too many", async () => {
  const keep = await open();
  await written(
    keep,
    "q",
    Array.from({ length: MAX_STEPS + 2 }, (_, i) => `t${i}`),
  );
  const { steps, first } = await keep.load("q");
  assert.deepEqual([steps.length, first, steps[0].said], [MAX_STEPS, 2, "t2"]);
});

test("who finds that another window wrote the quote writes nothing", async () => {
  const [keep, other] = [await open(), await open()];
  await written(keep, "q", ["a"]);
  assert.equal(await other.save(quote("q", 2, 1, "theirs"), step("theirs"), true), true);
  assert.equal(await keep.save(quote("q", 2, 1, "mine"), step("mine"), true), "taken");
  assert.equal(await keep.save(quote("new", 2, 0, "x"), step("x"), true), "taken", "a record that is gone");
  assert.deepEqual(await titles(keep, "q"), ["a", "theirs"]);
  assert.equal(await keep.load("new"), null);
});

test("the list has the last changed first; what is taken out is gone with its states", async () => {
  const keep = await open();
  const days = [
    ["old", "2026-11-01"],
    ["new", "2026-11-03"],
    ["middle", "2026-11-02"],
  ];
  for (const [id, saved] of days) await keep.save(quote(id, 1, 0, id, saved), step(id), true);
  assert.deepEqual(
    (await keep.list()).map((r) => r.id),
    ["new", "middle", "old"],
  );
  await keep.drop("middle");
  assert.deepEqual(
    (await keep.list()).map((r) => r.id),
    ["new", "old"],
  );
  await written(keep, "middle", ["again"]);
  assert.deepEqual(await titles(keep, "middle"), ["again"]);
  assert.deepEqual(await titles(keep, "old"), ["old"]);
});

test("what was on its way to the database when the window ended is written by the next", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  const unfinished = keep.save(quote("q", 2, 1, "b"), step("b"), true);
  const note = Object.entries(localStorage);
  assert.equal(note.length, 1, "a note stands at once");
  await unfinished;
  assert.deepEqual(Object.keys(localStorage), [], "and goes when it is done");

  // As if the window had ended before the database wrote.
  globalThis.indexedDB = new IDBFactory();
  await written(await open(), "q", ["a"]);
  localStorage.setItem(...note[0]);
  localStorage.setItem("boxwright.unsaved.broken", "[");
  localStorage.setItem("another page's", "stays");
  const next = await open();
  assert.deepEqual(await titles(next, "q"), ["a", "b"]);
  const [other, aside, ...more] = Object.keys(localStorage);
  assert.deepEqual([other, more], ["another page's", []]);
  assert.match(aside, /^boxwright\.aside\.broken\./);
  assert.equal(localStorage.getItem(aside), "[", "a note that cannot be read is put aside");

  localStorage.setItem(...note[0]); // carried out already
  assert.deepEqual(await titles(await open(), "q"), ["a", "b"]);
});

const ofFile = (title, more) => ({
  id: "q",
  name: title,
  line: "",
  saved: "2026-11-01",
  draft: { title },
  pins: ["p"],
  steps: [],
  at: 0,
  ...more,
});

test("a quote of a file is taken in beside what is there", async () => {
  const keep = await open();
  await keep.add(ofFile("a", { weighed: [1] }), "fresh1");
  const { count, at, first, pins, gist, steps } = await keep.load("q");
  assert.deepEqual([count, at, first, pins, gist.weighed], [1, 0, 0, ["p"], [1]]);
  assert.deepEqual(steps, [{ draft: { title: "a" }, said: "", when: "2026-11-01" }]);
  await keep.add(ofFile("a"), "fresh2");
  assert.equal((await keep.list()).length, 1, "the same is there already");
  await keep.add(ofFile("other", { steps: [step("x"), step("other"), step("y")], at: 1 }), "fresh3");
  assert.equal((await keep.load("q")).draft.title, "a", "what was there stays");
  assert.deepEqual([(await keep.load("fresh3")).at, await titles(keep, "fresh3")], [1, ["x", "other", "y"]]);
});

test("single things are kept and taken away", async () => {
  const keep = await open();
  assert.equal(await keep.get("catalogue"), undefined);
  assert.equal(await keep.put("catalogue", "{}"), true);
  assert.equal(await (await open()).get("catalogue"), "{}");
  assert.equal(await keep.put("catalogue", undefined), true);
  assert.equal(await keep.get("catalogue"), undefined);
});

test("sealed files stand apart", async () => {
  const keep = await open();
  assert.deepEqual([keep.loadCosts(), keep.loadKey()], ["", { sealed: "", open: "" }]);
  assert.equal(keep.saveCosts("sealed"), true);
  assert.equal(keep.saveKey("k", "o"), true);
  const again = await open();
  assert.deepEqual([again.loadCosts(), again.loadKey()], ["sealed", { sealed: "k", open: "o" }]);
  keep.saveKey("", "o");
  keep.saveCosts("");
  assert.deepEqual(Object.keys(localStorage), []);
});

test("a browser that refuses storage keeps nothing, and everything says so", async () => {
  globalThis.indexedDB = {
    open: () => {
      throw new Error("refused");
    },
  };
  globalThis.localStorage = {
    getItem: () => {
      throw new Error("refused");
    },
  };
  const keep = await import("./keep.js?refused");
  assert.equal(await keep.open(), false);
  assert.deepEqual([await keep.list(), await keep.load("q"), await keep.get("last")], [[], null, undefined]);
  assert.equal(await keep.put("last", "q"), false);
  assert.equal(await keep.save(quote("q", 1, 0, "a"), step("a"), true), false);
  await assert.rejects(keep.add(ofFile("a"), "fresh"), /refuses storage/);
  await keep.drop("q");
  assert.deepEqual([keep.loadCosts(), keep.saveCosts("x")], ["", false]);
});

/** inDatabase changes what is kept as no version of the page would. */
const inDatabase = (store, change) =>
  new Promise((done) => {
    const o = indexedDB.open("boxwright");
    o.onsuccess = () => {
      const t = o.result.transaction(store, "readwrite");
      change(t.objectStore(store));
      t.oncomplete = () => {
        o.result.close();
        done();
      };
    };
  });

test("a record of the wrong type is listed nowhere, written over by nobody, and handed out", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  await inDatabase("quotes", (s) => s.put({ id: "q", draft: "spoiled" }));
  assert.deepEqual([await keep.list(), await keep.load("q")], [[], null]);
  assert.equal(await keep.save(quote("q", 1, 0, "b"), step("b"), true), "taken");
  assert.deepEqual((await keep.everything()).quotes, [{ id: "q", draft: "spoiled" }]);
  await keep.add(ofFile("b"), "fresh");
  assert.equal((await keep.load("fresh")).draft.title, "b", "a quote of a file goes beside it");
});

test("a state that cannot be read ends the trail there, and stays", async () => {
  const keep = await open();
  await written(keep, "q", ["a", "b", "c"]);
  await inDatabase("steps", (s) => s.put(7, ["q", 0]));
  const { steps, first } = await keep.load("q");
  assert.deepEqual([steps.map((s) => s.said), first], [["b", "c"], 1]);
  assert.equal((await keep.everything()).steps.length, 3);
});

test("a database of a newer version is read, and not written", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  await new Promise((done) => {
    const o = indexedDB.open("boxwright", 9);
    o.onsuccess = () => (o.result.close(), done());
  });
  const old = await import(`./keep.js?window=${windows++}`);
  assert.deepEqual([await old.open(), old.why()], [false, "newer"]);
  assert.equal((await old.load("q")).draft.title, "a");
  assert.equal(await old.save(quote("q", 2, 1, "b"), step("b"), true), false);
  assert.equal(await old.put("last", "q"), false);
});

/**
 * onAFullDisk does some work while the database writes nothing, as browsers have that
 * fail: the request first, then its transaction. What is read and deleted goes on.
 */
async function onAFullDisk(work) {
  const { IDBObjectStore } = await import("fake-indexeddb");
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (...all) {
    const raw = this._rawObjectStore;
    raw.storeRecord = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
    const request = put.apply(this, all);
    delete raw.storeRecord;
    return request;
  };
  try {
    return await work();
  } finally {
    IDBObjectStore.prototype.put = put;
  }
}

test("a full disk is told from a browser that refuses, until there is room again", async () => {
  const keep = await open();
  await written(keep, "old", ["z"]);
  await written(keep, "q", ["a"]);
  await onAFullDisk(async () => {
    assert.equal(await keep.save(quote("q", 2, 1, "b"), step("b"), true), false);
    assert.equal(keep.why(), "full");
    assert.equal(await keep.put("last", "q"), false);
    assert.equal((await keep.load("q")).draft.title, "a", "what was kept is still there");
    await keep.drop("old");
  });
  assert.equal(await keep.put("last", "q"), true, "it is tried again");
  assert.equal(await keep.save(quote("q", 3, 1, "b"), false, false), true);
  assert.equal(keep.why(), "");
  assert.deepEqual(await titles(keep, "q"), ["a", "b"], "with the step that was not written");
  assert.deepEqual(Object.keys(localStorage), []);
});

test("of two changes in one breath on a full disk neither is taken for another window's", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  const both = await onAFullDisk(() =>
    Promise.all([
      keep.save(quote("q", 2, 1, "b"), step("b"), true),
      keep.save(quote("q", 3, 2, "c"), step("c"), true),
    ]),
  );
  assert.deepEqual([both, keep.why()], [[false, false], "full"]);
  assert.equal(await keep.save(quote("q", 4, 3, "d"), step("d"), true), true);
  assert.deepEqual([(await keep.load("q")).draft.title, Object.keys(localStorage)], ["d", []]);
});

test("storage that failed for once is used again", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  const { IDBObjectStore } = await import("fake-indexeddb");
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = () => {
    throw new Error("no");
  };
  assert.equal(await keep.save(quote("q", 2, 1, "b"), step("b"), true), false);
  assert.equal(keep.why(), "refused");
  IDBObjectStore.prototype.put = put;
  assert.equal(await keep.save(quote("q", 3, 2, "c"), step("c"), true), true);
  assert.deepEqual([keep.why(), await keep.put("last", "q")], ["", true]);
});

test("with no room for a note either, nothing of what was kept is lost", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  globalThis.localStorage.setItem = () => {
    throw new DOMException("no room", "QuotaExceededError");
  };
  Object.defineProperty(globalThis.localStorage, "setItem", { enumerable: false });
  await onAFullDisk(async () => {
    assert.equal(await keep.save(quote("q", 2, 1, "b"), step("b"), true), false);
    assert.equal(await keep.save(quote("q", 3, 2, "c"), step("c"), true), false);
  });
  assert.equal(keep.why(), "full");
  assert.equal((await (await open()).load("q")).draft.title, "a");
  assert.equal(await keep.save(quote("q", 4, 3, "d"), step("d"), true), true);
  assert.equal((await keep.load("q")).draft.title, "d");
});

test("what the database does not take stays in a note until it does", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  await onAFullDisk(async () => {
    assert.equal(await keep.save(quote("q", 2, 1, "b"), step("b"), true), false);
    assert.equal(await keep.save(quote("q", 3, 2, "c"), step("c"), true), false);
  });
  assert.match(localStorage.getItem("boxwright.unsaved.q"), /"title":"c"/);
  const next = await open();
  assert.equal((await next.load("q")).draft.title, "c", "the next window carries it out");
  assert.deepEqual(await titles(next, "q"), ["a", "c"]);
  assert.deepEqual(Object.keys(localStorage), []);
});

test("storage that takes again takes all that was missed", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  const { IDBObjectStore } = await import("fake-indexeddb");
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = () => {
    throw new Error("no");
  };
  assert.equal(await keep.save(quote("q", 2, 1, "b"), step("b"), true), false);
  IDBObjectStore.prototype.put = put;
  assert.equal(await keep.save(quote("q", 3, 2, "c"), step("c"), true), true);
  assert.equal(await keep.save(quote("q", 4, 3, "d"), step("d"), true), true);
  assert.equal((await keep.load("q")).draft.title, "d");
  assert.deepEqual(Object.keys(localStorage), []);
});

test("a note that another window carried out is no other window's work", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  const saving = keep.save(quote("q", 2, 1, "b", "2026-11-26"), step("b"), true);
  await open(); // takes up the note
  assert.equal(await saving, true);
  assert.equal(await keep.save(quote("q", 3, 2, "c", "2026-11-27"), step("c"), true), true);
});

test("nothing is kept where nothing shall be", async () => {
  const keep = await open();
  await written(keep, "q", ["a"]);
  keep.saveCosts("sealed");
  keep.setOff(true);
  const forgotten = keep.forgetAll();
  last.write({ name: "Medic 1" }); // the screen came to rest just then
  await forgotten;
  const next = await import(`./keep.js?window=${windows++}`);
  assert.deepEqual([await next.open(), next.why()], [false, "off"]);
  assert.equal(await next.save(quote("q", 1, 0, "a"), step("a"), true), false);
  assert.equal(next.saveCosts("sealed"), false);
  assert.deepEqual(Object.keys(localStorage), ["boxwright.off"]);
  next.setOff(false);
  const again = await open();
  assert.deepEqual([await again.list(), Object.keys(localStorage)], [[], []]);
});

test("a single thing is put in the place of what is expected there alone", async () => {
  const [keep, other] = [await open(), await open()];
  const both = await Promise.all([keep.swap("sealed", undefined, "a"), other.swap("sealed", undefined, "b")]);
  assert.deepEqual(both, [true, false], "of two windows one");
  assert.equal(await other.get("sealed"), "a");
  assert.equal(await keep.swap("sealed", "b", undefined), false);
  assert.equal(await keep.swap("sealed", "a", undefined), true);
  for (const value of ["c", 7, { odd: [] }]) {
    await keep.put("sealed", value);
    assert.equal(await keep.aside("sealed", "aside"), true);
    assert.deepEqual([await keep.get("sealed"), await keep.get("aside")], [undefined, value]);
  }
  assert.equal(await keep.get("sealed"), undefined);
});
