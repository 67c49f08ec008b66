// @ts-check
// Loads what reads word processor and spreadsheet files when the first one is opened. In
// the folder form it is a script beside the page; the one file holds it as a text.

/** @typedef {typeof import("./office.js")} Office */

/** @type {Promise<Office> | undefined} */
let loading;

/** office is what reads such files; it fails, to be tried again, without a network. */
export function office() {
  loading ??= load().catch((e) => {
    loading = undefined;
    throw e;
  });
  return loading;
}

/** @returns {Promise<Office>} */
async function load() {
  const script = document.createElement("script");
  const carried = document.getElementById("office-text")?.textContent;
  if (carried) {
    script.text = carried; // allowed by its hash; runs as it is put in
    document.head.append(script);
  } else {
    const tag = document.querySelector("script[data-office]");
    script.src = (tag instanceof HTMLElement && tag.dataset.office) || "";
    await new Promise((resolve, reject) => {
      script.onload = resolve;
      script.onerror = () => reject(new Error("the part that reads such files could not be fetched"));
      document.head.append(script);
    });
  }
  script.remove();
  if (!window.boxwrightOffice) throw new Error("the part that reads such files did not run");
  return window.boxwrightOffice;
}
