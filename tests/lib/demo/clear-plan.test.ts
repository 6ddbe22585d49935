import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planClearing, type ShopRows } from "@/lib/demo/clear-plan";

const ids = ["bead:a", "bead:b", "person:c", "job:d", "inspection:e", "hand-in:f", "group:g"] as const;
const some = fc.subarray([...ids]);
const rows: fc.Arbitrary<ShopRows> = fc
  .record({
    demo: some,
    touched: some,
    needs: fc.array(fc.tuple(fc.constantFrom(...ids), some), { maxLength: 7 }),
    signed: fc.array(fc.record({ inspection: fc.constant("inspection:e"), names: some }), { maxLength: 1 }),
  })
  .map(({ demo, touched, needs, signed }) => ({
    demo: new Set(demo),
    touched: new Set(touched),
    needs: new Map(needs),
    signed: signed.map(({ inspection, names }) => ({
      inspection,
      content: JSON.stringify(names.map((name) => name.split(":")[1])),
    })),
  }));

describe("what of the demo goes", () => {
  it("is the demo's, was touched by nobody, is named in no signed text and needed by nothing that stays", () => {
    fc.assert(
      fc.property(rows, (shop) => {
        const { goes, stays } = planClearing(shop);
        expect(new Set([...goes, ...stays])).toEqual(shop.demo);
        for (const subject of goes) {
          expect(stays.has(subject)).toBe(false);
          expect(shop.touched.has(subject)).toBe(false);
          for (const { inspection, content } of shop.signed) {
            expect(subject).not.toBe(inspection);
            expect(content).not.toContain(`"${subject.split(":")[1]}"`);
          }
          for (const [other, needed] of shop.needs)
            if (needed.includes(subject)) expect(goes.has(other)).toBe(true);
        }
      }),
      { seed: 20261126, numRuns: 500 },
    );
  });

  it("is everything where nobody did anything", () => {
    const untouched = rows.map((shop) => ({
      ...shop,
      demo: new Set(ids),
      touched: new Set<string>(),
      signed: [],
    }));
    fc.assert(
      fc.property(untouched, (shop) => {
        expect(planClearing(shop).goes).toEqual(new Set(ids));
      }),
      { seed: 20261126 },
    );
  });
});
