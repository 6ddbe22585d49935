import type { Point } from "@/lib/geometry";
import { simplifyPath, type PhotoPoint } from "@/lib/marks";
import { cheapestPath } from "./cheapest-path";
import { edgeField } from "./edge-field";
import { linkCosts } from "./link-cost";
import type { EdgeWindow, GreyPatch } from "./types";
import { cellAt, middleOf } from "./window";

/** More corners than this no hand would have set on one stretch; the path is drawn with fewer then. */
export const MOST_CORNERS = 24;
/** Pixels of the patch: no place of the path lies farther than this from the corners kept. A straight row of pixels has none. */
const TOLERANCE = 1.5;

/**
 * The edge that leads from one point to another, as the corners between the two: photo pixels, none on a stretch where a
 * straight line does. The two points stay as they are. What is returned carries the grain it was found with, which is
 * never finer than that of the two points: a followed edge is worth no more than a point set by hand.
 *
 * @param patch What lies in the window.
 */
export function followEdge(
  patch: GreyPatch,
  window: EdgeWindow,
  from: PhotoPoint,
  to: PhotoPoint,
): readonly PhotoPoint[] {
  const [start, end] = [cellAt(window, from), cellAt(window, to)];
  if (start === end) return [];
  const cost = linkCosts(edgeField(patch), start, end);
  const { cells } = cheapestPath(patch.columns, patch.rows, start, end, cost);
  const way = cells.slice(1, -1).map((cell) => middleOf(window, cell));
  const grainPx = Math.max(window.stepPx, from.grainPx ?? 0, to.grainPx ?? 0);
  return corners([from, ...way, to], TOLERANCE * window.stepPx).map(({ x, y }) => ({
    x: hundredths(x),
    y: hundredths(y),
    grainPx: Number(grainPx.toPrecision(3)),
  }));
}

/** What is left between the two ends, at a tolerance that is doubled until few enough are. */
function corners(way: readonly Point<"photo">[], tolerance: number): readonly Point<"photo">[] {
  const kept = simplifyPath(way, tolerance).slice(1, -1);
  return kept.length <= MOST_CORNERS ? kept : corners(way, 2 * tolerance);
}

const hundredths = (value: number): number => Math.round(value * 100) / 100;
