import type { RunSetup } from "@/lib/setup";

/** What of the wire's cross-section becomes weld metal. */
interface Yield {
  /** Metal and metal-making fill as a share of the wire's cross-section. */
  readonly fillShare: number;
  readonly depositionEfficiency: number;
}

/** Typical of tubular wires; *common practice, no source*; the pair for FCAW-S and FCAW-G from memory. */
const yields = {
  "FCAW-S": { fillShare: 0.85, depositionEfficiency: 0.78 },
  "FCAW-G": { fillShare: 0.85, depositionEfficiency: 0.86 },
  GMAW: { fillShare: 1, depositionEfficiency: 0.95 },
} as const satisfies Record<string, Yield>;

/**
 * Deposited cross-section by conservation of mass, mm²: wire area x yield x wire feed / travel speed.
 * Null when the set-up does not say enough.
 */
export function depositAreaMm2(setup: RunSetup): number | null {
  const { process, electrodeDiameterMm: d, wireFeedMPerMin, travelSpeedMmPerMin } = setup;
  if (d === null || wireFeedMPerMin === null || travelSpeedMmPerMin === null) return null;
  if (process !== "FCAW-S" && process !== "FCAW-G" && process !== "GMAW") return null;
  const { fillShare, depositionEfficiency } = yields[process];
  return (
    (Math.PI / 4) *
    d *
    d *
    fillShare *
    depositionEfficiency *
    ((wireFeedMPerMin * 1000) / travelSpeedMmPerMin)
  );
}

export interface CapSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Parabolic cap of area A = 2/3 W H with H = `heightToWidth` x W. */
export function capSize(areaMm2: number, heightToWidth: number): CapSize {
  const widthMm = Math.sqrt((1.5 * areaMm2) / heightToWidth);
  return { widthMm, heightMm: heightToWidth * widthMm };
}

/** Equal-leg fillet of area A = z²/2 + 2/3 w c with w = √2 z and convexity c = `convexity` x w. */
export function filletSize(areaMm2: number, convexity: number): { legMm: number; convexityMm: number } {
  const legMm = Math.sqrt(areaMm2 / (0.5 + (4 / 3) * convexity));
  return { legMm, convexityMm: convexity * Math.SQRT2 * legMm };
}
