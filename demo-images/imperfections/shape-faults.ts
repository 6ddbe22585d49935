import type { ImperfectionId, Stretch } from "@/lib/trade";
import { sampleHeight } from "../field/height-grid";
import { beadSections } from "../geometry/sections";
import { aboveThePlates, measuredBead } from "./measured-bead";
import { centreAt, lastBead, outlineArea, ring, type PlanPoint, type SceneDraft } from "./draft";

/** The dished end crater of the last bead, as laid. */
export function recordOpenCrater(draft: SceneDraft): void {
  const bead = lastBead(draft);
  const { endMm, leftMm, rightMm } = bead.shape;
  const half = (rightMm - leftMm) / 2;
  const x = endMm - 1.25 * half;
  const y = centreAt(bead, x);
  // The dish's own ellipse: 1.05 half-widths along, 0.8 across (see craterDish).
  const outline = ring(x, y, (a) => half / Math.hypot(Math.cos(a) / 1.05, Math.sin(a) / 0.8), 36);
  draft.records.push({
    kind: "open-crater",
    outline,
    closed: true,
    sizes: { depthMm: dishDepth(draft, outline, [x, y]), areaMmSquared: outlineArea(outline) },
    place: "face",
    stretch: "crater",
  });
}

/** Lowest point of a dish under the mean height of its rim, as it lies in the field, mm. */
function dishDepth(draft: SceneDraft, rim: readonly PlanPoint[], middle: PlanPoint): number {
  const grid = { ...draft.grid, h: draft.smooth };
  const edge = rim.reduce((sum, [x, y]) => sum + sampleHeight(grid, x, y), 0) / rim.length;
  let lowest = Infinity;
  for (const [x, y] of rim)
    for (let t = 0; t <= 0.8; t += 0.1)
      lowest = Math.min(
        lowest,
        sampleHeight(grid, middle[0] + (x - middle[0]) * t, middle[1] + (y - middle[1]) * t),
      );
  return edge - lowest;
}

/** An imperfection of the bead's whole shape, or of a stretch of it: the bead itself, widened by `outMm`. */
export function recordBand(
  draft: SceneDraft,
  kind: ImperfectionId,
  outMm: number,
  sizes: Record<string, number>,
  limits: { readonly fromMm?: number; readonly toMm?: number; readonly stretch?: Stretch } = {},
): void {
  const bead = lastBead(draft);
  const left: PlanPoint[] = [];
  const right: PlanPoint[] = [];
  const from = limits.fromMm ?? bead.shape.startMm + 0.5;
  const to = limits.toMm ?? bead.shape.endMm;
  for (let x = from; x < to; x += 1) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    left.push([x, toes.leftMm - outMm]);
    right.push([x, toes.rightMm + outMm]);
  }
  draft.records.push({
    kind,
    outline: [...left, ...right.reverse()],
    closed: true,
    sizes,
    place: "face",
    stretch: limits.stretch ?? "whole-length",
  });
}

/** The lump or the cold, ragged first millimetres of the last bead, or those after its restart, as laid. */
export function recordPoorStart(draft: SceneDraft, at: "start" | "restart", lengthMm: number): void {
  const { startMm, leftMm, rightMm, restart } = lastBead(draft).shape;
  // The new metal's rounded front reaches back over the old (see restartRelief).
  const front = 0.85 * ((rightMm - leftMm) / 2);
  const from = at === "start" ? startMm + 0.3 : (restart?.atMm ?? startMm) - front;
  const toMm = from + lengthMm;
  const { sections } = measuredBead(draft);
  const usual = sections.filter(({ xMm }) => xMm > toMm + 2).map(({ heightMm }) => heightMm);
  const all = beadSections({ ...draft.grid, h: draft.smooth }, draft.profile, lastBead(draft));
  const lump = all.filter(({ xMm }) => xMm >= from && xMm <= toMm).map(({ heightMm }) => heightMm);
  const mean = usual.reduce((sum, h) => sum + h, 0) / Math.max(1, usual.length);
  const sizes = { lengthMm, heightMm: Math.max(...lump), usualHeightMm: mean };
  recordBand(draft, "poor-start", 0, sizes, { fromMm: from, toMm, stretch: at });
}

export interface RootStretch {
  readonly id: "root-concavity" | "incomplete-penetration";
  readonly fromMm: number;
  readonly toMm: number;
  readonly halfWidthMm: number;
}

/** A stretch of the root as seen from the back, about the joint line y = 0; depth as it lies in the field. */
export function recordRootStretch(draft: SceneDraft, stretch: RootStretch): void {
  const { fromMm, toMm, halfWidthMm: half } = stretch;
  const grid = { ...draft.grid, h: draft.smooth };
  const sections = Array.from({ length: Math.floor(toMm - fromMm) - 3 }, (_, i) => ({
    ...{ xMm: fromMm + 2 + i, leftMm: -0.3, rightMm: 0.3, widthMm: 0.6, heightMm: 0 },
    ...{ lowerLegMm: null, upperLegMm: null },
  }));
  const depths = aboveThePlates({ grid, profile: draft.profile, sections }).map((h) => -h);
  draft.records.push({
    kind: stretch.id,
    outline: [
      [fromMm, -half],
      [toMm, -half],
      [toMm, half],
      [fromMm, half],
    ],
    closed: true,
    sizes: { lengthMm: toMm - fromMm, depthMm: Math.max(...depths) },
    place: "root",
    stretch: "run",
  });
}
