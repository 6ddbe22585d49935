import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { guardText } from "@/lib/exchange/guard-cell";
import { arbHostile } from "./hostile-text";
import { unguardText } from "./read-back";

describe("guard against formulas", () => {
  it("no guarded text begins one, with or without the white space and quotes before it", () => {
    fc.assert(
      fc.property(arbHostile, (text) => {
        const guarded = guardText(text);
        expect(guarded).not.toMatch(/^[\t\r\n]/);
        expect(guarded.replace(/^[ "]*/, "")).not.toMatch(/^[=+\-@＝＋－＠]/);
      }),
      { numRuns: 3000 },
    );
  });

  it("comes off again exactly", () => {
    fc.assert(
      fc.property(arbHostile, (text) => {
        expect(unguardText(guardText(text))).toBe(text);
      }),
      { numRuns: 3000 },
    );
  });

  // The forms OWASP's page "CSV Injection" warns of; the words of the formulas are ours.
  it.each([
    ["=1+1", "'=1+1"],
    ["+1+1", "'+1+1"],
    ["-1+1", "'-1+1"],
    ["@SUM(A1)", "'@SUM(A1)"],
    ["\t=1+1", "'\t'=1+1"],
    ["\r=1+1", "'\r'=1+1"],
    ['"=1+1', "'\"=1+1"],
    ["fine;=1+1", "fine;'=1+1"],
    ["＝1+1", "'＝1+1"],
  ])("%j becomes %j", (text, guarded) => expect(guardText(text)).toBe(guarded));

  it.each(["E71T-11", "gap 2, then 3", "undercut; spatter", "0.9 mm - thin", "it's cold", ""])(
    "leaves %j alone",
    (text) => expect(guardText(text)).toBe(text),
  );
});
