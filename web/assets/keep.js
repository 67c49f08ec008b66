// @ts-check
// Keeps quotes in this browser, at every change: one record for each quote, and
// apart from it every state that undo goes back to. A record counts how often it
// was written; who finds another count than the last one it wrote itself knows
// that another window was there, and writes nothing. What cannot be read is never
// written over and never taken out.
import { MAX_STEPS } from "./protocol.js";
import * as stored from "./stored.js";
import { OFF } from "./stored.js";

/**
 * @typedef {import("./state.js").Kept} Kept
 * @typedef {import("./state.js").Moment} Moment
 * @typedef {[record: Kept, step: Moment | undefined, isNew: boolean]} Change
 *
 * Why nothing is kept: the browser refuses, has no room, has what a newer version
 * of the page wrote, or the user wants it so.
 * @typedef {"" | "refused" | "full" | "newer" | "off"} Unkept
 */

const VERSION = 1;
const DATABASE = "boxwright";
const OPEN_MS = 8000; // until a database that does not answer counts as refused

/** @type {IDBDatabase | null} null: this browser refuses storage, and the page works without */
let db = null;
/** @type {Unkept} */
let unkept = "refused";

/** why says why nothing is kept; empty while all is well. */
export const why = () => unkept;

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

/** finished waits until all of a transaction is written. @param {IDBTransaction} t @returns {Promise<void>} */
const finished = (t) =>
  new Promise((resolve, reject) => {
    t.oncomplete = () => resolve();
    t.onabort = t.onerror = () => reject(t.error);
  });

const all = (/** @type {string} */ id) => IDBKeyRange.bound([id, -Infinity], [id, Infinity]);

/** @param {number} [version] @returns {Promise<IDBDatabase>} */
function opened(version) {
  const request = indexedDB.open(DATABASE, version);
  request.onupgradeneeded = () => {
    if (!version) return;
    request.result.createObjectStore("quotes", { keyPath: "id" });
    request.result.createObjectStore("steps");
    request.result.createObjectStore("kept");
  };
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error("the database does not answer")), OPEN_MS);
    done(request)
      .then(resolve, reject)
      .finally(() => clearTimeout(late));
  });
}

/** open gets the storage ready and says whether quotes are kept. */
export async function open() {
  unkept = "";
  if (isOff()) unkept = "off";
  else {
    try {
      db = await opened(VERSION);
    } catch (e) {
      db = null;
      unkept = "refused";
      if (/** @type {Error} */ (e)?.name === "VersionError") {
        unkept = "newer"; // it can be read and handed out, and is not written
        db = await opened().catch(() => null);
      }
    }
  }
  if (!db) return false;
  const own = db;
  // Another window with a newer page must not wait for this one.
  own.onversionchange = () => own.close();
  own.onclose = () => {
    if (db === own) [db, unkept] = [null, "refused"];
  };
  if (unkept) return false;
  if (navigator.storage && navigator.storage.persist) navigator.storage.persist().catch(() => {});
  await resume();
  return true;
}

// The database takes a moment. What is on its way there stands in a note that is
// written at once, so that a window that is closed or killed in that moment
// loses nothing; the next one carries it out. A note that another window has
// carried out itself finds its own count, and does nothing. What the database did
// not take stays in the note.
const NOTE = "boxwright.unsaved.";
const ASIDE = "boxwright.aside.";
/** @type {Map<string, Change[]>} by quote: what its note holds, oldest first */
const coming = new Map();
/** @type {Map<string, Promise<unknown>>} by quote: the last of these, each after the one before it */
const turns = new Map();
/** @type {Map<string, Change>} by quote: what the database did not take, as one change */
const failed = new Map();
/** @type {Map<string, number>} by quote: how many of its changes the database did not take */
const behind = new Map();

/** @param {string} id */
function note(id) {
  const missed = failed.get(id);
  const list = coming.get(id) || (missed ? [missed] : []); // what comes after what was missed holds it
  return write(NOTE + id, list.length ? JSON.stringify(list) : "");
}

async function resume() {
  for (const name of names().filter((k) => k.startsWith(NOTE))) {
    const text = read(name);
    const list = stored.changes(text);
    let whole = !!list;
    for (const change of list || []) whole = (await settle(change)) && whole;
    if (read(name) !== text) continue; // another window writes there
    // What cannot be carried out is put aside, for the panel of the saved things.
    if (whole || write(`${ASIDE}${name.slice(NOTE.length)}.${Date.now()}`, text)) write(name, "");
  }
}

/** settle carries out what a note holds; it is false when that cannot be. @param {Change} change */
async function settle([record, step, isNew]) {
  const there = await raw(record.id);
  if (stored.count(there) >= record.count && stored.record(there)) return true;
  return (await written(record, step, isNew)) === true;
}

/** holds tells whether something is kept under that id, be it read or not. @param {string} id */
export const holds = async (id) => (await raw(id)) !== undefined;

/** @param {string} id */
async function raw(id) {
  try {
    return db ? await done(db.transaction("quotes").objectStore("quotes").get(id)) : undefined;
  } catch {
    return undefined;
  }
}

