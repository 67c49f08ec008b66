// Starts that did not come to an answer, and what was being tried then.
import { beforeEach, mock, test } from "node:test";
import assert from "node:assert/strict";
import { Trial, absolve, accuse, fallen, suspect } from "./trial.js";

const storage = {
  getItem(key) {
    return this[key] ?? null;
  },
  setItem(key, text) {
    this[key] = text;
  },
  removeItem(key) {
    delete this[key];
  },
};

beforeEach(() => (globalThis.localStorage = Object.create(storage)));

const both = { catalogue: true, quote: "q" };

test("a start that comes to an answer leaves nothing behind", () => {
  new Trial("w", both).passed();
  assert.deepEqual(Object.keys(localStorage), []);
  assert.deepEqual(fallen(new Set()), { catalogue: false, quotes: [] });
});

test("a start that ended makes the catalogue suspect, and the next one the quote", () => {
  new Trial("w", both);
  assert.deepEqual(fallen(new Set()), { catalogue: true, quotes: [] });
  assert.deepEqual(suspect(), { catalogue: true, quotes: [] }, "and it stays so");
  new Trial("w", { quote: "q" });
  assert.deepEqual(fallen(undefined), { catalogue: true, quotes: ["q"] });
  absolve({ catalogue: true });
  assert.deepEqual(suspect(), { catalogue: false, quotes: ["q"] });
  absolve({ quote: "q" });
  assert.deepEqual(Object.keys(localStorage), []);
});

test("what a window that lives is trying is not suspect", () => {
  const trial = new Trial("w", both);
  assert.deepEqual(fallen(new Set(["w"])), { catalogue: false, quotes: [] });
  trial.failed();
  assert.deepEqual(suspect(), { catalogue: true, quotes: [] });
  assert.deepEqual(Object.keys(localStorage), ["boxwright.suspect"]);
});

test("who closes the page at once blames nothing, who waited in vain does", () => {
  mock.timers.enable({ apis: ["Date"] });
  new Trial("w", both).left();
  assert.deepEqual(fallen(new Set()).catalogue, false);
  const trial = new Trial("w", both);
  mock.timers.tick(11_000);
  trial.left();
  assert.deepEqual(fallen(new Set()).catalogue, true);
  mock.timers.reset();
});

test("marks that nobody can read harm nothing", () => {
  localStorage.setItem("boxwright.suspect", "[");
  localStorage.setItem("boxwright.trying.x", "7");
  assert.deepEqual(fallen(new Set()), { catalogue: false, quotes: [] });
  localStorage.setItem("boxwright.suspect", '{"catalogue":1,"quotes":[1,"a",null]}');
  assert.deepEqual(suspect(), { catalogue: false, quotes: ["a"] });
  accuse({ quote: "a" });
  assert.deepEqual(suspect().quotes, ["a"], "once");
});
