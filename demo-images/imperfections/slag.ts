import type { Place } from "@/lib/trade";
import { forEachPoint, raiseMask, type MaskName } from "../field/height-grid";
import { createRandom } from "../noise/random";
import { fractalNoise2, noise1, smoothstep } from "../noise/noise";
import { channelOutline, pathLength } from "./channel";
import { toePlace } from "./undercut";
import { lastBead, outlineArea, ring, type PlanPoint, type SceneDraft } from "./draft";

export interface SlagLineOptions {
  /** Along a toe of the last bead, or in the valley that a plan path follows with x growing. */
  readonly along:
    | { readonly toe: "left" | "right"; readonly fromMm: number; readonly toMm: number }
    | { readonly path: readonly PlanPoint[] };
  readonly widthMm: number;
  readonly seed: number;
}

/** The path a slag line follows: given, or the toe a little on the plate's side. */
function slagPath(draft: SceneDraft, { along, widthMm }: SlagLineOptions): readonly PlanPoint[] {
  if ("path" in along) return along.path;
  const { toe, fromMm, toMm } = along;
  const outward = toe === "left" ? -1 : 1;
  const path: PlanPoint[] = [];
  for (let x = fromMm; x <= toMm; x += 0.5) {
    const toes = lastBead(draft).toesAt(x);
    if (toes !== null)
      path.push([x, (toe === "left" ? toes.leftMm : toes.rightMm) + outward * 0.2 * widthMm]);
  }
  return path;
}

/** A line of dark glassy slag lying in a valley: at a toe or between two beads. */
export function paintSlagLine(draft: SceneDraft, options: SlagLineOptions): void {
  const { grid } = draft;
  const path = slagPath(draft, options);
  if (path.length < 2) return;
  const [first, last] = [path[0]!, path[path.length - 1]!];
  const shareAt = (x: number): number => (x - first[0]) / (last[0] - first[0]);
  const halfAt = slagHalfWidth(options, pathLength(path));
  const ys = path.map((p) => p[1]);
  const box = {
    x0: first[0],
    x1: last[0],
    y0: Math.min(...ys) - options.widthMm,
    y1: Math.max(...ys) + options.widthMm,
  };
  forEachPoint(grid, box, (k, x, y) => {
    const t = shareAt(x);
    const aside = y - pathY(path, t) + 0.18 * fractalNoise2(x * 1.4, y * 1.4, options.seed + 4, 2);
    const r = Math.abs(aside) / Math.max(0.01, halfAt(t));
    if (r > 1.15) return;
    const body = smoothstep(1.1, 0.75, r);
    grid.h[k]! +=
      body * (0.32 + 0.25 * fractalNoise2(x * 0.9, y * 1.1, options.seed + 5, 3)) * options.widthMm;
    raiseMask(grid.mask.slag, k, body * 1.3);
  });
  const shares = path.map((_, i) => i / (path.length - 1));
  draft.records.push({
    kind: "trapped-slag",
    outline: channelOutline(path, halfAt),
    closed: true,
    sizes: { lengthMm: pathLength(path), widthMm: 2 * Math.max(...shares.map(halfAt)) },
    place: slagPlace(draft, options, path),
    stretch: "run",
  });
}

/** Half the line's width at the share t of its length: pinched and swollen, run out at both ends. */
function slagHalfWidth({ widthMm, seed }: SlagLineOptions, lengthMm: number): (t: number) => number {
  return (t) => {
    const ends = Math.sqrt(Math.max(0, 1 - (2 * t - 1) ** 8));
    return (widthMm / 2) * ends * (0.85 + 0.4 * noise1(t * lengthMm * 0.5, seed));
  };
}

function pathY(path: readonly PlanPoint[], t: number): number {
  const f = t * (path.length - 1);
  const i = Math.min(path.length - 2, Math.max(0, Math.floor(f)));
  return path[i]![1] + (path[i + 1]![1] - path[i]![1]) * (f - i);
}

/** The toe of the last bead that the line lies at, or its face where it is well between two beads. */
function slagPlace(
  draft: SceneDraft,
  { along, widthMm }: SlagLineOptions,
  path: readonly PlanPoint[],
): Place {
  if ("toe" in along) return toePlace(draft, along.toe);
  const [x, y] = path[path.length >> 1]!;
  const toes = lastBead(draft).toesAt(x);
  if (toes !== null && Math.abs(y - toes.rightMm) < widthMm) return toePlace(draft, "right");
  return toes !== null && Math.abs(y - toes.leftMm) < widthMm ? toePlace(draft, "left") : "face";
}

export interface IslandOptions {
  readonly x: number;
  readonly y: number;
  readonly radiusMm: number;
  readonly heightMm: number;
  readonly mask: Extract<MaskName, "slag" | "silicate">;
  readonly seed: number;
}

/** A patch of slag keyed into the face, or a brown silicate island. */
export function paintIsland(
  draft: SceneDraft,
  options: IslandOptions,
): { readonly outline: readonly PlanPoint[]; readonly heightMm: number } {
  const { grid } = draft;
  const random = createRandom(options.seed);
  const phases = [random.between(0, 6), random.between(0, 6), random.between(0, 6)] as const;
  const radiusAt = (a: number): number =>
    options.radiusMm *
    (1 +
      0.22 * Math.sin(2 * a + phases[0]) +
      0.14 * Math.sin(3 * a + phases[1]) +
      0.08 * Math.sin(5 * a + phases[2]));
  const reach = options.radiusMm * 1.6;
  let heightMm = 0;
  forEachPoint(
    grid,
    { x0: options.x - reach, x1: options.x + reach, y0: options.y - reach, y1: options.y + reach },
    (k, x, y) => {
      const r = Math.hypot(x - options.x, y - options.y) / radiusAt(Math.atan2(y - options.y, x - options.x));
      if (r > 1.1) return;
      const body = Math.sqrt(Math.max(0, 1 - (r / 1.08) ** 3));
      const lumps =
        options.mask === "slag" ? 0.5 + 0.7 * fractalNoise2(x * 1.3, y * 1.3, options.seed + 2, 3) : 1;
      const rise = options.heightMm * body * Math.max(0.25, lumps);
      heightMm = Math.max(heightMm, rise);
      grid.h[k]! += rise;
      raiseMask(grid.mask[options.mask], k, smoothstep(1.08, 0.9, r));
    },
  );
  return { outline: ring(options.x, options.y, radiusAt), heightMm };
}

export function paintStuckSlag(draft: SceneDraft, options: Omit<IslandOptions, "mask">): void {
  const { outline, heightMm } = paintIsland(draft, { ...options, mask: "slag" });
  draft.records.push({
    kind: "stuck-slag",
    outline,
    closed: true,
    sizes: { areaMmSquared: outlineArea(outline), heightMm },
    place: "face",
    stretch: "run",
  });
}
