import { sql, type Db } from "@/lib/db";
import { findPage, type ListedBead } from "./find-page";
import type { Scope } from "./scope";

/**
 * The newest beads that are run with a change, or are to be, of which nobody said yet what it did. They are few, so they are
 * taken out of their own index first and sorted then; by the order of the list it would pass over every bead without a change.
 */
export async function openChanges(db: Db, scope: Scope, most: number): Promise<readonly ListedBead[]> {
  const open = sql`SELECT g."number" FROM "BeadFacts" g WHERE g."outcome" IS NULL AND g."triedCause" IS NOT NULL`;
  const also = sql`f."number" IN (${open})`;
  return (await findPage(db, { sort: "newest" }, scope, { at: "start", size: most, also })).beads;
}
