import { createRandom, type Random } from "../noise/random";
import { channelOutline, paintChannel, pathLength } from "./channel";
import { centreAt, lastBead, type PlanPoint, type SceneDraft } from "./draft";

export interface GasTrackOptions {
  readonly count: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly seed: number;
}

/** A track that follows the freezing front: out from the centre and back towards the start, as a herringbone. */
function frontPath(random: Random, x: number, y: number, side: number, length: number): PlanPoint[] {
  const lean = random.between(0.5, 1.0);
  const bend = random.normal(0, 0.12);
  return Array.from({ length: 7 }, (_, i): PlanPoint => {
    const t = i / 6 - 0.5;
    return [x + length * t * Math.cos(lean) + bend * t * t * length, y + side * length * t * Math.sin(lean)];
  });
}

/** Elongated holes with dark floors, in a herringbone about the centre line. */
export function paintWormholes(draft: SceneDraft, options: GasTrackOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  for (let i = 0; i < options.count; i++) {
    const x =
      options.fromMm + ((options.toMm - options.fromMm) * (i + random.between(0.2, 0.8))) / options.count;
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const half = (toes.rightMm - toes.leftMm) / 2;
    const side = i % 2 === 0 ? 1 : -1;
    const lengthMm = random.between(1.6, 3.6);
    const y = centreAt(bead, x) + side * half * random.between(0.14, 0.45);
    const widthMm = random.between(0.5, 0.85);
    const halfWidthAt = (t: number): number =>
      (widthMm / 2) * Math.sqrt(Math.max(0, 1 - (2 * t - 1) ** 4)) * (0.75 + 0.35 * t);
    const path = frontPath(random, x, y, side, lengthMm);
    const depthMm = random.between(0.7, 1.4);
    paintChannel(draft, { path, halfWidthAt, depthMm, steepness: 2, lipMm: 0.05, mask: "hole" });
    draft.records.push({
      kind: "wormhole",
      outline: channelOutline(path, halfWidthAt),
      closed: true,
      sizes: { lengthMm: pathLength(path), widthMm, depthMm },
      place: "face",
      stretch: "run",
    });
  }
}

/** Shallow branching grooves with a floor, pressed in by gas that slid under the slag. */
export function paintGasMarks(draft: SceneDraft, options: GasTrackOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  for (let i = 0; i < options.count; i++) {
    const x = random.between(options.fromMm, options.toMm);
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const half = (toes.rightMm - toes.leftMm) / 2;
    const side = random.chance(0.5) ? 1 : -1;
    let px = x;
    let py = centreAt(bead, x) + side * half * random.between(0, 0.4);
    let heading = side * random.between(0.5, 1.1);
    const path: PlanPoint[] = [[px, py]];
    const steps = 5 + Math.floor(random.between(0, 9));
    for (let k = 0; k < steps; k++) {
      heading += random.normal(0, 0.32);
      px += 0.55 * Math.cos(heading);
      py += 0.55 * Math.sin(heading);
      if (Math.abs(py - centreAt(bead, px)) > half * 0.82) break;
      path.push([px, py]);
    }
    if (path.length < 4) continue;
    const widthMm = random.between(0.7, 1.25);
    const halfWidthAt = (t: number): number =>
      (widthMm / 2) * (1 - 0.55 * t) * Math.sqrt(Math.max(0, 1 - (2 * t - 1) ** 6));
    const depthMm = random.between(0.12, 0.22);
    paintChannel(draft, { path, halfWidthAt, depthMm, steepness: 1, lipMm: 0.015, mask: null });
    draft.records.push({
      kind: "gas-mark",
      outline: channelOutline(path, halfWidthAt),
      closed: true,
      sizes: { lengthMm: pathLength(path), widthMm, depthMm },
      place: "face",
      stretch: "run",
    });
  }
}
