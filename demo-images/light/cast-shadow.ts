import type { HeightGrid } from "../field/height-grid";
import type { Lamp } from "./lamp";

/**
 * Share of a lamp seen from grid point (i, j), 0 to 1, by walking the height field towards it.
 * `softness` is the tangent of the lamp's half-angle: soft lamps give soft edges.
 */
export function createShadowTest(grid: HeightGrid, lamp: Lamp): (i: number, j: number) => number {
  const [lx, ly, lz] = lamp.towards;
  const flat = Math.hypot(lx, ly);
  if (flat < 1e-3) return () => 1;
  const softness = Math.max(0.03, 0.8 / Math.sqrt(lamp.sharpness));
  const stepX = lx / flat / grid.stepMm;
  const stepY = ly / flat / grid.stepMm;
  const climb = lz / flat;
  const reaches: number[] = [];
  for (let reach = Math.max(0.12, 1.5 * grid.stepMm); reach < 40; reach *= 1.17) reaches.push(reach);
  const { h, nx, ny } = grid;
  return (i, j) => {
    const z = h[j * nx + i]!;
    let seen = 1;
    for (let k = 0; k < reaches.length; k++) {
      const reach = reaches[k]!;
      const ii = (i + reach * stepX + 0.5) | 0;
      const jj = (j + reach * stepY + 0.5) | 0;
      if (ii < 0 || jj < 0 || ii >= nx || jj >= ny) break;
      const clear = (z + 0.012 + reach * climb - h[jj * nx + ii]!) / (reach * softness);
      if (clear < 1 && clear * 0.5 + 0.5 < seen) {
        seen = clear * 0.5 + 0.5;
        if (seen <= 0) return 0;
      }
    }
    return seen * seen * (3 - 2 * seen);
  };
}
