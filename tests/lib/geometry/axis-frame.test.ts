import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyHomography, axisFrame, distance, type Point } from "@/lib/geometry";

const coordinate = fc.integer({ min: -2000, max: 2000 });
const point = fc.record({ x: coordinate, y: coordinate });

describe("the frame along a line", () => {
  it("lays its start at the origin and its end on positive x, and keeps every distance and the sense of turning", () => {
    fc.assert(
      fc.property(point, point, point, point, (a, b, p, q) => {
        fc.pre(distance(a, b) > 1);
        const frame = axisFrame([a, b])!;
        const to = (one: Point) => applyHomography(frame, one);
        expect(distance(to(a), { x: 0, y: 0 })).toBeLessThan(1e-9);
        expect(distance(to(b), { x: distance(a, b), y: 0 })).toBeLessThan(1e-9);
        expect(distance(to(p), to(q))).toBeCloseTo(distance(p, q), 6);
        const [pa, pb, pp] = [to(a), to(b), to(p)];
        const turning = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
        expect((pb.x - pa.x) * (pp.y - pa.y) - (pb.y - pa.y) * (pp.x - pa.x)).toBeCloseTo(turning, 3);
      }),
    );
  });

  it("has none for a line without direction", () => {
    expect(axisFrame([])).toBeNull();
    expect(axisFrame([{ x: 3, y: 4 }])).toBeNull();
    expect(
      axisFrame([
        { x: 3, y: 4 },
        { x: 3, y: 4 },
      ]),
    ).toBeNull();
    // Around a pipe and back to where it began.
    const round = Array.from({ length: 41 }, (_, i) => ({
      x: 100 * Math.cos((i / 40) * 2 * Math.PI),
      y: 100 * Math.sin((i / 40) * 2 * Math.PI),
    }));
    expect(axisFrame(round)).toBeNull();
    expect(axisFrame(round.slice(0, 20))).not.toBeNull();
  });
});
