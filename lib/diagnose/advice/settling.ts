import type { Check } from "../types";

/** How many questions a person is asked instead of being given a change. */
const QUESTIONS = 2;

/** The questions that would settle most, by information alone: when no change stands out, a minute more is well spent. */
export function settling(checks: readonly Check[]): readonly Check[] {
  return checks
    .filter(({ kind }) => kind === "question")
    .toSorted((a, b) => b.informationBits - a.informationBits || a.id.localeCompare(b.id))
    .slice(0, QUESTIONS);
}
