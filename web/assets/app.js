// The main thread: keeps the draft, sends what the user does to the core, and
// morphs the regions of the page that come back changed. It knows nothing of
// vehicles; every word on the page is written by the core.
import { Idiomorph } from "idiomorph/dist/idiomorph.esm.js";
import { Core } from "./core.js";
import * as bar from "./bar.js";
import * as embed from "./embed.js";
import * as keep from "./keep.js";
import * as tabs from "./tabs.js";
import { install } from "./update.js";

const REGIONS = ["masthead", "areas", "main", "standing"];

const state = { draft: undefined, view: undefined, pins: [] };
let here = { id: "", count: 0, mine: true }; // the kept quote that is worked on
let trail = []; // its states, oldest first: { draft, said, when }
let at = 0; // which of them is shown
let first = 0; // number of the oldest
let saved = []; // every kept quote: { id, name, line, when, issued, weighed }
let shown = {}; // html last put into each region
let queue = [];
let busy = false;
let kept = true;
// Sealed files; their clear contents never come to this thread.
let costs = keep.loadCosts();
let key = keep.loadKey();

let builtIn; // text of the catalogue that this page was made with, when that is not the demonstration
let catalogue; // text of the one loaded, when it is not the built-in one

const takeBuiltIn = () => (builtIn === undefined ? [] : [{ do: "built-in", value: builtIn }]);
const takeKept = () => (catalogue ? [{ do: "kept-catalogue", id: "The catalogue kept here", value: catalogue }] : []);
const core = new Core(trouble, () => [takeBuiltIn(), takeKept()].filter((acts) => acts.length).map((acts) => ({ v: 1, acts, today: day(new Date()) })));

function trouble(text) {
  const box = document.getElementById("trouble");
  box.textContent = text;
  box.hidden = !text;
}

