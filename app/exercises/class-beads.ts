import { assessBead } from "@/lib/assess";
import { countedBead, type ClassBead } from "@/lib/course";
import type { Db } from "@/lib/db";
import { getBead } from "@/lib/beads";
import type { HandInRecord } from "@/lib/classroom";
import { assessContext } from "@/lib/shop";

/** What a class is counted by, one row a hand-in, in the same order. */
export async function classBeads(db: Db, handIns: readonly HandInRecord[]): Promise<readonly ClassBead[]> {
  const context = await assessContext(db);
  const rows = await Promise.all(
    handIns.map(async (handIn) => {
      const bead = await getBead(db, handIn.beadId);
      if (!bead) return null;
      return {
        handInId: handIn.id,
        beadId: handIn.beadId,
        student: handIn.studentKey,
        exerciseId: handIn.exerciseId,
        returned: Boolean(handIn.feedback?.returnedAt),
        ...countedBead(assessBead(bead, context)),
      };
    }),
  );
  return rows.filter((row) => row !== null);
}
