import { dialect, rowsOf, sql, type Db, type Sql } from "@/lib/db";
import { orderBy, type BeadOrder } from "./order";
import type { Scope } from "./scope";
import { scopeWhere, type NumberRange } from "./where";

/** Beads one after the other in an order of the list, as a condition on "BeadFacts" f. */
export interface Stretch {
  readonly where: Sql;
  /** None of them has a number outside of these. */
  readonly numbers: NumberRange;
  /** There are no others behind them. */
  readonly isAll: boolean;
}

interface Way {
  readonly order: BeadOrder;
  readonly from: Sql;
  readonly backwards: boolean;
  readonly lookAhead: number;
}

/**
 * The next `lookAhead` beads behind a place, where their numbers lie close together: in the orders of time and number. null:
 * in any other order, or there is none.
 */
export async function nextStretch(
  db: Db,
  scope: Scope,
  { order, from, backwards, lookAhead }: Way,
): Promise<Stretch | null> {
  const at = ends[order];
  if (at === undefined) return null;
  const next = sql`SELECT f."number", f."place" FROM "BeadFacts" f
    WHERE ${scopeWhere(scope)} AND ${from} ORDER BY ${orderBy(order, backwards)} LIMIT ${lookAhead}`;
  const [row] = await rowsOf<Record<"least" | "most" | "count", unknown> & Record<"first" | "last", string>>(
    db,
    sql`SELECT MIN("number") AS "least", MAX("number") AS "most", COUNT(*) AS "count",
      MIN("place") AS "first", MAX("place") AS "last" FROM (${next}) AS "next"`,
  );
  const count = dialect.numberOut(row?.count);
  if (!row || count === 0) return null;
  const numbers = { least: dialect.numberOut(row.least), most: dialect.numberOut(row.most) };
  const [first, last] = at === "number" ? [numbers.least, numbers.most] : [row.first, row.last];
  const of = at === "number" ? sql`f."number"` : sql`f."place"`;
  return { where: sql`${of} >= ${first} AND ${of} <= ${last}`, numbers, isAll: count < lookAhead };
}

/** By which column the orders go in which beads made one after the other stand one after the other. */
const ends: Readonly<Partial<Record<BeadOrder, "place" | "number">>> = {
  newest: "place",
  oldest: "place",
  number: "number",
  "number-down": "number",
};
