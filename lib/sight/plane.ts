import type { RgbaImage } from "@/lib/strip";

/** Brightness 0 to 255, row by row; `block` pixels of the photo make one of these. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly block: number;
  readonly data: Float32Array;
}

/** Luma of Rec. 601 of a picture whose longer side is at most `longest`: each pixel the mean of a whole block. */
export function planeOf(image: RgbaImage, longest: number): Plane {
  const block = Math.max(1, Math.ceil(Math.max(image.width, image.height) / longest));
  const width = Math.floor(image.width / block);
  const height = Math.floor(image.height / block);
  const data = new Float32Array(width * height);
  const share = 1 / (block * block);
  for (let row = 0; row < height * block; row++) {
    const to = Math.floor(row / block) * width;
    let i = 4 * row * image.width;
    for (let column = 0; column < width; column++)
      for (let u = 0; u < block; u++, i += 4)
        data[to + column]! +=
          share * (0.299 * image.data[i]! + 0.587 * image.data[i + 1]! + 0.114 * image.data[i + 2]!);
  }
  return { width, height, block, data };
}

/** Bilinear, in the plane's own pixels: (0, 0) is the top left corner of the first, whose middle is (0.5, 0.5). */
export function brightness({ width, height, data }: Plane, x: number, y: number): number {
  const u = Math.min(width - 1.001, Math.max(0, x - 0.5));
  const v = Math.min(height - 1.001, Math.max(0, y - 0.5));
  const [i, j] = [Math.floor(u), Math.floor(v)];
  const k = j * width + i;
  const top = data[k]! + (data[k + 1]! - data[k]!) * (u - i);
  const low = data[k + width]! + (data[k + width + 1]! - data[k + width]!) * (u - i);
  return top + (low - top) * (v - j);
}
