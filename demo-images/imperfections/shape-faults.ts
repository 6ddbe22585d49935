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

/** An imperfection of the bead's whole shape: its outline is the bead itself, widened by `outMm`. */
export function recordBand(
  draft: SceneDraft,
  kind: ImperfectionId,
  outMm: number,
  sizes: Record<string, number>,
): void {
  const bead = lastBead(draft);
  const left: PlanPoint[] = [];
  const right: PlanPoint[] = [];
  for (let x = bead.shape.startMm + 0.5; x < bead.shape.endMm; x += 1) {
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
    stretch: "whole-length",
  });
}
