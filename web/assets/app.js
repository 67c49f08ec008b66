// @ts-check
// Starts the page: puts its parts together, takes up the quote worked on last,
// and asks the core for the first answer. Every word on the page is written by
// the core.
import { Core } from "./core.js";
import * as bar from "./bar.js";
import * as embed from "./embed.js";
import * as keep from "./keep.js";
import * as tabs from "./tabs.js";
import { listen } from "./events.js";
import { Files, download } from "./files.js";
import { History } from "./history.js";
import { day } from "./moment.js";
import { MAX_FILE_BYTES, VERSION } from "./protocol.js";
import { Screen } from "./screen.js";
import { newState } from "./state.js";
import { perform } from "./steps.js";
import { Transport, only } from "./transport.js";
import { install } from "./update.js";

/**
 * @typedef {import("./state.js").Act} Act
 * @typedef {import("./state.js").Reply} Reply
 */

const state = newState(keep.loadCosts(), keep.loadKey());
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
  base: address,
  shown: () => screen.name,
  working: screen.working,
  show,
  failed: (why) => trouble(`That could not be done (${why}). What you entered before is kept.`),
});
const act = (/** @type {Act} */ a) => transport.act(a);
const history = new History(state, transport, { keep, tabs, bar, trouble, forget: () => screen.forget() });
const files = new Files({
  keep,
  bar,
  act,
  trouble,
  save: download,
  single: ({ text = "" }) => embed.single(text),
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
  if (reply.fault || !only(acts, "settle", "restore")) trouble(reply.fault || "");
  if (!reply.regions) return;
  const area = state.view?.area;
  if (!history.take(reply, acts)) return;
  screen.show(reply, area !== reply.view?.area);
  for (const step of reply.do || []) perform(step, { state, history, files, keep, trouble });
  transport.comeBack(reply, acts);
}

/** openFragment opens the quote of a link, and takes it out of the address. */
function openFragment() {
  if (!location.hash.startsWith("#q=")) return;
  act({ do: "open-link", value: location.hash.slice(1), file: history.links() });
  window.history.replaceState(null, "", address());
}

async function start() {
  state.kept = await keep.open();
  await history.relist();
  await history.takeUp(await keep.get("last"));
  state.builtIn = await embed.builtIn(MAX_FILE_BYTES);
  state.catalogue = await keep.get("catalogue");
  const whole = (state.builtIn || "").length + (state.catalogue || "").length;
  if (whole > MAX_FILE_BYTES) transport.act(...takeBuiltIn()); // too much for one request
  else transport.queue.push(...takeBuiltIn());
  transport.queue.push(...takeKept());
  act({ do: "start" });
  openFragment();
  transport.idle.then(() => {
    const areas = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("#areas [data-act=go]"));
    transport.rehearse([...areas].map((el) => el.dataset.id || ""), () => !document.hidden);
  });
  addEventListener("hashchange", openFragment);
  tabs.listen(async () => {
    await history.relist();
    if (state.view?.area === "quote") act({ do: "restore" });
  });
  install();
}

listen(document, { state, history, files, act });
start();
