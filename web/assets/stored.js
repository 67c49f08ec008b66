// @ts-check
// Reads what comes from the browser's storage. Any version of the page may have
// written it, and a person or another program may have changed it: what has the
// wrong type is done without, and what cannot be read at all is null, so that
// whoever asked leaves it where it is.

/**
 * @typedef {import("./state.js").Kept} Kept
 * @typedef {import("./state.js").Moment} Moment
 * @typedef {import("./protocol.js").Draft} Draft
 * @typedef {import("./protocol.js").Gist} Gist
 * @typedef {import("./keep.js").Change} Change
 */

/** OFF is the key that stands while nothing is kept on this device. */
export const OFF = "boxwright.off";
/** FORMAT is what a file of kept quotes says it is, and FILE_NAME what one with all of them is called. */
export const FORMAT = "boxwright-kept/1";
export const FILE_NAME = "boxwright-quotes.json";

const MAX_NAME = 300; // characters of a line in a list
const MAX_ID = 100;

/** @param {unknown} raw @returns {Record<string, unknown> | null} */
const object = (raw) =>
  raw && typeof raw === "object" && !Array.isArray(raw) ? /** @type {Record<string, unknown>} */ (raw) : null;

/** text is a text, or an empty one. @param {unknown} raw */
export const text = (raw) => (typeof raw === "string" ? raw : "");

/** sealed is a text that begins like something sealed, or an empty one. @param {unknown} raw */
export const sealed = (raw) => (/^YnhzZWFsMQ[o-r][A-Za-z0-9+/]*=*$/.test(text(raw)) ? text(raw) : "");

/** whole is a number from 0, or 0. @param {unknown} raw */
const whole = (raw) => (Number.isSafeInteger(raw) && Number(raw) >= 0 ? Number(raw) : 0);

/** @param {unknown} raw */
const strings = (raw) => (Array.isArray(raw) ? raw.filter((x) => typeof x === "string") : []);

/** count is how often a record was written; 0 where it does not say. @param {unknown} raw */
export const count = (raw) => whole(object(raw)?.count);

/** @param {unknown} raw @returns {Draft | null} */
const draftOf = (raw) => /** @type {Draft | null} */ (object(raw));

/**
 * gist is how a list calls a quote. Number and revision of a signed one are those of its
 * draft: older versions of the page did not list them.
 * @param {unknown} raw
 * @param {Draft} draft
 * @returns {Gist}
 */
function gist(raw, draft) {
  const g = object(raw) || {};
  /** @type {Gist} */
  const out = { name: text(g.name).slice(0, MAX_NAME) || "A quote", line: text(g.line).slice(0, MAX_NAME) };
  if (typeof g.issued === "string") out.issued = g.issued;
  if (draft.issued) {
    if (typeof draft.number === "string" && draft.number) out.number = draft.number.slice(0, MAX_NAME);
    if (whole(draft.rev)) out.rev = whole(draft.rev);
  }
  if (Array.isArray(g.weighed)) out.weighed = g.weighed;
  return out;
}

/**
 * record is the record of a quote.
 * @param {unknown} raw
 * @returns {Kept | null}
 */
export function record(raw) {
  const r = object(raw);
  const draft = draftOf(r?.draft);
  if (!r || !draft || !text(r.id) || text(r.id).length > MAX_ID) return null;
  return {
    id: text(r.id),
    count: count(r),
    saved: text(r.saved),
    at: whole(r.at),
    draft,
    view: /** @type {import("./state.js").View | null} */ (object(r.view)),
    pins: strings(r.pins),
    gist: gist(r.gist, draft),
  };
}

/**
 * mark tells a state of a quote from its others, whatever area was looked at meanwhile.
 * @param {{ at: number, draft: Draft }} record
 */
export function mark({ at, draft }) {
  let sum = 0x811c9dc5; // FNV-1a
  for (const c of JSON.stringify(draft)) sum = Math.imul(sum ^ (c.codePointAt(0) || 0), 0x01000193);
  return `${at}.${(sum >>> 0).toString(16)}`;
}

/**
 * moment is a state that undo goes back to.
 * @param {unknown} raw
 * @returns {Moment | null}
 */
export function moment(raw) {
  const m = object(raw);
  const draft = draftOf(m?.draft);
  return m && draft ? { draft, said: text(m.said), when: text(m.when) } : null;
}

/**
 * trail is the states of a quote that follow each other around the one shown: those
 * behind a gap, or one that cannot be read, are left where they are.
 * @param {unknown[]} values
 * @param {unknown[]} keys each the quote's id and the number of the state
 * @param {number} at number of the one shown
 * @returns {{ steps: Moment[], first: number }}
 */
export function trail(values, keys, at) {
  /** @type {Map<number, Moment>} */
  const known = new Map();
  values.forEach((raw, i) => {
    const key = keys[i];
    const m = moment(raw);
    if (m && Array.isArray(key) && Number.isSafeInteger(key[1])) known.set(key[1], m);
  });
  if (!known.has(at)) return { steps: [], first: at };
  let [first, last] = [at, at];
  while (known.has(first - 1)) first--;
  while (known.has(last + 1)) last++;
  const steps = [];
  for (let n = first; n <= last; n++) steps.push(/** @type {Moment} */ (known.get(n)));
  return { steps, first };
}

/**
 * changes is a note of what was on its way to the database.
 * @param {string} note
 * @returns {Change[] | null}
 */
export function changes(note) {
  try {
    const list = JSON.parse(note);
    if (!Array.isArray(list)) return null;
    const out = list.map((c) => {
      const [r, m] = [record(c?.[0]), moment(c?.[1])];
      if (!r || !r.count || (c[1] && !m)) throw new Error("no change of a quote");
      return /** @type {Change} */ ([r, m || undefined, c[2] === true]);
    });
    return out;
  } catch {
    return null;
  }
}

/** json is an object that was written as text; an empty one where it cannot be read. @param {string} written */
export function json(written) {
  try {
    return object(JSON.parse(written)) || {};
  } catch {
    return {};
  }
}
