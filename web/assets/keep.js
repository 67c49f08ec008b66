// @ts-check
// Keeps quotes in this browser, at every change: one record for each quote, and
// apart from it every state that undo goes back to. A record counts how often it
// was written; who finds another count than the last one it wrote itself knows
// that another window was there, and writes nothing.
import { MAX_STEPS } from "./protocol.js";

/**
 * @typedef {import("./state.js").Kept} Kept
 * @typedef {import("./state.js").Moment} Moment
 * @typedef {[record: Kept, step: Moment | undefined, isNew: boolean]} Change
 */

const VERSION = 1;

/** @type {IDBDatabase | null} null: this browser refuses storage, and the page works without */
let db = null;

/**
 * @template T
 * @param {IDBRequest<T>} request
 * @returns {Promise<T>}
 */
const done = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const all = (/** @type {string} */ id) => IDBKeyRange.bound([id, -Infinity], [id, Infinity]);

/** open gets the storage ready and says whether there is any. */
export async function open() {
  try {
    const request = indexedDB.open("boxwright", VERSION);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("quotes", { keyPath: "id" });
      request.result.createObjectStore("steps");
      request.result.createObjectStore("kept");
    };
    const opened = await done(request);
    db = opened;
    // Another window with a newer page must not wait for this one.
    opened.onversionchange = () => opened.close();
    if (navigator.storage && navigator.storage.persist) navigator.storage.persist().catch(() => {});
    await resume();
  } catch {
    db = null;
  }
  return !!db;
}

// The database takes a moment. What is on its way there stands in a note that is
// written at once, so that a window that is closed or killed in that moment
// loses nothing; the next one carries it out. A note that another window has
// carried out itself finds a later count, and does nothing.
const NOTE = "boxwright.unsaved.";
/** @type {Map<string, Change[]>} by quote: what its note holds, oldest first */
const coming = new Map();

/** @param {string} id */
function note(id) {
  const list = coming.get(id) || [];
  write(NOTE + id, list.length ? JSON.stringify(list) : "");
}

async function resume() {
  for (const name of Object.keys(localStorage).filter((k) => k.startsWith(NOTE))) {
    try {
      /** @type {Change[]} */
      const changes = JSON.parse(read(name));
      await Promise.all(changes.map((change) => save(...change)));
    } catch {
      // not a note that can be read
    }
    write(name, "");
  }
}

/**
 * get and put keep single things beside the quotes: "last", the quote worked on,
 * and "catalogue".
 * @param {string} key
 * @returns {Promise<string | undefined>}
 */
