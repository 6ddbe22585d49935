import type { TriedBead } from "@/components/criteria";
import type { Db } from "@/lib/db";
import { newestBeads, type Scope } from "@/lib/find";

/** The newest are those somebody has in mind. */
const MOST = 60;

/** Beads that limits can be tried on, newest first. */
export async function beadsToTry(db: Db, only: Scope): Promise<readonly TriedBead[]> {
  const beads = await newestBeads(db, {}, only, { most: MOST });
  return beads.map(({ id, number, title }) => ({ id, title: `${number}: ${title}` }));
}
