// @ts-check
// Files that are read, saved and put together in the browser.
import { MAX_FILE_BYTES } from "./protocol.js";
import { newId } from "./history.js";
import { FILE_NAME, FORMAT, mark, sealed } from "./stored.js";
import { named } from "./letters.js";

/**
 * @typedef {import("./state.js").Act} Act
 * @typedef {import("./state.js").Step} Step
 * @typedef {import("./protocol.js").KeptQuote} KeptQuote
 * @typedef {import("./protocol.js").Export} Export
 *
 * @typedef {{ value: string }} Field
 *
 * What the files need of the page around them.
 * @typedef {{
 *   keep: Pick<typeof import("./keep.js"), "load" | "list" | "get" | "getText" | "swap" | "aside" | "add" |
 *     "dropAsIt" | "dropTraces" | "loadBids" | "loadKey" | "loadCosts">,
 *   bar: Pick<typeof import("./bar.js"), "ask">,
 *   single: (catalogue: Step) => Promise<string>,
 *   office: () => Promise<Pick<typeof import("./office.js"), "text" | "fill">>,
 *   act: (a: Act) => void,
 *   relisted: () => Promise<void>,
 *   copied: (of: Record<string, string>) => Promise<void>,
 *   sealed: () => Promise<void>,
 *   trouble: (text: string) => void,
 *   save: (name: string, type: string, content: BlobPart) => void,
 * }} Around
 */

const MAX_CHARACTERS = MAX_FILE_BYTES / 2; // of a file of kept quotes, whatever is in it
const OFFICE = /\.(docx|xlsx)$/i;
const SHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const number = (/** @type {number} */ n) => n.toLocaleString("en");

export class Files {
  /** @param {Around} around */
  constructor(around) {
    this.around = around;
    /** the spreadsheet opened last, to be filled in @type {Uint8Array} */
    this.sheet = new Uint8Array();
    /** what is being sealed @type {import("./state.js").Kept[]} */
    this.sealing = [];
    /** the sealed quotes that are being opened @type {string | undefined} */
    this.opening = undefined;
  }

  /**
   * tooLarge says so when a file has more than is read.
   * @param {string} name
   * @param {number} size
   */
  tooLarge(name, size) {
    if (size <= MAX_FILE_BYTES) return false;
    const most = number(MAX_FILE_BYTES);
    this.around.trouble(`${named(name)} has ${number(size)} bytes; the most that is read is ${most}. Nothing was changed.`);
    return true;
  }

  /**
   * read takes the text of a file for an act.
   * @param {string} name of the act
   * @param {File} file
   */
  async read(name, file) {
    const plain = (/** @type {File} */ f) => f.text();
    await this.content(file, OFFICE.test(file.name) ? (f) => this.officeText(f) : plain, (value) =>
      this.around.act({ do: name, id: file.name, value }),
    );
  }

  /**
   * officeText is the text of a document or a spreadsheet.
   * @param {File} file
   */
  async officeText(file) {
    const office = await this.around.office();
    this.sheet = new Uint8Array(await file.arrayBuffer());
    return office.text(file.name, this.sheet);
  }

  /**
   * fillSheet saves the spreadsheet opened last with cells filled in.
   * @param {Step} step
   */
  async fillSheet({ name = "", text = "" }) {
    try {
      const office = await this.around.office();
      const filled = office.fill(this.sheet, JSON.parse(text));
      this.around.save(`${name.replace(/\.xlsx$/i, "")}-answered.xlsx`, SHEET, /** @type {BlobPart} */ (filled));
    } catch (e) {
      this.around.trouble(`${named(name)} could not be filled in (${words(e)}). Nothing was saved.`);
    }
  }

  /**
   * readBytes hands on the bytes of a file in base64.
   * @param {File} file
   * @param {(text: string) => void} take
   */
  async readBytes(file, take) {
    await this.content(file, base64, take);
  }

  /**
   * @param {File} file
   * @param {(file: File) => Promise<string>} how
   * @param {(text: string) => void} take
   */
  async content(file, how, take) {
    if (this.tooLarge(file.name, file.size)) return;
    let text = "";
    try {
      text = await how(file);
    } catch (e) {
      this.around.trouble(`${named(file.name)} could not be read (${words(e)}). Nothing was changed.`);
      return;
    }
    take(text);
  }

  /**
   * readAll takes several texts for one act.
   * @param {string} name of the act
   * @param {File[]} files
   */
  async readAll(name, files) {
    const names = files.map((f) => f.name).join(", ");
    if (
      !files.length ||
      this.tooLarge(
        names,
        files.reduce((n, f) => n + f.size, 0),
      )
    )
      return;
    try {
      const texts = await Promise.all(files.map(async (f) => ({ name: f.name, text: await f.text() })));
      this.around.act({ do: name, id: names, value: JSON.stringify(texts) });
    } catch {
      this.around.trouble(`${named(names)} could not be read. Nothing was changed.`);
    }
  }

