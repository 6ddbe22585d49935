import { fractalNoise1 } from "../noise/noise";
import { paintChannel, pathLength } from "./channel";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";
import { toePlace } from "./undercut";

export interface LackOfFusionOptions {
  readonly side: "left" | "right";
  readonly fromMm: number;
  readonly toMm: number;
  readonly widthMm: number;
  readonly seed: number;
}

/** A sharp dark line where the bead lies against the plate without having melted into it. */
export function paintLackOfFusion(draft: SceneDraft, options: LackOfFusionOptions): void {
  const bead = lastBead(draft);
  const path: PlanPoint[] = [];
  for (let x = options.fromMm; x <= options.toMm; x += 0.4) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const toe = options.side === "left" ? toes.leftMm : toes.rightMm;
    path.push([x, toe + 0.04 * fractalNoise1(x * 0.8, options.seed, 2)]);
  }
  if (path.length < 3) return;
  const half = options.widthMm / 2;
  paintChannel(draft, {
    path,
    halfWidthAt: (t) => half * Math.min(1, 8 * Math.min(t, 1 - t) + 0.2),
    depthMm: 0.4,
    steepness: 2,
    lipMm: 0.02,
    mask: "crack",
  });
  draft.records.push({
    kind: "lack-of-fusion",
    outline: path,
    closed: false,
    sizes: { lengthMm: pathLength(path), widthMm: options.widthMm },
    place: toePlace(draft, options.side),
    stretch: "run",
  });
}
