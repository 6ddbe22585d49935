import { fail, issue, ok, type Result } from "@/lib/base";
import { distance, type Point } from "@/lib/geometry";
import { courseThrough, type Course } from "./course";
import { isEnclosed, liesBetween } from "./beside";
import { alongAt, bendAt, photoPlace, type StripLay } from "./lay-strip";
import { looksOf } from "./looks";
import { reader } from "./model";
import { readOnce, type Read } from "./read-once";
import { LINE_COLUMNS, STRIP } from "./strip-size";
import { sureOf, usuallySure } from "./sure";
import type { ToePath } from "./toe-path";
import type { Pixels, ReadStrip, ToePoint, Trace, TraceIssue, TraceStation } from "./types";

/** Below this a bead is too small on the photo for its toes, photo pixels across. */
export const LEAST_WIDTH_PX = 45;
const LEAST_LINE_PX = 120;
/** The first look is this wide across, in lengths of the line, and the next where nothing was seen. */
const FIRST_SPANS = [0.6, 1.8] as const;
/** The second look, in widths of the bead. */
const SECOND_SPAN = 3;
const MOST_BLOWN = 0.3;
/** An edge that takes this share of the bead's width is no edge any more. */
const MOST_EDGE = 0.45;
/** A line that lies this far from the bead's middle on half its length, in widths, is not on it. */
const MOST_BESIDE = 0.7;
const LEAST_SEEN = 0.5;
const LEAST_SURE = 0.4;

/**
 * Reads the bead along a line picked from its start to its crater, in photo pixels: once over a wide strip for where it
 * runs and how wide it is, and once over a strip that follows it. What was read may be the plate between two beads, so it looks
 * beside it: where it may be that, what it doubts as a whole is refused, and of what it was sure it says so no more.
 *
 * Errors: the photo or the line does not allow it; `traceSentence` says how to photograph it better.
 */
export async function traceBead(
  image: Pixels,
  line: readonly Point<"photo">[],
  read: ReadStrip,
): Promise<Result<Trace, TraceIssue>> {
  const alone = await traceAlone(image, line, read);
  if (!alone.ok) return alone;
  const trace = alone.value;
  if (!isDoubted(trace)) return ok((await isEnclosed(image, trace, read)) ? halved(trace) : trace);
  return (await liesBetween(image, trace, read)) ? fail(issue("line-beside-bead")) : ok(halved(trace));
}

/** What `traceBead` reads before it looks beside it. */
export async function traceAlone(
  image: Pixels,
  line: readonly Point<"photo">[],
  read: ReadStrip,
): Promise<Result<Trace, TraceIssue>> {
  const course = courseThrough(line);
  if (course === null || course.lengthPx < LEAST_LINE_PX)
    return fail(issue("line-too-short", [], { leastPx: LEAST_LINE_PX }));
  const first = await firstLook(image, course, read);
  if (!first.ok) return first;
  const second = await readOnce(
    image,
    closer(first.value),
    read,
    reader.reachWidths * (STRIP.rows / SECOND_SPAN),
  );
  const wrong =
    tooLittle(second.read) ??
    beside(second.read) ??
    spoilt(second.planes, second.read) ??
    smallIssue(second.read);
  if (wrong !== null) return fail(wrong);
  const trace = traceOf(second.read, course);
  const sure = trace.stations.filter((station) => !station.end && sureOf(station) > 0.5);
  if (sure.length < LEAST_SURE * trace.stations.length) return fail(issue("not-sure-enough"));
  return ok(trace);
}

/** Whether the reader is less sure of the whole than it is of nearly every bead it knows. */
const isDoubted = (trace: Trace): boolean => usuallySure(trace) < reader.usualSure;

/** So that nothing of it is sure. */
function halved(trace: Trace): Trace {
  const half = (toe: ToePoint): ToePoint => ({ ...toe, sure: toe.sure / 2 });
  const stations = trace.stations.map((one) => ({ ...one, upper: half(one.upper), lower: half(one.lower) }));
  return { ...trace, stations };
}

/** Where the bead runs: over a strip as wide as most beads need, and where there is none, over one for a short wide bead. */
async function firstLook(image: Pixels, course: Course, read: ReadStrip): Promise<Result<Read, TraceIssue>> {
  for (const span of FIRST_SPANS) {
    const lay = { course, spanPx: span * course.lengthPx, bendPx: new Float64Array(0) };
    const { read: found } = await readOnce(image, lay, read, 0.02 * STRIP.rows);
    if (tooLittle(found) === null) return ok(found);
  }
  return fail(issue("no-bead"));
}

/** How much of the picked line the bead was seen along. */
function tooLittle({ seen, widthRows }: Read): TraceIssue | null {
  const onLine = seen.filter(
    (column) => column * STRIP.step >= STRIP.margin && column * STRIP.step < STRIP.columns - STRIP.margin,
  );
  return onLine.length * STRIP.step < LEAST_SEEN * LINE_COLUMNS || widthRows < 2 ? issue("no-bead") : null;
}

