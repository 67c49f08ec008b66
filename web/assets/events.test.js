// What a press, a change or a key asks for, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { change, doing, keyed, listen, press, saying } from "./events.js";
import { newState } from "./state.js";

function page() {
  const state = newState("costs", { sealed: "sealed", open: "open" });
  const calls = [];
  const note =
    (name) =>
    (...all) =>
      calls.push([name, ...all]);
  const names = ["go", "goTo", "open", "copy", "drop", "move"];
  const history = Object.fromEntries(names.map((n) => [n, note(n)]));
  history.links = () => "link1 link2";
  const files = Object.fromEntries(
    ["read", "readAll", "readBytes", "exportKept", "saveSchema"].map((n) => [n, note(n)]),
  );
  const typing = { heard() {}, entered() {} };
  return { state, history, files, typing, act: note("act"), calls };
}

test("a press is what its control says, or a thing the main thread does itself", () => {
  for (const [dataset, want] of [
    [{ act: "pick", id: "a" }, ["act", { do: "pick", id: "a", value: "", button: "Take it" }]],
    [{ act: "undo" }, ["go", -1]],
    [{ act: "redo" }, ["go", 1]],
    [{ act: "back-to", id: "12" }, ["goTo", 12]],
    [{ act: "open-kept", id: "q" }, ["open", "q"]],
    [{ act: "fresh-kept" }, ["open", ""]],
    [{ act: "constructor" }, ["act", { do: "constructor", id: "", value: "", button: "Take it" }]],
    [{ act: "key-export", sealed: "1" }, ["act", { do: "key-export", id: "", value: "", file: "sealed", button: "Take it" }]],
    [{ act: "sign", links: "1" }, ["act", { do: "sign", id: "", value: "", file: "link1 link2", button: "Take it" }]],
  ]) {
    const p = page();
    press({ dataset, textContent: " Take\n it " }, p);
    assert.deepEqual(p.calls, [want], JSON.stringify(dataset));
  }
});

test("a choice says whether it is on, a field what it holds", () => {
  const label = { querySelector: () => null, textContent: " Roof unit " };
  const p = page();
  change({ dataset: { act: "pick", id: "a" }, type: "checkbox", checked: true, value: "on", labels: [label] }, p);
  assert.deepEqual(p.calls[0][1], { do: "pick", id: "a", value: "on", on: true, said: "Roof unit: yes" });
  change({ dataset: { act: "set", id: "title" }, type: "text", value: "", labels: [label] }, p);
  assert.deepEqual(p.calls[1][1], { do: "set", id: "title", value: "", said: "Roof unit: –" });
  change({ dataset: { act: "search", live: "1" }, type: "text", value: "x" }, p);
  assert.equal(p.calls.length, 2, "a field that is sent at each key is not sent again");
});

test("a file goes to who reads it, and its field is emptied", () => {
  for (const [dataset, multiple, want] of [
    [{ act: "open-draft" }, false, "read"],
    [{ act: "open-costs", secret: "f" }, false, "readBytes"],
    [{ act: "tables-in" }, true, "readAll"],
  ]) {
    const p = page();
    const field = { dataset, multiple, type: "file", files: [{ name: "x" }], value: "C:\\x" };
    change(field, p);
    assert.deepEqual(
      p.calls.map(([name]) => name),
      [want],
    );
    assert.equal(field.value, "");
  }
});

test("the words of a list and of a day are those on the page", () => {
  const named = { ariaLabel: "Drive", dataset: {} };
  assert.equal(saying({ ...named, value: "4", selectedOptions: [{ textContent: "4x4" }] }), "Drive: 4x4");
  assert.equal(saying({ ...named, value: "2026-11-25", valueAsDate: new Date("2026-11-25") }), "Drive: Nov 25, 2026");
  assert.equal(saying({ dataset: {}, value: "x" }), "", "what has no name is not told");
});

test("keys for undo and redo", () => {
  for (const [key, want] of [
    [{ key: "z", ctrlKey: true }, -1],
    [{ key: "Z", metaKey: true, shiftKey: true }, 1],
    [{ key: "y", ctrlKey: true }, 1],
    [{ key: "z" }, 0],
    [{ key: "z", ctrlKey: true, altKey: true }, 0],
    [{ key: "a", ctrlKey: true }, 0],
  ]) {
    assert.equal(keyed(key), want, JSON.stringify(key));
  }
});

