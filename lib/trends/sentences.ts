import type { TrendIssue, TrendIssueCode } from "./issue";

type Data = TrendIssue["data"];

/** One sentence per code: what is the matter, and what to do. */
export const trendSentences: Readonly<Record<TrendIssueCode, (data: Data) => string>> = {
  "day-not-a-date": ({ day, beadId }) =>
    `Bead ${beadId} has "${day}" for a day, which is no date. Correct its date and draw the chart again.`,
  "no-samples": () =>
    "No bead here has a verdict yet, so there is no reject rate to draw. Choose criteria on the beads first.",
  "sample-impossible": ({ count, of }) =>
    `A sample says ${count} of ${of}, which cannot be. Check where these counts come from.`,
};

export function trendSentence(found: TrendIssue): string {
  return trendSentences[found.code](found.data);
}
