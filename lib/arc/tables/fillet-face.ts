import { cite } from "@/lib/trade";

/** How much metal the face of a weld holds beyond the plain figure. */
export const filletFace = {
  /** Area of a usual fillet over that of a flat one of the same legs: the handbook's 1.00 (flat) to 1.20 (convex). */
  areaOverFlat: 1.1,
  /** Half of that span, relative to it. */
  relativeError: 0.09,
  source: cite("filler-cost-handbook", "seen", {
    clause: "mass of fillets, flat and convex",
    note: "convex fillets 1.20 times the flat; that a usual face lies between is our reading",
  }),
} as const;
