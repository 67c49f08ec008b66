// @ts-check
// Starts the page: puts its parts together, takes up the quote worked on last,
// and asks the core for the first answer. Every word on the page is written by
// the core.
import { Core } from "./core.js";
import { cover, linkIn } from "./cover.js";
import * as last from "./last.js";
import * as back from "./back.js";
import * as bar from "./bar.js";
import { Copies } from "./copies.js";
import * as embed from "./embed.js";
import * as keep from "./keep.js";
import { office } from "./load.js";
import * as rescue from "./rescue.js";
import * as tabs from "./tabs.js";
import * as trial from "./trial.js";
import { change, listen } from "./events.js";
import { Files, download } from "./files.js";
import * as focus from "./focus.js";
import { History } from "./history.js";
import { light } from "./light.js";
import { day } from "./moment.js";
import { MAX_FILE_BYTES, VERSION } from "./protocol.js";
import { levels, Screen } from "./screen.js";
import { newState } from "./state.js";
import { perform } from "./steps.js";
import { COMES_BACK, Transport, only } from "./transport.js";
import { Typing, isText } from "./typing.js";
import { install } from "./update.js";
import { Windows } from "./windows.js";

/**
 * @typedef {import("./state.js").Act} Act
 * @typedef {import("./state.js").Reply} Reply
 */

const version = window.early?.version || "";
const state = newState(keep.loadCosts(), keep.loadKey(), keep.loadBids());
const screen = new Screen();
const trouble = screen.trouble;
const tell = (/** @type {string} */ text) => screen.tell(text);

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

const windows = new Windows();
const typing = new Typing(() => state.here.id);
/** what is tried at this start @type {trial.Trial | undefined} */
let trying;
let answered = false; // by the core, with something to show

const transport = new Transport(state, {
  ask: (request) => core.ask(request, !!state.catalogue && starts(request.acts)),
  ready: core.started,
  base: address,
  shown: () => screen.name,
  copies: (saved) => copies.told(saved),
  working: screen.working,
  show,
  failed: (why, acts) => {
    if (starts(acts) && !answered) startWithout(why);
    else trouble(`That could not be done (${why}). What you entered before is kept.`);
  },
});
/** @param {Act[]} acts */
const starts = (acts) => acts.some((a) => a.do === "start");

/** act does what the user asked for; where that has to wait for the core, it is seen. @param {Act} a */
function act(a) {
  if (transport.waiting) screen.working(true);
  transport.act(a);
}
const redraw = () => transport.redraw();

/** @type {Files} */
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
    await copies.reread();
    copies.later();
    redraw();
    tabs.tell();
  },
  copied: (of) => copies.made(of),
  sealed: async () => {
    history.forget();
    await history.relist();
    await history.open("");
    clearTimeout(remembering);
    toKeep = () => {};
  },
});
const picker = /** @type {any} */ (window).showDirectoryPicker?.bind(window);
/** @type {Copies} */
const copies = new Copies({ keep, files, bar, picker, trouble, told: redraw });
const history = new History(state, transport, { keep, tabs, bar, copies, trouble, reset: () => screen.reset() });

/**
 * saving begins or ends that anything is saved on this device; what is saved goes when it
 * ends.
 * @param {boolean} off
 */
async function saving(off) {
  while (transport.busy) await transport.idle;
  if (off) {
    keep.setOff(true); // before the rest: the last screen may be on its way
    await keep.forgetAll();
    history.forget();
    [state.costs, state.key, state.bids] = ["", { sealed: "", open: "" }, ""];
  } else keep.setOff(false);
  state.kept = await keep.open();
  state.unkept = keep.why();
  await transport.alone(() => history.anew());
  await history.relist();
  await copies.reread();
  tabs.tell();
  act({ do: "restore", id: off ? "Everything is deleted, and nothing is kept" : "Quotes are saved here again" });
}

/**
 * show takes a reply over and draws it.
 * @param {Reply} reply
 * @param {Act[]} acts
 */
