// @ts-check
// Keeps what is typed while it is typed, before its field is left, so that a page
// that ends in between loses none of it.
import { read, write, names } from "./keep.js";
import { json, text } from "./stored.js";

const TYPED = "boxwright.typed.";
const PAUSE_MS = 250;
const MAX_CHARACTERS = 500_000;

/** @typedef {HTMLInputElement | HTMLTextAreaElement} Field */

/** isText reports whether a field holds text that may be kept. @param {EventTarget | null} el @returns {el is Field} */
export function isText(el) {
  if (!(el instanceof HTMLTextAreaElement || el instanceof HTMLInputElement)) return false;
  if (!el.id || el.dataset.secret || el.dataset.live) return false;
  return el instanceof HTMLTextAreaElement || /^(text|search|email|tel|url|date|number|)$/.test(el.type);
}

export class Typing {
  /** @param {() => string} quote that is worked on */
  constructor(quote) {
    this.quote = quote;
    this.name = ""; // of the window, once it is sure
    /** @type {Record<string, string>} by the id of the field */
    this.fields = {};
    this.of = "";
    this.timer = 0;
  }

  /** heard is told of every letter. @param {EventTarget | null} el */
  heard(el) {
    if (!isText(el)) return;
    const quote = this.quote();
    if (quote !== this.of) this.fields = {};
    this.of = quote;
    this.fields[el.id] = el.value;
    this.timer ||= Number(setTimeout(() => this.flush(), PAUSE_MS));
  }

  /** entered is told when a field was left and its text taken. @param {string} id */
  entered(id) {
    if (!(id in this.fields)) return;
    delete this.fields[id];
    this.flush();
  }

  /** flush writes what is not written yet: also when the page is hidden. */
  flush() {
    clearTimeout(this.timer);
    this.timer = 0;
    if (!this.name) return;
    const note = Object.keys(this.fields).length ? JSON.stringify({ quote: this.of, fields: this.fields }) : "";
    if (note.length <= MAX_CHARACTERS) write(TYPED + this.name, note);
  }

  /**
   * left is what windows that do not live any more left of a quote, by field. It is
   * this window's from now on.
   * @param {string} quote
   * @param {Set<string> | undefined} others that live
   */
  left(quote, others) {
    /** @type {Record<string, string>} */
    const found = {};
    for (const key of names().filter((k) => k.startsWith(TYPED))) {
      const name = key.slice(TYPED.length);
      if (others?.has(name)) continue;
      const note = json(read(key));
      if (text(note.quote) !== quote) continue;
      const fields = note.fields && typeof note.fields === "object" ? Object.entries(note.fields) : [];
      for (const [id, value] of fields) if (typeof value === "string") found[id] = value;
      if (name !== this.name) write(key, "");
    }
    this.fields = { ...found, ...(this.of === quote ? this.fields : {}) };
    this.of = quote;
    this.flush();
    return found;
  }
}
