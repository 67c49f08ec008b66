// Days as the core reads them.
import { test } from "node:test";
import assert from "node:assert/strict";
import { day, moment } from "./moment.js";

test("a day has its month and its zeros", () => {
  assert.equal(day(new Date(2026, 0, 5)), "2026-01-05");
  assert.equal(day(new Date(2026, 11, 31, 23, 59)), "2026-12-31");
});

test("a moment is written as a reader writes it", () => {
  assert.match(moment(new Date(2026, 10, 5, 14, 30)), /^Nov 5, 2026, 2:30.PM$/);
  assert.equal(moment(new Date("last week")), "");
});
