// What is read from storage, whoever wrote it there.
import { test } from "node:test";
import assert from "node:assert/strict";
import * as stored from "./stored.js";

const good = { id: "q", count: 3, saved: "2026-11-25", at: 2, draft: { title: "a" }, view: { area: "unit" }, pins: ["p"],
  gist: { name: "Medic 1", line: "USD 1", issued: "q=1", weighed: [1] } };

test("a record comes back as it was written", () => {
  assert.deepEqual(stored.record(good), good);
});

test("what is no record at all is null", () => {
  const { draft, id, ...rest } = good;
  for (const raw of [undefined, null, 1, "x", [], {}, rest, { ...rest, id }, { ...rest, draft }, { ...good, draft: [] },
    { ...good, id: 7 }, { ...good, id: "x".repeat(200) }, { ...good, draft: "a" }])
    assert.equal(stored.record(raw), null, JSON.stringify(raw)?.slice(0, 60));
});

test("what has the wrong type is done without", () => {
  const odd = { ...good, count: "3", saved: 5, at: -1, view: "unit", pins: "p", gist: 9 };
  assert.deepEqual(stored.record(odd), { id: "q", count: 0, saved: "", at: 0, draft: { title: "a" }, view: null, pins: [],
    gist: { name: "A quote", line: "" } });
  assert.deepEqual(stored.record({ ...good, pins: [1, "p", {}] }).pins, ["p"]);
  assert.equal(stored.record({ ...good, gist: { name: "x".repeat(9999) } }).gist.name.length, 300);
  for (const n of [NaN, Infinity, 1.5, -2, {}, null]) assert.equal(stored.count({ count: n }), 0, String(n));
});

test("a trail is what follows each other around the state shown", () => {
  const m = (n) => ({ draft: { n }, said: "", when: "" });
  const at = (shown, entries) =>
    stored.trail(entries.map(([, v]) => v), entries.map(([n]) => ["q", n]), shown);
  const numbers = ({ steps, first }) => [first, steps.map((s) => s.draft.n)];
  assert.deepEqual(numbers(at(2, [[0, m(0)], [1, m(1)], [2, m(2)], [3, m(3)]])), [0, [0, 1, 2, 3]]);
  assert.deepEqual(numbers(at(3, [[0, m(0)], [2, m(2)], [3, m(3)]])), [2, [2, 3]], "a gap");
  assert.deepEqual(numbers(at(0, [[0, m(0)], [1, "x"], [2, m(2)]])), [0, [0]], "one that cannot be read");
  assert.deepEqual(numbers(at(5, [[0, m(0)]])), [5, []], "the state shown is not there");
  assert.deepEqual(stored.trail([m(0)], ["q"], 0).steps, [], "a key that is none");
});

test("a note is changes of quotes, or nothing", () => {
  const step = { draft: { title: "a" }, said: "", when: "" };
  assert.deepEqual(stored.changes(JSON.stringify([[good, step, true], [good, null, false]])), [
    [good, step, true],
    [good, undefined, false],
  ]);
  for (const note of ["", "[", "{}", "null", "[1]", '[[{"id":"q"},null,true]]', JSON.stringify([[good, { draft: 1 }, true]]),
    JSON.stringify([[{ ...good, count: 0 }, step, true]])])
    assert.equal(stored.changes(note), null, note.slice(0, 40));
});

test("an object that was written as text, whatever stands there", () => {
  for (const written of ["", "x", "[]", "1", "null"]) assert.deepEqual(stored.json(written), {});
  assert.deepEqual(stored.json('{"a":1}'), { a: 1 });
});

test("no value is too odd to be read", () => {
  const odd = [undefined, null, true, 0, -1, 1e300, NaN, "", "x", "\u202e", [], [[]], {}, { a: 1 }, { length: 3 }, () => {}];
  const pick = (n) => odd[n % odd.length];
  for (let i = 0; i < 4000; i++) {
    const raw = { id: pick(i), count: pick(i >> 1), saved: pick(i * 3), at: pick(i * 5), draft: pick(i * 7), view: pick(i * 11),
      pins: pick(i * 13), gist: { name: pick(i), line: pick(i * 3), issued: pick(i * 5), weighed: pick(i * 7) } };
    const r = stored.record(raw);
    if (r) assert.equal(typeof r.draft, "object");
    stored.trail([raw, pick(i)], [pick(i), ["q", pick(i * 3)]], 0);
  }
});

test("a signed quote that an older version of the page kept is listed with number and revision", () => {
  const old = (draft) => stored.record({ id: "q", draft, gist: { name: "n", line: "l" } }).gist;
  const { number, rev } = old({ issued: "q=x", number: "2026-114", rev: 2 });
  assert.deepEqual([number, rev], ["2026-114", 2]);
  assert.deepEqual(Object.keys(old({ number: "2026-114", rev: 2 })), ["name", "line"], "a draft has neither yet");
  assert.equal(old({ issued: "q=x", number: 7, rev: "2" }).number, undefined);
});

test("a mark tells states of a quote apart, and not how often it was looked at", () => {
  const at = (n, title, more) => stored.mark({ at: n, draft: { title }, ...more });
  assert.equal(at(1, "a", { count: 1 }), at(1, "a", { count: 2 }));
  assert.equal(new Set([at(1, "a"), at(2, "a"), at(1, "b")]).size, 3);
});
