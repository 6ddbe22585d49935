import { factsStamp, unreadableStamp } from "@/lib/beads";
import { column, dialect, joined, rowsOf, sql, type Db, type Sql } from "@/lib/db";
import type { KeptCard } from "@/lib/facts";
import type { NamedBead } from "@/lib/report";
import type { BeadFilter } from "./bead-filter";
import { behind, keyColumns, orderBy, readKey, writeKey, type BeadOrder, type Key } from "./order";
import type { Scope } from "./scope";
import { nextStretch, type Stretch } from "./stretch";
import { asksWords, whereOf } from "./where";

export type VerdictWord = "accept" | "reject" | "cannot-say";

/** What a list says of a bead out of its facts; null as a whole where they are being worked out again. */
export interface Said {
  readonly card: KeptCard;
  readonly verdict: VerdictWord | null;
  /** What its causes were weighed by (`ShopContext.weighedBy`). */
  readonly weighedBy: string;
}

export interface ListedBead extends NamedBead {
  readonly said: Said | null;
  /** Its row is there and nobody can read it. */
  readonly unreadable: boolean;
  /** Stored with its own facts, so current whatever becomes of the bead's. */
  readonly confirmedCause: string | null;
}

/** Where to begin: at the start, behind or before a bead, so many beads on (which reads those), at the end. Texts as `FoundPage` gave them. */
export type PageAt =
  | { readonly after: string }
  | { readonly before: string }
  | { readonly skip: number }
  | "start"
  | "end";

export interface FoundPage {
  readonly beads: readonly ListedBead[];
  /** Where the pages around this one begin; null: there is none. */
  readonly next: string | null;
  readonly previous: string | null;
}

interface Row {
  readonly id: string;
  readonly number: unknown;
  readonly title: string;
  readonly sheetWelder: string | null;
  readonly createdAt: unknown;
  readonly thumb: string | null;
  readonly stamp: string;
  readonly weighedBy: string;
  readonly verdict: VerdictWord | null;
  readonly confirmedCause: string | null;
  readonly card: unknown;
}

/**
 * What a card needs, for the rows of "BeadFacts" f whose numbers `which` selects, in an order. The rows of a page are chosen
 * first and looked up then (CROSS JOIN: in this order), so that what is sorted is narrow. Title and picture are the bead's own.
 */
const listed = (which: Sql, order: Sql, keys: Sql): Sql =>
  sql`WITH "page" AS (${which})
  SELECT b."id", f."number", b."title", b."welder" AS "sheetWelder", b."createdAt", f."stamp", f."weighedBy",
    f."verdict", f."confirmedCause", c."card", ${keys},
    (SELECT p."sha256" FROM "Photo" p WHERE p."beadId" = b."id" ORDER BY p."place" LIMIT 1) AS "thumb"
  FROM "page" CROSS JOIN "BeadFacts" f JOIN "Bead" b ON b."id" = f."beadId"
  LEFT JOIN "BeadCard" c ON c."number" = f."number"
  WHERE f."number" = "page"."number" ORDER BY ${order}`;

const numbers = (where: Sql): Sql => sql`SELECT f."number" FROM "BeadFacts" f WHERE ${where}`;

function toListed(row: Row): ListedBead {
  const { id, title, thumb, verdict, weighedBy, confirmedCause } = row;
  // The stamp says that this program wrote the card, so its shape is known.
  const current = row.stamp === factsStamp() && row.card !== null;
  return {
    id,
    number: dialect.numberOut(row.number),
    title,
    welder: row.sheetWelder,
    createdAt: timeText(row.createdAt),
    thumbSha256: thumb,
    confirmedCause,
    unreadable: row.stamp === unreadableStamp(),
    said: current ? { card: dialect.jsonOut(row.card) as KeptCard, verdict, weighedBy } : null,
  };
}

/** What is no time, in a row that nobody can read, is the first of all: nothing is said of such a row but its number. */
function timeText(stored: unknown): string {
  const time = new Date(stored as string | Date);
  return (Number.isFinite(time.getTime()) ? time : new Date(0)).toISOString();
}

const keysOf = (order: BeadOrder): Sql =>
  joined(
    keyColumns(order).map((name) => sql`${column(name, "f")} AS ${column(`key${name}`)}`),
    ",",
  );

