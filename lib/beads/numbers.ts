import type { Db } from "@/lib/db";

/** The numbers of those of these beads that are still there, by id. */
export async function numbersOfBeads(db: Db, ids: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const rows = await db.bead.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, number: true },
  });
  return new Map(rows.map(({ id, number }) => [id, number]));
}
