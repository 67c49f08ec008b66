// @ts-check
// Nothing kept in the browser may stop the page from starting. A mark is set before
// something kept is tried, and taken away at the first answer; what still has a mark
// at the next start is suspect and stays out until the user tries it again.
import { read, write, names } from "./keep.js";
import { json, text } from "./stored.js";

const TRYING = "boxwright.trying.";
const SUSPECT = "boxwright.suspect";
const HASTY_MS = 10_000; // who leaves sooner need not have waited for anything

/**
 * What is tried at a start: the catalogue kept here, and the quote worked on last,
 * by its id.
 * @typedef {{ catalogue?: boolean, quote?: string }} Tried
 *
 * What is suspect: the catalogue, and quotes by their ids.
 * @typedef {{ catalogue: boolean, quotes: string[] }} Suspect
 */

/** @returns {Suspect} */
export function suspect() {
  const { catalogue, quotes } = json(read(SUSPECT));
  const ids = Array.isArray(quotes) ? quotes.filter((q) => typeof q === "string") : [];
  return { catalogue: catalogue === true, quotes: ids };
}

/** @param {Suspect} s */
function note({ catalogue, quotes }) {
  write(SUSPECT, catalogue || quotes.length ? JSON.stringify({ catalogue, quotes }) : "");
}

/** accuse makes suspect what was tried: of both the catalogue, which is the likelier. @param {Tried} tried */
export function accuse({ catalogue, quote }) {
  const s = suspect();
  if (catalogue) s.catalogue = true;
  else if (quote && !s.quotes.includes(quote)) s.quotes.push(quote);
  note(s);
}

/** absolve has the catalogue, or a quote, tried again. @param {Tried} what */
export function absolve({ catalogue, quote }) {
  const s = suspect();
  note({ catalogue: s.catalogue && !catalogue, quotes: s.quotes.filter((id) => id !== quote) });
}

/**
 * fallen makes suspect what the windows that do not live any more were trying.
 * @param {Set<string> | undefined} others that live
 */
export function fallen(others) {
  for (const key of names().filter((k) => k.startsWith(TRYING))) {
    if (others?.has(key.slice(TRYING.length))) continue;
    const { catalogue, quote } = json(read(key));
    accuse({ catalogue: catalogue === true, quote: text(quote) });
    write(key, "");
  }
  return suspect();
}

/** One try, of the window with this name. */
export class Trial {
  /** @param {string} name of the window @param {Tried} what */
  constructor(name, what) {
    this.key = TRYING + name;
    this.what = what;
    this.began = Date.now();
    this.open = !!(what.catalogue || what.quote);
    if (this.open) write(this.key, JSON.stringify(what));
  }

  /** passed is told at the first answer. */
  passed() {
    if (this.open) write(this.key, "");
    this.open = false;
  }

  /** left is told when the page goes away: who goes at once blames nothing. */
  left() {
    if (Date.now() - this.began < HASTY_MS) this.passed();
  }

  /** failed is told when there is no answer: what was tried is suspect from now on. */
  failed() {
    if (this.open) accuse(this.what);
    this.passed();
  }
}
