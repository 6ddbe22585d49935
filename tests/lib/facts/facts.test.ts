import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent } from "@/lib/assess";
import { inventedContent, numbersFrom } from "@/lib/demo/invented";
import { beadFacts } from "@/lib/facts";
import { isPlace, placeOf } from "@/lib/facts/place";
import { foldText } from "@/lib/facts/fold";
import { spokenOf } from "@/lib/facts/synonyms";
import { summariseBead, summariseCard } from "@/lib/report";
import { inch, metric } from "@/lib/units";

const at = fc.integer({ min: -62_135_596_800_000, max: 253_402_300_799_999 });
const number = fc.integer({ min: 0, max: 2 ** 31 - 1 });

describe("a place in time", () => {
  it("sorts as time, then number, and is one bead's alone", () => {
    fc.assert(
      fc.property(at, number, at, number, (a, i, b, j) => {
        const [one, other] = [placeOf(a, i), placeOf(b, j)];
        expect(isPlace(one)).toBe(true);
        expect(Math.sign(one < other ? -1 : one > other ? 1 : 0)).toBe(Math.sign(a - b) || Math.sign(i - j));
      }),
      { numRuns: 2000, seed: 5 },
    );
  });

  it("of the same millisecond is told by number", () => {
    expect(placeOf(0, 2) < placeOf(0, 10)).toBe(true);
  });
});

describe("words", () => {
  it("of the trade stand for each other, whole words only", () => {
    expect(spokenOf("Cold lap, both toes")).toEqual(["overlap"]);
    expect(spokenOf("COLD-LAP")).toEqual(["overlap"]);
    expect(spokenOf("coldlap")).toEqual([]);
    expect(spokenOf("Whisker at the start")).toContain("wire-stub");
  });

  it("sort without regard to marks over letters and case", () => {
    expect(foldText("  Élodie  Åse ")).toBe("elodie ase");
  });
});

describe("facts", () => {
  const next = numbersFrom(42);
  const beads = Array.from({ length: 60 }, (_, i) => ({
    id: `b${i}`,
    number: i + 1,
    createdAt: "2026-11-26T10:00:00.000Z",
    content: inventedContent(next, "p"),
    photos: [{ id: "p", sha256: "a".repeat(64), widthPx: 1600, heightPx: 1200 }],
  }));

  it("hold a card from which the list words the same as from the assessment, in any units", () => {
    for (const bead of beads) {
      const assessed = assessBead(bead);
      const { card, verdict } = beadFacts(assessed, { welder: "W-07", atMs: 0 });
      const { id, content } = bead;
      const named = { id, number: bead.number, createdAt: bead.createdAt, title: content.title };
      const around = { ...named, welder: content.welder, thumbSha256: "a".repeat(64) };
      // As it comes back from the database.
      const kept = JSON.parse(JSON.stringify(card)) as typeof card;
      for (const units of [metric, inch])
        expect(summariseCard(around, { card: kept, verdict, adviceStands: true }, units)).toEqual(
          summariseBead(assessed, units),
        );
    }
    expect(new Set(beads.map((bead) => assessBead(bead).assessment.verdict?.ok)).size).toBeGreaterThan(1);
  });

  it("say nothing of a bead on which nothing is known", () => {
    const bead = { number: 1, createdAt: "2026-11-26T10:00:00.000Z", content: emptyBeadContent, photos: [] };
    const facts = beadFacts(assessBead(bead), { welder: null, atMs: 0 });
    expect(facts).toMatchObject({
      welder: null,
      verdict: null,
      firstCause: null,
      thicknessMm: null,
      found: [],
    });
    expect(Object.values(facts.setup).every((value) => value === null)).toBe(true);
    expect(facts.card.judged).toEqual({
      criteria: null,
      edition: null,
      verdict: null,
      cause: null,
      change: null,
      profile: null,
    });
  });
});
