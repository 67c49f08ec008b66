// @ts-check
// One listener per kind of event. Controls say what they do in data-act.

import { moved } from "./focus.js";

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./state.js").Act} Act
 * @typedef {import("./history.js").History} History
 * @typedef {import("./files.js").Files} Files
 * @typedef {HTMLInputElement & { selectedOptions?: HTMLCollectionOf<HTMLOptionElement> }} Control
 *
 * @typedef {{
 *   state: State,
 *   history: Pick<History, "go" | "goTo" | "open" | "copy" | "drop" | "move" | "links">,
 *   files: Pick<Files, "read" | "readAll" | "readBytes" | "exportKept" | "saveSchema" | "seal" | "unseal" |
 *     "putAside">,
 *   copies: Pick<import("./copies.js").Copies, "choose" | "allow" | "stop">,
 *   saving: (off: boolean) => unknown,
 *   typing: Pick<import("./typing.js").Typing, "heard" | "entered">,
 *   act: (a: Act) => void,
 * }} Page
 */

/**
 * Presses that the main thread answers itself, by the word in data-act.
 * @type {Record<string, (el: HTMLElement, page: Page) => unknown>}
 */
const presses = {
  undo: (_, { history }) => history.go(-1),
  redo: (_, { history }) => history.go(1),
  "back-to": ({ dataset }, { history }) => history.goTo(Number(dataset.id)),
  "open-kept": ({ dataset }, { history }) => history.open(dataset.id || ""),
  "fresh-kept": (_, { history }) => history.open(""),
  "copy-kept": (_, { history }) => history.copy(),
  "drop-kept": ({ dataset }, { history }) => history.drop(dataset.id || ""),
  "move-kept": ({ dataset }, { history }) => history.move(dataset.id || ""),
  "export-kept": (_, { files }) => files.exportKept(),
  "seal-kept": (_, { files }) => files.seal(field("seal-pass")),
  "unseal-kept": (_, { files }) => files.unseal(field("unseal-pass")),
  "sealed-aside": (_, { files }) => files.putAside(),
  "copies-folder": (_, { copies }) => copies.choose(),
  "copies-allow": (_, { copies }) => copies.allow(),
  "copies-stop": (_, { copies }) => copies.stop(),
  "keep-off": (_, { saving }) => saving(true),
  "keep-on": (_, { saving }) => saving(false),
  "save-schema": (_, { files }) => files.saveSchema(),
  "from-field": ({ dataset }, { act, typing }) => {
    const field = /** @type {Control | null} */ (document.getElementById(dataset.field || ""));
    act({ do: dataset.value || "", id: dataset.id || "", value: field ? field.value : "" });
    typing.entered(dataset.field || "");
  },
};

/** @param {string} id */
const field = (id) => /** @type {HTMLInputElement} */ (document.getElementById(id));

/**
 * press is a control that was pressed.
 * @param {HTMLElement} el
 * @param {Page} page
 */
export function press(el, page) {
  const { act: name = "", secret: asked } = el.dataset;
  const { costs, key } = page.state;
  if (asked) secret(el, "", name === "open-costs" ? costs : key.sealed, page);
  else if (Object.hasOwn(presses, name)) presses[name](el, page);
  else page.act({ ...doing(el, page), button: naming(el) });
}

/** naming is how a button is called. @param {HTMLElement} el */
const naming = (el) => (el.ariaLabel || el.textContent || "").trim().replace(/\s+/g, " ");

/**
 * change is a field or a choice that was changed.
 * @param {Control} el
 * @param {Page} page
 */
export function change(el, page) {
  if (el.validity?.badInput) return; // half a date: see left
  if (el.type === "file") chosen(el, page);
  else if (el.type === "checkbox" || el.type === "radio") {
    page.act({ ...doing(el, page), on: el.checked, value: el.dataset.value ?? el.value, said: saying(el) });
  } else if (!el.dataset.live) {
    page.act({ ...doing(el, page), value: el.value, said: saying(el) });
  }
}

/**
 * left is a field that the reader is done with. Half a date has no value that could be sent,
 * yet must neither count as none nor stand there without a word.
 * @param {Control | null} el
 * @param {Page} page
 */
export function left(el, page) {
  if (el?.validity?.badInput) page.act({ ...doing(el, page), value: "unfinished", said: saying(el) });
}

/**
 * chosen takes the files out of a file field.
 * @param {Control} el
 * @param {Page} page
 */
function chosen(el, page) {
  const name = el.dataset.act || "";
  const [file, ...others] = el.files || [];
  if (name === "import") for (const f of el.files || []) page.files.read(name, f);
  else if (el.multiple) page.files.readAll(name, [file, ...others].filter(Boolean));
  else if (file && el.dataset.secret) page.files.readBytes(file, (text) => secret(el, file.name, text, page));
  else if (file) page.files.read(name, file);
  el.value = "";
}

