// Names of strangers in sentences of the page.
import { test } from "node:test";
import assert from "node:assert/strict";
import { named } from "./letters.js";

test("a name turns nothing of the sentence that it stands in", () => {
  assert.equal(named("Medic 7.json"), "Medic 7.json");
  assert.equal(named("\u202enosj.exe"), "nosj.exe");
  assert.equal(named("a\u200fb\u2067c\u0007"), "abc");
  assert.equal(named("רכב 7"), "\u2068רכב 7\u2069");
  assert.equal(named("\u2069רכב"), "\u2068רכב\u2069");
});
