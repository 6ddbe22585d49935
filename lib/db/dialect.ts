import type { Db } from "./client";
import { engineOf } from "./engine";
import { prefixQuery, tokenVector } from "./lexemes";
import { change, either, joined, noSql, rawSql, rowsOf, sql, type Sql } from "./sql";

/**
 * Everything in which the SQL of one database differs from another's. All other SQL of the rooms is common to both that
 * are meant: quoted names, LIMIT, ON CONFLICT DO UPDATE, EXISTS, common tables.
 */
export const dialect = {
  /** Whether a column holds one of the values, however many there are: they travel as one parameter. */
  isOneOf: (of: Sql, values: readonly (string | number)[]): Sql =>
    either({
      sqlite: () => sql`${of} IN (SELECT value FROM json_each(${JSON.stringify(values)}))`,
      postgresql: () => {
        const kind = rawSql(typeof values[0] === "number" ? "::int" : "");
        return sql`${of} = ANY(ARRAY(SELECT (json_array_elements_text(${plain(values)}::json))${kind}))`;
      },
    }),

  /** A row for each of the values, in a column "value". */
  rowEach: (values: readonly string[]): Sql =>
    either({
      sqlite: () => sql`SELECT value AS "value" FROM json_each(${JSON.stringify(values)})`,
      postgresql: () => sql`SELECT json_array_elements_text(${plain(values)}::json) AS "value"`,
    }),

  /** A member of a JSON column as text, by its path: ["tried", "causeId"]. NULL where there is none. */
  jsonText: (of: Sql, path: readonly string[]): Sql =>
    either({
      sqlite: () => sql`json_extract(${of}, ${`$.${path.join(".")}`})`,
      postgresql: () => sql`(${of} #>> (${`{${path.join(",")}}`}::text[]))`,
    }),

  /** JSON to be stored, and JSON as it comes out of a query that Prisma does not type. */
  jsonIn: (value: unknown): Sql =>
    either({
      sqlite: () => sql`${JSON.stringify(value)}`,
      postgresql: () => sql`${JSON.stringify(value)}::json`,
    }),
  jsonOut: (value: unknown): unknown => (typeof value === "string" ? JSON.parse(value) : value),

  /** A count or a number of a bead: some drivers hand out big integers. */
  numberOut: (value: unknown): number => Number(value ?? 0),

  /** Keeps the words of a bead, in place of those it had. */
  keepWords: (number: number, words: string): Sql =>
    either({
      sqlite: () => sql`INSERT OR REPLACE INTO "BeadWords" (rowid, "words") VALUES (${number}, ${words})`,
      postgresql: () => sql`INSERT INTO "BeadWords" ("number", "words")
        VALUES (${number}, ${tokenVector(words)}::tsvector)
        ON CONFLICT ("number") DO UPDATE SET "words" = excluded."words"`,
    }),

  /**
   * Numbers, in a column "number", of the beads that hold every one of these; each is a list of words of which one must be
   * there, by its beginning. `within`: of these numbers alone, which an index can begin and stop at.
   */
  numbersWithWords: (
    asked: readonly (readonly string[])[],
    within: { readonly least: number; readonly most: number } | null = null,
  ): Sql => {
    const only = (of: Sql): Sql =>
      within === null ? noSql : sql` AND ${of} >= ${within.least} AND ${of} <= ${within.most}`;
    return either({
      sqlite: () => {
        const quoted = (word: string): string => `"${word.replaceAll('"', '""')}" *`;
        const match = asked.map((words) => `(${words.map(quoted).join(" OR ")})`).join(" AND ");
        return sql`SELECT rowid AS "number" FROM "BeadWords" WHERE "BeadWords" MATCH ${match}${only(sql`rowid`)}`;
      },
      postgresql: () =>
        sql`SELECT "number" FROM "BeadWords" WHERE "words" @@ ${prefixQuery(asked)}::tsquery${only(sql`"number"`)}`,
    });
  },

  /** Writes the kept words anew, so that what was taken out of them leaves no bytes behind. */
  tidyWords: (): Sql =>
    either({
      sqlite: () => sql`INSERT INTO "BeadWords" ("BeadWords") VALUES ('optimize')`,
      // Done with everything else by `forgetFreed`, outside of a transaction.
      postgresql: () => sql`SELECT 1`,
    }),
} as const;

/** JSON of values as PostgreSQL reads it: without those that hold a zero character, which no column there holds. */
const plain = (values: readonly (string | number)[]): string =>
  JSON.stringify(values.filter((value) => typeof value === "number" || !value.includes("\0")));

/** Writes the database anew, so that what was erased leaves no bytes behind in it. Not inside a transaction. */
export async function forgetFreed(db: Db): Promise<void> {
  await change(db, rawSql(engineOf(db) === "sqlite" ? "VACUUM" : "VACUUM FULL"));
}

/** Rows whose key points to a row that is not there. Neither database lets one in by itself. */
export function danglingRows(db: Db): Promise<{ readonly table: string; readonly parent: string }[]> {
  return engineOf(db) === "sqlite" ? rowsOf(db, rawSql("PRAGMA foreign_key_check")) : danglingInPostgres(db);
}

interface Reference {
  readonly table: string;
  readonly column: string;
  readonly parent: string;
  readonly key: string;
}

/** The keys of this schema point by one column each. */
async function danglingInPostgres(db: Db): Promise<{ readonly table: string; readonly parent: string }[]> {
  const references = await rowsOf<Reference>(
    db,
    sql`SELECT c.relname AS "table", a.attname AS "column", p.relname AS "parent", k.attname AS "key"
      FROM pg_constraint f
      JOIN pg_class c ON c.oid = f.conrelid JOIN pg_class p ON p.oid = f.confrelid
      JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum = f.conkey[1]
      JOIN pg_attribute k ON k.attrelid = p.oid AND k.attnum = f.confkey[1]
      WHERE f.contype = 'f' AND f.connamespace = current_schema()::regnamespace
      ORDER BY c.relname, a.attname`,
  );
  const queries = references.map(({ table, column, parent, key }) =>
    rawSql(`SELECT '${table}' AS "table", '${parent}' AS "parent" FROM "${table}" c
      WHERE c."${column}" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM "${parent}" p WHERE p."${key}" = c."${column}")`),
  );
  return queries.length === 0 ? [] : rowsOf(db, joined(queries, " UNION ALL "));
}
