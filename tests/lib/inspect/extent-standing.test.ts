import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { extentStanding, type Extent } from "@/lib/inspect";

const percent = (value: number): Extent => ({ kind: "percent", percent: value });
const length = (lengthMm: number): Extent => ({ kind: "length", lengthMm });
const kind = (...args: Parameters<typeof extentStanding>) => extentStanding(...args).kind;

describe("what was seen against what was asked", () => {
  it("says how much is missing, in the other unit too where the weld's length is known", () => {
    expect(extentStanding(percent(100), percent(20), 300)).toEqual({
      kind: "short",
      missing: { percent: 80, lengthMm: 240 },
    });
    expect(extentStanding(percent(100), percent(20), null)).toEqual({
      kind: "short",
      missing: { percent: 80, lengthMm: null },
    });
    expect(extentStanding(length(200), length(150), null)).toEqual({
      kind: "short",
      missing: { percent: null, lengthMm: 50 },
    });
    expect(extentStanding(percent(50), length(90), 300)).toEqual({
      kind: "short",
      missing: { percent: 20, lengthMm: 60 },
    });
  });

  it("converts only by a length that is known", () => {
    expect(kind(percent(100), length(300), 300)).toBe("full");
    expect(kind(percent(100), length(300), null)).toBe("not-comparable");
    expect(kind(length(150), percent(50), 300)).toBe("full");
    expect(kind(length(150), percent(50), null)).toBe("not-comparable");
    // Nothing is nothing in either unit.
    expect(extentStanding(length(150), percent(0), null)).toEqual({
      kind: "short",
      missing: { percent: null, lengthMm: 150 },
    });
    expect(kind(percent(50), length(0), null)).toBe("short");
    // The whole weld is enough whatever its length.
    expect(kind(length(150), percent(100), null)).toBe("full");
  });

  it("takes nothing unknown for seen, and no figure longer than the weld", () => {
    expect(kind(null, percent(100), 300)).toBe("asked-unknown");
    expect(kind(percent(100), null, 300)).toBe("seen-unknown");
    expect(kind(length(400), percent(100), 300)).toBe("beyond-length");
    expect(kind(percent(100), length(301), 300)).toBe("beyond-length");
  });

  it("is all for what was typed in inches as in millimetres", () => {
    // 11 13/16 in times 25.4 is 300.0375 mm.
    expect(kind(percent(100), length((11 + 13 / 16) * 25.4), 300.0375)).toBe("full");
  });

  it("whole numbers of percent and millimetres agree with whole-number arithmetic, at every boundary", () => {
    const runs = { numRuns: 2000, seed: 20261126 };
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: -2, max: 2 }),
        (asked, weld, off) => {
          // Seen in mm, near the very length that was asked.
          const seen = Math.min(weld, Math.max(0, Math.round((asked * weld) / 100) + off));
          const isFull = seen * 100 >= asked * weld;
          expect(kind(percent(asked), length(seen), weld)).toBe(isFull ? "full" : "short");
        },
      ),
      runs,
    );
  });
});