/**
 * get and put keep single things beside the quotes: "last", the quote worked on,
 * "catalogue", "copies", where copies go, and "sealed", the quotes that were sealed.
 * @param {string} key
 * @returns {Promise<any>}
 */
export async function get(key) {
  try {
    return db ? await done(db.transaction("kept").objectStore("kept").get(key)) : undefined;
  } catch {
    return undefined;
  }
}

/** getText is what is kept under a key, where it is a text. @param {string} key */
export async function getText(key) {
  return stored.text(await get(key)) || undefined;
}

/**
 * @param {string} key
 * @param {unknown} value
 */
export async function put(key, value) {
  try {
    if (!db || unkept === "newer") return false;
    const t = db.transaction("kept", "readwrite");
    const store = t.objectStore("kept");
    if (value === undefined || value === null) store.delete(key);
    else store.put(value, key);
    await finished(t);
    return true;
  } catch {
    return false;
  }
}

/**
 * aside puts a value under another key, whatever it is, and says whether its own is free.
 * @param {string} key
 * @param {string} other
 */
export async function aside(key, other) {
  try {
    if (!db || unkept === "newer") return false;
    const t = db.transaction("kept", "readwrite");
    const store = t.objectStore("kept");
    const value = await done(store.get(key));
    if (value !== undefined) store.put(value, other);
    store.delete(key);
    await finished(t);
    return true;
  } catch {
    return false;
  }
}

/**
 * swap puts a value in the place of another, where that one is still there, and says
 * whether it did; undefined stands for none.
 * @param {string} key
 * @param {string | undefined} was
 * @param {string | undefined} value
 */
export async function swap(key, was, value) {
  try {
    if (!db || unkept === "newer") return false;
    const t = db.transaction("kept", "readwrite");
    const store = t.objectStore("kept");
    if ((await done(store.get(key))) !== was) return false;
    if (value === undefined) store.delete(key);
    else store.put(value, key);
    await finished(t);
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
    const [found, values, keys] = await Promise.all([
      done(t.objectStore("quotes").get(id)),
      done(t.objectStore("steps").getAll(all(id))),
      done(t.objectStore("steps").getAllKeys(all(id))),
    ]);
    const record = stored.record(found);
    return record && { ...record, ...stored.trail(values, keys, record.at) };
  } catch {
    return null;
  }
}

/**
 * save writes the record of a quote and the step it is at. A new step takes away
 * those after it. The answer is true, false when storage fails, or "taken" when
 * another window wrote the quote since. What storage does not take stays in a note
 * until it does.
 * @param {Kept} record
 * @param {Moment | undefined | false} step
 * @param {boolean} isNew
 * @returns {Promise<boolean | "taken">}
 */
export async function save(record, step, isNew) {
  const { id } = record;
  if (unkept === "off" || unkept === "newer") return false;
  /** @type {Change} */
  const change = [{ ...record, count: record.count - (behind.get(id) || 0) }, step || undefined, isNew];
  coming.set(id, [...(coming.get(id) || []), change]);
  note(id);
  const turn = (turns.get(id) || Promise.resolve()).then(() => take(change));
  turns.set(id, turn);
  const answer = await turn;
  note(id);
  return answer;
}

/** take writes the first change that is coming for a quote. @param {Change} change */
async function take(change) {
  const { id } = change[0];
  const before = failed.get(id);
  if (before) {
    // A step that was missed is written with what comes after it, unless that has one of its own.
    change[1] ||= before[1];
    change[2] ||= before[2];
  }
  const answer = await written(...change);
  const rest = (coming.get(id) || []).slice(1);
  if (rest.length) coming.set(id, rest);
  else for (const of of [coming, turns]) of.delete(id);
  if (answer === true) failed.delete(id);
  if (answer !== false) return answer;
  // Those missed count as one, right behind the last that was written.
  failed.set(id, before ? [{ ...change[0], at: before[0].at }, change[1], change[2]] : change);
  behind.set(id, (behind.get(id) || 0) + 1);
  for (const [record] of rest) record.count--;
  return answer;
}

/**
 * written writes a change as save does.
 * @param {Kept} record
 * @param {Moment | undefined} step
 * @param {boolean} isNew
 * @returns {Promise<boolean | "taken">}
 */
