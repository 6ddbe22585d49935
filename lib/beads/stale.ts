import { dialect, noSql, rowsOf, sql, type Db, type Sql, type Tx } from "@/lib/db";
import { factsStamp } from "./keep-facts";

/** Rows that were not worked out by what this program works out by. Two ranges, so that an index finds them. */
export const staleFacts = (): Sql => sql`("stamp" < ${factsStamp()} OR "stamp" > ${factsStamp()})`;

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
