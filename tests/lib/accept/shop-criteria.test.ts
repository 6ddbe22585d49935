import { describe, expect, it } from "vitest";
import {
  judge,
  JudgeInputSchema,
  listCriteria,
  shopQuantities,
  ShopCriteriaSchema,
  shopSetId,
} from "@/lib/accept";
import { quantity } from "./arbitraries";

/** An invented exercise of an invented shop. */
const shop = ShopCriteriaSchema.parse({
  id: "shop-stringers-1",
  title: "Stringers, first week",
  version: 3,
  author: "Instructor",
  rows: [
    {
      id: "crack",
      title: "No cracks",
      imperfections: ["crater-crack"],
      quantity: "none-allowed",
      limit: null,
    },
    { id: "undercut", title: "Undercut", imperfections: ["undercut"], quantity: "depth", limit: 0.8 },
    {
      id: "pores",
      title: "Pores per 50 mm",
      imperfections: ["surface-porosity"],
      quantity: "count",
      limit: 2,
      windowMm: 50,
    },
    { id: "width", title: "Width", imperfections: [], quantity: "width", limit: 9 },
  ],
});
const given = (more: object) =>
  JudgeInputSchema.parse({
    criteriaId: shopSetId(shop),
    shop,
    weld: { kind: "surfacing", lengthMm: 150 },
    beadReadings: { width: quantity(8) },
    lookedFor: ["crater-crack", "undercut", "surface-porosity"],
    ...more,
  });

describe("the shop's own criteria", () => {
  it("judge like any other set and carry their version", () => {
    const result = judge(given({}));
    expect(result).toMatchObject({
      ok: true,
      value: { verdict: "accept", edition: "version 3 (the shop's own)" },
    });
  });

  it("count in the worst window", () => {
    const pores = (places: number[]) =>
      places.map((at, i) => ({ id: `p${i}`, imperfection: "surface-porosity", alongMm: [at, at] }));
    expect(judge(given({ observations: pores([5, 40, 70]) }))).toMatchObject({
      value: { verdict: "accept" },
    });
    expect(judge(given({ observations: pores([5, 40, 55]) }))).toMatchObject({
      value: { verdict: "reject" },
    });
  });

  it("are listed last beside the codes", () => {
    expect(listCriteria([shop]).at(-1)).toMatchObject({
      id: "shop-stringers-1@3",
      shop: { key: "shop-stringers-1", version: 3 },
      title: shop.title,
    });
  });

  it.each([
    ["limit", { quantity: "depth", limit: null }],
    ["windowMm", { quantity: "depth", limit: 1, windowMm: 25 }],
    ["imperfections", { quantity: "depth", limit: 1, imperfections: [] }],
    ["limit", { quantity: "none-allowed", limit: 1 }],
  ])("are refused when %s does not fit", (path, row) => {
    const bad = { ...shop, rows: [{ id: "x", title: "X", imperfections: ["undercut"], ...row }] };
    const parsed = ShopCriteriaSchema.safeParse(bad);
    expect(parsed.error?.issues.map((one) => one.path.join("."))).toContain(`rows.0.${path}`);
  });

  it("are refused with one id twice", () => {
    const twice = { ...shop, rows: [shop.rows[0], shop.rows[0]] };
    expect(ShopCriteriaSchema.safeParse(twice).error?.issues[0]?.message).toBe("id-twice");
  });

  it("know how to judge every quantity they offer", () => {
    for (const name of shopQuantities) {
      const rows = [
        {
          id: "x",
          title: "X",
          imperfections: ["undercut"],
          quantity: name,
          limit: name === "none-allowed" ? null : 1,
        },
      ];
      expect(judge(given({ shop: { ...shop, rows } })).ok).toBe(true);
    }
  });
});
