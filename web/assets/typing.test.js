// Text that is typed and not yet entered.
import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { Typing, isText } from "./typing.js";

globalThis.HTMLInputElement = class {
  constructor(id, value, more) {
    Object.assign(this, { id, value, type: "text", autocomplete: "", dataset: {}, ...more });
  }
};
globalThis.HTMLTextAreaElement = class extends HTMLInputElement {};
const field = (id, value, more) => new HTMLInputElement(id, value, more);

beforeEach(() => {
  globalThis.localStorage = {
    getItem: (key) => localStorage[key] ?? null,
    setItem: (key, text) => (localStorage[key] = text),
    removeItem: (key) => delete localStorage[key],
  };
  for (const f of ["getItem", "setItem", "removeItem"])
    Object.defineProperty(localStorage, f, { value: localStorage[f], enumerable: false });
});

/** A window with this name on a quote. */
function page(name, quote = "q") {
  const typing = new Typing(() => quote);
  typing.name = name;
  return typing;
}

test("what was typed is found by the next window, and by nobody else", () => {
  const dead = page("dead");
  dead.heard(field("f-title", "Resc"));
  dead.heard(field("f-title", "Rescue"));
  dead.heard(field("f-buyer", "County"));
  dead.entered("f-buyer");
  dead.flush();
  const other = page("other", "r");
  assert.deepEqual(other.left("r", new Set()), {}, "another quote");
  const next = page("next");
  assert.deepEqual(next.left("q", new Set(["dead"])), {}, "that window lives");
  assert.deepEqual(next.left("q", new Set(["other"])), { "f-title": "Rescue" });
  next.entered("f-title");
  assert.deepEqual(Object.keys(localStorage), []);
});

test("what is put back and not entered is kept on", () => {
  const dead = page("w");
  dead.heard(field("f-title", "Rescue"));
  dead.flush();
  const again = page("w");
  assert.deepEqual(again.left("q", new Set()), { "f-title": "Rescue" });
  assert.deepEqual(page("w").left("q", new Set()), { "f-title": "Rescue" });
});

test("secrets and choices are never kept", () => {
  for (const more of [{ type: "password" }, { type: "checkbox" }, { type: "file" }, { dataset: { secret: "x" } }, { dataset: { live: "1" } }, { id: "" }])
    assert.equal(isText(field("f", "x", more)), false, JSON.stringify(more));
  assert.equal(isText({}), false);
  assert.equal(isText(new HTMLTextAreaElement("f", "x")), true);
});

test("notes that nobody can read harm nothing", () => {
  localStorage.setItem("boxwright.typed.x", "[");
  localStorage.setItem("boxwright.typed.y", '{"quote":"q","fields":{"a":1,"b":"text"}}');
  assert.deepEqual(page("z").left("q", undefined), { b: "text" });
});
