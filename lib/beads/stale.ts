import { dialect, noSql, rowsOf, sql, type Db, type Sql, type Tx } from "@/lib/db";
import { factsStamp } from "./keep-facts";

/**
 * In place of the stamp, on the facts of a bead whose row nobody can read: it is tried again when the row changes, or when
 * this program reads differently.
 */
export const unreadableStamp = (): string => `${factsStamp()} unreadable`;

/** Rows that were not worked out by what this program works out by. Three ranges, so that an index finds them. */
export const staleFacts = (): Sql =>
  sql`("stamp" < ${factsStamp()} OR ("stamp" > ${factsStamp()} AND "stamp" < ${unreadableStamp()})
    OR "stamp" > ${unreadableStamp()})`;

/** Beads whose rows nobody can read, by number. */
export async function unreadableBeads(
  db: Db | Tx,
): Promise<readonly { readonly id: string; readonly number: number }[]> {
  const rows = await rowsOf<{ id: string; number: unknown }>(
    db,
    sql`SELECT "beadId" AS "id", "number" FROM "BeadFacts" WHERE "stamp" = ${unreadableStamp()} ORDER BY "number"`,
  );
  return rows.map(({ id, number }) => ({ id, number: dialect.numberOut(number) }));
}

/** How many beads are being worked out again, of one person or of all. */
export async function staleBeads(
  db: Db | Tx,
  { welderId }: { readonly welderId?: string } = {},
): Promise<number> {
  const own = welderId === undefined ? noSql : sql` AND "welderId" = ${welderId}`;
  const [row] = await rowsOf<{ stale: unknown }>(
    db,
    sql`SELECT COUNT(*) AS "stale" FROM "BeadFacts" WHERE ${staleFacts()}${own}`,
  );
  return dialect.numberOut(row?.stale);
}
