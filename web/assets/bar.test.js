// The bar that asks one thing at a time, without a browser.
import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { ask, offer, withdraw } from "./bar.js";

class Node {
  hidden = true;
  children = [];

  replaceChildren() {
    this.children = [];
  }

  focus() {
    focused = this;
  }

  append(child) {
    this.children.push(child);
  }

  addEventListener(kind, heard) {
    this[kind] = heard;
  }
}

let focused;
const bar = new Node();
const main = new Node();
globalThis.document = { getElementById: (id) => (id === "bar" ? bar : main), createElement: () => new Node() };
const says = () => bar.children.map((c) => c.textContent);
const press = (label) => bar.children.find((c) => c.textContent === label).click();

beforeEach(() => ["a", "b"].forEach(withdraw));

test("one thing is asked at a time, in the order asked", () => {
  const done = [];
  ask("a", "First?", [
    ["Yes", () => done.push("a")],
    ["No", () => done.push("no")],
  ]);
  ask("b", "Second?", [["Good", () => done.push("b")]]);
  assert.equal(bar.hidden, false);
  assert.deepEqual(says(), ["First?", "Yes", "No"]);
  press("Yes");
  assert.deepEqual([says(), done], [["Second?", "Good"], ["a"]]);
  assert.equal(focused, bar.children[1], "the next answer has the focus");
  press("Good");
  assert.equal(focused, main, "and the page after the last");
  assert.deepEqual([bar.hidden, says(), done], [true, [], ["a", "b"]]);
});

test("an answer may ask again", () => {
  ask("a", "First?", [["Again", () => ask("a", "Once more?", [])]]);
  press("Again");
  assert.deepEqual(says(), ["Once more?"]);
});

test("another question about the same takes its place, and one that is withdrawn goes", () => {
  ask("a", "First?", []);
  ask("b", "Second?", []);
  ask("a", "First, otherwise?", []);
  assert.deepEqual(says(), ["First, otherwise?"]);
  withdraw("a");
  assert.deepEqual(says(), ["Second?"]);
  withdraw("unknown");
  assert.deepEqual(says(), ["Second?"]);
});

test("an offer goes before what is asked, has the focus and is not said twice", () => {
  ask("a", "First?", [["Yes", () => {}]]);
  offer("b", "Deleted.", [["Undo", () => {}]]);
  assert.deepEqual([says(), focused, bar.ariaLive], [["Deleted.", "Undo"], bar.children[1], "off"]);
  press("Undo");
  assert.deepEqual([says(), bar.ariaLive], [["First?", "Yes"], "polite"]);
});
