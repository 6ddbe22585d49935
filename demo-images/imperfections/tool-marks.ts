import { forEachPoint, raiseMask } from "../field/height-grid";
import { noise2, smoothstep } from "../noise/noise";
import { createRandom } from "../noise/random";
import { lastBead, outlineArea, type PlanPoint, type SceneDraft } from "./draft";
import { toePlace } from "./undercut";

export interface GrindingMarkOptions {
  readonly xMm: number;
  readonly yMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly depthMm: number;
  readonly headingDeg: number;
  readonly seed: number;
}

/** Where a hollow of the half axes `a` and `b` ends, along and across it: walked outwards until its share is one. */
const rimOf = (shareAt: (along: number, across: number) => number, a: number, b: number) =>
  Array.from({ length: 40 }, (_, i): readonly [along: number, across: number] => {
    const angle = (2 * Math.PI * i) / 40;
    let t = 0.3;
    while (t < 1.4 && shareAt(t * a * Math.cos(angle), t * b * Math.sin(angle)) < 1) t += 0.01;
    return [t * a * Math.cos(angle), t * b * Math.sin(angle)];
  });

/** Where the edge of a disc dug in: a hollow as long as the sweep, bright, scored along it. */
export function paintGrindingMark(draft: SceneDraft, options: GrindingMarkOptions): void {
  const { grid } = draft;
  const { xMm, yMm, seed } = options;
  const turn = (options.headingDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [a, b] = [options.lengthMm / 2, options.widthMm / 2];
  // The disc comes down at an angle: one long side is cut clean, the other runs out in scratches.
  const shareAt = (along: number, across: number): number => {
    const bow = across + 0.05 * ((along * along) / a);
    const ragged = 0.16 * noise2(along * 0.25, bow * 5, seed) * smoothstep(-0.6, 0.6, bow / b);
    return Math.hypot(along / a, bow / b) * (1 + ragged);
  };
  const reach = a * 1.4;
  forEachPoint(grid, { x0: xMm - reach, x1: xMm + reach, y0: yMm - reach, y1: yMm + reach }, (k, x, y) => {
    const along = (x - xMm) * c + (y - yMm) * s;
    const across = (y - yMm) * c - (x - xMm) * s;
    const r = shareAt(along, across);
    if (r > 1.35) return;
    const score =
      noise2(along * 0.16, across * 7, seed + 1) + 0.7 * noise2(along * 0.3, across * 16, seed + 2);
    const cut = smoothstep(1, 0.2, r);
    grid.h[k]! -= options.depthMm * cut - 0.014 * score * smoothstep(1.1, 0.8, r);
    // Beyond the hollow single grains of the disc still scratched the scale.
    const worn = smoothstep(1.06, 0.94, r) + smoothstep(0.5, 0.9, score) * smoothstep(1.35, 1, r);
    raiseMask(grid.mask.bare, k, worn * (0.86 + 0.12 * score));
    if (worn > 0.5) grid.mask.fume[k] = grid.mask.soot[k] = 0;
  });
  const outline = rimOf(shareAt, a, b).map(([along, across]): PlanPoint => [
    xMm + along * c - across * s,
    yMm + along * s + across * c,
  ]);
  draft.records.push({
    kind: "grinding-mark",
    outline,
    closed: true,
    sizes: { lengthMm: options.lengthMm, depthMm: options.depthMm, areaMmSquared: outlineArea(outline) },
    place: "beside",
    stretch: null,
  });
}

export interface ChippingMarksOptions {
  readonly side: "left" | "right";
  readonly count: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly depthMm: number;
  readonly seed: number;
}

/** One blow: a straight edge driven in, steep on the near side, sloping up on the other. */
interface Dent {
  readonly x: number;
  readonly y: number;
  /** Of the edge. */
  readonly heading: number;
  readonly length: number;
  readonly width: number;
  readonly depth: number;
}

function cutDent({ grid }: SceneDraft, { x: x0, y: y0, heading, length, width, depth }: Dent): void {
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  forEachPoint(grid, { x0: x0 - length, x1: x0 + length, y0: y0 - length, y1: y0 + length }, (k, x, y) => {
    const along = ((x - x0) * c + (y - y0) * s) / (length / 2);
    const across = ((y - y0) * c - (x - x0) * s) / width + 0.25;
    // One corner of the edge bites deeper than the other.
    const bite = smoothstep(1, 0.25, Math.abs(along)) * (0.75 + 0.25 * along);
    const wall =
      smoothstep(-0.16, 0, across) * Math.max(0, 1 - Math.max(0, across) / (0.3 + 0.7 * bite)) ** 1.3;
    grid.h[k]! -= depth * bite * wall;
    // What was driven out stands as a burr along the steep side.
    grid.h[k]! += 0.22 * depth * bite * Math.exp(-(((across + 0.24) / 0.1) ** 2));
    raiseMask(grid.mask.bare, k, 0.85 * smoothstep(0.02, 0.2, bite * wall));
  });
}

function dentOutline({ x, y, heading, length, width }: Dent): PlanPoint[] {
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const corners = [
    [-1, -0.3],
    [1, -0.3],
    [1, 0.65],
    [-1, 0.65],
  ] as const;
  return corners.map(([along, across]): PlanPoint => [
    x + (along * c * length) / 2 - across * s * width,
    y + (along * s * length) / 2 + across * c * width,
  ]);
}

/** Dents of the chisel end of a chipping hammer in the plate beside the toe, about the same way round each. */
export function paintChippingMarks(draft: SceneDraft, options: ChippingMarksOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  const outward = options.side === "left" ? -1 : 1;
  const blow = random.between(0.25, 0.5);
  for (let i = 0; i < options.count; i++) {
    const pace = (options.toMm - options.fromMm) / options.count;
    const x = options.fromMm + (i + random.between(0.25, 0.75)) * pace;
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const toe = options.side === "left" ? toes.leftMm : toes.rightMm;
    const y = toe + outward * random.between(1.4, 3.4);
    const heading = blow + random.normal(0, 0.16);
    const dent: Dent = {
      x,
      y,
      heading,
      length: options.lengthMm * random.between(0.8, 1.15),
      width: options.widthMm * random.between(0.85, 1.1),
      depth: options.depthMm * random.between(0.75, 1),
    };
    cutDent(draft, dent);
    draft.records.push({
      kind: "chipping-mark",
      outline: dentOutline(dent),
      closed: true,
      sizes: { lengthMm: dent.length, widthMm: dent.width, depthMm: dent.depth },
      place: toePlace(draft, options.side),
      stretch: null,
    });
  }
}
