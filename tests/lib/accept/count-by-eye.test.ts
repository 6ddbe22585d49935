import { describe, expect, it } from "vitest";
import { JudgeInputSchema, type JudgeInput, type Verdict } from "@/lib/accept";
import { judgeParsed } from "@/lib/accept/judge";
import { dice, randomWeld } from "./random-weld";
import type { Judge } from "./broken-laws";
import { inDepth } from "../../setup/in-depth";

/** Laws of our own; no published source. A count by eye is a guess, and a guess excuses nothing. */
const judge: Judge = (input) => {
  const result = judgeParsed(input);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const rank = { reject: 0, "cannot-say": 1, accept: 2 } as const;

const counted = (weld: JudgeInput, about: number): JudgeInput => ({
  ...weld,
  observations: weld.observations.map((one) => ({ ...one, aboutCount: about })),
});

/** A weld with pores on it, half of them patches. */
function poredWeld(seed: number): JudgeInput {
  const roll = dice(seed);
  const weld = randomWeld(roll);
  const observations = weld.observations.map((one) =>
    roll.maybe(0.5)
      ? {
          ...one,
          imperfection: "surface-porosity" as const,
          patterns: roll.maybe(0.6) ? (["scattered"] as const).slice() : [],
          poreCount: roll.maybe(0.2) ? roll.oneOf([2, 5, 30]) : null,
          alongMm: roll.maybe(0.8) ? one.alongMm : null,
        }
      : one,
  );
  // The other clauses say the same with and without.
  return { ...weld, observations, only: roll.maybe(0.9) ? ["surface-porosity"] : null };
}

interface Found {
  readonly better: readonly string[];
  readonly worse: number;
}

function compared(faulty: Judge, welds: number): Found {
  const better: string[] = [];
  let worse = 0;
  for (let seed = 1; seed <= welds && better.length < 1; seed += 1) {
    const weld = poredWeld(seed);
    if (weld.observations.length === 0) continue;
    const words = [weld, counted(weld, 4), counted(weld, 40)].map((one) => faulty(one).verdict);
    const ranks = words.map((word) => rank[word]);
    if (ranks[1]! > ranks[0]! || ranks[2]! > ranks[1]!) better.push(`${seed}: ${words.join(", ")}`);
    if (ranks[2]! < ranks[0]!) worse += 1;
  }
  return { better, worse };
}

const WELDS = inDepth(120, 12_000);

describe("a count by eye", () => {
  it(`never makes a verdict better, nor does a larger one, on ${WELDS} welds`, () => {
    const { better, worse } = compared(judge, WELDS);
    expect(better).toEqual([]);
    // The law says nothing where a count never matters.
    expect(worse).toBeGreaterThan(3);
  });

  it("taken for one that was counted is caught", () => {
    const faulty: Judge = (input) =>
      judge({
        ...input,
        observations: input.observations.map((one) => ({
          ...one,
          poreCount: one.poreCount ?? one.aboutCount,
          aboutCount: null,
        })),
      });
    expect(compared(faulty, 2_000).better).not.toEqual([]);
  });

  it("taken for a look that finds one hole no longer is caught", () => {
    const faulty: Judge = (input) =>
      judge({
        ...input,
        observations: input.observations.map((one) =>
          one.aboutCount === null ? one : { ...one, patterns: ["scattered"], aboutCount: null },
        ),
      });
    expect(compared(faulty, 2_000).better).not.toEqual([]);
  });
});

/** Surface pores of 1 mm in a patch of 40 mm, by a shop's limit on how many there are in 100 mm. */
function patch(aboutCount: number | null, more: object = {}): Verdict {
  const shop = {
    schemaVersion: 1,
    id: "shop-pores",
    version: 1,
    title: "Pores",
    author: "instructor",
    rows: [
      {
        id: "many",
        title: "How many",
        imperfections: ["surface-porosity"],
        quantity: "count",
        limit: 8,
        windowMm: 100,
      },
    ],
  };
  return judge(
    JudgeInputSchema.parse({
      criteriaId: "shop-pores@1",
      shop,
      weld: { kind: "fillet", lengthMm: 300, thicknessMm: 8 },
      observations: [
        {
          id: "p",
          imperfection: "surface-porosity",
          patterns: ["scattered"],
          aboutCount,
          alongMm: [10, 50],
          ...more,
        },
      ],
      lookedFor: "all",
    }),
  );
}

describe("where a clause asks how many", () => {
  const row = (verdict: Verdict) => verdict.rows.find(({ limit }) => limit?.unit === "count");

  it("half of the guess may fail it, and says so; the guess never meets it", () => {
    expect(patch(null).verdict).toBe("cannot-say");
    expect(patch(16).verdict).toBe("cannot-say");
    expect(row(patch(16))?.missing.map(({ quantity }) => quantity)).toContain("pore-count");
    const many = patch(18);
    expect(many.verdict).toBe("reject");
    expect(row(many)?.value).toBe(9);
    expect(row(many)?.figuresUsed).toContain("p.aboutCount");
    expect(patch(2).verdict).toBe("cannot-say");
  });

  it("a patch longer than the stretch is cut into so many, and the fullest holds the mean at least", () => {
    // Half of 40 on 250 mm, in stretches of 100 mm: some stretch holds a third of 20, seven.
    expect(row(patch(40, { alongMm: [10, 260] }))?.result).toBe("open");
    expect(row(patch(50, { alongMm: [10, 260] }))?.value).toBe(9);
    expect(row(patch(40, { alongMm: null }))?.result).toBe("open");
  });

  it("what was counted outranks it", () => {
    const both = patch(40, { poreCount: 3 });
    expect(both.verdict).toBe("accept");
    expect(both.unused.map(({ figure, why }) => [figure, why])).toContainEqual(["p.aboutCount", "guess"]);
  });
});

it("several counted in a mark that is judged as one hole contradict each other", () => {
  const one = patch(20, { patterns: [] });
  expect(one.contradictions.map(({ code }) => code)).toEqual(["count-of-one"]);
  expect(one.verdict).not.toBe("accept");
});
