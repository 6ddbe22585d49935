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

/** Wider than any pixel of these pictures: beyond it a pixel shows no part of the strip. */
const FAR_MM = 4;

type Rect = ReturnType<typeof stripLayout>["ink"][number];

/** The ink that reaches into each millimetre of the strip's length. */
function columnsOf(ink: readonly Rect[], lengthMm: number, spreadMm: number): readonly (readonly Rect[])[] {
  return Array.from({ length: Math.ceil(lengthMm) }, (_, mm) =>
    ink.filter((r) => r.x - spreadMm < mm + 1 && r.x + r.width + spreadMm >= mm),
  );
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
  const inked = columnsOf(ink, lengthMm, Math.max(0, spreadMm));
  const placeOf = (x: number, y: number): readonly [number, number] => {
    const at = applyHomography(back, { x, y });
    return [at.x, at.y + bow(at.x)];
  };
  const isInk = (x: number, y: number, by: number): boolean =>
    (inked[Math.max(0, Math.min(Math.floor(x), inked.length - 1))] ?? []).some(
      (r) => x >= r.x - by && x < r.x + r.width + by && y >= r.y - by && y < r.y + r.height + by,
    );
  const lightAt = ([x, y]: readonly [number, number]): number => {
    if (x < 0 || y < 0 || x > lengthMm || y > widthMm) return 0.19;
    const dark =
      spreadMm >= 0
        ? isInk(x, y, spreadMm)
        : // Paper that bleeds over eats from the edge of all ink together: pieces that touch stay one.
          [-1, 1].every((i) => [-1, 1].every((j) => isInk(x + i * spreadMm, y + j * spreadMm, 0)));
    return dark ? 0.02 : 0.75;
  };
  const isFarOff = ([x, y]: readonly [number, number]): boolean =>
    x < -FAR_MM || y < -FAR_MM || x > lengthMm + FAR_MM || y > widthMm + FAR_MM;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 9 * 0.19;
      if (!isFarOff(placeOf(x + 0.5, y + 0.5))) {
        sum = 0;
        for (const v of [1 / 6, 3 / 6, 5 / 6])
          for (const u of [1 / 6, 3 / 6, 5 / 6]) sum += lightAt(placeOf(x + u, y + v));
      }
      const value = encoded(sum / 9);
      data.set([value, value, value], 4 * (y * width + x));
    }
  return { image: { width, height, data }, map };
}

/** Light 0 to 1 to an 8-bit level (IEC 61966-2-1): edges mix in light, as in a camera. */
function encoded(light: number): number {
  return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
}
