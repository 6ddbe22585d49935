import { describe, expect, it } from "vitest";
import type { CauseId } from "@/lib/diagnose/cause-ids";
import { causeModel } from "@/lib/diagnose/model";
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

describe("the network of a shop's own cases", () => {
  it("is that of the counts asked with, in whatever turn they are asked with", () => {
    const counts = [{ "ctwd-long": 7 }, { "ctwd-long": 7, draft: 2 }, { "travel-fast": 1 }, {}] as const;
    const prior = (of: (typeof counts)[number], process: "FCAW-G" | null) =>
      Object.fromEntries(causeModel(process, of).priors);
    const first = counts.map((of) => [prior(of, "FCAW-G"), prior(of, null)]);
    expect(new Set(first.map((one) => JSON.stringify(one))).size).toBe(counts.length);
    expect(counts.toReversed().map((of) => [prior(of, "FCAW-G"), prior(of, null)])).toEqual(
      first.toReversed(),
    );
    // Counts that somebody goes on counting in are others.
    const moving: Record<string, number> = { draft: 1 };
    const before = Object.fromEntries(causeModel(null, moving).priors);
    moving["draft"] = 9;
    expect(Object.fromEntries(causeModel(null, moving).priors)).not.toEqual(before);
  });
});
