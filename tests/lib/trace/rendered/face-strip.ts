import { distance, type Point } from "@/lib/geometry";
import type { Pixels, TraceStation } from "@/lib/trace/types";

/** The bead's face unrolled: rows from toe to toe, columns an even way apart along its middle. */
export interface FaceStrip {
  readonly rows: number;
  readonly columns: number;
  /** Light, 0 to 1, row by row. */
  readonly light: Float32Array;
  /** Photo pixels from column to column, and the bead's width in columns. */
  readonly stepPx: number;
  readonly widthColumns: number;
  /** The middle's place at a column. */
  at(column: number): Point<"photo">;
}

export const FACE_ROWS = 33;
/** The rows lie between these shares of the half-width: the toes' own shadows are left out. */
const FACE_REACH = 0.8;
/** A bead wider than this is laid out coarser: its ripples are so much wider too. */
const MOST_WIDE = 180;
/** Shorter than so many of its widths no rhythm can be told. */
const LEAST_WIDTHS = 2;

/**
 * Lays the face out between the stations that lie off the rounded ends. The toes are smoothed over a width and a half, since
 * their raggedness follows the ripples. Null where too little of it is left.
 */
export function faceStrip(image: Pixels, stations: readonly TraceStation[]): FaceStrip | null {
  const inner = stations.filter(({ end }) => !end);
  if (inner.length < 8) return null;
  const widths = inner.map(({ widthPx }) => widthPx).sort((a, b) => a - b);
  const widthPx = widths[widths.length >> 1]!;
  const course = smoothCourse(inner, 1.5 * widthPx);
  const stepPx = Math.max(1, widthPx / MOST_WIDE);
  const columns = Math.floor(course.lengthPx / stepPx);
  const widthColumns = widthPx / stepPx;
  if (columns < LEAST_WIDTHS * widthColumns) return null;
  const light = new Float32Array(FACE_ROWS * columns);
  for (let column = 0; column < columns; column++) {
    const { middle, half } = course.at((column + 0.5) * stepPx);
    for (let row = 0; row < FACE_ROWS; row++) {
      const u = FACE_REACH * ((2 * row) / (FACE_ROWS - 1) - 1);
      light[row * columns + column] = lightAt(image, middle.x + u * half.x, middle.y + u * half.y);
    }
  }
  const at = (column: number): Point<"photo"> => course.at(column * stepPx).middle;
  return { rows: FACE_ROWS, columns, light, stepPx, widthColumns, at };
}

interface Cut {
  readonly middle: Point<"photo">;
  /** From the middle to the lower toe. */
  readonly half: Point<"photo">;
}

function smoothCourse(
  stations: readonly TraceStation[],
  reachPx: number,
): { readonly lengthPx: number; at(px: number): Cut } {
  const alongs = stations.map(({ alongPx }) => alongPx);
  const cuts = stations.map((station) => {
    const near = stations.filter(({ alongPx }) => Math.abs(alongPx - station.alongPx) <= reachPx / 2);
    // Near an end the window would lean to one side and pull the middle with it: it is cut even.
    const reach = Math.min(station.alongPx - alongs[0]!, alongs[alongs.length - 1]! - station.alongPx);
    return meanCut(near.filter(({ alongPx }) => Math.abs(alongPx - station.alongPx) <= reach + 1e-6));
  });
  const sums = [0];
  for (let i = 1; i < cuts.length; i++)
    sums.push(sums[i - 1]! + distance(cuts[i - 1]!.middle, cuts[i]!.middle));
  let k = 0;
  return {
    lengthPx: sums[sums.length - 1]!,
    at(px) {
      while (k > 0 && sums[k]! > px) k--;
      while (k + 2 < sums.length && sums[k + 1]! <= px) k++;
      const share = (px - sums[k]!) / Math.max(1e-9, sums[k + 1]! - sums[k]!);
      const [a, b] = [cuts[k]!, cuts[k + 1]!];
      return { middle: between(a.middle, b.middle, share), half: between(a.half, b.half, share) };
    },
  };
}

function meanCut(stations: readonly TraceStation[]): Cut {
  let [mx, my, hx, hy] = [0, 0, 0, 0];
  for (const { upper, lower } of stations) {
    mx += (upper.at.x + lower.at.x) / 2;
    my += (upper.at.y + lower.at.y) / 2;
    hx += (lower.at.x - upper.at.x) / 2;
    hy += (lower.at.y - upper.at.y) / 2;
  }
  const n = stations.length;
  return { middle: { x: mx / n, y: my / n }, half: { x: hx / n, y: hy / n } };
}

const between = (a: Point<"photo">, b: Point<"photo">, share: number): Point<"photo"> => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

/** Bilinear; off the photo the nearest place on it. */
function lightAt({ width, height, data }: Pixels, x: number, y: number): number {
  const fx = Math.min(width - 1.001, Math.max(0, x - 0.5));
  const fy = Math.min(height - 1.001, Math.max(0, y - 0.5));
  const [i, j] = [Math.floor(fx), Math.floor(fy)];
  const [u, v] = [fx - i, fy - j];
  const grey = (k: number): number => 0.299 * data[k]! + 0.587 * data[k + 1]! + 0.114 * data[k + 2]!;
  const k = 4 * (j * width + i);
  const down = k + 4 * width;
  const top = grey(k) + (grey(k + 4) - grey(k)) * u;
  const low = grey(down) + (grey(down + 4) - grey(down)) * u;
  return (top + (low - top) * v) / 255;
}
