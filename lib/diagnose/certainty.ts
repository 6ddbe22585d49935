export type Certainty = "open" | "leaning" | "likely" | "very likely";

/**
 * From which stated probability a word is used, and how often its first causes must at least be right. From the
 * reliability table of `npm run -s score`, run of 2026-11-26 over fifty published cases and 67 scenarios: of each word's
 * cases at least that share is right down to the lower end of the 95 % interval, under the present weights and out of
 * fold. By the counts the two upper words could begin a band lower; they do not, because the tables were worked on with
 * these cases in sight. Choice of words and shares: our own.
 */
export const certainties = [
  { word: "very likely", from: 0.7, rightAtLeast: 0.85 },
  { word: "likely", from: 0.5, rightAtLeast: 0.6 },
  { word: "leaning", from: 0.2, rightAtLeast: 0.5 },
  { word: "open", from: 0, rightAtLeast: 0 },
] as const satisfies readonly { word: Certainty; from: number; rightAtLeast: number }[];

/**
 * How far the likeliest cause may be trusted, in a word for the screen. Takes its stated probability, 0 to 1; a figure
 * that is no number says nothing and is "open". Speaks of a first cause only: the table counts no others.
 * @awaited by a screen
 */
export function certaintyOf(probability: number): Certainty {
  return certainties.find(({ from }) => probability >= from)?.word ?? "open";
}