  /**
   * saveStep saves what the core wrote.
   * @param {Step} step
   */
  saveStep({ name = "", type = "", text = "", base64: packed }) {
    this.around.save(name, type, packed ? Uint8Array.from(atob(text), (c) => c.charCodeAt(0)) : text);
  }

  /**
   * saveSingle saves the page as one file with a catalogue in it.
   * @param {Step} step
   */
  async saveSingle(step) {
    try {
      this.around.save(step.name || "", "text/html", await this.around.single(step));
    } catch (e) {
      this.around.trouble(`The file could not be put together (${words(e)}). Nothing was changed.`);
    }
  }

  /**
   * saveSchema saves the JSON Schema of a quote's file, which the single file
   * carries and the folder has beside the page.
   */
  async saveSchema() {
    try {
      const carried = document.getElementById("schema-text")?.textContent;
      const text = carried ?? (await fetched(schemaAddress()));
      this.around.save("quote.schema.json", "application/schema+json", text);
    } catch (e) {
      this.around.trouble(`The schema could not be fetched (${words(e)}). Try again with a network.`);
    }
  }

  /**
   * whole is a quote with its earlier states, as a file of copies has it, with its record.
   * @param {string} id
   * @returns {Promise<[quote: KeptQuote, record: import("./state.js").Kept] | undefined>}
   */
  async whole(id) {
    const r = await this.around.keep.load(id);
    if (!r) return undefined;
    const { saved, draft, pins, steps } = r;
    const { name, line } = r.gist;
    return [{ id, name, line, saved, draft, pins: pins || [], steps, at: steps.length ? r.at - r.first : 0 }, r];
  }

  /** beside is what a copy holds besides quotes. Keys and costs are in it as they are sealed, and only if they are. */
  async beside() {
    const { keep } = this.around;
    const key = keep.loadKey();
    return {
      catalogue: await keep.getText("catalogue"),
      bids: keep.loadBids() || undefined,
      key: sealed(key.sealed) ? { sealed: key.sealed, public: key.open } : undefined,
      costs: sealed(keep.loadCosts()) || undefined,
      sealed: sealed(await keep.get("sealed")) || undefined,
    };
  }

  /**
   * everything is all that is saved here as one file, with the quotes in it and their records.
   * @returns {Promise<{ text: string, quotes: KeptQuote[], records: import("./state.js").Kept[], length: number }>}
   */
  async everything() {
    /** @type {KeptQuote[]} */
    const quotes = [];
    const records = [];
    for (const r of await this.around.keep.list()) {
      const full = await this.whole(r.id);
      if (!full) continue;
      quotes.push(full[0]);
      records.push(full[1]);
    }
    const file = { format: FORMAT, quotes, ...(await this.beside()) };
    let text = JSON.stringify(file);
    const { length } = text;
    if (length > MAX_CHARACTERS) {
      // Too much for one file with every state: the last one of each will do.
      for (const q of quotes) [q.steps, q.at] = [[], 0];
      text = JSON.stringify(file);
    }
    return { text, quotes, records, length };
  }

  /** copyOf is the copy of one quote. @param {string} id */
  async copyOf(id) {
    const full = await this.whole(id);
    if (!full) return "";
    const [quote] = full;
    const text = JSON.stringify({ format: FORMAT, quotes: [quote] });
    if (text.length <= MAX_CHARACTERS) return text;
    return JSON.stringify({ format: FORMAT, quotes: [{ ...quote, steps: [], at: 0 }] });
  }

  /** rest is the copy of what is no quote. */
  async rest() {
    return JSON.stringify({ format: FORMAT, quotes: [], ...(await this.beside()) });
  }

  /** exportKept saves everything as one file. */
  async exportKept() {
    const { trouble, save, copied } = this.around;
    const { text, records, length } = await this.everything();
    if (length > MAX_CHARACTERS)
      trouble(
        "The file holds every quote as it is now, but not its earlier states: with them it would have " +
          `${number(length)} characters, and at most ${number(MAX_CHARACTERS)} go into one file. ` +
          "Here nothing was changed.",
      );
    save(FILE_NAME, "application/json", text);
    await copied(Object.fromEntries(records.map((r) => [r.id, mark(r)])));
  }

