// @ts-check
// Days and moments as the page writes them.

const two = (/** @type {number} */ n) => String(n).padStart(2, "0");

/** day is a date as the core reads it. @param {Date} d */
export const day = (d) => `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;

/** moment is a date and time as the reader reads it; empty where there is none. @param {Date} d */
export const moment = (d) =>
  Number.isNaN(d.getTime()) ? "" : d.toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });
