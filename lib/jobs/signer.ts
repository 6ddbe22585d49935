import type { Db, Tx } from "@/lib/db";
import { weldsRunBy, type SignedRecord } from "@/lib/inspect";
import { readRoles, signs, type RoleColumns } from "@/lib/people";

/** The welds of a record that somebody who signs it ran themself, by id: as the job says, or by a bead that is theirs. */
export async function weldsOf(
  db: Db | Tx,
  record: SignedRecord,
  signer: { readonly personId: string; readonly mark: string | null },
): Promise<string[]> {
  const beads = await db.bead.findMany({
    where: { jobId: record.job.id, welderId: signer.personId },
    select: { weldId: true },
  });
  return weldsRunBy(
    record,
    signer,
    beads.flatMap(({ weldId }) => weldId ?? []),
  );
}

/** Whether a row is of somebody who signs, by any of their roles. */
export function isSigner(row: RoleColumns | null): boolean {
  const held = row && readRoles(row);
  return held !== null && signs(held);
}
