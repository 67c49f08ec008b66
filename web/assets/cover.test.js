// What a link says of itself, without a browser.
import { test } from "node:test";
import assert from "node:assert/strict";
import { cover, linkIn } from "./cover.js";

const link = (text) => `q=AAAA&cover=${Buffer.from(text).toString("base64url")}`;

test("a cover is a title, a price and a day", () => {
  const want = { title: "Médic 4 ½", price: "USD 298,410.00", date: "June 21, 2027" };
  assert.deepEqual(cover(link("Médic 4 ½\nUSD 298,410.00\n2027-06-21") + "&was=AAAA"), want);
  assert.equal(cover(link("Medic\nUSD 1.00\n")).date, "", "a quote without a day has a cover too");
});

test("an address brings a link, however a mail program wrote it", () => {
  assert.equal(linkIn("#q=AAAA&cover=BB"), "q=AAAA&cover=BB");
  assert.equal(linkIn("#q%3DAAAA%26cover%3dBB"), "q=AAAA&cover=BB");
  assert.equal(linkIn("#q="), "q=", "one that was cut is said to be");
  assert.equal(linkIn("#q"), "q");
  for (const other of ["", "#", "#kept", "#main", "#quote"]) assert.equal(linkIn(other), "", other);
});

for (const [reason, fragment] of [
  ["none", "q=AAAA"],
  ["an empty one", "q=AAAA&cover="],
  ["no base64", "q=AAAA&cover=***"],
  ["no UTF-8", `q=AAAA&cover=${Buffer.from([0xff, 0xfe]).toString("base64url")}`],
  ["two lines", link("Medic\nUSD 1.00")],
  ["four lines", link("Medic\nUSD 1.00\n2027-06-21\nx")],
  ["too long", link(`${"x".repeat(80)}\nUSD 1.00\n`)],
  ["far too long", `q=AAAA&cover=${"A".repeat(100_000)}`],
  ["a letter that turns the line around", link("Medic \u202e4\nUSD 1.00\n")],
  ["a control character", link("Medic\u0007\nUSD 1.00\n")],
]) {
  test(`not shown: ${reason}`, () => assert.equal(cover(fragment), null));
}

test("a day that is none is left out", () => {
  assert.equal(cover(link("Medic\nUSD 1.00\n2027-13-41")).date, "");
  assert.equal(cover(link("Medic\nUSD 1.00\n<b>soon</b>")).date, "");
});
