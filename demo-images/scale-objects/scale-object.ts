/** A thing of known size lying on a plate. Local coordinates in mm: origin at its middle, a along, b across. */
export interface ScaleObject {
  readonly kind: ScaleObjectKind;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** Code in the grid's object mask; picks the pair of coats. */
  readonly code: number;
  /** Share of (a, b) covered by the object, 0 or 1 with a ramp one step wide at its edge. */
  cover(a: number, b: number, stepMm: number): number;
  /** Share of (a, b) covered by ink, area-sampled over one step. */
  ink(a: number, b: number, stepMm: number): number;
  /** Fine relief of the top, mm. */
  relief(a: number, b: number): number;
  /** Points a person or a detector can find, local mm. */
  readonly keyPoints: readonly { readonly name: string; readonly at: readonly [number, number] }[];
  /** Sizes for the truth file. */
  readonly sizes: Readonly<Record<string, number>>;
}

export const scaleObjectKinds = ["rule", "card", "disc", "strip"] as const;
export type ScaleObjectKind = (typeof scaleObjectKinds)[number];

/** Area share of a band of half-width `half` at distance `d` from its middle, seen through a window one step wide. */
export function bandShare(d: number, half: number, stepMm: number): number {
  const high = Math.min(half, d + stepMm / 2);
  const low = Math.max(-half, d - stepMm / 2);
  return high <= low ? 0 : (high - low) / stepMm;
}

/** Share of a rounded rectangle's window that is covered, from its signed distance. */
export function roundedCover(
  a: number,
  b: number,
  halfA: number,
  halfB: number,
  radius: number,
  stepMm: number,
): number {
  const qa = Math.abs(a) - halfA + radius;
  const qb = Math.abs(b) - halfB + radius;
  const distance = Math.hypot(Math.max(qa, 0), Math.max(qb, 0)) + Math.min(Math.max(qa, qb), 0) - radius;
  return Math.min(1, Math.max(0, 0.5 - distance / stepMm));
}
