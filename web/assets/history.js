// @ts-check
// The states of the quote in work, for undo, and the records of every quote in
// this browser.
import { MAX_STEPS } from "./protocol.js";
import { moment } from "./moment.js";
import { mark } from "./stored.js";
import { COMES_BACK, only } from "./transport.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./state.js").Here} Here
 * @typedef {import("./state.js").Moment} Moment
 * @typedef {import("./state.js").Act} Act
 * @typedef {import("./state.js").Reply} Reply
 * @typedef {import("./state.js").Gist} Gist
 * @typedef {import("./state.js").Step} Step
 * @typedef {import("./transport.js").Transport} Transport
 *
 * What the history needs of the page around it.
 * @typedef {{
 *   keep: Pick<typeof import("./keep.js"), "add" | "load" | "save" | "list" | "put" | "drop" | "why">,
 *   tabs: Pick<typeof import("./tabs.js"), "claim" | "freed" | "tell">,
 *   bar: Pick<typeof import("./bar.js"), "ask" | "offer" | "withdraw">,
 *   copies: Pick<import("./copies.js").Copies, "later">,
 *   reset: () => void,
 *   trouble: (text: string) => void,
 * }} Around
 */

/** What the page does by itself, which nobody waits to have done again. */
const BY_ITSELF = ["start", "restore", "rehearse", "kept-catalogue", "built-in", ...COMES_BACK];
const MOST_WAITING = 200; // acts
const MOST_SENT = 200; // kept quotes that are looked at under another edition

export const newId = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(12)), (b) => b.toString(16).padStart(2, "0")).join("");

/** fresh is a record that nobody has written yet. @returns {Here} */
const fresh = () => ({ id: newId(), count: 0, mine: true });

/** @param {Act[]} acts */
const byUser = (acts) => acts.filter((a) => !BY_ITSELF.includes(a.do));

/**
 * listed is a quote as the list of saved ones has it.
 * @param {Pick<import("./state.js").Kept, "id" | "gist" | "at" | "draft">} record
 * @param {string} when
 */
const listed = (record, when) => ({ id: record.id, ...record.gist, when, mark: mark(record) });

export class History {
  /** @param {State} state @param {Transport} transport @param {Around} around */
  constructor(state, transport, around) {
    this.state = state;
    this.transport = transport;
    this.around = around;
    /** @type {string[]} kept quotes that the core has not been sent yet */
    this.unsent = [];
    /** @type {Act[]} done here to a quote that another window holds, and not taken */
    this.refused = [];
    /** @type {Act[]} done before it was known whether another window holds the quote */
    this.early = [];
    /** @type {import("./protocol.js").KeptQuote[]} deleted in this window, the last at the end */
    this.deleted = [];
  }

  /**
   * take takes over the state of a reply and keeps it. It refuses a change of a
   * quote that another window holds.
   * @param {Reply} reply
   * @param {Act[]} acts
   */
  take(reply, acts) {
    const { state, transport } = this;
    if (!reply.draft) return false;
    const changed = JSON.stringify(state.draft) !== JSON.stringify(reply.draft);
    // A link opens a quote of its own, and a kept quote that cannot be used stays
    // as it is: in both cases a new record begins.
    const opened = reply.do?.some((s) => s.do === "new-quote");
    const unusable = reply.fault && acts.some((a) => a.do === "start") && !acts.some((a) => a.do === "set");
    if (changed && state.draft && (opened || unusable)) this.begin();
    else if (changed && state.draft && !state.here.mine) {
      // What was typed stays in its field until the user has decided.
      this.refused = [...this.refused, ...byUser(acts)].slice(-MOST_WAITING);
      this.taken();
      this.around.reset();
      return false;
    }
    if (changed && state.here.held) this.early = [...this.early, ...byUser(acts)].slice(-MOST_WAITING);
    const isNew = (changed && !only(acts, "restore")) || !state.trail.length;
    state.draft = reply.draft;
    state.view = reply.view;
    state.pins = reply.pins;
    if (isNew) this.add({ draft: reply.draft, said: reply.said || "", when: moment(new Date()) });
    else state.trail[state.at].draft = reply.draft;
    // What only comes later than the rest is nothing new to keep.
    const nothingNew = !changed && only(acts, ...COMES_BACK, "seal-kept");
    if (state.here.mine && !nothingNew) this.store(reply.gist, isNew || changed, isNew);
    if (opened && changed) transport.redraw(); // the list of saved quotes was drawn before there was one more
    return true;
  }

