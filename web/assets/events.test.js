// What a press, a change or a key asks for, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { change, doing, keyed, press, saying } from "./events.js";
import { newState } from "./state.js";

function page() {
  const state = newState("costs", { sealed: "sealed", open: "open" });
  const calls = [];
  const note = (name) => (...all) => calls.push([name, ...all]);
  const names = ["go", "goTo", "open", "copy", "drop", "move"];
  const history = Object.fromEntries(names.map((n) => [n, note(n)]));
  history.links = () => "link1 link2";
  const files = Object.fromEntries(["read", "readAll", "readBytes", "exportKept", "saveSchema"].map((n) => [n, note(n)]));
  return { state, history, files, act: note("act"), calls };
}

test("a press is what its control says, or a thing the main thread does itself", () => {
  for (const [dataset, want] of [
    [{ act: "pick", id: "a" }, ["act", { do: "pick", id: "a", value: "" }]],
    [{ act: "undo" }, ["go", -1]],
    [{ act: "redo" }, ["go", 1]],
    [{ act: "back-to", id: "12" }, ["goTo", 12]],
    [{ act: "open-kept", id: "q" }, ["open", "q"]],
    [{ act: "fresh-kept" }, ["open", ""]],
    [{ act: "constructor" }, ["act", { do: "constructor", id: "", value: "" }]],
    [{ act: "key-export", sealed: "1" }, ["act", { do: "key-export", id: "", value: "", file: "sealed" }]],
    [{ act: "sign", links: "1" }, ["act", { do: "sign", id: "", value: "", file: "link1 link2" }]],
  ]) {
    const p = page();
    press({ dataset }, p);
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
    assert.deepEqual(p.calls.map(([name]) => name), [want]);
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
  assert.deepEqual(doing({ dataset: { act: "go", id: "weight", value: "v" } }, page()), { do: "go", id: "weight", value: "v" });
});
