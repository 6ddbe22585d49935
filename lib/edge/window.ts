import type { Point } from "@/lib/geometry";
import type { EdgeWindow } from "./types";

/** Pixels of a patch, each way: a search over more takes longer than a hand waits. */
export const MOST_PIXELS = 256;

/** Room around the two points, share of their distance: so far an edge may bow out between them. */
const BOW = 0.25;
/** And so many pixels of the patch at the least, of which the outermost see no whole surroundings. */
const RIM = 14;

/**
 * The piece of the photo that a path between two points may use. It is the same whichever point comes first.
 *
 * @param finestPx Photo pixels that a pixel of the patch covers at the least: what the screen shows, or what the picture has.
 * @returns Null where the points are one, or lie outside the photo.
 */
export function windowFor(
  a: Point<"photo">,
  b: Point<"photo">,
  photo: { readonly widthPx: number; readonly heightPx: number },
  finestPx: number,
): EdgeWindow | null {
  const span = Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y));
  const isOn = ({ x, y }: Point<"photo">) => x >= 0 && y >= 0 && x <= photo.widthPx && y <= photo.heightPx;
  if (span === 0 || !isOn(a) || !isOn(b)) return null;
  const stepPx = Math.max(finestPx, (span * (1 + 2 * BOW)) / (MOST_PIXELS - 2 * RIM - 2));
  const room = BOW * span + RIM * stepPx;
  const along = (from: number, to: number, size: number) => {
    const first = Math.max(0, Math.min(from, to) - room);
    const last = Math.min(size, Math.max(from, to) + room);
    return { first, count: Math.max(1, Math.floor((last - first) / stepPx)) };
  };
  const [across, down] = [along(a.x, b.x, photo.widthPx), along(a.y, b.y, photo.heightPx)];
  const corner = { x: across.first, y: down.first };
  return { corner, stepPx, columns: across.count, rows: down.count };
}

/** The patch's pixel that a photo point lies in; the outermost one beyond its edge. */
export function cellAt({ corner, stepPx, columns, rows }: EdgeWindow, at: Point<"photo">): number {
  const held = (value: number, count: number) => Math.min(count - 1, Math.max(0, Math.floor(value / stepPx)));
  return held(at.y - corner.y, rows) * columns + held(at.x - corner.x, columns);
}

/** The middle of a patch's pixel, photo pixels. */
export const middleOf = ({ corner, stepPx, columns }: EdgeWindow, cell: number): Point<"photo"> => ({
  x: corner.x + ((cell % columns) + 0.5) * stepPx,
  y: corner.y + (Math.floor(cell / columns) + 0.5) * stepPx,
});