  /**
   * add puts a state behind the one shown, in the place of those after it.
   * @param {Moment} now
   */
  add(now) {
    const { state } = this;
    state.trail.length = state.trail.length ? state.at + 1 : 0;
    state.trail.push(now);
    if (state.trail.length > MAX_STEPS) {
      state.trail.shift();
      state.first++;
    }
    state.at = state.trail.length - 1;
  }

  /**
   * store keeps the quote as it is now.
   * @param {Gist} gist
   * @param {boolean} step whether the state shown is written too
   * @param {boolean} isNew whether it is one more
   */
  async store(gist, step, isNew) {
    const { state, transport } = this;
    const { here, draft, view, pins, first, at, trail } = state;
    if (!draft) return;
    const when = moment(new Date());
    const saved = new Date().toISOString();
    const now = step && trail[at];
    const write = () => {
      const record = { id: here.id, count: ++here.count, saved, at: first + at, draft, view, pins, gist };
      return this.around.keep.save(record, now, isNew);
    };
    // Nothing is written before it is known that no other window holds the quote.
    const answer = here.held ? here.held.then((mine) => (mine ? write() : "taken")) : write();
    const told = (/** @type {Gist & { id: string }} */ s) => JSON.stringify([s.id, s.name, s.line, s.weighed]);
    const news = !state.saved.some((s) => told(s) === told({ id: here.id, ...gist }));
    if (state.kept) {
      const latest = listed({ id: here.id, gist, at: first + at, draft }, when);
      state.saved = [latest, ...state.saved.filter((s) => s.id !== here.id)];
    }
    const ok = await answer;
    if (ok === "taken") {
      this.lost(here);
      return;
    }
    if (state.kept !== ok) {
      state.kept = ok;
      state.unkept = this.around.keep.why();
      await this.relist();
      transport.act({ do: "restore" });
    }
    if (ok) this.around.copies.later();
    if (news) this.around.tabs.tell();
  }

  /**
   * begin starts a new record for what is on the page from now on. Where nothing is kept, undo
   * leads back to what was there before.
   */
  begin() {
    const { state } = this;
    if (!state.kept && state.trail.length > 1) {
      this.around.bar.ask("unkept", "The quote before this one is not saved. Undo brings it back until this window closes.", [
        ["Close", () => {}],
      ]);
    } else {
      state.trail = [];
      state.at = state.first = 0;
    }
    this.hold(fresh());
  }

  /** anew goes on with what is shown in a record of its own, with its earlier states in this window alone. */
  anew() {
    this.state.first = 0;
    this.hold(fresh());
  }

  /**
   * hold makes a record the one that is worked on in this window. What is shown
   * does not wait for the answer: until then the count in the record guards it.
   * @param {Here} here
   * @param {boolean} [steal] from another window
   */
  hold(here, steal) {
    this.state.here = here;
    this.early = [];
    this.around.bar.withdraw("taken");
    this.around.keep.put("last", here.id);
    here.held = this.around.tabs
      .claim(here.id, () => this.lost(here), steal)
      .then((ok) => {
        if (!ok) this.lost(here);
        else if (here === this.state.here) this.early = [];
        here.held = undefined;
        return here.mine;
      });
  }

  /**
   * open takes up a kept quote; a new one begins when there is none.
   * @param {string} id
   * @param {boolean} [steal] from another window
   */
  async open(id, steal) {
    if (id !== this.state.here.id) this.refused = [];
    await this.transport.alone(() => this.takeUp(id, steal));
    this.transport.act({ do: "start", id: "opened" });
  }

