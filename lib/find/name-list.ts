import { sql, type Db } from "@/lib/db";
import type { BeadFilter } from "./bead-filter";
import { findPage, type ListedBead } from "./find-page";
import type { Scope } from "./scope";

/** A choice of beads on a form offers no more than these, the newest; older ones are reached from the list. */
export const MOST_OFFERED = 200;

/** The newest beads that fit, for a choice. `notHandedIn`: without those that were handed in. */
export async function newestBeads(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  {
    most = MOST_OFFERED,
    notHandedIn = false,
  }: { readonly most?: number; readonly notHandedIn?: boolean } = {},
): Promise<readonly ListedBead[]> {
  const also = notHandedIn
    ? sql`NOT EXISTS (SELECT 1 FROM "HandIn" h WHERE h."beadId" = f."beadId")`
    : sql`1 = 1`;
  const newest: BeadFilter = { ...filter, sort: "newest" };
  return (await findPage(db, newest, scope, { at: "start", size: most, also })).beads;
}
