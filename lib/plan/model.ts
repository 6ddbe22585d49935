import type { AmpsEstimate } from "@/lib/arc";
import { currentAt, rowCurves, windowFor, windowQueryFor, type RunSetup } from "@/lib/setup";
import { windowLines, type ParameterWindow } from "@/lib/trade";

/** What goes with one feed by the rows of the wire and its burn-off. */
export interface AtFeed {
  readonly feedMPerMin: number;
  readonly volts: number;
  readonly ctwdMm: number;
  readonly current: AmpsEstimate;
}

/** The forward model of one settled set-up. */
export interface Model {
  readonly setup: RunSetup;
  readonly window: ParameterWindow;
  /** Rows that pair volts with feed; never empty. */
  readonly lines: ReturnType<typeof windowLines>;
  readonly at: (feedMPerMin: number) => AtFeed | null;
}

/** null: no row pairs volts with feed for this wire, gas and position. */
export function modelFor(setup: RunSetup): Model | null {
  const query = windowQueryFor(setup);
  const window = windowFor(setup);
  const curves = rowCurves(setup);
  if (query === null || window === null || curves === null) return null;
  const lines = windowLines(query).filter(({ volts }) => volts !== null);
  const at = (feedMPerMin: number): AtFeed | null => {
    const volts = curves.volts(feedMPerMin);
    const ctwdMm = tipToWork(curves.ctwdMm(feedMPerMin), middleOf(window.ctwdMm));
    if (volts === null || ctwdMm === null) return null;
    const current = currentAt(setup, feedMPerMin, ctwdMm);
    return current && { feedMPerMin, volts, ctwdMm, current };
  };
  return lines.length === 0 ? null : { setup, window, lines, at };
}

/**
 * Halfway between what goes with this feed and the middle of all rows. Rows let the distance grow with the feed, which takes
 * away much of the current the feed brings: taken whole, a tenth of a millimetre of plate would turn the feed by a tenth.
 */
const tipToWork = (along: number | null, middle: number | null): number | null =>
  along === null || middle === null ? middle : (along + middle) / 2;

const middleOf = (band: { low: number; high: number } | null): number | null =>
  band === null ? null : (band.low + band.high) / 2;

/**
 * The feed, m/min, in [low, high] at which something that rises with the feed reaches a value; the nearer end where it
 * lies outside. By halving: the model is a table.
 */
export function feedWhere(
  rising: (feedMPerMin: number) => number,
  value: number,
  low: number,
  high: number,
): number {
  if (rising(low) >= value) return low;
  if (rising(high) <= value) return high;
  let [under, over] = [low, high];
  for (let i = 0; i < 30; i += 1) {
    const middle = (under + over) / 2;
    if (rising(middle) < value) under = middle;
    else over = middle;
  }
  return (under + over) / 2;
}
