import { lookedAt } from "./looked-at";
import type { Signature, SignedRecord } from "./signed-record";

interface Signer {
  readonly personId: string;
  readonly mark: string | null;
}

const spelled = (mark: string): string => mark.replace(/\s+/g, "").toLowerCase();

/**
 * The welds of a record that its signer ran, by id: the job names them as the welder, by person or by identification, or a bead
 * of the weld is theirs (`ownBeadsOf`: the welds of which one is). Only what was looked at counts.
 */
export function weldsRunBy(
  { job, draft, welderMarks }: SignedRecord,
  { personId, mark }: Signer,
  ownBeadsOf: readonly string[] = [],
): string[] {
  const own = spelled(mark ?? "");
  const isMarked = (said = ""): boolean => own !== "" && spelled(said) === own;
  return lookedAt(job.content, draft)
    .filter(
      ({ id, welderId }) => welderId === personId || isMarked(welderMarks[id]) || ownBeadsOf.includes(id),
    )
    .map(({ id }) => id);
}

/**
 * That who signed had run some of the welds, in a sentence; null: they ran none. A record of before this was said in it is asked
 * by what it names.
 */
export function ranBySigner(record: SignedRecord, signature: Signature): string | null {
  const welds = weldNumbers(record, signature.ranWelds ?? weldsRunBy(record, signature.signer));
  return welds === null ? null : `Inspected by the welder: whoever signed ran ${welds}.`;
}

/** So many welds are named; a signature has its place on one page. */
const MOST_NAMED = 12;

/** "weld 2", "welds 2, 5", "welds 1, 2, … and 30 more"; null: none of these. */
export function weldNumbers({ job }: SignedRecord, ids: readonly string[]): string | null {
  const numbers = job.content.welds.filter(({ id }) => ids.includes(id)).map(({ number }) => number);
  if (numbers.length === 0) return null;
  const more = numbers.length - MOST_NAMED;
  const named = numbers.slice(0, MOST_NAMED).join(", ");
  return `${numbers.length === 1 ? "weld" : "welds"} ${named}${more > 0 ? ` and ${more} more` : ""}`;
}
