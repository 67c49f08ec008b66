// Undo, redo and the records of quotes, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { History } from "./history.js";
import { MAX_STEPS } from "./protocol.js";
import { newState } from "./state.js";
import { Transport } from "./transport.js";

/** A page around a history: what it keeps is in records, what it asks in bars. */
function page() {
  const state = newState("", { sealed: "", open: "" });
  const asked = [];
  const transport = new Transport(state, {
    ask: async (request) => (asked.push(request), { rehearsed: true }),
    base: () => "https://quotes.example/",
    shown: () => "",
    working() {},
    show() {},
    failed() {},
  });
  const records = new Map();
  const bars = [];
  const said = [];
  const others = { gone() {} };
  const offered = { text: "", answers: [] };
  const keep = {
    answer: true,
    load: async (id) => records.get(id) || null,
    list: async () => [...records.values()],
    put: async () => true,
    drop: async (id) => records.delete(id),
    add: async ({ id, name, line, at, steps, draft, saved }) => {
      if (keep.answer !== true) throw new Error("refused");
      records.set(id, { id, count: 1, saved, at, first: 0, steps, draft, gist: { name, line } });
    },
    why: () => "refused",
    save: async (record, step, isNew) => {
      const old = records.get(record.id) || { steps: [], first: 0 };
      const steps = isNew ? [...old.steps.slice(0, record.at - old.first), step] : old.steps;
      if (keep.answer === true) records.set(record.id, { ...record, steps, first: old.first });
      return keep.answer;
    },
  };
  const history = new History(state, transport, {
    keep,
    tabs: { claim: async () => true, freed: () => new Promise((r) => (others.gone = r)), tell() {} },
    copies: { later() {} },
    bar: {
      ask: (about, text) => (bars.push(about), said.push(text)),
      offer: (about, text, answers) => Object.assign(offered, { text, answers }),
      withdraw: (about) => {
        if (about === "deleted") Object.assign(offered, { text: "", answers: [] });
        if (bars.includes(about)) bars.splice(bars.indexOf(about), 1);
      },
    },
    reset() {},
    trouble() {},
  });
  const reply = (title, more) => ({
    draft: { title },
    view: { area: "needs" },
    pins: [],
    gist: { name: title, line: "" },
    ...more,
  });
  const done = (title, more, acts = [{ do: "set" }]) => history.take(reply(title, more), acts);
  return { state, transport, history, keep, records, bars, said, others, offered, asked, reply, done };
}

const titles = ({ state }) => state.trail.map((m) => m.draft.title);

/** settled is when it is known who holds the quote, and what waits for that is done. */
const settled = async (p) => {
  await p.state.here.held;
  await new Promise((r) => setTimeout(r));
};

test("each change is one more state, and showing the same again is none", async () => {
  const p = page();
  p.history.begin();
  await settled(p);
  p.done("a", {}, [{ do: "start" }]);
  p.done("b");
  p.done("b");
  assert.deepEqual(titles(p), ["a", "b"]);
  assert.equal(p.records.get(p.state.here.id).draft.title, "b");
  await new Promise((r) => setTimeout(r));
  assert.deepEqual(p.asked, [], "what is kept as it was before asks for nothing");
});

test("undo goes back, and a change after it takes the place of what was undone", async () => {
  const p = page();
  p.history.begin();
  for (const title of ["a", "b", "c"]) p.done(title);
  await p.history.go(-2);
  assert.equal(p.state.draft.title, "a");
  await p.history.go(-1); // there is nothing before the first
  assert.equal(p.state.draft.title, "a");
  await p.history.goTo(1);
  assert.equal(p.state.draft.title, "b");
  assert.deepEqual(p.asked.at(-1).acts, [{ do: "restore", id: "Done again", value: "the change before" }]);
  p.done("d");
  assert.deepEqual(titles(p), ["a", "b", "d"]);
});

test("the oldest states go when there are too many, and keep their numbers", () => {
  const p = page();
  p.history.begin();
  for (let i = 0; i < MAX_STEPS + 5; i++) p.done(`t${i}`);
  assert.equal(p.state.trail.length, MAX_STEPS);
  assert.equal(p.state.first, 5);
  assert.equal(p.state.at, MAX_STEPS - 1);
});

test("a link begins a record of its own, and so does a quote that cannot be used", async () => {
  for (const [more, acts] of [
    [{ do: [{ do: "new-quote" }] }, [{ do: "open-link" }]],
    [{ fault: "The kept draft could not be used." }, [{ do: "start" }]],
  ]) {
    const p = page();
    p.history.begin();
    p.done("a");
    const before = p.state.here.id;
    await settled(p);
    p.done("b", more, acts);
    assert.notEqual(p.state.here.id, before);
    assert.deepEqual(titles(p), ["b"]);
    assert.equal(p.records.get(before).draft.title, "a");
  }
});

