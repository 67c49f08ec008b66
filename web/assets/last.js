// @ts-check
// The last screen, kept so that a returning reader sees it at once, before the
// core has drawn anything.
//
// The folder form keeps the regions as the core drew them, for the same version
// of the page alone. Whoever could write there is a page of the same origin, and
// can do more than that without it. A file opened from disk shares its storage
// with every other such file, so the single file neither keeps nor shows markup:
// only the quote's name and line, as text.

import { OFF } from "./stored.js";

const KEY = "boxwright.screen";
const MAX_CHARACTERS = 400_000;
const MAX_LINE = 200;

/**
 * @typedef {{ version: string, id: string, count: number, day: string, theme: string, name: string, line: string,
 *   regions?: Record<string, string[]> }} Last
 */

/** kept tells whether there was an earlier visit. */
export function kept() {
  try {
    return !!localStorage.getItem(KEY);
  } catch {
    return false;
  }
}

/**
 * read gives the last screen; its regions only when this version of the page
 * drew them. Without a version there are none.
 * @param {string} version
 * @returns {Last | null}
 */
export function read(version) {
  try {
    const last = JSON.parse(localStorage.getItem(KEY) || "null");
    if (!last) return null;
    const [name, line] = [last.name, last.line].map((text) => String(text ?? "").slice(0, MAX_LINE));
    const { id, count, day, theme, regions } = last;
    const sound = version && last.version === version && isRegions(regions);
    return { version, id, count, day, theme, name, line, regions: sound ? regions : undefined };
  } catch {
    return null;
  }
}

/** @param {unknown} regions */
const isRegions = (regions) =>
  !!regions &&
  typeof regions === "object" &&
  Object.values(regions).every((list) => Array.isArray(list) && list.every((piece) => typeof piece === "string"));

/** write keeps the last screen. @param {Last} last */
export function write(last) {
  try {
    if (localStorage.getItem(OFF)) return;
    let text = JSON.stringify(last);
    if (text.length > MAX_CHARACTERS) text = JSON.stringify({ ...last, regions: undefined });
    localStorage.setItem(KEY, text);
  } catch {
    // no room: the next visit waits for the core
  }
}
