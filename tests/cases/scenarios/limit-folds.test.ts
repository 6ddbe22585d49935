import { describe, expect, it } from "vitest";
import { adviceLimits } from "@/lib/diagnose/advice/limits";
import { foldLimits, foldOf, limitGrid, spreadOf } from "./limit-folds";
import { scenarios } from "./scenarios";

describe("two folds of the scenarios", () => {
  const sizes = [0, 1].map((fold) => scenarios.filter(({ id }) => foldOf(id) === fold).length);

  it("split about in half", () => {
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(25);
  });

  it("judge each scenario by limits that never saw it", () => {
    // Limits that nothing reaches never propose anything from evidence: they cannot be the better ones.
    const mute = { ...adviceLimits, withMarks: 2, alone: 2 };
    const results = foldLimits(scenarios, [mute, adviceLimits]);
    results.forEach((result, fold) => {
      expect(result.fitted.map(({ id }) => foldOf(id))).toEqual(result.fitted.map(() => fold));
      expect(result.judged).toHaveLength(1);
      expect(new Set(result.judged[0]!.map(({ id }) => foldOf(id)))).toEqual(new Set([1 - fold]));
      expect(result.judged[0]).toHaveLength(sizes[1 - fold]!);
      const silent = foldLimits(scenarios, [mute])[fold]!;
      expect(spreadOf(result).mean).toBeGreaterThan(spreadOf(silent).mean);
    });
  });

  it("judge all limits that do equally well", () => {
    const [result] = foldLimits(scenarios, [adviceLimits, { ...adviceLimits }]);
    expect(result!.judged).toHaveLength(2);
    expect(spreadOf(result!).worst).toBe(spreadOf(result!).best);
  });

  it("search a grid that begins with the present limits", () => {
    const grid = limitGrid();
    expect(grid[0]).toEqual(adviceLimits);
    expect(new Set(grid.map((limits) => JSON.stringify(limits))).size).toBe(grid.length);
  });
});
