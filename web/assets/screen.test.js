// How the page is brought to a reply, on elements that know only what that takes.
import { beforeEach, mock, test } from "node:test";
import assert from "node:assert/strict";
import { Screen } from "./screen.js";

/** An element of a region: its id, and its HTML as it was put there. */
class Piece {
  constructor(html) {
    this.html = html;
    this.id = /id="([^"]*)"/.exec(html)?.[1] || "";
    this.holds = []; // what else is inside
  }

  remove() {
    this.parent.childNodes.splice(this.parent.childNodes.indexOf(this), 1);
  }

  contains(other) {
    return other === this || this.holds.includes(other);
  }
}

class Region {
  childNodes = [];
  hidden = true;
  textContent = "";

  set innerHTML(html) {
    this.childNodes = html
      .split(/(?<=<\/p>)/)
      .filter(Boolean)
      .map((piece) => new Piece(piece));
    for (const node of this.childNodes) node.parent = this;
  }

  insertBefore({ childNodes }, before) {
    for (const node of childNodes) node.parent = this;
    this.childNodes.splice(before ? this.childNodes.indexOf(before) : this.childNodes.length, 0, ...childNodes);
  }
}

let parts, boxes;
beforeEach(() => {
  parts = {};
  boxes = [];
  globalThis.matchMedia = () => ({ matches: false });
  globalThis.document = {
    title: "",
    activeElement: null,
    documentElement: { dataset: {} },
    getElementById: (id) => (parts[id] ??= new Region()),
    querySelectorAll: (query) => (query.startsWith("#main input") ? boxes : []),
    createElement: () => {
      const content = new Region();
      return {
        content,
        set innerHTML(html) {
          content.innerHTML = html;
        },
      };
    },
  };
});

const p = (id, text = "") => `<p id="${id}">${text}</p>`;
const seen = (id) => parts[id].childNodes.map((n) => n.html).join("");

/** A screen that shows pieces in main; more are shown one reply after another. */
function showing(...pieces) {
  const screen = new Screen();
  screen.show({ regions: { main: pieces }, shown: "s1" }, true);
  return screen;
}

test("of another area everything is put in anew", () => {
  const screen = showing(p("a"), p("b"));
  assert.equal(seen("main"), p("a") + p("b"));
  assert.equal(screen.name, "s1");
  screen.show({ regions: { main: [p("c")] }, shown: "s2" }, true);
  assert.deepEqual([seen("main"), screen.name], [p("c"), "s2"]);
});

for (const [reason, before, after] of [
  ["one more at the end", ["a", "b"], ["a", "b", "c"]],
  ["one more in the middle", ["a", "c"], ["a", "b", "c"]],
  ["one more in front", ["b"], ["a", "b"]],
  ["one fewer", ["a", "b", "c"], ["a", "c"]],
  ["the last one goes", ["a", "b"], ["a"]],
  ["all are taken away", ["a", "b"], []],
  ["two take the place of one", ["a", "x", "d"], ["a", "b", "c", "d"]],
]) {
  test(`pieces that stay are left alone: ${reason}`, () => {
    const screen = showing(...before.map((id) => p(id)));
    const nodes = new Map(parts.main.childNodes.map((n) => [n.id, n]));
    screen.show({ regions: { main: after.map((id) => p(id)) }, shown: "s2" }, false);
    assert.equal(seen("main"), after.map((id) => p(id)).join(""));
    for (const node of parts.main.childNodes) {
      if (before.includes(node.id)) assert.equal(node, nodes.get(node.id), node.id);
    }
  });
}

test("the same piece twice is one more", () => {
  const twice = "<p>same</p>";
  const screen = showing(twice, twice);
  screen.show({ regions: { main: [twice, twice, twice] }, shown: "s2" }, false);
  assert.equal(seen("main"), twice.repeat(3));
  screen.show({ regions: { main: [twice] }, shown: "s3" }, false);
  assert.equal(seen("main"), twice);
});

test("a piece that is sent as null stays as it is", () => {
  const screen = showing(p("a"), p("b"));
  screen.show({ regions: { main: [null, null, p("c")] }, shown: "s2" }, false);
  assert.equal(seen("main"), p("a") + p("b") + p("c"));
  assert.deepEqual(screen.shown.main, [p("a"), p("b"), p("c")]);
});

