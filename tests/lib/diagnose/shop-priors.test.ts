import { describe, expect, it } from "vitest";
import type { CauseId } from "@/lib/diagnose/cause-ids";
import { confirmedTotal, PUBLISHED_WORTH, shiftedPriors } from "@/lib/diagnose/shop-priors";

const published = new Map<CauseId, number>([
  ["travel-fast", 0.05],
  ["ctwd-long", 0.03],
  ["draft", 0.02],
]);

describe("shiftedPriors", () => {
  it("without counts are the published ones themselves: clearing is the reset", () => {
    expect(shiftedPriors(published, {})).toBe(published);
    expect(shiftedPriors(published, { gap: 5 })).toBe(published);
  });

  it("move the shares by the Dirichlet mean and keep their sum", () => {
    const shifted = shiftedPriors(published, { "ctwd-long": 7, draft: 2 });
    expect(confirmedTotal(published.keys(), { "ctwd-long": 7, draft: 2 })).toBe(9);
    const share = (PUBLISHED_WORTH * 0.3 + 7) / (PUBLISHED_WORTH + 9);
    expect(shifted.get("ctwd-long")).toBeCloseTo(share * 0.1, 12);
    expect([...shifted.values()].reduce((a, b) => a + b, 0)).toBeCloseTo(0.1, 12);
    expect(shifted.get("travel-fast")!).toBeLessThan(0.05);
  });
});
