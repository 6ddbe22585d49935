import { projectPoint, renderScene, type RenderedScene } from "@/demo-images";
import {
  applyHomography,
  fitHomography,
  invertHomography,
  type Homography,
  type Point,
} from "@/lib/geometry";
import { stripLayout, type RgbaImage } from "@/lib/strip";

/** A rendered photo with the strip on its plate, and where any point of the strip, lifted or not, falls in it. */
export interface StripPhoto {
  readonly image: RgbaImage;
  /** Strip mm from its top left corner, and height above the plate's top, to pixels. */
  readonly shoot: (xMm: number, yMm: number, liftMm?: number) => Point;
  readonly scene: RenderedScene;
}

export function photographStrip(params: Parameters<typeof renderScene>[0]): StripPhoto {
  const scene = renderScene(params);
  const { truth } = scene;
  const object = truth.scaleObject!;
  const plane = truth.planes.find(({ name }) => name === object.plane)!;
  // Two corners of the markers fix how the strip lies: 3 mm in from either end, at the top.
  const [a, b] = [object.keyPoints[0]!.planeMm, object.keyPoints[5]!.planeMm];
  const along = { x: (b[0] - a[0]) / 114, y: (b[1] - a[1]) / 114 };
  const { origin, alongU: u, alongV: v } = plane;
  const normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
  const shoot = (xMm: number, yMm: number, liftMm = 0): Point => {
    // On the strip y runs down, on the plate v runs up.
    const [s, t, h] = [xMm - 3, 3 - yMm, object.thicknessMm + liftMm];
    const pu = a[0] + s * along.x - t * along.y;
    const pv = a[1] + s * along.y + t * along.x;
    const at = (i: 0 | 1 | 2): number => origin[i] + pu * u[i] + pv * v[i] + h * normal[i];
    const [x, y] = projectPoint(truth.camera, [at(0), at(1), at(2)]);
    return { x, y };
  };
  return { image: rgba(scene), shoot, scene };
}

function rgba({ rgb, width, height }: RenderedScene): RgbaImage {
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let i = 0; i < width * height; i++) data.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  return { width, height, data };
}

/** The same photo with the strip lifted by `lift` (mm, along its length): its pixels drawn anew where they then fall. */
export function bent(photo: StripPhoto, lift: (xMm: number) => number): RgbaImage {
  const { image, shoot } = photo;
  const back = invertHomography(flatMap(shoot))!;
  const { lengthMm, widthMm } = stripLayout();
  const data = new Uint8ClampedArray(image.data);
  // A lift of some millimetres moves nothing farther than this about the flat strip.
  const around = [shoot(0, 0), shoot(lengthMm, 0), shoot(lengthMm, widthMm), shoot(0, widthMm)];
  const reach = (of: (p: Point) => number, most: number): readonly [number, number] => [
    Math.max(0, Math.floor(Math.min(...around.map(of))) - 12),
    Math.min(most, Math.ceil(Math.max(...around.map(of))) + 12),
  ];
  const [x0, x1] = reach(({ x }) => x, image.width);
  const [y0, y1] = reach(({ y }) => y, image.height);
  for (let row = y0; row < y1; row++)
    for (let column = x0; column < x1; column++) {
      const wanted = applyHomography(back, { x: column + 0.5, y: row + 0.5 });
      if (wanted.x < -5 || wanted.y < -5 || wanted.x > lengthMm + 5 || wanted.y > widthMm + 5) continue;
      // The place on the lifted strip that is seen here: what the lift moves is taken back, until nothing moves.
      let on = wanted;
      for (let i = 0; i < 4; i++) {
        const seen = applyHomography(back, shoot(on.x, on.y, lift(on.x)));
        on = { x: on.x + wanted.x - seen.x, y: on.y + wanted.y - seen.y };
      }
      if (on.x < -1 || on.y < -1 || on.x > lengthMm + 1 || on.y > widthMm + 1) continue;
      const from = shoot(on.x, on.y);
      for (let c = 0; c < 3; c++) data[4 * (row * image.width + column) + c] = between(image, from, c);
    }
  return { width: image.width, height: image.height, data };
}

function flatMap(shoot: StripPhoto["shoot"]): Homography {
  const page = [
    { x: 3, y: 3 },
    { x: 117, y: 3 },
    { x: 117, y: 19 },
    { x: 3, y: 19 },
  ];
  return fitHomography(
    page,
    page.map(({ x, y }) => shoot(x, y)),
  )!;
}

function between({ width, height, data }: RgbaImage, { x, y }: Point, channel: number): number {
  const at = (column: number, row: number): number =>
    data[
      4 * (Math.min(height - 1, Math.max(0, row)) * width + Math.min(width - 1, Math.max(0, column))) +
        channel
    ]!;
  const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
  const [s, t] = [x - 0.5 - left, y - 0.5 - top];
  return (
    (1 - t) * ((1 - s) * at(left, top) + s * at(left + 1, top)) +
    t * ((1 - s) * at(left, top + 1) + s * at(left + 1, top + 1))
  );
}
