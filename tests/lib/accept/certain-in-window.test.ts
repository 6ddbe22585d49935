import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { JudgeInputSchema, type Verdict } from "@/lib/accept";
import { certainInWindow, type Spread } from "@/lib/accept/certain-in-window";
import { judgeParsed } from "@/lib/accept/judge";
import { inDepth } from "../../setup/in-depth";
import { dice } from "./random-weld";

/** Laws of our own; no published source: pores are laid anywhere in their patches, and counted one by one. */
interface Patch {
  readonly from: number;
  readonly to: number;
  readonly pores: number;
}
const patchArb = fc
  .tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 260 }), fc.integer({ min: 1, max: 9 }))
  .map(([from, long, pores]): Patch => ({ from, to: from + long, pores }));
const patchesArb = fc.array(patchArb, { minLength: 1, maxLength: 4 });
const runs = { numRuns: inDepth(150, 4000), seed: 20261126 };
const WINDOW_MM = 100;

/**
 * One way the pores may lie: in heaps more than a window apart where they can, which is how fewest come together, or
 * anywhere. Which of them is chance, by the seed.
 */
function placing(patches: readonly Patch[], seed: number): readonly number[] {
  const roll = dice(seed);
  const first = roll.oneOf([0, 0.25, 0.5, 0.75]) * WINDOW_MM;
  const heaps = Array.from({ length: 9 }, (_, i) => first + i * (WINDOW_MM + 0.5));
  return patches.flatMap(({ from, to, pores }) =>
    Array.from({ length: pores }, (_, i): number => {
      const inside = [from, to, ...heaps.filter((at) => at > from && at < to)];
      // Dealt out in turn, so that no heap grows larger than it must.
      if (seed % 3 !== 0) return inside[(i + seed) % inside.length]!;
      return roll.maybe(0.5) ? roll.oneOf(inside) : from + ((i + 0.5) / pores) * (to - from);
    }),
  );
}

/** The fullest window of all: it begins with a pore. */
const fullest = (pores: readonly number[], closedMm: number | null): number =>
  Math.max(
    ...pores.map((start) => {
      const after = pores.map((at) => (closedMm !== null && at < start ? at + closedMm : at));
      return after.filter((at) => at >= start && at <= start + WINDOW_MM).length;
    }),
  );

const spreadsOf = (patches: readonly Patch[]): readonly Spread[] =>
  patches.map(({ from, to, pores }) => ({ from, to, amount: pores, unit: 1 }));

type Certain = typeof certainInWindow;
/** Placings of these patches in which no window holds what is said to be certain. */
function denied(certain: Certain, patches: readonly Patch[], closedMm: number | null): readonly number[] {
  const said = Math.ceil(certain(spreadsOf(patches), WINDOW_MM, closedMm) - 1e-9);
  return Array.from({ length: 24 }, (_, seed) => seed).filter(
    (seed) => fullest(placing(patches, seed), closedMm) < said,
  );
}

const atMiddle =
  (share: (one: Spread) => number): Certain =>
  (spreads, windowMm, closed) =>
    certainInWindow(
      spreads.map((one) => {
        const middle = (one.from + one.to) / 2;
        return { ...one, from: middle, to: middle, amount: share(one) };
      }),
      windowMm,
      closed,
    );

/** Each should be seen by some patches and some placing of their pores. */
const faults: Readonly<Record<string, Certain>> = {
  "all of a patch in one window, however long it is": atMiddle(({ amount }) => amount),
  "the mean of a patch at its middle, beside what lies there": atMiddle(({ from, to, amount }) =>
    Math.ceil(amount / Math.max(1, Math.ceil((to - from) / WINDOW_MM))),
  ),
  "one window fewer than the part needs": (spreads, windowMm) => certainInWindow(spreads, windowMm * 1.4),
};

