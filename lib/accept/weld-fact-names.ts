import type { WeldFacts } from "./types";

/** Facts of the weld that a person is asked for, because neither the set-up nor the readings hold them. */
export const weldFactNames = [
  "singleSided",
  "completePenetration",
  "transverseToTension",
  "stiffenerToWeb",
  "alongLapEdge",
  "seam",
  "rootWidthMm",
  "closed",
] as const satisfies readonly (keyof WeldFacts)[];
export type WeldFactName = (typeof weldFactNames)[number];
