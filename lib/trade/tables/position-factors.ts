import type { Source } from "@/lib/base";
import type { ElectrodePosition } from "../electrode-class";
import type { Process, Transfer } from "../names";
import { cite, commonPractice, ownEstimate, remark } from "../cite";

/** How much of a general line is left out of position: its lower part, on the line's own slope of feed and volts. */
export interface PositionFactor {
  readonly process: Process;
  readonly transfer?: Transfer;
  /** Given: only these classes. */
  readonly classes?: readonly string[];
  /** Given: only these diameters, inches. */
  readonly diametersIn?: readonly number[];
  readonly positions: readonly ElectrodePosition[];
  /**
   * Share of the line's highest feed (or current, where the process has no feed) that is the highest there. Its lowest
   * stays: a printed line starts where the wire just burns, in any position. Volts follow the feed down the line.
   */
  readonly share: number;
  /**
   * "own-settings": worked out from a document's own settings by position, for that document's lines only;
   * "general": the trade's rule, for the lines of documents that say nothing of position.
   */
  readonly holdsFor: "own-settings" | "general";
  readonly source: Source;
}

/** At least this part of a line's span is left, however steep the cut. Own estimate. */
export const LEAST_SHARE_OF_LINE = 0.25;

const tradeNotes = cite("trade-reference-notes", "seen");
const computed = remark(tradeNotes, "ratio of the notes' own settings, worked out here", "derived");
const t11 = (diameterIn: number, positions: readonly ElectrodePosition[], share: number): PositionFactor => ({
  process: "FCAW-S",
  classes: ["E71T-11"],
  diametersIn: [diameterIn],
  positions,
  share,
  holdsFor: "own-settings",
  source: computed,
});
const UP: readonly ElectrodePosition[] = ["vertical-up"];
const DOWN_AND_OVER: readonly ElectrodePosition[] = ["vertical-down", "overhead"];
const OUT: readonly ElectrodePosition[] = [...UP, ...DOWN_AND_OVER];

/** The trade's figure and the printed ones differ by process and both stand. */
export const positionFactors: readonly PositionFactor[] = [
  {
    process: "FCAW-S",
    positions: OUT,
    share: 0.7,
    holdsFor: "general",
    source: remark(commonPractice, "30 to 40 % down from flat or horizontal, self-shielded wire"),
  },
  // Small wire is set hotter downhill and overhead than the notes' flat setting: the whole line stands there.
  t11(0.035, UP, 0.86),
  t11(0.035, DOWN_AND_OVER, 1),
  t11(0.045, UP, 0.89),
  t11(0.045, DOWN_AND_OVER, 1),
  t11(0.068, UP, 0.43),
  t11(0.068, DOWN_AND_OVER, 0.69),
  {
    process: "FCAW-G",
    positions: OUT,
    share: 0.6,
    holdsFor: "general",
    source: remark(
      ownEstimate,
      "upper end of the 1.2 mm vertical-up line over its flat line: 300/500 in/min",
    ),
  },
  {
    process: "GMAW",
    transfer: "short-circuit",
    positions: UP,
    share: 0.9,
    holdsFor: "general",
    source: remark(tradeNotes, "vertical-up: feed 10 to 20 % down, volts 1 to 2 down"),
  },
  { process: "SMAW", positions: UP, share: 0.9, holdsFor: "general", source: tradeNotes },
  {
    process: "SMAW",
    positions: ["horizontal"],
    share: 0.95,
    holdsFor: "general",
    source: tradeNotes,
  },
  {
    process: "SMAW",
    positions: ["overhead"],
    share: 0.85,
    holdsFor: "general",
    source: cite("electrode-current-notes", "seen"),
  },
];