/** Whether the bead runs anywhere but under the line: beside it, or in a bend of its own. */
function beside({ lay, upper, lower, seen, widthRows }: Read): TraceIssue | null {
  const pxPerRow = lay.spanPx / STRIP.rows;
  const offs = seen
    .map((column) => {
      const row = (upper.rows[column]! + lower.rows[column]!) / 2 - STRIP.rows / 2;
      return Math.abs(bendAt(lay, (column + 0.5) * STRIP.step) + row * pxPerRow);
    })
    .sort((a, b) => a - b);
  return offs[offs.length >> 1]! > MOST_BESIDE * widthRows * pxPerRow ? issue("line-beside-bead") : null;
}

function smallIssue({ lay, widthRows }: Read): TraceIssue | null {
  const widthPx = (widthRows / STRIP.rows) * lay.spanPx;
  return widthPx < LEAST_WIDTH_PX
    ? issue("bead-too-small", [], { widthPx: Math.round(widthPx), leastPx: LEAST_WIDTH_PX })
    : null;
}

function spoilt(planes: Float32Array, { upper, lower, seen, widthRows }: Read): TraceIssue | null {
  const top = Math.min(...seen.map((column) => upper.rows[column]!)) - 0.25 * widthRows;
  const bottom = Math.max(...seen.map((column) => lower.rows[column]!)) + 0.25 * widthRows;
  const { blown, edgeRows } = looksOf(planes, top, bottom);
  if (blown > MOST_BLOWN) return issue("light-blown", [], { percent: Math.round(100 * blown) });
  return edgeRows > MOST_EDGE * widthRows ? issue("photo-blurred") : null;
}

/** The strip for the second look: along the middle that was found, and as wide as the bead needs. */
function closer({ lay, upper, lower, seen, widthRows }: Read): StripLay {
  const pxPerRow = lay.spanPx / STRIP.rows;
  const spanPx = Math.max(24, SECOND_SPAN * widthRows * pxPerRow);
  const middles = seen.map((column) => ({
    column: (column + 0.5) * STRIP.step,
    px:
      bendAt(lay, column * STRIP.step) +
      ((upper.rows[column]! + lower.rows[column]!) / 2 - STRIP.rows / 2) * pxPerRow,
  }));
  const reach = (1.5 * widthRows * pxPerRow * LINE_COLUMNS) / lay.course.lengthPx;
  const bendPx = Float64Array.from({ length: STRIP.columns }, (_, i) => smoothed(middles, i + 0.5, reach));
  return { course: lay.course, spanPx, bendPx };
}

/** A straight line fitted to the middles near a column, weighted by how near they are: it follows a bend and no raggedness. */
function smoothed(
  middles: readonly { readonly column: number; readonly px: number }[],
  at: number,
  reach: number,
): number {
  let [w, wx, wy, wxx, wxy] = [0, 0, 0, 0, 0];
  const nearest = Math.min(Math.max(at, middles[0]!.column), middles[middles.length - 1]!.column);
  for (const { column, px } of middles) {
    const d = (column - nearest) / reach;
    if (Math.abs(d) > 2.5) continue;
    const weight = Math.exp(-0.5 * d * d);
    w += weight;
    wx += weight * (column - nearest);
    wy += weight * px;
    wxx += weight * (column - nearest) ** 2;
    wxy += weight * (column - nearest) * px;
  }
  const spread = w * wxx - wx * wx;
  const slope = spread > 1e-9 * w * w ? (w * wxy - wx * wy) / spread : 0;
  const level = (wy - slope * wx) / w;
  return level + slope * (at - nearest);
}

function traceOf({ lay, upper, lower, seen, widthRows }: Read, course: Course): Trace {
  const pxPerRow = lay.spanPx / STRIP.rows;
  const widthPx = widthRows * pxPerRow;
  const [from, to] = [seen[0]!, seen[seen.length - 1]!].map((column) =>
    alongAt(lay, (column + 0.5) * STRIP.step),
  );
  const point = (toe: ToePath, column: number) => ({
    at: photoPlace(lay, (column + 0.5) * STRIP.step, toe.rows[column]!),
    sure: toe.sure[column]!,
    spread: toe.spread[column]! / widthRows,
    sigmaPx: toeSigma(toe.spread[column]! / widthRows, toe.sure[column]!) * widthPx,
  });
  const stations = seen.map((column): TraceStation => {
    const alongPx = alongAt(lay, (column + 0.5) * STRIP.step);
    const [a, b] = [point(upper, column), point(lower, column)];
    const end = alongPx - from! < reader.endWidths * widthPx || to! - alongPx < reader.endWidths * widthPx;
    return { alongPx, upper: a, lower: b, widthPx: distance(a.at, b.at), end };
  });
  return { stations, widthPx, lengthPx: course.lengthPx };
}

/** What the answer's own spread and its doubt amount to, brought to true size on pictures kept for that; widths. */
export function toeSigma(spread: number, sure: number): number {
  const doubt = Math.max(0, 1 - sure) * reader.doubtWidths ** 2;
  return reader.sigmaFactor * Math.sqrt(spread ** 2 + reader.leastSigmaWidths ** 2 + doubt);
}
