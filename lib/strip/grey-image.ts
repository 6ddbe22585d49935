/** Pixels as a canvas or a decoder gives them: four bytes a pixel, row by row. */
export interface RgbaImage {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray | Uint8Array;
}

/** Luma of Rec. 601 at a whole pixel, 0 to 255; coordinates are held to the picture. */
export function lumaAt(image: RgbaImage, x: number, y: number): number {
  const column = Math.min(image.width - 1, Math.max(0, x));
  const row = Math.min(image.height - 1, Math.max(0, y));
  const i = 4 * (row * image.width + column);
  return 0.299 * image.data[i]! + 0.587 * image.data[i + 1]! + 0.114 * image.data[i + 2]!;
}

/** Encoded level 0 to 255 to light 0 to 1 (IEC 61966-2-1). */
const light: readonly number[] = Array.from({ length: 256 }, (_, level) => {
  const v = level / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
});

/** Light at a whole pixel, 0 to 1: a pixel half covered by black holds half the light, not half the level. */
function lightAt(image: RgbaImage, x: number, y: number): number {
  return light[Math.round(lumaAt(image, x, y))]!;
}

/** Light between pixels, bilinear. (0, 0) is the top left corner of the top left pixel, whose middle is (0.5, 0.5). */
export function lightBetween(image: RgbaImage, x: number, y: number): number {
  const left = Math.floor(x - 0.5);
  const top = Math.floor(y - 0.5);
  const u = x - 0.5 - left;
  const v = y - 0.5 - top;
  return (
    (1 - v) * ((1 - u) * lightAt(image, left, top) + u * lightAt(image, left + 1, top)) +
    v * ((1 - u) * lightAt(image, left, top + 1) + u * lightAt(image, left + 1, top + 1))
  );
}

/** A copy whose longer side is at most `longest`, each pixel the mean of a whole block, and the block's side. */
export function shrunk(
  image: RgbaImage,
  longest: number,
): { readonly image: RgbaImage; readonly block: number } {
  const block = Math.max(1, Math.ceil(Math.max(image.width, image.height) / longest));
  const width = Math.floor(image.width / block);
  const height = Math.floor(image.height / block);
  const sums = new Float64Array(width * height);
  // Row by row as they lie in memory: a phone's photo has twelve million pixels.
  for (let row = 0; row < height * block; row++) {
    const to = Math.floor(row / block) * width;
    let i = 4 * row * image.width;
    for (let column = 0; column < width; column++)
      for (let u = 0; u < block; u++, i += 4)
        sums[to + column]! +=
          0.299 * image.data[i]! + 0.587 * image.data[i + 1]! + 0.114 * image.data[i + 2]!;
  }
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let k = 0; k < sums.length; k++) {
    const grey = sums[k]! / (block * block);
    data[4 * k] = grey;
    data[4 * k + 1] = grey;
    data[4 * k + 2] = grey;
  }
  return { image: { width, height, data }, block };
}
