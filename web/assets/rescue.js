// @ts-check
// A plain panel of everything this page keeps in the browser: each thing can be
// saved as a file, tried again where it did not let the page start, and taken out,
// one by one. It needs nothing but the browser, so that a core that does not run
// keeps nobody from their quotes.
import * as stored from "./stored.js";
import { fileOf } from "./copies.js";
import { named } from "./letters.js";

/**
 * What the panel needs of the page around it.
 * @typedef {{
 *   keep: Pick<typeof import("./keep.js"), "everything" | "drop" | "put" | "dropText" | "forgetAll">,
 *   trial: Pick<typeof import("./trial.js"), "suspect" | "absolve">,
 *   save: (name: string, type: string, content: string) => void,
 *   reload: () => void,
 * }} Around
 *
 * A thing that is kept, in a row of the panel.
 * @typedef {{ name: string, line: string, file: string, text: () => string, suspect?: () => void, drop: () => unknown }} Row
 */

const LONG_LINE = 160;

/** What texts beside the database are called. @type {[beginning: string, name: string, line: string][]} */
const TEXTS = [
  ["boxwright.costs.", "Cost sheet", "sealed with its passphrase"],
  ["boxwright.key.", "Signing key", "sealed with its passphrase"],
  ["boxwright.bids.", "Corrections for requirement lists", ""],
  ["boxwright.unsaved.", "Changes on their way to a quote", "taken up at the next start"],
  ["boxwright.aside.", "Changes that could not be taken up", "put aside"],
  ["boxwright.typed.", "Text that was being typed", ""],
];

/** @param {unknown} x */
const json = (x) => JSON.stringify(x, null, 1) ?? "null";

/**
 * exported is quotes as the file that the page takes in again.
 * @param {any[]} quotes as they are kept
 * @param {[any, any][]} steps
 * @param {string} [catalogue]
 * @param {string} [bids] corrections for requirement lists
 */
export function exported(quotes, steps, catalogue, bids) {
  const list = quotes.map(stored.record).filter((r) => r !== null);
  const whole = list.map(({ id, saved, draft, pins, gist, at }) => {
    const own = steps.filter(([key]) => Array.isArray(key) && key[0] === id);
    const t = stored.trail(
      own.map(([, value]) => value),
      own.map(([key]) => key),
      at,
    );
    return { id, name: gist.name, line: gist.line, saved, draft, pins, steps: t.steps, at: t.steps.length ? at - t.first : 0 };
  });
  const beside = { catalogue: catalogue || undefined, bids: bids || undefined };
  return JSON.stringify({ format: stored.FORMAT, quotes: whole, ...beside });
}

/**
 * rows are the things kept here, each with what can be done about it.
 * @param {Awaited<ReturnType<Around["keep"]["everything"]>>} all
 * @param {Around} around
 * @returns {Row[]}
 */
export function rows({ quotes, steps, single, texts }, { keep, trial }) {
  const suspect = trial.suspect();
  /** @type {Row[]} */
  const out = [];
  for (const q of quotes) {
    const r = stored.record(q);
    const id = stored.text(q?.id);
    const row = {
      name: r ? named(r.gist.name) : "A quote that cannot be read",
      line: r ? [r.gist.line, r.saved.slice(0, 10)].filter(Boolean).join(" · ") : "kept as it is",
      file: fileOf(id),
      text: () => (r ? exported([q], steps) : json({ record: q, steps: steps.filter(([key]) => key?.[0] === q?.id) })),
      drop: () => keep.drop(q?.id),
    };
    const tryAgain = suspect.quotes.includes(id) ? { suspect: () => trial.absolve({ quote: id }) } : {};
    out.push({ ...row, ...tryAgain });
  }
  for (const [key, value] of single) {
    if (key === "last") continue;
    const isCatalogue = key === "catalogue";
    const isSealed = stored.sealed(value) !== "";
    let text = typeof value === "string" ? value : json(value);
    if (isSealed) text = JSON.stringify({ format: stored.FORMAT, quotes: [], sealed: value }); // that is taken in again
    const tryAgain = isCatalogue && suspect.catalogue ? { suspect: () => trial.absolve({ catalogue: true }) } : {};
    out.push({
      name: isCatalogue ? "Catalogue" : isSealed ? "Sealed quotes" : String(key),
      line: `${text.length.toLocaleString("en")} characters`,
      file: `boxwright-${String(key).replace(/\W/g, "")}.json`,
      text: () => text,
      drop: () => keep.put(key, undefined),
      ...tryAgain,
    });
  }
  for (const [key, text] of texts) {
    const kind = TEXTS.find(([beginning]) => key.startsWith(beginning));
    if (!kind) continue;
    const file = `${key.replace(/\W/g, "-")}.txt`;
    out.push({ name: kind[1], line: kind[2], file, text: () => text, drop: () => keep.dropText(key) });
  }
  return out;
}