test("an act holds no private file unless its control asks for it", () => {
  assert.deepEqual(doing({ dataset: { act: "go", id: "weight", value: "v" } }, page()), {
    do: "go",
    id: "weight",
    value: "v",
  });
});

/** An element as far as a listener looks at it: its data, and what it is. */
globalThis.Element = class {
  constructor(dataset, kind, more) {
    Object.assign(this, { dataset, kind, ...more });
  }

  closest(query) {
    if (query.startsWith("[data-")) return query.slice(6, -1) in this.dataset ? this : null;
    return this.matches(query) ? this : null;
  }

  matches(query) {
    const box = this.type === "checkbox" || this.type === "radio";
    return query.split(", ").some((q) => q.startsWith(this.kind) && !(box && q.includes(":not(")));
  }
};

/** listening is a document that is attended to; happens brings an event about in it. */
function listening(early = [], buttons = ["undo", "redo"]) {
  const p = page();
  const heard = {};
  const querySelector = (query) => (buttons.some((b) => query === `[data-act=${b}]`) ? {} : null);
  listen({ addEventListener: (kind, f) => (heard[kind] = f), querySelector }, p, early);
  const happens = (type, target, more) => {
    const e = { type, target, stopped: false, preventDefault: () => (e.stopped = true), ...more };
    heard[type](e);
    return e.stopped;
  };
  return { ...p, happens };
}

test("a press reaches the control it is in; fields wait until they are changed", () => {
  const p = listening();
  assert.equal(p.happens("click", new Element({ act: "go", id: "weight" }, "button")), true);
  assert.equal(p.happens("click", new Element({}, "p")), false);
  const field = new Element({ act: "set", id: "title" }, "input", { type: "text", value: "Medic 4" });
  p.happens("click", field);
  assert.equal(p.calls.length, 1);
  p.happens("change", field);
  p.happens("change", new Element({}, "input"));
  assert.deepEqual(
    p.calls.map(([, a]) => [a.do, a.value]),
    [
      ["go", ""],
      ["set", "Medic 4"],
    ],
  );
});

test("half a date takes no date away, and is told of when the field is left", () => {
  const p = listening();
  const date = new Element({ act: "set", id: "unit.needed_by" }, "input", { value: "", validity: { badInput: true } });
  p.happens("change", date);
  assert.equal(p.calls.length, 0);
  p.happens("focusout", date);
  p.happens("focusout", new Element({ act: "set" }, "input", { value: "", validity: { badInput: false } }));
  p.happens("focusout", new Element({}, "p"));
  assert.deepEqual(
    p.calls.map(([, a]) => [a.id, a.value]),
    [["unit.needed_by", "unfinished"]],
  );
});

test("a field that looks something up is sent at each key", () => {
  const p = listening();
  p.happens("input", new Element({ act: "search", live: "1" }, "input", { value: "wi" }));
  p.happens("input", new Element({ act: "set" }, "input", { value: "wi" }));
  assert.deepEqual(p.calls, [["act", { do: "search", id: "", value: "wi" }]]);
});

test("keys for undo belong to the browser in a text, to the page elsewhere", () => {
  const p = listening();
  const keys = { key: "z", ctrlKey: true };
  for (const text of [new Element({}, "textarea"), new Element({}, "input", { type: "text" })]) {
    assert.equal(p.happens("keydown", text, keys), false);
  }
  assert.deepEqual(p.calls, []);
  for (const other of [new Element({}, "input", { type: "checkbox" }), new Element({}, "main")]) {
    assert.equal(p.happens("keydown", other, keys), true);
  }
  assert.equal(p.happens("keydown", new Element({}, "main"), { key: "x", ctrlKey: true }), false);
  assert.deepEqual(p.calls, [
    ["go", -1],
    ["go", -1],
  ]);
});

test("keys undo nothing where the page has no button for it", () => {
  const p = listening([], []);
  assert.equal(p.happens("keydown", new Element({}, "main"), { key: "z", ctrlKey: true }), false);
  assert.deepEqual(p.calls, []);
});

test("what was done before the page attended to it is done in its order", () => {
  const control = new Element({ act: "new", id: "van" }, "button");
  const field = new Element({ act: "set", id: "title" }, "input", { type: "text", value: "Medic 4" });
  const early = ["click", "change"].map((type, i) => ({ type, target: [control, field][i], preventDefault() {} }));
  assert.deepEqual(
    listening(early).calls.map(([, a]) => a.do),
    ["new", "set"],
  );
});
