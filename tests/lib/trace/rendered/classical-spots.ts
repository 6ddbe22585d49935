import { TILE } from "@/lib/trace/spot-tiles";
import type { ReadTile } from "@/lib/trace";

/** Radii that are tried, pixels of the tile. */
const RADII = [3.5, 5, 7, 10, 14, 20] as const;
const TURNS = Array.from({ length: 12 }, (_, i) => [
  Math.cos((2 * Math.PI * i) / 12),
  Math.sin((2 * Math.PI * i) / 12),
]) as readonly (readonly [number, number])[];

/**
 * Holes and balls without training, as the network would answer: a hole is darker than its rim all round, a ball has an
 * edge all round and a light within. What most of the directions agree on counts, so that a line is neither.
 */
export const classicalSpots: ReadTile = (planes) => {
  const { side, answer } = TILE;
  const grey = smoothed(planes);
  const out = new Float32Array(3 * answer * answer);
  const cell = side / answer;
  for (let j = 0; j < answer; j++)
    for (let i = 0; i < answer; i++) {
      const [x, y] = [(i + 0.5) * cell, (j + 0.5) * cell];
      let [hole, ball, radius] = [0, 0, RADII[0] as number];
      for (const r of RADII) {
        if (x < 1.4 * r + 1 || y < 1.4 * r + 1 || x > side - 1.4 * r - 2 || y > side - 1.4 * r - 2) continue;
        const [h, b] = scores(grey, x, y, r);
        if (Math.max(h, b) > Math.max(hole, ball)) radius = r;
        [hole, ball] = [Math.max(hole, h), Math.max(ball, b)];
      }
      const k = j * answer + i;
      out[k] = logit(hole);
      out[answer * answer + k] = logit(ball);
      out[2 * answer * answer + k] = Math.log(radius);
    }
  return Promise.resolve(out);
};

const logit = (share: number): number => {
  const s = Math.min(0.999, Math.max(0.001, share));
  return Math.log(s / (1 - s));
};

function scores(grey: Float32Array, x: number, y: number, r: number): readonly [number, number] {
  const at = (px: number, py: number): number => grey[Math.floor(py) * TILE.side + Math.floor(px)]!;
  const ring = (share: number): number[] => TURNS.map(([c, s]) => at(x + share * r * c, y + share * r * s));
  const [inner, edge, outer] = [ring(0.5), ring(0.8), ring(1.3)];
  const middle = (inner.reduce((a, b) => a + b, 0) + at(x, y)) / (inner.length + 1);
  const quarter = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[2]!;
  const rim = outer.reduce((a, b) => a + b, 0) / outer.length;
  const darker = quarter(outer.map((light) => light - middle)) / (rim + 0.05);
  const step = quarter(outer.map((light, i) => Math.abs(light - edge[i]!))) / (rim + 0.05);
  const light = (Math.max(...inner, at(x, y)) - middle) / (rim + 0.05);
  return [Math.max(0, darker), Math.max(0, 2 * step + 0.5 * Math.min(light, 0.6) * Math.min(1, 8 * step))];
}

/** Grey, the mean of three by three. */
function smoothed(planes: Float32Array): Float32Array {
  const { side } = TILE;
  const plane = side * side;
  const grey = Float32Array.from(
    { length: plane },
    (_, k) => 0.299 * planes[k]! + 0.587 * planes[plane + k]! + 0.114 * planes[2 * plane + k]!,
  );
  const out = grey.slice();
  for (let j = 1; j < side - 1; j++)
    for (let i = 1; i < side - 1; i++) {
      let sum = 0;
      for (let b = -1; b <= 1; b++) for (let a = -1; a <= 1; a++) sum += grey[(j + b) * side + i + a]!;
      out[j * side + i] = sum / 9;
    }
  return out;
}
