// The panel of what is kept, without a page: its rows and the files they save.
import { test } from "node:test";
import assert from "node:assert/strict";
import { exported, rows } from "./rescue.js";

const record = (id, title, more) => ({ id, count: 1, saved: "2026-11-25T10:00:00Z", at: 1, draft: { title }, view: null,
  pins: [], gist: { name: title, line: "USD 1" }, ...more });
const step = (title) => ({ draft: { title }, said: "", when: "" });
const all = {
  quotes: [record("q", "Medic 1"), { id: "odd", draft: 7 }],
  steps: [
    [["q", 0], step("before")],
    [["q", 1], step("Medic 1")],
    [["odd", 0], "x"],
  ],
  single: [
    ["last", "q"],
    ["catalogue", "{}"],
  ],
  texts: [
    ["boxwright.costs.1", "sealed"],
    ["boxwright.screen", "x"],
  ],
};

test("every quote goes into one file that the page takes in again", () => {
  const file = JSON.parse(exported(all.quotes, all.steps, "{}"));
  assert.equal(file.format, "boxwright-kept/1");
  assert.deepEqual(file.quotes, [{ id: "q", name: "Medic 1", line: "USD 1", saved: "2026-11-25T10:00:00Z",
    draft: { title: "Medic 1" }, pins: [], steps: [step("before"), step("Medic 1")], at: 1 }]);
  assert.equal(file.catalogue, "{}");
});

test("each thing can be saved and taken out, and tried again where the page did not start with it", () => {
  const done = [];
  const note = (what) => (...args) => done.push([what, ...args]);
  const list = rows(all, {
    keep: { drop: note("drop"), put: note("put"), dropText: note("text") },
    trial: { suspect: () => ({ catalogue: true, quotes: ["q"] }), absolve: note("absolve") },
  });
  assert.deepEqual(
    list.map((r) => [r.name, !!r.suspect]),
    [["Medic 1", true], ["A quote that cannot be read", false], ["Catalogue", true], ["Cost sheet", false]],
  );
  for (const r of list) {
    r.drop();
    r.suspect?.();
  }
  assert.deepEqual(done, [["drop", "q"], ["absolve", { quote: "q" }], ["drop", "odd"], ["put", "catalogue", undefined],
    ["absolve", { catalogue: true }], ["text", "boxwright.costs.1"]]);
  assert.match(list[1].text(), /"draft": 7/, "what cannot be read is saved as it is");
  assert.match(list[1].text(), /"x"/);
  assert.equal(list[2].text(), "{}");
});
