// @ts-check
// Everything the main thread knows, in one object that is handed to those who
// work on it. It knows nothing of vehicles: what the core answers is kept and
// sent back as it is.

/**
 * @typedef {import("./protocol.js").Act} Act
 * @typedef {import("./protocol.js").Reply} Reply
 * @typedef {import("./protocol.js").Draft} Draft
 * @typedef {import("./protocol.js").Gist} Gist
 * @typedef {import("./protocol.js").Step} Step
 * @typedef {import("./protocol.js").View} View
 */

/**
 * A state that undo goes back to.
 * @typedef {{ draft: Draft, said: string, when: string }} Moment
 *
 * The kept quote that is worked on: how often its record was written, whether this
 * window may write it, and, until that is known, the answer to come. Of one that another
 * window had: whether that is over, and whether it was changed there since it was read here.
 * @typedef {{ id: string, count: number, mine: boolean, held?: Promise<boolean>, free?: boolean,
 *   older?: boolean }} Here
 *
 * A kept quote as the list shows it.
 * @typedef {Gist & { id: string, when: string, mark?: string }} Listed
 *
 * A quote as the browser keeps it, without its earlier states.
 * @typedef {{ id: string, count: number, saved: string, at: number, draft: Draft, view?: View | null,
 *   pins: string[], gist: Gist }} Kept
 */

/**
 * newState is the state of a page that has just been opened. Sealed files come
 * from where they are kept; their clear contents never come to this thread.
 * @param {string} costs the sealed cost sheet
 * @param {{ sealed: string, open: string }} key the sealed signing key and its public half
 * @param {string} bids what is kept for the next requirement list
 */
export const newState = (costs, key, bids = "") => ({
  draft: /** @type {Draft | undefined} */ (undefined),
  view: /** @type {View | undefined} */ (undefined),
  pins: /** @type {string[]} */ ([]),

  here: /** @type {Here} */ ({ id: "", count: 0, mine: true }),
  trail: /** @type {Moment[]} */ ([]), // states of this quote, oldest first
  at: 0, // which of them is shown
  first: 0, // number of the oldest
  saved: /** @type {Listed[]} */ ([]), // every kept quote, the last changed first
  kept: true, // the browser keeps what is done
  unkept: /** @type {import("./keep.js").Unkept} */ (""), // why it does not

  costs,
  key,
  bids,
  builtIn: /** @type {string | undefined} */ (undefined), // text of the catalogue this page was made with
  catalogue: /** @type {string | undefined} */ (undefined), // text of the one loaded instead
});

/** @typedef {ReturnType<typeof newState>} State */
