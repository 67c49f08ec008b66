// The last screen as it is kept, without a browser.
import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { kept, read, write } from "./last.js";

const store = new Map();
globalThis.localStorage = {
  getItem: (key) => store.get(key) ?? null,
  setItem: (key, text) => store.set(key, text),
};
beforeEach(() => store.clear());

const screen = {
  version: "v1",
  id: "q",
  count: 3,
  day: "2026-11-25",
  theme: "",
  name: "Rescue 4",
  line: "USD 1.00",
  regions: { main: ["<p>1</p>", "<p>2</p>"] },
};

test("what is kept comes back to the same version of the page", () => {
  assert.equal(kept(), false);
  assert.equal(read("v1"), null);
  write(screen);
  assert.equal(kept(), true);
  assert.deepEqual(read("v1"), screen);
});

test("another version, and a page without one, get the words alone", () => {
  write(screen);
  for (const version of ["v2", ""]) {
    assert.equal(read(version).regions, undefined, version);
    assert.equal(read(version).name, "Rescue 4");
  }
  write({ ...screen, version: "" });
  assert.equal(read("").regions, undefined);
});

test("a screen that is too large is kept without its regions", () => {
  write({ ...screen, regions: { main: ["x".repeat(400_001)] } });
  assert.equal(read("v1").regions, undefined);
});

test("what is no screen is none", () => {
  for (const text of [
    "",
    "7",
    "[]",
    "{",
    '"x"',
    "{}",
    '{"version":{},"regions":[]}',
    '{"regions":{"main":7}}',
    '{"version":"v1","regions":{"main":[7]}}',
    '{"version":"v1","regions":7}',
  ]) {
    store.set("boxwright.screen", text);
    assert.equal(read("v1")?.regions, undefined, text);
  }
  store.set("boxwright.screen", JSON.stringify({ name: "x".repeat(9999) }));
  assert.equal(read("v1").name.length, 200);
});

test("no screen is kept where nothing shall be", () => {
  store.set("boxwright.off", "1");
  write(screen);
  assert.equal(kept(), false);
});
