import type { ImperfectionId, Stretch } from "@/lib/trade";
import { createRandom, type Random } from "../noise/random";
import { paintChannel, pathLength } from "./channel";
import { centreAt, lastBead, type PlanPoint, type SceneDraft } from "./draft";

export interface CraterCrackOptions {
  readonly arms: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly seed: number;
}

export interface LongitudinalCrackOptions {
  readonly fromMm: number;
  readonly toMm: number;
  readonly widthMm: number;
  readonly seed: number;
}

export interface TransverseCrackOptions {
  readonly xMm: number;
  readonly widthMm: number;
  readonly seed: number;
}

/** A jagged walk from a point along a heading: cracks run between grains, never straight. */
function crackPath(
  random: Random,
  from: PlanPoint,
  heading: number,
  lengthMm: number,
  stepMm = 0.4,
): PlanPoint[] {
  const path: PlanPoint[] = [from];
  let [x, y] = from;
  let drift = 0;
  for (let walked = 0; walked < lengthMm; walked += stepMm) {
    drift = 0.6 * drift + random.normal(0, 0.3);
    x += stepMm * Math.cos(heading + drift);
    y += stepMm * Math.sin(heading + drift);
    path.push([x, y]);
  }
  return path;
}

function paintCrack(draft: SceneDraft, path: readonly PlanPoint[], widthMm: number): void {
  paintChannel(draft, {
    path,
    halfWidthAt: (t) => (widthMm / 2) * (0.45 + 0.55 * Math.sin(Math.PI * Math.min(1, 0.15 + 0.85 * t))),
    depthMm: 0.35,
    steepness: 1.5,
    lipMm: 0.01,
    mask: "crack",
  });
}

function record(
  draft: SceneDraft,
  kind: ImperfectionId,
  path: readonly PlanPoint[],
  widthMm: number,
  stretch: Stretch,
): void {
  draft.records.push({
    kind,
    outline: path,
    closed: false,
    sizes: { lengthMm: pathLength(path), widthMm },
    place: "face",
    stretch,
  });
}

/** A star of short cracks from the bottom of the crater. */
export function paintCraterCrack(draft: SceneDraft, options: CraterCrackOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  const half = (bead.shape.rightMm - bead.shape.leftMm) / 2;
  const x = bead.shape.endMm - 1.25 * half;
  const middle: PlanPoint = [x, centreAt(bead, x) + 0.1 * half];
  for (let i = 0; i < options.arms; i++) {
    const heading = (2 * Math.PI * i) / options.arms + random.normal(0.3, 0.25);
    const path = crackPath(random, middle, heading, options.lengthMm * random.between(0.6, 1.1), 0.28);
    paintCrack(draft, path, options.widthMm);
    record(draft, "crater-crack", path, options.widthMm, "crater");
  }
}

export function paintLongitudinalCrack(draft: SceneDraft, options: LongitudinalCrackOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  const path: PlanPoint[] = [];
  let drift = 0;
  for (let x = options.fromMm; x <= options.toMm; x += 0.5) {
    drift = 0.9 * drift + random.normal(0, 0.07);
    path.push([x, centreAt(bead, x) + drift]);
  }
  paintCrack(draft, path, options.widthMm);
  record(draft, "longitudinal-crack", path, options.widthMm, "run");
}

export function paintTransverseCrack(draft: SceneDraft, options: TransverseCrackOptions): void {
  const random = createRandom(options.seed);
  const toes = lastBead(draft).toesAt(options.xMm);
  if (toes === null) return;
  const width = toes.rightMm - toes.leftMm;
  const path = crackPath(
    random,
    [options.xMm, toes.leftMm - 0.4],
    Math.PI / 2 + random.normal(0, 0.08),
    width + 0.8,
    0.35,
  );
  paintCrack(draft, path, options.widthMm);
  record(draft, "transverse-crack", path, options.widthMm, "run");
}
