// @ts-check
// Brings the page to what the core drew, and leaves alone what stays.
import { Idiomorph } from "idiomorph/dist/idiomorph.esm.js";

/** @typedef {import("./state.js").Reply} Reply */

const LOW = 400; // px of a window that a notice fills to a third, enlarged four times or on its side
const CAME_MS = 500; // until the page has scrolled to what it shows

const REGIONS = ["masthead", "areas", "main", "standing"];

/** element finds a part that every page has. @param {string} id */
const element = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

/**
 * notice shows a text at the foot of the window; an empty one takes it away.
 * @param {string} id
 * @param {string} text
 */
function notice(id, text) {
  const box = element(id);
  if (box.textContent !== text) box.textContent = text;
  box.hidden = !text;
}

/**
 * What is seen in the place of the page: "link" while a link is checked,
 * "refused" when it cannot be opened, and "kept" while the last quote comes up.
 * @typedef {"link" | "refused" | "kept"} Opening
 */

export class Screen {
  constructor() {
    /** @type {Record<string, string[]>} the pieces of HTML last put into each region */
    this.shown = {};
    this.name = ""; // how the core calls what is shown; empty asks for all of it
    this.stale = false; // the page may differ from what was last put into it
    this.from = NaN; // where the reader was when the last press was answered
  }

  /** opening is what is seen in the place of the page, if anything. */
  get opening() {
    return /** @type {Opening | undefined} */ (document.documentElement.dataset.opening);
  }

  /** open shows something in the place of the page, or the page. @param {Opening} [what] */
  open(what) {
    // Why a link was refused stands where the reader looks; else an alert lies over the page.
    if (what === "refused") element("refused-why").append(element("trouble"));
    else if (this.opening === "refused") element("bar").before(element("trouble"));
    if (what) document.documentElement.dataset.opening = what;
    else delete document.documentElement.dataset.opening;
    if (!what) return;
    document.title = "Boxwright";
    element("say").textContent = "";
  }

  /**
   * cover shows what a link says of itself until the core has checked it.
   * @param {{ title: string, price: string, date: string } | null} says
   */
  cover(says) {
    element("cover").hidden = !says;
    for (const [name, text] of Object.entries(says || {})) {
      element(`cover-${name}`).textContent = text;
      element(`cover-${name}`).parentElement?.toggleAttribute("hidden", !text);
    }
    this.open("link");
  }

  /**
   * last shows the last screen: as it was, or in words when there is no more.
   * @param {import("./last.js").Last} last
   */
  last({ name, line, theme, regions }) {
    element("last-quote").textContent = [name, line].filter(Boolean).join(" · ");
    if (!regions) return;
    if (["light", "dark", "contrast"].includes(theme)) document.documentElement.dataset.theme = theme;
    for (const id of REGIONS) this.draw(id, regions[id] || [], true);
    inSight();
    this.open();
  }

  /**
   * outdated says why what is seen may be out of date; an empty text takes that away.
   * @param {string} text
   */
  outdated(text) {
    notice("stale", text);
  }

  /** forget has every region brought up anew. */
  forget() {
    this.name = "";
    this.stale = true;
  }

  /** trouble shows an alert; an empty text takes it away. @param {string} text */
  trouble(text) {
    notice("trouble", text);
  }

  /** done shows what the last press did; an empty text takes it away. @param {string} text */
  done(text) {
    notice("done", text);
    this.from = NaN;
    if (text) setTimeout(() => (this.from = scrollY), CAME_MS);
  }

  /** scrolled takes away what the last press did where it would cover what the reader goes on to. */
  scrolled() {
    if (innerHeight < LOW && Math.abs(scrollY - this.from) > innerHeight / 2) this.done("");
  }

  /** tell shows and says what became of a press after all. @param {string} text */
  tell(text) {
    this.done(text);
    element("say").textContent = text;
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
    this.name = reply.shown || "";
    this.stale = false;
    this.reset();
    inSight();
    levels();
    const { dataset } = document.documentElement;
    const theme = reply.view?.theme || "";
    if (dataset.theme !== theme) dataset.theme = theme;
    if (this.opening) return; // another quote than the one that is seen
    document.title = reply.title || "";
    if (reply.say) element("say").textContent = reply.say;
  }

  /** reset has choices go back to what is drawn, after a press that was not taken. */
  reset() {
    for (const el of document.querySelectorAll("#main input[type=radio], #main input[type=checkbox]")) {
      /** @type {HTMLInputElement} */ (el).checked = el.hasAttribute("checked");
    }
  }

