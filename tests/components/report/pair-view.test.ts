import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOST_TIMES, panPair, rulerSeen, wholePair, zoomPair } from "@/components/report/pair-view";

const share = fc.double({ min: 0, max: 1, noNaN: true });
const step = fc.record({
  factor: fc.double({ min: 0.3, max: 4, noNaN: true }),
  at: fc.record({ x: share, y: fc.double({ min: 0, max: 0.5, noNaN: true }) }),
  by: fc.record({
    x: fc.double({ min: -2, max: 2, noNaN: true }),
    y: fc.double({ min: -2, max: 2, noNaN: true }),
  }),
});
const HEIGHT = 0.5;
const after = (steps: readonly { factor: number; at: typeof wholePair; by: typeof wholePair }[]) =>
  steps.reduce(
    (view, { factor, at, by }) => panPair(zoomPair(view, factor, at, HEIGHT), by, HEIGHT),
    wholePair,
  );

describe("two pictures looked at as one", () => {
  it("law: whatever hands do, the pane stays covered and nothing is larger than the most", () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const { k, x, y } = after(steps as never);
        expect(k).toBeGreaterThanOrEqual(1);
        expect(k).toBeLessThanOrEqual(MOST_TIMES);
        for (const [shift, size] of [
          [x, 1],
          [y, HEIGHT],
        ] as const) {
          expect(shift).toBeLessThanOrEqual(1e-12);
          expect(shift + size * k).toBeGreaterThanOrEqual(size - 1e-9);
        }
      }),
      { seed: 4, numRuns: 100 },
    );
  });

  it("law: what lies under the hand stays there while it zooms in", () => {
    fc.assert(
      fc.property(share, fc.double({ min: 0, max: HEIGHT, noNaN: true }), (x, y) => {
        const view = zoomPair(zoomPair(wholePair, 2, { x, y }, HEIGHT), 1.7, { x, y }, HEIGHT);
        expect((x - view.x) / view.k).toBeCloseTo(x, 9);
        expect((y - view.y) / view.k).toBeCloseTo(y, 9);
      }),
      { seed: 2, numRuns: 50 },
    );
  });

  it("reads the ruler where the pane ends", () => {
    expect(rulerSeen({ from: -10, to: 90 }, wholePair)).toEqual({ from: -10, to: 90 });
    const half = rulerSeen({ from: 0, to: 100 }, { k: 2, x: -0.5, y: 0 });
    expect(half).toEqual({ from: 25, to: 75 });
  });
});
