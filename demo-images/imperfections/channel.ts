import { forEachPoint, raiseMask, type MaskName } from "../field/height-grid";
import type { PlanPoint, SceneDraft } from "./draft";

export interface Channel {
  readonly path: readonly PlanPoint[];
  /** Half-width at the share t (0 to 1) of the path, mm. */
  readonly halfWidthAt: (t: number) => number;
  readonly depthMm: number;
  /** 1 a rounded floor, 4 steep walls. */
  readonly steepness: number;
  readonly lipMm: number;
  readonly mask: MaskName | null;
}

interface Nearest {
  distance: number;
  t: number;
}

function nearestOnPath(path: readonly PlanPoint[], x: number, y: number, out: Nearest): void {
  out.distance = Infinity;
  for (let i = 0; i + 1 < path.length; i++) {
    const [ax, ay] = path[i]!;
    const [bx, by] = path[i + 1]!;
    const dx = bx - ax;
    const dy = by - ay;
    const s = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    const d = Math.hypot(x - ax - s * dx, y - ay - s * dy);
    if (d < out.distance) {
      out.distance = d;
      out.t = (i + s) / (path.length - 1);
    }
  }
}

/** Cuts a channel along a path into the surface and marks its floor. */
export function paintChannel(draft: SceneDraft, channel: Channel): void {
  const { grid } = draft;
  const widest = Math.max(...[0, 0.25, 0.5, 0.75, 1].map(channel.halfWidthAt)) * 1.9;
  const xs = channel.path.map((p) => p[0]);
  const ys = channel.path.map((p) => p[1]);
  const box = {
    x0: Math.min(...xs) - widest,
    x1: Math.max(...xs) + widest,
    y0: Math.min(...ys) - widest,
    y1: Math.max(...ys) + widest,
  };
  const near: Nearest = { distance: 0, t: 0 };
  forEachPoint(grid, box, (k, x, y) => {
    nearestOnPath(channel.path, x, y, near);
    const half = channel.halfWidthAt(near.t);
    if (half <= 0) return;
    const r = near.distance / half;
    if (r < 1) grid.h[k]! -= channel.depthMm * (1 - r ** (2 * channel.steepness));
    if (r < 1.9) grid.h[k]! += channel.lipMm * Math.exp(-(((r - 1.2) / 0.28) ** 2));
    // A channel no wider than the grid's step is seen by the share of a step that it covers.
    const covered = Math.max((1.05 - r) * 5, (half - near.distance) / grid.stepMm + 0.5);
    if (channel.mask !== null && covered > 0)
      raiseMask(grid.mask[channel.mask], k, Math.min(covered, (2 * half) / grid.stepMm));
  });
}

/** Both banks of the channel as one closed outline. */
export function channelOutline(path: readonly PlanPoint[], halfWidthAt: (t: number) => number): PlanPoint[] {
  const left: PlanPoint[] = [];
  const right: PlanPoint[] = [];
  path.forEach(([x, y], i) => {
    const before = path[Math.max(0, i - 1)]!;
    const after = path[Math.min(path.length - 1, i + 1)]!;
    const dx = after[0] - before[0];
    const dy = after[1] - before[1];
    const k = halfWidthAt(i / (path.length - 1)) / Math.hypot(dx, dy);
    left.push([x - dy * k, y + dx * k]);
    right.push([x + dy * k, y - dx * k]);
  });
  return [...left, ...right.reverse()];
}

export function pathLength(path: readonly PlanPoint[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < path.length; i++)
    sum += Math.hypot(path[i + 1]![0] - path[i]![0], path[i + 1]![1] - path[i]![1]);
  return sum;
}
