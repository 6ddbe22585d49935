import { setImmediate as turn } from "node:timers/promises";
import { getBeads, MOST_AT_ONCE, type BeadRecord } from "@/lib/beads";
import type { Db } from "@/lib/db";
import type { BeadFilter } from "./bead-filter";
import { findPage, listedBeads, type PageAt, type Said } from "./find-page";
import type { Scope } from "./scope";

/** A bead whole, with what its facts say; null where those are being worked out again. */
export interface WholeBead {
  readonly bead: BeadRecord;
  readonly said: Said | null;
  readonly confirmedCause: string | null;
}

const SLICE = Math.min(50, MOST_AT_ONCE);

async function whole(db: Db, ids: readonly string[]): Promise<readonly WholeBead[]> {
  const [beads, listed] = await Promise.all([getBeads(db, ids), listedBeads(db, ids)]);
  const saidOf = new Map(listed.map((one) => [one.id, one]));
  return beads.map((bead) => ({
    bead,
    said: saidOf.get(bead.id)?.said ?? null,
    confirmedCause: saidOf.get(bead.id)?.confirmedCause ?? null,
  }));
}

/**
 * The beads that fit, whole, slice by slice in the order asked for: however many there are, a slice is in memory, and other
 * requests get their turn between two. `pick`: of those only these.
 */
export async function* beadSlices(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  pick: ReadonlySet<string> = new Set(),
): AsyncGenerator<readonly WholeBead[]> {
  let at: PageAt = "start";
  for (;;) {
    const { beads, next } = await findPage(db, filter, scope, { at, size: SLICE });
    const ids = beads.map(({ id }) => id).filter((id) => pick.size === 0 || pick.has(id));
    if (ids.length > 0) yield await whole(db, ids);
    if (next === null) return;
    at = { after: next };
    await turn();
  }
}

/** `limit` whole beads from `offset` on, at most `MOST_AT_ONCE` at a time. */
export async function wholePage(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  page: { readonly at: PageAt; readonly size: number },
): Promise<{
  readonly beads: readonly WholeBead[];
  /** Numbers of those that would stand here and nobody can read. */
  readonly unreadable: readonly number[];
  readonly next: string | null;
}> {
  const found = await findPage(db, filter, scope, page);
  const beads: WholeBead[] = [];
  for (let from = 0; from < found.beads.length; from += SLICE) {
    const ids = found.beads.slice(from, from + SLICE).map(({ id }) => id);
    beads.push(...(await whole(db, ids)));
  }
  const read = new Set(beads.map(({ bead }) => bead.id));
  const unreadable = found.beads.filter(({ id }) => !read.has(id)).map(({ number }) => number);
  return { beads, unreadable, next: found.next };
}
