import { describe, expect, test } from "vitest";
import { correctionTexts, correctScale } from "@/components/bead/scale-correction";
import type { Scale } from "@/lib/marks";
import { metric } from "@/lib/units";

const twoPoints: Scale = { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 500, y: 0 }, lengthMm: 50 };
const none = { bar: "", height: "", below: false, spread: "" };
const correct = (texts: Partial<typeof none>, scale = twoPoints) =>
  correctScale(scale, { ...none, ...texts }, metric);

describe("correcting a scale", () => {
  test("nothing measured leaves it as it is, and takes an older correction off", () => {
    expect(correct({})).toEqual({ scale: twoPoints });
    expect(correct({}, { ...twoPoints, surface: { aboveMm: 3, plusMinusMm: null } })).toEqual({
      scale: twoPoints,
    });
  });

  test("a height has a side; give or take alone is one about nought", () => {
    expect(correct({ height: "4", below: true })).toEqual({
      scale: { ...twoPoints, surface: { aboveMm: -4, plusMinusMm: null } },
    });
    expect(correct({ spread: "1.5" })).toEqual({
      scale: { ...twoPoints, surface: { aboveMm: 0, plusMinusMm: 1.5 } },
    });
  });

  test("what cannot be meant is asked about", () => {
    expect(correct({ height: "high" })).toMatchObject({ errors: { height: expect.any(String) } });
    expect(correct({ height: "150" })).toMatchObject({
      errors: { height: expect.stringContaining("100 mm") },
    });
    expect(correct({ bar: "80" })).toMatchObject({ errors: { bar: expect.stringContaining("10 %") } });
  });

  test("what is written out is read back the same", () => {
    const scale = { ...twoPoints, surface: { aboveMm: -2.5, plusMinusMm: 0.5 } };
    expect(correctScale(scale, correctionTexts(scale, metric), metric)).toEqual({ scale });
  });
});
