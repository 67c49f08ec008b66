// @ts-check
// Copies of what is saved, outside of the browser: at every change into a folder that the
// user chose, where the browser can, and else as one file at a press. Remembers when the
// last copy was made, and of what state of which quote.
import { moment } from "./moment.js";
import { mark, sealed } from "./stored.js";
import { named } from "./letters.js";

/**
 * The folder is there while changes go there. Of has the mark of each quote's state when it
 * was copied, rest what else was copied.
 * @typedef {{ folder?: FileSystemDirectoryHandle, when: string, of: Record<string, string>, rest?: string }} Known
 *
 * What the copies need of the page around them.
 * @typedef {{
 *   keep: Pick<typeof import("./keep.js"), "list" | "get" | "put">,
 *   files: Pick<import("./files.js").Files, "copyOf" | "rest" | "read">,
 *   bar: Pick<typeof import("./bar.js"), "ask" | "withdraw">,
 *   picker: ((options: object) => Promise<FileSystemDirectoryHandle>) | undefined,
 *   told: () => void,
 *   trouble: (text: string) => void,
 * }} Around
 */

const KEY = "copies";
const PAUSE_MS = 1500; // after a change
const WRITES = { mode: "readwrite" };
const REST = "boxwright-rest.json"; // what is not a quote
const MOST_FILES = 600; // of a folder that are taken in
const OURS = /^boxwright-[\w-]*\.json$/;

/** @param {any} raw what was kept @returns {Known} */
function known(raw) {
  const of = raw?.of && typeof raw.of === "object" ? raw.of : {};
  const folder = typeof raw?.folder?.getFileHandle === "function" ? raw.folder : undefined;
  return { folder, of, when: typeof raw?.when === "string" ? raw.when : "", rest: raw?.rest };
}

/**
 * fileOf is the name of a quote's copy: one name for each id, whatever is in it.
 * @param {string} id
 */
export function fileOf(id) {
  const plain = /^[0-9a-f]{8,}$/.test(id);
  const hex = () => Array.from(new TextEncoder().encode(id), (b) => b.toString(16).padStart(2, "0")).join("");
  return `boxwright-quote-${plain ? id : `x${hex()}`}.json`;
}

export class Copies {
  /** @param {Around} around */
  constructor(around) {
    this.around = around;
    /** @type {Known} */
    this.known = { when: "", of: {} };
    this.waits = false; // the browser wants to ask the user before anything is written
    this.lasting = false;
    this.sealed = false;
    this.spoiled = false; // in the place of what is sealed is something else
    this.timer = 0;
    /** @type {Promise<void> | undefined} */
    this.knowing = undefined;
    this.isKnown = false; // what the browser has of all that was read
  }

  /** know reads what the browser has of all that, once. */
  know() {
    return (this.knowing ||= this.reread());
  }

  /** open goes on where the last visit ended. */
  async open() {
    const drawn = this.isKnown; // with what is known
    await this.know();
    if (!drawn) this.around.told();
    if (this.waits) {
      const { name } = /** @type {FileSystemDirectoryHandle} */ (this.known.folder);
      this.around.bar.ask("copies", `Changes do not go into the folder “${named(name)}” until you allow it again.`, [
        ["Allow it", () => this.allow()],
        ["Later", () => {}],
      ]);
    }
    this.later();
  }

  async reread() {
    const { keep } = this.around;
    this.known = known(await keep.get(KEY));
    const there = await keep.get("sealed");
    this.sealed = !!sealed(there);
    this.spoiled = there !== undefined && !this.sealed;
    this.lasting = !!(await navigator.storage?.persisted?.().catch(() => false));
    this.waits = !!this.known.folder && (await allowed(this.known.folder)) !== "granted";
    this.isKnown = true;
  }

  /**
   * told is what the page says of copies.
   * @param {{ id: string, mark?: string }[]} saved
   * @returns {import("./protocol.js").Copies}
   */
  told(saved) {
    const { folder, when, of } = this.known;
    return {
      when: when && moment(new Date(when)),
      changed: saved.filter((s) => of[s.id] !== s.mark).length,
      able: !!this.around.picker,
      folder: folder?.name,
      waits: this.waits,
      lasting: this.lasting,
      sealed: this.sealed,
      spoiled: this.spoiled,
    };
  }

  /** made remembers a copy. @param {Record<string, string>} of @param {Partial<Known>} [more] */
  async made(of, more) {
    const before = known(await this.around.keep.get(KEY));
    this.known = { ...before, ...more, when: new Date().toISOString(), of: { ...before.of, ...of } };
    await this.around.keep.put(KEY, this.known);
    this.around.told();
  }

