import { sql, type Db } from "@/lib/db";
import { findPage, type ListedBead } from "./find-page";
import type { Scope } from "./scope";

/** The newest beads that are run with a change, or are to be, of which nobody said yet what it did. */
export async function openChanges(db: Db, scope: Scope, most: number): Promise<readonly ListedBead[]> {
  const also = sql`f."triedCause" IS NOT NULL AND f."outcome" IS NULL`;
  return (await findPage(db, { sort: "newest" }, scope, { at: "start", size: most, also })).beads;
}
