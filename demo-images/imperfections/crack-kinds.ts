import { fractalNoise1 } from "../noise/noise";
import { createRandom } from "../noise/random";
import { crackPath, cutCrack, paintCrack } from "./crack";
import { centreAt, lastBead, ring, type PlanPoint, type SceneDraft } from "./draft";
import { planShare, toePlace } from "./undercut";

export interface ToeCrackOptions {
  readonly side: "left" | "right";
  readonly fromMm: number;
  readonly toMm: number;
  readonly widthMm: number;
  readonly seed: number;
}

/** A crack in the plate that follows the toe a few tenths outside it, jumping nearer and further. */
export function paintToeCrack(draft: SceneDraft, options: ToeCrackOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  const outward = options.side === "left" ? -1 : 1;
  const plan = planShare(draft, options.side);
  const path: PlanPoint[] = [];
  for (let x = options.fromMm; x <= options.toMm; x += random.between(0.2, 0.7)) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const toe = options.side === "left" ? toes.leftMm : toes.rightMm;
    const out = 0.5 + 0.3 * fractalNoise1(x * 0.35, options.seed, 2) + random.normal(0, 0.07);
    path.push([x, toe + outward * plan * Math.max(0.15, out)]);
  }
  const place = toePlace(draft, options.side);
  paintCrack(draft, "toe-crack", path, options.widthMm, { place, stretch: "run" }, options.seed);
}

export interface RadiatingCrackOptions {
  readonly xMm: number;
  readonly arms: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly seed: number;
}

const onFace = { place: "face", stretch: "run" } as const;

/** Cracks that run out from one point of the face. */
export function paintRadiatingCrack(draft: SceneDraft, options: RadiatingCrackOptions): void {
  const random = createRandom(options.seed);
  const middle: PlanPoint = [options.xMm, centreAt(lastBead(draft), options.xMm)];
  for (let i = 0; i < options.arms; i++) {
    const heading = (2 * Math.PI * i) / options.arms + random.normal(0.2, 0.18);
    const path = crackPath(random, middle, heading, options.lengthMm * random.between(0.65, 1.1));
    paintCrack(draft, "radiating-crack", path, options.widthMm, onFace, options.seed + i);
  }
}

export interface CrackGroupOptions {
  readonly xMm: number;
  readonly count: number;
  readonly radiusMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly seed: number;
}

/** Separate short cracks at odds with each other within a patch of the face; the patch is one imperfection. */
export function paintCrackGroup(draft: SceneDraft, options: CrackGroupOptions): void {
  const random = createRandom(options.seed);
  const { xMm, radiusMm, count } = options;
  const y = centreAt(lastBead(draft), xMm);
  for (let i = 0; i < count; i++) {
    // One in the middle and the others about it, far enough apart that none runs into its neighbour.
    const turn = (2 * Math.PI * i) / (count - 1) + random.normal(0, 0.12);
    const out = i === 0 ? 0 : radiusMm;
    const heading = 2.4 * i + random.between(0, 0.7);
    const length = options.lengthMm * random.between(0.75, 1.05);
    const from: PlanPoint = [
      xMm + out * Math.cos(turn) - 0.5 * length * Math.cos(heading),
      y + 0.85 * out * Math.sin(turn) - 0.5 * length * Math.sin(heading),
    ];
    cutCrack(draft, crackPath(random, from, heading, length), options.widthMm, options.seed + i);
  }
  const reach = radiusMm + 0.5 * options.lengthMm;
  draft.records.push({
    kind: "crack-group",
    outline: ring(xMm, y, () => reach),
    closed: true,
    sizes: { diameterMm: 2 * reach, crackCount: count },
    ...onFace,
  });
}

export interface BranchingCrackOptions {
  readonly fromMm: number;
  readonly lengthMm: number;
  readonly branches: number;
  readonly widthMm: number;
  readonly seed: number;
}

/** One crack along the face that forks: each branch leaves it to the other side and runs out. */
export function paintBranchingCrack(draft: SceneDraft, options: BranchingCrackOptions): void {
  const random = createRandom(options.seed);
  const from: PlanPoint = [options.fromMm, centreAt(lastBead(draft), options.fromMm)];
  const heading = random.normal(0, 0.08);
  const trunk = crackPath(random, from, heading, options.lengthMm);
  paintCrack(draft, "branching-crack", trunk, options.widthMm, onFace, options.seed);
  for (let i = 0; i < options.branches; i++) {
    const share = 0.25 + (0.5 * (i + 0.5)) / options.branches;
    const root = trunk[Math.round(share * (trunk.length - 1))]!;
    const side = i % 2 === 0 ? 1 : -1;
    const length = options.lengthMm * random.between(0.22, 0.34);
    const path = crackPath(random, root, heading + side * random.between(0.6, 0.95), length);
    paintCrack(draft, "branching-crack", path, 0.85 * options.widthMm, onFace, options.seed + 1 + i);
  }
}
