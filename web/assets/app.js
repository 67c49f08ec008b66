// @ts-check
// Starts the page: puts its parts together, takes up the quote worked on last,
// and asks the core for the first answer. Every word on the page is written by
// the core.
import { Core } from "./core.js";
import { cover } from "./cover.js";
import * as last from "./last.js";
import * as bar from "./bar.js";
import * as embed from "./embed.js";
import * as keep from "./keep.js";
import { office } from "./load.js";
import * as tabs from "./tabs.js";
import { listen } from "./events.js";
import { Files, download } from "./files.js";
import { History } from "./history.js";
import { day } from "./moment.js";
import { MAX_FILE_BYTES, VERSION } from "./protocol.js";
import { Screen } from "./screen.js";
import { newState } from "./state.js";
import { perform } from "./steps.js";
import { COMES_BACK, Transport, only } from "./transport.js";
import { install } from "./update.js";

/**
 * @typedef {import("./state.js").Act} Act
 * @typedef {import("./state.js").Reply} Reply
 */

const version = window.early?.version || "";
const state = newState(keep.loadCosts(), keep.loadKey(), keep.loadBids());
const screen = new Screen();
const trouble = screen.trouble;

/** @returns {Act[]} */
const takeBuiltIn = () => (state.builtIn === undefined ? [] : [{ do: "built-in", value: state.builtIn }]);
/** @returns {Act[]} */
const takeKept = () =>
  state.catalogue ? [{ do: "kept-catalogue", id: "The catalogue kept here", value: state.catalogue }] : [];

/** preface is what a core that takes the place of another is told first. */
function preface() {
  const lists = [takeBuiltIn(), takeKept()].filter((acts) => acts.length);
  return lists.map((acts) => ({ v: VERSION, acts, today: day(new Date()) }));
}

const core = new Core(trouble, preface);
const address = () => location.href.split("#")[0];

const transport = new Transport(state, {
  ask: (request) => core.ask(request),
  ready: core.started,
  base: address,
  shown: () => screen.name,
  working: screen.working,
  show,
  failed: (why) => trouble(`That could not be done (${why}). What you entered before is kept.`),
});
/** act does what the user asked for; where that has to wait for the core, it is seen. @param {Act} a */
function act(a) {
  if (transport.waiting) screen.working(true);
  transport.act(a);
}
const history = new History(state, transport, { keep, tabs, bar, trouble, forget: () => screen.forget() });
const files = new Files({
  keep,
  bar,
  act,
  trouble,
  save: download,
  single: embed.single,
  office,
  relisted: async () => {
    await history.relist();
    tabs.tell();
  },
});

/**
 * show takes a reply over and draws it.
 * @param {Reply} reply
 * @param {Act[]} acts
 */
function show(reply, acts) {
  // What was said in alarm stays until the user does something else.
  if (reply.fault || !only(acts, ...COMES_BACK, "restore")) trouble(reply.fault || "");
  const { opening } = screen;
  const before = state.view;
  const taken = !!reply.regions && history.take(reply, acts);
  if (opening === "refused" || (opening === "link" && !acts.some((a) => a.do === "open-link"))) return;
  const foreign = reply.view?.foreign;
  if (opening === "link" && !reply.do?.some((s) => s.do === "new-quote") && (!foreign || reply.fault)) {
    screen.open("refused");
    screen.forget();
    return;
  }
  if (!taken) return;
  screen.open(foreign && (opening === "link" || opening === "foreign") ? "foreign" : undefined);
  // A page that was drawn before anything was known shows the first area.
  screen.show(reply, (before?.area || FIRST_AREA) !== reply.view?.area);
  if (acts.some((a) => a.do === "start")) screen.outdated("");
  for (const step of reply.do || []) perform(step, { state, history, files, keep, trouble });
  transport.comeBack(reply, acts);
  if (!screen.opening) remember(reply);
}

const FIRST_AREA = "needs";
const LULL_MS = 300; // after an answer, until the screen is kept

let remembering = 0; // the timer, while something is to be kept
let toKeep = () => {};

/**
 * remember keeps the screen for the next visit, once it has come to rest. What is
 * the seller's own is never kept.
 * @param {Reply} reply
 */
function remember({ gist, view, private: own }) {
  clearTimeout(remembering);
  toKeep = () => {
    clearTimeout(remembering);
    toKeep = () => {};
    const { id, count } = state.here;
    const { name, line } = gist;
    const regions = version && !own ? screen.shown : undefined;
    last.write({ version, id, count, day: day(new Date()), theme: view?.theme || "", name, line, regions });
  };
  remembering = Number(setTimeout(() => toKeep(), LULL_MS));
}

/** openLink opens the quote of the address, and takes it out of there. */
function openLink() {
  if (!location.hash.startsWith("#q=")) return;
  const value = location.hash.slice(1);
  screen.cover(cover(value));
  act({ do: "open-link", value, file: history.links() });
  window.history.replaceState(null, "", address());
}

/** leaveRefused goes on without the link that could not be opened. */
function leaveRefused() {
  screen.open("kept");
  trouble("");
  act({ do: "restore" });
}

/**
 * showFirst shows what can be seen before the core has answered: what a link says
 * of itself, or the last screen. For a new visitor the page is drawn already.
 * @returns {last.Last | null} the last screen, when it is seen as it was
 */
function showFirst() {
  if (location.hash.startsWith("#q=")) {
    screen.cover(cover(location.hash.slice(1)));
    return null;
  }
  const before = last.read(version);
  if (before) screen.last(before);
  if (!before?.regions) return null;
  if (before.day !== day(new Date()))
    screen.outdated("This is how you left it on an earlier day. It is being brought up to date.");
  return before;
}

/**
 * takeUp reads what this browser keeps, and what the core is to be asked first.
 * @param {last.Last | null} seen the last screen, when it is seen as it was
 */
async function takeUp(seen) {
  state.kept = await keep.open();
  await history.relist();
  await history.takeUp(await keep.get("last"));
  const { here, draft } = state;
  if (seen && seen.id === here.id) {
    if (seen.count !== here.count)
      screen.outdated("This is not quite how you left it. It is being brought up to date.");
  } else if (!screen.opening && (seen || draft)) screen.open("kept"); // what is seen is another quote
  state.builtIn = await embed.builtIn(MAX_FILE_BYTES);
  state.catalogue = await keep.get("catalogue");
  if ((state.builtIn || "").length + (state.catalogue || "").length > MAX_FILE_BYTES) {
    await core.started; // too much for one request
    await transport.send(takeBuiltIn());
    transport.queue.unshift(...takeKept(), { do: "start" });
  } else transport.queue.unshift(...takeBuiltIn(), ...takeKept(), { do: "start" });
}

async function start() {
  const seen = showFirst();
  const early = window.early?.pressed || [];
  delete window.early?.pressed; // from now on it is attended to
  listen(document, { state, history, files, act }, early);
  await transport.alone(() => takeUp(seen));
  openLink();
  transport.act();
  transport.idle.then(() => {
    const areas = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("#areas [data-act=go]"));
    transport.rehearse(
      [...areas].map((el) => el.dataset.id || ""),
      () => !document.hidden,
    );
  });
  addEventListener("hashchange", openLink);
  addEventListener("pagehide", () => toKeep());
  document.getElementById("leave-refused")?.addEventListener("click", leaveRefused);
  tabs.listen(async () => {
    await history.relist();
    if (state.view?.area === "quote") act({ do: "restore" });
  });
  install();
}

start();
