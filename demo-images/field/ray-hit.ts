import { BLOCK, BLOCK_SHIFT, type CeilingMap } from "./ceiling-map";
import { createHeightReader, type HeightGrid, type ReadHeight } from "./height-grid";

/** What a ray met: the field at (fx, fy) in grid units, a cut side of the plate, or nothing. */
export interface RayHit {
  kind: "field" | "side" | "none";
  t: number;
  fx: number;
  fy: number;
  /** 0 x-side, 1 y-side, for `side`. */
  axis: 0 | 1;
  below: number;
}

export const createRayHit = (): RayHit => ({ kind: "none", t: 0, fx: 0, fy: 0, axis: 0, below: 0 });

export type CastRay = (hit: RayHit, dx: number, dy: number, dz: number) => void;

/** One ray while it is followed, in grid units across and mm down: one object reused, so that nothing is allocated. */
interface Ray {
  dx: number;
  dy: number;
  dz: number;
  tIn: number;
  tOut: number;
  /** Side by which it enters the box of the plate. */
  axis: 0 | 1;
  /** Last place known to be above the surface, and how far above (0 unknown). */
  before: number;
  gapBefore: number;
  /** First place found below it, and how far. */
  after: number;
  gapAfter: number;
}

/** Fields start as fractions, so that the engine keeps them as plain doubles. */
const createRay = (): Ray => ({
  dx: 0.5,
  dy: 0.5,
  dz: 0.5,
  tIn: 0.5,
  tOut: 0.5,
  axis: 0,
  before: 0.5,
  gapBefore: 0.5,
  after: 0.5,
  gapAfter: 0.5,
});

/** When a ray from `o` along `d` enters and leaves the span 0 to `max`; it never does where in > out. */
const entry = (o: number, d: number, max: number): number =>
  d === 0 ? -Infinity : (d > 0 ? -o : max - o) / d;
const exit = (o: number, d: number, max: number): number =>
  d === 0 ? (o < 0 || o > max ? -1 : Infinity) : (d > 0 ? max - o : -o) / d;

/** A caster of rays from one eye against one grid; `sideDepthMm` is how far down the plate's cut sides reach. */
export function createRayCaster(
  grid: HeightGrid,
  ceiling: CeilingMap,
  eye: readonly [number, number, number],
  sideDepthMm: number,
): CastRay {
  const { nx, ny, stepMm } = grid;
  const ox = (eye[0] - grid.x0) / stepMm;
  const oy = (eye[1] - grid.y0) / stepMm;
  const maxX = nx - 1;
  const maxY = ny - 1;
  const heightAt = createHeightReader(grid);
  const march = createMarch(grid, ceiling, heightAt, [ox, oy, eye[2]]);
  const refine = createRefinement(heightAt, [ox, oy, eye[2]]);
  const ray = createRay();
  return (hit, dxMm, dyMm, dz) => {
    hit.kind = "none";
    ray.dx = dxMm / stepMm;
    ray.dy = dyMm / stepMm;
    ray.dz = dz;
    const ax = entry(ox, ray.dx, maxX);
    const ay = entry(oy, ray.dy, maxY);
    ray.axis = ay > ax ? 1 : 0;
    ray.tIn = Math.max(0, ax, ay);
    ray.tOut = Math.min(exit(ox, ray.dx, maxX), exit(oy, ray.dy, maxY));
    if (ray.tIn >= ray.tOut) return;
    if (ray.tIn > 0) {
      const fx = ox + ray.dx * ray.tIn;
      const fy = oy + ray.dy * ray.tIn;
      const below = heightAt(fx, fy) - (eye[2] + dz * ray.tIn);
      if (below > 0) return meetSide(hit, ray, fx, fy, below, sideDepthMm);
    }
    if (!march(ray)) return;
    const t = refine(ray);
    hit.kind = "field";
    hit.t = t;
    hit.fx = Math.min(maxX - 1e-3, Math.max(0, ox + ray.dx * t));
    hit.fy = Math.min(maxY - 1e-3, Math.max(0, oy + ray.dy * t));
  };
}

