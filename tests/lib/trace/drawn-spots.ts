import { TILE } from "@/lib/trace/spot-tiles";
import type { Pixels, ReadTile } from "@/lib/trace";
import type { TileAnswer, TraceStation } from "@/lib/trace/types";
import type { Round } from "./rendered/spot-match";

const CELL = TILE.side / TILE.answer;
const PLANE = TILE.answer ** 2;

/** What a network without a flaw answers where these lie, in the tile's pixels: a parabola of logits about each. */
export function answerWith(rounds: readonly Round[]): TileAnswer {
  const answer = new Float32Array(3 * PLANE).fill(-8);
  for (const { kind, x, y, radius } of rounds)
    for (let j = 0; j < TILE.answer; j++)
      for (let i = 0; i < TILE.answer; i++) {
        const off = Math.hypot((i + 0.5) * CELL - x, (j + 0.5) * CELL - y);
        if (off > 8) continue;
        const k = (kind === "hole" ? 0 : PLANE) + j * TILE.answer + i;
        answer[k] = Math.max(answer[k]!, 4 - 0.15 * off ** 2);
        answer[2 * PLANE + j * TILE.answer + i] = Math.log(radius);
      }
  return answer;
}

/** A straight bead as stations: its middle from `from` to `to`, so wide. */
export function straightBead(
  from: readonly [number, number],
  to: readonly [number, number],
  widthPx: number,
): readonly TraceStation[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.hypot(dx, dy);
  const [nx, ny] = [-dy / long, dx / long];
  return Array.from({ length: 60 }, (_, i): TraceStation => {
    const [x, y] = [from[0] + (dx * i) / 59, from[1] + (dy * i) / 59];
    const toe = (side: number) => ({
      at: { x: x + (side * nx * widthPx) / 2, y: y + (side * ny * widthPx) / 2 },
      sigmaPx: 1,
      spread: 0.01,
      sure: 1,
    });
    return { alongPx: (long * i) / 59, upper: toe(-1), lower: toe(1), widthPx, end: false };
  });
}

/** A grey photo with red discs for holes and green ones for balls. */
export function discs(width: number, height: number, rounds: readonly Round[]): Pixels {
  const data = new Uint8ClampedArray(4 * width * height).fill(128);
  for (const { kind, x, y, radius } of rounds)
    for (let j = Math.floor(y - radius); j <= y + radius; j++)
      for (let i = Math.floor(x - radius); i <= x + radius; i++) {
        if (i < 0 || j < 0 || i >= width || j >= height) continue;
        if (Math.hypot(i + 0.5 - x, j + 0.5 - y) > radius) continue;
        data.set(kind === "hole" ? [255, 0, 0] : [0, 255, 0], 4 * (j * width + i));
      }
  return { width, height, data };
}

/** Sees such discs by their colour: the middle and size of all that is red, or green, and hangs together. */
export const discReader: ReadTile = (planes) => {
  const { side } = TILE;
  const rounds: Round[] = [];
  for (const [c, kind] of [[0, "hole"] as const, [1, "spatter"] as const]) {
    const rest = Array.from(
      { length: side * side },
      (_, k) => planes[c * side * side + k]! > 0.8 && planes[(1 - c) * side * side + k]! < 0.2,
    );
    rest.forEach((_, first) => {
      if (!rest[first]) return;
      let [n, x, y] = [0, 0, 0];
      const open = [first];
      rest[first] = false;
      while (open.length > 0) {
        const k = open.pop()!;
        n++;
        x += (k % side) + 0.5;
        y += Math.floor(k / side) + 0.5;
        for (const next of [k - 1, k + 1, k - side, k + side])
          if (rest[next]) {
            rest[next] = false;
            open.push(next);
          }
      }
      rounds.push({ kind, x: x / n, y: y / n, radius: Math.sqrt(n / Math.PI) });
    });
  }
  return Promise.resolve(answerWith(rounds));
};
