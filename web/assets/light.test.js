// What is lit in the picture, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { light } from "./light.js";

class Row {
  constructor(id) {
    this.id = id;
  }

  closest() {
    return this.id ? this : null;
  }
}

test("what an option brings is lit while it is pointed at or has the focus", () => {
  globalThis.Element = Row;
  const heard = {};
  let looked = 0;
  const parts = ["lamp", "step", "lamp"].map((part) => ({ dataset: { part }, classList: {} }));
  const lit = new Set();
  parts.forEach((p, i) => (p.classList.toggle = (name, on) => (on ? lit.add(i) : lit.delete(i))));
  light({ addEventListener: (kind, fn) => (heard[kind] = fn), querySelectorAll: () => (looked++, parts) });
  heard.pointerover({ target: new Row("row-lamp") });
  assert.deepEqual([...lit], [0, 2]);
  heard.pointerover({ target: new Row("row-lamp") });
  assert.equal(looked, 1, "nothing is looked for while it stays");
  heard.focusin({ target: new Row("row-step") });
  assert.deepEqual([...lit], [1]);
  heard.pointerover({ target: new Row("") });
  assert.deepEqual([...lit], []);
});
