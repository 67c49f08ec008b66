// @ts-check
// Where the keyboard is: arrows through a list or a row, Escape out of an answer, and a
// place to stand when what had the focus is gone.

/** @typedef {{ id: string, n: number }[]} Place from the inside out */

const CHOICE = ".option > [type=radio]";
const STOPS = "a[href], button, input, select, textarea, summary, [tabindex]";

/** @param {Element} el */
const stops = (el) => /** @type {HTMLElement[]} */ ([...el.querySelectorAll(STOPS)]);

/** @param {HTMLElement} el */
const reachable = (el) => el.tabIndex >= 0 && el.checkVisibility();

/** place is what is around the focus, and which stop of each that it is. @returns {Place} */
export function place() {
  const at = /** @type {HTMLElement} */ (document.activeElement);
  const out = [];
  for (let up = at?.parentElement?.closest("[id]"); up; up = up.parentElement?.closest("[id]")) {
    out.push({ id: up.id, n: stops(up).indexOf(at) });
  }
  return out;
}

/**
 * back gives the focus to what stands where it was, if it is lost; who waits for an answer
 * is led to it.
 * @param {Place} was
 */
export function back(was) {
  document.getElementById(document.activeElement?.getAttribute("data-leads") || "")?.focus();
  if (document.activeElement !== document.body) return;
  for (const { id, n } of was) {
    const list = stops(document.getElementById(id) || document.createElement("p"));
    const next = list.slice(n).find(reachable) || list.slice(0, n).reverse().find(reachable);
    if (next) {
      next.focus();
      return;
    }
  }
}

/** uncover scrolls what was pressed out from under the notices at the foot of the window. */
export function uncover() {
  const pressed = document.activeElement;
  const over = document.getElementById("notices")?.getBoundingClientRect();
  if (!over || !pressed?.matches("button, input, select, textarea, summary")) return;
  const { top, bottom } = pressed.getBoundingClientRect();
  if (bottom > over.top && top < over.bottom) scrollBy({ top: bottom - over.top + 8, behavior: "instant" });
}

const KEYS = /** @type {Record<string, number>} */ ({ ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 });

/**
 * moved takes a key that moves the focus, and reports whether it did. In a list of options
 * the arrows choose nothing, so that nobody buys a chassis by looking at the next.
 * @param {KeyboardEvent} e
 */
export function moved(e) {
  const by = KEYS[e.key];
  if ((!by && e.key !== "Escape") || e.ctrlKey || e.metaKey || e.altKey || e.shiftKey) return false;
  const el = /** @type {HTMLElement} */ (e.target);
  if (!by) return left(el);
  const row = el.closest("[role=toolbar], #areas ol");
  /** @type {HTMLElement[]} */
  let list = [];
  if (row) list = stops(row);
  else if (el.matches(CHOICE)) {
    list = stops(el.closest("fieldset") || el).filter((x) => x.matches(CHOICE) && x.checkVisibility());
  }
  if (!list.length) return false;
  const to = list[(list.indexOf(el) + by + list.length) % list.length];
  to.focus();
  to.scrollIntoView({ block: "nearest", inline: "nearest" }); // all of it
  return true;
}

/**
 * left closes the answer or the fold that the reader is in, or else what lies over the page.
 * @param {HTMLElement} el
 */
function left(el) {
  const why = el.closest(".option")?.querySelector(".why");
  const opener = why && document.getElementById(why.id.replace("why-", "ask-"));
  opener?.focus();
  opener?.click();
  const fold = /** @type {HTMLDetailsElement | null} */ (el.closest("details[open]:is(.help, .menu)"));
  fold?.querySelector("summary")?.focus();
  if (fold) fold.open = false;
  if (opener || fold) return true;
  const done = document.getElementById("done");
  if (!done || done.hidden) return false;
  return (done.hidden = true);
}

/**
 * attend notes whether the reader goes by keys: a place to stand that only the page gives shows its
 * ring to them alone. It closes the menus that were not pressed on, those something was chosen
 * from, and those the focus has left: what lies over the page never covers where the reader is.
 * @param {Document} doc
 */
export function attend(doc) {
  const open = () => /** @type {NodeListOf<HTMLDetailsElement>} */ (doc.querySelectorAll("details.menu[open]"));
  doc.addEventListener("keydown", () => (doc.documentElement.dataset.keys = "1"), true);
  doc.addEventListener("pointerdown", () => delete doc.documentElement.dataset.keys, true);
  doc.addEventListener("click", ({ target }) => {
    const at = /** @type {Element} */ (target);
    for (const menu of open()) {
      if (menu.contains(at) && !at.closest("button")) continue;
      if (menu.contains(doc.activeElement)) menu.querySelector("summary")?.focus();
      menu.open = false;
    }
  });
  doc.addEventListener("focusin", ({ target }) => {
    for (const menu of open()) menu.open = menu.contains(/** @type {Element} */ (target));
  });
}

/** What scrolls is a stop of the Tab key, and has a name. @param {Element} el */
function fit(el) {
  const scrolls = el.scrollWidth > el.clientWidth + 1 || el.scrollHeight > el.clientHeight + 1;
  const name = el.getAttribute("data-scroll");
  const says = { tabindex: "0", ...(name && { role: "region", "aria-label": name }) };
  for (const [key, value] of Object.entries(says)) {
    if (scrolls) el.setAttribute(key, value);
    else el.removeAttribute(key);
  }
}

/** watch has what may scroll looked at, now and when its size changes. */
export function watch() {
  observer ??= new ResizeObserver((seen) => {
    for (const el of new Set(seen.map((s) => s.target.closest("[data-scroll]")))) if (el) fit(el);
  });
  observer.disconnect();
  for (const el of document.querySelectorAll("[data-scroll]")) {
    observer.observe(el);
    if (el.firstElementChild) observer.observe(el.firstElementChild);
  }
}

/** @type {ResizeObserver | undefined} */
let observer;
