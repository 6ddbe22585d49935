import type { Db, Tx } from "@/lib/db";
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
export function allEntries(db: Db | Tx): Promise<LogEntry[]> {
  return db.logEntry.findMany({ orderBy: { seq: "asc" } });
}
