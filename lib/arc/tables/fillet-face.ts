import { cite, fromMemory, remark } from "@/lib/trade";

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
  /** Height over width of a stringer on plate, up or down by this factor. */
  stringer: {
    heightOverWidth: 0.22,
    spread: 1.5,
    source: remark(fromMemory, "convexity up to about 0.3 of the width counts as good"),
  },
} as const;
