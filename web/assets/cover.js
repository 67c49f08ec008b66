// @ts-check
// The cover of a link: what it says of itself before the core has checked it.
// Whoever wrote the link may have written anything there, so it is shown as
// text, marked as not checked; the core refuses a link that holds something else.

const MAX_CHARACTERS = 80;
const MAX_ENCODED = 430; // of the longest cover, in the longest letters

/**
 * linkIn is the link that an address brings, also one that was cut after its first letter
 * or whose signs a mail program wrote in another way; empty when it brings none.
 * @param {string} hash of the address
 */
export function linkIn(hash) {
  return /^#q(=|%3d|$)/i.test(hash) ? hash.slice(1).replace(/%3d/gi, "=").replaceAll("%26", "&") : "";
}

/**
 * cover reads the cover of a link; null when it has none that can be shown.
 * @param {string} fragment the address's, without "#"
 * @returns {{ title: string, price: string, date: string } | null}
 */
export function cover(fragment) {
  const field = fragment
    .split("&")
    .find((f) => f.startsWith("cover="))
    ?.slice("cover=".length);
  if (!field || field.length > MAX_ENCODED) return null;
  let text = "";
  try {
    const packed = atob(field.replaceAll("-", "+").replaceAll("_", "/"));
    text = new TextDecoder("utf-8", { fatal: true }).decode(Uint8Array.from(packed, (c) => c.charCodeAt(0)));
  } catch {
    return null;
  }
  const [title, price, date, ...more] = text.split("\n");
  // Control characters and those that turn the direction of a line are no text.
  if (date === undefined || more.length || [...text].length > MAX_CHARACTERS || /\p{C}/u.test(title + price))
    return null;
  return { title, price, date: longDay(date) };
}

/** @param {string} date */
function longDay(date) {
  if (!/^\d{4}-\d\d-\d\d$/.test(date)) return "";
  const d = new Date(`${date}T00:00:00Z`);
  return Number.isNaN(d.getTime()) ? "" : d.toLocaleDateString("en-US", { dateStyle: "long", timeZone: "UTC" });
}