  /** choose asks the user for a folder, and copies everything into it. */
  async choose() {
    const { picker, keep, trouble, bar } = this.around;
    let folder;
    try {
      folder = picker && (await picker({ id: "boxwright", ...WRITES }));
    } catch {
      folder = undefined; // the user thought better of it
    }
    if (!folder) return;
    const there = await ours(folder);
    this.known = { folder, when: this.known.when, of: {} };
    this.waits = false;
    if (!(await keep.put(KEY, this.known))) {
      trouble("This browser does not remember the folder; choose it again next time.");
    }
    if (there.length) {
      const said = `The folder “${named(folder.name)}” has copies in it. Nothing of them is written over by another quote.`;
      bar.ask("folder", said, [
        ["Take them in", () => this.takeIn(there)],
        ["Leave them", () => {}],
      ]);
    }
    await this.copy();
    this.around.told();
  }

  /** takeIn takes in the copies of a folder. @param {FileSystemFileHandle[]} handles */
  async takeIn(handles) {
    for (const h of handles.slice(0, MOST_FILES)) await this.around.files.read("import", await h.getFile());
  }

  /** allow asks the user, at a press, for the folder again. */
  async allow() {
    const { folder } = this.known;
    if (!folder) return;
    this.around.bar.withdraw("copies");
    this.waits = (await allowed(folder, true)) !== "granted";
    await this.copy();
    this.around.told();
  }

  /** stop ends copying into the folder; what is there stays. */
  async stop() {
    this.known = { ...this.known, folder: undefined };
    this.waits = false;
    await this.around.keep.put(KEY, this.known);
    this.around.told();
  }

  /** later copies what changed, when nothing more changes for a moment. */
  later() {
    if (!this.known.folder || this.waits) return;
    clearTimeout(this.timer);
    this.timer = Number(setTimeout(() => this.copy(), PAUSE_MS));
  }

  /** copy writes into the folder what changed since it was copied there. One window does it at a time. */
  async copy() {
    if (!navigator.locks) return this.copyAlone();
    await navigator.locks.request("boxwright copies", () => this.copyAlone());
  }

  async copyAlone() {
    const { keep, files, trouble } = this.around;
    const { folder, of, rest } = known(await keep.get(KEY));
    if (!folder || this.waits) return;
    /** @type {Record<string, string>} */
    const made = {};
    try {
      for (const r of await keep.list()) {
        if (of[r.id] === mark(r)) continue;
        const text = await files.copyOf(r.id);
        if (text) await write(folder, fileOf(r.id), text);
        made[r.id] = mark(r);
      }
      const now = await files.rest();
      const sum = await digest(now);
      if (sum !== rest) await write(folder, REST, now);
      if (Object.keys(made).length || sum !== rest) await this.made(made, { rest: sum });
    } catch (e) {
      if (Object.keys(made).length) await this.made(made);
      this.waits = (await allowed(folder)) !== "granted";
      const why = e instanceof Error ? e.message : e;
      if (!this.waits) trouble(`No copy went into the folder “${named(folder.name)}” (${why}).`);
      this.around.told();
    }
  }
}

/**
 * allowed says whether the page may write into a folder; it asks the user, when that is
 * wanted.
 * @param {any} folder
 * @param {boolean} [ask]
 * @returns {Promise<string>}
 */
async function allowed(folder, ask) {
  try {
    return (await (ask ? folder.requestPermission?.(WRITES) : folder.queryPermission?.(WRITES))) ?? "granted";
  } catch {
    return "denied";
  }
}

/** ours are the copies in a folder. @param {any} folder @returns {Promise<FileSystemFileHandle[]>} */
async function ours(folder) {
  const found = [];
  try {
    for await (const h of folder.values()) if (h.kind === "file" && OURS.test(h.name)) found.push(h);
  } catch {
    return []; // a folder that cannot be listed is written to all the same
  }
  return found;
}

/**
 * write puts a file into a folder, whole or not at all.
 * @param {any} folder
 * @param {string} name
 * @param {string} text
 */
async function write(folder, name, text) {
  const handle = await folder.getFileHandle(name, { create: true });
  const out = await handle.createWritable();
  try {
    await out.write(text);
    await out.close();
  } catch (e) {
    await out.abort?.().catch(() => {});
    throw e;
  }
}

/** digest tells one text from another. @param {string} text */
async function digest(text) {
  const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return Array.from(new Uint8Array(sum), (b) => b.toString(16).padStart(2, "0")).join("");
}
