import type { Basis } from "@/lib/diagnose";

/** How sure a cause is, for the bench. No figure: the weights rank, and the table behind the words counts first causes only. */
export const basisWords: Readonly<Record<Basis, string>> = {
  record: "the record shows it",
  found: "you found it",
  "very likely": "very likely",
  likely: "likely",
  leaning: "leaning to it",
  open: "not sure yet",
  among: "one of several that fit",
};

/** From here on a cause that is not the first is still worth a thought. Own choice. */
const WORTH_A_THOUGHT = 0.1;

/** Of a cause that is not the first nothing is known of how often it is right, so it gets no word of certainty. */
export const otherCauseWords = (probability: number): string =>
  probability >= WORTH_A_THOUGHT ? "also possible" : "less likely";
