/**
 * How sure we are of a fact.
 * - `seen`: the figure stood in a text we read (edition given in the source).
 * - `seen-older`: read, but only in an older edition than the one in force.
 * - `seen-part`: the text was cut at that point; the rest is from memory.
 * - `derived`: arithmetic on rows that are sourced themselves.
 * - `memory`: known to us, no text read. Never shown as if it were a limit of a code without "check your copy".
 * - `common-practice`: a fact of the trade, no published source.
 * - `own-estimate`: a judgement of ours, open to correction.
 */
export const confidences = [
  "seen",
  "seen-older",
  "seen-part",
  "derived",
  "memory",
  "common-practice",
  "own-estimate",
] as const;
export type Confidence = (typeof confidences)[number];

/** Where a fact comes from: the document, its edition and the clause or page, never the wording. */
export interface Source {
  readonly document: string;
  readonly edition?: string;
  readonly clause?: string;
  readonly confidence: Confidence;
  readonly note?: string;
}

/** Whether a figure must carry "check your copy of the standard" wherever it is shown. */
export function needsCheck(source: Source): boolean {
  return source.confidence !== "seen" && source.confidence !== "derived";
}
