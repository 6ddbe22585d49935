import { renderScene, type Pixel } from "@/demo-images";
import type { BeadShape } from "@/demo-images/geometry/bead";
import { createRipples } from "@/demo-images/geometry/ripples";
import { createRandom, mixSeed } from "@/demo-images/noise/random";
import type { ScenarioName } from "@/demo-images/scenarios";
import {
  keptBackScenarios,
  streetParams,
  streetScene,
  trainingScenarios,
} from "@/demo-images/street/street-scene";
import type { SceneSpec } from "@/demo-images/scene";
import type { Truth } from "@/demo-images/truth";
import type { Point } from "@/lib/geometry";
import type { Pixels } from "@/lib/trace";

/**
 * "calibration": joints the reader was trained on, in pictures it never saw; "kept-street" and "kept-plain": joints it was
 * never trained on, as they lie about and as on the demo's bench. The stated intervals are set on "fit-street" and
 * "fit-plain", other scenes of joints never trained on, and on no others. "fresh-tune" and "fresh-kept" came when the
 * kept ones had been seen: every joint twice on the street and twice on the bench in 24 pictures. "ripples-tune" holds joints
 * of the training alone, and the rules by which ripples are read were settled on it; "ripples-kept" holds every joint.
 */
export const pictureKinds = [
  "calibration",
  "fit-street",
  "fit-plain",
  "kept-street",
  "kept-plain",
  "fresh-tune",
  "fresh-kept",
  "ripples-tune",
  "ripples-kept",
] as const;
export type PictureKind = (typeof pictureKinds)[number];

export interface TracePicture {
  readonly scenario: string;
  readonly image: Pixels;
  /** How many beads lie in the scene; one is asked about. */
  readonly beads: number;
  readonly truth: Truth;
  /** Outlines of metal rolled over a toe, px. */
  readonly rolls: readonly (readonly Pixel[])[];
  /** Where along the weld each ripple of the asked bead was drawn, mm from its start, margins beyond both ends too. */
  readonly ripplesMm: readonly number[];
  readonly left: readonly Pixel[];
  readonly right: readonly Pixel[];
  /** The weld line's two ends as somebody might pick them; null where hardly any of the bead is in the picture. */
  readonly picked: readonly Point<"photo">[] | null;
}

/** "refusal" pictures are those that are spoilt on purpose. */
const seeds = {
  calibration: 7002,
  "fit-street": 9201,
  "fit-plain": 9202,
  "kept-street": 9211,
  "kept-plain": 9212,
  refusal: 9221,
  "fresh-tune": 9311,
  "fresh-kept": 9312,
  "ripples-tune": 9401,
  "ripples-kept": 9402,
} as const;

const namesOf: Readonly<Partial<Record<PictureKind | "refusal", readonly ScenarioName[]>>> = {
  calibration: trainingScenarios,
  "ripples-tune": trainingScenarios,
  "ripples-kept": [...keptBackScenarios, ...trainingScenarios],
};

export function pixelsOf(rgb: Uint8Array, width: number, height: number): Pixels {
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let k = 0; k < width * height; k++) for (let c = 0; c < 3; c++) data[4 * k + c] = rgb[3 * k + c]!;
  return { width, height, data };
}

/** The n-th picture of a kind, with its truth. */
export function tracePicture(
  kind: PictureKind | "refusal",
  n: number,
  megapixels = 1.2,
  alter: (bead: BeadShape) => BeadShape = (bead) => bead,
): TracePicture {
  const names = namesOf[kind] ?? keptBackScenarios;
  // Fresh kinds go round their joints on the street, and then on the bench.
  const onBench =
    kind.endsWith("plain") || (/^(fresh|ripples)/.test(kind) && n % (2 * names.length) >= names.length);
  const scenario = names[n % names.length]!;
  const seed = mixSeed(seeds[kind], n) % 2147483647;
  let ripplesMm: readonly number[] = [];
  const noted = (spec: SceneSpec): SceneSpec => {
    const beads = spec.beads.map(alter);
    const { ripple, startMm, endMm, seed: beadSeed } = beads[beads.length - 1]!;
    ripplesMm = createRipples(ripple, startMm, endMm, beadSeed).edgesMm.map((at) => at - startMm);
    return { ...spec, beads };
  };
  const picture = onBench
    ? renderScene({ scenario, seed, megapixels }, noted)
    : renderScene(streetParams(scenario, seed, megapixels), (spec) =>
        noted(streetScene(spec, mixSeed(seed, 24))),
      );
  const { rgb, width, height, truth } = picture;
  const { leftToePx: left, rightToePx: right } = truth.weld;
  return {
    scenario,
    image: pixelsOf(rgb, width, height),
    beads: 1 + (truth.before ?? []).filter(([line]) => line.length > 3).length,
    truth,
    rolls: truth.imperfections.filter(({ kind }) => kind === "overlap").map(({ outlinePx }) => outlinePx),
    ripplesMm,
    left,
    right,
    picked: picks(left, right, width, height, seed),
  };
}

/** Ends off by a seventh of the bead's width across and by a fiftieth of the length along. */
export function picks(
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
