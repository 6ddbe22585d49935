/** Ways of picking a scale object by hand. A printed strip is found, not picked. */
export const scalePickKinds = ["two-points", "edges", "disc", "rectangle"] as const;
export type ScalePickKind = (typeof scalePickKinds)[number];

/** How many points each is made of; with `most` points it is finished, from `fewest` on it may be. */
export const scalePicks: Readonly<Record<ScalePickKind, { readonly fewest: number; readonly most: number }>> =
  {
    "two-points": { fewest: 2, most: 2 },
    edges: { fewest: 8, most: 8 },
    disc: { fewest: 5, most: 12 },
    rectangle: { fewest: 4, most: 4 },
  };

const edgeNames = ["a long edge", "the next edge", "the other long edge", "the last edge"] as const;

/** What to pick next, when `placed` points are there. */
export function scalePickHint(kind: ScalePickKind, placed: number): string {
  switch (kind) {
    case "two-points":
      return placed === 0 ? "Tap one end of a length you know." : "Tap the other end.";
    case "edges": {
      const edge = edgeNames[Math.min(3, Math.floor(placed / 2))]!;
      const where = placed % 2 === 0 ? "near one end, clear of the rounded corner" : "near its other end";
      return `${placed + 1} of 8: tap ${edge}, ${where}.`;
    }
    case "disc": {
      const left = scalePicks.disc.fewest - placed;
      return left > 0
        ? `Tap the rim, spread all round: ${left} more.`
        : "Done, or more points on the rim for a finer scale.";
    }
    case "rectangle":
      return `Tap corner ${placed + 1} of 4, going round.`;
  }
}

/** Said when the last point is placed. */
export const scalePicked: Readonly<Record<ScalePickKind, string>> = {
  "two-points": "Both ends picked. Now type the length.",
  edges: "All four edges picked.",
  disc: "Rim picked. Now type the diameter.",
  rectangle: "All four corners picked. Now type the two sides.",
};

/** The lines to draw between points picked so far: an edge is two points, the others go from point to point. */
export function scaleStrokes<P>(kind: ScalePickKind, points: readonly P[]): readonly (readonly P[])[] {
  if (kind === "disc") return [];
  if (kind !== "edges") return points.length > 1 ? [points] : [];
  return Array.from({ length: Math.floor(points.length / 2) }, (_, i) => points.slice(2 * i, 2 * i + 2));
}