export async function get(key) {
  try {
    return db ? await done(db.transaction("kept").objectStore("kept").get(key)) : undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param {string} key
 * @param {string | undefined} value
 */
export async function put(key, value) {
  try {
    if (!db) return false;
    const store = db.transaction("kept", "readwrite").objectStore("kept");
    if (value === undefined || value === null) await done(store.delete(key));
    else await done(store.put(value, key));
    return true;
  } catch {
    return false;
  }
}

/**
 * load gives a quote with its steps, oldest first, or nothing.
 * @param {string} id
 * @returns {Promise<(Kept & { steps: Moment[], first: number }) | null>}
 */
export async function load(id) {
  if (!db || !id) return null;
  try {
    const t = db.transaction(["quotes", "steps"]);
    const [record, steps, keys] = await Promise.all([
      done(t.objectStore("quotes").get(id)),
      done(t.objectStore("steps").getAll(all(id))),
      done(t.objectStore("steps").getAllKeys(all(id))),
    ]);
    return record ? { ...record, steps, first: keys.length ? /** @type {[string, number]} */ (keys[0])[1] : 0 } : null;
  } catch {
    return null;
  }
}

/**
 * save writes the record of a quote and the step it is at. A new step takes away
 * those after it. The answer is true, false when storage fails, or "taken" when
 * another window wrote the quote since.
 * @param {Kept} record
 * @param {Moment | undefined | false} step
 * @param {boolean} isNew
 * @returns {Promise<boolean | "taken">}
 */
export function save(record, step, isNew) {
  const store = db;
  if (!store) return Promise.resolve(false);
  /** @type {Change} */
  const change = [record, step || undefined, isNew];
  coming.set(record.id, [...(coming.get(record.id) || []), change]);
  note(record.id);
  return new Promise((answered) => {
    const resolve = (/** @type {boolean | "taken"} */ answer) => {
      coming.set(
        record.id,
        (coming.get(record.id) || []).filter((c) => c !== change),
      );
      note(record.id);
      answered(answer);
    };
    /** @type {boolean | "taken"} */
    let answer = false;
    try {
      const t = store.transaction(["quotes", "steps"], "readwrite");
      const quotes = t.objectStore("quotes");
      const steps = t.objectStore("steps");
      const find = quotes.get(record.id);
      find.onsuccess = () => {
        const there = find.result;
        if ((there ? there.count : 0) !== record.count - 1) {
          answer = "taken";
          return;
        }
        quotes.put(record);
        if (step) steps.put(step, [record.id, record.at]);
        if (isNew) {
          steps.delete(IDBKeyRange.bound([record.id, record.at], [record.id, Infinity], true));
          const oldest = record.at + 1 - MAX_STEPS;
          steps.delete(IDBKeyRange.bound([record.id, -Infinity], [record.id, oldest], false, true));
        }
        answer = true;
      };
      t.oncomplete = () => resolve(answer);
      t.onabort = t.onerror = () => resolve(false);
    } catch {
      resolve(false);
    }
  });
}

/**
 * list gives every kept quote without its earlier states, the last changed first.
 * @returns {Promise<Kept[]>}
 */
export async function list() {
  if (!db) return [];
  try {
    const records = await done(db.transaction("quotes").objectStore("quotes").getAll());
    return records.sort((a, b) => (a.saved < b.saved ? 1 : -1));
  } catch {
    return [];
  }
}

/** @param {string} id */
export async function drop(id) {
  if (!db) return;
  const t = db.transaction(["quotes", "steps"], "readwrite");
  t.objectStore("quotes").delete(id);
  await done(t.objectStore("steps").delete(all(id)));
}

/**
 * add puts in a quote that comes from a file, unless the same is there already.
 * One that is there with other contents stays, and the new one gets a new name.
 * @param {import("./protocol.js").KeptQuote} quote
 * @param {string} fresh the new name
 */
export async function add(quote, fresh) {
  const there = await load(quote.id);
  if (there && JSON.stringify(there.draft) === JSON.stringify(quote.draft)) return;
  if (!db) throw new Error("this browser refuses storage");
  const id = there ? fresh : quote.id;
  const t = db.transaction(["quotes", "steps"], "readwrite");
  const whole = quote.steps?.length > 0;
  const steps = whole ? quote.steps : [{ draft: quote.draft, said: "", when: quote.saved }];
  const at = whole ? quote.at : 0;
  const { name, line, saved, draft, weighed } = quote;
  /** @type {Kept} */
  const record = {
    id,
    count: 1,
    saved,
    at,
    draft,
    view: null,
    pins: quote.pins || [],
    gist: { name, line, issued: draft.issued, weighed },
  };
  t.objectStore("quotes").put(record);
  for (const [n, s] of steps.entries()) t.objectStore("steps").put(s, [id, n]);
  await new Promise((resolve, reject) => {
    t.oncomplete = () => resolve(undefined);
    t.onabort = t.onerror = () => reject(t.error);
  });
}

// Sealed files stand apart from all that: nothing that is exported or drawn ever
// reads them.
const COSTS = "boxwright.costs.1"; // the seller's cost sheet
const KEY = "boxwright.key.1"; // the signing key, with its public half
const BIDS = "boxwright.bids.1"; // standing answers, and what was corrected in requirement lists

/** @param {string} key */
function read(key) {
  try {
    return localStorage.getItem(key) || "";
  } catch {
    return "";
  }
}

/** @param {string} key @param {string} text */
function write(key, text) {
  try {
    if (text) localStorage.setItem(key, text);
    else localStorage.removeItem(key);
    return true;
  } catch {
    return false;
  }
}

export const loadBids = () => read(BIDS);
export const saveBids = (/** @type {string} */ text) => write(BIDS, text);
export const loadCosts = () => read(COSTS);
export const saveCosts = (/** @type {string} */ sealed) => write(COSTS, sealed);
export function loadKey() {
  const [sealed, open] = read(KEY).split(" ");
  return { sealed: sealed || "", open: open || "" };
}
export const saveKey = (/** @type {string} */ sealed, /** @type {string} */ open) =>
  write(KEY, sealed && `${sealed} ${open}`);
