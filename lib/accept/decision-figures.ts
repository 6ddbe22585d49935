import { MM_PER_INCH } from "@/lib/base";

/** Numbers of our own that a verdict rests on beside the codes' figures; the seal over the tables holds them too. */
export const decisionFigures = {
  /** 1.65 u of U = 2 u: 95 % on one side (ISO 14253-1; the factor from memory). */
  oneSided: 1.65 / 2,
  /** Above this share of the limit the uncertainty of a figure is worth a word. Own rule of thumb. */
  coarseShare: 1 / 3,
  /** Legs and throat asked for on one drawing are rounded to whole or half millimetres: own estimate. */
  roundedOnDrawingMm: 0.5,
  /** A length along a mark that winds is longer than the stretch it takes up, in proportion and in mm: own estimate. */
  winding: 0.15,
  windingMm: 1.5,
  /** A gap of a fillet that a code takes off the legs (D1.1 7.21.1: 1/16 in; from memory) is not absent. */
  wideGapMm: MM_PER_INCH / 16,
} as const;
