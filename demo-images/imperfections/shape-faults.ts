import type { ImperfectionId } from "@/lib/trade";
import { centreAt, lastBead, outlineArea, ring, type PlanPoint, type SceneDraft } from "./draft";

/** The dished end crater of the last bead, as laid. */
export function recordOpenCrater(draft: SceneDraft): void {
  const bead = lastBead(draft);
  const { endMm, leftMm, rightMm, craterDepthMm } = bead.shape;
  const half = (rightMm - leftMm) / 2;
  const x = endMm - 1.25 * half;
  // The dish's own ellipse: 1.05 half-widths along, 0.8 across (see craterDish).
  const outline = ring(
    x,
    centreAt(bead, x),
    (a) => half / Math.hypot(Math.cos(a) / 1.05, Math.sin(a) / 0.8),
    36,
  );
  draft.records.push({
    kind: "open-crater",
    outline,
    closed: true,
    sizes: { depthMm: craterDepthMm, areaMmSquared: outlineArea(outline) },
    place: "face",
    stretch: "crater",
  });
}

/** Temper colour as a band beside the bead out to `reachMm`. */
export function recordTemperColour(draft: SceneDraft, reachMm: number): void {
  recordBand(draft, "temper-colour", reachMm, { reachMm });
}

/** An imperfection of the bead's whole shape, or of a stretch of it: the bead itself, widened by `outMm`. */
export function recordBand(
  draft: SceneDraft,
  kind: ImperfectionId,
  outMm: number,
  sizes: Record<string, number>,
  limits: { readonly fromMm?: number; readonly toMm?: number } = {},
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
    stretch: limits.fromMm === undefined ? "whole-length" : "run",
  });
}

/** The lump or the cold, ragged first millimetres of the last bead, as laid. */
export function recordPoorStart(draft: SceneDraft, lengthMm: number): void {
  const { startMm } = lastBead(draft).shape;
  recordBand(draft, "poor-start", 0, { lengthMm }, { fromMm: startMm + 0.3, toMm: startMm + lengthMm });
}

export interface RootStretch {
  readonly id: ImperfectionId;
  readonly fromMm: number;
  readonly toMm: number;
  readonly halfWidthMm: number;
  readonly sizes: Record<string, number>;
}

/** A stretch of the root as seen from the back, about the joint line y = 0. */
export function recordRootStretch(draft: SceneDraft, stretch: RootStretch): void {
  const { fromMm, toMm, halfWidthMm: half } = stretch;
  draft.records.push({
    kind: stretch.id,
    outline: [
      [fromMm, -half],
      [toMm, -half],
      [toMm, half],
      [fromMm, half],
    ],
    closed: true,
    sizes: stretch.sizes,
    place: "root",
    stretch: "run",
  });
}
