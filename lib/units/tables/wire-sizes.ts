/**
 * A filler size has a metric and an inch name that are a nominal pair, not a conversion:
 * 1.2 mm wire is .045 in wire, though .045 in is 1.143 mm.
 */
export interface WireSize {
  readonly mm: number;
  /** As written on the spool or box, without the unit. */
  readonly inchName: string;
  readonly inches: number;
}

/**
 * Ascending. Where two metric sizes share an inch name, both are listed: 2.5, 5.0 and 6.0 mm are the metric sizes sold
 * for 3/32, 3/16 and 1/4 in rods. The tables of standard sizes of AWS A5.20 and A5.1, from memory.
 */
export const wireSizes: readonly WireSize[] = [
  { mm: 0.6, inchName: ".023", inches: 0.023 },
  { mm: 0.8, inchName: ".030", inches: 0.03 },
  { mm: 0.9, inchName: ".035", inches: 0.035 },
  { mm: 1, inchName: ".040", inches: 0.04 },
  { mm: 1.2, inchName: ".045", inches: 0.045 },
  { mm: 1.4, inchName: ".052", inches: 0.052 },
  { mm: 1.6, inchName: "1/16", inches: 1 / 16 },
  { mm: 2, inchName: "5/64", inches: 5 / 64 },
  { mm: 2.4, inchName: "3/32", inches: 3 / 32 },
  { mm: 2.5, inchName: "3/32", inches: 3 / 32 },
  { mm: 2.8, inchName: "7/64", inches: 7 / 64 },
  { mm: 3.2, inchName: "1/8", inches: 1 / 8 },
  { mm: 4, inchName: "5/32", inches: 5 / 32 },
  { mm: 4.8, inchName: "3/16", inches: 3 / 16 },
  { mm: 5, inchName: "3/16", inches: 3 / 16 },
  { mm: 5.6, inchName: "7/32", inches: 7 / 32 },
  { mm: 6, inchName: "1/4", inches: 1 / 4 },
  { mm: 6.4, inchName: "1/4", inches: 1 / 4 },
];
