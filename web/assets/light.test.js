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
  const rules = [];
  const heard = {};
  Object.assign(globalThis, { Element: Row, CSS: { escape: (id) => id.replace(/"/g, '\\"') } });
  globalThis.CSSStyleSheet = class {
    replaceSync(text) {
      rules.push(text);
    }
  };
  const doc = { activeElement: new Row(""), adoptedStyleSheets: [], addEventListener: (kind, fn) => (heard[kind] = fn) };
  light(doc);
  assert.equal(doc.adoptedStyleSheets.length, 1);
  heard.pointermove({ target: new Row("row-lamp") });
  assert.match(rules.at(-1), /\[data-part="lamp"\]/);
  assert.match(rules.at(-1), /\[data-ghost="lamp"\] \{ display/, "what is not chosen shows where it would go");
  heard.pointermove({ target: new Row("row-lamp") });
  assert.equal(rules.length, 1, "nothing is done while it stays");
  heard.focusin({ target: new Row('row-st"ep') });
  assert.match(rules.at(-1), /\[data-part="st\\"ep"\]/);
  doc.activeElement = new Row("row-step");
  heard.pointermove({ target: new Row("") });
  assert.match(rules.at(-1), /"step"/, "pointing at nothing leaves what has the focus");
  doc.activeElement = null;
  heard.pointermove({ target: new Row("") });
  assert.equal(rules.at(-1), "");
});