for (const [what, choose] of [
  ["a copy", (p) => p.history.copy()],
  ["taking it over", (p) => p.history.takeOver()],
]) {
  test(`what the core has not answered yet is done after ${what} as well`, async () => {
    const p = page();
    p.history.begin();
    await settled(p);
    p.done("a", {}, [{ do: "start" }]);
    await settled(p);
    p.history.lost(p.state.here);
    await settled(p);
    let answer = (/** @type {object} */ _) => {};
    p.transport.around.ask = (request) => (p.asked.push(request), new Promise((r) => (answer = r)));
    p.transport.around.show = (reply, acts) => p.history.take(reply, acts);
    p.transport.act({ do: "set", id: "title", value: "typed" });
    const chosen = choose(p); // while the core still works on it
    answer(p.reply("typed"));
    p.transport.around.ask = async (request) => (p.asked.push(request), { rehearsed: true });
    await chosen;
    await p.transport.idle;
    const done = p.asked.flatMap((r) => r.acts.filter((a) => a.do === "set").map((a) => a.value));
    assert.deepEqual(done, ["typed", "typed"], "once in vain, and once where it was decided to be");
    assert.deepEqual(p.history.refused, []);
  });
}

test("what was done before another window said it holds the quote is done when it is taken over", async () => {
  const p = page();
  let holds = (/** @type {boolean} */ _) => {};
  p.history.around.tabs.claim = () => new Promise((r) => (holds = r));
  p.history.begin();
  p.done("a", {}, [{ do: "start" }]);
  p.done("typed", {}, [{ do: "set", id: "title", value: "typed" }]);
  holds(false);
  await settled(p);
  p.history.around.tabs.claim = async () => true;
  await p.history.takeOver();
  await p.transport.idle;
  const done = p.asked.flatMap((r) => r.acts.filter((a) => a.do === "set").map((a) => a.value));
  assert.deepEqual(done, ["typed"]);
});

test("a change of a quote that another window holds is refused", async () => {
  const p = page();
  p.history.begin();
  p.done("a");
  p.history.lost(p.state.here);
  assert.deepEqual(p.bars, ["taken"]);
  assert.equal(p.transport.request([]).elsewhere, true, "the head does not say that it is saved");
  await settled(p);
  assert.equal(p.done("b"), false);
  assert.equal(p.state.draft.title, "a");
  assert.deepEqual(p.transport.queue, [], "what was typed stays in its field");
  assert.equal(p.done("a"), true, "showing it is allowed");
  assert.equal(p.done("c", {}, [{ do: "set", id: "title" }]), false);
  await settled(p);
  await p.history.takeOver();
  await p.transport.idle;
  const sent = p.asked.flatMap((r) => r.acts).filter((a) => a.do !== "rest");
  assert.deepEqual(sent, [{ do: "start" }, { do: "set" }, { do: "set", id: "title" }], "it is done when taken over");
  assert.equal(p.transport.request([]).elsewhere, undefined);
  assert.deepEqual(p.history.refused, []);
});

test("what became of a quote that another window holds is said", async () => {
  const p = page();
  p.history.begin();
  await settled(p);
  p.done("a");
  await settled(p);
  await p.history.heard();
  p.history.lost(p.state.here);
  const there = p.records.get(p.state.here.id);
  await p.history.heard();
  assert.match(p.said.at(-1), /^This quote is open in another window\..* at a time\.$/, "only others changed");
  p.records.set(there.id, { ...there, draft: { title: "b" }, count: there.count + 1 });
  await p.history.heard();
  assert.match(p.said.at(-1), /open in another window.*what you read here is older\.$/);
  p.others.gone();
  await settled(p);
  assert.match(p.said.at(-1), /^The other window that had this quote open is closed.* older\.$/);
});

test("another window that wrote the record is found out when it is kept", async () => {
  const p = page();
  p.history.begin();
  p.keep.answer = "taken";
  p.done("a");
  await new Promise((r) => setTimeout(r));
  assert.equal(p.state.here.mine, false);
  assert.deepEqual(p.bars, ["taken"]);
});

test("a browser that stops keeping is told of, and lists nothing", async () => {
  const p = page();
  p.history.begin();
  p.keep.answer = false;
  p.done("a");
  await new Promise((r) => setTimeout(r));
  assert.equal(p.state.kept, false);
  assert.deepEqual(p.state.saved, []);
});

test("where nothing is kept, nothing is listed, and undo leads back to the quote before", async () => {
  const p = page();
  p.keep.answer = false;
  p.state.kept = false;
  p.history.begin();
  p.done("a", {}, [{ do: "start" }]);
  p.done("b");
  await settled(p);
  assert.deepEqual(p.state.saved, []);
  await p.history.open("");
  assert.match(p.said.at(-1), /^The quote before this one is not saved\. Undo brings it back/);
  p.done("other", {}, [{ do: "start" }]);
  assert.deepEqual(titles(p), ["a", "b", "other"]);
  await p.history.go(-1);
  assert.equal(p.state.draft.title, "b");
  p.keep.answer = true;
  p.done("c");
  await settled(p);
  assert.deepEqual([p.state.kept, p.state.saved.length], [true, 1], "kept again, it is listed");
});

