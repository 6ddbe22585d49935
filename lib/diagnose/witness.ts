import type { Source } from "@/lib/base";
import { cite, type DocumentId, documents, fromMemory, standings } from "@/lib/trade";

/** What a row may rest on: a document of the bibliography, or partly what the trade knows and nobody here has read. */
export type Ground = DocumentId | "memory";

/** Beside a cause: "mig-handbook" names it, "mig-handbook first" names it first or calls it the usual one. */
export type Witness = Ground | `${DocumentId} first`;

const FIRST = " first";

/** Whether it names its cause first. */
export const namesFirst = (witness: Witness): boolean => witness.endsWith(FIRST);

/** The documents among them, those that name their cause first before the others; memory is none. */
export function documentsOf(witnesses: readonly Witness[]): readonly DocumentId[] {
  return [...witnesses.filter(namesFirst), ...witnesses.filter((one) => !namesFirst(one))]
    .filter((one) => one !== "memory")
    .map((one) => (namesFirst(one) ? one.slice(0, -FIRST.length) : one) as DocumentId);
}

/**
 * The documents behind a row, the most trusted first, each as a `Source`. A row that rests partly on memory lowers all
 * of its documents to "seen-part"; a row without documents rests on memory alone.
 */
export function sourcesOf(witnesses: readonly Witness[]): readonly Source[] {
  const named = documentsOf(witnesses);
  if (named.length === 0) return [fromMemory];
  const rank = (id: DocumentId): number => standings.indexOf(documents[id].standing);
  return named
    .toSorted((a, b) => rank(a) - rank(b))
    .map((id) => cite(id, witnesses.includes("memory") ? "seen-part" : "seen"));
}

/** The most trusted of them. */
export const strongest = (...witnesses: readonly Witness[]): Source => sourcesOf(witnesses)[0] ?? fromMemory;
