// The part that reads office files is loaded once, when it is asked for.
import { test } from "node:test";
import assert from "node:assert/strict";
import { office } from "./load.js";

/** A page in which a script that is put in does something. */
const page = (carried, does) => {
  const put = [];
  globalThis.window = {};
  globalThis.HTMLElement = class {
    dataset = { office: "office.1.js" };
  };
  globalThis.document = {
    createElement: () => ({ remove: () => put.pop() }),
    getElementById: () => carried && { textContent: carried },
    querySelector: () => new HTMLElement(),
    head: { append: (script) => (put.push(script), does(script)) },
  };
  return put;
};

test("a script that does not come is asked for again", async () => {
  page("", (script) => queueMicrotask(() => script.onerror()));
  await assert.rejects(office(), /could not be fetched/);
  page("", (script) => queueMicrotask(() => script.onload()));
  await assert.rejects(office(), /did not run/);
  let asked = "";
  const put = page("", (script) => {
    asked = script.src;
    globalThis.window.boxwrightOffice = { text: () => "read" };
    queueMicrotask(() => script.onload());
  });
  assert.equal((await office()).text(), "read");
  assert.equal(asked, "office.1.js");
  assert.deepEqual(put, [], "it leaves no script in the page");
  page("", () => assert.fail("it is there already"));
  assert.equal((await office()).text(), "read");
});

test("the one file runs the text that it carries", async () => {
  const { office: again } = await import("./load.js?one");
  let ran = "";
  page("office()", (script) => {
    ran = script.text;
    globalThis.window.boxwrightOffice = { text: () => "carried" };
  });
  assert.equal((await again()).text(), "carried");
  assert.equal(ran, "office()");
});
