import type { Confidence, Source } from "@/lib/base";
import { documents, type BibliographyEntry, type DocumentId } from "./tables/documents";

/** Where in the document, and in which edition of it; a remark where the figure needs one. */
export interface Place {
  readonly clause?: string;
  readonly edition?: string;
  readonly note?: string;
}

/**
 * A fact's source: the document by its id in the bibliography, how sure we are of the fact, and where it stands. Edition
 * and part come from the bibliography where nothing closer is said.
 */
export function cite(id: DocumentId, confidence: Confidence, place: Place = {}): Source {
  const { title, edition, part }: BibliographyEntry = documents[id];
  return {
    document: title,
    ...(edition === null ? {} : { edition }),
    ...(part === null ? {} : { clause: part }),
    confidence,
    ...place,
  };
}

/** What a document is called, for a heading over many of its clauses. */
export const titleOf = (id: DocumentId): string => documents[id].title;

/** What rests on no document: arithmetic, memory, practice, the record itself. */
export function withoutDocument(what: string, confidence: Confidence, place: Place = {}): Source {
  return { document: what, confidence, ...place };
}

export const commonPractice = withoutDocument("common practice, no source", "common-practice");
export const fromMemory = withoutDocument("trade knowledge, no text read", "memory");
export const ownEstimate = withoutDocument("own estimate", "own-estimate");

/** The same source, with a remark or a lower confidence for one row. */
export function remark(source: Source, note: string, confidence = source.confidence): Source {
  return { ...source, note, confidence };
}
