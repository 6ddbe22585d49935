import { fail, issue, ok, type Result } from "@/lib/base";
import { distance, distanceToPolyline, type Point } from "@/lib/geometry";
import { hasNeighbour, isEnclosed } from "./beside";
import { reader } from "./model";
import { courseOfRegion, regionsOf, type RegionCourse } from "./regions";
import { laySquare } from "./square";
import { usuallySure } from "./sure";
import { traceAlone } from "./trace-bead";
import type { Pixels, ReadStrip, ReadWhole, Trace, TraceIssue } from "./types";

type PhotoPlace = Point<"photo">;

/** A weld line that both networks agree on, from the left or upper end to the other, photo pixels. */
export interface ProposedLine {
  readonly points: readonly PhotoPlace[];
  readonly widthPx: number;
}

/** Smaller than this is no bead but a speck, cells of the map. */
const LEAST_CELLS = 24;
/** A second region this large beside the first is another bead. */
const SECOND_SHARE = 0.25;
/** The map must be this sure of the region. */
const LEAST_SHARE = 0.75;
/** A bead is this much longer than wide at least. */
const LEAST_SLIMNESS = 2;
/** How far the ends that each network sees may lie apart, in lengths of the bead, and how far the widths may differ. */
const ENDS_APART = 0.1;
const ENDS_APART_WIDTHS = 0.6;
const WIDTHS_APART = 0.4;
/** The line beyond which a middle counts as curved, widths. */
const CURVED = 0.2;
const TRIES = 3;

/** What both networks say of a whole photo, before it is judged. */
export interface WholeLook {
  /** Mean share of the largest region, and how large the second is beside it. */
  readonly share: number;
  readonly second: number;
  /** Length over width of the region. */
  readonly slimness: number;
  readonly trace: Trace;
  /** The farther of both ends: how far apart the two networks put it, in lengths of the region; and in widths of the bead. */
  readonly endsApart: number;
  readonly endsApartWidths: number;
  /** Logarithm of the reader's width over the finder's. */
  readonly widthsApart: number;
  /** Median over the reader's stations. */
  readonly sure: number;
}

/**
 * Looks for the weld in a whole photo: the finder says where a bead lies, the reader is sent along it, and a line is
 * proposed only where the two agree about its ends and its width and the reader is as sure as of nearly every bead it knows
 * and sees no other bead beside it: which one is meant nobody has said.
 *
 * Errors: no-bead-in-picture, two-beads, line-unclear, or why the bead cannot be read (`traceAlone`).
 */
export async function proposeLine(
  image: Pixels,
  readWhole: ReadWhole,
  readStrip: ReadStrip,
): Promise<Result<ProposedLine, TraceIssue>> {
  const look = await lookAtWhole(image, readWhole, readStrip);
  if (!look.ok) return look;
  const { trace } = look.value;
  if (!isClear(look.value)) return fail(issue("line-unclear"));
  if ((await hasNeighbour(image, trace, readStrip)) || (await isEnclosed(image, trace, readStrip)))
    return fail(issue("two-beads"));
  return ok({ points: straightened(middleOf(trace), trace.widthPx), widthPx: trace.widthPx });
}

/** Whether both networks agree, and are sure enough to propose a line. */
export const isClear = (look: WholeLook): boolean =>
  look.share >= LEAST_SHARE &&
  look.slimness >= LEAST_SLIMNESS &&
  (look.endsApart <= ENDS_APART || look.endsApartWidths <= ENDS_APART_WIDTHS) &&
  Math.abs(look.widthsApart) <= WIDTHS_APART &&
  look.sure >= reader.usualSure;

