import { cite } from "@/lib/trade";

const iso17637 = cite("iso-17637", "seen-older", { edition: "2003", clause: "2" });

/**
 * What ISO 17637 asks of a direct look, read in the edition of 2003; the current one is of 2016, so check your copy.
 * Lux, millimetres, degrees to the surface.
 */
export const viewingLimits = {
  lightLux: { least: 350, recommended: 500, source: iso17637 },
  distanceMm: { most: 600, source: iso17637 },
  angleDeg: { least: 30, source: iso17637 },
} as const;
