import { highlight } from "@/components/picture";
import { distance, type Point } from "@/lib/geometry";
import type { Primitive } from "@/lib/marks";
import type { Scenery } from "./gesture";
import { markAt } from "./hit";

/** A place that is suggested to be marked. It is no mark. */
export interface SuggestedRing {
  readonly id: string;
  readonly at: Point<"photo">;
  /** Photo pixels. */
  readonly radius: number;
}

export interface Suggested {
  readonly rings: readonly SuggestedRing[];
  /** The person took it. */
  readonly onTake: (id: string) => void;
}

/** CSS pixels: smaller rings are drawn so large, to be seen. */
const LEAST_RADIUS = 6;

/** Dashed straw on ink, as all that is not yet in the drawing, and with nothing within: what it stands about stays in sight. */
export const suggestedPicture = ({ rings }: Pick<Suggested, "rings">, unitPx: number): readonly Primitive[] =>
  rings.flatMap(({ at, radius }): readonly Primitive[] => {
    const circle = { kind: "circle" as const, at, radius: Math.max(LEAST_RADIUS * unitPx, 1.25 * radius) };
    return [
      { ...circle, stroke: highlight.line, width: 3.5 * unitPx, dash: [] },
      { ...circle, stroke: highlight.fill, width: 2 * unitPx, dash: [4 * unitPx, 3 * unitPx] },
    ];
  });

/** The suggestion under a point, the nearest; null: none within reach, CSS pixels. */
export function ringAt(
  rings: readonly SuggestedRing[],
  at: Point<"photo">,
  reach: number,
  unitPx: number,
): string | null {
  const near = rings
    .map(({ id, at: middle, radius }) => ({ id, away: Math.max(0, distance(middle, at) - radius) }))
    .filter(({ away }) => away <= reach * unitPx)
    .toSorted((a, b) => a.away - b.away);
  return near[0]?.id ?? null;
}

/** What a tap with an empty hand does: picks the mark there; where there is none, takes what is suggested there. */
export function pickAt(
  { drawing, shapes, suggested, unitPx }: Scenery,
  select: (id: string | null) => void,
  at: Point<"photo">,
  reach: number,
): void {
  const mark = markAt(drawing, shapes, at, reach, unitPx);
  const ring = mark === null && suggested ? ringAt(suggested.rings, at, reach, unitPx) : null;
  if (ring === null) select(mark);
  else suggested?.onTake(ring);
}
