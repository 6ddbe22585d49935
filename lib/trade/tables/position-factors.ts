import type { Source } from "@/lib/base";
import type { ElectrodePosition } from "../electrode-class";
import type { Process, Transfer } from "../names";
import { cite, commonPractice, ownEstimate, remark } from "../cite";

/** How a flat or horizontal setting moves out of position. */
export interface PositionFactor {
  readonly process: Process;
  readonly transfer?: Transfer;
  /** Given: only these classes. */
  readonly classes?: readonly string[];
  /** Given: only these diameters, inches. */
  readonly diametersIn?: readonly number[];
  readonly positions: readonly ElectrodePosition[];
  /** Multiplies wire feed, or current where the process has no feed. [deepest, mildest]. */
  readonly feed: readonly [number, number];
  /** Added to volts: [deepest, mildest]. */
  readonly voltsShift: readonly [number, number];
  /**
   * A factor worked out from one document's own settings speaks only about published lines; the trade's rule of
   * thumb speaks about any line.
   */
  readonly holdsFor: "published" | "any";
  readonly source: Source;
}

const tradeNotes = cite("trade-reference-notes", "seen");
const computed = remark(tradeNotes, "ratio of the notes' own settings, worked out here", "derived");
const t11 = (
  diameterIn: number,
  positions: readonly ElectrodePosition[],
  feed: number,
  volts: number,
): PositionFactor => ({
  process: "FCAW-S",
  classes: ["E71T-11"],
  diametersIn: [diameterIn],
  positions,
  feed: [feed, feed],
  voltsShift: [volts, volts],
  holdsFor: "published",
  source: computed,
});
const DOWN_AND_OVER: readonly ElectrodePosition[] = ["vertical-down", "overhead"];

/** The trade's figure and the printed ones differ by process and both stand. */
export const positionFactors: readonly PositionFactor[] = [
  {
    process: "FCAW-S",
    positions: ["vertical-up", "vertical-down", "overhead"],
    feed: [0.6, 0.7],
    // Read as a cut in feed: a third off 16 V would put the arc out. Volts follow the feed down by a volt or two.
    voltsShift: [-2, 0],
    holdsFor: "any",
    source: remark(commonPractice, "30 to 40 % down from flat or horizontal, self-shielded wire"),
  },
  t11(0.035, ["vertical-up"], 0.86, -0.5),
  t11(0.045, ["vertical-up"], 0.89, 0),
  t11(0.068, ["vertical-up"], 0.43, -5),
  t11(0.035, DOWN_AND_OVER, 1.29, 1),
  t11(0.045, DOWN_AND_OVER, 1.22, 1),
  t11(0.068, DOWN_AND_OVER, 0.69, -2),
  {
    process: "FCAW-G",
    positions: ["vertical-up", "vertical-down", "overhead"],
    feed: [0.6, 1],
    voltsShift: [-2.5, 0],
    holdsFor: "any",
    source: remark(
      ownEstimate,
      "upper end of the 1.2 mm vertical-up line over its flat line: 300/500 in/min, 25.5/28 V",
    ),
  },
  {
    process: "GMAW",
    transfer: "short-circuit",
    positions: ["vertical-up"],
    feed: [0.8, 0.9],
    voltsShift: [-2, -1],
    holdsFor: "any",
    source: tradeNotes,
  },
  {
    process: "SMAW",
    positions: ["vertical-up"],
    feed: [0.85, 0.9],
    voltsShift: [0, 0],
    holdsFor: "any",
    source: tradeNotes,
  },
  {
    process: "SMAW",
    positions: ["horizontal"],
    feed: [0.9, 0.95],
    voltsShift: [0, 0],
    holdsFor: "any",
    source: tradeNotes,
  },
  {
    process: "SMAW",
    positions: ["overhead"],
    feed: [0.85, 0.85],
    voltsShift: [0, 0],
    holdsFor: "any",
    source: cite("electrode-current-notes", "seen"),
  },
];
