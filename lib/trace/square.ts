import type { Pixels } from "./types";

/** The square a whole photo is laid into, and the map that is answered; the same numbers stand in `demo-images/training/finder.py`. */
export const SQUARE = { side: 256, answer: 128 } as const;

export interface LaidSquare {
  /** Red, green and blue planes, 0 to 1. */
  readonly planes: Float32Array;
  /** Photo pixels to one cell of the answer. */
  readonly pxPerCell: number;
}

/** What lies beside the photo. */
const NOTHING = 0.5;

/** The photo in the upper left of the square, its longer side as long as the square's; each place the mean of what it covers. */
export function laySquare({ width, height, data }: Pixels): LaidSquare {
  const { side, answer } = SQUARE;
  const px = Math.max(width, height) / side;
  const planes = new Float32Array(3 * side * side).fill(NOTHING);
  const from = (place: number, size: number): number => Math.min(size - 1, Math.floor(place * px));
  const to = (place: number, size: number): number =>
    Math.min(size, Math.max(from(place, size) + 1, Math.round((place + 1) * px)));
  const [across, down] = [Math.floor(width / px), Math.floor(height / px)];
  for (let j = 0; j < down; j++)
    for (let i = 0; i < across; i++) {
      const sum = [0, 0, 0];
      let count = 0;
      for (let y = from(j, height); y < to(j, height); y++)
        for (let x = from(i, width); x < to(i, width); x++) {
          const k = 4 * (y * width + x);
          for (let c = 0; c < 3; c++) sum[c]! += data[k + c]!;
          count++;
        }
      for (let c = 0; c < 3; c++) planes[c * side * side + j * side + i] = sum[c]! / count / 255;
    }
  return { planes, pxPerCell: (px * side) / answer };
}
