// @ts-check
// Reads the text of word processor and spreadsheet files (Office Open XML: a zip of
// XML) and writes cells back into a spreadsheet. Nothing else needs this, so it is
// a script of its own, loaded when such a file is opened (load.js).
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** @typedef {{ row: number, col: number, text: string }} Cell counted from zero */

const MAX_UNPACKED = 64 << 20; // bytes, of all parts together
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const LINKS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/**
 * text is what a file says: a spreadsheet as a table of comma separated values, a
 * document as lines, its tables with tabs between cells.
 * @param {string} name
 * @param {Uint8Array} bytes
 */
export function text(name, bytes) {
  const parts = unpacked(bytes, (part) =>
    /^(word\/(document|numbering|styles)|xl\/(workbook|sharedStrings|worksheets\/[^/]+))\.xml$|rels$/.test(part),
  );
  if (!name.toLowerCase().endsWith(".xlsx")) return lines(parts);
  const rows = rowsOf(parts, sheetOf(parts));
  return rows.map((row) => (row.length ? row : [""]).map(quoted).join(",")).join("\n");
}

/**
 * fill writes texts into the cells of a spreadsheet and leaves all else as it is.
 * @param {Uint8Array} bytes
 * @param {Cell[]} cells
 */
export function fill(bytes, cells) {
  const parts = unpacked(bytes, () => true);
  const path = sheetOf(parts);
  const doc = xml(parts, path);
  const data = doc.getElementsByTagNameNS(MAIN, "sheetData")[0];
  for (const cell of cells) write(doc, data, cell);
  parts[path] = strToU8(new XMLSerializer().serializeToString(doc));
  return zipSync(parts);
}

/**
 * unpacked takes the parts out of a zip that are wanted.
 * @param {Uint8Array} bytes
 * @param {(name: string) => boolean} wanted
 */
function unpacked(bytes, wanted) {
  let total = 0;
  return unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      if (!wanted(name)) return false;
      total += originalSize;
      if (total > MAX_UNPACKED) throw new Error("it is too large when unpacked");
      return true;
    },
  });
}

/**
 * @param {Record<string, Uint8Array>} parts
 * @param {string} path
 */
function xml(parts, path) {
  const part = parts[path];
  if (!part) throw new Error(`it has no ${path}`);
  const doc = new DOMParser().parseFromString(strFromU8(part), "application/xml");
  if (doc.getElementsByTagName("parsererror").length) throw new Error(`its ${path} is damaged`);
  return doc;
}

/** @param {Element | Document} of @param {string} name */
const all = (of, name) => [...of.getElementsByTagNameNS("*", name)];
/** @param {Element} of @param {string} name */
const child = (of, name) => [...of.children].find((e) => e.localName === name);
/** @param {Element | undefined} of @param {string} name */
const value = (of, name) => {
  const at = of && [...of.attributes].find((a) => a.localName === name);
  return at ? at.value : "";
};

// ---- spreadsheets ----

/**
 * sheetOf is the sheet with the most text among those that are shown.
 * @param {Record<string, Uint8Array>} parts
 */
function sheetOf(parts) {
  const targets = new Map(
    all(xml(parts, "xl/_rels/workbook.xml.rels"), "Relationship").map((r) => [value(r, "Id"), value(r, "Target")]),
  );
  let best = "";
  let most = -1;
  for (const sheet of all(xml(parts, "xl/workbook.xml"), "sheet")) {
    const target = targets.get(sheet.getAttributeNS(LINKS, "id") || "") || "";
    const path = target.startsWith("/") ? target.slice(1) : `xl/${target}`;
    if (!parts[path] || value(sheet, "state").includes("idden")) continue;
    const length = rowsOf(parts, path).flat().join("").length;
    if (length > most) [best, most] = [path, length];
  }
  if (!best) throw new Error("it has no sheet that is shown");
  return best;
}

/**
 * @param {Record<string, Uint8Array>} parts
 * @param {string} path of the sheet
 */
