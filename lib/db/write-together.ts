import type { Db, Tx } from "./client";
import { engineOf, tellEngine } from "./engine";
import { change, rawSql } from "./sql";

/** The number by which the writers of one database know each other; ours alone. */
const WRITERS = 7_160_001;

interface Options {
  readonly timeout?: number;
  readonly maxWait?: number;
}

/** The last writer of each client. On globalThis, as the clients are. */
const shared = globalThis as { toelineWriters?: WeakMap<Db, Promise<unknown>> };
const writers = (shared.toelineWriters ??= new WeakMap<Db, Promise<unknown>>());

/**
 * Everything `work` reads and writes stands together or not at all, and nobody else writes meanwhile. On SQLite a file has
 * one writer by itself. On PostgreSQL writers of all servers wait for one lock of the transaction, taken before anything is
 * read: so running numbers have no gap and the log no fork, and what `work` read is true until it is done. Writers of one
 * server stand in line before they take a connection, so that those who read find one.
 */
export async function writeTogether<T>(db: Db, work: (tx: Tx) => Promise<T>, options?: Options): Promise<T> {
  if (engineOf(db) === "sqlite") return db.$transaction(work, options);
  return inLine(db, () =>
    db.$transaction(async (tx) => {
      tellEngine(tx, "postgresql");
      await change(tx, rawSql(`SELECT pg_advisory_xact_lock(${WRITERS})`));
      return work(tx);
    }, options),
  );
}

function inLine<T>(db: Db, work: () => Promise<T>): Promise<T> {
  const mine = (writers.get(db) ?? Promise.resolve()).then(work, work);
  writers.set(
    db,
    mine.catch(() => undefined),
  );
  return mine;
}
