/** A smooth function of the plane. */
export type Field = (x: number, y: number) => number;

const SIDE = 64;
const ROW = SIDE + 1;

/**
 * The same field read off a lattice of `cellMm` that is worked out where it is first needed, bilinear between its points.
 * For noise whose finest octave is several cells wide nothing is seen of it, and a point costs four reads instead of
 * four octaves. Values depend on the place alone, whoever asks and in what order.
 */
export function createSlowField(cellMm: number, field: Field): Field {
  const tiles = new Map<number, Float32Array>();
  let lastKey = NaN;
  let last: Float32Array = new Float32Array(0);
  const tileAt = (tx: number, ty: number, key: number): Float32Array => {
    const found = tiles.get(key);
    if (found !== undefined) return found;
    const tile = new Float32Array(ROW * ROW);
    for (let j = 0; j < ROW; j++)
      for (let i = 0; i < ROW; i++)
        tile[j * ROW + i] = field((tx * SIDE + i) * cellMm, (ty * SIDE + j) * cellMm);
    tiles.set(key, tile);
    return tile;
  };
  return (x, y) => {
    const fx = x / cellMm;
    const fy = y / cellMm;
    const ix = Math.floor(fx);
    const iy = Math.floor(fy);
    const tx = ix >> 6;
    const ty = iy >> 6;
    const key = (tx + 32768) * 65536 + ty + 32768;
    if (key !== lastKey) {
      last = tileAt(tx, ty, key);
      lastKey = key;
    }
    const u = fx - ix;
    const k = (iy & 63) * ROW + (ix & 63);
    const low = last[k]! + (last[k + 1]! - last[k]!) * u;
    const high = last[k + ROW]! + (last[k + ROW + 1]! - last[k + ROW]!) * u;
    return low + (high - low) * (fy - iy);
  };
}
