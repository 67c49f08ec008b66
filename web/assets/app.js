// The main thread: keeps the draft, sends what the user does to the core, and
// morphs the regions of the page that come back changed. It knows nothing of
// vehicles; every word on the page is written by the core.
import { Idiomorph } from "idiomorph/dist/idiomorph.esm.js";
import { Core } from "./core.js";
import * as keep from "./keep.js";

const MAX_PAST = 100;
const REGIONS = ["masthead", "areas", "main", "standing"];

const state = keep.load(); // { draft, view, pins }
const past = [];
const future = [];
let shown = {}; // html last put into each region
let queue = [];
let busy = false;
let kept = true;
let costs = keep.loadCosts(); // sealed; its clear text never comes to this thread

const core = new Core(trouble);

function trouble(text) {
  const box = document.getElementById("trouble");
  box.textContent = text;
  box.hidden = !text;
}

function today() {
  const d = new Date();
  const two = (n) => String(n).padStart(2, "0");
  return `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
}

// act queues something the user did. While the core is busy the acts gather
// and go together; only the newest state is drawn.
function act(a) {
  queue.push(a);
  if (!busy) flush();
}

async function flush() {
  busy = true;
  while (queue.length) {
    const acts = queue;
    queue = [];
    try {
      show(await core.ask({ v: 1, acts, draft: state.draft, view: state.view, pins: state.pins, today: today(), base: location.href.split("#")[0], kept, costs: !!costs, undo: past.length, redo: future.length }), acts);
    } catch (e) {
      trouble(`That could not be done (${e.message}). What you entered before is kept.`);
    }
  }
  busy = false;
}

function remember(draft) {
  const before = JSON.stringify(state.draft);
  if (state.draft && before !== JSON.stringify(draft)) {
    past.push(before);
    if (past.length > MAX_PAST) past.shift();
    future.length = 0;
  }
}

function show(reply, acts) {
  // What was said in alarm stays until the user does something else.
  if (reply.fault || !acts.every((a) => a.do === "settle")) trouble(reply.fault || "");
  if (reply.fault && !reply.regions) return;
  if (reply.draft) {
    if (!acts.some((a) => a.do === "restore")) remember(reply.draft);
    state.draft = reply.draft;
  }
  state.view = reply.view;
  state.pins = reply.pins;
  kept = keep.save(state);
  for (const id of REGIONS) {
    const html = reply.regions[id];
    if (html === undefined || html === shown[id]) continue;
    shown[id] = html;
    Idiomorph.morph(document.getElementById(id), html, { morphStyle: "innerHTML", ignoreActiveValue: document.activeElement.matches("input, textarea"), callbacks: { beforeAttributeUpdated: (name) => name !== "open" } });
  }
  document.title = reply.title;
  document.documentElement.dataset.theme = reply.view.theme || "";
  const say = document.getElementById("say");
  if (reply.say && say.textContent !== reply.say) say.textContent = reply.say;
  for (const step of reply.do || []) perform(step);
  settle(reply.unsettled, acts);
}

// settle comes back for what is still checking once nothing else waits; a click
// in between begins anew.
let effort = 0;
function settle(unsettled, acts) {
  if (!acts.every((a) => a.do === "settle")) effort = 0;
  if (unsettled) setTimeout(() => queue.length || busy || act({ do: "settle", value: String(++effort) }), 50);
}

// perform does what only the main thread can.
function perform(step) {
  switch (step.do) {
    case "focus": {
      const target = document.getElementById(step.id);
      if (target) target.focus();
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
      if (!keep.saveCatalogue(step.text)) trouble("This browser will not keep the catalogue for next time; it stays loaded until the page is closed.");
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

function step(from, to) {
  if (!from.length) return;
  to.push(JSON.stringify(state.draft));
  state.draft = JSON.parse(from.pop());
  act({ do: "restore" });
}

// One listener per kind of event; controls say what they do in data-act.
function doing(el, extra) {
  const { act: name, id, value } = el.dataset;
  return { do: name, id: id || "", value: value ?? "", ...extra };
}

document.addEventListener("click", (e) => {
  const el = e.target.closest("[data-act]");
  if (!el || el.matches("input, select, textarea")) return;
  e.preventDefault();
  if (el.dataset.secret) return secret(el, "", costs);
  switch (el.dataset.act) {
    case "undo":
      return step(past, future);
    case "redo":
      return step(future, past);
    case "from-field": {
      const field = document.getElementById(el.dataset.field);
      return act({ do: el.dataset.value, id: el.dataset.id || "", value: field ? field.value : "" });
    }
  }
  act(doing(el, {}));
});

document.addEventListener("change", (e) => {
  const el = e.target.closest("[data-act]");
  if (!el) return;
  if (el.type === "file") {
    const [file] = el.files;
    el.value = "";
    if (file) readFile(el, file);
  } else if (el.type === "checkbox" || el.type === "radio") {
    act(doing(el, { on: el.checked, value: el.dataset.value ?? el.value }));
  } else if (!el.dataset.live) {
    act(doing(el, { value: el.value }));
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
    if (e.shiftKey) step(future, past);
    else step(past, future);
  } else if (key === "y") {
    e.preventDefault();
    step(future, past);
  }
});

const MAX_FILE = 8 << 20;

// secret asks for something that takes a passphrase. It goes to the worker once
// and is cleared here.
function secret(el, id, file) {
  const field = document.getElementById(el.dataset.secret);
  const random = crypto.getRandomValues(new Uint8Array(32));
  act({ do: el.dataset.act, id, value: field.value, file, random: btoa(String.fromCharCode(...random)) });
  field.value = "";
}

function readFile(el, file) {
  if (file.size > MAX_FILE) {
    trouble(`${file.name} has ${file.size.toLocaleString("en")} bytes; the most that is read is ${MAX_FILE.toLocaleString("en")}. Nothing was changed.`);
    return;
  }
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
    act({ do: "open-link", value: location.hash.slice(1) });
    history.replaceState(null, "", location.href.split("#")[0]);
  }
}

addEventListener("hashchange", openFragment);

const catalogue = keep.loadCatalogue();
if (catalogue) act({ do: "load-catalogue", id: "the catalogue kept here", value: catalogue });
act({ do: "start" });
openFragment();