const two = (n) => String(n).padStart(2, "0");
const day = (d) => `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
const moment = (d) => d.toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });
const newId = () => Array.from(crypto.getRandomValues(new Uint8Array(12)), (b) => b.toString(16).padStart(2, "0")).join("");

// act queues something the user did. While the core is busy the acts gather
// and go together; only the newest state is drawn.
function act(a) {
  queue.push(a);
  if (!busy) idle = flush();
}

let idle = Promise.resolve(); // settled when nothing waits for the core

async function flush() {
  busy = true;
  while (queue.length) {
    const acts = queue;
    queue = [];
    const asked = here;
    const listed = (state.view || {}).area === "quote" || acts.some((a) => a.id === "quote" || a.do === "quotes");
    const request = {
      v: 1, acts, draft: state.draft, view: state.view, pins: state.pins, today: day(new Date()), base: location.href.split("#")[0], kept,
      costs: !!costs, key: key.open, weighed: saved.filter((s) => s.id !== here.id).flatMap((s) => s.weighed || []), undo: at, redo: Math.max(trail.length - 1 - at, 0),
    };
    if (listed) {
      request.saved = saved.map(({ id, name, line, when }) => ({ id, name, line, when, here: id === here.id }));
      request.trail = trail.map(({ said, when }, i) => ({ n: first + i, said, when, here: i === at })).slice(-30);
    }
    const long = setTimeout(() => (document.documentElement.dataset.busy = "1"), 600);
    try {
      const reply = await core.ask(request);
      if (reply.rehearsed || asked !== here) continue; // another quote was taken up meanwhile
      show(reply, acts);
      if (!listed && state.view && state.view.area === "quote") queue.push({ do: "restore" });
    } catch (e) {
      if (acts.some((a) => a.do !== "rehearse")) trouble(`That could not be done (${e.message}). What you entered before is kept.`);
    } finally {
      clearTimeout(long);
      delete document.documentElement.dataset.busy;
    }
  }
  busy = false;
}

function show(reply, acts) {
  // What was said in alarm stays until the user does something else.
  if (reply.fault || !acts.every((a) => a.do === "settle" || a.do === "restore")) trouble(reply.fault || "");
  if (reply.fault && !reply.regions) return;
  const { area } = state.view || {};
  if (!take(reply, acts)) return;
  const another = area !== reply.view.area;
  for (const id of REGIONS) draw(id, reply.regions[id], id === "main" && another);
  // A press that was not taken must not look as if it were.
  for (const el of document.querySelectorAll("#main input[type=radio], #main input[type=checkbox]")) el.checked = el.hasAttribute("checked");
  inSight();
  document.title = reply.title;
  const { dataset } = document.documentElement;
  if (dataset.theme !== (reply.view.theme || "")) dataset.theme = reply.view.theme || "";
  const say = document.getElementById("say");
  if (reply.say && say.textContent !== reply.say) say.textContent = reply.say;
  for (const step of reply.do || []) perform(step);
  settle(reply, acts);
}

// inSight scrolls a row that runs off a narrow screen to where the reader is in
// it, or is to go next.
function inSight() {
  if (!matchMedia("(max-width: 1000px)").matches) return;
  for (const el of document.querySelectorAll(":is(#areas, .chapters) :is([aria-current], [data-next])")) {
    const row = el.closest("ol, .chapters");
    const [a, b] = [el.getBoundingClientRect(), row.getBoundingClientRect()];
    if (a.left < b.left || a.right > b.right) row.scrollLeft += a.left - b.left - 24;
  }
}

// draw brings a region to what it shall show: one piece of HTML after another, of
// which those that stay are left alone. Of another area nothing stays.
function draw(id, pieces, another) {
  const region = document.getElementById(id);
  const had = shown[id] || [];
  shown[id] = pieces;
  if (another) region.innerHTML = pieces.join("");
  else if (had.length !== pieces.length || region.childNodes.length !== pieces.length) morph(region, pieces.join(""), "innerHTML");
  else pieces.forEach((html, i) => html === had[i] || morph(region.childNodes[i], html, "outerHTML"));
}

const morph = (node, html, morphStyle) =>
  Idiomorph.morph(node, html, { morphStyle, ignoreActiveValue: document.activeElement.matches("input, textarea"), callbacks: { beforeAttributeUpdated: (name) => name !== "open" } });

// take takes over the state of a reply and keeps it. It refuses a change of a
// quote that another window holds.
function take(reply, acts) {
  const changed = JSON.stringify(state.draft) !== JSON.stringify(reply.draft);
  // A link opens a quote of its own, and a kept quote that cannot be used stays
  // as it is: in both cases a new record begins.
  const another = changed && state.draft && ((reply.do || []).some((s) => s.do === "new-quote") || (reply.fault && acts.every((a) => a.do !== "set") && acts.some((a) => a.do === "start")));
  if (another) begin();
  else if (changed && state.draft && !here.mine) {
    taken();
    shown = {};
    if (acts.some((a) => a.do !== "restore")) queue.push({ do: "restore" });
    return false;
  }
  const isNew = (changed && acts.some((a) => a.do !== "restore")) || !trail.length;
  state.draft = reply.draft;
  state.view = reply.view;
  state.pins = reply.pins;
  if (isNew) {
    trail.length = trail.length ? at + 1 : 0;
    trail.push({ draft: reply.draft, said: reply.said || "", when: moment(new Date()) });
    if (trail.length > MAX_TRAIL) {
      trail.shift();
      first++;
    }
    at = trail.length - 1;
  } else {
    trail[at].draft = reply.draft;
  }
  // What only comes later than the rest is nothing new to keep.
  if (here.mine && (changed || !acts.every((a) => a.do === "settle"))) store(reply.gist, isNew || changed, isNew);
  return true;
}

const MAX_TRAIL = 101;

// store keeps the quote as it is now.
async function store(gist, step, isNew) {
  const mine = here;
  const when = moment(new Date());
  const answer = keep.save({ id: mine.id, count: ++mine.count, saved: new Date().toISOString(), at: first + at, draft: state.draft, view: state.view, pins: state.pins, gist }, step && trail[at], isNew);
  const told = (s) => JSON.stringify([s.id, s.name, s.line, s.weighed]);
  const news = !saved.some((s) => told(s) === told({ id: mine.id, ...gist }));
  saved = [{ id: mine.id, ...gist, when }, ...saved.filter((s) => s.id !== mine.id)];
  const ok = await answer;
  if (ok === "taken") {
    mine.mine = false;
    if (mine === here) taken();
    return;
  }
  if (kept !== ok) {
    kept = ok;
    if (!ok) saved = [];
    act({ do: "restore" });
  }
  if (news) tabs.tell();
}

// begin starts a new record for what is on the page from now on.
function begin() {
  here = { id: newId(), count: 0, mine: true };
  const mine = here;
  trail = [];
  at = first = 0;
  bar.settle("taken");
  keep.put("last", mine.id);
  tabs.claim(mine.id, () => lost(mine));
}

// open takes up a kept quote; a new one begins when there is none. What is done
// meanwhile waits.
async function open(id, steal) {
  while (busy) await idle;
  busy = true;
  await (idle = takeUp(id, steal));
  busy = false;
  act({ do: "start" });
}

async function takeUp(id, steal) {
  const record = await keep.load(id);
  if (!record) {
    state.draft = undefined;
    begin();
    return;
  }
  const mine = { id, count: record.count, mine: true };
  const { area } = state.view || {};
  here = mine;
  state.draft = record.draft;
  state.pins = record.pins;
  state.view = record.view || (state.view && { ...state.view, guide: 0 });
  if (area && state.view) state.view = { ...state.view, area };
  first = record.first;
  trail = record.steps;
  at = Math.max(record.at - first, 0);
  if (!trail[at]) [trail, at] = [[{ draft: record.draft, said: "", when: "" }], 0];
  bar.settle("taken");
  keep.put("last", id);
  // The page is drawn meanwhile; the count in the record guards it until then.
  tabs.claim(id, () => lost(mine), steal).then((ok) => ok || lost(mine));
}

function lost(mine) {
  mine.mine = false;
  if (mine === here) taken();
}

function taken() {
  bar.ask("taken", "This quote is open in another window. It can be read here; changes are made in one window at a time.", [
    ["Take it over here", () => open(here.id, true)],
    ["Work on a copy", copyKept],
  ]);
}

async function copyKept() {
  while (busy) await idle;
  begin();
  act({ do: "restore" });
}

// sendKept hands the quotes kept here to the core one by one, as it asks for
// them; nothing else waits for that.
const MOST_SENT = 200;
let unsent = [];
async function sendKept(first) {
  if (first) unsent = (await keep.list()).slice(0, MOST_SENT).map((r) => r.id);
  const id = unsent.shift();
  const r = id && (await keep.load(id));
  act({ do: "touch", id: r ? id : "", value: r ? JSON.stringify(r.draft) : "", on: unsent.length > 0 });
}

// keepMoved keeps a quote that the core moved to another edition; the state
// before stays as an earlier one.
async function keepMoved({ id, text, name, gist }) {
  const r = await keep.load(id);
  const draft = JSON.parse(text);
  const ok = r && (await keep.save({ id, count: r.count + 1, saved: new Date().toISOString(), at: r.at + 1, draft, view: r.view, pins: r.pins, gist }, { draft, said: name, when: moment(new Date()) }, true));
  if (ok !== true) trouble("The quote could not be kept as it was moved; it stays as it was.");
  await readSaved();
  tabs.tell();
}

async function saveSingle({ name, text }) {
  try {
    saveFile(name, "text/html", await embed.single(text));
  } catch (e) {
    trouble(`The file could not be put together (${e.message}). Nothing was changed.`);
  }
}

async function readSaved() {
  saved = (await keep.list()).map((r) => ({ id: r.id, ...r.gist, when: moment(new Date(r.saved)) }));
}

// exportKept saves every kept quote as one file. Sealed files are not in it.
async function exportKept() {
  const quotes = [];
  for (const r of await keep.list()) {
    const full = await keep.load(r.id);
    if (full) quotes.push({ id: r.id, name: r.gist.name, line: r.gist.line, saved: r.saved, draft: r.draft, pins: r.pins || [], steps: full.steps, at: r.at - full.first });
  }
  const file = { format: "boxwright-kept/1", quotes, catalogue: (await keep.get("catalogue")) || undefined };
  let text = JSON.stringify(file);
  if (text.length > MAX_FILE / 2) {
    // Too much for one file with every state: the last one of each will do.
    for (const q of quotes) [q.steps, q.at] = [[], 0];
    const whole = text.length;
    text = JSON.stringify(file);
    trouble(`The file holds every quote as it is now, but not its earlier states: with them it would have ${whole.toLocaleString("en")} characters, and at most ${(MAX_FILE / 2).toLocaleString("en")} go into one file. Here nothing was changed.`);
  }
  saveFile("boxwright-quotes.json", "application/json", text);
}

// saveSchema saves the JSON Schema of a quote's file, which the single file
// carries and the folder has beside the page.
async function saveSchema() {
  try {
    const carried = document.getElementById("schema-text");
    const reply = carried || (await fetch(document.querySelector("script[data-schema]").dataset.schema));
    if (!carried && !reply.ok) throw new Error(`the host answers ${reply.status}`);
    saveFile("quote.schema.json", "application/schema+json", carried ? carried.textContent : await reply.text());
  } catch (e) {
    trouble(`The schema could not be fetched (${e.message}). Try again with a network.`);
  }
}

async function importKept(text) {
  const file = JSON.parse(text);
  try {
    for (const q of file.quotes) await keep.add(q, newId());
  } catch {
    trouble("This browser could not keep all of it. What was here before stays.");
  }
  await readSaved();
  tabs.tell();
  act({ do: "restore" });
  if (file.catalogue && file.catalogue !== (await keep.get("catalogue"))) {
    bar.ask("catalogue", "The file also holds a catalogue.", [
      ["Use it now", () => act({ do: "load-catalogue", id: "the catalogue of the file", value: file.catalogue })],
      ["Leave it", () => {}],
    ]);
  }
}

// settle comes back for what takes long, once this is drawn, and for what is
// still checking, once nothing else waits; a click in between begins anew.
let effort = 0;
let coming = 0; // the timer, while it waits to come back
function settle({ soon, unsettled }, acts) {
  if (!acts.every((a) => a.do === "settle")) effort = 0;
  clearTimeout(coming);
  coming = 0;
  if (!soon && !unsettled) return;
  if (!soon) effort++;
  const back = () => {
    coming = 0;
    if (!queue.length && !busy) act({ do: "settle", value: String(effort) });
  };
  coming = setTimeout(back, soon ? 20 : 50);
}

// rehearse has the core go through every area while nobody waits for it, so that
// the browser has each part ready when it is first asked for.
function rehearse() {
  const areas = [...document.querySelectorAll("#areas [data-act=go]")].map((el) => el.dataset.id);
  const next = () => {
    if (!areas.length) return;
    if (!busy && !coming && !document.hidden) act({ do: "rehearse", id: areas.shift() });
    setTimeout(next, 100);
  };
  setTimeout(next, 200);
}

// perform does what only the main thread can.
function perform(step) {
  switch (step.do) {
    case "focus": {
      const target = document.getElementById(step.id);
      if (target) target.focus();
      break;
    }
    case "show": {
      const target = document.getElementById(step.id);
      if (target) target.scrollIntoView({ block: "nearest" });
      break;
    }
    case "top":
      scrollTo(0, 0);
      document.getElementById("main").focus({ preventScroll: true });
      break;
    case "print":
      print();
      break;
    case "copy":
      copy(step.text);
      break;
    case "save":
      saveFile(step.name, step.type, step.base64 ? bytes(step.text) : step.text);
      break;
    case "keep-costs":
      costs = step.text || "";
      if (!keep.saveCosts(costs)) trouble("This browser will not keep the sealed cost sheet; open its file again next time.");
      break;
    case "keep-catalogue":
      catalogue = step.text;
      keep.put("catalogue", step.text).then((ok) => ok || trouble("This browser will not keep the catalogue for next time; it stays loaded until the page is closed."));
      break;
    case "keep-key":
      key = { sealed: step.text || "", open: step.id || "" };
      if (!keep.saveKey(key.sealed, key.open)) trouble("This browser will not keep the sealed key; save its file, and open it again next time.");
      break;
    case "import":
      importKept(step.text);
      break;
    case "send-kept":
      sendKept(step.id);
      break;
    case "keep-moved":
      keepMoved(step);
      break;
    case "embed":
      saveSingle(step);
      break;
  }
}

async function copy(text) {
  const absolute = text.startsWith("#") ? location.href.split("#")[0] + text : text;
  try {
    await navigator.clipboard.writeText(absolute);
  } catch {
    const field = document.getElementById("link-text");
    if (field) {
      field.focus();
      field.select();
    }
  }
}

const bytes = (text) => Uint8Array.from(atob(text), (c) => c.charCodeAt(0));

function saveFile(name, type, text) {
  const a = document.createElement("a");
  a.href = URL.createObjectURL(new Blob([text], { type }));
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 10000);
}

// go shows another state of the quote, when all that was asked is answered: so
// many steps on, or back below nought.
async function go(by) {
  while (busy) await idle;
  const to = at + by;
  if (!trail[to]) return;
  if (!here.mine) return taken();
  at = to;
  state.draft = trail[to].draft;
  act({ do: "restore" });
}

// links are the signed quotes at hand: a revision finds the one before it.
const links = () => saved.map((s) => s.issued).filter(Boolean).join(" ");

// One listener per kind of event; controls say what they do in data-act.
function doing(el, extra) {
  const { act: name, id, value } = el.dataset;
  const more = el.dataset.sealed ? { file: key.sealed } : el.dataset.links || id === "open-link" ? { file: links() } : {};
  return { do: name, id: id || "", value: value ?? "", ...more, ...extra };
}

document.addEventListener("click", (e) => {
  const el = e.target.closest("[data-act]");
  if (!el || el.matches("input, select, textarea")) return;
  e.preventDefault();
  if (el.dataset.secret) return secret(el, "", el.dataset.act === "open-costs" ? costs : key.sealed);
  switch (el.dataset.act) {
    case "undo":
      return go(-1);
    case "redo":
      return go(1);
    case "back-to":
      return go(Number(el.dataset.id) - first - at);
    case "open-kept":
      return open(el.dataset.id);
    case "fresh-kept":
      return open("");
    case "copy-kept":
      return copyKept();
    case "drop-kept":
      return keep.drop(el.dataset.id).then(readSaved).then(() => (tabs.tell(), act({ do: "restore" })));
    case "move-kept":
      if (el.dataset.id === here.id) return act({ do: "move-here" });
      return keep.load(el.dataset.id).then((r) => r && act({ do: "move-kept", id: r.id, value: JSON.stringify(r.draft) }));
    case "export-kept":
      return exportKept();
    case "save-schema":
      return saveSchema();
    case "from-field": {
      const field = document.getElementById(el.dataset.field);
      return act({ do: el.dataset.value, id: el.dataset.id || "", value: field ? field.value : "" });
    }
  }
  act(doing(el, {}));
});

// saying is what was put into a field, in the words that stand on the page, for
// the list of earlier states.
function saying(el) {
  const label = el.labels?.[0];
  const name = ((label?.querySelector("b") || label)?.textContent || el.ariaLabel || "").trim();
  let value = el.value;
  if (el.type === "checkbox" || el.type === "radio") value = el.checked ? "yes" : "no";
  else if (el.valueAsDate) value = el.valueAsDate.toLocaleDateString("en-US", { dateStyle: "medium", timeZone: "UTC" });
  else if (el.selectedOptions && el.selectedOptions[0]) value = el.selectedOptions[0].textContent;
  return name && `${name}: ${value || "–"}`;
}

document.addEventListener("change", (e) => {
  const el = e.target.closest("[data-act]");
  if (!el) return;
  if (el.type === "file") {
    const [file, ...others] = el.files;
    if (el.multiple) readFiles(el, [file, ...others].filter(Boolean));
    else if (file) readFile(el, file);
    el.value = "";
  } else if (el.type === "checkbox" || el.type === "radio") {
    act(doing(el, { on: el.checked, value: el.dataset.value ?? el.value, said: saying(el) }));
  } else if (!el.dataset.live) {
    act(doing(el, { value: el.value, said: saying(el) }));
  }
});

document.addEventListener("input", (e) => {
  const el = e.target.closest("[data-live]");
  if (el) act(doing(el, { value: el.value }));
});

document.addEventListener("keydown", (e) => {
  if (!(e.ctrlKey || e.metaKey) || e.altKey || e.target.matches("input:not([type=radio],[type=checkbox]), textarea")) return;
  const key = e.key.toLowerCase();
  if (key === "z") {
    e.preventDefault();
    go(e.shiftKey ? 1 : -1);
  } else if (key === "y") {
    e.preventDefault();
    go(1);
  }
});

const MAX_FILE = 8 << 20;

// secret asks for something that takes a passphrase. It goes to the worker once
// and is cleared here.
function secret(el, id, file) {
  const field = document.getElementById(el.dataset.secret);
  const random = crypto.getRandomValues(new Uint8Array(64));
  act({ do: el.dataset.act, id, value: field.value, file, random: btoa(String.fromCharCode(...random)) });
  field.value = "";
}

function tooLarge(name, size) {
  if (size > MAX_FILE) trouble(`${name} has ${size.toLocaleString("en")} bytes; the most that is read is ${MAX_FILE.toLocaleString("en")}. Nothing was changed.`);
  return size > MAX_FILE;
}

// readFiles takes several texts for one act.
async function readFiles(el, files) {
  const { act: name } = el.dataset;
  const names = files.map((f) => f.name).join(", ");
  if (!files.length || tooLarge(names, files.reduce((n, f) => n + f.size, 0))) return;
  try {
    act({ do: name, id: names, value: JSON.stringify(await Promise.all(files.map(async (f) => ({ name: f.name, text: await f.text() })))) });
  } catch {
    trouble(`${names} could not be read. Nothing was changed.`);
  }
}

function readFile(el, file) {
  if (tooLarge(file.name, file.size)) return;
  const reader = new FileReader();
  reader.onload = () => {
    if (el.dataset.secret) secret(el, file.name, reader.result.split(",")[1] || "");
    else act({ do: el.dataset.act, id: file.name, value: reader.result });
  };
  reader.onerror = () => trouble(`${file.name} could not be read. Nothing was changed.`);
  if (el.dataset.secret) reader.readAsDataURL(file);
  else reader.readAsText(file);
}

function openFragment() {
  if (location.hash.startsWith("#q=")) {
    act({ do: "open-link", value: location.hash.slice(1), file: links() });
    history.replaceState(null, "", location.href.split("#")[0]);
  }
}

async function start() {
  kept = await keep.open();
  await readSaved();
  await takeUp(await keep.get("last"));
  builtIn = await embed.builtIn(MAX_FILE);
  catalogue = await keep.get("catalogue");
  if ((builtIn || "").length + (catalogue || "").length > MAX_FILE) takeBuiltIn().forEach(act); // too much for one request
  else queue.push(...takeBuiltIn());
  queue.push(...takeKept());
  act({ do: "start" });
  openFragment();
  idle.then(rehearse);
  addEventListener("hashchange", openFragment);
  tabs.listen(() => readSaved().then(() => state.view && state.view.area === "quote" && act({ do: "restore" })));
  install();
}

start();
