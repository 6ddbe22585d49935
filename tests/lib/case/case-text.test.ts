import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOST_CASE_BYTES, readCaseText } from "@/lib/case";

const lineOf = (source: Uint8Array | string): string | undefined => {
  const read = readCaseText(source);
  return read.ok ? undefined : read.lines.join("\n");
};
const nested = (levels: number) => "[".repeat(levels) + "]".repeat(levels);

describe("the text of a case", () => {
  it("is read as the platform's parser reads it, from text and from bytes, with a mark and without", () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), (text) => {
        const value: unknown = JSON.parse(text);
        for (const source of [text, `\uFEFF${text}`, Buffer.from(text), Buffer.from(`\uFEFF${text}`)])
          expect(readCaseText(source)).toEqual({ ok: true, value });
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it("is refused in one line, whatever it is", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: "binary" }), fc.uint8Array({ maxLength: 60 })), (source) => {
        const read = readCaseText(source);
        if (read.ok) return;
        expect(read.lines).toHaveLength(1);
        expect(read.lines[0]).toMatch(/^\(top\): [^\n\r]+$/);
      }),
      { seed: 12, numRuns: 1000 },
    );
  });

  it("nests 64 deep and no deeper; brackets within text do not count", () => {
    expect(lineOf(nested(64))).toBeUndefined();
    expect(lineOf(nested(65))).toMatch(/deeper than 64/);
    expect(lineOf(nested(1_000_000))).toMatch(/deeper than 64/);
    expect(lineOf(JSON.stringify([`"${"[".repeat(100)}\\`, "{".repeat(100)]))).toBeUndefined();
    expect(lineOf(`[${Array(100).fill("[]").join(",")}]`)).toBeUndefined();
  });

  it("is taken up to its greatest size", () => {
    const full = new Uint8Array(MOST_CASE_BYTES).fill(0x20);
    expect(lineOf(full)).toBe("(top): not JSON (it is empty)");
    expect(lineOf(new Uint8Array(MOST_CASE_BYTES + 1).fill(0x20))).toBe(
      "(top): larger than 4 MB; no case is",
    );
  });
});
