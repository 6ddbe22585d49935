import { sampleStrip, type StripLay } from "./lay-strip";
import { ANSWER_COLUMNS } from "./strip-size";
import { shares, toePath, type ToePath } from "./toe-path";
import type { Pixels, ReadStrip, StripPlanes } from "./types";

/** Both toes, read off one strip. */
export interface Read {
  readonly lay: StripLay;
  readonly upper: ToePath;
  readonly lower: ToePath;
  /** Columns of the answer where there is a bead. */
  readonly seen: readonly number[];
  readonly widthRows: number;
}

/** Lays one strip, asks the network, and keeps the longest stretch of it in which there is a bead. */
export async function readOnce(
  image: Pixels,
  lay: StripLay,
  readStrip: ReadStrip,
  reachRows: number,
): Promise<{ readonly read: Read; readonly planes: StripPlanes }> {
  const { planes } = sampleStrip(image, lay);
  const logits = await readStrip(planes);
  const [upper, lower] = [toePath(shares(logits, 0), reachRows), toePath(shares(logits, 1), reachRows)];
  const seen = longestRun(upper, lower);
  const widths = seen.map((column) => lower.rows[column]! - upper.rows[column]!).sort((a, b) => a - b);
  return { read: { lay, upper, lower, seen, widthRows: widths[widths.length >> 1] ?? 0 }, planes };
}

/** The longest stretch of columns in which both toes are there, over gaps of a few. */
function longestRun(upper: ToePath, lower: ToePath): readonly number[] {
  const MOST_GAP = 10;
  let best: number[] = [];
  let run: number[] = [];
  for (let column = 0; column < ANSWER_COLUMNS; column++) {
    const there =
      upper.none[column]! < 0.5 && lower.none[column]! < 0.5 && lower.rows[column]! - upper.rows[column]! > 1;
    if (!there) continue;
    if (run.length > 0 && column - run[run.length - 1]! > MOST_GAP) run = [];
    run.push(column);
    if (run.length > best.length) best = run;
  }
  return best;
}
