import { describe, expect, it } from "vitest";
import {
  judge,
  JudgeInputSchema,
  listCriteria,
  ShopCriteriaSchema,
  shopRowsFrom,
  shopSetId,
} from "@/lib/accept";
import { quantity } from "./arbitraries";

const copyOf = (criteriaId: string, thicknessMm = 10) =>
  shopRowsFrom(criteriaId, { kind: "fillet", thicknessMm })!;
const asSet = (rows: unknown) =>
  ShopCriteriaSchema.parse({ id: "shop-copy", title: "Copy", version: 1, author: "Instructor", rows });

describe("a copy of a built-in set", () => {
  it.each(listCriteria().map(({ id }) => id))(
    "%s is rows a shop can save, or says what was left out",
    (id) => {
      const { rows, leftOut } = copyOf(id);
      expect(rows.length + leftOut.length).toBeGreaterThan(0);
      if (rows.length > 0) expect(asSet(rows).rows).toEqual(rows);
    },
  );

  it("reads as the code does for that thickness: each size just beyond and just within its limit", () => {
    let compared = 0;
    for (const { id } of listCriteria()) {
      const set = copyOf(id).rows;
      for (const row of set) {
        if (!["depth", "height", "length"].includes(row.quantity) || !row.limit) continue;
        const one = (value: number, criteria: object) =>
          judge(
            JudgeInputSchema.parse({
              weld: { kind: "fillet", thicknessMm: 10, lengthMm: 200 },
              observations: [
                { id: "m1", imperfection: row.imperfections[0], [`${row.quantity}Mm`]: quantity(value) },
              ],
              ...criteria,
            }),
          );
        const failed = (value: number, criteria: object, ruleId: RegExp) => {
          const result = one(value, criteria);
          return result.ok && result.value.rows.some((r) => r.result === "fails" && ruleId.test(r.title));
        };
        const shop = asSet([row]);
        const title = new RegExp(`^${row.title.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`);
        for (const value of [row.limit * 1.05, row.limit * 0.95]) {
          expect(
            failed(value, { criteriaId: shopSetId(shop), shop }, title),
            `${id} ${row.title} ${value}`,
          ).toBe(failed(value, { criteriaId: id }, title));
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(10);
  });

  it("says of an unknown set that there is none", () => {
    expect(shopRowsFrom("none", { kind: "butt", thicknessMm: 5 })).toBeNull();
  });
});
