import type { Db } from "@/lib/db";
import type { LogEntry } from "@/lib/ledger";

/** Entries from newest to oldest, `count` of them before `before` (null: from the end). */
export function newestEntries(db: Db, count: number, before: number | null): Promise<LogEntry[]> {
  return db.logEntry.findMany({
    where: before === null ? {} : { seq: { lt: before } },
    orderBy: { seq: "desc" },
    take: count,
  });
}

/** The whole log, oldest first. */
export function allEntries(db: Db): Promise<LogEntry[]> {
  return db.logEntry.findMany({ orderBy: { seq: "asc" } });
}

/** The numbers of those of these beads that are still there, by id. */
export async function numbersOfBeads(db: Db, ids: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const rows = await db.bead.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, number: true },
  });
  return new Map(rows.map(({ id, number }) => [id, number]));
}
