import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { edgeField } from "@/lib/edge/edge-field";
import { inDepth } from "../../setup/in-depth";
import { anyPatch, painted } from "./pictures";

describe("what a patch says of edges", () => {
  test("is the same where it is brighter by any amount", () => {
    fc.assert(
      fc.property(anyPatch, fc.integer({ min: -90, max: 90 }), ({ patch }, more) => {
        const whole = edgeField({ ...patch, grey: Float32Array.from(patch.grey) });
        const lit = edgeField({ ...patch, grey: Float32Array.from(patch.grey, (grey) => grey + more) });
        for (const [k, share] of whole.strength.entries()) expect(lit.strength[k]).toBeCloseTo(share, 3);
        // A direction is one only where there is a gradient.
        for (const [k, share] of whole.strength.entries())
          if (share > 0.1) {
            expect(lit.alongX[k]).toBeCloseTo(whole.alongX[k]!, 3);
            expect(lit.alongY[k]).toBeCloseTo(whole.alongY[k]!, 3);
          }
      }),
      { seed: 3, numRuns: inDepth(40, 400) },
    );
  });

  test("of an even patch is nothing", () => {
    const { strength, crossing } = edgeField(painted(20, 12, () => 77));
    expect([...strength, ...crossing].every((value) => value === 0)).toBe(true);
  });

  // A closed form: a step smoothed by a Gaussian has its steepest place, and the zero of its second derivative, on the step.
  test("of a step lies on the step, along it", () => {
    const { columns, rows, strength, crossing, alongX, alongY } = edgeField(
      painted(40, 30, (x) => (x < 20 ? 60 : 180)),
    );
    const middle = Math.floor(rows / 2) * columns;
    const line = Array.from({ length: columns }, (_, x) => strength[middle + x]!);
    const hardest = line.indexOf(Math.max(...line));
    expect([19, 20]).toContain(hardest);
    const crossed = Array.from({ length: columns }, (_, x) => x).filter((x) => crossing[middle + x] === 1);
    expect(crossed.length).toBeGreaterThan(0);
    expect(crossed.every((x) => x === 19 || x === 20)).toBe(true);
    expect(Math.abs(alongY[middle + hardest]!)).toBeCloseTo(1, 6);
    expect(alongX[middle + hardest]).toBeCloseTo(0, 6);
  });
});