function show(reply, acts) {
  if (!answered && !reply.regions && starts(acts)) {
    startWithout(reply.fault || "nothing to show came back");
    return;
  }
  if (!answered) first();
  // What was said in alarm stays until the user does something else.
  if (reply.fault || !only(acts, ...COMES_BACK, "restore")) trouble(reply.fault || "");
  if (!only(acts, ...COMES_BACK)) screen.done(reply.notice || "");
  const { opening } = screen;
  const before = state.view;
  const taken = !!reply.regions && history.take(reply, acts);
  if (opening === "refused" || (opening === "link" && !acts.some((a) => a.do === "open-link"))) return;
  const opened = reply.do?.some((s) => s.do === "new-quote") || (reply.view?.foreign && !reply.fault);
  if (opening === "link" && !opened) {
    screen.open("refused");
    screen.forget();
    return;
  }
  if (!taken) return;
  screen.open();
  const at = focus.place();
  // A page that was drawn before anything was known shows the first area.
  screen.show(reply, (before?.area || FIRST_AREA) !== reply.view?.area);
  if (acts.some((a) => a.do === "start")) screen.outdated("");
  for (const step of reply.do || []) perform(step, { state, history, files, keep, trouble, tell });
  focus.back(at);
  focus.watch();
  if (reply.notice || reply.fault) focus.uncover();
  if (reply.do?.some((s) => s.do.startsWith("keep-"))) copies.later();
  transport.comeBack(reply, acts);
  back.went(before, state.view);
  if (!screen.opening) remember(reply);
}

/** first is told of the first answer. */
function first() {
  answered = true;
  trying?.passed();
}

/**
 * startWithout starts once more without the likeliest of what did not let the page
 * start: a catalogue first, then the quote. What it leaves out stays kept.
 * @param {string} why
 */
function startWithout(why) {
  const { catalogue, builtIn, draft, here } = state;
  trying?.failed();
  if (catalogue) {
    state.catalogue = undefined;
    sayLeftOut();
  } else if (builtIn) {
    state.builtIn = undefined;
    bar.ask("built-in", `The catalogue built into this page does not let it start (${why}). The demonstration is used.`, [
      ["Go on", () => {}],
    ]);
  } else if (draft) {
    trial.accuse({ quote: here.id });
    state.draft = undefined;
    history.begin();
    sayLeftOut();
  } else {
    panel(`The page could not start (${why}).`);
    return;
  }
  transport.queue.unshift(...takeBuiltIn(), { do: "start" });
}

/** sayLeftOut tells of what was kept out of this start, with what can be done about it. */
function sayLeftOut() {
  const { catalogue, quotes } = trial.suspect();
  if (!catalogue && !quotes.length) return;
  const what = [
    ...(catalogue ? ["the catalogue kept here"] : []),
    ...(quotes.length ? [quotes.length === 1 ? "a quote kept here" : `${quotes.length} quotes kept here`] : []),
  ].join(" and ");
  bar.ask("left-out", `The page did not start with ${what}, so it started without. Nothing was taken out.`, [
    ["What is kept here", () => panel("")],
    ["Go on without", () => {}],
  ]);
}

/** sayUnread tells that the quote last worked on is there, but not as one that can be read. */
function sayUnread() {
  bar.ask("unread", "The quote you worked on last cannot be read. It is left here as it is; this is a new one.", [
    ["What is kept here", () => panel("")],
    ["Go on", () => {}],
  ]);
}

/** panel opens the panel of what is kept here, which works without the core. @param {string} why */
const panel = (why) => rescue.open(why, { keep, trial, save: download, reload: () => location.reload() });

