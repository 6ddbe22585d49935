import { MM_PER_INCH, type Source } from "@/lib/base";
import { withoutDocument } from "./cite";
import { wireSizePairs, wireSizePairsSource } from "./tables/wire-size-pairs";

export interface TrueWireSize {
  /** The diameter to reckon areas with, mm. */
  readonly diameterMm: number;
  /** How far the area may be off because the name does not say which size was drawn; 0 where it does. */
  readonly areaRelativeError: number;
  readonly source: Source;
}

/** A stored size this close to a pair's name is that name, mm; narrower than any two names lie apart. */
const NAME_TOLERANCE_MM = 0.011;

const round = withoutDocument("by definition: the diameter as stated", "derived");

/**
 * The diameter a stored size stands for, mm. ".045" is stored under its trade name 1.2, but is 1.143 mm; wire drawn to
 * 1.2 mm exists as well, with a tenth more area. Where only the inch wire is sold (`inchOnly`: self-shielded carbon
 * steel wire) it is the inch size; where it may be either, the size between, with the error that leaves. A diameter that
 * is no trade name (1.143, 0.87) stands as it is.
 */
export function trueWireSize(storedMm: number, inchOnly = false): TrueWireSize {
  const pair = wireSizePairs.find((one) => Math.abs(one.nominalMm - storedMm) < NAME_TOLERANCE_MM);
  if (pair === undefined) return { diameterMm: storedMm, areaRelativeError: 0, source: round };
  const inchMm = pair.inches * MM_PER_INCH;
  if (inchOnly || !pair.soldMetric)
    return { diameterMm: inchMm, areaRelativeError: 0, source: wireSizePairsSource };
  const areas = [inchMm ** 2, pair.nominalMm ** 2] as const;
  const middle = (areas[0] + areas[1]) / 2;
  return {
    diameterMm: Math.sqrt(middle),
    areaRelativeError: Math.abs(areas[0] - areas[1]) / 2 / middle,
    source: wireSizePairsSource,
  };
}

/**
 * Whether a stored diameter is this inch size, by its inch or its metric name: 1.2 mm is .045 in (1.143), 2.5 mm is
 * 3/32 in (2.381). Nominal names round by up to a tenth of a millimetre on wires and a twentieth on rods.
 */
export function isInchSize(inches: number, storedMm: number): boolean {
  const mm = inches * MM_PER_INCH;
  return Math.abs(mm - storedMm) <= Math.max(0.085, 0.055 * mm);
}
