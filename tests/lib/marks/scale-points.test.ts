import fc from "fast-check";
import { expect, test } from "vitest";
import { mapScalePoints, scalePoints, ScaleSchema } from "@/lib/marks";
import { arbScale } from "../../arbitraries";

test("changing each point changes what is listed, in the same order, and stays a scale", () => {
  fc.assert(
    fc.property(arbScale, (scale) => {
      const change = (p: { x: number; y: number }, i: number) => ({ x: p.x + 3 + i, y: p.y - 7 });
      const next = mapScalePoints(scale, change);
      const places = (points: readonly { x: number; y: number }[]) => points.map(({ x, y }) => ({ x, y }));
      expect(places(scalePoints(next))).toEqual(places(scalePoints(scale)).map(change));
      expect(ScaleSchema.safeParse(next).data).toEqual(next);
    }),
  );
});

test("changing nothing gives an equal scale", () => {
  fc.assert(
    fc.property(arbScale, (scale) => {
      expect(mapScalePoints(scale, (p) => ({ x: p.x, y: p.y }))).toEqual(scale);
    }),
  );
});
