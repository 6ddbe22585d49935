import {
  applyHomography,
  fitHomography,
  invertHomography,
  type Homography,
  type Point,
} from "@/lib/geometry";
import { stripLayout, type RgbaImage } from "@/lib/strip";

export interface StripPicture {
  readonly image: RgbaImage;
  /** Strip mm to picture px. */
  readonly map: Homography;
}

/** Paints the strip as seen with its four corners at these places; `bow` shifts it across its length, `spreadMm` lets the ink creep. */
export function drawStrip(
  width: number,
  height: number,
  corners: readonly Point[],
  bow: (xMm: number) => number = () => 0,
  spreadMm = 0,
): StripPicture {
  const { lengthMm, widthMm, ink } = stripLayout();
  const page = [
    { x: 0, y: 0 },
    { x: lengthMm, y: 0 },
    { x: lengthMm, y: widthMm },
    { x: 0, y: widthMm },
  ];
  const map = fitHomography(page, corners)!;
  const back = invertHomography(map)!;
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  const lightOf = (x: number, y: number): number => {
    const at = applyHomography(back, { x, y });
    const mm = { x: at.x, y: at.y + bow(at.x) };
    if (mm.x < 0 || mm.y < 0 || mm.x > lengthMm || mm.y > widthMm) return 0.19;
    const dark = ink.some(
      (r) =>
        mm.x >= r.x - spreadMm &&
        mm.x < r.x + r.width + spreadMm &&
        mm.y >= r.y - spreadMm &&
        mm.y < r.y + r.height + spreadMm,
    );
    return dark ? 0.02 : 0.75;
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (const v of [1 / 6, 3 / 6, 5 / 6])
        for (const u of [1 / 6, 3 / 6, 5 / 6]) sum += lightOf(x + u, y + v);
      const value = encoded(sum / 9);
      data.set([value, value, value], 4 * (y * width + x));
    }
  return { image: { width, height, data }, map };
}

/** Light 0 to 1 to an 8-bit level (IEC 61966-2-1): edges mix in light, as in a camera. */
function encoded(light: number): number {
  return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
}
