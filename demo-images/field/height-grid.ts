/** What lies on or in the surface at a grid point, 0 to 255 each; painted by beads, imperfections and dirt. */
export const maskNames = [
  "bead",
  "heat",
  "soot",
  "fume",
  "slag",
  "silicate",
  "spatter",
  "rust",
  "bare",
  "tint",
  "hole",
  "crack",
  "copper",
  "tungsten",
  "chalk",
  "object",
  "cover",
  "ink",
] as const;
export type MaskName = (typeof maskNames)[number];

/** A regular grid of heights over the plan frame; point (i, j) lies at (x0 + i step, y0 + j step), mm. */
export interface HeightGrid {
  readonly x0: number;
  readonly y0: number;
  readonly stepMm: number;
  readonly nx: number;
  readonly ny: number;
  readonly h: Float32Array;
  readonly mask: Readonly<Record<MaskName, Uint8Array>>;
}

export interface GridArea {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export function createHeightGrid(area: GridArea, stepMm: number): HeightGrid {
  const nx = Math.ceil((area.x1 - area.x0) / stepMm) + 1;
  const ny = Math.ceil((area.y1 - area.y0) / stepMm) + 1;
  const shared = <T>(bytes: number, wrap: (buffer: SharedArrayBuffer) => T): T =>
    wrap(new SharedArrayBuffer(bytes));
  const mask = Object.fromEntries(
    maskNames.map((name) => [name, shared(nx * ny, (buffer) => new Uint8Array(buffer))]),
  ) as Record<MaskName, Uint8Array>;
  const h = shared(nx * ny * 4, (buffer) => new Float32Array(buffer));
  return { x0: area.x0, y0: area.y0, stepMm, nx, ny, h, mask };
}

/** Bilinear height at (x, y), mm; clamped at the border. */
export function sampleHeight(grid: HeightGrid, x: number, y: number): number {
  const fx = Math.min(grid.nx - 1.001, Math.max(0, (x - grid.x0) / grid.stepMm));
  const fy = Math.min(grid.ny - 1.001, Math.max(0, (y - grid.y0) / grid.stepMm));
  const i = fx | 0;
  const j = fy | 0;
  const u = fx - i;
  const v = fy - j;
  const k = j * grid.nx + i;
  const h = grid.h;
  const low = h[k]! + (h[k + 1]! - h[k]!) * u;
  const high = h[k + grid.nx]! + (h[k + grid.nx + 1]! - h[k + grid.nx]!) * u;
  return low + (high - low) * v;
}

/** Height at grid coordinates, mm. */
export type ReadHeight = (fx: number, fy: number) => number;

/** `sampleHeight` in grid coordinates, made once for many rays; held at the border. */
export function createHeightReader({ h, nx, ny }: HeightGrid): ReadHeight {
  const maxX = nx - 1;
  const maxY = ny - 1;
  return (fx, fy) => {
    const i = fx < 0 ? 0 : fx >= maxX ? maxX - 1 : fx | 0;
    const j = fy < 0 ? 0 : fy >= maxY ? maxY - 1 : fy | 0;
    const u = fx - i;
    const v = fy - j;
    const k = j * nx + i;
    const low = h[k]! + (h[k + 1]! - h[k]!) * u;
    return low + (h[k + nx]! + (h[k + nx + 1]! - h[k + nx]!) * u - low) * v;
  };
}

/** Raises a mask to at least `value` (0 to 1). */
export function raiseMask(mask: Uint8Array, k: number, value: number): void {
  const level = value <= 0 ? 0 : value >= 1 ? 255 : (value * 255 + 0.5) | 0;
  if (level > mask[k]!) mask[k] = level;
}

/** Calls `visit(k, x, y)` for every grid point of a box, clipped to the grid. */
export function forEachPoint(
  grid: HeightGrid,
  box: GridArea,
  visit: (k: number, x: number, y: number) => void,
): void {
  const i0 = Math.max(0, Math.ceil((box.x0 - grid.x0) / grid.stepMm));
  const i1 = Math.min(grid.nx - 1, Math.floor((box.x1 - grid.x0) / grid.stepMm));
  const j0 = Math.max(0, Math.ceil((box.y0 - grid.y0) / grid.stepMm));
  const j1 = Math.min(grid.ny - 1, Math.floor((box.y1 - grid.y0) / grid.stepMm));
  for (let j = j0; j <= j1; j++) {
    const y = grid.y0 + j * grid.stepMm;
    for (let i = i0; i <= i1; i++) visit(j * grid.nx + i, grid.x0 + i * grid.stepMm, y);
  }
}
