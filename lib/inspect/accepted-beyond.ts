import { pointSentence } from "./sentences";
import type { SignedRecord } from "./signed-record";
import { weldOf, weldPoints } from "./weld-points";
import { weldResults } from "./weld-results";

/**
 * Why a signed record says "accepted" of welds that would be open today, one sentence each: records of before did not
 * compare extents, nor gauges with welds. What was signed stays as it is; this is said beside it. Empty where nothing is.
 */
export function acceptedBeyond(record: SignedRecord): readonly string[] {
  const input = {
    job: record.job.content,
    draft: record.draft,
    instruments: record.instruments,
    beads: record.beads,
  };
  const now = new Map(weldResults(input).map(({ weldId, result }) => [weldId, result]));
  const beyond = new Set(
    record.weldResults.flatMap(({ weldId, result }) =>
      result === "accepted" && now.get(weldId) !== "accepted" ? [weldId] : [],
    ),
  );
  return weldPoints(input)
    .filter((point) => beyond.has(weldOf(point) ?? ""))
    .map(pointSentence);
}
