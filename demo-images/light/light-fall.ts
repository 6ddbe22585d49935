import { noise2, smoothstep } from "../noise/noise";
import type { LightFall } from "./lamp";

/** Share of the lamps' light that reaches a place of the plan frame, mm, about 1 in the middle of the work. */
export type FallOff = (x: number, y: number) => number;

/**
 * No bench is lit evenly: near lamps fall off across the work, and whoever holds the phone stands in some of the light.
 * Both change over centimetres, so that they bend no edge.
 */
export function createFallOff(fall: LightFall): FallOff {
  const nearest = 1 / (fall.reachMm * fall.reachMm);
  const here = 1 + (fall.xMm * fall.xMm + fall.yMm * fall.yMm) * nearest;
  const [bx, by] = [Math.cos(fall.bodyRad), Math.sin(fall.bodyRad)];
  return (x, y) => {
    const dx = x - fall.xMm;
    const dy = y - fall.yMm;
    const lamp = here / (1 + (dx * dx + dy * dy) * nearest);
    if (fall.bodyShare <= 0) return lamp;
    const into = x * bx + y * by + 9 * noise2(x * 0.011, y * 0.011, 31) - fall.bodyMm;
    return lamp * (1 - fall.bodyShare * smoothstep(-fall.bodySoftMm, fall.bodySoftMm, into));
  };
}