function written(record, step, isNew) {
  return new Promise((resolve) => {
    /** @type {boolean | "taken"} */
    let answer = false;
    try {
      if (!db) return resolve(false);
      const t = db.transaction(["quotes", "steps"], "readwrite");
      const quotes = t.objectStore("quotes");
      const steps = t.objectStore("steps");
      const find = quotes.get(record.id);
      find.onsuccess = () => {
        const there = find.result;
        if (there !== undefined && same(there, record)) {
          answer = true; // another window carried out the note
          return;
        }
        if ((there !== undefined && !stored.record(there)) || stored.count(there) !== record.count - 1) {
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
      t.oncomplete = () => {
        if (unkept === "full" || unkept === "refused") unkept = "";
        resolve(answer);
      };
      // Not when the error comes: only then does the transaction say what it was.
      t.onabort = () => {
        unkept = t.error?.name === "QuotaExceededError" ? "full" : unkept || "refused";
        resolve(false);
      };
    } catch {
      unkept ||= "refused";
      resolve(false);
    }
  });
}

/** same reports whether a record is this very one. @param {Kept} there @param {Kept} record */
const same = (there, record) =>
  there.count === record.count &&
  there.saved === record.saved &&
  JSON.stringify(there.draft) === JSON.stringify(record.draft);

/**
 * list gives every kept quote without its earlier states, the last changed first.
 * @returns {Promise<Kept[]>}
 */
export async function list() {
  if (!db) return [];
  try {
    const records = await done(db.transaction("quotes").objectStore("quotes").getAll());
    const read = records.map(stored.record).filter((r) => r !== null);
    return read.sort((a, b) => (a.saved < b.saved ? 1 : -1));
  } catch {
    return [];
  }
}

/** @param {string} id */
export async function drop(id) {
  if (!db) return;
  const t = db.transaction(["quotes", "steps"], "readwrite");
  t.objectStore("quotes").delete(id);
  t.objectStore("steps").delete(all(id));
  await finished(t);
}

/**
 * dropAsIt takes a quote out that was written so often, and no other; it says whether
 * there is none any more.
 * @param {string} id
 * @param {number} count
 */
export async function dropAsIt(id, count) {
  const there = await raw(id);
  if (stored.count(there) !== count || read(NOTE + id)) return there === undefined;
  await drop(id);
  return true;
}

/** dropTraces takes out what other things tell of quotes: the last screen, and text being typed. */
export function dropTraces() {
  for (const key of names()) if (/^boxwright\.(typed\.|screen)/.test(key)) write(key, "");
}

/**
 * add puts in a quote that comes from a file, unless the same is there already.
 * One that is there with other contents stays, and the new one gets a new name.
 * @param {import("./protocol.js").KeptQuote} quote
 * @param {string} fresh the new name
 */
export async function add(quote, fresh) {
  const there = await raw(quote.id);
  if (there !== undefined && JSON.stringify(stored.record(there)?.draft) === JSON.stringify(quote.draft)) return;
  if (!db || unkept === "newer") throw new Error("this browser refuses storage");
  const id = there !== undefined ? fresh : quote.id;
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
  await finished(t);
}

/**
 * everything is all that is kept here, as it is, for whoever hands it out or takes
 * it away one by one: nothing of it is left out because it cannot be read.
 * @returns {Promise<{ quotes: any[], steps: any[], single: [string, any][], texts: [string, string][] }>}
 */
export async function everything() {
  /** @type {[string, string][]} */
  const texts = names()
    .filter((k) => k.startsWith("boxwright."))
    .map((k) => [k, read(k)]);
  if (!db) return { quotes: [], steps: [], single: [], texts };
  const own = db;
  /** @param {string} name */
  const rows = async (name) => {
    try {
      const store = own.transaction(name).objectStore(name);
      const [keys, values] = await Promise.all([done(store.getAllKeys()), done(store.getAll())]);
      return keys.map((key, i) => /** @type {[any, any]} */ ([key, values[i]]));
    } catch {
      return []; // a newer version may have no such store
    }
  };
  const [quotes, steps, single] = await Promise.all([rows("quotes"), rows("steps"), rows("kept")]);
  return { quotes: quotes.map(([, value]) => value), steps, single, texts };
}

/** @param {string} key of a text that everything lists */
export const dropText = (key) => write(key, "");

/** forgetAll takes everything of this page out of the browser, but for the wish that nothing be kept. */
export async function forgetAll() {
  for (const key of names().filter((k) => k.startsWith("boxwright.") && k !== OFF)) write(key, "");
  db?.close();
  db = null;
  await done(indexedDB.deleteDatabase(DATABASE)).catch(() => {});
}

const isOff = () => read(OFF) !== "";
export const setOff = (/** @type {boolean} */ off) => write(OFF, off ? "1" : "");

// These stand apart from the database. Cost sheet and key are sealed: nothing that is drawn
// reads them, and a copy has them as they are sealed.
const COSTS = "boxwright.costs.1"; // the seller's cost sheet
const KEY = "boxwright.key.1"; // the signing key, with its public half
const BIDS = "boxwright.bids.1"; // standing answers, and what was corrected in requirement lists

/** @param {string} key */
export function read(key) {
  try {
    return localStorage.getItem(key) || "";
  } catch {
    return "";
  }
}

/** @param {string} key @param {string} text */
export function write(key, text) {
  try {
    if (text) {
      if (isOff() && key !== OFF) return false;
      localStorage.setItem(key, text);
    } else localStorage.removeItem(key);
    return true;
  } catch {
    return false;
  }
}

/** names are the keys of all texts. */
export function names() {
  try {
    return Object.keys(localStorage);
  } catch {
    return [];
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