function keyOf(row: Row | undefined, order: BeadOrder): Key {
  const all = (row ?? {}) as Readonly<Record<string, unknown>>;
  return keyColumns(order).map((name) => {
    const value = all[`key${name}`];
    return name === "number" ? dialect.numberOut(value) : String(value);
  });
}

interface Part {
  readonly also: Sql;
  readonly skip: number;
  readonly from: Sql;
  readonly backwards: boolean;
  readonly most: number;
  /** Beads whose words are looked up before those of all are. */
  readonly lookAhead: number;
}

/** A word that stands on every twentieth bead fills a page out of these. */
const LOOK_AHEAD = 1000;

interface AskedPage {
  readonly at: PageAt;
  readonly size: number;
  /** One more condition on "BeadFacts" f. */
  readonly also?: Sql;
  readonly lookAhead?: number;
}

/** The rows from a place on, in the order asked for: `most` of them at most. */
async function rowsFrom(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  part: Part,
  stretch: Stretch | null = null,
): Promise<readonly Row[]> {
  const order = filter.sort ?? "newest";
  const { also, skip, from, backwards, most } = part;
  const bound = stretch === null ? sql`1 = 1` : stretch.where;
  const where = sql`${whereOf(filter, scope, stretch?.numbers)} AND ${also} AND ${from} AND ${bound}`;
  const by = orderBy(order, backwards);
  const which = sql`${numbers(where)} ORDER BY ${by} LIMIT ${most} OFFSET ${skip}`;
  return rowsOf<Row>(db, listed(which, by, keysOf(order)));
}

/**
 * The same, where words are asked for: what is found often is found among the next few hundred beads, whose words alone are
 * looked up then. Else, of a word that is found seldom, all of its beads are.
 */
async function wordedRows(db: Db, filter: BeadFilter, scope: Scope, part: Part): Promise<readonly Row[]> {
  const order = filter.sort ?? "newest";
  const stretch =
    asksWords(filter) && part.skip === 0 ? await nextStretch(db, scope, { ...part, order }) : null;
  if (stretch === null) return rowsFrom(db, filter, scope, part);
  const rows = await rowsFrom(db, filter, scope, part, stretch);
  return rows.length === part.most || stretch.isAll ? rows : rowsFrom(db, filter, scope, part);
}

/**
 * One page of the beads that fit, in the order asked for (newest first unless asked otherwise): `size` rows are read, and
 * one more to know whether there is another page. A place that no page of this order wrote is the start.
 */
export async function findPage(
  db: Db,
  filter: BeadFilter,
  scope: Scope,
  { at, size, also = sql`1 = 1`, lookAhead = LOOK_AHEAD }: AskedPage,
): Promise<FoundPage> {
  const order = filter.sort ?? "newest";
  const text = typeof at === "string" || "skip" in at ? null : "after" in at ? at.after : at.before;
  const skip = typeof at !== "string" && "skip" in at ? at.skip : 0;
  const key = text === null ? null : readKey(text, order);
  const backwards = at === "end" || (typeof at !== "string" && "before" in at && key !== null);
  const from = key === null ? sql`1 = 1` : behind(order, key, backwards);
  const rows = await wordedRows(db, filter, scope, {
    also,
    skip,
    from,
    backwards,
    lookAhead,
    most: size + 1,
  });
  const more = rows.length > size;
  const shown = backwards ? rows.slice(0, size).reverse() : rows.slice(0, size);
  const [isFirst, isLast] = backwards ? [!more, key === null] : [key === null && skip === 0, !more];
  const [first, last] = [writeKey(keyOf(shown[0], order)), writeKey(keyOf(shown.at(-1), order))];
  return {
    beads: shown.map(toListed),
    next: isLast || shown.length === 0 ? null : last,
    previous: isFirst || shown.length === 0 ? null : first,
  };
}

/** Beads by their ids as a list says them, in no order; ids that are nobody's are left out. */
export async function listedBeads(db: Db, ids: readonly string[]): Promise<readonly ListedBead[]> {
  const which = numbers(dialect.isOneOf(sql`f."beadId"`, ids));
  return (await rowsOf<Row>(db, listed(which, orderBy("number"), keysOf("number")))).map(toListed);
}
