// @ts-check
// Brings the page to what the core drew, and leaves alone what stays.
import { Idiomorph } from "idiomorph/dist/idiomorph.esm.js";

/** @typedef {import("./state.js").Reply} Reply */

const REGIONS = ["masthead", "areas", "main", "standing"];

/** element finds a part that every page has. @param {string} id */
const element = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

export class Screen {
  constructor() {
    /** @type {Record<string, string[]>} the pieces of HTML last put into each region */
    this.shown = {};
  }

  /** forget has every region brought up anew. */
  forget() {
    this.shown = {};
  }

  /** trouble shows an alert; an empty text takes it away. @param {string} text */
  trouble(text) {
    const box = element("trouble");
    box.textContent = text;
    box.hidden = !text;
  }

  /** working shows that an answer takes long. @param {boolean} long */
  working(long) {
    if (long) document.documentElement.dataset.busy = "1";
    else delete document.documentElement.dataset.busy;
  }

  /**
   * show brings the page to a reply.
   * @param {Reply} reply
   * @param {boolean} another whether it shows another area than before
   */
  show(reply, another) {
    for (const id of REGIONS) this.draw(id, reply.regions?.[id] || [], id === "main" && another);
    // Inputs go back to what is drawn after a press that was not taken.
    for (const el of document.querySelectorAll("#main input[type=radio], #main input[type=checkbox]")) {
      /** @type {HTMLInputElement} */ (el).checked = el.hasAttribute("checked");
    }
    inSight();
    document.title = reply.title || "";
    const { dataset } = document.documentElement;
    const theme = reply.view?.theme || "";
    if (dataset.theme !== theme) dataset.theme = theme;
    const say = element("say");
    if (reply.say && say.textContent !== reply.say) say.textContent = reply.say;
  }

  /**
   * draw brings a region to what it shall show: one piece of HTML after another, of
   * which those that stay are left alone. Of another area nothing stays.
   * @param {string} id
   * @param {string[]} pieces
   * @param {boolean} another
   */
  draw(id, pieces, another) {
    const region = element(id);
    const had = this.shown[id] || [];
    this.shown[id] = pieces;
    if (another) region.innerHTML = pieces.join("");
    else if (had.length !== pieces.length || region.childNodes.length !== pieces.length) {
      morph(region, pieces.join(""), "innerHTML");
    } else pieces.forEach((html, i) => html === had[i] || morph(region.childNodes[i], html, "outerHTML"));
  }
}

/** @param {Node} node @param {string} html @param {string} morphStyle */
const morph = (node, html, morphStyle) =>
  Idiomorph.morph(node, html, {
    morphStyle,
    ignoreActiveValue: document.activeElement?.matches("input, textarea"),
    callbacks: { beforeAttributeUpdated: (/** @type {string} */ name) => name !== "open" },
  });

/**
 * inSight scrolls a row that runs off a narrow screen to where the reader is in
 * it, or is to go next.
 */
function inSight() {
  if (!matchMedia("(max-width: 1000px)").matches) return;
  for (const el of document.querySelectorAll(":is(#areas, .chapters) :is([aria-current], [data-next])")) {
    const row = el.closest("ol, .chapters");
    if (!row) continue;
    const [a, b] = [el.getBoundingClientRect(), row.getBoundingClientRect()];
    if (a.left < b.left || a.right > b.right) row.scrollLeft += a.left - b.left - 24;
  }
}