test("boxes go back to what was drawn, and what changed is said aloud", () => {
  const box = (checked, drawn) => ({ checked, hasAttribute: () => drawn });
  boxes = [box(true, false), box(false, true)];
  const screen = showing(p("a"));
  assert.deepEqual(
    boxes.map((b) => b.checked),
    [false, true],
  );
  screen.show({ regions: {}, title: "Rescue 4", say: "USD 1.00", view: { theme: "dark" } }, true);
  assert.equal(document.title, "Rescue 4");
  assert.equal(parts.say.textContent, "USD 1.00");
  assert.equal(document.documentElement.dataset.theme, "dark");
  screen.show({ regions: {}, title: "Rescue 4" }, true);
  assert.equal(parts.say.textContent, "USD 1.00", "nothing new is said");
});

test("while something else is seen in its place the page says nothing", () => {
  const screen = showing(p("a"));
  screen.cover({ title: "Medic 4", price: "USD 1.00", date: "" });
  assert.equal(screen.opening, "link");
  assert.deepEqual([parts.cover.hidden, parts["cover-title"].textContent], [false, "Medic 4"]);
  screen.show({ regions: {}, title: "Another quote", say: "USD 2.00" }, true);
  assert.deepEqual([document.title, parts.say.textContent], ["Boxwright", ""]);
  screen.open();
  assert.equal(screen.opening, undefined);
  screen.cover(null);
  assert.equal(parts.cover.hidden, true, "a link without a cover");
});

test("the last screen is shown as it was, or in words", () => {
  const screen = new Screen();
  screen.open("kept");
  screen.last({ name: "Rescue 4", line: "USD 1.00", theme: "dark" });
  assert.deepEqual([parts["last-quote"].textContent, screen.opening], ["Rescue 4 · USD 1.00", "kept"]);
  screen.last({ name: "Rescue 4", line: "", theme: "x y", regions: { main: [p("a")], masthead: [p("m")] } });
  assert.deepEqual([seen("main"), seen("masthead"), screen.opening], [p("a"), p("m"), undefined]);
  assert.equal(document.documentElement.dataset.theme, undefined, "no theme of ours");
});

test("on a narrow screen a row is brought to where the reader is in it", () => {
  globalThis.matchMedia = () => ({ matches: true });
  const row = { scrollLeft: 100, getBoundingClientRect: () => ({ left: 10, right: 300 }) };
  const at = (left, right) => ({ closest: () => row, getBoundingClientRect: () => ({ left, right }) });
  const all = document.querySelectorAll;
  let where = at(0, 0);
  document.querySelectorAll = (query) => (query.startsWith(":is(#areas") ? [where] : all(query));
  for (const [reason, left, right, want] of [
    ["it is in sight", 50, 120, 100],
    ["it runs off the right edge", 280, 350, 346],
    ["it runs off the left edge", -60, 5, 6],
    ["it is in no row", 900, 950, 100],
  ]) {
    row.scrollLeft = 100;
    where = at(left, right);
    if (reason === "it is in no row") where.closest = () => null;
    showing(p("a"));
    assert.equal(row.scrollLeft, want, reason);
  }
});

test("alerts and notes are hidden when they say nothing", () => {
  const screen = new Screen();
  for (const [name, id] of [
    ["trouble", "trouble"],
    ["done", "done"],
    ["outdated", "stale"],
  ]) {
    screen[name]("Look");
    assert.deepEqual([parts[id].textContent, parts[id].hidden], ["Look", false], name);
    screen[name]("");
    assert.deepEqual([parts[id].textContent, parts[id].hidden], ["", true], name);
  }
  screen.working(true);
  assert.equal(document.documentElement.dataset.busy, "1");
  screen.working(false);
  assert.equal(document.documentElement.dataset.busy, undefined);
});

test("in a low window what was done makes way for who reads on", () => {
  mock.timers.enable({ apis: ["setTimeout"] });
  const shown = () => !parts.done.hidden;
  const scrolls = (to) => {
    globalThis.scrollY = to;
    s.scrolled();
  };
  const s = new Screen();
  for (const [high, stays] of [
    [256, false],
    [740, true],
  ]) {
    globalThis.innerHeight = high;
    s.done("Read: 40 lines.");
    scrolls(1600); // the page itself, to what it shows
    mock.timers.tick(500);
    scrolls(1650);
    assert.ok(shown(), "the reader has hardly moved");
    scrolls(2100);
    assert.equal(shown(), stays, `${high} px`);
  }
  mock.timers.reset();
});
