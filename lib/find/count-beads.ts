import { dialect, rowsOf, sql, type Db, type Sql } from "@/lib/db";
import type { BeadFilter } from "./bead-filter";
import type { Scope } from "./scope";
import { scopeWhere, streamedWhere } from "./where";

/** Up to here a list counts by itself; beyond it says "more than". */
export const MOST_COUNTED = 1000;

/** How many there are: exactly `count`, or more than that. */
export interface UpTo {
  readonly count: number;
  readonly isMore: boolean;
}

/** Counting every row that fits costs as much as there are; this stops at one more than `most`. */
function counted(where: Sql, most: number): Sql {
  const some = sql`SELECT 1 AS "one" FROM ${where} LIMIT ${most + 1}`;
  return sql`(SELECT COUNT(*) FROM (${some}) AS "some")`;
}

const isAsked = (filter: BeadFilter): boolean =>
  Object.entries(filter).some(([field, value]) => field !== "sort" && value !== undefined);

async function countUpTo(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  most: number,
): Promise<{ readonly found: number; readonly all: number }> {
  const all = counted(sql`"BeadFacts" f WHERE ${scopeWhere(scope)}`, most);
  const found = isAsked(filter) ? counted(streamedWhere(filter, scope), most) : sql`NULL`;
  const query = sql`SELECT ${all} AS "all", ${found} AS "found"`;
  const [row] = await rowsOf<{ all: unknown; found: unknown }>(db, query);
  const there = dialect.numberOut(row?.all);
  return { found: isAsked(filter) ? dialect.numberOut(row?.found) : there, all: there };
}

/** More beads than any database here holds. */
const NO_END = 1_000_000_000;

/** How many beads fit, and how many there are to be found; costs as much as there are. */
export const countBeads = (
  db: Db,
  filter: BeadFilter,
  scope: Scope,
): Promise<{ readonly found: number; readonly all: number }> => countUpTo(db, filter, scope, NO_END);

/** The same as far as a list needs it: exactly up to `most` (Infinity: all of them), then "more than". */
export async function countSome(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  most = MOST_COUNTED,
): Promise<{ readonly found: UpTo; readonly all: UpTo }> {
  const { found, all } = await countUpTo(db, filter, scope, Math.min(most, NO_END));
  const upTo = (count: number): UpTo => ({ count: Math.min(count, most), isMore: count > most });
  return { found: upTo(found), all: upTo(all) };
}
