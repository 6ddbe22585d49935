import { distance, type Point } from "@/lib/geometry";
import type { TraceStation } from "./types";

/** Where a place lies by the bead, in its widths: off the middle square to it, and past its ends along it. */
export interface BesideBead {
  readonly across: number;
  readonly past: number;
}

/** Holes are looked for between the toes, spatter this far off the middle; both a little past the ends. */
const HOLE_ZONE = { across: 0.52, past: 0.1 } as const;
const SPATTER_ZONE = { across: 1.5, past: 0.5 } as const;

/** Where a place lies by the station that is nearest to it. */
export function besideBead(
  stations: readonly TraceStation[],
  widthPx: number,
): (at: Point<"photo">) => BesideBead {
  const cuts = stations.map(({ upper, lower }) => ({
    middle: { x: (upper.at.x + lower.at.x) / 2, y: (upper.at.y + lower.at.y) / 2 },
    x: lower.at.x - upper.at.x,
    y: lower.at.y - upper.at.y,
    wide: distance(upper.at, lower.at),
  }));
  return (at) => {
    const i = cuts.reduce(
      (best, cut, k) => (distance(at, cut.middle) < distance(at, cuts[best]!.middle) ? k : best),
      0,
    );
    const { middle, x, y, wide } = cuts[i]!;
    const off = { x: at.x - middle.x, y: at.y - middle.y };
    const across = Math.abs((off.x * x + off.y * y) / wide);
    const along = Math.abs((off.x * y - off.y * x) / wide);
    const isEnd = i === 0 || i === cuts.length - 1;
    return { across: across / wide, past: isEnd ? along / widthPx : 0 };
  };
}

/** `margin`: so much farther off counts too, widths. */
export function isInZone(kind: "hole" | "spatter", { across, past }: BesideBead, margin = 0): boolean {
  const zone = kind === "hole" ? HOLE_ZONE : SPATTER_ZONE;
  return across <= zone.across + margin && past <= zone.past + margin;
}