/**
 * doing is the act that a control stands for.
 * @param {HTMLElement} el
 * @param {Page} page
 * @returns {Act}
 */
export function doing(el, { state, history }) {
  const { act: name = "", id = "", value = "", sealed, links } = el.dataset;
  const act = { do: name, id, value };
  if (sealed) return { ...act, file: state.key.sealed };
  return links || id === "open-link" ? { ...act, file: history.links() } : act;
}

/**
 * saying is what was put into a field, in the words that stand on the page, for
 * the list of earlier states.
 * @param {Control} el
 */
export function saying(el) {
  const label = el.labels?.[0];
  const name = ((label?.querySelector("b") || label)?.textContent || el.ariaLabel || "").trim();
  let value = el.value;
  if (el.type === "checkbox" || el.type === "radio") value = el.checked ? "yes" : "no";
  else if (el.valueAsDate) value = el.valueAsDate.toLocaleDateString("en-US", { dateStyle: "medium", timeZone: "UTC" });
  else if (el.selectedOptions?.[0]) value = el.selectedOptions[0].textContent || "";
  return name && `${name}: ${value || "–"}`;
}

/**
 * secret asks for something that takes a passphrase. It goes to the worker once
 * and is cleared here.
 * @param {HTMLElement} el
 * @param {string} id
 * @param {string} file
 * @param {Page} page
 */
function secret(el, id, file, page) {
  const field = /** @type {Control} */ (document.getElementById(el.dataset.secret || ""));
  const random = crypto.getRandomValues(new Uint8Array(64));
  page.act({ do: el.dataset.act || "", id, value: field.value, file, random: btoa(String.fromCharCode(...random)) });
  field.value = "";
}

/**
 * keyed gives the step through the states that a key asks for; 0 when it asks for none.
 * @param {KeyboardEvent} e
 */
export function keyed(e) {
  if (!(e.ctrlKey || e.metaKey) || e.altKey) return 0;
  const key = e.key.toLowerCase();
  if (key === "y") return 1;
  if (key === "z") return e.shiftKey ? 1 : -1;
  return 0;
}

/**
 * listen attends to the whole document.
 * @param {Document} doc
 * @param {Page} page
 * @param {Event[]} early what was pressed before
 */
export function listen(doc, page, early) {
  /** @param {Event} e @param {string} selector @returns {Control | null} */
  const from = (e, selector) => (e.target instanceof Element ? e.target.closest(selector) : null);
  const click = (/** @type {Event} */ e) => {
    // A way to a place of the page is no step of the browser's history.
    const way = /** @type {HTMLAnchorElement | null} */ (/** @type {unknown} */ (from(e, "a.way")));
    const to = way && doc.getElementById(way.hash.slice(1));
    if (to) {
      e.preventDefault();
      to.scrollIntoView();
      to.focus({ preventScroll: true });
    }
    const el = from(e, "[data-act]");
    if (!el) return inRow(e);
    if (el.matches("input, select, textarea")) return;
    e.preventDefault();
    press(el, page);
  };
  // A press beside an option's name is one on its box, but where words of the row were marked.
  const inRow = (/** @type {Event} */ e) => {
    if (from(e, "label, .field, .why, .told, summary") || doc.getSelection?.()?.type === "Range") return;
    const box = from(e, ".option")?.querySelector("input");
    box?.focus();
    box?.click();
  };
  const changed = (/** @type {Event} */ e) => {
    const el = from(e, "[data-act]");
    if (!el) return;
    change(el, page);
    page.typing.entered(el.id);
  };
  doc.addEventListener("click", click);
  doc.addEventListener("change", changed);
  doc.addEventListener("focusout", (e) => left(from(e, "[data-act]"), page));
  for (const e of early) (e.type === "click" ? click : changed)(e);
  doc.addEventListener("input", (e) => {
    page.typing.heard(e.target);
    const el = from(e, "[data-live]");
    if (el) page.act({ ...doing(el, page), value: el.value });
  });
  // A field of one line that wraps takes Enter as any field of one line does.
  doc.addEventListener("beforeinput", (e) => {
    if (e.inputType !== "insertLineBreak" || !from(e, "textarea[rows='1']")) return;
    e.preventDefault();
    changed(e);
  });
  doc.addEventListener("keydown", (e) => {
    if (moved(e)) e.preventDefault();
    const by = keyed(e);
    if (!by || from(e, "input:not([type=radio],[type=checkbox]), textarea")) return;
    // Where a quote is read there is no such button, and the quote showing now stands still.
    if (!doc.querySelector(`[data-act=${by < 0 ? "undo" : "redo"}]`)) return;
    e.preventDefault();
    page.history.go(by);
  });
}
