// @ts-check
// The browser's Back leads to the area before, and out of the page only from the first.

/** @typedef {import("./state.js").View} View */

/**
 * went notes the area that is shown, where it is another than before. A quote that was sent is
 * read in one place, of which nothing is noted.
 * @param {View | null | undefined} before @param {View | null | undefined} now
 */
export function went(before, now) {
  if (!now || now.reading || now.foreign) return;
  const area = now.area || "";
  const noted = history.state?.area;
  if (noted === area) return;
  if (noted === undefined || !before) history.replaceState({ area }, "");
  else if (before.area !== now.area) history.pushState({ area }, "");
}

/**
 * listen goes to the area that Back or Forward leads to.
 * @param {() => View | null | undefined} view
 * @param {(area: string) => void} go
 */
export function listen(view, go) {
  addEventListener("popstate", ({ state }) => {
    const now = view();
    if (state?.area === undefined || !now || now.reading || now.foreign || state.area === (now.area || "")) return;
    /** @type {HTMLElement | null} */ (document.activeElement)?.blur(); // what was typed is entered first
    go(state.area);
  });
}