test("a kept quote comes back with its states and where it was", async () => {
  const p = page();
  p.history.begin();
  for (const title of ["a", "b"]) p.done(title);
  const { id } = p.state.here;
  await p.history.open("");
  assert.equal(p.state.draft, undefined, "a new one is begun by the core");
  await p.history.open(id);
  assert.equal(p.state.draft.title, "b");
  assert.deepEqual(titles(p), ["a", "b"]);
  assert.equal(p.state.at, 1);
  assert.deepEqual(p.asked.at(-1).acts, [{ do: "start", id: "opened" }]);
});

test("a kept quote whose oldest states are gone comes back where it was", async () => {
  const p = page();
  const steps = ["c", "d", "e"].map((title) => ({ draft: { title }, said: title, when: "" }));
  p.records.set("q", { id: "q", count: 6, at: 3, first: 2, draft: { title: "d" }, view: null, pins: [], steps });
  await p.history.open("q");
  assert.deepEqual([p.state.at, p.state.first, p.state.here.count], [1, 2, 6]);
  await p.history.go(-1);
  assert.equal(p.state.draft.title, "c");
  await p.history.goTo(4);
  assert.equal(p.state.draft.title, "e");
});

test("kept quotes are handed to the core one by one", async () => {
  const p = page();
  for (const id of ["x", "y"]) p.records.set(id, { id, draft: { title: id }, steps: [], first: 0 });
  await p.history.sendKept(true);
  await p.history.sendKept(false);
  await p.history.sendKept(false);
  await p.transport.idle;
  const sent = p.asked.flatMap((r) => r.acts).map(({ id, on }) => [id, on]);
  assert.deepEqual(sent, [
    ["x", true],
    ["y", false],
    ["", false],
  ]);
});

test("nothing is written before it is known that no other window holds the quote", async () => {
  const p = page();
  let answer = () => {};
  p.history.around.tabs.claim = () => new Promise((r) => (answer = r));
  p.history.hold({ id: "q", count: 4, mine: true });
  p.done("a");
  await new Promise((r) => setTimeout(r));
  assert.equal(p.records.size, 0);
  answer(false);
  await settled(p);
  assert.equal(p.records.size, 0, "another window holds it");
  assert.deepEqual(p.bars, ["taken"]);

  p.history.around.tabs.claim = async () => true;
  await p.history.copy();
  await p.transport.idle;
  p.done("a", {}, [{ do: "restore" }]);
  await settled(p);
  const kept = [...p.records.values()].map((r) => r.draft.title);
  assert.deepEqual(kept, ["a"], "the copy has what was done here");
});

test("a copy is listed at once, beside what it was made of", async () => {
  const p = page();
  p.done("a");
  await settled(p);
  const was = p.state.here.id;
  await p.history.copy();
  await p.transport.idle;
  const listed = p.state.saved.map((s) => [s.id, s.name]);
  assert.deepEqual(listed, [[p.state.here.id, "a"], [was, "a"]]);
  p.done("b");
  await settled(p);
  assert.deepEqual(p.state.saved.map((s) => s.name), ["b", "a"], "and once");
});

test("deleted quotes are put back with their earlier states, the last one first", async () => {
  const p = page();
  for (const id of ["a", "b"]) {
    p.records.set(id, { id, count: 3, saved: `2026-11-2${id}`, at: 8, first: 7, draft: { title: id },
      gist: { name: id, line: "" }, steps: [{ draft: { title: "was" } }, { draft: { title: id } }] });
    await p.history.drop(id);
  }
  assert.deepEqual([p.records.size, p.state.saved.length, p.offered.text], [0, 0, "Deleted: b."]);
  const undo = () => p.offered.answers[0][1]();

  p.keep.answer = false;
  await undo();
  assert.deepEqual([p.records.size, p.offered.text], [0, "Deleted: b."], "refused, it can be asked again");
  p.keep.answer = true;

  await undo();
  assert.deepEqual([p.state.saved.map((s) => s.name), p.offered.text], [["b"], "Deleted: a."]);
  await undo();
  assert.deepEqual([p.state.saved.map((s) => s.name), p.offered.text], [["b", "a"], ""]);
  assert.deepEqual(p.records.get("a").steps.map((m) => m.draft.title), ["was", "a"]);
  assert.equal(p.records.get("a").at, 1, "at the state it was at");
});

test("what was deleted is given up when asked, and when nothing is to stay here", async () => {
  const p = page();
  p.records.set("a", { id: "a", count: 1, saved: "", at: 0, first: 0, draft: {}, gist: { name: "a" }, steps: [] });
  await p.history.drop("a");
  p.offered.answers[1][1]();
  assert.deepEqual([p.history.deleted, p.offered.text], [[], ""]);
});

test("the list of saved quotes is drawn anew when a link has begun one", async () => {
  const p = page();
  p.done("a");
  await settled(p);
  p.done("b", { view: { area: "quote" }, do: [{ do: "new-quote" }] });
  await settled(p);
  const { acts, saved } = p.asked.at(-1);
  assert.deepEqual([acts.map((a) => a.do), saved.map((s) => s.name)], [["rest"], ["b", "a"]]);
});
