import type { Point } from "@/lib/geometry";
import type { Pixels, ReadStrip } from "@/lib/trace";
import { ANSWER_COLUMNS, ANSWER_ROWS, STRIP } from "@/lib/trace/strip-size";

type Edges = (x: number) => readonly [top: number, bottom: number] | null;

/** Several bands that do not lie in each other. */
export function drawnBeads(width: number, height: number, ...all: readonly Edges[]): Pixels {
  const drawn = all.map((edges) => drawnBead(width, height, edges).data);
  const data = drawn.reduce((one, other) => one.map((v, k) => Math.max(v, other[k]!)));
  return { width, height, data };
}

/** A bead as a bright band on a dark plate: `edges` says where it begins and ends down the picture at x. */
export function drawnBead(width: number, height: number, edges: Edges): Pixels {
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let x = 0; x < width; x++) {
    const at = edges(x + 0.5);
    for (let y = 0; y < height; y++) {
      // As much of the pixel as the band covers.
      const covered = at === null ? 0 : Math.max(0, Math.min(1, y + 1 - at[0]) - Math.max(0, y + 1 - at[1]));
      const light = 40 + 170 * Math.max(0, Math.min(1, covered));
      for (let c = 0; c < 3; c++) data[4 * (y * width + x) + c] = light;
    }
  }
  return { width, height, data };
}

/** What a reader without a flaw says of such a picture: a peak at the first and last place brighter than halfway. */
export const flawless: ReadStrip = (planes) => {
  const logits = new Float32Array(2 * ANSWER_ROWS * ANSWER_COLUMNS).fill(-8);
  const light = (row: number, column: number): number =>
    (planes[row * STRIP.columns + column]! + planes[row * STRIP.columns + column + 1]!) / 2;
  const half = (40 + 85) / 255;
  for (let column = 0; column < ANSWER_COLUMNS; column++) {
    const at = column * STRIP.step;
    const bright = Array.from({ length: STRIP.rows }, (_, row) => row).filter((row) => light(row, at) > half);
    const put = (toe: number, place: number | null): void => {
      const base = toe * ANSWER_ROWS * ANSWER_COLUMNS + column;
      if (place === null) logits[base + STRIP.rows * ANSWER_COLUMNS] = 8;
      else
        for (let row = Math.floor(place) - 3; row <= place + 3; row++)
          if (row >= 0 && row < STRIP.rows)
            logits[base + row * ANSWER_COLUMNS] = 8 - 0.5 * (row + 0.5 - place) ** 2;
    };
    const [first, last] = [bright[0], bright[bright.length - 1]];
    const none = first === undefined || last === undefined || first === 0 || last === STRIP.rows - 1;
    /** Between two rows where the light passes halfway. */
    const pass = (dark: number, lit: number): number => {
      const [a, b] = [light(dark, at), light(lit, at)];
      return dark + 0.5 + ((half - a) / (b - a)) * (lit - dark);
    };
    put(0, none ? null : pass(first - 1, first));
    put(1, none ? null : pass(last + 1, last));
  }
  return Promise.resolve(logits);
};

export const along = (...points: readonly (readonly [number, number])[]): readonly Point<"photo">[] =>
  points.map(([x, y]) => ({ x, y }));

/** A run of rows of one brightness, from its first to behind its last. */
interface Run {
  readonly from: number;
  readonly to: number;
  readonly bright: boolean;
}

function runsOf(planes: Float32Array, column: number): readonly Run[] {
  const isBright = (row: number): boolean => planes[row * STRIP.columns + column]! > (40 + 85) / 255;
  const runs: Run[] = [];
  for (let from = 0; from < STRIP.rows;) {
    let to = from + 1;
    while (to < STRIP.rows && isBright(to) === isBright(from)) to++;
    runs.push({ from, to, bright: isBright(from) });
    from = to;
  }
  return runs;
}

/**
 * What a reader says that takes for a bead the run nearest the strip's middle that ends on the strip: a bright one, and a
 * dark one where `dark` is given. `bright` and `dark` are how high its peaks stand: 8 is sure, 5 in doubt.
 */
export const nearestRun =
  (bright: number, dark: number | null): ReadStrip =>
  (planes) => {
    const logits = new Float32Array(2 * ANSWER_ROWS * ANSWER_COLUMNS);
    const far = ({ from, to }: Run): number => Math.max(0, from - STRIP.rows / 2 + 1, STRIP.rows / 2 - to);
    for (let column = 0; column < ANSWER_COLUMNS; column++) {
      const [run] = runsOf(planes, column * STRIP.step)
        .filter((one) => (one.bright || dark !== null) && one.from > 0 && one.to < STRIP.rows)
        .toSorted((a, b) => far(a) - far(b));
      for (const toe of [0, 1]) {
        const base = toe * ANSWER_ROWS * ANSWER_COLUMNS + column;
        if (run === undefined) logits[base + STRIP.rows * ANSWER_COLUMNS] = 12;
        else {
          const place = toe === 0 ? run.from : run.to;
          for (let row = Math.max(0, place - 3); row < Math.min(STRIP.rows, place + 3); row++)
            logits[base + row * ANSWER_COLUMNS] = run.bright ? bright : dark!;
        }
      }
    }
    return Promise.resolve(logits);
  };
