import type { TriedBead } from "@/components/criteria";
import type { Db } from "@/lib/db";
import { listBeads } from "@/lib/beads";

/** The newest are those somebody has in mind. */
const MOST = 60;

/** Beads that limits can be tried on, newest first. */
export async function beadsToTry(
  db: Db,
  only: { readonly welderId?: string },
): Promise<readonly TriedBead[]> {
  const beads = await listBeads(db, only);
  return beads
    .slice(0, MOST)
    .map(({ id, number, content }) => ({ id, title: `${number}: ${content.title}` }));
}