/** The look behind `proposeLine`, for studies too. */
export async function lookAtWhole(
  image: Pixels,
  readWhole: ReadWhole,
  readStrip: ReadStrip,
): Promise<Result<WholeLook, TraceIssue>> {
  const { planes, pxPerCell } = laySquare(image);
  const [best, second] = regionsOf(await readWhole(planes), LEAST_CELLS);
  if (best === undefined) return fail(issue("no-bead-in-picture"));
  const beside = (second?.cells.length ?? 0) / best.cells.length;
  if (beside > SECOND_SHARE) return fail(issue("two-beads"));
  const seen = inPixels(courseOfRegion(best), pxPerCell);
  const traced = await traceToEnds(image, seen.middle, readStrip);
  if (!traced.ok) return traced;
  const middle = middleOf(traced.value);
  const apart = Math.max(
    distance(middle[0]!, seen.middle[0]!),
    distance(middle[middle.length - 1]!, seen.middle[seen.middle.length - 1]!),
  );
  return ok({
    share: best.share,
    second: beside,
    slimness: seen.length / seen.width,
    trace: traced.value,
    endsApart: apart / seen.length,
    endsApartWidths: apart / traced.value.widthPx,
    widthsApart: Math.log(traced.value.widthPx / seen.width),
    sure: usuallySure(traced.value),
  });
}

const middleOf = ({ stations }: Trace): readonly PhotoPlace[] =>
  stations.map(({ upper, lower }) => ({
    x: (upper.at.x + lower.at.x) / 2,
    y: (upper.at.y + lower.at.y) / 2,
  }));

/** A region's course in photo pixels. */
interface SeenCourse {
  readonly middle: readonly PhotoPlace[];
  readonly length: number;
  readonly width: number;
}

const inPixels = ({ middle, length, width }: RegionCourse, px: number): SeenCourse => ({
  middle: inOrder(middle.map(({ x, y }) => ({ x: x * px, y: y * px }))),
  length: length * px,
  width: width * px,
});

/** From the left or, where the line stands, from above. */
function inOrder(points: readonly PhotoPlace[]): readonly PhotoPlace[] {
  const [from, to] = [points[0]!, points[points.length - 1]!];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return (Math.abs(dx) >= Math.abs(dy) ? dx : dy) >= 0 ? points : points.toReversed();
}

/** Reads along the line, and farther out where the bead goes on beyond the strip. */
async function traceToEnds(
  image: Pixels,
  middle: readonly PhotoPlace[],
  read: ReadStrip,
): Promise<Result<Trace, TraceIssue>> {
  let line = straightened(middle);
  let traced = await traceAlone(image, line, read);
  for (let turn = 1; turn < TRIES && traced.ok; turn++) {
    const { stations, lengthPx } = traced.value;
    const beyond = [
      stations[0]!.alongPx < -0.09 * lengthPx,
      stations[stations.length - 1]!.alongPx > 1.09 * lengthPx,
    ];
    if (!beyond.some(Boolean)) break;
    line = longer(line, 0.15, beyond);
    traced = await traceAlone(image, line, read);
  }
  return traced;
}

/** The same line with the ends marked in `which` moved outwards by a share of its length. */
function longer(
  line: readonly PhotoPlace[],
  share: number,
  [first, last]: readonly boolean[],
): readonly PhotoPlace[] {
  const reach = share * distance(line[0]!, line[line.length - 1]!);
  const out = (end: PhotoPlace, inner: PhotoPlace): PhotoPlace => {
    const far = distance(end, inner);
    return { x: end.x + ((end.x - inner.x) / far) * reach, y: end.y + ((end.y - inner.y) / far) * reach };
  };
  const n = line.length - 1;
  return line.map((p, i) =>
    i === 0 && first ? out(p, line[1]!) : i === n && last ? out(p, line[n - 1]!) : p,
  );
}

/** Two ends where the middle runs straight, and three places between where it bends. */
function straightened(middle: readonly PhotoPlace[], width = 0): readonly PhotoPlace[] {
  const [from, to] = [middle[0]!, middle[middle.length - 1]!];
  const off = middle.reduce((far, p) => Math.max(far, distanceToPolyline(p, [from, to])), 0);
  if (off <= Math.max(CURVED * width, 0.02 * distance(from, to))) return [from, to];
  const n = middle.length - 1;
  return [0, 0.25, 0.5, 0.75, 1].map((share) => middle[Math.round(share * n)]!);
}
