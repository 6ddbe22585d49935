import type { Source } from "@/lib/base";

/** How much metal the face of a weld holds beyond the plain figure. */
export const filletFace = {
  /** Area of a usual fillet over that of a flat one of the same legs: the handbook's 1.00 (flat) to 1.20 (convex). */
  areaOverFlat: 1.1,
  /** Half of that span, relative to it. */
  relativeError: 0.09,
  source: {
    document: "Filler-cost handbook: mass of fillets, flat and convex",
    edition: "n.d.",
    confidence: "seen",
    note: "convex fillets 1.20 times the flat; that a usual face lies between is our reading",
  } satisfies Source,
  /** Height over width of a stringer on plate, up or down by this factor. */
  stringer: {
    heightOverWidth: 0.22,
    spread: 1.5,
    source: {
      document: "trade knowledge, no text read",
      confidence: "memory",
      note: "convexity up to about 0.3 of the width counts as good",
    } satisfies Source,
  },
} as const;
