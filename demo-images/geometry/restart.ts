import { smoothstep } from "../noise/noise";

/** Where the arc was broken and struck again on the same pass. Lengths in mm. */
export interface Restart {
  readonly atMm: number;
  /** How much higher the new metal stands where it began. */
  readonly lumpMm: number;
  /** Depth of the old crater that was left unfilled before it. */
  readonly dipMm: number;
}

/** How far past the rounded front of the new metal a place lies; negative still on the old. */
function pastFront({ atMm }: Restart, half: number, x: number, u: number): number {
  return x - atMm + 0.85 * half * Math.sqrt(Math.max(0, 1 - u * u));
}

/** Height that a restart adds to the face: a dip, then a step up to a lump that dies away. */
export function restartRelief(restart: Restart, half: number, x: number, u: number): number {
  const s = pastFront(restart, half, x, u);
  const face = Math.max(0, 1 - u * u) ** 0.7;
  if (s < 0) return -restart.dipMm * face * Math.exp(-(((s + 0.5 * half) / (0.45 * half)) ** 2));
  return restart.lumpMm * face * smoothstep(0, 0.7, s) * Math.exp(-(((s - 0.5) / (1.9 * half)) ** 2));
}

/** Factor on the bead's half-width: drawn in where the arc died, bulged where it was struck. */
export function restartSwell(restart: Restart, half: number, x: number): number {
  const s = (x - restart.atMm) / half;
  return 1 - 0.1 * Math.exp(-(((s + 1.5) / 0.6) ** 2)) + 0.19 * Math.exp(-(((s - 0.1) / 0.75) ** 2));
}
