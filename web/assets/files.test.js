// Files read and written, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { Files } from "./files.js";
import { MAX_FILE_BYTES } from "./protocol.js";

function page(records = [], sealed = undefined) {
  const said = { acts: [], trouble: [], saved: [], added: [], asked: [], dropped: [], copied: [] };
  const single = { catalogue: "present", sealed };
  const files = new Files({
    keep: {
      list: async () => records,
      load: async (id) => records.find((r) => r.id === id),
      loadBids: () => '{"standing":{}}',
      loadKey: () => ({ sealed: box("k"), open: "o" }),
      loadCosts: () => "",
      get: async (key) => single[key],
      getText: async (key) => (typeof single[key] === "string" ? single[key] : undefined),
      aside: async (key, other) => ((single[other] = single[key]), delete single[key]),
      swap: async (key, was, value) => single[key] === was && ((single[key] = value), true),
      dropAsIt: async (id, count) => (count === 7 ? (said.dropped.push(id), true) : false),
      dropTraces: () => said.dropped.push("traces"),
      add: async (q, fresh) => said.added.push([q.id, fresh.length]),
    },
    bar: { ask: (about, _, answers) => said.asked.push([about, answers]) },
    single: async () => {
      throw new Error("no room");
    },
    act: (a) => said.acts.push(a),
    relisted: async () => {},
    copied: async (of) => said.copied.push(of),
    sealed: async () => said.dropped.push("begun anew"),
    trouble: (text) => said.trouble.push(text),
    save: (name, type, content) => said.saved.push([name, type, content]),
  });
  return { files, said, single };
}

const box = (text) => btoa(`bxseal1\n${text}`); // as something sealed begins

const file = (name, text, size = text.length) => ({ name, size, text: async () => text });

test("a file of text becomes an act", async () => {
  const { files, said } = page();
  await files.read("open-draft", file("a.json", "{}"));
  await files.readAll("tables-in", [file("b.csv", "1"), file("c.csv", "2")]);
  assert.deepEqual(said.acts, [
    { do: "open-draft", id: "a.json", value: "{}" },
    { do: "tables-in", id: "b.csv, c.csv", value: '[{"name":"b.csv","text":"1"},{"name":"c.csv","text":"2"}]' },
  ]);
});

test("a spreadsheet is read by what knows its form, and filled in as it came", async () => {
  const { files, said } = page();
  files.around.office = async () => ({
    text: (name, b) => `${name} ${b.length}`,
    fill: (b, cells) => `${b.length} ${cells[0].text}`,
  });
  const sheet = { name: "List.XLSX", size: 3, arrayBuffer: async () => new Uint8Array(3).buffer };
  await files.read("paste-list", sheet);
  assert.deepEqual(said.acts, [{ do: "paste-list", id: "List.XLSX", value: "List.XLSX 3" }]);
  await files.fillSheet({ do: "fill-sheet", name: "List.XLSX", text: '[{"row":1,"col":2,"text":"Y"}]' });
  assert.equal(said.saved[0][0], "List-answered.xlsx");
  assert.equal(said.saved[0][2], "3 Y");
  await files.fillSheet({ do: "fill-sheet", name: "List.xlsx", text: "{" });
  assert.match(said.trouble[0], /could not be filled in/);
});

test("what is too large or cannot be read is told of, and nothing is asked", async () => {
  const { files, said } = page();
  await files.read("open-draft", file("large.json", "", MAX_FILE_BYTES + 1));
  await files.readAll("tables-in", [file("d.csv", "", MAX_FILE_BYTES), file("e.csv", "", 1)]);
  await files.read("open-draft", { name: "gone.json", size: 1, text: () => Promise.reject(new Error("gone")) });
  assert.deepEqual(said.acts, []);
  assert.equal(said.trouble.length, 3);
  assert.match(said.trouble[0], /large\.json has 16,777,217 bytes; the most that is read is 16,777,216/);
  assert.match(said.trouble[2], /gone\.json could not be read/);
});

const record = (id, size) => ({
  id,
  saved: "2026-11-25T00:00:00Z",
  count: 7,
  at: 3,
  first: 2,
  draft: { title: id },
  gist: { name: id, line: "1" },
  steps: [
    { draft: {}, said: "x".repeat(size), when: "" },
    { draft: {}, said: "", when: "" },
  ],
});

test("every kept quote goes into one file with its states", async () => {
  const { files, said } = page([record("a", 1), record("b", 1)]);
  await files.exportKept();
  const [name, type, text] = said.saved[0];
  assert.deepEqual([name, type], ["boxwright-quotes.json", "application/json"]);
  const { format, quotes, catalogue, bids, key } = JSON.parse(text);
  assert.deepEqual(key, { sealed: box("k"), public: "o" }, "as it is sealed");
  assert.deepEqual(Object.keys(said.copied[0]), ["a", "b"]);
  assert.deepEqual([format, catalogue, bids], ["boxwright-kept/1", "present", '{"standing":{}}']);
  assert.deepEqual(
    quotes.map((q) => [q.id, q.at, q.steps.length, q.pins]),
    [
      ["a", 1, 2, []],
      ["b", 1, 2, []],
    ],
  );
});

test("when the states are too much the quotes go without them, and it is said", async () => {
  const { files, said } = page([record("a", MAX_FILE_BYTES / 2)]);
  await files.exportKept();
  const { quotes } = JSON.parse(said.saved[0][2]);
  assert.deepEqual([quotes[0].steps, quotes[0].at], [[], 0]);
  assert.match(said.trouble[0], /but not its earlier states: with them it would have 8,388,\d+ characters/);
});

