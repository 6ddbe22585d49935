import type { Source } from "@/lib/base";
import { citedDocuments, type CitedDocument, type DocumentId } from "./tables/sources";

export const memorySource: Source = { document: "trade knowledge, no text read", confidence: "memory" };
export const ownEstimate: Source = { document: "own estimate", confidence: "own-estimate" };
export const commonPractice: Source = {
  document: "common practice, no source",
  confidence: "common-practice",
};

/**
 * The documents behind a row, strongest tier first, each as a `Source`. A row that rests partly on memory lowers all of
 * its documents to "seen-part"; a row without documents rests on memory alone.
 */
export function cite(ids: readonly DocumentId[], memory: boolean): readonly Source[] {
  if (ids.length === 0) return [memorySource];
  return ids
    .map((id): CitedDocument => citedDocuments[id])
    .toSorted((a, b) => (a.tier < b.tier ? -1 : a.tier > b.tier ? 1 : 0))
    .map(({ document, edition, clause }) => ({
      document,
      edition,
      ...(clause === undefined ? {} : { clause }),
      confidence: memory ? "seen-part" : "seen",
    }));
}
