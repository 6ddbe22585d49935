import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  crossesItself,
  distance,
  fitEllipse,
  fitLine,
  greatestExtent,
  pointAlong,
  polygonArea,
  polylineLength,
  projectOnPolyline,
  signedArea,
  type Point,
} from "@/lib/geometry";
import { anyMotion, anyPoint, moved, simpleOutline } from "./arbitraries";

const runs = { numRuns: 300, seed: 42 };
/** Doubles at up to 4000 with sums of some dozen terms: 1e-9 relative leaves a margin of a thousand. */
const close = (a: number, b: number): void =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(a), Math.abs(b)) + 1e-7);

describe("geometry under motions", () => {
  it("lengths scale by k, areas by k squared, whatever shift, turn or mirror", () => {
    fc.assert(
      fc.property(simpleOutline, anyMotion, (ring, motion) => {
        const image = ring.map((point) => moved(point, motion));
        const k = motion.scale;
        close(polylineLength(image), k * polylineLength(ring));
        close(greatestExtent(image), k * greatestExtent(ring));
        close(polygonArea(image), k * k * polygonArea(ring));
        close(fitLine(image)!.rms, k * fitLine(ring)!.rms);
      }),
      runs,
    );
  });

  it("area does not change with the first corner or the direction, only its sign", () => {
    fc.assert(
      fc.property(simpleOutline, (ring) => {
        close(signedArea([...ring].reverse()), -signedArea(ring));
        close(polygonArea([...ring.slice(1), ring[0]!]), polygonArea(ring));
      }),
      runs,
    );
  });

  it("a star-shaped outline never crosses itself; swapping two of its corners makes most do so", () => {
    let crossed = 0;
    fc.assert(
      fc.property(simpleOutline, (ring) => {
        expect(crossesItself(ring)).toBe(false);
        if (ring.length < 6) return;
        const swapped = [...ring];
        [swapped[1], swapped[3]] = [swapped[3]!, swapped[1]!];
        if (crossesItself(swapped)) crossed++;
      }),
      runs,
    );
    expect(crossed).toBeGreaterThan(100);
  });

  it("no point of the polyline is nearer than the foot of the projection", () => {
    fc.assert(
      fc.property(fc.array(anyPoint, { minLength: 2, maxLength: 8 }), anyPoint, (line, point) => {
        const projection = projectOnPolyline(point, line)!;
        close(Math.abs(projection.offset), distance(point, projection.foot));
        const whole = polylineLength(line);
        for (let i = 0; i <= 40; i++) {
          const on = pointAlong(line, (whole * i) / 40)!;
          expect(distance(point, on)).toBeGreaterThanOrEqual(Math.abs(projection.offset) - 1e-7);
        }
      }),
      runs,
    );
  });

  it("an ellipse is found again from exact points on it", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 200, noNaN: true }),
        fc.double({ min: 0.3, max: 0.97, noNaN: true }),
        anyMotion,
        (a, ratio, motion) => {
          const rim: Point[] = Array.from({ length: 9 }, (_, i) =>
            moved({ x: a * Math.cos(0.71 * i), y: a * ratio * Math.sin(0.71 * i) }, motion),
          );
          const found = fitEllipse(rim)!;
          // The direct fit solves a 3 by 3 eigenproblem of fourth moments: six digits remain.
          expect(Math.abs(found.semiMajor / (motion.scale * a) - 1)).toBeLessThan(1e-5);
          expect(Math.abs(found.semiMinor / (motion.scale * a * ratio) - 1)).toBeLessThan(1e-5);
          expect(distance(found.centre, motion.shift)).toBeLessThan(1e-4 * motion.scale * a);
        },
      ),
      runs,
    );
  });
});
