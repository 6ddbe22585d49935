import type { ImperfectionId, Place, Stretch } from "@/lib/trade";
import { noise1 } from "../noise/noise";
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

/** A jagged walk from a point along a heading: cracks run from grain to grain, never straight and never in a curve. */
export function crackPath(random: Random, from: PlanPoint, heading: number, lengthMm: number): PlanPoint[] {
  const path: PlanPoint[] = [from];
  let [x, y] = from;
  let aside = 0;
  for (let walked = 0; walked < lengthMm;) {
    const step = Math.min(random.between(0.14, 0.52), Math.max(0.1, lengthMm - walked));
    // Each grain turns it, and the pull across the weld turns it back.
    const turn = random.normal(-0.9 * aside, 0.55);
    x += step * Math.cos(heading + turn);
    y += step * Math.sin(heading + turn);
    aside += step * Math.sin(turn);
    walked += step * Math.cos(turn);
    path.push([x, y]);
  }
  return path;
}

/** Shares of the full width along a crack: gaping here, closed to a hair there, run out at its tip. */
function crackWidths(seed: number): (t: number) => number {
  return (t) =>
    Math.sqrt(Math.max(0, 1 - t ** 3)) * (0.42 + 0.58 * Math.max(0, Math.min(1, 0.5 + noise1(t * 9, seed))));
}

/** Cuts a crack into the surface; returns the widest that was cut, mm. */
export function cutCrack(
  draft: SceneDraft,
  path: readonly PlanPoint[],
  widthMm: number,
  seed: number,
): number {
  const shareAt = crackWidths(seed);
  const halfWidthAt = (t: number): number => (widthMm / 2) * shareAt(t);
  paintChannel(draft, { path, halfWidthAt, depthMm: 0.35, steepness: 1.5, lipMm: 0.012, mask: "crack" });
  return Math.max(...Array.from({ length: 101 }, (_, i) => 2 * halfWidthAt(i / 100)));
}

/** Cuts the crack and records it; its width is the widest that was cut. */
export function paintCrack(
  draft: SceneDraft,
  kind: ImperfectionId,
  path: readonly PlanPoint[],
  widthMm: number,
  where: { readonly place: Place; readonly stretch: Stretch },
  seed: number,
): void {
  const cutMm = cutCrack(draft, path, widthMm, seed);
  draft.records.push({
    kind,
    outline: path,
    closed: false,
    sizes: { lengthMm: pathLength(path), widthMm: cutMm },
    ...where,
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
    const path = crackPath(random, middle, heading, options.lengthMm * random.between(0.6, 1.1));
    paintCrack(
      draft,
      "crater-crack",
      path,
      options.widthMm,
      { place: "face", stretch: "crater" },
      options.seed + i,
    );
  }
}

export function paintLongitudinalCrack(draft: SceneDraft, options: LongitudinalCrackOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  const path: PlanPoint[] = [];
  let drift = 0;
  for (let x = options.fromMm; x <= options.toMm; x += random.between(0.2, 0.6)) {
    drift = 0.9 * drift + random.normal(0, 0.11);
    path.push([x, centreAt(bead, x) + drift]);
  }
  paintCrack(
    draft,
    "longitudinal-crack",
    path,
    options.widthMm,
    { place: "face", stretch: "run" },
    options.seed,
  );
}

export function paintTransverseCrack(draft: SceneDraft, options: TransverseCrackOptions): void {
  const random = createRandom(options.seed);
  const toes = lastBead(draft).toesAt(options.xMm);
  if (toes === null) return;
  const width = toes.rightMm - toes.leftMm;
  const from: PlanPoint = [options.xMm, toes.leftMm - 0.4];
  const path = crackPath(random, from, Math.PI / 2 + random.normal(0, 0.08), width + 0.8);
  paintCrack(
    draft,
    "transverse-crack",
    path,
    options.widthMm,
    { place: "face", stretch: "run" },
    options.seed,
  );
}
