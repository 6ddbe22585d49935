import { fitLine, type Point } from "@/lib/geometry";
import type { EdgePoints } from "./edge-points";

/** A long straight edge, in the pixels of the plane it was found in. */
export interface StraightEdge {
  readonly through: Point<"frame">;
  /** Unit vector along it. */
  readonly direction: Point<"frame">;
  /** From where to where it is seen, along `direction` from `through`. */
  readonly from: number;
  readonly to: number;
}

const TURNS = 180;
/** An edge point votes for lines within this many steps of a degree of its own. */
const REACH_TURNS = 2;
const NEAR = 1.5;
const ALONG_WITH = Math.cos((8 * Math.PI) / 180);
/** A gap longer than this ends an edge, in lengths of the shortest edge asked for. */
const GAP = 0.35;

interface Votes {
  readonly counts: Int32Array;
  readonly rhos: number;
  readonly middle: number;
}

/** Straight edges at least `least` long, most supported first, at most `most`: by Hough's transform with the edge's own direction. */
export function straightEdges(
  points: EdgePoints,
  reach: number,
  least: number,
  most: number,
): readonly StraightEdge[] {
  const votes: Votes = {
    counts: new Int32Array(TURNS * (2 * Math.ceil(reach) + 3)),
    rhos: 2 * Math.ceil(reach) + 3,
    middle: Math.ceil(reach) + 1,
  };
  const live = Array.from({ length: points.count }, (_, i) => i);
  for (const i of live) vote(votes, points, i, 1);
  const used = new Uint8Array(points.count);
  const found: StraightEdge[] = [];
  for (let turn = 0; turn < 4 * most && found.length < most; turn++) {
    const best = strongest(votes);
    if (votes.counts[best]! < 0.3 * least) break;
    const near = supporters(points, used, lineOf(votes, best));
    if (near.length === 0) break;
    for (const i of near) {
      used[i] = 1;
      vote(votes, points, i, -1);
    }
    const edge = edgeThrough(points, near, GAP * least);
    if (edge !== null && edge.to - edge.from >= least) found.push(edge);
  }
  return found;
}

function vote({ counts, rhos, middle }: Votes, points: EdgePoints, i: number, by: number): void {
  const own = Math.round((Math.atan2(points.uy[i]!, points.ux[i]!) / Math.PI) * TURNS + 2 * TURNS);
  for (let turn = own - REACH_TURNS; turn <= own + REACH_TURNS; turn++) {
    const t = turn % TURNS;
    const angle = (t * Math.PI) / TURNS;
    const rho = Math.round(points.x[i]! * Math.cos(angle) + points.y[i]! * Math.sin(angle)) + middle;
    counts[t * rhos + rho]! += by;
  }
}

function strongest({ counts }: Votes): number {
  let best = 0;
  for (let k = 1; k < counts.length; k++) if (counts[k]! > counts[best]!) best = k;
  return best;
}

function lineOf(
  { rhos, middle }: Votes,
  k: number,
): { readonly normal: Point<"frame">; readonly rho: number } {
  const angle = (Math.floor(k / rhos) * Math.PI) / TURNS;
  return { normal: { x: Math.cos(angle), y: Math.sin(angle) }, rho: (k % rhos) - middle };
}

function supporters(
  { x, y, ux, uy, count }: EdgePoints,
  used: Uint8Array,
  { normal, rho }: { readonly normal: Point<"frame">; readonly rho: number },
): readonly number[] {
  const near: number[] = [];
  for (let i = 0; i < count; i++) {
    if (used[i]) continue;
    if (Math.abs(x[i]! * normal.x + y[i]! * normal.y - rho) > NEAR + 1) continue;
    if (Math.abs(ux[i]! * normal.x + uy[i]! * normal.y) >= ALONG_WITH) near.push(i);
  }
  return near;
}

/** The line through the supporters, fitted twice, and the longest stretch of it without a wide gap. */
function edgeThrough({ x, y }: EdgePoints, near: readonly number[], gap: number): StraightEdge | null {
  const places = near.map((i) => ({ x: x[i]!, y: y[i]! }));
  const first = fitLine(places);
  if (first === null) return null;
  const off = (p: Point<"frame">): number =>
    Math.abs(first.direction.x * (p.y - first.through.y) - first.direction.y * (p.x - first.through.x));
  const close = places.filter((p) => off(p) <= NEAR);
  const line = fitLine(close) ?? first;
  const alongs = close
    .map((p) => (p.x - line.through.x) * line.direction.x + (p.y - line.through.y) * line.direction.y)
    .sort((a, b) => a - b);
  let [from, best] = [0, [0, 0] as readonly [number, number]];
  for (let i = 1; i <= alongs.length; i++) {
    if (i < alongs.length && alongs[i]! - alongs[i - 1]! <= gap) continue;
    if (alongs[i - 1]! - alongs[from]! > alongs[best[1]]! - alongs[best[0]]!) best = [from, i - 1];
    from = i;
  }
  if (alongs.length === 0) return null;
  return { through: line.through, direction: line.direction, from: alongs[best[0]]!, to: alongs[best[1]]! };
}
