import type { SignedRecord } from "./signed-record";

/** A bead as it is now, as far as a signed record may have been left behind by it. */
export interface BeadNow {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly weldId: string | null;
  readonly photos: readonly { readonly sha256: string }[];
}

/** What moved on since a record was signed, one sentence each. The record itself stays what it was. */
export function movedSince(record: SignedRecord, beads: readonly BeadNow[]): readonly string[] {
  const looked = new Set(record.draft.welds.map(({ weldId }) => weldId));
  const changed = record.beads.flatMap((signed) => {
    const now = beads.find(({ id }) => id === signed.id);
    if (now?.weldId !== signed.weldId) return [`Bead ${signed.number} is no longer on its weld.`];
    if (now.revision !== signed.revision)
      return [
        `Bead ${signed.number} is at revision ${now.revision}; the record speaks of revision ${signed.revision}.`,
      ];
    const before = signed.photos
      .map(({ sha256 }) => sha256)
      .sort()
      .join();
    const after = now.photos
      .map(({ sha256 }) => sha256)
      .sort()
      .join();
    return before === after ? [] : [`Bead ${signed.number} has other photos than the record speaks of.`];
  });
  const added = beads
    .filter(
      ({ id, weldId }) => weldId !== null && looked.has(weldId) && !record.beads.some((one) => one.id === id),
    )
    .map(({ number }) => `Bead ${number} was attached after signing.`);
  return [...changed, ...added];
}
