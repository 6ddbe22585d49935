import { column, dialect, noSql, rowsOf, sql, type Db, type Sql } from "@/lib/db";
import type { FilterableField } from "@/lib/setup";
import type { Counted, GroupCount, TrendCounts } from "@/lib/trends";
import { UNKNOWN, type BeadFilter } from "./bead-filter";
import { welderJoiner } from "./join-welders";
import type { Scope } from "./scope";
import { isCurrent, whereOf } from "./where";

/** What beads are grouped by on a trend. */
export type GroupColumn = FilterableField | "welder" | "trial" | "card";

interface GroupSource {
  readonly of: Sql;
  /** Whom a bead is linked to, where beads are grouped by who ran them. */
  readonly welderId: Sql;
  readonly groupedBy: Sql;
  readonly beside: Sql;
}

/** Where a group's key stands: on the bead's own row, or beside it. */
function groupSource(by: GroupColumn): GroupSource {
  const plain = (of: Sql, beside: Sql): GroupSource => ({ of, welderId: sql`NULL`, groupedBy: of, beside });
  const on = sql`ON s."beadId" = f."beadId"`;
  if (by === "trial") return plain(sql`s."trialId"`, sql`LEFT JOIN "TrialBead" s ${on}`);
  if (by === "card") return plain(sql`s."cardId"`, sql`LEFT JOIN "CardBead" s ${on}`);
  const of = column(by, "f");
  if (by !== "welder") return plain(of, noSql);
  const welderId = sql`f."welderId"`;
  return { of, welderId, groupedBy: sql`${of}, ${welderId}`, beside: noSql };
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
    imperfections: counted(tallied(seen)),
    causes: await causeCounts(db, where),
    days: await dayCounts(db, where),
    groups:
      by === "welder" ? mergeWelders(groups, seen, await joinerOf(db)) : ranked(groups).map(groupOf(seen)),
  };
}

type Sums = Readonly<Record<"beads" | "decided" | "rejected", number>>;

const sums = (rows: readonly Pick<GroupRow, "n" | "decided" | "rejected">[]): Sums => ({
  beads: sumOf(rows, "n"),
  decided: sumOf(rows, "decided"),
  rejected: sumOf(rows, "rejected"),
});

const groupOf =
  (seen: readonly SeenRow[]) =>
  (group: GroupRow): GroupCount => ({
    key: group.key,
    ...sums([group]),
    mostSeen: ranked(seen.filter((one) => one.group === group.key))[0]?.key ?? null,
    keys: group.key === null ? [] : [group.key],
    standing: null,
    person: null,
  });

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
  readonly welderId: string | null;
  readonly n: unknown;
  readonly at: string;
  readonly decided: unknown;
  readonly rejected: unknown;
}

function groupRows(db: Db, where: Sql, by: GroupColumn): Promise<readonly GroupRow[]> {
  const { of, welderId, groupedBy, beside } = groupSource(by);
  return rowsOf<GroupRow>(
    db,
    sql`SELECT ${of} AS "key", ${welderId} AS "welderId", COUNT(*) AS "n", MAX(f."place") AS "at",
      ${decided} AS "decided", ${rejected} AS "rejected"
      FROM "BeadFacts" f ${beside} WHERE ${where} GROUP BY ${groupedBy}`,
  );
}

type SeenRow = Tally & { readonly group: string | null; readonly welderId: string | null };

function seenRows(db: Db, where: Sql, by: GroupColumn): Promise<readonly SeenRow[]> {
  const { of, welderId, groupedBy, beside } = groupSource(by);
  return rowsOf<SeenRow>(
    db,
    sql`SELECT ${of} AS "group", ${welderId} AS "welderId", b."imperfection" AS "key", COUNT(*) AS "n", ${seenAt} AS "at"
      FROM "BeadFacts" f JOIN "BeadFound" b ON b."number" = f."number" ${beside} WHERE ${where}
      GROUP BY ${groupedBy}, b."imperfection"`,
  );
}

const joinerOf = async (db: Db): Promise<ReturnType<typeof welderJoiner>> =>
  welderJoiner(await db.person.findMany({ select: { id: true, mark: true, name: true } }));

/** One person is one row, whether beads are linked to them or carry a word that is theirs alone. */
function mergeWelders(
  groups: readonly GroupRow[],
  seen: readonly SeenRow[],
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
    const joined = first && join(first.welderId, first.key);
    const marked = seen.filter((one) => idOf(one.welderId, one.group) === id);
    return {
      ...{ n: sumOf(own, "n"), at: latest(own), joined, key: joined?.label ?? first?.key ?? null },
      ...sums(own),
      keys: wordsOf(own),
      typed: wordsOf(own.filter(({ welderId }) => welderId === null)),
      mostSeen: ranked(tallied(marked))[0]?.key ?? null,
    };
  });
  const shared = sharedWords(merged.map(({ keys }) => keys));
  return ranked(merged).map(
    ({ key, n, decided: judged, rejected: failed, mostSeen, keys, joined, typed }) => ({
      ...{ key: joined ? key : null, beads: n, decided: judged, rejected: failed, mostSeen, keys },
      standing: joined?.standing ?? null,
      person: keys.some((word) => shared.has(word)) ? { id: joined?.personId ?? UNKNOWN, typed } : null,
    }),
  );
}

const wordsOf = (rows: readonly GroupRow[]): readonly string[] =>
  [...new Set(rows.flatMap(({ key }) => (key === null ? [] : [key])))].sort();

/** Words that stand on more than one row. */
function sharedWords(rows: readonly (readonly string[])[]): ReadonlySet<string> {
  const all = rows.flat();
  return new Set(all.filter((word, i) => all.indexOf(word) !== i));
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
