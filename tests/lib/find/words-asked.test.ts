import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import { countBeads } from "@/lib/find";
import { wordsAsked } from "@/lib/find/words-asked";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";

const first = (q: string) => wordsAsked(q).words.map(([word]) => word);

describe("words asked for", () => {
  it.each<[string, readonly string[]]>([
    ["cold lap", ["cold", "lap"]],
    ['"cold lap"', ["cold lap"]],
    ['tee "cold  lap" wide', ["tee", "cold lap", "wide"]],
    ["“cold lap”", ["cold lap"]],
    ["„cold lap“ «run out»", ["cold lap", "run out"]],
    // Still being typed.
    ['tee "cold la', ["tee", "cold la"]],
    // Inches: no quotation begins inside a word.
    ['3/4" plate 1/2" bar', ['3/4"', "plate", '1/2"', "bar"]],
    ['"3/4" plate"', ["3/4", 'plate"']],
    ['"the 1/2"bar here"', ['"the', '1/2"bar', 'here"']],
    ['"', []],
    ['"" lap', ["lap"]],
  ])("%s", (q, expected) => {
    expect(first(q)).toEqual(expected);
  });

  it("a number in quotation marks is a word, and one outside of them a bead", () => {
    expect(wordsAsked('#12 "#13"')).toEqual({ numbers: [12], words: [["#13"]] });
  });

  it("without a quotation mark each word stands alone, and no letter or digit is ever lost", () => {
    const bare = fc.stringMatching(/^[a-z0-9 ]{0,20}$/);
    const letters = (text: string) => text.replace(/[^a-z0-9]/g, "");
    fc.assert(
      fc.property(fc.array(fc.tuple(bare, fc.constantFrom("", '"', "“", "”", ' "', '" '))), (parts) => {
        const q = parts.map(([text, mark]) => text + mark).join("");
        expect(letters(first(q).join(""))).toBe(letters(q));
        const plain = parts.map(([text]) => text).join("");
        expect(first(plain)).toEqual(plain.split(/\s+/).filter(Boolean));
      }),
      { numRuns: inDepth(100, 2000), seed: 7 },
    );
  });
});

describe("in the beads", () => {
  const fresh = useFreshDb();

  it("a phrase finds its words in a row alone; without the marks their order does not count", async () => {
    for (const title of [
      "Flat bar, second wide pass",
      "Wide second bar",
      "Bar for the second welder",
      "Plate",
    ])
      expect((await createBead(fresh().pen, { title })).ok).toBe(true);
    const found = async (q: string) => (await countBeads(fresh().db, { q }, {})).found;
    expect(await found("second bar")).toBe(3);
    expect(await found('"second bar"')).toBe(1);
    expect(await found('"bar second"')).toBe(1);
    expect(await found('"second wide" flat')).toBe(1);
    expect(await found('"second wide" plate')).toBe(0);
    // The last word by its beginning, as every word.
    expect(await found('"the second wel')).toBe(1);
    expect(await found('"the sec welder"')).toBe(0);
  });
});