  /**
   * takeUp puts a kept quote into the state.
   * @param {string | undefined} id
   * @param {boolean} [steal]
   */
  async takeUp(id, steal) {
    const { state } = this;
    const record = id ? await this.around.keep.load(id) : null;
    if (!record) {
      state.draft = undefined;
      this.begin();
      return;
    }
    const area = state.view?.area;
    state.draft = record.draft;
    state.pins = record.pins;
    state.view = record.view || (state.view && { ...state.view, guide: 0 });
    if (area && state.view) state.view = { ...state.view, area };
    state.first = record.first;
    state.trail = record.steps;
    state.at = Math.max(record.at - record.first, 0);
    if (!state.trail[state.at]) {
      state.trail = [{ draft: record.draft, said: "", when: "" }];
      state.at = 0;
    }
    this.hold({ id: record.id, count: record.count, mine: true }, steal);
  }

  /** lost is told when another window has a quote. @param {Here} here */
  lost(here) {
    if (!here.mine) return;
    here.mine = false;
    if (here === this.state.here) {
      this.taken();
      this.transport.act({ do: "rest" }); // the head no longer says that what is done here is saved
    }
    const free = () => {
      here.free = true;
      if (here === this.state.here) this.taken();
    };
    this.around.tabs.freed(here.id).then(free, () => {}); // a browser without locks cannot tell
  }

  /** heard is told that another window changed what is kept. */
  async heard() {
    const { here, saved } = this.state;
    const before = saved.find((s) => s.id === here.id)?.mark;
    await this.relist();
    if (here.mine || this.state.saved.find((s) => s.id === here.id)?.mark === before) return;
    here.older = true;
    if (here === this.state.here) this.taken();
  }

  /** taken says that changes are not taken here, why, and what became of those made. */
  taken() {
    const { free, older } = this.state.here;
    let text = free
      ? "The other window that had this quote open is closed, or has another one now."
      : "This quote is open in another window. It can be read here; changes are made in one window at a time.";
    if (older) text += " It was changed there: what you read here is older.";
    if (this.refused.length) text += " What you did here waits, and is done in the quote or the copy you choose.";
    this.around.bar.ask("taken", text, [
      ["Take it over here", () => this.takeOver()],
      ["Work on a copy", () => this.copy()],
    ]);
  }

  /** takeOver takes the quote from the window that holds it, and does there what was done here. */
  async takeOver() {
    const { id } = this.state.here;
    /** @type {Act[]} */
    let acts = [];
    await this.transport.alone(() => {
      acts = [...this.early, ...this.refused]; // what was still on its way is among them by now
      this.refused = [];
      return this.takeUp(id, true);
    });
    this.transport.act({ do: "start" });
    if (acts.length) this.transport.act(...acts);
  }

  /** copy goes on with what is shown, and what was done to it, in a record of its own. */
  async copy() {
    /** @type {Act[]} */
    let acts = [];
    await this.transport.alone(() => {
      acts = this.refused; // what was still on its way is among them by now
      this.refused = [];
      const from = this.state.saved.find((s) => s.id === this.state.here.id);
      this.begin();
      if (from) this.state.saved.unshift({ ...from, id: this.state.here.id }); // listed at once
    });
    this.transport.act({ do: "copy-quote" });
    if (acts.length) this.transport.act(...acts);
  }

  /**
   * go shows another state of the quote, when all that was asked is answered.
   * @param {number} by so many steps on, or back below zero
   */
  async go(by) {
    const { state, transport } = this;
    while (transport.busy) await transport.idle;
    const to = state.trail[state.at + by];
    if (!to) return;
    if (!state.here.mine) {
      this.taken();
      return;
    }
    const { said } = by === -1 ? state.trail[state.at] : to;
    const how = by === -1 ? "Undone" : by === 1 ? "Done again" : "Now as it was after";
    state.at += by;
    state.draft = to.draft;
    transport.act({ do: "restore", id: how, value: said || "the change before" });
  }

