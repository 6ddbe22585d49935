import type { Homography, Point } from "@/lib/geometry";
import { ID1 } from "./card-quads";
import { brightness, type Plane } from "./plane";

/** How many of the corners are round: along the line to the corner the light turns at the arc, not where the sides would meet. */
export function roundCorners(plane: Plane, map: Homography<"strip", "frame">): number {
  const at = (x: number, y: number): Point<"frame"> => {
    const w = map[6] * x + map[7] * y + map[8];
    return { x: (map[0] * x + map[1] * y + map[2]) / w, y: (map[3] * x + map[4] * y + map[5]) / w };
  };
  // From the corner inwards the arc is met after (root two less one) radii.
  const arc = (Math.SQRT2 - 1) * ID1.radiusMm;
  return [0, 1, 2, 3].filter((i) => {
    const [x, y] = [i === 0 || i === 3 ? 0 : ID1.longMm, i < 2 ? 0 : ID1.shortMm];
    const [sx, sy] = [x === 0 ? Math.SQRT1_2 : -Math.SQRT1_2, y === 0 ? Math.SQRT1_2 : -Math.SQRT1_2];
    let [best, most] = [NaN, 0];
    for (let d = -2.5; d <= 4.5; d += 0.1) {
      const [p, q] = [
        at(x + sx * (d - 0.15), y + sy * (d - 0.15)),
        at(x + sx * (d + 0.15), y + sy * (d + 0.15)),
      ];
      const step = Math.abs(brightness(plane, p.x, p.y) - brightness(plane, q.x, q.y));
      if (step > most) [best, most] = [d, step];
    }
    return Math.abs(best - arc) < 0.45;
  }).length;
}
