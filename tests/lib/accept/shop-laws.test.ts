import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  judge,
  JudgeInputSchema,
  shopQuantities,
  ShopCriteriaSchema,
  shopSetId,
  type ShopCriteria,
} from "@/lib/accept";
import { quantity } from "./arbitraries";
import { inDepth } from "../../setup/in-depth";

const seen = ["undercut", "surface-porosity", "overlap"] as const;
const hasTotal = ["total-length", "total-diameter", "count"];

const arbRow = fc
  .record({
    imperfections: fc.uniqueArray(fc.constantFrom(...seen), { minLength: 1 }),
    quantity: fc.constantFrom(...shopQuantities),
    limit: fc.double({ min: 0, max: 12, noNaN: true }),
    windowMm: fc.option(fc.double({ min: 5, max: 200, noNaN: true })),
    ofThickness: fc.option(fc.double({ min: 0.01, max: 1, noNaN: true })),
  })
  .map(({ imperfections, quantity: name, limit, windowMm, ofThickness }) => ({
    title: name,
    imperfections,
    quantity: name,
    limit: name === "none-allowed" ? null : limit,
    windowMm: hasTotal.includes(name) ? windowMm : null,
    ofThickness: name === "none-allowed" || name === "count" ? null : ofThickness,
  }));
const arbSet = fc.array(arbRow, { minLength: 1, maxLength: 4 }).map((rows) =>
  ShopCriteriaSchema.parse({
    id: "shop-law",
    title: "Law",
    version: 1,
    author: "Instructor",
    rows: rows.map((row, i) => ({ ...row, id: `row-${i + 1}` })),
  }),
);

const size = (max: number) => fc.option(fc.double({ min: 0, max, noNaN: true }).map((v) => quantity(v)));
const arbCase = fc.record({
  weld: fc.record({
    kind: fc.constantFrom("fillet" as const, "butt" as const),
    thicknessMm: fc.option(fc.double({ min: 1, max: 40, noNaN: true })),
    legMm: fc.option(fc.constant(6)),
    lengthMm: fc.constant(250),
  }),
  observations: fc
    .array(
      fc.record({
        imperfection: fc.constantFrom(...seen),
        at: fc.double({ min: 0, max: 200, noNaN: true }),
        depthMm: size(3),
        heightMm: size(3),
        diameterMm: size(6),
        lengthMm: size(40),
      }),
      { maxLength: 5 },
    )
    .map((list) =>
      list.map(({ at, ...one }, i) => ({
        ...one,
        id: `m${i}`,
        alongMm: [at, at + (one.lengthMm?.value ?? 0)],
      })),
    ),
  beadReadings: fc.record({ width: size(12), leg1: size(10), leg2: size(10), convexity: size(4) }),
  lookedFor: fc.constant([...seen]),
});

const judged = (shop: ShopCriteria, given: object): string => {
  const result = judge(JudgeInputSchema.parse({ ...given, criteriaId: shopSetId(shop), shop }));
  return result.ok ? result.value.verdict : "not judged";
};

/** The same rows with every limit times `by` (below 1: tighter). */
const scaled = (shop: ShopCriteria, by: number): ShopCriteria => ({
  ...shop,
  version: 2,
  rows: shop.rows.map((row) => ({
    ...row,
    limit: row.limit === null ? null : row.limit * by,
    ofThickness: row.ofThickness === null ? null : row.ofThickness * by,
  })),
});

describe("the shop's own limits", () => {
  it("never accept when tighter what they reject when looser", () => {
    const both = new Set<string>();
    fc.assert(
      fc.property(arbSet, arbCase, fc.double({ min: 0.05, max: 1, noNaN: true }), (looser, given, by) => {
        const [loose, tight] = [judged(looser, given), judged(scaled(looser, by), given)];
        both.add(loose).add(tight);
        expect([loose, tight]).not.toEqual(["reject", "accept"]);
        // What the tighter ones accept the looser ones do not reject, and one that is judged is judged by both.
        expect(loose === "not judged").toBe(tight === "not judged");
      }),
      { numRuns: inDepth(100, 400) },
    );
    expect(both).toEqual(new Set(["accept", "reject", "cannot-say"]));
  });

  it("take the smaller of a limit and a part of the thickness, whatever the thickness", () => {
    const set = (row: object) =>
      ShopCriteriaSchema.parse({
        id: "shop-both",
        title: "Both",
        version: 1,
        author: "Instructor",
        rows: [{ id: "u", title: "Undercut", imperfections: ["undercut"], quantity: "depth", ...row }],
      });
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (thicknessMm, depth) => {
          const given = {
            weld: { kind: "fillet", thicknessMm },
            observations: [{ id: "m1", imperfection: "undercut", depthMm: quantity(depth) }],
          };
          const alone = [set({ limit: 0.5 }), set({ limit: null, ofThickness: 0.1 })].map((one) =>
            judged(one, given),
          );
          const together = judged(set({ limit: 0.5, ofThickness: 0.1 }), given);
          expect(together).toBe(alone.includes("reject") ? "reject" : "accept");
        },
      ),
    );
  });

  it("judge by the version they are named with, and by no other", () => {
    const first = ShopCriteriaSchema.parse({
      id: "shop-v",
      title: "V",
      version: 1,
      author: "Instructor",
      rows: [{ id: "w", title: "Width", imperfections: [], quantity: "width", limit: 9 }],
    });
    const given = { weld: { kind: "fillet" }, beadReadings: { width: quantity(8) }, lookedFor: [] };
    expect(judged(first, given)).toBe("accept");
    expect(judged({ ...scaled(first, 0.5), version: 2 }, given)).toBe("reject");
    const other = judge(JudgeInputSchema.parse({ ...given, criteriaId: "shop-v@2", shop: first }));
    expect(other).toMatchObject({
      ok: false,
      issues: [{ code: "unknown-criteria", data: { id: "shop-v@2" } }],
    });
  });
});
