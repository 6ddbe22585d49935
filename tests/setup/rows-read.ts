import type pg from "pg";
import type { Sql } from "@/lib/db";

/** What this connection has looked at since it last told: rows one after the other, and entries of indexes. */
const LOOKED_AT = `SELECT (SELECT COALESCE(SUM(seq_tup_read), 0) FROM pg_stat_xact_user_tables)
  + (SELECT COALESCE(SUM(pg_stat_get_xact_tuples_returned(indexrelid)), 0) FROM pg_stat_user_indexes) AS "read"`;

/** Rows and entries of indexes that a PostgreSQL looks at for these questions. Within one transaction, in which nothing is told. */
export async function rowsRead(client: pg.Client, queries: readonly Sql[]): Promise<number> {
  const looked = async (): Promise<number> =>
    Number((await client.query<{ read: string }>(LOOKED_AT)).rows[0]?.read);
  await client.query("BEGIN");
  try {
    const before = await looked();
    for (const { text, values } of queries) await client.query(text, values as unknown[]);
    return (await looked()) - before;
  } finally {
    await client.query("ROLLBACK");
  }
}

type Asks = { $queryRaw: (query: Sql) => Promise<unknown> };

/** Writes down every question that a client, or a transaction of it, is asked in SQL from here on. */
export function listenTo(client: Asks): Sql[] {
  const asked: Sql[] = [];
  const ask = client.$queryRaw as (this: Asks, query: Sql) => Promise<unknown>;
  Object.defineProperty(client, "$queryRaw", {
    // A transaction asks within itself: what it wrote is seen by nobody else yet.
    value(this: Asks, query: Sql) {
      asked.push(query);
      return ask.call(this, query);
    },
  });
  return asked;
}