const FIRST_AREA = "start";
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
  if (location.hash === "#kept") location.reload(); // and the panel stands in the place of the page
  const value = linkIn(location.hash);
  if (!value) return;
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
  const link = linkIn(location.hash);
  if (link) {
    screen.cover(cover(link));
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
  state.unkept = keep.why();
  const known = copies.know();
  const suspect = trial.fallen(await windows.others());
  await history.relist();
  const id = await keep.getText("last");
  await history.takeUp(id && suspect.quotes.includes(id) ? "" : id);
  if (id && !suspect.quotes.includes(id) && !state.draft && (await keep.holds(id))) sayUnread();
  const { here, draft } = state;
  if (seen && seen.id === here.id) {
    if (seen.count !== here.count)
      screen.outdated("This is not quite how you left it. It is being brought up to date.");
  } else if (!screen.opening && (seen || draft)) screen.open("kept"); // what is seen is another quote
  state.builtIn = await embed.builtIn(MAX_FILE_BYTES);
  if (!suspect.catalogue) state.catalogue = await keep.getText("catalogue");
  trying = new trial.Trial(windows.name, { catalogue: !!state.catalogue, quote: state.draft && here.id });
  sayLeftOut();
  await Promise.race([known, core.started]);
  if ((state.builtIn || "").length + (state.catalogue || "").length > MAX_FILE_BYTES) {
    await core.started; // too much for one request
    await transport.send(takeBuiltIn());
    transport.queue.unshift(...takeKept(), { do: "start" });
  } else transport.queue.unshift(...takeBuiltIn(), ...takeKept(), { do: "start" });
}

/**
 * bringBack puts back what was typed and not yet entered when a window ended.
 * @param {import("./events.js").Page} page
 */
async function bringBack(page) {
  typing.name = await windows.own;
  const left = typing.left(state.here.id, await windows.others());
  const lost = [];
  for (const [id, value] of Object.entries(left)) {
    const el = document.getElementById(id);
    if (!isText(el)) lost.push(value);
    else if (el.value !== value) {
      el.value = value;
      if (el.dataset.act) change(/** @type {import("./events.js").Control} */ (el), page);
    }
    typing.entered(id);
  }
  const text = lost.join("\n");
  if (text) {
    const some = text.length > 200 ? `${text.slice(0, 200)} …` : text;
    bar.ask("typed", `This was typed when the page ended, and its field is not on the page: “${some}”`, [
      ["Copy it", () => navigator.clipboard.writeText(text)],
      ["Leave it", () => {}],
    ]);
  }
}

async function start() {
  if (location.hash === "#kept") {
    await keep.open();
    panel("");
    return;
  }
  const seen = showFirst();
  const early = window.early?.pressed || [];
  delete window.early?.pressed; // from now on it is attended to
  const page = { state, history, files, copies, saving, typing, act };
  focus.attend(document);
  listen(document, page, early);
  light(document);
  await transport.alone(() => takeUp(seen));
  openLink();
  transport.act();
  transport.idle.then(() => bringBack(page));
  transport.idle.then(() => copies.open());
  transport.idle.then(() => {
    const areas = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("#areas [data-act=go]"));
    transport.rehearse(
      [...areas].map((el) => el.dataset.id || ""),
      () => !document.hidden,
    );
  });
  addEventListener("scroll", () => screen.scrolled(), { passive: true });
  addEventListener("hashchange", openLink);
  addEventListener("beforeprint", () => levels(true));
  addEventListener("afterprint", () => levels());
  back.listen(
    () => state.view,
    (id) => act({ do: "go", id }),
  );
  addEventListener("pagehide", () => {
    toKeep();
    typing.flush();
    trying?.left();
  });
  document.addEventListener("visibilitychange", () => {
    if (!document.hidden) return core.check();
    toKeep();
    typing.flush();
  });
  document.getElementById("leave-refused")?.addEventListener("click", leaveRefused);
  addEventListener("beforeunload", (e) => {
    const unkept = !state.kept && state.trail.length > 1;
    if (unkept || history.refused.length) e.preventDefault(); // it is in this window alone
  });
  tabs.listen(async () => {
    await history.heard();
    redraw();
  });
  install(transport.idle);
}

start().catch((e) => panel(`The page could not start (${e instanceof Error ? e.message : String(e)}).`));
