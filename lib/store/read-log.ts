import { dialect, rowsOf, sql, type Db, type Tx } from "@/lib/db";
import type { LogEntry } from "@/lib/ledger";

/** Entries from newest to oldest, `count` of them before `before` (null: from the end). */
export function newestEntries(db: Db, count: number, before: number | null): Promise<LogEntry[]> {
  return db.logEntry.findMany({
    where: before === null ? {} : { seq: { lt: before } },
    orderBy: { seq: "desc" },
    take: count,
  });
}

/** Entries in one part of the log: some two megabytes. */
const PART = 2000;

/** The log from behind `after` on, oldest first, part by part: however long it is, a part of it is in memory. */
export async function* logParts(db: Db | Tx, after = 0): AsyncGenerator<readonly LogEntry[]> {
  for (let seq = after; ;) {
    const part = await db.logEntry.findMany({
      where: { seq: { gt: seq } },
      orderBy: { seq: "asc" },
      take: PART,
    });
    const last = part.at(-1);
    if (!last) return;
    yield part;
    seq = last.seq;
  }
}

/** What the log last says of these subjects; of which it says nothing, those are not in it. */
export async function latestDigests(
  db: Db | Tx,
  subjects: readonly string[],
): Promise<ReadonlyMap<string, string | null>> {
  const rows = await rowsOf<{ subject: string; digest: string | null }>(
    db,
    sql`SELECT e."subject", e."digest" FROM "LogEntry" e WHERE e."seq" IN (
      SELECT MAX(l."seq") FROM "LogEntry" l WHERE ${dialect.isOneOf(sql`l."subject"`, subjects)} GROUP BY l."subject"
    )`,
  );
  return new Map(rows.map(({ subject, digest }) => [subject, digest]));
}

/** How many subjects the log ever spoke of. */
export async function countLoggedSubjects(db: Db | Tx): Promise<number> {
  const [row] = await rowsOf<{ subjects: unknown }>(
    db,
    sql`SELECT COUNT(*) AS "subjects" FROM (SELECT DISTINCT "subject" FROM "LogEntry") AS "spoken"`,
  );
  return dialect.numberOut(row?.subjects);
}

/** Everything the log ever spoke of, in order of names, `size` at a time. */
export async function* loggedSubjects(db: Db | Tx, size: number): AsyncGenerator<readonly string[]> {
  for (let after = ""; ;) {
    const rows = await rowsOf<{ subject: string }>(
      db,
      sql`SELECT "subject" FROM "LogEntry" WHERE "subject" > ${after} GROUP BY "subject" ORDER BY "subject" LIMIT ${size}`,
    );
    const last = rows.at(-1);
    if (!last) return;
    yield rows.map(({ subject }) => subject);
    after = last.subject;
  }
}
