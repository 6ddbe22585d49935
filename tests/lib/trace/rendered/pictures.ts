import { renderScene, type Pixel } from "@/demo-images";
import { createRandom, mixSeed } from "@/demo-images/noise/random";
import {
  keptBackScenarios,
  streetParams,
  streetScene,
  trainingScenarios,
} from "@/demo-images/street/street-scene";
import type { Point } from "@/lib/geometry";
import type { Pixels } from "@/lib/trace";

/**
 * "calibration": joints the reader was trained on, in pictures it never saw; "kept-street" and "kept-plain": joints it was
 * never trained on, as they lie about and as on the demo's bench.
 */
export const pictureKinds = ["calibration", "kept-street", "kept-plain"] as const;
export type PictureKind = (typeof pictureKinds)[number];

export interface TracePicture {
  readonly scenario: string;
  readonly image: Pixels;
  readonly left: readonly Pixel[];
  readonly right: readonly Pixel[];
  /** The weld line's two ends as somebody might pick them; null where hardly any of the bead is in the picture. */
  readonly picked: readonly Point<"photo">[] | null;
}

const seeds = { calibration: 7001, "kept-street": 9101, "kept-plain": 9102 } as const;

/** The n-th picture of a kind, with its truth. */
export function tracePicture(kind: PictureKind, n: number, megapixels = 1.2): TracePicture {
  const names = kind === "calibration" ? trainingScenarios : keptBackScenarios;
  const scenario = names[n % names.length]!;
  const seed = mixSeed(seeds[kind], n) % 2147483647;
  const picture =
    kind === "kept-plain"
      ? renderScene({ scenario, seed, megapixels })
      : renderScene(streetParams(scenario, seed, megapixels), (spec) => streetScene(spec, mixSeed(seed, 24)));
  const { rgb, width, height, truth } = picture;
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let k = 0; k < width * height; k++) for (let c = 0; c < 3; c++) data[4 * k + c] = rgb[3 * k + c]!;
  const { leftToePx: left, rightToePx: right } = truth.weld;
  return {
    scenario,
    image: { width, height, data },
    left,
    right,
    picked: picks(left, right, width, height, seed),
  };
}

/** Ends off by a seventh of the bead's width across and by a fiftieth of the length along. */
function picks(
  left: readonly Pixel[],
  right: readonly Pixel[],
  width: number,
  height: number,
  seed: number,
): readonly Point<"photo">[] | null {
  const seen = left
    .map(([x, y], i) => ({
      x: (x + right[i]![0]) / 2,
      y: (y + right[i]![1]) / 2,
      wide: Math.hypot(x - right[i]![0], y - right[i]![1]),
    }))
    .filter(({ x, y }) => x > 3 && y > 3 && x < width - 3 && y < height - 3);
  if (seen.length < 12) return null;
  const random = createRandom(mixSeed(seed, 77));
  const [from, to] = [seen[0]!, seen[seen.length - 1]!];
  const wide = seen.map((one) => one.wide).sort((a, b) => a - b)[seen.length >> 1]!;
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const [tx, ty] = [(to.x - from.x) / long, (to.y - from.y) / long];
  return [from, to].map(({ x, y }) => {
    const [along, across] = [random.normal(0, 0.02 * long), random.normal(0, wide / 7)];
    return { x: x + tx * along - ty * across, y: y + ty * along + tx * across };
  });
}
