// What of files of word processors and spreadsheets can be tried without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { zipSync } from "fflate";
import { column, counted, nameOf, text } from "./office.js";

test("columns are counted in letters", () => {
  for (const [name, at] of [
    ["A", 0],
    ["Z", 25],
    ["AA", 26],
    ["AZ", 51],
    ["ZZ", 701],
    ["AAA", 702],
  ]) {
    assert.equal(column(`${name}12`), at);
    assert.equal(nameOf(at), name);
  }
});

test("lists count as word processors do", () => {
  for (const [n, format, said] of [
    [3, "decimal", "3"],
    [3, "lowerLetter", "c"],
    [28, "upperLetter", "BB"],
    [14, "lowerRoman", "xiv"],
    [49, "upperRoman", "XLIX"],
    [7, "decimalZero", "07"],
  ])
    assert.equal(counted(n, format), said);
});

test("what is no such file, or too large unpacked, is refused", () => {
  assert.throws(() => text("a.xlsx", new Uint8Array([1, 2, 3])));
  const bomb = zipSync({ "word/document.xml": new Uint8Array((64 << 20) + 1) }, { level: 1 });
  assert.throws(() => text("a.docx", bomb), /too large/);
});