function rowsOf(parts, path) {
  const shared = parts["xl/sharedStrings.xml"] ? all(xml(parts, "xl/sharedStrings.xml"), "si").map(said) : [];
  /** @type {string[][]} */
  const rows = [];
  for (const row of all(xml(parts, path), "row")) {
    const at = Number(value(row, "r")) - 1;
    const r = at >= rows.length ? at : rows.length;
    if (r > 20000) break;
    while (rows.length <= r) rows.push([]);
    for (const cell of all(row, "c")) {
      const ref = value(cell, "r");
      const c = ref ? column(ref) : rows[r].length;
      if (c >= 200) continue;
      while (rows[r].length <= c) rows[r].push("");
      const v = child(cell, "v")?.textContent || "";
      const kind = value(cell, "t");
      rows[r][c] = kind === "s" ? shared[Number(v)] || "" : kind === "inlineStr" ? said(cell) : v;
    }
  }
  return rows;
}

/** said is a text without how it is spoken. @param {Element} of */
const said = (of) =>
  all(of, "t")
    .filter((t) => t.parentElement?.localName !== "rPh")
    .map((t) => t.textContent || "")
    .join("");

/** column is the place of a cell such as "AB12", counted from zero. @param {string} ref */
export function column(ref) {
  let n = 0;
  for (const c of ref.replace(/[^A-Z]/g, "")) n = n * 26 + c.charCodeAt(0) - 64;
  return n - 1;
}

/** nameOf is a column's letters. @param {number} col counted from zero */
export function nameOf(col) {
  let name = "";
  for (let n = col + 1; n > 0; n = Math.floor((n - 1) / 26)) name = String.fromCharCode(65 + ((n - 1) % 26)) + name;
  return name;
}

/** @param {string} cell */
const quoted = (cell) => `"${cell.replaceAll('"', '""')}"`;

/**
 * write puts a text into a cell, which is made where there is none. A formula stays.
 * @param {Document} doc
 * @param {Element} data
 * @param {Cell} cell
 */
function write(doc, data, { row, col, text: said }) {
  const make = (/** @type {string} */ name) => doc.createElementNS(MAIN, name);
  const before = [...data.children].find((r) => Number(value(r, "r")) >= row + 1);
  let r = before && Number(value(before, "r")) === row + 1 ? before : undefined;
  if (!r) {
    r = make("row");
    r.setAttribute("r", String(row + 1));
    data.insertBefore(r, before || null);
  }
  const next = [...r.children].find((c) => column(value(c, "r")) >= col);
  let c = next && column(value(next, "r")) === col ? next : undefined;
  if (!c) {
    c = make("c");
    c.setAttribute("r", nameOf(col) + (row + 1));
    r.insertBefore(c, next || null);
    r.removeAttribute("spans");
  }
  if (child(c, "f")) return;
  c.setAttribute("t", "inlineStr");
  const t = make("t");
  t.setAttributeNS("http://www.w3.org/XML/1998/namespace", "xml:space", "preserve");
  t.textContent = said;
  const is = make("is");
  is.append(t);
  c.replaceChildren(is);
}

// ---- documents ----

/**
 * lines are the paragraphs of a document, with the numbers that its lists print, and
 * its tables.
 * @param {Record<string, Uint8Array>} parts
 */