  /** goTo shows the state of that number. @param {number} n */
  goTo(n) {
    return this.go(n - this.state.first - this.state.at);
  }

  /** links are the signed quotes at hand: a revision finds the one before it. */
  links() {
    return this.state.saved.flatMap((s) => s.issued || []).join(" ");
  }

  /** relist reads which quotes are kept. */
  async relist() {
    const kept = await this.around.keep.list();
    this.state.saved = kept.map((r) => listed(r, moment(new Date(r.saved))));
  }

  /** drop takes a kept quote out of this browser; this window can still put it back. @param {string} id */
  async drop(id) {
    const { keep } = this.around;
    const record = await keep.load(id);
    const { name } = record?.gist || { name: "the quote" };
    await keep.drop(id);
    if (record) this.deleted.push({ ...record, ...record.gist, at: record.at - record.first });
    await this.changed("Deleted", name);
  }

  /** putBack keeps the quote again that was deleted last. */
  async putBack() {
    const quote = this.deleted.at(-1);
    if (!quote) return;
    const ok = await this.around.keep.add(quote, newId()).then(() => true, () => false);
    if (ok) this.deleted.pop();
    else this.around.trouble("The quote was not put back: this browser refuses storage.");
    await this.changed(ok ? "Put back" : "", quote.name);
  }

  /** forget gives up what could still be put back. */
  forget() {
    this.deleted = [];
    this.around.bar.withdraw("deleted");
  }

  /**
   * changed shows the list of kept quotes anew, says what was done to one of them, and
   * offers to put back the one that was deleted last.
   * @param {string} how
   * @param {string} name
   */
  async changed(how, name) {
    const last = this.deleted.at(-1);
    if (!last) this.around.bar.withdraw("deleted");
    else {
      this.around.bar.offer("deleted", `Deleted: ${last.name}.`, [
        ["Undo delete", () => this.putBack()],
        ["Close", () => this.forget()],
      ]);
    }
    await this.relist();
    this.around.tabs.tell();
    this.transport.act({ do: "restore", id: how, value: name });
  }

  /**
   * sendKept hands the quotes kept here to the core one by one, as it asks for
   * them; nothing else waits for that.
   * @param {boolean} anew
   */
  async sendKept(anew) {
    const { keep } = this.around;
    if (anew) this.unsent = (await keep.list()).slice(0, MOST_SENT).map((r) => r.id);
    const id = this.unsent.shift();
    const r = id && (await keep.load(id));
    const quote = r ? { id: r.id, value: JSON.stringify(r.draft) } : { id: "", value: "" };
    this.transport.act({ do: "touch", ...quote, on: this.unsent.length > 0 });
  }

  /**
   * move has the core move a quote to the edition in use.
   * @param {string} id
   */
  async move(id) {
    if (id === this.state.here.id) {
      this.transport.act({ do: "move-here" });
      return;
    }
    const r = await this.around.keep.load(id);
    if (r) this.transport.act({ do: "move-kept", id: r.id, value: JSON.stringify(r.draft) });
  }

  /**
   * keepMoved keeps a quote that the core moved to another edition; the state
   * before stays as an earlier one.
   * @param {Step} step
   */
  async keepMoved({ id, text, name, gist }) {
    const { keep, tabs, trouble } = this.around;
    const r = id && (await keep.load(id));
    const draft = JSON.parse(text || "null");
    const now = { draft, said: name || "", when: moment(new Date()) };
    let ok = /** @type {boolean | "taken"} */ (false);
    if (r && gist) {
      const saved = new Date().toISOString();
      const { count, at, view, pins } = r;
      ok = await keep.save({ id: r.id, count: count + 1, saved, at: at + 1, draft, view, pins, gist }, now, true);
    }
    if (ok === true) this.around.copies.later();
    else trouble("The quote could not be kept as it was moved; it stays as it was.");
    await this.relist();
    tabs.tell();
  }
}
