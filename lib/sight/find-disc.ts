import { fitEllipse, type Ellipse, type Point } from "@/lib/geometry";
import type { RgbaImage } from "@/lib/strip";
import { edgePoints, type EdgePoints } from "./edge-points";
import { brightness, planeOf, type Plane } from "./plane";

/** The rim of a round disc as places around it, photo pixels; how large the disc is nobody can see. */
export interface FoundDisc {
  readonly rim: readonly Point<"photo">[];
  /** How far the places lie from their ellipse, root mean square, photo pixels. */
  readonly offPx: number;
}

const SMALL_PX = 420;
const FULL_PX = 1800;
const RAYS = 72;
/** A disc from a sixteenth to a third of the picture's longer side across its half. */
const LEAST_RADIUS = 1 / 16;
const MOST_RADIUS = 1 / 3.2;
/** A disc lying on the plate is this round at least: beyond it the camera is tilted by more than 40 degrees. */
const LEAST_ROUND = 0.76;
/** So much of the rim must be there. */
const LEAST_SEEN = 0.86;
const CANDIDATES = 6;

/** The one round disc in a photo; null where none or more than one is seen all round. */
export function findDisc(image: RgbaImage): FoundDisc | null {
  const small = planeOf(image, SMALL_PX);
  const points = edgePoints(small, 0.1);
  const full = planeOf(image, FULL_PX);
  const grow = small.block / full.block;
  const found: { readonly ellipse: Ellipse<"frame">; readonly disc: FoundDisc }[] = [];
  for (const { x, y, radius } of middles(points, small)) {
    const rim = rimAbout(full, { x: x * grow, y: y * grow }, radius * grow);
    if (rim === null) continue;
    const again = found.some(
      ({ ellipse }) =>
        Math.hypot(ellipse.centre.x - rim.ellipse.centre.x, ellipse.centre.y - rim.ellipse.centre.y) <
        0.3 * ellipse.semiMajor,
    );
    if (again) continue;
    found.push({
      ellipse: rim.ellipse,
      disc: {
        rim: rim.places.map((p) => ({ x: p.x * full.block, y: p.y * full.block })),
        offPx: rim.off * full.block,
      },
    });
  }
  return found.length === 1 ? found[0]!.disc : null;
}

interface Middle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * Places towards which many edges look, from one distance: each edge point votes along its own direction, either way
 * (Kimme, Ballard and Sklansky 1975). Coarse, because a tilted disc has no one middle.
 */
function middles(points: EdgePoints, { width, height }: Plane): readonly Middle[] {
  const cell = 4;
  const [nx, ny] = [Math.ceil(width / cell), Math.ceil(height / cell)];
  const longest = Math.max(width, height);
  const radii: number[] = [];
  for (let r = LEAST_RADIUS * longest; r < MOST_RADIUS * longest; r *= 1.12) radii.push(r);
  const all: (Middle & { readonly share: number })[] = [];
  for (const radius of radii)
    for (const way of [1, -1] as const) {
      const votes = new Float32Array(nx * ny);
      for (let i = 0; i < points.count; i++) {
        const u = (points.x[i]! + way * radius * points.ux[i]!) / cell;
        const v = (points.y[i]! + way * radius * points.uy[i]!) / cell;
        if (u >= 0 && v >= 0 && u < nx && v < ny) votes[Math.floor(v) * nx + Math.floor(u)]! += 1;
      }
      for (let j = 1; j < ny - 1; j++)
        for (let i = 1; i < nx - 1; i++) {
          let sum = 0;
          for (let b = -1; b <= 1; b++) for (let a = -1; a <= 1; a++) sum += votes[(j + b) * nx + i + a]!;
          const share = sum / (2 * Math.PI * radius);
          if (share > 0.3) all.push({ x: (i + 0.5) * cell, y: (j + 0.5) * cell, radius, share });
        }
    }
  all.sort((a, b) => b.share - a.share);
  const kept: Middle[] = [];
  for (const one of all) {
    const near = kept.some((other) => Math.hypot(other.x - one.x, other.y - one.y) < 0.4 * other.radius);
    if (!near) kept.push(one);
    if (kept.length === CANDIDATES) break;
  }
  return kept;
}

interface Rim {
  readonly ellipse: Ellipse<"frame">;
  readonly places: readonly Point<"frame">[];
  readonly off: number;
}

