import { z } from "zod";
import { formatQuantity } from "@/lib/units";

/** How far a line of the rubric was reached; each step is a quarter of the line's weight. */
export const rubricSteps = [0, 1, 2, 3, 4] as const;
export type RubricStep = (typeof rubricSteps)[number];
export const FULL_STEP = 4 satisfies RubricStep;

export const stepWords: Readonly<Record<RubricStep, string>> = {
  0: "not there",
  1: "a start",
  2: "half way",
  3: "nearly",
  4: "there",
};

export const RubricLineSchema = z.object({
  id: z.string().min(1).max(40),
  title: z.string().trim().min(1).max(120),
  /** Whole, 1 to 20: how much this line counts beside the others. */
  weight: z.number().int().min(1).max(20),
});
export type RubricLine = z.infer<typeof RubricLineSchema>;
export const RubricSchema = z
  .array(RubricLineSchema)
  .max(20)
  .refine((lines) => new Set(lines.map(({ id }) => id)).size === lines.length, { message: "line-twice" });

/** "left-out": does not apply to this bead, so it counts neither for nor against. A line not named is not marked yet. */
export const RubricMarksSchema = z.record(
  z.string().max(40),
  z.union([z.literal([...rubricSteps]), z.literal("left-out")]),
);
export type RubricMarks = z.infer<typeof RubricMarksSchema>;

export interface RubricScore {
  /** Sum of weight × step / 4 over the marked lines. A multiple of a quarter, so exact in binary. */
  readonly points: number;
  /** Sum of the weights of the lines that count: all but those left out. */
  readonly outOf: number;
  /** Lines nobody has marked yet. */
  readonly open: number;
  /** points / outOf, 0 to 1; null while a line is open or when no line counts: a part is no score. */
  readonly share: number | null;
}

/** The arithmetic of a marked rubric. Marks of lines that are not in the rubric are ignored. */
export function rubricScore(lines: readonly RubricLine[], marks: RubricMarks): RubricScore {
  let [points, outOf, open] = [0, 0, 0];
  for (const { id, weight } of lines) {
    const mark = Object.hasOwn(marks, id) ? marks[id] : undefined;
    if (mark === "left-out") continue;
    outOf += weight;
    if (mark === undefined) open += 1;
    else points += (weight * mark) / FULL_STEP;
  }
  return { points, outOf, open, share: open > 0 || outOf === 0 ? null : points / outOf };
}

/** "7.25 of 9" with what is still open; "" for a rubric without lines. */
export function scoreText({ points, outOf, open, share }: RubricScore): string {
  if (outOf === 0) return "";
  const sum = `${formatQuantity("ratio", points, "metric")} of ${outOf}`;
  if (share === null) return `${sum}, ${open} ${open === 1 ? "line" : "lines"} not marked`;
  return `${sum} (${Math.round(share * 100)} %)`;
}