function lines(parts) {
  const body = all(xml(parts, "word/document.xml"), "body")[0];
  const number = numbering(parts);
  /** @type {string[]} */
  const out = [];
  const paragraph = (/** @type {Element} */ p) => {
    const words = all(p, "*").map((e) =>
      e.localName === "t" ? e.textContent || "" : /^(tab|br|cr)$/.test(e.localName) ? " " : "",
    );
    const line = words.join("").replace(/\s+/g, " ").trim();
    return line && number(p) + line;
  };
  const heads = (/** @type {Element} */ p) => all(p, "pStyle").some((s) => /^(heading|title)/i.test(value(s, "val")));
  const walk = (/** @type {Element} */ e) => {
    for (const x of e.children) {
      if (x.localName === "p") {
        out.push(paragraph(x));
        if (!heads(x)) out.push(""); // a paragraph is whole, and a heading goes with what follows
      } else if (x.localName === "tbl") {
        for (const row of all(x, "tr"))
          out.push(
            [...row.children]
              .filter((c) => c.localName === "tc")
              .map((c) => all(c, "p").map(paragraph).filter(Boolean).join(" "))
              .join("\t"),
          );
      } else if (/^(sdt|sdtContent)$/.test(x.localName)) walk(x);
    }
  };
  walk(body);
  return out.join("\n");
}

/**
 * numbering gives what a list prints before a paragraph, counting on from the one
 * before.
 * @param {Record<string, Uint8Array>} parts
 * @returns {(p: Element) => string}
 */
function numbering(parts) {
  if (!parts["word/numbering.xml"]) return () => "";
  const doc = xml(parts, "word/numbering.xml");
  const kinds = new Map(all(doc, "abstractNum").map((a) => [value(a, "abstractNumId"), a]));
  const lists = new Map(all(doc, "num").map((n) => [value(n, "numId"), value(child(n, "abstractNumId"), "val")]));
  /** @type {Map<string, Element>} */
  const styles = new Map();
  if (parts["word/styles.xml"]) {
    for (const s of all(xml(parts, "word/styles.xml"), "style")) {
      const n = all(s, "numPr")[0];
      if (n) styles.set(value(s, "styleId"), n);
    }
  }
  /** @type {Map<string, number[]>} */
  const counts = new Map();
  return (p) => {
    const style = all(p, "pStyle")[0];
    const n = all(p, "numPr")[0] || styles.get(value(style, "val"));
    const id = n && value(child(n, "numId"), "val");
    const kind = id && lists.get(id);
    const list = kind && kinds.get(kind);
    if (!n || !kind || !list) return "";
    const level = Number(value(child(n, "ilvl"), "val")) || 0;
    const count = counts.get(kind) || [];
    const at = (/** @type {number} */ i) => all(list, "lvl").find((l) => Number(value(l, "ilvl")) === i);
    const start = (/** @type {number} */ i) => Number(value(child(at(i) || list, "start"), "val")) || 1;
    for (let i = 0; i < level; i++) count[i] ??= start(i);
    count[level] = count[level] === undefined ? start(level) : count[level] + 1;
    count.length = level + 1;
    counts.set(kind, count);
    const format = (/** @type {number} */ i) => value(child(at(i) || list, "numFmt"), "val");
    if (format(level) === "bullet") return "\u2022 ";
    const shape = value(child(at(level) || list, "lvlText"), "val");
    const said = shape.replace(/%(\d)/g, (_, k) => counted(count[k - 1] || 1, format(k - 1)));
    return said && said + " ";
  };
}

/**
 * counted is a number as a list writes it.
 * @param {number} n
 * @param {string} format
 */
export function counted(n, format) {
  const letter = () => String.fromCharCode(97 + ((n - 1) % 26)).repeat(Math.ceil(n / 26));
  const roman = () => {
    let [left, out] = [n, ""];
    /** @type {[number, string][]} */
    const signs = [
      [100, "c"],
      [90, "xc"],
      [50, "l"],
      [40, "xl"],
      [10, "x"],
      [9, "ix"],
      [5, "v"],
      [4, "iv"],
      [1, "i"],
    ];
    for (const [v, sign] of signs) for (; left >= v; left -= v) out += sign;
    return out;
  };
  switch (format) {
    case "lowerLetter":
      return letter();
    case "upperLetter":
      return letter().toUpperCase();
    case "lowerRoman":
      return roman();
    case "upperRoman":
      return roman().toUpperCase();
    case "decimalZero":
      return String(n).padStart(2, "0");
    default:
      return String(n);
  }
}
