import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { certainties, certaintyOf } from "@/lib/diagnose/certainty";
import { runGrid } from "../../cases/diagnose/left-out";
import { weightGrid } from "../../cases/diagnose/weight-grid";
import { brokenPromises } from "../../cases/reliability";
import { scenarios } from "../../cases/scenarios/scenarios";
import { publishedCases, toldAtPresent, toldOutOfFold } from "../../cases/told";
import { inDepth } from "../../setup/in-depth";

describe("the words for how likely", () => {
  const told = toldAtPresent(scenarios);

  it("keep what they promise on the published cases and the scenarios looked at", () => {
    expect(brokenPromises(told)).toEqual([]);
    for (const { word } of certainties.filter(({ rightAtLeast }) => rightAtLeast > 0))
      expect(
        told.filter(({ probability }) => certaintyOf(probability) === word).length,
        word,
      ).toBeGreaterThan(9);
  });

  it("keep it under weights fitted on other cases only", () => {
    // Every ninth of the weights, the present ones first; all of them in the deep run.
    const grid = weightGrid().filter((_, i) => i % inDepth(9, 1) === 0);
    expect(brokenPromises(toldOutOfFold(runGrid(publishedCases, grid), scenarios))).toEqual([]);
  });

  it("would be caught breaking their word", () => {
    // Every second of the right ones wrong.
    const worse = told.map(({ probability, right }, i) => ({ probability, right: right && i % 2 === 0 }));
    expect(brokenPromises(worse)).toEqual(["very likely", "likely", "leaning"]);
    // The same first causes, each said to be a certainty: as sure as that they are not right.
    const least = certainties[0].rightAtLeast;
    const boasting = told.map((_, i) => ({ probability: 1, right: i % 10 < 10 * least - 1 }));
    expect(brokenPromises(boasting)).toEqual(["very likely"]);
  });

  it("grow surer with the probability, and say nothing of what is no number", () => {
    const order = certainties.map(({ word }) => word).toReversed();
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(unit, unit, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((p) => order.indexOf(certaintyOf(p)));
        return low! <= high!;
      }),
      { seed: 26 },
    );
    expect(certaintyOf(NaN)).toBe("open");
    expect(certainties.map(({ from }) => certaintyOf(from))).toEqual(certainties.map(({ word }) => word));
    expect(certainties.map(({ from }) => certaintyOf(from - 1e-9)).slice(0, 3)).toEqual([
      "likely",
      "leaning",
      "open",
    ]);
  });
});
