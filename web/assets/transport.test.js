// What is sent to the core and when, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { newState } from "./state.js";
import { Transport } from "./transport.js";

/** A transport whose core answers when told to. */
function page() {
  const state = newState("", { sealed: "", open: "pub" });
  const asked = [];
  const waiting = [];
  const shown = [];
  const failed = [];
  const transport = new Transport(state, {
    ask: (request) => (asked.push(request), new Promise((resolve, reject) => waiting.push({ resolve, reject }))),
    base: () => "https://quotes.example/",
    shown: () => "s1",
    working() {},
    show: (reply, acts) => shown.push([reply, acts]),
    failed: (why) => failed.push(why),
  });
  const answer = async (reply = {}) => (waiting.shift().resolve(reply), await new Promise((r) => setTimeout(r)));
  const fail = async (why) => (waiting.shift().reject(new Error(why)), await new Promise((r) => setTimeout(r)));
  return { state, transport, asked, shown, failed, answer, fail };
}

const does = (request) => request.acts.map((a) => a.do);

test("what is pressed while the core works goes together in the next request", async () => {
  const p = page();
  for (const name of ["start", "go", "pick", "why"]) p.transport.act({ do: name });
  assert.equal(p.asked.length, 1);
  await p.answer();
  assert.deepEqual(p.asked.map(does), [["start"], ["go", "pick", "why"]]);
  await p.answer();
  await p.transport.idle;
  assert.equal(p.shown.length, 2);
});

test("until the core is there what is pressed gathers, and goes in one request", async () => {
  let come = () => {};
  const asked = [];
  const transport = new Transport(newState("", { sealed: "", open: "" }), {
    ask: async (request) => (asked.push(request), {}),
    ready: new Promise((resolve) => (come = resolve)),
    base: () => "",
    shown: () => "",
    working() {},
    show() {},
    failed() {},
  });
  transport.act({ do: "start" });
  transport.act({ do: "pick" });
  await null;
  assert.equal(asked.length, 0);
  assert.ok(transport.waiting);
  come();
  await transport.idle;
  assert.deepEqual(asked.map(does), [["start", "pick"]]);
  assert.equal(transport.waiting, undefined);
});

test("a request that fails is told of, and what waits goes on", async () => {
  const p = page();
  p.transport.act({ do: "pick" });
  p.transport.act({ do: "go" });
  await p.fail("no answer in time");
  assert.deepEqual(p.failed, ["no answer in time"]);
  assert.deepEqual(does(p.asked.at(-1)), ["go"]);
});

test("a rehearsal that fails is nobody's trouble, and its answer is not shown", async () => {
  const p = page();
  p.transport.act({ do: "rehearse" });
  await p.fail("gone");
  p.transport.act({ do: "rehearse" });
  await p.answer({ rehearsed: true });
  assert.deepEqual([p.failed, p.shown], [[], []]);
});

test("an answer for a quote that is no longer here is not shown", async () => {
  const p = page();
  p.transport.act({ do: "pick" });
  p.state.here = { id: "other", count: 0, mine: true };
  await p.answer();
  assert.deepEqual(p.shown, []);
});

test("the lists of kept quotes go along where they are shown", async () => {
  const p = page();
  p.state.saved = [{ id: "x", name: "X", line: "", when: "", weighed: [1] }];
  p.state.trail = Array.from({ length: 40 }, (_, i) => ({ draft: {}, said: `s${i}`, when: "" }));
  p.state.first = 7;
  p.state.here = { id: "h", count: 1, mine: true };
  p.state.saved.push({ id: "h", name: "H", line: "", when: "", weighed: [2] });
  const plain = p.transport.request([{ do: "go", id: "weight" }]);
  assert.equal(plain.saved, undefined);
  assert.deepEqual(plain.weighed, [1], "of the other quotes alone");
  p.state.bids = "{}";
  assert.equal(p.transport.request([{ do: "go", id: "needs" }]).bids, undefined, "only where it is needed");
  assert.equal(p.transport.request([{ do: "paste-list", value: "Siren" }]).bids, "{}");
  assert.equal(p.transport.request([{ do: "set", id: "req.3.pick", value: "-" }]).bids, "{}");
  const quote = p.transport.request([{ do: "go", id: "quote" }]);
  const [x, h] = [
    ["x", false, undefined],
    ["h", true, undefined],
  ];
  assert.deepEqual(
    quote.saved.map((s) => [s.id, s.here, s.weighed]),
    [x, h],
  );
  assert.equal(quote.trail.length, 30);
  assert.equal(quote.trail.at(-1).n, 46);
});

