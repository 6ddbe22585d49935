import { M_PER_MIN_PER_IPM, MM_PER_INCH, type Source } from "@/lib/base";
import type { InputPower, Process } from "./names";
import { cite, commonPractice, remark } from "./cite";

export interface FeedCap {
  readonly maxWireFeedMPerMin: number;
  readonly source: Source;
}

interface FeedCapRow extends FeedCap {
  readonly inputPower: InputPower;
  readonly process: Process;
  readonly diameterMm: number;
  /** Sizes this close are the same wire, mm. */
  readonly withinMm: number;
}

/** Known for one case only: 120 V with 0.9 mm (.035 in) self-shielded wire, about 280 in/min. */
export const feedCaps: readonly FeedCapRow[] = [
  {
    inputPower: "120V",
    process: "FCAW-S",
    diameterMm: 0.9,
    withinMm: 0.05,
    maxWireFeedMPerMin: 280 * M_PER_MIN_PER_IPM,
    source: remark(commonPractice, "about 280 in/min with 0.9 mm self-shielded wire; a long cord lowers it"),
  },
];

/**
 * The wire feed beyond which the mains input gives out, m/min; null where no such figure is known.
 */
export function feedCap(inputPower: InputPower, process: Process, diameterMm: number): FeedCap | null {
  const row = feedCaps.find(
    (one) =>
      one.inputPower === inputPower &&
      one.process === process &&
      Math.abs(diameterMm - one.diameterMm) <= one.withinMm,
  );
  return row === undefined ? null : { maxWireFeedMPerMin: row.maxWireFeedMPerMin, source: row.source };
}

/** The rule is given for steel up to about 1/4 in; thicker plate is filled in passes. */
export const AMPS_RULE_MAX_MM = 0.25 * MM_PER_INCH;

/** 1 A per 0.001 in. */
export const AMPS_PER_INCH = 1000;

/** About 1 A per 0.001 in of mild steel, up to 1/4 in. null beyond that, or for a thickness that is not positive. */
export function ampsForThickness(
  thicknessMm: number,
): { readonly amps: number; readonly source: Source } | null {
  if (!(thicknessMm > 0) || thicknessMm > AMPS_RULE_MAX_MM) return null;
  return {
    amps: (thicknessMm / MM_PER_INCH) * AMPS_PER_INCH,
    source: cite("small-wire-manual-settings", "seen"),
  };
}
