import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { peaksOf, withoutDoubles } from "@/lib/trace/spot-peaks";
import { TILE } from "@/lib/trace/spot-tiles";
import { inDepth } from "../../setup/in-depth";
import { answerWith } from "./drawn-spots";

const core = fc.double({ min: TILE.edge + 3, max: TILE.side - TILE.edge - 3, noNaN: true });
const kind = fc.constantFrom("hole" as const, "spatter" as const);

describe("tops of an answer", () => {
  it("are where they were put to a part of a cell, with their kind and radius", () => {
    fc.assert(
      fc.property(kind, core, core, fc.double({ min: 3, max: 30, noNaN: true }), (what, x, y, radius) => {
        const peaks = peaksOf(answerWith([{ kind: what, x, y, radius }]), 0.3);
        expect(peaks).toHaveLength(1);
        const [peak] = peaks;
        expect(peak!.kind).toBe(what);
        expect(Math.hypot(peak!.x - x, peak!.y - y)).toBeLessThan(0.1);
        expect(peak!.radius).toBeCloseTo(radius, 4);
      }),
      { seed: 5, numRuns: inDepth(40, 1000) },
    );
  });

  it("are left to the next tile at the edge, and are one on a level top", () => {
    expect(peaksOf(answerWith([{ kind: "hole", x: TILE.edge - 6, y: 100, radius: 5 }]), 0.3)).toEqual([]);
    // Between two cells both are as high.
    expect(peaksOf(answerWith([{ kind: "hole", x: 100, y: 101, radius: 5 }]), 0.3)).toHaveLength(1);
  });

  it("that lie on one another are the surest alone, whatever their order", () => {
    const sure = { x: 10, y: 10, radius: 6, sure: 0.9 };
    const doubt = { x: 12, y: 11, radius: 5, sure: 0.4 };
    const apart = { x: 18, y: 10, radius: 5, sure: 0.5 };
    expect(withoutDoubles([doubt, apart, sure])).toEqual([sure, apart]);
  });
});
