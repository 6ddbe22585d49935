import type { Source } from "@/lib/base";
import type { ElectrodePosition } from "./electrode-class";
import { placedRows, type PlacedRow, type WindowQuery } from "./placed-rows";
import type { Span } from "./tables/window-rows";
import { together } from "./together";

/**
 * One row of one document at one position as a line: its low feed goes with its low volts and amps, its high feed with
 * its high ones. Feeds in m/min.
 */
export interface WindowLine {
  readonly position: ElectrodePosition;
  readonly feedMPerMin: Span;
  /** At the low and at the high feed; null where the row does not give them. */
  readonly volts: Span | null;
  /** As `volts`; null too where the document's amps do not go with its feeds. */
  readonly amps: Span | null;
  readonly ctwdMm: Span | null;
  /** How far off the line the trade still runs it, V. */
  readonly voltsEitherSide: number;
  /** Cut down from a flat line by a rule of position. */
  readonly derived: boolean;
  readonly source: Source;
}

/** A line read at one feed. */
export interface LineAtFeed {
  readonly line: WindowLine;
  readonly volts: number | null;
  /** Volts the row allows at this feed: the line, `voltsEitherSide` up and down, never past the row's own ends. */
  readonly voltsBand: Span | null;
  readonly amps: number | null;
}

/** What all rows together allow at one feed. */
export interface AtFeed {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
}

/** Sheets that print volts feed by feed leave about a third of a row's span either side; 1 to 2 V. Own estimate. */
export const EITHER_SIDE = { shareOfSpan: 1 / 3, leastV: 1, mostV: 2 } as const;

/** Every row of a wire that says which feed it speaks of, at each position that is left open. */
export function windowLines(query: WindowQuery): readonly WindowLine[] {
  const lines = query.positions.flatMap((position) =>
    placedRows(query, position, "wireFeedMPerMin").flatMap((row) => lineOf(row) ?? []),
  );
  return lines.filter((line, i) => lines.findIndex((other) => sameLine(line, other)) === i);
}

function lineOf({ position, spans, voltsOfRow, paired, derived, source }: PlacedRow): WindowLine | null {
  const feedMPerMin = spans.wireFeedMPerMin;
  if (feedMPerMin === null) return null;
  const { shareOfSpan, leastV, mostV } = EITHER_SIDE;
  const span = voltsOfRow === null ? 0 : voltsOfRow[1] - voltsOfRow[0];
  return {
    position,
    feedMPerMin,
    volts: spans.volts,
    amps: paired ? spans.amps : null,
    ctwdMm: spans.ctwdMm,
    voltsEitherSide: Math.min(mostV, Math.max(leastV, shareOfSpan * span)),
    derived,
    source,
  };
}

const sameSpan = (a: Span | null, b: Span | null) => a?.[0] === b?.[0] && a?.[1] === b?.[1];
/** The same row at another position is no further witness. */
const sameLine = (a: WindowLine, b: WindowLine) =>
  sameSpan(a.feedMPerMin, b.feedMPerMin) &&
  sameSpan(a.volts, b.volts) &&
  sameSpan(a.amps, b.amps) &&
  a.source.document === b.source.document;

/** A value on the straight line through two ends; past an end, the end. */
const along = ([x0, x1]: Span, [y0, y1]: Span, x: number): number =>
  x1 <= x0 ? y1 : y0 + ((y1 - y0) * Math.min(x1 - x0, Math.max(0, x - x0))) / (x1 - x0);

/** The line at a feed; null when the row does not reach there. `slack`: how far past an end still counts, m/min. */
export function lineAtFeed(line: WindowLine, feedMPerMin: number, slack = 0): LineAtFeed | null {
  const [low, high] = line.feedMPerMin;
  if (!(feedMPerMin >= low - slack) || !(feedMPerMin <= high + slack)) return null;
  const { volts: ends, voltsEitherSide: side } = line;
  const volts = ends === null ? null : along(line.feedMPerMin, ends, feedMPerMin);
  return {
    line,
    volts,
    voltsBand:
      ends === null || volts === null
        ? null
        : [Math.max(ends[0], volts - side), Math.min(ends[1], volts + side)],
    amps: line.amps === null ? null : along(line.feedMPerMin, line.amps, feedMPerMin),
  };
}

/** The rows of a wire that cover a feed, each read at it. */
export function linesAtFeed(query: WindowQuery, feedMPerMin: number, slack = 0): readonly LineAtFeed[] {
  return windowLines(query).flatMap((line) => lineAtFeed(line, feedMPerMin, slack) ?? []);
}

/**
 * Volts that some row allows at this feed, from the least to the most. Each position left open is asked by itself: the
 * rows that cover the feed speak, and a row that gives volts and no feed may mean any; where none covers it, nothing is
 * known of the pair there and all its volts stand (`covered`: some row did). Volts rise with the feed, so what a row
 * allows at a lower feed is not too high here, and what one allows at a higher feed is not too low. So what is not known
 * never narrows or moves the answer. null: no row gives volts.
 */
export function voltsAtFeed(
  query: WindowQuery,
  feedMPerMin: number,
  slack = 0,
): (AtFeed & { readonly covered: boolean }) | null {
  const byPosition = query.positions.map((one) =>
    voltsAt({ ...query, positions: [one] }, feedMPerMin, slack),
  );
  const found = outer(byPosition.flatMap(({ parts }) => parts));
  return found && { ...found, covered: byPosition.some(({ covered }) => covered) };
}

function voltsAt(
  query: WindowQuery,
  feed: number,
  slack: number,
): { readonly parts: readonly AtFeed[]; readonly covered: boolean } {
  const here = linesAtFeed(query, feed, slack).flatMap(({ voltsBand, line }) =>
    voltsBand === null ? [] : [{ low: voltsBand[0], high: voltsBand[1], source: line.source }],
  );
  const covered = here.length > 0;
  const anyFeed = query.positions.flatMap((position) =>
    placedRows(query, position, "volts").flatMap(({ spans: { volts, wireFeedMPerMin }, source }) =>
      volts !== null && (!covered || wireFeedMPerMin === null)
        ? [{ low: volts[0], high: volts[1], source }]
        : [],
    ),
  );
  return { parts: [...here, ...(covered ? beside(query, feed, here) : []), ...anyFeed], covered };
}

/** What rows below and above this feed still allow at it, where it is more than the rows that cover it do. */
function beside(query: WindowQuery, feed: number, here: readonly AtFeed[]): readonly AtFeed[] {
  const low = Math.min(...here.map((part) => part.low));
  const high = Math.max(...here.map((part) => part.high));
  return windowLines(query).flatMap(({ feedMPerMin, volts, source }) => {
    if (volts === null) return [];
    if (feedMPerMin[1] < feed && volts[1] > high) return [{ low: high, high: volts[1], source }];
    if (feedMPerMin[0] > feed && volts[0] < low) return [{ low: volts[0], high: low, source }];
    return [];
  });
}

function outer(parts: readonly AtFeed[]): AtFeed | null {
  if (parts.length === 0) return null;
  return {
    low: Math.min(...parts.map(({ low }) => low)),
    high: Math.max(...parts.map(({ high }) => high)),
    source: together(parts.map(({ source }) => source)),
  };
}