test("a catalogue in a file of kept quotes is only used when asked", async () => {
  const { files, said } = page();
  await files.importKept(JSON.stringify({ quotes: [{ id: "q" }], catalogue: "other" }));
  assert.deepEqual(said.added, [["q", 24]]);
  assert.deepEqual(said.acts, [{ do: "restore" }]);
  said.asked[0][1][0][1]();
  assert.equal(said.acts.at(-1).value, "other");
  const same = page();
  await same.files.importKept(JSON.stringify({ quotes: [], catalogue: "present" }));
  assert.deepEqual(same.said.asked, []);
});

test("bytes are saved as bytes, and a file that cannot be made is told of", async () => {
  const { files, said } = page();
  files.saveStep({ do: "save", name: "k", type: "t", text: "AQI=", base64: true });
  assert.deepEqual([...said.saved[0][2]], [1, 2]);
  await files.saveSingle({ do: "embed", name: "x.html", text: "{}" });
  assert.match(said.trouble[0], /could not be put together \(no room\)/);
});

test("quotes are sealed, and only what is sealed as it is now is taken away", async () => {
  const { files, said, single } = page([record("a", 1), { ...record("b", 1), count: 8 }]);
  const field = { value: "four plain words here" };
  await files.seal(field);
  const [{ do: act, value, file: text }] = said.acts;
  assert.deepEqual([act, value, field.value], ["seal-kept", "four plain words here", ""]);
  assert.deepEqual(Object.keys(JSON.parse(text)), ["format", "quotes"], "no key goes in");
  await files.keepSealed(box("sealed text"));
  assert.equal(single.sealed, box("sealed text"));
  assert.deepEqual(said.dropped, ["a", "begun anew", "traces"]);
  assert.match(said.trouble[0], /^1 of the quotes changed meanwhile/);
  await files.seal(field);
  assert.match(said.trouble[1], /Open the quotes that are sealed first/);
  await files.unseal(field);
  await files.importKept(JSON.stringify({ quotes: [{ id: "a" }] }), "sealed");
  assert.equal(single.sealed, undefined);
});

test("nothing is taken away when the sealed quotes are not kept", async () => {
  const { files, said } = page([record("a", 1)]);
  files.around.keep.swap = async () => false;
  await files.seal({ value: "x" });
  await files.keepSealed(box("sealed text"));
  assert.deepEqual(said.dropped, []);
  assert.match(said.trouble[0], /Nothing was taken away/);
});

test("quotes that another window sealed meanwhile are neither written over nor taken away", async () => {
  const { files, said, single } = page([record("a", 1)]);
  await files.seal({ value: "x" });
  single.sealed = box("of another window");
  await files.keepSealed(box("sealed text"));
  assert.deepEqual([single.sealed, said.dropped], [box("of another window"), []]);
  assert.match(said.trouble[0], /sealed in another window meanwhile.*Nothing was taken away/);
  await files.unseal({ value: "x" });
  single.sealed = box("sealed anew");
  await files.importKept(JSON.stringify({ quotes: [{ id: "a" }] }), "sealed");
  assert.equal(single.sealed, box("sealed anew"), "only what was opened goes");
});

test("the sealed quotes of a file are taken in where none are, and else it is said", async () => {
  const { files, said, single } = page();
  await files.importKept(JSON.stringify({ quotes: [], sealed: box("of the file") }));
  await files.importKept(JSON.stringify({ quotes: [], sealed: box("of the file") }));
  assert.deepEqual([single.sealed, said.trouble], [box("of the file"), []]);
  await files.importKept(JSON.stringify({ quotes: [], sealed: box("of another file") }));
  assert.equal(single.sealed, box("of the file"));
  assert.match(said.trouble[0], /were not taken in: others are sealed here/);
});

test("what was never sealed goes into no copy, and is put aside before quotes are sealed", async () => {
  for (const spoiled of [null, 7, "", "gone", { sealed: true }, ["YnhzZWFsMQo="], "YnhzZWFsMQo <img>"]) {
    const { files, said, single } = page([record("a", 1)], spoiled);
    files.around.keep.loadCosts = () => "gone";
    files.around.keep.loadKey = () => ({ sealed: "gone", open: "o" });
    single.catalogue = { odd: 1 };
    assert.deepEqual(Object.keys(JSON.parse(await files.rest())), ["format", "quotes", "bids"]);
    await files.seal({ value: "x" });
    assert.match(said.trouble[0], /^Put aside what stands in their place first/);
    await files.importKept(JSON.stringify({ quotes: [], sealed: box("of the file") }));
    assert.match(said.trouble[1], /something else stands in their place/);
    await files.putAside();
    const [other] = Object.keys(single).filter((key) => key.startsWith("sealed, put aside"));
    assert.deepEqual([single.sealed, single[other]], [undefined, spoiled]);
    await files.seal({ value: "x" });
    await files.keepSealed(box("sealed now"));
    assert.deepEqual([single.sealed, said.trouble.length, said.dropped[0]], [box("sealed now"), 2, "a"]);
  }
});

test("sealed quotes stay sealed when not all of them can be kept", async () => {
  const { files, said, single } = page([], box("sealed text"));
  files.around.keep.add = async () => {
    throw new Error("full");
  };
  await files.importKept(JSON.stringify({ quotes: [{ id: "a" }] }), "sealed");
  assert.equal(single.sealed, box("sealed text"));
  assert.equal(said.trouble.length, 1);
});

test("too much to be sealed with every state is refused, not cut", async () => {
  const { files, said } = page([record("a", MAX_FILE_BYTES / 2)]);
  await files.seal({ value: "x" });
  assert.deepEqual(said.acts, []);
  assert.match(said.trouble[0], /delete some first/);
});
