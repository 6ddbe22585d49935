import type { Issue } from "@/lib/base";

/**
 * - `day-not-a-date`: `data.day` of the bead `data.beadId` is no calendar date; `path` is its place in the list.
 * - `no-samples`: nothing with a verdict to chart.
 * - `sample-impossible`: more found than looked at, or not whole (`data.count`, `data.of`).
 * - `group-empty`: one side of a comparison holds no decided bead (`data.side`).
 * - `bead-on-both-sides`: a comparison needs two separate groups (`data.beadId`).
 */
export type TrendIssueCode =
  "day-not-a-date" | "no-samples" | "sample-impossible" | "group-empty" | "bead-on-both-sides";
export type TrendIssue = Issue<TrendIssueCode>;