/** The rim met by rays from about the middle, all of them from bright to dark or all the other way. */
function rimAbout(plane: Plane, middle: Point<"frame">, radius: number): Rim | null {
  const rims = ([1, -1] as const).flatMap((sign) => {
    let ellipse: Ellipse<"frame"> = { centre: middle, semiMajor: radius, semiMinor: radius, angle: 0 };
    let rim: Rim | null = null;
    for (const reach of [0.3, 0.12, 0.06, 0.05]) {
      rim = steepest(plane, ellipse, reach, sign);
      if (rim === null) return [];
      ellipse = rim.ellipse;
    }
    return rim === null || rim.places.length < LEAST_SEEN * RAYS || !isRound(rim, plane) ? [] : [rim];
  });
  return rims.sort((a, b) => b.places.length - a.places.length)[0] ?? null;
}

const isRound = (
  { ellipse: { centre, semiMajor, semiMinor }, off }: Rim,
  { width, height }: Plane,
): boolean =>
  semiMinor >= LEAST_ROUND * semiMajor &&
  off <= Math.max(0.8, 0.012 * semiMajor) &&
  centre.x - semiMajor > 0 &&
  centre.y - semiMajor > 0 &&
  centre.x + semiMajor < width &&
  centre.y + semiMajor < height;

function onEllipse(
  { centre, semiMajor, semiMinor, angle }: Ellipse<"frame">,
  turn: number,
  grow: number,
): Point<"frame"> {
  const [a, b] = [grow * semiMajor * Math.cos(turn), grow * semiMinor * Math.sin(turn)];
  return {
    x: centre.x + a * Math.cos(angle) - b * Math.sin(angle),
    y: centre.y + a * Math.sin(angle) + b * Math.cos(angle),
  };
}

/** Of each ray the place about the ellipse where the light falls (or rises) most steeply, and the ellipse through most of them. */
function steepest(plane: Plane, ellipse: Ellipse<"frame">, reach: number, sign: 1 | -1): Rim | null {
  const steps = Math.max(8, Math.ceil(2 * reach * ellipse.semiMajor));
  const places = Array.from({ length: RAYS }, (_, i) => (2 * Math.PI * i) / RAYS).flatMap((turn) => {
    let [best, most] = [0, 3];
    const light = Array.from({ length: steps + 3 }, (_, k) => {
      const p = onEllipse(ellipse, turn, 1 - reach + (2 * reach * (k - 1)) / steps);
      return brightness(plane, p.x, p.y);
    });
    for (let k = 1; k <= steps + 1; k++) {
      const fall = sign * (light[k - 1]! - light[k + 1]!);
      if (fall > most) [best, most] = [k, fall];
    }
    if (best === 0) return [];
    const [a, b, c] = [best - 1, best, best + 1].map((k) =>
      k < 1 || k > steps + 1 ? 0 : sign * (light[k - 1]! - light[k + 1]!),
    ) as [number, number, number];
    const bend = a - 2 * b + c;
    const at = best - 1 + (bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (a - c)) / bend)) : 0);
    return [onEllipse(ellipse, turn, 1 - reach + (2 * reach * at) / steps)];
  });
  return trimmed(places, ellipse, Math.max(1, 0.25 * reach * ellipse.semiMajor));
}

/** An ellipse through the places, thrice, each time without those that lie farther off than they may. */
function trimmed(places: readonly Point<"frame">[], about: Ellipse<"frame">, least: number): Rim | null {
  let kept = places;
  let ellipse: Ellipse<"frame"> = about;
  for (const factor of [4, 2, 1]) {
    const next = fitEllipse(kept);
    if (next === null) return null;
    ellipse = next;
    kept = places.filter((p) => offEllipse(next, p) <= factor * least);
    if (kept.length < RAYS / 3) return null;
  }
  const off = Math.sqrt(kept.reduce((sum, p) => sum + offEllipse(ellipse, p) ** 2, 0) / kept.length);
  return { ellipse, places: kept, off };
}

/** Distance from the rim along the ray from the middle, which is the distance itself where the ellipse is nearly round. */
function offEllipse(
  { centre, semiMajor, semiMinor, angle }: Ellipse<"frame">,
  { x, y }: Point<"frame">,
): number {
  const [dx, dy] = [x - centre.x, y - centre.y];
  const [u, v] = [dx * Math.cos(angle) + dy * Math.sin(angle), dy * Math.cos(angle) - dx * Math.sin(angle)];
  const share = Math.hypot(u / semiMajor, v / semiMinor);
  return share > 0 ? Math.abs(1 - 1 / share) * Math.hypot(u, v) : semiMinor;
}
