import type { RenderedScene } from "../render-scene";

/** How the plate beside a bead looks, with the picture brought to a bead 60 px wide. */
export interface StreetFigures {
  /** Deviation of the light within a few pixels, as a share of its mean; and over tens of pixels. */
  readonly fine: number;
  readonly coarse: number;
  /** Share of all pixels about the bead that are blown to white. */
  readonly blown: number;
  /** Chroma of the bead, CIE L*a*b*. */
  readonly chroma: number;
}

const BEAD_PX = 60;

type At = (u: number, v: number) => readonly [number, number, number];

/** Measured beside and on the bead between a fifth and four fifths of its length. */
export function looksOf(picture: RenderedScene): StreetFigures | null {
  const { leftToePx: left, rightToePx: right } = picture.truth.weld;
  const inside = left
    .map((p, i) => [p, right[i]!] as const)
    .filter(([a, b]) => [a, b].every(([x, y]) => x > 0 && y > 0 && x < picture.width && y < picture.height));
  if (inside.length < 20) return null;
  const [from, to] = [inside[Math.floor(inside.length / 5)]!, inside[Math.floor((4 * inside.length) / 5)]!];
  const middle = ([a, b]: (typeof inside)[number]) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
  const [start, end] = [middle(from), middle(to)];
  const long = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const [tx, ty] = [(end[0] - start[0]) / long, (end[1] - start[1]) / long];
  const width = inside.map(([a, b]) => Math.hypot(a[0] - b[0], a[1] - b[1])).sort((a, b) => a - b)[
    inside.length >> 1
  ]!;
  const px = width / BEAD_PX;
  const at: At = (u, v) => {
    const x = Math.round(start[0] + (u * tx - v * ty) * px);
    const y = Math.round(start[1] + (u * ty + v * tx) * px);
    if (x < 0 || y < 0 || x >= picture.width || y >= picture.height) return [NaN, NaN, NaN];
    const k = 3 * (y * picture.width + x);
    return [picture.rgb[k]! / 255, picture.rgb[k + 1]! / 255, picture.rgb[k + 2]! / 255];
  };
  const columns = Math.max(8, Math.floor(long / px));
  const sides = [contrast(at, columns, 40, 100), contrast(at, columns, -100, -40)].filter(
    (one) => one !== null,
  );
  if (sides.length === 0) return null;
  const of = (pick: (one: (typeof sides)[number]) => number): number =>
    sides.reduce((sum, one) => sum + pick(one), 0) / sides.length;
  return {
    fine: of((s) => s.fine),
    coarse: of((s) => s.coarse),
    blown: blownShare(at, columns),
    chroma: chromaOf(at, columns),
  };
}

const grey = ([r, g, b]: readonly [number, number, number]): number => 0.299 * r + 0.587 * g + 0.114 * b;

/** Light less its mean over 5 pixels, and that mean less the one over 33, both over the whole mean. */
function contrast(at: At, columns: number, v0: number, v1: number): { fine: number; coarse: number } | null {
  const rows = v1 - v0;
  const light = Array.from({ length: rows }, (_, j) =>
    Array.from({ length: columns }, (_, i) => grey(at(i, v0 + j))),
  );
  if (light.flat().some(Number.isNaN)) return null;
  const mean = light.flat().reduce((a, b) => a + b, 0) / (rows * columns);
  const [near, far] = [boxMean(light, 2), boxMean(light, 16)];
  const rms = (of: (j: number, i: number) => number): number =>
    Math.sqrt(
      light.reduce((sum, line, j) => sum + line.reduce((s, _, i) => s + of(j, i) ** 2, 0), 0) /
        (rows * columns),
    );
  return {
    fine: rms((j, i) => light[j]![i]! - near[j]![i]!) / mean,
    coarse: rms((j, i) => near[j]![i]! - far[j]![i]!) / mean,
  };
}

function boxMean(light: readonly (readonly number[])[], reach: number): number[][] {
  const along = (line: readonly number[]): number[] =>
    line.map((_, i) => {
      const part = line.slice(Math.max(0, i - reach), i + reach + 1);
      return part.reduce((a, b) => a + b, 0) / part.length;
    });
  const turned = (list: readonly (readonly number[])[]): number[][] =>
    list[0]!.map((_, i) => list.map((line) => line[i]!));
  return turned(turned(light.map(along)).map(along));
}

function blownShare(at: At, columns: number): number {
  let [blown, seen] = [0, 0];
  for (let i = 0; i < columns; i++)
    for (let v = -100; v <= 100; v += 2) {
      const light = at(i, v);
      if (Number.isNaN(light[0])) continue;
      seen++;
      if (Math.max(...light) > 0.98) blown++;
    }
  return blown / Math.max(1, seen);
}

/** Mean chroma on the middle half of the bead (CIE 15, D65, sRGB by IEC 61966-2-1). */
function chromaOf(at: At, columns: number): number {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const linear = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
  let [sum, count] = [0, 0];
  for (let i = 0; i < columns; i += 2)
    for (let v = -15; v <= 15; v += 2) {
      const [r, g, b] = at(i, v).map(linear) as [number, number, number];
      if (Number.isNaN(r)) continue;
      const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
      const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
      const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
      sum += Math.hypot(500 * (x - y), 200 * (y - z));
      count++;
    }
  return sum / Math.max(1, count);
}
