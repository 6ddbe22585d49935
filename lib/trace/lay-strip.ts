import type { Point } from "@/lib/geometry";
import type { Course } from "./course";
import { LINE_COLUMNS, STRIP } from "./strip-size";
import type { Pixels, StripPlanes } from "./types";

/** Where the strip lies on the photo. */
export interface StripLay {
  readonly course: Course;
  /** Across the strip from its first row to its last, photo pixels. */
  readonly spanPx: number;
  /** How far the strip's middle is shifted across at each column, photo pixels; empty: nowhere. */
  readonly bendPx: Float64Array;
}

/** Along the line, photo pixels, at a place between the strip's columns. */
export const alongAt = ({ course }: StripLay, column: number): number =>
  ((column - STRIP.margin) / LINE_COLUMNS) * course.lengthPx;

/** The photo's place under a place of the strip; both count from the top left corner of the first pixel. */
export function photoPlace(lay: StripLay, column: number, row: number): Point<"photo"> {
  const { point, across } = lay.course.at(alongAt(lay, column));
  const off = bendAt(lay, column) + (row / STRIP.rows - 0.5) * lay.spanPx;
  return { x: point.x + across.x * off, y: point.y + across.y * off };
}

/** The shift at a place between columns, linear between their middles. */
export function bendAt({ bendPx }: StripLay, column: number): number {
  if (bendPx.length === 0) return 0;
  const f = Math.min(bendPx.length - 1.001, Math.max(0, column - 0.5));
  const i = Math.floor(f);
  return bendPx[i]! + (bendPx[i + 1]! - bendPx[i]!) * (f - i);
}

export interface SampledStrip {
  readonly planes: StripPlanes;
  /** Share of the strip that lies on the photo. */
  readonly onPhoto: number;
}

/** What lies off the photo. */
const NOTHING = 0.5;
const MOST_TAPS = 6;

/**
 * The photo under the strip by bilinear sampling; where a pixel of the strip covers several of the photo, the mean of as
 * many samples along and across.
 */
export function sampleStrip(image: Pixels, lay: StripLay): SampledStrip {
  const { rows, columns } = STRIP;
  const plane = rows * columns;
  const planes = new Float32Array(3 * plane);
  const taps = (px: number): number => Math.min(MOST_TAPS, Math.max(1, Math.round(px)));
  const along = taps(lay.course.lengthPx / LINE_COLUMNS);
  const across = taps(lay.spanPx / rows);
  const sum = new Float64Array(4);
  let inside = 0;
  for (let column = 0; column < columns; column++) {
    const lines = Array.from({ length: along }, (_, i) => {
      const at = column + (i + 0.5) / along;
      const { point, across: square } = lay.course.at(alongAt(lay, at));
      return { point, square, bend: bendAt(lay, at) };
    });
    for (let row = 0; row < rows; row++) {
      sum.fill(0);
      for (const { point, square, bend } of lines)
        for (let j = 0; j < across; j++) {
          const off = bend + ((row + (j + 0.5) / across) / rows - 0.5) * lay.spanPx;
          addSample(image, point.x + square.x * off, point.y + square.y * off, sum);
        }
      const k = row * columns + column;
      inside += sum[3]! > 0 ? 1 : 0;
      for (let c = 0; c < 3; c++) planes[c * plane + k] = sum[3]! > 0 ? sum[c]! / sum[3]! / 255 : NOTHING;
    }
  }
  return { planes, onPhoto: inside / plane };
}

/** Adds red, green, blue and one to `sum`, if the place lies on the photo. */
function addSample({ width, height, data }: Pixels, x: number, y: number, sum: Float64Array): void {
  if (x < 0.5 || y < 0.5 || x > width - 0.5 || y > height - 0.5) return;
  const fx = Math.min(width - 1.001, x - 0.5);
  const fy = Math.min(height - 1.001, y - 0.5);
  const i = Math.floor(fx);
  const j = Math.floor(fy);
  const [u, v] = [fx - i, fy - j];
  const k = 4 * (j * width + i);
  const down = 4 * width;
  for (let c = 0; c < 3; c++) {
    const top = data[k + c]! + (data[k + 4 + c]! - data[k + c]!) * u;
    const low = data[k + down + c]! + (data[k + down + 4 + c]! - data[k + down + c]!) * u;
    sum[c]! += top + (low - top) * v;
  }
  sum[3]! += 1;
}
