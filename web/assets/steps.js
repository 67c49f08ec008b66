// @ts-check
// What the core asks for and only the main thread can do.

/**
 * @typedef {import("./state.js").State} State
 * @typedef {import("./state.js").Step} Step
 * @typedef {import("./history.js").History} History
 * @typedef {import("./files.js").Files} Files
 *
 * @typedef {{
 *   state: State,
 *   history: History,
 *   files: Files,
 *   keep: Pick<typeof import("./keep.js"), "put" | "saveCosts" | "saveKey" | "saveBids">,
 *   trouble: (text: string) => void,
 *   tell: (text: string) => void,
 * }} Page
 */

/** @type {Record<string, (step: Step, page: Page) => void>} */
const steps = {
  focus: ({ id = "" }) => {
    const el = document.getElementById(id);
    for (let fold = el?.closest("details:not([open])"); fold; fold = fold.parentElement?.closest("details:not([open])")) {
      if (fold.querySelector("summary") !== el) fold.setAttribute("open", "");
    }
    el?.focus();
  },
  unfold: ({ id = "" }) => {
    const fold = /** @type {HTMLDetailsElement | null} */ (document.getElementById(id));
    if (!fold) return;
    fold.open = true;
    fold.scrollIntoView();
    fold.querySelector("summary")?.focus({ preventScroll: true });
  },
  reveal: ({ id = "" }) => {
    document.getElementById(id)?.scrollIntoView({ block: "start" });
    document.getElementById(id)?.focus({ preventScroll: true });
  },
  show: ({ id = "" }) => document.getElementById(id)?.scrollIntoView({ block: "nearest" }),
  top: () => {
    scrollTo(0, 0);
    document.getElementById("main")?.focus({ preventScroll: true });
  },
  print: () => print(),
  copy: ({ text = "" }, { tell }) => copy(text, tell),
  save: (step, { files }) => files.saveStep(step),
  "fill-sheet": (step, { files }) => files.fillSheet(step),
  embed: (step, { files }) => files.saveSingle(step),
  import: ({ text = "", id }, { files }) => files.importKept(text, id),
  "keep-sealed": ({ text = "" }, { files }) => files.keepSealed(text),
  "keep-costs": ({ text = "" }, { state, keep, trouble, tell }) => {
    state.costs = text;
    if (keep.saveCosts(text)) return;
    tell(""); // the core said that it is saved
    trouble("This browser will not keep the sealed cost sheet; open its file again next time.");
  },
  "keep-key": ({ text = "", id = "" }, { state, keep, trouble, tell }) => {
    state.key = { sealed: text, open: id };
    if (keep.saveKey(text, id)) return;
    tell(""); // the core said that it is saved
    trouble("This browser will not keep the sealed key; save its file, and open it again next time.");
  },
  "keep-bids": ({ text = "" }, { state, keep, trouble }) => {
    state.bids = text;
    if (keep.saveBids(text)) return;
    trouble("This browser will not keep what you corrected for the next list.");
  },
  "keep-catalogue": async ({ text }, { state, keep, trouble }) => {
    state.catalogue = text;
    if (await keep.put("catalogue", text)) return;
    trouble("This browser will not keep the catalogue for next time; it stays loaded until the page is closed.");
  },
  "send-kept": ({ id }, { history }) => history.sendKept(!!id),
  "keep-moved": (step, { history }) => history.keepMoved(step),
};

/**
 * perform does one step. What is not known here is for somebody else.
 * @param {Step} step
 * @param {Page} page
 */
export const perform = (step, page) => steps[step.do]?.(step, page);

/** @param {string} text @param {(text: string) => void} tell */
async function copy(text, tell) {
  try {
    await navigator.clipboard.writeText(text.startsWith("#") ? location.href.split("#")[0] + text : text);
  } catch {
    const field = /** @type {HTMLInputElement | null} */ (document.getElementById("link-text"));
    field?.focus();
    field?.select();
    tell("This browser does not let the page copy. The link is selected: copy it with Ctrl C, or from its menu.");
  }
}
