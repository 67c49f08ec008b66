// @ts-check
// Sends what the user does to the core, one request at a time, and gives the
// replies to whoever shows them.
import { VERSION } from "./protocol.js";
import { day } from "./moment.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./state.js").Act} Act
 * @typedef {import("./state.js").Reply} Reply
 * @typedef {import("./protocol.js").Request} Request
 *
 * What the transport needs of the page around it.
 * @typedef {{
 *   ask: (request: Request) => Promise<Reply>,
 *   ready?: Promise<unknown>,
 *   base: () => string,
 *   shown: () => string,
 *   copies?: (saved: import("./state.js").Listed[]) => Request["copies"],
 *   working: (long: boolean) => void,
 *   show: (reply: Reply, acts: Act[]) => void,
 *   failed: (why: string, acts: Act[]) => void,
 * }} Around
 */

// Acts that need what is kept for the next requirement list.
const LISTS = /^(paste-list|standing|standing-list|import) |^set (list$|req\.|stand\.)/;
const LONG_MS = 600; // a person notices that nothing happens
const REST_MS = 20; // the first part of an answer is drawn
const DECIDE_MS = 50;
const REHEARSAL_MS = 100;
const SHOWN_STEPS = 30; // of the trail

/** What the page asks by itself: the rest of an answer, and more work on what is undecided. */
export const COMES_BACK = ["rest", "decide"];

/** @param {Act[]} acts @param {...string} names */
export const only = (acts, ...names) => acts.every((a) => names.includes(a.do));

export class Transport {
  /** @param {State} state @param {Around} around */
  constructor(state, around) {
    this.state = state;
    this.around = around;
    /** @type {Act[]} what waits for the core */
    this.queue = [];
    this.waiting = around.ready; // until the core is there; what is pressed meanwhile goes together
    this.busy = false;
    this.idle = Promise.resolve(); // resolved when nothing waits for the core
    this.effort = 0; // asked of the core for what is undecided; each step doubles its work
    this.coming = 0; // the timer, while it waits to come back
  }

  /**
   * act queues something the user did. While the core is busy the acts gather and
   * go together; only the newest state is drawn.
   * @param {...Act} acts
   */
  act(...acts) {
    this.queue.push(...acts);
    if (!this.busy) this.idle = this.flush();
  }

  /**
   * alone does some work while no request is under way. What is done meanwhile waits.
   * @param {() => Promise<void> | void} work
   */
  async alone(work) {
    while (this.busy) await this.idle;
    this.busy = true;
    try {
      await (this.idle = Promise.resolve(work()));
    } finally {
      this.busy = false;
    }
  }

  async flush() {
    this.busy = true;
    if (this.waiting) await this.waiting;
    this.waiting = undefined;
    while (this.queue.length) {
      const acts = this.queue;
      this.queue = [];
      await this.send(acts);
    }
    this.busy = false;
  }

  /** @param {Act[]} acts */
  async send(acts) {
    const { state, around } = this;
    const asked = state.here;
    const request = this.request(acts);
    const rehearsed = only(acts, "rehearse"); // nobody waits for that
    const long = rehearsed ? 0 : setTimeout(() => around.working(true), LONG_MS);
    try {
      let reply = await around.ask(request);
      // What nobody waits for comes in slices, and ends where something is pressed.
      while (reply.working && !this.queue.length) reply = await around.ask(request);
      if (reply.working || reply.rehearsed || asked !== state.here) return; // another quote was taken up meanwhile
      around.show(reply, acts);
      if (!request.saved && state.view?.area === "quote") this.queue.push({ do: "restore" });
    } catch (e) {
      if (!rehearsed) around.failed(e instanceof Error ? e.message : String(e), acts);
    } finally {
      clearTimeout(long);
      around.working(false);
    }
  }

  /**
   * request carries the whole state. The lists of kept quotes and earlier states
   * go along where they are shown.
   * @param {Act[]} acts
   * @returns {Request}
   */
  request(acts) {
    const { draft, view, pins, here, trail, at, first, saved, kept, unkept, costs, key, bids } = this.state;
    /** @type {Request} */
    const request = {
      v: VERSION,
      acts,
      draft,
      view,
      pins,
      today: day(new Date()),
      base: this.around.base(),
      shown: this.around.shown(),
      kept,
      costs: !!costs,
      key: key.open,
      weighed: saved.filter((s) => s.id !== here.id).flatMap((s) => s.weighed || []),
      undo: at,
      redo: Math.max(trail.length - 1 - at, 0),
    };
    if (!kept) request.unkept = unkept || "refused";
    if (!here.mine) request.elsewhere = true;
    if (bids && acts.some((a) => LISTS.test(`${a.do} ${a.id || ""}`))) request.bids = bids;
    if (view?.area === "quote" || acts.some((a) => a.id === "quote" || a.do === "quotes")) {
      request.saved = saved.map(({ id, name, line, when, number, rev }) => ({
        ...{ id, name, line, when, number, rev },
        here: id === here.id,
      }));
      request.copies = this.around.copies?.(saved);
      const steps = trail.map(({ said, when }, i) => ({ n: first + i, said, when, here: i === at }));
      request.trail = steps.slice(-SHOWN_STEPS);
    }
    return request;
  }

  /**
   * comeBack asks for the rest of an answer once its first part is drawn, and else
   * for more work on what is undecided; a press in between begins anew.
   * @param {Reply} reply
   * @param {Act[]} acts
   */
  comeBack({ partial, undecided }, acts) {
    if (!only(acts, ...COMES_BACK)) this.effort = 0;
    clearTimeout(this.coming);
    this.coming = 0;
    if (!partial && !undecided) return;
    if (!partial) this.effort++;
    const next = partial ? { do: "rest" } : { do: "decide", value: String(this.effort) };
    const back = () => {
      this.coming = 0;
      if (!this.queue.length && !this.busy) this.act(next);
    };
    this.coming = Number(setTimeout(back, partial ? REST_MS : DECIDE_MS));
  }

  /** redraw shows what is saved anew, where it is in sight once all that was asked is answered. */
  async redraw() {
    while (this.busy) await this.idle;
    if (this.state.view?.area === "quote") this.act({ do: "rest" });
  }

  /**
   * rehearse has the core go through every area while nobody waits for it, so that
   * the browser has each part ready when it is first asked for.
   * @param {string[]} areas
   * @param {() => boolean} watched whether the reader sees the page
   */
  rehearse(areas, watched) {
    const left = [...areas];
    const next = () => {
      const id = left[0];
      if (id === undefined) return;
      if (!this.busy && !this.coming && watched()) {
        left.shift();
        this.act({ do: "rehearse", id });
      }
      setTimeout(next, REHEARSAL_MS);
    };
    setTimeout(next, 2 * REHEARSAL_MS);
  }
}