  /**
   * seal has every saved quote sealed behind what stands in a field.
   * @param {Field} field
   */
  async seal(field) {
    const { keep, act, trouble } = this.around;
    const there = await keep.get("sealed");
    if (there !== undefined) {
      const first = sealed(there) ? "Open the quotes that are sealed" : "Put aside what stands in their place";
      trouble(`${first} first. Nothing was changed.`);
      return;
    }
    const { quotes, records, length } = await this.everything();
    if (length > MAX_CHARACTERS) {
      const most = `${number(length)} characters, and at most ${number(MAX_CHARACTERS)} are sealed`;
      trouble(`The saved quotes with their earlier states have ${most}: delete some first. Nothing was changed.`);
      return;
    }
    // What is sealed already, or goes by itself, need not be sealed once more.
    this.sealing = records;
    act({ do: "seal-kept", value: field.value, file: JSON.stringify({ format: FORMAT, quotes }), random: random() });
    field.value = "";
  }

  /**
   * keepSealed keeps the sealed quotes, and takes the open ones away that are in them as
   * they are now.
   * @param {string} text
   */
  async keepSealed(text) {
    const { keep, relisted, trouble } = this.around;
    // The open ones go when the sealed ones are written, and no others were there.
    if (!(await keep.swap("sealed", undefined, text))) {
      const why = (await keep.get("sealed")) !== undefined
        ? "Quotes were sealed in another window meanwhile: open those first."
        : "This browser did not keep the sealed quotes.";
      trouble(`${why} Nothing was taken away.`);
      return;
    }
    let left = 0;
    for (const { id, count } of this.sealing) if (!(await keep.dropAsIt(id, count))) left++;
    this.sealing = [];
    if (left) trouble(`${left} of the quotes changed meanwhile, and stay in the list as well.`);
    await this.around.sealed();
    keep.dropTraces();
    await relisted();
  }

  /**
   * unseal has the sealed quotes opened by what stands in a field.
   * @param {Field} field
   */
  async unseal(field) {
    this.opening = await this.around.keep.getText("sealed");
    this.around.act({ do: "open-sealed", value: field.value, file: this.opening || "", random: random() });
    field.value = "";
  }

  /** putAside makes room for quotes to be sealed; what stands there stays, under another key. */
  async putAside() {
    const { keep, relisted, trouble } = this.around;
    if (!(await keep.aside("sealed", `sealed, put aside ${new Date().toISOString()}`)))
      trouble("This browser did not put it aside. Nothing was changed.");
    await relisted();
  }

  /**
   * importKept takes in a file of kept quotes that the core has checked.
   * @param {string} text
   * @param {string} [how] "sealed": what was sealed here, which goes when all is in the list
   */
  async importKept(text, how) {
    const { keep, bar, act, relisted, trouble } = this.around;
    /** @type {Export} */
    const file = JSON.parse(text);
    try {
      for (const q of file.quotes) await keep.add(q, newId());
      if (how === "sealed") await keep.swap("sealed", this.opening, undefined);
      else if (file.sealed) await this.importSealed(file.sealed);
    } catch {
      trouble("This browser could not keep all of it. What was here before stays.");
    }
    await relisted();
    act({ do: "restore" });
    const { catalogue } = file;
    if (catalogue && catalogue !== (await keep.get("catalogue"))) {
      bar.ask("catalogue", "The file also holds a catalogue.", [
        ["Use it now", () => act({ do: "load-catalogue", id: "the catalogue of the file", value: catalogue })],
        ["Leave it", () => {}],
      ]);
    }
  }

  /** importSealed takes in the sealed quotes of a file, where there are none. @param {string} text */
  async importSealed(text) {
    const { keep, trouble } = this.around;
    if (await keep.swap("sealed", undefined, text)) return;
    const there = await keep.get("sealed");
    if (there === text) return;
    const again = "then take the file in again";
    const others = sealed(there)
      ? `others are sealed here. Open those first, ${again}`
      : `something else stands in their place. Put it aside where quotes are sealed, ${again}`;
    const why = there === undefined ? "this browser keeps nothing" : others;
    trouble(`The sealed quotes in the file were not taken in: ${why}.`);
  }
}

const random = () => btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(64))));

/** @param {unknown} e */
const words = (e) => (e instanceof Error ? e.message : String(e));

/** schemaAddress is where the folder form has the schema, by the page's own script tag. */
function schemaAddress() {
  const tag = document.querySelector("script[data-schema]");
  return (tag instanceof HTMLElement && tag.dataset.schema) || "quote.schema.json";
}

/** @param {string} address */
async function fetched(address) {
  const reply = await fetch(address);
  if (!reply.ok) throw new Error(`the host answers ${reply.status}`);
  return reply.text();
}

/** @param {Blob} file @returns {Promise<string>} */
const base64 = (file) =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).split(",")[1] || "");
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(file);
  });

/**
 * download gives the reader a file.
 * @param {string} name
 * @param {string} type
 * @param {BlobPart} content
 */
export function download(name, type, content) {
  const a = document.createElement("a");
  a.href = URL.createObjectURL(new Blob([content], { type }));
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 10000);
}
