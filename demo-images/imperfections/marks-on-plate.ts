import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { fractalNoise2, noise2, smoothstep } from "../noise/noise";
import { centreAt, lastBead, outlineArea, ring, type PlanPoint, type SceneDraft } from "./draft";

export interface ArcStrikeOptions {
  readonly xMm: number;
  readonly yMm: number;
  readonly diameterMm: number;
  readonly seed: number;
}

/** Where melted metal ends, in shares of the strike's radius: half-way over the edge of its bead mask. */
const MELTED_SHARE = 1.05;

/** A stray touch of the arc: a small melted pit with a splashed rim and a burnt halo on the plate. */
export function paintArcStrike(draft: SceneDraft, options: ArcStrikeOptions): void {
  const { grid } = draft;
  const radius = options.diameterMm / 2;
  const reach = radius * 3;
  const { xMm, yMm, seed } = options;
  const shareAt = (x: number, y: number): number => {
    const ragged = 1 + 0.28 * noise2(x * 0.9, y * 0.9, seed) + 0.12 * noise2(x * 3, y * 3, seed + 1);
    return (Math.hypot(x - xMm, y - yMm) / radius) * ragged;
  };
  forEachPoint(grid, { x0: xMm - reach, x1: xMm + reach, y0: yMm - reach, y1: yMm + reach }, (k, x, y) => {
    const r = shareAt(x, y);
    if (r > 3) return;
    const pit = r < 0.75 ? 0.28 * (1 - (r / 0.75) ** 2) : 0;
    const rim =
      0.22 *
      Math.exp(-(((r - 0.88) / 0.2) ** 2)) *
      (0.7 + 0.6 * fractalNoise2(x * 1.5, y * 1.5, seed + 2, 2));
    grid.h[k]! += rim - pit;
    raiseMask(grid.mask.bead, k, smoothstep(1.15, 0.95, r));
    raiseMask(grid.mask.heat, k, smoothstep(2.9, 1, r) * 0.97);
    raiseMask(grid.mask.soot, k, 0.45 * smoothstep(2.4, 1.2, r) * smoothstep(0.8, 1.2, r));
  });
  const outline = ring(xMm, yMm, (angle) => {
    let r = 0.3 * radius;
    while (r < reach && shareAt(xMm + r * Math.cos(angle), yMm + r * Math.sin(angle)) < MELTED_SHARE)
      r += 0.02;
    return r;
  });
  draft.records.push({
    kind: "arc-strike",
    outline,
    closed: true,
    // Across a circle of the melted area.
    sizes: { diameterMm: Math.sqrt((4 / Math.PI) * outlineArea(outline)) },
    place: "beside",
    stretch: null,
  });
}

export interface WireStubOptions {
  readonly xMm: number;
  readonly lengthMm: number;
  readonly diameterMm: number;
  readonly headingDeg: number;
  readonly seed: number;
}

/** A length of unmelted wire frozen into the bead at one end and bent down on the plate: a round bar, not a wall. */
export function paintWireStub(draft: SceneDraft, options: WireStubOptions): void {
  const { grid } = draft;
  const y0 = centreAt(lastBead(draft), options.xMm);
  const heading = (options.headingDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const radius = options.diameterMm / 2;
  const bowAt = (along: number): number => 0.012 * along * along;
  const place = (along: number): PlanPoint => [
    options.xMm + along * c - bowAt(along) * s,
    y0 + along * s + bowAt(along) * c,
  ];
  const beds = wireBed(draft, options.lengthMm, place);
  const bedAt = (along: number): number => {
    const f = Math.min(beds.length - 1.001, Math.max(0, along / BED_STEP_MM));
    const i = Math.floor(f);
    return beds[i]! + (beds[i + 1]! - beds[i]!) * (f - i);
  };
  const reach = options.lengthMm + 2;
  const box = { x0: options.xMm - reach, x1: options.xMm + reach, y0: y0 - reach, y1: y0 + reach };
  forEachPoint(grid, box, (k, x, y) => {
    const along = (x - options.xMm) * c + (y - y0) * s;
    const across = (y - y0) * c - (x - options.xMm) * s - bowAt(along);
    if (along < -0.8 || along > options.lengthMm || Math.abs(across) >= radius) return;
    const top = bedAt(along) + radius + Math.sqrt(radius * radius - across * across);
    if (top <= grid.h[k]!) return;
    grid.h[k] = top;
    grid.mask.spatter[k] = 190;
    grid.mask.soot[k] = 0;
    grid.mask.fume[k] = 0;
  });
  draft.records.push({
    kind: "wire-stub",
    outline: [0, 0.25, 0.5, 0.75, 1].map((t) => place(t * options.lengthMm)),
    closed: false,
    sizes: { lengthMm: options.lengthMm, diameterMm: options.diameterMm },
    place: "face",
    stretch: null,
  });
}

const BED_STEP_MM = 0.25;

/** Height of the wire's underside along it: over the ground, but never bent more sharply than wire bends. */
function wireBed(draft: SceneDraft, lengthMm: number, place: (along: number) => PlanPoint): number[] {
  const steps = Math.ceil(lengthMm / BED_STEP_MM) + 2;
  const ground = Array.from({ length: steps }, (_, i) =>
    sampleHeight({ ...draft.grid, h: draft.smooth }, ...place(i * BED_STEP_MM)),
  );
  // Frozen in at its root; from there down to the plate about as steeply as it runs.
  const fall = BED_STEP_MM / 1.1;
  const bed = [ground[0]! - 0.15];
  for (let i = 1; i < steps; i++) bed.push(Math.max(ground[i]!, bed[i - 1]! - fall));
  return bed;
}

export interface ClampMarkOptions {
  readonly xMm: number;
  readonly yMm: number;
  readonly diameterMm: number;
  readonly seed: number;
}

/** Where a screw clamp bit: a burnished ring that was turned while it was tightened. It is no imperfection of the weld. */
export function paintClampMark(draft: SceneDraft, options: ClampMarkOptions): void {
  const { grid } = draft;
  const { xMm, yMm, seed } = options;
  const radius = options.diameterMm / 2;
  const reach = 1.3 * radius;
  forEachPoint(grid, { x0: xMm - reach, x1: xMm + reach, y0: yMm - reach, y1: yMm + reach }, (k, x, y) => {
    const dx = x - xMm;
    const dy = y - yMm;
    const r = Math.hypot(dx, dy) / radius;
    if (r > 1.25 || r < 0.05) return;
    const turn = Math.atan2(dy, dx);
    // It never bears evenly: the ring is bright over part of its round, and drawn out into arcs where it slipped.
    const bearing = smoothstep(-0.35, 0.35, noise2(0.8 * Math.cos(turn), 0.8 * Math.sin(turn), seed) - 0.1);
    const groove = noise2(r * 19, turn * 0.9, seed + 1) + 0.7 * noise2(dx * 2.4, dy * 2.4, seed + 2);
    const ring = smoothstep(0.66, 0.78, r) * smoothstep(1.06, 0.97, r);
    const slip = 0.35 * smoothstep(0.3, 0.7, groove) * smoothstep(1.25, 1, r) * smoothstep(0.2, 0.6, r);
    const worn = bearing * ring * (0.38 + 0.4 * groove) + 0.7 * slip * bearing;
    grid.h[k]! -= 0.03 * bearing * ring + 0.004 * groove * ring;
    raiseMask(grid.mask.bare, k, Math.min(0.7, worn));
  });
}
