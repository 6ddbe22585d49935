import type { Point } from "@/lib/geometry";
import { courseThrough, type Course } from "./course";
import { alongAt, photoPlace } from "./lay-strip";
import { reader } from "./model";
import { readOnce, type Read } from "./read-once";
import { LINE_COLUMNS, STRIP } from "./strip-size";
import { usuallySure } from "./sure";
import type { Pixels, ReadStrip, Trace } from "./types";

/** Across each strip, widths of the traced bead. */
const SPAN = 3;
/** Where the strip for another bead runs, and the one for a bead that shares a toe with the traced one; widths from middle to middle. */
const APART = 2.2;
const ADJOINING = 1;
/** A bead beside is seen this far along, shares of the traced length. */
const LEAST_ALONG = 0.1;
/** Toes this near each other are one line, widths. */
const SAME_TOE = 0.2;
/** What lies between two beads has a toe in common with one of them this far along, shares of the traced length. */
const LEAST_SHARED = 0.4;
/** Of two that share a toe the one with this share of the other's doubt is the bead. */
const MUCH_LESS = 0.5;

/** The bead on one side at one place along the traced one; widths of the traced bead. */
interface Neighbour {
  /** From the traced bead's toe on that side to the neighbour's nearer one; negative where they overlap. */
  readonly gap: number;
  readonly sure: number;
}

/**
 * Whether another bead lies beside a traced one, on either side up to three and a half widths off: the reader is sent along
 * a strip on each. The strip begins beyond the toe, so passes of one joint that lie in each other do not count.
 */
export async function hasNeighbour(image: Pixels, trace: Trace, read: ReadStrip): Promise<boolean> {
  for (const side of SIDES) {
    const seen = await lookBeside(image, trace, read, side * APART);
    const clear = seen.filter(({ sure }) => sure >= reader.solidFrom);
    if (clear.length >= LEAST_ALONG * PLACES) return true;
  }
  return false;
}

/**
 * Whether what is traced in doubt is the plate between two beads, or a bead and that: on both sides a bead lies against it
 * whose toe is its own, or on one a bead of which the reader is much surer. `trace` with what the reader is sure of as it said it.
 */
export async function liesBetween(image: Pixels, trace: Trace, read: ReadStrip): Promise<boolean> {
  let sides = 0;
  for (const side of SIDES) {
    const sharing = sharingToe(await lookBeside(image, trace, read, side * ADJOINING));
    if (sharing === null) continue;
    const sures = sharing.map(({ sure }) => sure).sort((a, b) => a - b);
    if (1 - sures[sures.length >> 1]! <= MUCH_LESS * (1 - usuallySure(trace))) return true;
    sides++;
  }
  return sides === SIDES.length;
}

/**
 * Whether on both sides a bead lies against what was traced, clearly seen, whose toe is its own. The plate between two beads is
 * so, and so is a pass between two others: they look alike from beside, so this is a doubt and no refusal.
 */
export async function isEnclosed(image: Pixels, trace: Trace, read: ReadStrip): Promise<boolean> {
  for (const side of SIDES) {
    const seen = await lookBeside(image, trace, read, side * ADJOINING);
    if (sharingToe(seen.filter(({ sure }) => sure >= reader.solidFrom)) === null) return false;
  }
  return true;
}

/** Where a bead beside has a toe in common with the traced one; null where it is not so far along. */
function sharingToe(seen: readonly Neighbour[]): readonly Neighbour[] | null {
  const sharing = seen.filter(({ gap }) => Math.abs(gap) <= SAME_TOE);
  return sharing.length < LEAST_SHARED * PLACES ? null : sharing;
}

const SIDES = [-1, 1] as const;
/** Columns of the answer along the line. */
const PLACES = LINE_COLUMNS / STRIP.step;

/** What the reader sees on a strip that runs beside the traced bead, its middle `off` widths away. */
async function lookBeside(
  image: Pixels,
  trace: Trace,
  readStrip: ReadStrip,
  off: number,
): Promise<readonly Neighbour[]> {
  const course = courseThrough(middleOf(trace));
  if (course === null) return [];
  const bendPx = new Float64Array(STRIP.columns).fill(off * trace.widthPx);
  const lay = { course, spanPx: SPAN * trace.widthPx, bendPx };
  const { read } = await readOnce(image, lay, readStrip, reader.reachWidths * (STRIP.rows / SPAN));
  return neighboursIn(read, trace, course, Math.sign(off));
}

const MIDDLES = 5;

/** A few places along the middle, so that the strip follows a bend and no raggedness. */
function middleOf({ stations }: Trace): readonly Point<"photo">[] {
  return Array.from({ length: MIDDLES }, (_, i) => {
    const { upper, lower } = stations[Math.round((i / (MIDDLES - 1)) * (stations.length - 1))]!;
    return { x: (upper.at.x + lower.at.x) / 2, y: (upper.at.y + lower.at.y) / 2 };
  });
}

/** What was read on one side, beside the station that lies nearest along. */
function neighboursIn(
  { lay, upper, lower, seen }: Read,
  { stations, widthPx }: Trace,
  course: Course,
  side: number,
): readonly Neighbour[] {
  return seen.flatMap((column): Neighbour[] => {
    const at = (column + 0.5) * STRIP.step;
    const along = alongAt(lay, at) / course.lengthPx;
    if (along < 0 || along > 1) return [];
    const station = stations[Math.round(along * (stations.length - 1))]!;
    const { point, across } = course.at(along * course.lengthPx);
    /** Outwards on this side, widths. */
    const out = ({ x, y }: Point<"photo">): number =>
      (side * ((x - point.x) * across.x + (y - point.y) * across.y)) / widthPx;
    const mine = [out(station.upper.at), out(station.lower.at)];
    const other = [upper, lower].map(({ rows }) => out(photoPlace(lay, at, rows[column]!)));
    return [
      {
        gap: Math.min(...other) - Math.max(...mine),
        sure: Math.min(upper.sure[column]!, lower.sure[column]!),
      },
    ];
  });
}
