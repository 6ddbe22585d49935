import fc from "fast-check";
import type { Point } from "@/lib/geometry";

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
export const anyPoint: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });

export interface Motion {
  readonly angle: number;
  readonly shift: Point;
  readonly mirror: boolean;
  readonly scale: number;
}

export const anyMotion: fc.Arbitrary<Motion> = fc.record({
  angle: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  shift: anyPoint,
  mirror: fc.boolean(),
  scale: fc.double({ min: 0.2, max: 7, noNaN: true }),
});

export function moved({ x, y }: Point, { angle, shift, mirror, scale }: Motion): Point {
  const fx = mirror ? -x : x;
  return {
    x: scale * (Math.cos(angle) * fx - Math.sin(angle) * y) + shift.x,
    y: scale * (Math.sin(angle) * fx + Math.cos(angle) * y) + shift.y,
  };
}

/** Star-shaped around the origin, so that it never crosses itself. */
export const simpleOutline: fc.Arbitrary<readonly Point[]> = fc
  .array(fc.double({ min: 5, max: 60, noNaN: true }), { minLength: 3, maxLength: 20 })
  .map((radii) =>
    radii.map((r, i) => {
      const t = (2 * Math.PI * i) / radii.length;
      return { x: r * Math.cos(t), y: r * Math.sin(t) };
    }),
  );
