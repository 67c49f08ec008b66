// @ts-check
// A plain bar at the foot of the window that asks one thing at a time, such as
// whether to use a new version. Nothing happens until a button is pressed.

/** @typedef {[label: string, answer: () => unknown]} Answer */

/**
 * By what it is about, in the order asked.
 * @type {Map<string, { about: string, text: string, answers: Answer[], said: boolean }>}
 */
const waiting = new Map();

function draw() {
  const bar = /** @type {HTMLElement} */ (document.getElementById("bar"));
  const [next] = waiting.values();
  bar.replaceChildren();
  bar.hidden = !next;
  if (!next) return;
  bar.ariaLive = next.said ? "off" : "polite";
  const text = document.createElement("p");
  text.textContent = next.text;
  bar.append(text);
  for (const [label, answer] of next.answers) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = label;
    button.addEventListener("click", () => {
      withdraw(next.about);
      const after = bar.children[1] || document.getElementById("main"); // the next question, or the page
      /** @type {HTMLElement} */ (after).focus({ preventScroll: true });
      answer();
    });
    bar.append(button);
  }
}

/**
 * ask puts a question; another about the same takes its place.
 * @param {string} about
 * @param {string} text
 * @param {Answer[]} answers
 */
export function ask(about, text, answers) {
  waiting.set(about, { about, text, answers, said: false });
  draw();
}

/**
 * offer puts before all others what answers the press just made, which is said elsewhere; its
 * first answer gets the focus.
 * @param {string} about
 * @param {string} text
 * @param {Answer[]} answers
 */
export function offer(about, text, answers) {
  waiting.delete(about);
  const others = [...waiting.values()];
  waiting.clear();
  for (const next of [{ about, text, answers, said: true }, ...others]) waiting.set(next.about, next);
  draw();
  /** @type {HTMLElement} */ (document.getElementById("bar")?.children[1]).focus({ preventScroll: true });
}

/** withdraw takes a question away. @param {string} about */
export function withdraw(about) {
  if (waiting.delete(about)) draw();
}
