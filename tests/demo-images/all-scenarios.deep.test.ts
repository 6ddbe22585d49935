import { describe, expect, it } from "vitest";
import { renderScene, renderTruth, scenarioNames } from "@/demo-images";
import { imperfectionIds } from "@/lib/trade";

const small = { megapixels: 0.1, quality: "exact-draft" } as const;

describe("the scenarios together", () => {
  // Set-ups and shapes only: the coarsest picture carries them all.
  const truths = scenarioNames.map((scenario) => renderTruth({ ...small, scenario, seed: 7 }));

  it("have the truth of their pictures", () => {
    for (const scenario of scenarioNames)
      expect(renderScene({ ...small, scenario, seed: 7 }).truth).toEqual(
        truths[scenarioNames.indexOf(scenario)],
      );
  });

  it("show every kind of the vocabulary", () => {
    const shown = new Set(truths.flatMap((truth) => truth.imperfections.map((mark) => mark.kind)));
    expect(imperfectionIds.filter((id) => !shown.has(id))).toEqual([]);
  });

  it("each have a scale object in the scene and toes on both sides of the axis", () => {
    for (const truth of truths) {
      expect(truth.scaleObject, truth.scenario).not.toBeNull();
      expect(truth.weld.leftToePx.length, truth.scenario).toBe(truth.weld.sections.length);
      expect(
        truth.weld.sections.every((section) => section.widthMm > 0),
        truth.scenario,
      ).toBe(true);
    }
  });
});
