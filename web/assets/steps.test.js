// What the core asks the main thread for, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { perform } from "./steps.js";
import { newState } from "./state.js";

/** A page whose browser keeps things, or not. */
function page(keeps = true) {
  const calls = [];
  const note =
    (name, answer) =>
    (...all) => (calls.push([name, ...all]), answer);
  const state = newState("", { sealed: "", open: "" });
  return {
    calls,
    state,
    history: { sendKept: note("sendKept"), keepMoved: note("keepMoved") },
    files: { saveStep: note("saveStep"), saveSingle: note("saveSingle"), importKept: note("importKept") },
    keep: {
      put: async (...all) => note("put", keeps)(...all),
      saveCosts: note("saveCosts", keeps),
      saveKey: note("saveKey", keeps),
      saveBids: note("saveBids", keeps),
    },
    trouble: note("trouble"),
    tell: note("tell"),
  };
}

const turn = () => new Promise((r) => setImmediate(r));

test("what is kept is kept in the state too, and in the browser", async () => {
  const p = page();
  perform({ do: "keep-costs", text: "sealed costs" }, p);
  perform({ do: "keep-key", text: "sealed key", id: "public" }, p);
  perform({ do: "keep-bids", text: "{}" }, p);
  perform({ do: "keep-catalogue", text: "{}" }, p);
  await turn();
  assert.equal(p.state.costs, "sealed costs");
  assert.deepEqual(p.state.key, { sealed: "sealed key", open: "public" });
  assert.equal(p.state.catalogue, "{}");
  const kept = [
    ["saveCosts", "sealed costs"],
    ["saveKey", "sealed key", "public"],
    ["saveBids", "{}"],
    ["put", "catalogue", "{}"],
  ];
  assert.deepEqual(p.calls, kept);
});

test("a browser that keeps nothing is told of, and the page works with it", async () => {
  const p = page(false);
  perform({ do: "keep-costs", text: "c" }, p);
  perform({ do: "keep-key", text: "k", id: "o" }, p);
  perform({ do: "keep-catalogue", text: "{}" }, p);
  await turn();
  const said = p.calls.filter(([name]) => name === "trouble").map(([, text]) => text);
  assert.equal(said.length, 3);
  for (const [i, word] of ["cost sheet", "sealed key", "catalogue"].entries()) assert.match(said[i], new RegExp(word));
  assert.deepEqual([p.state.costs, p.state.catalogue], ["c", "{}"]);
  const unsaid = p.calls.filter(([name, text]) => name === "tell" && text === "");
  assert.equal(unsaid.length, 2, "nothing says that cost sheet and key are saved");
});

test("what is saved and read in goes to the files, kept quotes to the history", () => {
  const p = page();
  const steps = ["save", "embed", "keep-moved"].map((name) => ({ do: name, name: "x" }));
  for (const step of steps) perform(step, p);
  perform({ do: "import", text: "quotes" }, p);
  perform({ do: "send-kept", id: "1" }, p);
  perform({ do: "send-kept" }, p);
  perform({ do: "new-quote" }, p); // for somebody else
  assert.deepEqual(p.calls, [
    ["saveStep", steps[0]],
    ["saveSingle", steps[1]],
    ["keepMoved", steps[2]],
    ["importKept", "quotes", undefined],
    ["sendKept", true],
    ["sendKept", false],
  ]);
});

test("what is in folds is shown before it has the focus", () => {
  const did = [];
  const fold = (name, outer) => ({
    querySelector: () => null,
    setAttribute: (what) => did.push([name, what]),
    parentElement: { closest: () => outer },
  });
  const inner = fold("inner", fold("outer", null));
  globalThis.document = { getElementById: () => ({ closest: () => inner, focus: () => did.push(["focus"]) }) };
  perform({ do: "focus", id: "a" }, page());
  assert.deepEqual(did, [["inner", "open"], ["outer", "open"], ["focus"]]);
});

test("the reader is taken to what the core names", () => {
  const did = [];
  globalThis.scrollTo = (x, y) => did.push(["scroll", x, y]);
  globalThis.print = () => did.push(["print"]);
  const element = (id) => ({
    focus: (how) => did.push([id, "focus", how]),
    scrollIntoView: (how) => did.push([id, "show", how.block]),
    closest: () => null,
  });
  globalThis.document = { getElementById: (id) => (id === "gone" ? null : element(id)) };
  for (const [name, id] of [["focus", "a"], ["focus", "gone"], ["show", "b"], ["reveal", "c"], ["top"], ["print"]]) {
    perform({ do: name, id }, page());
  }
  const top = [
    ["scroll", 0, 0],
    ["main", "focus", { preventScroll: true }],
  ];
  const shown = [
    ["a", "focus", undefined],
    ["b", "show", "nearest"],
    ["c", "show", "start"],
    ["c", "focus", { preventScroll: true }],
  ];
  assert.deepEqual(did, [...shown, ...top, ["print"]]);
});

test("a link is copied with its address, other text as it is; where that is refused it is marked", async () => {
  const copied = [];
  const field = { focus() {}, select: () => copied.push("marked") };
  const clipboard = { writeText: async (text) => copied.push(text) };
  Object.defineProperty(globalThis, "navigator", { value: { clipboard }, configurable: true });
  globalThis.location = { href: "https://quotes.example/a/#q=old" };
  globalThis.document = { getElementById: (id) => (id === "link-text" ? field : null) };
  perform({ do: "copy", text: "#q=AAAA" }, page());
  perform({ do: "copy", text: "a list" }, page());
  await turn();
  assert.deepEqual(copied, ["https://quotes.example/a/#q=AAAA", "a list"]);
  clipboard.writeText = async () => Promise.reject(new Error("refused"));
  const refused = page();
  perform({ do: "copy", text: "#q=AAAA" }, refused);
  await turn();
  assert.equal(copied.at(-1), "marked");
  assert.match(refused.calls[0].join(), /^tell,.*copy it with Ctrl C/, "and nobody is told that it was copied");
});
