import type { WindowQuery } from "./placed-rows";
import type { Span } from "./tables/window-rows";
import { windowLines, type WindowLine } from "./window-lines";

/** What a row says goes with its feed. */
export type AlongFeed = "volts" | "ctwdMm";

/** How far to either side of a feed its neighbours count, m/min: about 40 in/min. Own estimate. */
export const BLEND_M_PER_MIN = 1;
/** Points of the mean to either side; a step between two rows comes in so many parts. */
const HALF = 16;

interface Ends {
  readonly feed: Span;
  readonly at: Span;
}

/**
 * The volts (V) or tip to work (mm) that go with a feed (m/min), over all rows of a wire: halfway between the least and
 * the most that any row says of it, where a row speaks of the feeds it covers and, because volts and distance rise with
 * the feed, of those beyond it by its nearer end. So it never falls as the feed rises. Where a row begins or ends the
 * value would jump; it is the mean over its neighbourhood instead. A wire of one row gets exactly that row. The curve is
 * null where no row that gives the quantity covers a feed.
 */
export function alongRows(query: WindowQuery, quantity: AlongFeed): (feedMPerMin: number) => number | null {
  const rows = windowLines(query).flatMap((line) => endsOf(line, quantity));
  const low = Math.min(...rows.map(({ feed }) => feed[0]));
  const high = Math.max(...rows.map(({ feed }) => feed[1]));
  // A mirror holds no more than what stands before it.
  const blend = Math.min(BLEND_M_PER_MIN, (high - low) / 2);
  // Beyond the outermost ends the curve goes on as its mirror image, so that an end keeps its printed value.
  const mirrored = (feed: number): number => {
    const end = Math.max(low, Math.min(high, feed));
    if (end === feed) return middle(rows, feed);
    return 2 * middle(rows, end) - middle(rows, Math.max(low, Math.min(high, 2 * end - feed)));
  };
  return (feedMPerMin) => {
    if (!rows.some(({ feed: [from, to] }) => feedMPerMin >= from && feedMPerMin <= to)) return null;
    let sum = 0;
    for (let i = -HALF; i <= HALF; i += 1) sum += mirrored(feedMPerMin + (i / HALF) * blend);
    return sum / (2 * HALF + 1);
  };
}

function endsOf(line: WindowLine, quantity: AlongFeed): readonly Ends[] {
  const at = line[quantity];
  return at === null ? [] : [{ feed: line.feedMPerMin, at }];
}

function middle(rows: readonly Ends[], feed: number): number {
  // In a gap between two rows each side still has one.
  let [most, least] = [-Infinity, Infinity];
  for (const row of rows) {
    const value = valueAt(row, feed);
    if (row.feed[0] <= feed) most = Math.max(most, value);
    if (row.feed[1] >= feed) least = Math.min(least, value);
  }
  return (most + least) / 2;
}

/** On the line; past an end, the end. */
function valueAt({ feed: [x0, x1], at: [y0, y1] }: Ends, x: number): number {
  return x1 <= x0 ? y1 : y0 + ((y1 - y0) * (Math.max(x0, Math.min(x1, x)) - x0)) / (x1 - x0);
}
