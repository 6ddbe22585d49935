import { column, dialect, noSql, rowsOf, sql, type Db, type Sql } from "@/lib/db";
import type { FilterableField } from "@/lib/setup";
import type { Counted, TrendCounts } from "@/lib/trends";
import type { BeadFilter } from "./bead-filter";
import type { Scope } from "./scope";
import { isCurrent, whereOf } from "./where";

/** What beads are grouped by on a trend. */
export type GroupColumn = FilterableField | "welder" | "trial" | "card";

/** Where a group's key stands: on the bead's own row, or beside it. */
function groupSource(by: GroupColumn): { readonly of: Sql; readonly beside: Sql } {
  const on = sql`ON s."beadId" = f."beadId"`;
  if (by === "trial") return { of: sql`s."trialId"`, beside: sql`LEFT JOIN "TrialBead" s ${on}` };
  if (by === "card") return { of: sql`s."cardId"`, beside: sql`LEFT JOIN "CardBead" s ${on}` };
  return { of: column(by, "f"), beside: noSql };
}

const decided = sql`SUM(CASE WHEN f."verdict" IN ('accept', 'reject') THEN 1 ELSE 0 END)`;
const rejected = sql`SUM(CASE WHEN f."verdict" = 'reject' THEN 1 ELSE 0 END)`;

/**
 * Where something was seen first, going from the newest bead back and on a bead from the first kind on: a text that is
 * larger for what was seen earlier. Of the kinds on one bead there are fewer than 899, so that three digits sort them.
 */
const seenAt = sql`MAX(f."place" || CAST(999 - b."rank" AS TEXT))`;

interface Tally {
  readonly key: string;
  readonly n: unknown;
  readonly at: string;
}

/** Largest first; equals by what was seen first. */
const ranked = <T extends { readonly n: unknown; readonly at: string }>(rows: readonly T[]): readonly T[] =>
  rows.toSorted((a, b) => dialect.numberOut(b.n) - dialect.numberOut(a.n) || (a.at < b.at ? 1 : -1));

const counted = (rows: readonly Tally[]): readonly Counted[] =>
  ranked(rows).map(({ key, n }) => ({ key, count: dialect.numberOut(n) }));

/**
 * The beads that fit, added up by the database. Only rows that are current are counted: what is being worked out again has
 * no figure yet, and `staleBeads` says how many those are. Three walks over them: what can be added up of what was added up
 * already is not asked again.
 */
export async function trendCounts(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  by: GroupColumn,
): Promise<TrendCounts> {
  const where = sql`${whereOf(filter, scope)} AND ${isCurrent()}`;
  const groups = await groupRows(db, where, by);
  const seen = await seenRows(db, where, by);
  return {
    ...sums(groups),
    imperfections: counted(overGroups(seen)),
    causes: await causeCounts(db, where),
    days: await dayCounts(db, where),
    groups: ranked(groups).map(({ key, ...group }) => ({
      key,
      ...sums([group]),
      mostSeen: ranked(seen.filter((one) => one.group === key))[0]?.key ?? null,
    })),
  };
}

type Sums = Readonly<Record<"beads" | "decided" | "rejected", number>>;

function sums(rows: readonly Pick<GroupRow, "n" | "decided" | "rejected">[]): Sums {
  const of = (name: "n" | "decided" | "rejected"): number =>
    rows.reduce((sum, row) => sum + dialect.numberOut(row[name]), 0);
  return { beads: of("n"), decided: of("decided"), rejected: of("rejected") };
}

/** What was seen in each group, over all of them. */
function overGroups(seen: readonly SeenRow[]): readonly Tally[] {
  const all = new Map<string, { key: string; n: number; at: string }>();
  for (const { key, n, at } of seen) {
    const sum = all.get(key) ?? { key, n: 0, at: "" };
    all.set(key, { key, n: sum.n + dialect.numberOut(n), at: at > sum.at ? at : sum.at });
  }
  return [...all.values()];
}

async function causeCounts(db: Db, where: Sql): Promise<readonly Counted[]> {
  const query = sql`SELECT f."confirmedCause" AS "key", COUNT(*) AS "n", MAX(f."place") AS "at"
    FROM "BeadFacts" f WHERE ${where} AND f."confirmedCause" IS NOT NULL GROUP BY f."confirmedCause"`;
  return counted(await rowsOf<Tally>(db, query));
}

async function dayCounts(db: Db, where: Sql): Promise<TrendCounts["days"]> {
  const query = sql`SELECT f."day" AS "day", ${decided} AS "decided", ${rejected} AS "rejected"
    FROM "BeadFacts" f WHERE ${where} GROUP BY f."day"`;
  const rows = await rowsOf<{ day: string; decided: unknown; rejected: unknown }>(db, query);
  return rows.map((row) => ({
    day: row.day,
    decided: dialect.numberOut(row.decided),
    rejected: dialect.numberOut(row.rejected),
  }));
}

interface GroupRow {
  readonly key: string | null;
  readonly n: unknown;
  readonly at: string;
  readonly decided: unknown;
  readonly rejected: unknown;
}

function groupRows(db: Db, where: Sql, by: GroupColumn): Promise<readonly GroupRow[]> {
  const { of, beside } = groupSource(by);
  return rowsOf<GroupRow>(
    db,
    sql`SELECT ${of} AS "key", COUNT(*) AS "n", MAX(f."place") AS "at", ${decided} AS "decided", ${rejected} AS "rejected"
      FROM "BeadFacts" f ${beside} WHERE ${where} GROUP BY ${of}`,
  );
}

type SeenRow = Tally & { readonly group: string | null };

function seenRows(db: Db, where: Sql, by: GroupColumn): Promise<readonly SeenRow[]> {
  const { of, beside } = groupSource(by);
  return rowsOf<SeenRow>(
    db,
    sql`SELECT ${of} AS "group", b."imperfection" AS "key", COUNT(*) AS "n", ${seenAt} AS "at"
      FROM "BeadFacts" f JOIN "BeadFound" b ON b."number" = f."number" ${beside} WHERE ${where} GROUP BY ${of}, b."imperfection"`,
  );
}