function meetSide(hit: RayHit, ray: Ray, fx: number, fy: number, below: number, sideDepthMm: number): void {
  if (below > sideDepthMm) return;
  hit.kind = "side";
  hit.t = ray.tIn;
  hit.axis = ray.axis;
  hit.fx = fx;
  hit.fy = fy;
  hit.below = below;
}

/** How far along the ray the next block begins, in one direction of the grid. */
const toBorder = (f: number, block: number, d: number): number =>
  d > 0 ? ((block + 1) * BLOCK - f) / d : d < 0 ? (block * BLOCK - f) / d : Infinity;

/**
 * Follows a ray from where it enters until it is below the surface; false if it leaves the plate first. The loop stays
 * in one piece: it runs tens of millions of times a picture, and its state lives in registers only while it is local.
 */
function createMarch(
  grid: HeightGrid,
  ceiling: CeilingMap,
  heightAt: ReadHeight,
  [ox, oy, oz]: readonly [number, number, number],
): (ray: Ray) => boolean {
  const least = 0.12 * grid.stepMm;
  return (ray) => {
    const { dx, dy, dz, tOut } = ray;
    let t = ray.tIn;
    if (dz < 0) t = Math.max(t, (ceiling.highest + 1e-4 - oz) / dz);
    const speed = Math.sqrt(dx * dx + dy * dy);
    const cellStep = speed > 1e-9 ? 0.9 / speed : Infinity;
    const fall = Math.max(1e-6, -dz);
    ray.before = t;
    ray.gapBefore = 0;
    while (t < tOut) {
      const fx = ox + dx * t;
      const fy = oy + dy * t;
      const z = oz + dz * t;
      const bi = fx >> BLOCK_SHIFT;
      const bj = fy >> BLOCK_SHIFT;
      const top = ceiling.top[bj * ceiling.nx + bi]!;
      if (z > top) {
        const toTop = dz < 0 ? (top - z) / dz : Infinity;
        const leap = Math.min(toBorder(fx, bi, dx), toBorder(fy, bj, dy), toTop);
        ray.before = t;
        ray.gapBefore = 0;
        t += Math.max(leap, 1e-7) + (leap === toTop ? 2e-6 : 1e-6);
        continue;
      }
      const gap = z - heightAt(fx, fy);
      if (gap <= 0) {
        ray.after = t;
        ray.gapAfter = gap;
        return true;
      }
      ray.before = t;
      ray.gapBefore = gap;
      t += Math.min(cellStep, Math.max(gap, least) / fall);
    }
    return false;
  };
}

/** Where between its last place above and its first below the ray meets the surface: false position, to a tenth of a micrometre. */
function createRefinement(
  heightAt: ReadHeight,
  [ox, oy, oz]: readonly [number, number, number],
): (ray: Ray) => number {
  return (ray) => {
    let low = ray.before;
    let high = ray.after;
    let gapLow =
      ray.gapBefore > 0 ? ray.gapBefore : oz + ray.dz * low - heightAt(ox + ray.dx * low, oy + ray.dy * low);
    let gapHigh = ray.gapAfter;
    for (let i = 0; i < 8 && gapHigh < -1e-4 && gapLow > 0; i++) {
      // Every third step halves, so that a wall in the span cannot hold the false position at one end.
      const share = i % 3 === 2 ? 0.5 : gapLow / (gapLow - gapHigh);
      const t = low + (high - low) * share;
      const gap = oz + ray.dz * t - heightAt(ox + ray.dx * t, oy + ray.dy * t);
      if (gap > 0) {
        low = t;
        gapLow = gap;
        if (gap < 1e-4) return t;
      } else {
        high = t;
        gapHigh = gap;
      }
    }
    return high;
  };
}
