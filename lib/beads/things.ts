import type { Db } from "@/lib/db";
import type { Thing } from "@/lib/people";

/** To whom a bead belongs; null when there is no such bead. */
export async function beadThing(db: Db, beadId: string): Promise<Thing | null> {
  const row = await db.bead.findUnique({ where: { id: beadId }, select: { welderId: true } });
  return row ? { personId: row.welderId, beadId } : null;
}

/** To whom the beads belong that carry a photo: one picture may lie on several beads. */
export async function photoThings(db: Db, sha256: string): Promise<readonly Thing[]> {
  const rows = await db.photo.findMany({
    where: { sha256 },
    select: { beadId: true, bead: { select: { welderId: true } } },
  });
  return rows.map(({ beadId, bead }) => ({ personId: bead.welderId, beadId }));
}
