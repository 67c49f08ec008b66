// Two windows on one quote, without a browser: each window is the script loaded once more.
import { mock, test } from "node:test";
import assert from "node:assert/strict";

/** The browser's locks, as far as they are used. */
class Locks {
  held = new Map();

  async request(name, { steal, ifAvailable }, use) {
    if (!use) return this.request(name, {}, arguments[1]);
    while (this.held.has(name) && !steal && !ifAvailable) await turn();
    const other = this.held.get(name);
    if (other && !steal) return use(null);
    if (other) other(new Error("stolen"));
    return new Promise((resolve, reject) => {
      this.held.set(name, reject);
      Promise.resolve(use({ name })).then((answer) => {
        if (this.held.get(name) === reject) this.held.delete(name);
        resolve(answer);
      });
    });
  }
}

const posted = [];
globalThis.BroadcastChannel = class {
  constructor(name) {
    this.name = name;
    posted.push(this);
  }

  postMessage(message) {
    for (const other of posted) if (other !== this && other.name === this.name) other.onmessage?.({ data: message });
  }
};

const locked = (locks) => Object.defineProperty(globalThis, "navigator", { value: { locks }, configurable: true });
const turn = () => new Promise((r) => setImmediate(r));
let windows = 0;
const open = () => import(`./tabs.js?window=${windows++}`);

/** settled is the answer to a claim, with the time that its tries take. */
async function settled(asked) {
  let answer;
  asked.then((a) => (answer = a));
  for (let i = 0; i < 20 && answer === undefined; i++) {
    await turn();
    mock.timers.tick(80);
  }
  return answer;
}

test("the first window holds a quote, and gives it up for another", async () => {
  mock.timers.enable({ apis: ["setTimeout"] });
  locked(new Locks());
  const [first, second] = [await open(), await open()];
  const lost = [];
  assert.equal(await settled(first.claim("a", () => lost.push("first"))), true);
  assert.equal(await settled(second.claim("a", () => lost.push("second"))), false);
  assert.equal(await settled(second.claim("b", () => lost.push("second"))), true, "another quote is free");
  assert.equal(await settled(first.claim("c", () => lost.push("first"))), true);
  assert.equal(await settled(second.claim("a", () => lost.push("second"))), true, "it was given up");
  assert.deepEqual(lost, []);
  mock.timers.reset();
});

test("a window that is being loaded anew has let go a moment later", async () => {
  mock.timers.enable({ apis: ["setTimeout"] });
  locked(new Locks());
  const [first, second] = [await open(), await open()];
  await settled(first.claim("a", () => {}));
  const asked = second.claim("a", () => {});
  await turn();
  await first.claim("z", () => {});
  assert.equal(await settled(asked), true);
  mock.timers.reset();
});

test("a quote that is taken over is lost to the window that had it", async () => {
  locked(new Locks());
  const [first, second] = [await open(), await open()];
  const lost = [];
  await first.claim("a", () => lost.push("first"));
  assert.equal(await second.claim("a", () => lost.push("second"), true), true);
  await turn();
  assert.deepEqual(lost, ["first"]);
});

test("a quote is free when its window is gone, and not while that is loaded anew", async () => {
  mock.timers.enable({ apis: ["setTimeout"] });
  locked(new Locks());
  const [first, second, third] = [await open(), await open(), await open()];
  await settled(first.claim("a", () => {}));
  let free = false;
  second.freed("a").then(() => (free = true));
  const later = async () => {
    for (let i = 0; i < 4; i++) await turn();
    mock.timers.tick(3000);
    for (let i = 0; i < 4; i++) await turn();
  };
  await later();
  assert.equal(free, false, "it is held");
  await settled(first.claim("z", () => {}));
  for (let i = 0; i < 4; i++) await turn();
  await settled(third.claim("a", () => {})); // the window again
  await later();
  assert.equal(free, false, "it is held again");
  await settled(third.claim("z", () => {}));
  await later();
  assert.equal(free, true);
  mock.timers.reset();
});

test("without locks, and where they are refused, nobody is kept out", async () => {
  locked(undefined);
  assert.equal(await (await open()).claim("a", () => {}), true);
  locked({ request: () => Promise.reject(new Error("refused")) });
  assert.equal(await (await open()).claim("a", () => assert.fail("never held")), true);
});

test("the other windows hear that the kept quotes changed", async () => {
  const [first, second] = [await open(), await open()];
  const heard = [];
  first.listen(() => heard.push("first"));
  second.listen(() => heard.push("second"));
  first.tell();
  assert.deepEqual(heard, ["second"]);
});
