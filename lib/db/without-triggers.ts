import type { Tx } from "./client";
import { dialect } from "./dialect";
import { engineOf } from "./engine";
import { change, column, rawSql, rowsOf, sql } from "./sql";

/**
 * Lifts triggers for what one transaction does. They are as they were, word for word, before it ends; where it fails, they
 * were never gone. `triggers`: name -> its table; both are ours.
 */
export async function withoutTriggers(
  tx: Tx,
  triggers: Readonly<Record<string, string>>,
  work: () => Promise<void>,
): Promise<void> {
  if (engineOf(tx) === "postgresql") {
    const turn = (way: "DISABLE" | "ENABLE") => async () => {
      for (const [name, table] of Object.entries(triggers))
        await change(tx, rawSql(`ALTER TABLE "${table}" ${way} TRIGGER "${name}"`));
    };
    await turn("DISABLE")();
    await work();
    // What waits for the end of the transaction would keep a table from being altered.
    await change(tx, rawSql("SET CONSTRAINTS ALL IMMEDIATE"));
    await turn("ENABLE")();
    return;
  }
  const named = dialect.isOneOf(column("name"), Object.keys(triggers));
  const guards = await rowsOf<{ name: string; sql: string }>(
    tx,
    sql`SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND ${named}`,
  );
  for (const { name } of guards) await change(tx, rawSql(`DROP TRIGGER "${name}"`));
  await work();
  for (const guard of guards) await change(tx, rawSql(guard.sql));
}
