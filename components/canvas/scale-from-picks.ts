import { distance, midpoint, signedArea } from "@/lib/geometry";
import type { PhotoPoint, Scale } from "@/lib/marks";
import type { ScalePickKind } from "./scale-picks";

/** ID-1 card, mm: nominal size of ISO/IEC 7810 (from memory, without its tolerance). */
const card = { widthMm: 85.6, heightMm: 53.98 } as const;

/** Sizes a person states, mm: one for a length or a diameter, two for the sides of a rectangle in the order picked. */
export type StatedSizes = readonly number[];

/** How many sizes each way of picking asks for; a card's are known. */
export const sizesAsked: Readonly<Record<ScalePickKind, 0 | 1 | 2>> = {
  "two-points": 1,
  disc: 1,
  rectangle: 2,
  edges: 0,
};

/**
 * A scale from picks in photo pixels and the sizes stated for them; null when picks or sizes are too few. Whoever went
 * round the other way gets the same scale, and a card may be begun at a short edge.
 */
export function scaleFromPicks(
  kind: ScalePickKind,
  points: readonly PhotoPoint[],
  sizes: StatedSizes,
): Scale | null {
  const [first, second] = sizes;
  switch (kind) {
    case "two-points": {
      const [a, b] = points;
      return a && b && first !== undefined ? { kind, a, b, lengthMm: first } : null;
    }
    case "disc":
      return first === undefined || points.length < 5 ? null : { kind, rim: [...points], diameterMm: first };
    case "rectangle":
      return first === undefined || second === undefined ? null : rectangle(points, first, second);
    case "edges":
      return cardEdges(points);
  }
}

function rectangle(points: readonly PhotoPoint[], firstMm: number, secondMm: number): Scale | null {
  const [a, b, c, d] = points;
  if (!a || !b || !c || !d) return null;
  // The other way round the second corner is reached along the side that was picked last.
  return signedArea([a, b, c, d]) < 0
    ? { kind: "rectangle", corners: [a, d, c, b], widthMm: secondMm, heightMm: firstMm }
    : { kind: "rectangle", corners: [a, b, c, d], widthMm: firstMm, heightMm: secondMm };
}

type Edge = [PhotoPoint, PhotoPoint];

function cardEdges(points: readonly PhotoPoint[]): Scale | null {
  if (points.length < 8) return null;
  const picked = [0, 2, 4, 6].map((i): Edge => [points[i]!, points[i + 1]!]);
  const middles = picked.map(([a, b]) => midpoint(a, b));
  const [e0, e1, e2, e3] = signedArea(middles) < 0 ? [0, 3, 2, 1].map((i) => picked[i]!) : picked;
  const along = distance(middles[1]!, middles[3]!);
  const across = distance(middles[0]!, middles[2]!);
  const sides = along >= across ? card : { widthMm: card.heightMm, heightMm: card.widthMm };
  return { kind: "edges", edges: [e0!, e1!, e2!, e3!], ...sides };
}
