import type { Point } from "@/lib/geometry";
import { isInZone, type BesideBead } from "./spot-zone";
import type { Pixels } from "./types";

/**
 * The square that is looked at for holes and spatter, and the map that is answered; the same numbers stand in
 * `demo-images/training/spots.py`. A bead is as many pixels wide as `bead` on it, or as on the photo where that is fewer.
 */
export const TILE = { side: 256, answer: 128, edge: 32, bead: 160 } as const;
const CORE = TILE.side - 2 * TILE.edge;

/** Pixels of a tile to one of the photo. */
export const spotScale = (widthPx: number): number => Math.min(1, TILE.bead / widthPx);

/** A tile's upper left corner, in its own pixels from the photo's. */
export interface TilePlace {
  readonly x: number;
  readonly y: number;
}

/** Tiles whose cores lie side by side and cover every place of the zone that is on the photo. */
export function tilesOver(
  { width, height }: Pick<Pixels, "width" | "height">,
  widthPx: number,
  beside: (at: Point<"photo">) => BesideBead,
): readonly TilePlace[] {
  const scale = spotScale(widthPx);
  const tiles: TilePlace[] = [];
  const STEP = 24;
  // No place of a tile is farther than that from one that is asked about.
  const margin = STEP / Math.SQRT2 / (scale * widthPx);
  const isWanted = (x: number, y: number): boolean => {
    for (let j = 0; j <= CORE; j += STEP)
      for (let i = 0; i <= CORE; i += STEP) {
        const at = { x: (x + i) / scale, y: (y + j) / scale };
        if (
          (at.x - width) * scale <= STEP &&
          (at.y - height) * scale <= STEP &&
          isInZone("spatter", beside(at), margin)
        )
          return true;
      }
    return false;
  };
  for (let y = 0; y < height * scale; y += CORE)
    for (let x = 0; x < width * scale; x += CORE)
      if (isWanted(x, y)) tiles.push({ x: x - TILE.edge, y: y - TILE.edge });
  return tiles;
}

/** What lies off the photo. */
const NOTHING = 0.5;
const MOST_TAPS = 6;

/** The photo under a tile, red, green and blue planes from 0 to 1: the mean of bilinear samples where the photo is finer. */
export function sampleTile(image: Pixels, { x, y }: TilePlace, scale: number): Float32Array {
  const { side } = TILE;
  const planes = new Float32Array(3 * side * side).fill(NOTHING);
  const taps = Math.min(MOST_TAPS, Math.max(1, Math.round(1 / scale)));
  const across = places(x, scale, taps, image.width);
  const down = places(y, scale, taps, image.height);
  const sum = new Float64Array(3);
  for (let j = 0; j < side; j++)
    for (let i = 0; i < side; i++) {
      sum.fill(0);
      let count = 0;
      for (const row of down[j]!)
        for (const column of across[i]!) {
          addPixel(image, column, row, sum);
          count++;
        }
      if (count === 0) continue;
      for (let c = 0; c < 3; c++) planes[(c * side + j) * side + i] = sum[c]! / count / 255;
    }
  return planes;
}

/** For each pixel of the tile's side the photo's places under it, between pixel middles; none off the photo. */
function places(from: number, scale: number, taps: number, size: number): readonly (readonly number[])[] {
  return Array.from({ length: TILE.side }, (_, i) =>
    Array.from({ length: taps }, (_, k) => (from + i + (k + 0.5) / taps) / scale - 0.5).filter(
      (at) => at >= -0.5 && at <= size - 0.5,
    ),
  );
}

function addPixel({ width, height, data }: Pixels, column: number, row: number, sum: Float64Array): void {
  const fx = Math.min(width - 1.001, Math.max(0, column));
  const fy = Math.min(height - 1.001, Math.max(0, row));
  const [i, j] = [Math.floor(fx), Math.floor(fy)];
  const [u, v] = [fx - i, fy - j];
  const k = 4 * (j * width + i);
  const down = 4 * width;
  for (let c = 0; c < 3; c++) {
    const top = data[k + c]! + (data[k + 4 + c]! - data[k + c]!) * u;
    const low = data[k + down + c]! + (data[k + down + 4 + c]! - data[k + down + c]!) * u;
    sum[c]! += top + (low - top) * v;
  }
}
