import { describe, expect, it } from "vitest";
import cases from "../../cases/diagnose/published.json";
import { score, type PublishedCase } from "../../cases/diagnose/score";

/** Published cases, each with its document beside it in the JSON. The floor is the aim, not the present score. */
describe("published cases", () => {
  const { summary } = score(cases as PublishedCase[]);

  it("are fifty", () => expect(cases).toHaveLength(50));

  it("find the leading cause first in 80 % and among the first three in 95 %", () => {
    expect(summary.tool.top1).toBeGreaterThanOrEqual(0.8);
    expect(summary.tool.top3).toBeGreaterThanOrEqual(0.95);
  });

  it("beat the plain look-up in the same run", () => {
    expect(summary.tool.top1).toBeGreaterThan(summary["look-up in table order"].top1);
    expect(summary.tool.meanRank).toBeLessThan(summary["look-up in table order"].meanRank);
  });
});
