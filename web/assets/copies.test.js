// Copies into a folder, without a browser: the folder is one in memory.
import { test } from "node:test";
import assert from "node:assert/strict";
import { Copies, fileOf } from "./copies.js";

Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });

/** A folder that may have to be allowed again, or refuse a file. */
function folderOf(name = "Quotes") {
  const files = new Map();
  return {
    files,
    name,
    state: "granted",
    refuse: "",
    queryPermission: async function () {
      return this.state;
    },
    requestPermission: async function () {
      return (this.state = "granted");
    },
    async getFileHandle(file) {
      const { refuse } = this;
      return {
        kind: "file",
        name: file,
        createWritable: async () => {
          let text = "";
          return {
            write: async (t) => void (text += t),
            close: async () => {
              if (refuse && file.includes(refuse)) throw new Error("disk full");
              files.set(file, text);
            },
            abort: async () => {},
          };
        },
      };
    },
    async *values() {
      for (const [file, text] of files) yield { kind: "file", name: file, getFile: async () => ({ name: file, text }) };
    },
  };
}

function page(folder) {
  const single = {};
  const quotes = new Map();
  const said = { told: 0, asked: [], trouble: [], read: [] };
  const change = (id, title) => quotes.set(id, { id, at: 0, draft: { title } });
  const copies = new Copies({
    keep: {
      list: async () => [...quotes.values()],
      get: async (key) => single[key],
      put: async (key, value) => ((single[key] = value), true),
    },
    files: {
      copyOf: async (id) => `copy of ${quotes.get(id).draft.title}`,
      rest: async () => "the rest",
      read: async (act, file) => void said.read.push([act, file.name]),
    },
    bar: { ask: (about, _, answers) => said.asked.push([about, answers]), withdraw: () => {} },
    picker: folder && (async () => folder),
    told: () => said.told++,
    trouble: (text) => said.trouble.push(text),
  });
  const markNow = (r) => (copies.known.of[r.id] === undefined ? "" : markOf(r));
  const saved = () => [...quotes.values()].map((r) => ({ id: r.id, mark: markNow(r) }));
  return { copies, change, single, said, saved };
}
const { mark: markOf } = await import("./stored.js");
const id = (n) => `${n}`.repeat(24).slice(0, 24);

test("a folder that is chosen gets every quote, and then what changes", async () => {
  const folder = folderOf();
  const { copies, change, said } = page(folder);
  change(id(1), "one");
  change(id(2), "two");
  await copies.choose();
  assert.deepEqual([...folder.files.keys()], [fileOf(id(1)), fileOf(id(2)), "boxwright-rest.json"]);
  folder.files.clear();
  change(id(2), "two anew");
  await copies.copy();
  assert.deepEqual([...folder.files], [[fileOf(id(2)), "copy of two anew"]]);
  await copies.copy();
  assert.equal(folder.files.size, 1, "what is copied is not copied again");
  assert.deepEqual(said.trouble, []);
  await copies.stop();
  change(id(1), "one anew");
  await copies.copy();
  assert.equal(folder.files.size, 1);
});

test("the page says when the last copy was made, and how many quotes changed since", async () => {
  const { copies, change, saved } = page();
  change(id(1), "one");
  assert.deepEqual(copies.told(saved()), {
    ...{ when: "", changed: 1, able: false, folder: undefined, waits: false, lasting: false },
    ...{ sealed: false, spoiled: false },
  });
  await copies.made({ [id(1)]: markOf({ at: 0, draft: { title: "one" } }) });
  assert.equal(copies.told(saved()).changed, 0);
  assert.notEqual(copies.told(saved()).when, "");
  change(id(1), "one anew");
  change(id(2), "two");
  assert.equal(copies.told(saved()).changed, 2);
});

test("a folder that has to be allowed again is asked for, and then gets what it missed", async () => {
  const folder = folderOf();
  const { copies, change, said } = page(folder);
  await copies.choose();
  folder.state = "prompt";
  change(id(1), "one");
  await copies.open();
  assert.equal(said.asked[0][0], "copies");
  await copies.copy();
  assert.equal(folder.files.has(fileOf(id(1))), false);
  await said.asked[0][1][0][1]();
  assert.equal(folder.files.get(fileOf(id(1))), "copy of one");
  assert.equal(copies.waits, false);
});

test("a copy that fails is told of, and is made when it can be", async () => {
  const folder = folderOf();
  const { copies, change, said, saved } = page(folder);
  change(id(1), "one");
  change(id(2), "two");
  folder.refuse = id(2);
  await copies.choose();
  assert.match(said.trouble[0], /No copy went into the folder “Quotes” \(disk full\)/);
  assert.equal(folder.files.has(fileOf(id(1))), true);
  assert.equal(copies.told(saved()).changed, 1);
  folder.refuse = "";
  await copies.copy();
  assert.equal(copies.told(saved()).changed, 0);
});

test("copies that are in the folder already are taken in when the user says so", async () => {
  const folder = folderOf();
  folder.files.set(fileOf(id(9)), "an older copy");
  folder.files.set("holiday.json", "somebody else's");
  const { copies, said } = page(folder);
  await copies.choose();
  assert.deepEqual(said.read, []);
  await said.asked[0][1][0][1]();
  assert.deepEqual(said.read, [["import", fileOf(id(9))]]);
});

test("each quote has a file of its own, whatever its id is", () => {
  const names = ["../../x", "a/b", "ab", "AB", "x6162", id(1), ""].map(fileOf);
  assert.equal(new Set(names).size, names.length);
  for (const n of names) assert.match(n, /^boxwright-quote-[0-9a-fx]*\.json$/);
});

test("what was kept of copies is read whatever it is", async () => {
  const { copies, single } = page();
  for (const raw of [7, "x", null, { of: 3, folder: "a", when: {} }]) {
    single.copies = raw;
    await copies.open();
    assert.deepEqual([copies.known.folder, copies.known.when, copies.known.of], [undefined, "", {}]);
  }
});

test("what is known late is told, what was known in time is not told again", async () => {
  const late = page();
  let come = () => {};
  const single = { sealed: btoa("bxseal1\ntext") };
  late.copies.around.keep.get = (key) => new Promise((resolve) => (come = () => resolve(single[key])));
  const opened = late.copies.open();
  assert.equal(late.copies.told([]).sealed, false);
  for (let n = 0; n < 2; n++) await null, come(), await new Promise((r) => setTimeout(r));
  await opened;
  assert.deepEqual([late.copies.told([]).sealed, late.said.told], [true, 1]);
  const early = page();
  await early.copies.know();
  await early.copies.open();
  assert.equal(early.said.told, 0);
});
