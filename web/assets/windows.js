// @ts-check
// Which windows of the page live. Each has a name and holds a lock of that name as
// long as it lives; a window that is loaded anew keeps its name.

const PREFIX = "boxwright window ";
const NAME = "boxwright.window";
const TRIES = 15; // a window that is being loaded anew may not have let go yet
const PAUSE_MS = 80;

const fresh = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(6)), (b) => b.toString(16).padStart(2, "0")).join("");

/** before is the name that this window had before it was loaded anew, if it was. */
function before() {
  try {
    return sessionStorage.getItem(NAME) || "";
  } catch {
    return "";
  }
}

/** @param {string} name */
function remember(name) {
  try {
    sessionStorage.setItem(NAME, name);
  } catch {
    // a window loaded anew is then another one
  }
}

/** hold takes the lock of a name until the window ends. @param {string} name @returns {Promise<boolean>} */
const hold = (name) =>
  new Promise((resolve) => {
    navigator.locks
      .request(PREFIX + name, { ifAvailable: true }, (lock) => {
        resolve(!!lock);
        return lock && new Promise(() => {});
      })
      .catch(() => resolve(true)); // locks are refused here
  });

/** What a window is called. A copy of a window has the name of the other one until own is there. */
export class Windows {
  constructor() {
    this.name = before() || fresh();
    /** this window's own name, once that is sure @type {Promise<string>} */
    this.own = this.take();
  }

  async take() {
    if (navigator.locks) {
      let mine = false;
      for (let n = 0; n < TRIES && !mine; n++) {
        if (n) await new Promise((r) => setTimeout(r, PAUSE_MS));
        mine = await hold(this.name);
      }
      if (!mine) {
        this.name = fresh(); // the window is a copy of another one
        await hold(this.name);
      }
    }
    remember(this.name);
    return this.name;
  }

  /** others are the names of the other windows that live; undefined where the browser cannot tell. */
  async others() {
    try {
      const { held = [] } = await navigator.locks.query();
      const names = held.map((l) => l.name || "").filter((n) => n.startsWith(PREFIX));
      return new Set(names.map((n) => n.slice(PREFIX.length)).filter((n) => n !== this.name));
    } catch {
      return undefined;
    }
  }
}