/** @param {string} tag @param {string} text */
function el(tag, text) {
  const e = document.createElement(tag);
  e.textContent = text;
  return e;
}

/** @param {string} label @param {() => unknown} does */
function button(label, does) {
  const b = /** @type {HTMLButtonElement} */ (el("button", label));
  b.type = "button";
  b.addEventListener("click", does);
  return b;
}

/** sure has a press asked for once more. @param {string} label @param {string} again @param {() => unknown} does */
function sure(label, again, does) {
  const b = button(label, () => {
    if (b.textContent === again) does();
    else b.textContent = again;
  });
  return b;
}

/**
 * open shows the panel in the place of the page.
 * @param {string} why the page could not start; empty when it was asked for
 * @param {Around} around
 */
export async function open(why, around) {
  const { keep, save, reload } = around;
  const all = await keep.everything().catch(() => ({ quotes: [], steps: [], single: [], texts: [] }));
  const list = rows(all, around);
  const catalogue = stored.text(all.single.find(([key]) => key === "catalogue")?.[1]);
  const box = /** @type {HTMLElement} */ (document.getElementById("rescue"));
  box.replaceChildren(el("h1", "What this page keeps in this browser"));
  const help = "What you entered is kept: save it as a file, take out what fails, or try again.";
  if (why) box.append(el("p", `${why} ${help}`));
  const tools = el("p", "");
  const bids = all.texts.find(([key]) => key.startsWith("boxwright.bids."))?.[1];
  const file = () => exported(all.quotes, all.steps, catalogue, bids);
  const saveAll = () => save(stored.FILE_NAME, "application/json", file());
  if (all.quotes.length) tools.append(button("Save every quote as one file", saveAll), " ");
  tools.append(button("Start the page", reload), " ");
  const clear = sure("Take everything out", "Press again: everything here goes for good", async () => {
    await keep.forgetAll();
    await open("", around);
  });
  if (list.length) tools.append(clear);
  box.append(tools);
  if (!list.length) box.append(el("p", "Nothing is kept here."));
  const ul = el("ul", "");
  for (const r of list) {
    const li = el("li", "");
    const name = el("b", r.name.slice(0, LONG_LINE));
    li.append(name, " ", el("span", r.line.slice(0, LONG_LINE)), " ");
    li.append(button("Save as a file", () => save(r.file, "application/octet-stream", r.text())), " ");
    if (r.suspect) {
      const again = r.suspect;
      const tried = button("Try it again", () => {
        again();
        reload();
      });
      li.append(el("em", "The page did not start with this."), " ", tried, " ");
    }
    const drop = async () => {
      r.suspect?.();
      await r.drop();
      await open(why, around);
    };
    li.append(sure("Take out", "Press again to take it out", drop));
    ul.append(li);
  }
  box.append(ul);
  box.hidden = false;
  document.documentElement.dataset.opening = "rescue";
  document.title = "Boxwright";
}