describe("what is certain of some window", () => {
  it.each([null, 600])(
    "is there however the pores lie in their patches (a weld that closes after %s mm)",
    (closed) => {
      fc.assert(
        fc.property(patchesArb, (patches) => {
          expect(denied(certainInWindow, patches, closed)).toEqual([]);
        }),
        runs,
      );
    },
  );

  it.each(Object.entries(faults))("would be denied by some placing: %s", (_, faulty) => {
    const wrong = fc
      .sample(patchesArb, { numRuns: 400, seed: 7 })
      .some((some) => denied(faulty, some, null).length > 0);
    expect(wrong).toBe(true);
  });

  // Worked by hand.
  it.each<[string, readonly Patch[], number]>([
    ["a patch no longer than the window lies in it", [{ from: 10, to: 110, pores: 9 }], 9],
    ["of three windows one holds a third", [{ from: 0, to: 300, pores: 9 }], 3],
    ["a tenth more pores, one more", [{ from: 0, to: 300, pores: 10 }], 4],
    ["a millimetre more, four windows", [{ from: 0, to: 301, pores: 9 }], 3],
    [
      "two patches over one another share their windows",
      [
        { from: 0, to: 200, pores: 3 },
        { from: 0, to: 200, pores: 3 },
      ],
      3,
    ],
    [
      "pores at the middle of a long patch lie by themselves",
      [
        { from: 0, to: 202, pores: 4 },
        { from: 101, to: 101, pores: 3 },
      ],
      3,
    ],
  ])("%s", (_, patches, certain) => {
    expect(Math.ceil(certainInWindow(spreadsOf(patches), WINDOW_MM) - 1e-9)).toBe(certain);
  });
});

const LIMIT = 4;
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
      limit: LIMIT,
      windowMm: WINDOW_MM,
    },
  ],
};

function judged(observations: readonly object[]): Verdict {
  const result = judgeParsed(
    JudgeInputSchema.parse({
      criteriaId: "shop-pores@1",
      shop,
      weld: { kind: "fillet", lengthMm: 600, thicknessMm: 8 },
      observations,
      lookedFor: "all",
    }),
  );
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const pore = (id: string, more: object) => ({ id, imperfection: "surface-porosity", ...more });
const asPatches = (patches: readonly Patch[]): Verdict =>
  judged(
    patches.map(({ from, to, pores }, i) =>
      pore(`p${i}`, { patterns: ["scattered"], poreCount: pores, alongMm: [from, to] }),
    ),
  );
const asPores = (places: readonly number[]): Verdict =>
  judged(places.map((at, i) => pore(`o${i}`, { alongMm: [at, at] })));

describe("a verdict on counted patches", () => {
  it("never rejects what some placing of the pores meets, never accepts what some placing fails", () => {
    const seen = { reject: 0, accept: 0, "cannot-say": 0 };
    fc.assert(
      fc.property(fc.array(patchArb, { minLength: 1, maxLength: 2 }), (patches) => {
        const { verdict } = asPatches(patches);
        seen[verdict] += 1;
        const placed = [0, 1, 2, 3].map((seed) => asPores(placing(patches, seed)).verdict);
        if (verdict === "reject") expect(placed).not.toContain("accept");
        if (verdict === "accept") expect(placed).not.toContain("reject");
      }),
      { numRuns: inDepth(60, 600), seed: 11 },
    );
    // The law says nothing where one word is never given.
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(2);
  });

  it("says what it was before: all of a patch of 250 mm is not in one window of 100 mm", () => {
    expect(asPatches([{ from: 0, to: 250, pores: 6 }]).verdict).toBe("cannot-say");
    expect(asPatches([{ from: 0, to: 250, pores: 13 }]).verdict).toBe("reject");
    expect(asPatches([{ from: 0, to: 250, pores: LIMIT }]).verdict).toBe("accept");
    expect(asPatches([{ from: 0, to: 90, pores: 5 }]).verdict).toBe("reject");
  });
});
