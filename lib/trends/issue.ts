import type { Issue } from "@/lib/base";

/**
 * - `day-not-a-date`: `data.day` of the bead `data.beadId` is no calendar date; `path` is its place in the list.
 * - `no-samples`: nothing with a verdict to chart.
 * - `sample-impossible`: more found than looked at, or not whole (`data.count`, `data.of`).
 */
export type TrendIssueCode = "day-not-a-date" | "no-samples" | "sample-impossible";
export type TrendIssue = Issue<TrendIssueCode>;
