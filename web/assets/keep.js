// Keeps quotes in this browser, at every change: one record for each quote, and
// apart from it every state that undo goes back to. A record counts how often it
// was written; who finds another count than the last one it wrote itself knows
// that another window was there, and writes nothing.

const VERSION = 1;
const MAX_STEPS = 100;

let db = null; // null: this browser refuses storage, and the page works without

const done = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const all = (id) => IDBKeyRange.bound([id, -Infinity], [id, Infinity]);

// open gets the storage ready and says whether there is any.
export async function open() {
  try {
    const request = indexedDB.open("boxwright", VERSION);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("quotes", { keyPath: "id" });
      request.result.createObjectStore("steps");
      request.result.createObjectStore("kept");
    };
    db = await done(request);
    // Another window with a newer page must not wait for this one.
    db.onversionchange = () => db.close();
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
const coming = new Map(); // by quote: what its note holds, oldest first

function note(id) {
  const list = coming.get(id);
  write(NOTE + id, list.length ? JSON.stringify(list) : "");
}

async function resume() {
  for (const name of Object.keys(localStorage).filter((k) => k.startsWith(NOTE))) {
    try {
      await Promise.all(JSON.parse(read(name)).map((change) => save(...change)));
    } catch {
      // not a note that can be read
    }
    write(name, "");
  }
}

// get and put keep single things beside the quotes: "last", the quote worked on,
// and "catalogue".
export async function get(key) {
  try {
    return db && (await done(db.transaction("kept").objectStore("kept").get(key)));
  } catch {
    return undefined;
  }
}

export async function put(key, value) {
  try {
    if (!db) return false;
    const store = db.transaction("kept", "readwrite").objectStore("kept");
    await done(value === undefined || value === null ? store.delete(key) : store.put(value, key));
    return true;
  } catch {
    return false;
  }
}

// load gives a quote with its steps, oldest first, or nothing.
export async function load(id) {
  if (!db || !id) return null;
  try {
    const t = db.transaction(["quotes", "steps"]);
    const [record, steps, keys] = await Promise.all([
      done(t.objectStore("quotes").get(id)),
      done(t.objectStore("steps").getAll(all(id))),
      done(t.objectStore("steps").getAllKeys(all(id))),
    ]);
    return record ? { ...record, steps, first: keys.length ? keys[0][1] : 0 } : null;
  } catch {
    return null;
  }
}

// save writes the record of a quote and the step it is at. A new step takes away
// those after it. The answer is true, false when storage fails, or "taken" when
// another window wrote the quote since.
export function save(record, step, isNew) {
  if (!db) return Promise.resolve(false);
  const change = [record, step, isNew];
  coming.set(record.id, [...(coming.get(record.id) || []), change]);
  note(record.id);
  return new Promise((settle) => {
    const resolve = (answer) => {
      coming.set(record.id, coming.get(record.id).filter((c) => c !== change));
      note(record.id);
      settle(answer);
    };
    let answer = false;
    try {
      const t = db.transaction(["quotes", "steps"], "readwrite");
      const quotes = t.objectStore("quotes");
      const steps = t.objectStore("steps");
      quotes.get(record.id).onsuccess = (e) => {
        const there = e.target.result;
        if ((there ? there.count : 0) !== record.count - 1) {
          answer = "taken";
          return;
        }
        quotes.put(record);
        if (step) steps.put(step, [record.id, record.at]);
        if (isNew) {
          steps.delete(IDBKeyRange.bound([record.id, record.at], [record.id, Infinity], true));
          steps.delete(IDBKeyRange.bound([record.id, -Infinity], [record.id, record.at - MAX_STEPS], false, true));
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

// list gives every kept quote without its contents, the last changed first.
export async function list() {
  if (!db) return [];
  try {
    const records = await done(db.transaction("quotes").objectStore("quotes").getAll());
    return records.sort((a, b) => (a.saved < b.saved ? 1 : -1));
  } catch {
    return [];
  }
}

export async function drop(id) {
  const t = db.transaction(["quotes", "steps"], "readwrite");
  t.objectStore("quotes").delete(id);
  await done(t.objectStore("steps").delete(all(id)));
}

// add puts in a quote that comes from a file, unless the same is there already.
// One that is there with other contents stays, and the new one gets a new name.
export async function add(quote, fresh) {
  const there = await load(quote.id);
  if (there && JSON.stringify(there.draft) === JSON.stringify(quote.draft)) return;
  const id = there ? fresh : quote.id;
  const t = db.transaction(["quotes", "steps"], "readwrite");
  const steps = quote.steps && quote.steps.length ? quote.steps : [{ draft: quote.draft, said: "", when: quote.saved }];
  const at = quote.steps && quote.steps.length ? quote.at : 0;
  t.objectStore("quotes").put({ id, count: 1, saved: quote.saved, at, draft: quote.draft, view: null, pins: quote.pins || [], gist: { name: quote.name, line: quote.line, issued: quote.draft.issued, weighed: quote.weighed } });
  for (const [n, s] of steps.entries()) t.objectStore("steps").put(s, [id, n]);
  await new Promise((resolve, reject) => {
    t.oncomplete = resolve;
    t.onabort = t.onerror = () => reject(t.error);
  });
}

// Sealed files stand apart from all that: nothing that is exported or drawn ever
// reads them.
const COSTS = "boxwright.costs.1"; // the seller's cost sheet
const KEY = "boxwright.key.1"; // the signing key, with its public half

function read(key) {
  try {
    return localStorage.getItem(key) || "";
  } catch {
    return "";
  }
}

function write(key, text) {
  try {
    if (text) localStorage.setItem(key, text);
    else localStorage.removeItem(key);
    return true;
  } catch {
    return false;
  }
}

export const loadCosts = () => read(COSTS);
export const saveCosts = (sealed) => write(COSTS, sealed);
export function loadKey() {
  const [sealed, open] = read(KEY).split(" ");
  return { sealed: sealed || "", open: open || "" };
}
export const saveKey = (sealed, open) => write(KEY, sealed && `${sealed} ${open}`);
