import type { BandLike } from "../odds-from-band";

/** One variable at a time, in steps small enough to see what they do: common steps, from memory. */
export const STEP = { volts: 1, feedShare: 0.1, ctwdMm: 4, travelShare: 0.2, ampsShare: 0.1 };

export const ONE_STEP = "One step the right way, inside the wire's starting window; change nothing else.";
export const BACK_IN = "Back inside the wire's starting window.";

/**
 * From outside the window to its nearer quarter, from inside one step; never past the window. null when neither the
 * reading nor the window is known. An unknown reading goes to the middle of the window.
 */
export function targetIn(from: number | null, band: BandLike | null, step: number): number | null {
  if (from === null) return band === null ? null : (band.low + band.high) / 2;
  if (band === null) return from + step;
  const quarter = (band.high - band.low) / 4;
  if (step < 0 && from > band.high) return Math.max(band.low, Math.min(band.high - quarter, from + step));
  if (step > 0 && from < band.low) return Math.min(band.high, Math.max(band.low + quarter, from + step));
  return step < 0
    ? Math.max(from + step, Math.min(band.low, from))
    : Math.min(from + step, Math.max(band.high, from));
}

/**
 * How much of a usual step is left before the window ends: 1 for a whole one, 0 at its edge. Less change cures less.
 * Below a quarter of a step nobody sees a difference on the bead: 0. Own estimate.
 */
export function stepShare(from: number | null, to: number | null, step: number): number {
  if (from === null || to === null || step === 0) return 1;
  const share = Math.min(1, Math.abs((to - from) / step));
  return share < 0.25 ? 0 : share;
}

export const outside = (from: number | null, band: BandLike | null) =>
  from !== null && band !== null && (from > band.high || from < band.low);
