import type { Extent } from "./extent";

/** A part of a weld: of its length in percent, and in mm; null where the other cannot be worked out. */
export interface WeldPart {
  readonly percent: number | null;
  readonly lengthMm: number | null;
}

/** How what was seen of a weld stands to what was asked. Only "full" closes the question. */
export type ExtentStanding =
  | { readonly kind: "full" }
  | { readonly kind: "asked-unknown" }
  | { readonly kind: "seen-unknown" }
  /** One in percent, the other in mm, and the weld's length not known. */
  | { readonly kind: "not-comparable" }
  /** A figure says more than the weld is long, so one of the two is wrong. */
  | { readonly kind: "beyond-length" }
  | { readonly kind: "short"; readonly missing: WeldPart };

/** Binary dust of a conversion, in proportion; nothing a person reads off a tape. */
const DUST = 1e-9;
const reaches = (seen: number, asked: number): boolean => seen >= asked * (1 - DUST);
const exceeds = (value: number, most: number): boolean => value > most * (1 + DUST);

/**
 * Compares what was seen of a weld with what was asked. `weldLengthMm` lets percent and mm be converted; null: not
 * known. Null for an extent is "not recorded", and nothing unknown ever counts as seen.
 */
export function extentStanding(
  asked: Extent | null,
  seen: Extent | null,
  weldLengthMm: number | null,
): ExtentStanding {
  if (asked === null) return { kind: "asked-unknown" };
  if (seen === null) return { kind: "seen-unknown" };
  if (isBeyond(asked, seen, weldLengthMm)) return { kind: "beyond-length" };
  // The whole weld covers whatever was asked of it, however long it is.
  if (seen.kind === "percent" && seen.percent >= 100) return { kind: "full" };
  const [want, have] = [partOf(asked, weldLengthMm), partOf(seen, weldLengthMm)];
  // Percent against percent as they were written; everything else in mm, where both come to mm.
  const inPercent = asked.kind === "percent" && seen.kind === "percent";
  const inMm = !inPercent && want.lengthMm !== null && have.lengthMm !== null;
  const [most, got] = inMm ? [want.lengthMm, have.lengthMm] : [want.percent, have.percent];
  if (most === null || got === null) return { kind: "not-comparable" };
  return reaches(got, most) ? { kind: "full" } : { kind: "short", missing: less(want, have) };
}

function isBeyond(asked: Extent, seen: Extent, weldLengthMm: number | null): boolean {
  if (weldLengthMm === null) return false;
  if (asked.kind === "length") return exceeds(asked.lengthMm, weldLengthMm);
  // A part asked in percent rests on the length; more seen than there is says that the length is wrong.
  return seen.kind === "length" && exceeds(seen.lengthMm, weldLengthMm);
}

/** An extent in both units, as far as the weld's length is known. Nothing is nothing in either. */
export function partOf(extent: Extent, weldLengthMm: number | null): WeldPart {
  const of = (value: number, convert: (weldMm: number) => number): number | null =>
    value === 0 ? 0 : weldLengthMm === null ? null : convert(weldLengthMm);
  if (extent.kind === "percent") {
    const { percent } = extent;
    return { percent, lengthMm: of(percent, (weldMm) => (percent / 100) * weldMm) };
  }
  const { lengthMm } = extent;
  return { percent: of(lengthMm, (weldMm) => (lengthMm / weldMm) * 100), lengthMm };
}

const less = (want: WeldPart, have: WeldPart): WeldPart => ({
  percent: want.percent === null || have.percent === null ? null : want.percent - have.percent,
  lengthMm: want.lengthMm === null || have.lengthMm === null ? null : want.lengthMm - have.lengthMm,
});