  /**
   * draw brings a region to what it shall show: one piece of HTML after another, of
   * which those that stay are left alone; null is one that stays. Of another area
   * nothing stays.
   * @param {string} id
   * @param {(string | null)[]} sent
   * @param {boolean} another
   */
  draw(id, sent, another) {
    const region = element(id);
    const had = this.shown[id] || [];
    const pieces = sent.map((html, i) => html ?? had[i]);
    this.shown[id] = pieces;
    if (another) region.innerHTML = pieces.join("");
    else if (this.stale || region.childNodes.length !== had.length) morph(region, pieces.join(""), "innerHTML");
    else if (had.length === pieces.length) {
      pieces.forEach((html, i) => html === had[i] || morph(region.childNodes[i], html, "outerHTML"));
    } else exchange(region, had, pieces) || morph(region, pieces.join(""), "innerHTML");
  }
}

/**
 * exchange takes out the pieces between those that stay at both ends, and puts in
 * the new ones, where none of them is an old one changed. It reports whether it did.
 * @param {HTMLElement} region
 * @param {string[]} had
 * @param {string[]} pieces
 */
function exchange(region, had, pieces) {
  const most = Math.min(had.length, pieces.length);
  let head = 0;
  while (head < most && had[head] === pieces[head]) head++;
  let tail = 0;
  while (tail < most - head && had.at(-1 - tail) === pieces.at(-1 - tail)) tail++;
  const put = pieces.slice(head, pieces.length - tail);
  const named = new Set(put.map(idOf));
  const out = [...region.childNodes].slice(head, had.length - tail);
  for (const node of out) {
    const { id } = /** @type {Element} */ (node);
    if ((put.length && !id) || named.has(id) || node.contains(document.activeElement)) return false;
  }
  region.insertBefore(parsed(put.join("")), region.childNodes[had.length - tail] || null);
  for (const node of out) node.remove();
  return true;
}

/** parsed are the nodes that HTML stands for. @param {string} html */
function parsed(html) {
  const fresh = document.createElement("template");
  fresh.innerHTML = html;
  return fresh.content;
}

/** idOf is the id of a piece's element, or empty. @param {string} html */
const idOf = (html) => /^<[^>]*? id="([^"]*)"/.exec(html)?.[1] || "";

/**
 * stays reports whether an element is left as it is until the rest of the answer brings
 * what it shall show.
 * @param {Node} had @param {Node} fresh
 */
const stays = (had, fresh) =>
  fresh instanceof HTMLElement && !!fresh.dataset.stays && /** @type {Element} */ (had).id === fresh.id;

const NAMED = ["role", "aria-label"]; // which focus.js gives, with a tabindex, to what scrolls and has a name

/** given tells whether focus.js gave an element that attribute. @param {HTMLElement} el @param {string} name */
const given = ({ dataset: { scroll } }, name) =>
  scroll !== undefined && (name === "tabindex" || (!!scroll && NAMED.includes(name)));

/** @param {Node} node @param {string} html @param {string} morphStyle */
function morph(node, html, morphStyle) {
  const nodes = [...parsed(html).childNodes];
  Idiomorph.morph(node, nodes.length === 1 ? nodes[0] : nodes, {
    morphStyle,
    ignoreActiveValue: document.activeElement?.matches("input, textarea"),
    callbacks: {
      beforeAttributeUpdated: (/** @type {string} */ name, /** @type {HTMLElement} */ el) =>
        name !== "open" && !given(el, name),
      beforeNodeMorphed: (/** @type {Node} */ had, /** @type {Node} */ fresh) => !stays(had, fresh),
    },
  });
}

/**
 * levels puts the headings of a document beneath that of its area; printed it stands alone.
 * @param {boolean} [printed]
 */
export function levels(printed) {
  for (const el of document.querySelectorAll(".paper :is(h1, h2, h3, h4)")) {
    el.ariaLevel = printed ? null : String(Number(el.tagName[1]) + 1);
  }
}

/**
 * inSight scrolls a row that runs off a narrow screen to where the reader is in
 * it, or is to go next.
 */
function inSight() {
  if (!matchMedia("(max-width: 1000px)").matches) return;
  for (const el of document.querySelectorAll(":is(#areas, .chapters) :is([aria-current], [data-next])")) {
    const row = el.closest("ol, .row, .chapters");
    if (!row) continue;
    const [a, b] = [el.getBoundingClientRect(), row.getBoundingClientRect()];
    if (a.left < b.left || a.right > b.right) row.scrollLeft += a.left - b.left - 24;
  }
}
