import { renderScene } from "@/demo-images";
import { spotPicture } from "@/demo-images/street/spot-picture";
import { spotsOf, type TrueSpot } from "@/demo-images/street/spots-of";
import { keptBackScenarios, trainingScenarios } from "@/demo-images/street/street-scene";
import { mixSeed } from "@/demo-images/noise/random";
import type { ScenarioName } from "@/demo-images/scenarios";
import type { Point } from "@/lib/geometry";
import type { Pixels } from "@/lib/trace";
import { picks, pixelsOf } from "./pictures";

/**
 * "calibration": joints that were trained on, in pictures never seen: what is suggested is settled on these and on no
 * others. "kept-street" and "kept-bench": joints never trained on, near and among look-alikes, and as on the demo's bench.
 */
export const spotKinds = ["calibration", "kept-street", "kept-bench"] as const;
export type SpotKind = (typeof spotKinds)[number];

const seeds = { calibration: 7101, "kept-street": 9501, "kept-bench": 9502 } as const;
const MEGAPIXELS = 1.2;

export interface SpotPicture {
  readonly scenario: string;
  readonly image: Pixels;
  readonly spots: readonly TrueSpot[];
  /** The weld line's two ends as somebody might pick them; null where hardly any of the bead is in the picture. */
  readonly picked: readonly Point<"photo">[] | null;
}

/** The n-th picture of a kind, with what the generator put into it. */
export function spotPictureOf(kind: SpotKind, n: number): SpotPicture {
  const names: readonly ScenarioName[] = kind === "calibration" ? trainingScenarios : keptBackScenarios;
  const scenario = names[n % names.length]!;
  const seed = mixSeed(seeds[kind], n) % 2147483647;
  const { rgb, width, height, truth } =
    kind === "kept-bench"
      ? renderScene({ scenario, seed, megapixels: MEGAPIXELS })
      : renderScene(...spotPicture(scenario, seed, MEGAPIXELS));
  const { leftToePx, rightToePx } = truth.weld;
  return {
    scenario,
    image: pixelsOf(rgb, width, height),
    spots: spotsOf(truth),
    picked: picks(leftToePx, rightToePx, width, height, seed),
  };
}
