// @ts-check
// Two windows on one quote: the first one holds it, the second is told and may
// take it over or work on a copy. The browser's locks say who holds what; where
// it has none, the count in the record still keeps one window from writing over
// another.

/** @type {((value?: unknown) => void) | null} */
let letGo = null;
let turns = 0;

/**
 * claim takes a quote for this window. The answer is whether it is held now;
 * lost is called when another window takes it over.
 * @param {string} id
 * @param {() => void} lost
 * @param {boolean} [steal] from a window that holds it
 */
export async function claim(id, lost, steal) {
  const turn = ++turns;
  if (letGo) letGo();
  letGo = null;
  if (!navigator.locks) return true;
  // A window that is being loaded anew may not have let go of its own yet.
  for (let tries = 0; tries < 12; tries++) {
    if (turn !== turns || (await once(id, lost, steal))) return true; // or another quote was taken up
    await new Promise((r) => setTimeout(r, 80));
  }
  return false;
}

/**
 * @param {string} id
 * @param {() => void} lost
 * @param {boolean} [steal]
 * @returns {Promise<boolean>}
 */
function once(id, lost, steal) {
  return new Promise((resolve) => {
    let mine = false;
    navigator.locks
      .request(named(id), steal ? { steal: true } : { ifAvailable: true }, (lock) => {
        mine = !!lock;
        resolve(mine);
        return lock && new Promise((r) => (letGo = r));
      })
      .catch(() => (mine ? lost() : resolve(true))); // never granted: locks are refused here
  });
}

/** @param {string} id */
const named = (id) => `boxwright quote ${id}`;

const LOADED_MS = 3000; // until a window that is loaded anew holds its quote again

/**
 * freed is resolved when no window holds a quote any more.
 * @param {string} id
 */
export async function freed(id) {
  const got = (/** @type {Lock | null} */ lock) => !!lock;
  let free = false;
  while (!free) {
    await navigator.locks.request(named(id), got);
    await new Promise((r) => setTimeout(r, LOADED_MS));
    free = await navigator.locks.request(named(id), { ifAvailable: true }, got);
  }
}

/** @type {BroadcastChannel | null} */
let channel = null;
try {
  channel = new BroadcastChannel("boxwright");
} catch {
  channel = null; // the list of kept quotes is then read anew at the next start
}

/** tell says to the other windows that the kept quotes changed. */
export const tell = () => channel && channel.postMessage("kept");

/** @param {() => void} heard */
export function listen(heard) {
  if (channel) channel.onmessage = heard;
}
