// @ts-check
// Runs before anything is painted. It decides which screen may be seen first, so
// that nobody who opens a link or comes back sees another vehicle meanwhile; it
// sets the core off once that screen is painted, since compiling keeps every processor
// busy; and it holds what is pressed until the page attends to it.
import { linkIn } from "./cover.js";
import { kept } from "./last.js";

const UNSEEN_MS = 400; // a page that is not on the screen is never painted

const tag = /** @type {HTMLScriptElement} */ (document.currentScript);
const { dataset } = document.documentElement;
if (linkIn(location.hash)) dataset.opening = "link";
else if (kept()) dataset.opening = "kept";

/** @type {Early} */
const early = { version: tag.dataset.version || "", pressed: [], heard: [] };
window.early = early;

for (const kind of /** @type {const} */ (["click", "change"])) {
  addEventListener(kind, (e) => early.pressed?.push(e), true);
}

const { firstWorker, firstCore } = tag.dataset;
if (firstWorker && firstCore) {
  const address = (/** @type {string} */ name) => new URL(name, document.baseURI).href;
  const worker = new Worker(address(firstWorker));
  early.worker = worker;
  worker.onmessage = worker.onerror = (e) => early.heard.push(e);
  const packed = address(firstCore);
  const unpacked = navigator.serviceWorker?.controller && packed.replace(/bin$/, "wasm");
  let begun = false;
  const begin = () => {
    if (!begun) worker.postMessage({ core: { packed, unpacked } });
    begun = true;
  };
  requestAnimationFrame(() => setTimeout(begin));
  setTimeout(begin, UNSEEN_MS);
}
