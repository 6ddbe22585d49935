import type { At } from "./macro-spec";

/** How far a place lies from a boundary, and at which length along it its nearest point lies; mm. */
export interface DistanceGrid {
  readonly x0: number;
  readonly y0: number;
  readonly stepMm: number;
  readonly nx: number;
  readonly ny: number;
  /** Negative inside a ring. */
  readonly distance: Float32Array;
  readonly along: Float32Array;
}

/** Distances of a box of places from a ring, or from a path that is not closed. */
export function distanceGrid(
  path: readonly At[],
  closed: boolean,
  box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number },
  stepMm: number,
): DistanceGrid {
  const nx = Math.ceil((box.x1 - box.x0) / stepMm) + 2;
  const ny = Math.ceil((box.y1 - box.y0) / stepMm) + 2;
  const distance = new Float32Array(nx * ny);
  const along = new Float32Array(nx * ny);
  const ends = closed ? [...path, path[0]!] : path;
  const starts: number[] = [0];
  for (let i = 1; i < ends.length; i++)
    starts.push(starts[i - 1]! + Math.hypot(ends[i]![0] - ends[i - 1]![0], ends[i]![1] - ends[i - 1]![1]));
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      const [x, y] = [box.x0 + i * stepMm, box.y0 + j * stepMm];
      let best = Infinity;
      let place = 0;
      let inside = false;
      for (let k = 0; k + 1 < ends.length; k++) {
        const [ax, ay] = ends[k]!;
        const [bx, by] = ends[k + 1]!;
        const [dx, dy] = [bx - ax, by - ay];
        const size = dx * dx + dy * dy;
        const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / size));
        const off = (x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2;
        if (off < best) {
          best = off;
          place = starts[k]! + t * Math.sqrt(size);
        }
        if (closed && ay <= y !== by <= y && x < ax + ((y - ay) / dy) * dx) inside = !inside;
      }
      distance[j * nx + i] = Math.sqrt(best) * (inside ? -1 : 1);
      along[j * nx + i] = place;
    }
  return { x0: box.x0, y0: box.y0, stepMm, nx, ny, distance, along };
}

/** Distance at a place, bilinear; held at the border of the grid. */
export function distanceAt(grid: DistanceGrid, x: number, y: number): number {
  const fx = Math.min(grid.nx - 1.001, Math.max(0, (x - grid.x0) / grid.stepMm));
  const fy = Math.min(grid.ny - 1.001, Math.max(0, (y - grid.y0) / grid.stepMm));
  const [i, j] = [fx | 0, fy | 0];
  const [u, v] = [fx - i, fy - j];
  const k = j * grid.nx + i;
  const low = grid.distance[k]! + (grid.distance[k + 1]! - grid.distance[k]!) * u;
  const high =
    grid.distance[k + grid.nx]! + (grid.distance[k + grid.nx + 1]! - grid.distance[k + grid.nx]!) * u;
  return low + (high - low) * v;
}

/** Length along the boundary of the nearest point; bilinear where the four neighbours agree, else of the nearest one. */
export function alongAt(grid: DistanceGrid, x: number, y: number): number {
  const fx = Math.min(grid.nx - 1.001, Math.max(0, (x - grid.x0) / grid.stepMm));
  const fy = Math.min(grid.ny - 1.001, Math.max(0, (y - grid.y0) / grid.stepMm));
  const [i, j] = [fx | 0, fy | 0];
  const [u, v] = [fx - i, fy - j];
  const k = j * grid.nx + i;
  const { along, nx } = grid;
  const [a, b, c, d] = [along[k]!, along[k + 1]!, along[k + nx]!, along[k + nx + 1]!];
  const spread = Math.max(a, b, c, d) - Math.min(a, b, c, d);
  if (spread > 6 * grid.stepMm) return v > 0.5 ? (u > 0.5 ? d : c) : u > 0.5 ? b : a;
  const low = a + (b - a) * u;
  return low + (c + (d - c) * u - low) * v;
}

/** Any signed distance on a grid, without a length along it. */
export function fieldGrid(
  field: (x: number, y: number) => number,
  box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number },
  stepMm: number,
): DistanceGrid {
  const nx = Math.ceil((box.x1 - box.x0) / stepMm) + 2;
  const ny = Math.ceil((box.y1 - box.y0) / stepMm) + 2;
  const distance = new Float32Array(nx * ny);
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) distance[j * nx + i] = field(box.x0 + i * stepMm, box.y0 + j * stepMm);
  return { ...box, stepMm, nx, ny, distance, along: new Float32Array(0) };
}

/** Signed distance to a convex ring, negative inside. */
export function convexDistance(ring: readonly At[], x: number, y: number): number {
  let outside = -Infinity;
  let nearest = Infinity;
  const turn = ringTurn(ring);
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i]!;
    const [bx, by] = ring[(i + 1) % ring.length]!;
    const [dx, dy] = [bx - ax, by - ay];
    const size = Math.hypot(dx, dy);
    outside = Math.max(outside, (turn * ((x - ax) * dy - (y - ay) * dx)) / size);
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / size ** 2));
    nearest = Math.min(nearest, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  }
  return outside > 0 ? nearest : outside;
}

function ringTurn(ring: readonly At[]): 1 | -1 {
  const twice = ring.reduce((sum, [ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    return sum + ax * by - bx * ay;
  }, 0);
  return twice > 0 ? 1 : -1;
}
