import { describe, expect, it } from "vitest";
import { listCriteria, ShopCriteriaSchema } from "@/lib/accept";
import { answerCase, shopSetAsked } from "@/lib/case";

/** Invented: undercut up to half a millimetre, and a stricter set of the same name and version. */
const shop = (limit: number) =>
  ShopCriteriaSchema.parse({
    id: "shop-harrow",
    title: "Harrow Basin",
    version: 2,
    author: "W-01",
    rows: [{ id: "a", title: "Undercut", imperfections: ["undercut"], quantity: "depth", limit }],
  });
const asked = (more: object = {}) => ({
  criteriaId: "shop-harrow@2",
  weld: { kind: "butt", thicknessMm: 10 },
  observations: [{ id: "u1", imperfection: "undercut", depthMm: 0.4 }],
  ...more,
});
const verdict = (json: unknown, at: ReturnType<typeof shop> | null) => {
  const answer = answerCase("judge", json, { shop: at });
  return answer.ok ? answer.value.verdict : answer.lines;
};

describe("judging by the shop's own limits", () => {
  it("takes those at hand, and before them those that the case carries", () => {
    expect(verdict(asked(), shop(0.5))).toBe("accept");
    expect(verdict(asked(), shop(0.3))).toBe("reject");
    expect(verdict(asked({ shop: shop(0.3) }), shop(0.5))).toBe("reject");
    expect(verdict(asked(), null)).toEqual([
      'criteriaId: There is no criteria set "shop-harrow@2". Choose one from the list.',
    ]);
  });

  it("asks for them only where the case names a version and carries none", () => {
    expect(shopSetAsked(asked())).toBe("shop-harrow@2");
    expect(shopSetAsked(asked({ shop: shop(0.5) }))).toBeNull();
    for (const criteriaId of ["iso-5817-c", "iso-5817-c@2023", "shop-harrow", 7, null])
      expect(shopSetAsked(asked({ criteriaId }))).toBeNull();
    for (const json of [null, 7, "shop-harrow@2", []]) expect(shopSetAsked(json)).toBeNull();
  });
});

describe("a setting", () => {
  it("of any set is no stranger", () => {
    for (const { id } of listCriteria().flatMap(({ settings }) => settings)) {
      const said = verdict(asked({ settings: { [id]: "no such choice" } }), shop(0.5));
      expect(JSON.stringify(said)).not.toContain("No set has");
    }
  });
});
