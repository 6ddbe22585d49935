import { describe, expect, it } from "vitest";
import {
  judge,
  JudgeInputSchema,
  listCriteria,
  ShopCriteriaSchema,
  shopRowsFrom,
  shopSetId,
  weldKinds,
} from "@/lib/accept";
import { criteriaSets } from "@/lib/accept/criteria";
import { quantity } from "./arbitraries";

const copyOf = (criteriaId: string, thicknessMm = 10) =>
  shopRowsFrom(criteriaId, { kind: "fillet", thicknessMm })!;
const asSet = (rows: unknown) =>
  ShopCriteriaSchema.parse({ id: "shop-copy", title: "Copy", version: 1, author: "Instructor", rows });

describe("a copy of a built-in set", () => {
  it.each(listCriteria().map(({ id }) => id))(
    "%s is rows a shop can save, or says what was left out",
    (id) => {
      const { rows } = copyOf(id);
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

  it.each(criteriaSets.map(({ id }) => id))(
    "%s is carried or named clause by clause, whatever the weld",
    (id) => {
      const name = ({ clause, title }: { clause: string; title: string }) => `${clause} ${title}`;
      const all = criteriaSets.find((set) => set.id === id)!.criteria.map(name);
      for (const kind of weldKinds)
        for (const thicknessMm of [1, 3, 6, 20, 80]) {
          const { rows, notCarried } = shopRowsFrom(id, { kind, thicknessMm })!;
          const carried = rows.map(({ carries }) => name(carries!));
          const named = notCarried.clauses.map(name);
          expect(new Set([...carried, ...named]), `${kind} ${thicknessMm}`).toEqual(new Set(all));
          // A clause of which a part was copied may stand on both sides; one with no row never goes unnamed.
          expect(all.filter((one) => !carried.includes(one) && !named.includes(one))).toEqual([]);
        }
    },
  );

  it("names in every verdict what it did not carry, and an older set claims nothing", () => {
    let named = 0;
    for (const { id } of criteriaSets) {
      const { rows, notCarried } = copyOf(id);
      if (rows.length === 0) continue;
      const verdictBy = (shop: ReturnType<typeof asSet>) => {
        const answer = judge(
          JudgeInputSchema.parse({
            criteriaId: shopSetId(shop),
            shop,
            weld: { kind: "fillet", thicknessMm: 10 },
          }),
        );
        return answer.ok ? answer.value : null;
      };
      const old = asSet(rows);
      const kept = ShopCriteriaSchema.parse(JSON.parse(JSON.stringify({ ...old, notCarried })));
      expect(verdictBy(kept)?.notCarried, id).toEqual(notCarried);
      expect(verdictBy(old)?.notCarried, id).toBeNull();
      expect("notCarried" in JSON.parse(JSON.stringify(old))).toBe(false);
      named += notCarried.clauses.length;
    }
    expect(named).toBeGreaterThan(20);
  });

  it("names the throat of a copied ISO 5817 C (no row can say it follows the throat asked for)", () => {
    const { notCarried } = copyOf("iso-5817-c");
    // ISO 5817:2014, table 1: 1.20 is the insufficient throat, 1.16 the unequal legs, 1.3 the surface pore.
    const clauses = notCarried.clauses.map(({ clause }) => clause);
    for (const number of ["1.20", "1.16", "1.3"]) expect(clauses).toContain(`Table 1, ${number}`);
  });

  it("says of an unknown set that there is none", () => {
    expect(shopRowsFrom("none", { kind: "butt", thicknessMm: 5 })).toBeNull();
  });
});
