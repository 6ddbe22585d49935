import { column, dialect, noSql, rowsOf, sql, type Db, type Sql } from "@/lib/db";
import type { FilterableField } from "@/lib/setup";
import type { Counted, GroupCount, TrendCounts } from "@/lib/trends";
import type { BeadFilter } from "./bead-filter";
import { welderJoiner } from "./join-welders";
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
 * no figure yet, and `staleBeads` says how many those are.
 */
export async function trendCounts(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  by: GroupColumn,
): Promise<TrendCounts> {
  const where = sql`${whereOf(filter, scope)} AND ${isCurrent()}`;
  const [total] = await rowsOf<{ beads: unknown; decided: unknown; rejected: unknown }>(
    db,
    sql`SELECT COUNT(*) AS "beads", ${decided} AS "decided", ${rejected} AS "rejected" FROM "BeadFacts" f WHERE ${where}`,
  );
  return {
    beads: dialect.numberOut(total?.beads),
    decided: dialect.numberOut(total?.decided),
    rejected: dialect.numberOut(total?.rejected),
    imperfections: await imperfectionCounts(db, where),
    causes: await causeCounts(db, where),
    days: await dayCounts(db, where),
    groups: by === "welder" ? await welderCounts(db, where) : await groupCounts(db, where, by),
  };
}

async function imperfectionCounts(db: Db, where: Sql): Promise<readonly Counted[]> {
  const query = sql`SELECT b."imperfection" AS "key", COUNT(*) AS "n", ${seenAt} AS "at"
    FROM "BeadFacts" f JOIN "BeadFound" b ON b."number" = f."number" WHERE ${where} GROUP BY b."imperfection"`;
  return counted(await rowsOf<Tally>(db, query));
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

async function groupCounts(db: Db, where: Sql, by: GroupColumn): Promise<readonly GroupCount[]> {
  const { of, beside } = groupSource(by);
  const groups = await rowsOf<GroupRow>(
    db,
    sql`SELECT ${of} AS "key", COUNT(*) AS "n", MAX(f."place") AS "at", ${decided} AS "decided", ${rejected} AS "rejected"
      FROM "BeadFacts" f ${beside} WHERE ${where} GROUP BY ${of}`,
  );
  const seen = await rowsOf<{ group: string | null; key: string; n: unknown; at: string }>(
    db,
    sql`SELECT ${of} AS "group", b."imperfection" AS "key", COUNT(*) AS "n", ${seenAt} AS "at"
      FROM "BeadFacts" f JOIN "BeadFound" b ON b."number" = f."number" ${beside} WHERE ${where} GROUP BY ${of}, b."imperfection"`,
  );
  return ranked(groups).map((group) => ({
    key: group.key,
    beads: dialect.numberOut(group.n),
    decided: dialect.numberOut(group.decided),
    rejected: dialect.numberOut(group.rejected),
    mostSeen: ranked(seen.filter((one) => one.group === group.key))[0]?.key ?? null,
    keys: group.key === null ? [] : [group.key],
    standing: null,
  }));
}

/** One person is one row, whether beads are linked to them or carry a word that is theirs alone. */
async function welderCounts(db: Db, where: Sql): Promise<readonly GroupCount[]> {
  const groups = await rowsOf<GroupRow & { welderId: string | null }>(
    db,
    sql`SELECT f."welderId" AS "welderId", f."welder" AS "key", COUNT(*) AS "n", MAX(f."place") AS "at",
      ${decided} AS "decided", ${rejected} AS "rejected"
      FROM "BeadFacts" f WHERE ${where} GROUP BY f."welderId", f."welder"`,
  );
  const seen = await rowsOf<{ welderId: string | null; group: string | null } & Tally>(
    db,
    sql`SELECT f."welderId" AS "welderId", f."welder" AS "group", b."imperfection" AS "key", COUNT(*) AS "n", ${seenAt} AS "at"
      FROM "BeadFacts" f JOIN "BeadFound" b ON b."number" = f."number" WHERE ${where}
      GROUP BY f."welderId", f."welder", b."imperfection"`,
  );
  const people = await db.person.findMany({ select: { id: true, mark: true, name: true } });
  return mergeWelders(groups, seen, welderJoiner(people));
}

function mergeWelders(
  groups: readonly (GroupRow & { readonly welderId: string | null })[],
  seen: readonly (Tally & { readonly welderId: string | null; readonly group: string | null })[],
  join: ReturnType<typeof welderJoiner>,
): readonly GroupCount[] {
  const rows = new Map<string, GroupRow[]>();
  const idOf = (welderId: string | null, word: string | null): string => join(welderId, word)?.id ?? "";
  for (const row of groups) {
    const id = idOf(row.welderId, row.key);
    rows.set(id, [...(rows.get(id) ?? []), row]);
  }
  const merged = [...rows].map(([id, own]) => {
    const [first] = ranked(own);
    const joined = first && join((first as (typeof groups)[number]).welderId, first.key);
    const marked = seen.filter((one) => idOf(one.welderId, one.group) === id);
    return {
      ...{ n: sumOf(own, "n"), at: latest(own), joined, key: joined?.label ?? first?.key ?? null },
      ...{ decided: sumOf(own, "decided"), rejected: sumOf(own, "rejected") },
      keys: [...new Set(own.flatMap(({ key }) => (key === null ? [] : [key])))].sort(),
      mostSeen: ranked(tallied(marked))[0]?.key ?? null,
    };
  });
  return ranked(merged).map(({ key, n, decided: judged, rejected: failed, mostSeen, keys, joined }) => ({
    ...{ key: joined ? key : null, beads: n, decided: judged, rejected: failed, mostSeen, keys },
    standing: joined?.standing ?? null,
  }));
}

const sumOf = <K extends string>(rows: readonly Readonly<Record<K, unknown>>[], name: K): number =>
  rows.reduce((sum, row) => sum + dialect.numberOut(row[name]), 0);

/** A text that is larger for what was seen earlier, as `seenAt` makes it. */
const latest = (rows: readonly { readonly at: string }[]): string =>
  rows.reduce((found, { at }) => (at > found ? at : found), "");

/** What several rows count of the same kind, added up. */
function tallied(rows: readonly Tally[]): readonly Tally[] {
  const byKey = new Map<string, Tally[]>();
  for (const row of rows) byKey.set(row.key, [...(byKey.get(row.key) ?? []), row]);
  return [...byKey].map(([key, own]) => ({ key, n: sumOf(own, "n"), at: latest(own) }));
}
