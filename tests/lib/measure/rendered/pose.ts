import type { RenderParamsInput, ScenarioName } from "@/demo-images";
import { phoneFocalShare } from "./assumed";
import { normal } from "../camera";

export type ScaleObjectKind = "rule" | "card" | "disc" | "strip";

/** Scenes in which the object lies beside the weld, and which way its plate faces. */
const flat = [0, 0, 1] as const;
const halfWay = [0, Math.SQRT1_2, Math.SQRT1_2] as const;
const scenes: Readonly<
  Record<ScaleObjectKind, readonly (readonly [ScenarioName, readonly [number, number, number]])[]>
> = {
  rule: [
    ["stringer-ropey", flat],
    ["stringer-pad-good", flat],
    ["poor-start-arc-strike", flat],
    ["burn-through-sheet", flat],
  ],
  card: [
    ["stainless-lap-spatter", flat],
    ["tee-hollow-undersized", halfWay],
    ["tee-porosity-soot", halfWay],
  ],
  disc: [
    ["crater-crack", flat],
    ["flat-wide-weave", flat],
    ["stainless-temper-colour", flat],
  ],
  strip: [
    ["crack-along-across", flat],
    ["gas-marks-wormholes", flat],
    ["lap-cold-lap", flat],
  ],
};

/**
 * How the camera is held, to the plate of the scale object. Two points on a rule cannot see a tilt, so those photos are
 * held square as the product assumes, five degrees of standard deviation about each axis. A card and a strip see it all; a
 * disc sees how much, and leaves open which way.
 */
const tiltDeg: Readonly<Record<ScaleObjectKind, (random: () => number) => number>> = {
  rule: (random) => 5 * Math.hypot(normal(random), normal(random)),
  card: (random) => 35 * random(),
  disc: (random) => 35 * random(),
  strip: (random) => 35 * random(),
};

/** One photo's pose and lens, drawn from what the product assumes of a phone where it assumes anything. */
export function drawPhoto(
  kind: ScaleObjectKind,
  index: number,
  random: () => number,
  megapixels: number,
  quality: "photo" | "exact-draft",
): RenderParamsInput {
  const span = (low: number, high: number): number => low + (high - low) * random();
  const [scenario, facing] = scenes[kind][index % scenes[kind].length]!;
  const turn = (): readonly [number, number, number] =>
    tilted(facing, (tiltDeg[kind](random) * Math.PI) / 180, 2 * Math.PI * random());
  let away = turn();
  // The renderer's camera goes down to 60 degrees from the vertical and no further.
  while (away[2] < 0.5) away = turn();
  const distanceMm = kind === "strip" ? span(135, 200) : span(120, 220);
  const share = phoneFocalShare * (1 + 0.1 * Math.max(-2, Math.min(2, normal(random))));
  // Radius of the photo's corner at unit focal length, for a picture of 4 by 3.
  const corner = 0.625 / share;
  const cornerShare = 0.003 * normal(random);
  return {
    scenario,
    seed: index + 1,
    megapixels,
    quality,
    // Only the strip is looked for in the pixels; the others lie on what is quickest to draw.
    ...(kind === "strip" ? {} : { bench: "rubber-mat" as const }),
    tiltDeg: (Math.acos(away[2]) * 180) / Math.PI,
    azimuthDeg: (Math.atan2(away[0], -away[1]) * 180) / Math.PI,
    rollDeg: (random() < 0.5 ? 0 : 165) + 12 * Math.max(-1.2, Math.min(1.2, normal(random))),
    distanceMm,
    fieldWidthMm: distanceMm / share,
    distortion: cornerShare / (corner ** 2 * (1 - 0.3 * corner ** 2)),
  };
}

/** A unit vector turned by `angle` away from `normal`, towards `direction` around it. */
function tilted(
  [nx, ny, nz]: readonly [number, number, number],
  angle: number,
  direction: number,
): readonly [number, number, number] {
  // The weld runs along x, and every plate here contains that direction.
  const u = [1, 0, 0] as const;
  const v = [0, nz, -ny] as const;
  const [a, b] = [Math.sin(angle) * Math.cos(direction), Math.sin(angle) * Math.sin(direction)];
  const c = Math.cos(angle);
  return [c * nx + a * u[0] + b * v[0], c * ny + a * u[1] + b * v[1], c * nz + a * u[2] + b * v[2]];
}