test("the quote area is asked again when it comes up without the lists", async () => {
  const p = page();
  p.transport.act({ do: "open-link" });
  p.state.view = { area: "quote" };
  await p.answer();
  assert.deepEqual(does(p.asked[1]), ["restore"]);
  assert.ok(p.asked[1].saved);
});

test("it comes back for the rest of an answer", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const p = page();
  p.transport.comeBack({ partial: true, undecided: true }, [{ do: "pick" }]);
  t.mock.timers.tick(100);
  assert.deepEqual(p.asked[0].acts, [{ do: "rest" }]);
  assert.equal(p.transport.effort, 0, "what is undecided waits until the answer is whole");
});

test("it comes back for the rest of an answer, unless something is pressed first", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const p = page();
  p.transport.comeBack({ partial: true }, [{ do: "pick" }]);
  p.transport.act({ do: "go" });
  t.mock.timers.tick(100);
  assert.deepEqual(p.asked.map(does), [["go"]], "the press goes first");
});

test("what comes in slices is asked for again until it is whole, and shown once", async () => {
  const p = page();
  p.transport.act({ do: "rest" });
  await p.answer({ working: true });
  await p.answer({ working: true });
  assert.deepEqual(p.asked.map(does), [["rest"], ["rest"], ["rest"]]);
  await p.answer({ say: "whole" });
  await p.transport.idle;
  assert.deepEqual(p.shown.map(([reply]) => reply.say), ["whole"]);
});

test("a press between two slices goes next, and nothing of them is shown", async () => {
  const p = page();
  p.transport.act({ do: "rest" });
  p.transport.act({ do: "pick" });
  await p.answer({ working: true });
  assert.deepEqual(p.asked.map(does), [["rest"], ["pick"]]);
  await p.answer({ say: "picked" });
  await p.transport.idle;
  assert.deepEqual(p.shown.map(([reply]) => reply.say), ["picked"]);
});

test("each time it comes back for what is undecided it asks for more effort", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const p = page();
  p.transport.comeBack({ undecided: true }, [{ do: "pick" }]);
  t.mock.timers.tick(100);
  p.transport.comeBack({ undecided: true }, [{ do: "decide" }]);
  assert.deepEqual(p.asked[0].acts, [{ do: "decide", value: "1" }]);
  assert.equal(p.transport.effort, 2);
  p.transport.comeBack({ partial: true }, [{ do: "pick" }]);
  assert.equal(p.transport.effort, 0, "a press begins anew");
});

test("work that needs the core to be quiet waits for it, and what is pressed waits for the work", async () => {
  const p = page();
  p.transport.act({ do: "pick" });
  const steps = [];
  const alone = p.transport.alone(async () => {
    steps.push(p.asked.length);
    p.transport.act({ do: "go" });
    await null;
    steps.push(p.asked.length);
  });
  await p.answer();
  await alone;
  assert.deepEqual(steps, [1, 1]);
  assert.deepEqual(p.transport.queue, [{ do: "go" }]);
});

test("what is saved is shown anew where it is in sight when the core has answered", async () => {
  const p = page();
  p.transport.act({ do: "go", id: "quote" });
  p.transport.redraw();
  p.state.view = { area: "quote" };
  await p.answer();
  assert.deepEqual(p.asked.map(does).slice(0, 2), [["go"], ["rest"]]);
  const elsewhere = page();
  elsewhere.state.view = { area: "unit" };
  await elsewhere.transport.redraw();
  assert.deepEqual(elsewhere.asked, []);
});
