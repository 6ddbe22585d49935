import { sql, type Sql } from "./sql";

/**
 * Everything in which the SQL of one database differs from another's. All other SQL of the rooms is common to both that
 * are meant: quoted names, LIMIT, ON CONFLICT DO UPDATE, EXISTS, common tables.
 */
export const dialect = {
  /** Whether a text column holds one of the values, however many there are: they travel as one parameter. */
  isOneOf: (of: Sql, values: readonly (string | number)[]): Sql =>
    sql`${of} IN (SELECT value FROM json_each(${JSON.stringify(values)}))`,

  /** A row for each of the values, in a column "value". */
  rowEach: (values: readonly string[]): Sql =>
    sql`SELECT value AS "value" FROM json_each(${JSON.stringify(values)})`,

  /** A member of a JSON column as text, by its path: ["tried", "causeId"]. NULL where there is none. */
  jsonText: (of: Sql, path: readonly string[]): Sql => sql`json_extract(${of}, ${`$.${path.join(".")}`})`,

  /** JSON to be stored, and JSON as it comes out of a query that Prisma does not type. */
  jsonIn: (value: unknown): Sql => sql`${JSON.stringify(value)}`,
  jsonOut: (value: unknown): unknown => (typeof value === "string" ? JSON.parse(value) : value),

  /** A count or a number of a bead: some drivers hand out big integers. */
  numberOut: (value: unknown): number => Number(value ?? 0),

  /** Keeps the words of a bead, in place of those it had. */
  keepWords: (number: number, words: string): Sql =>
    sql`INSERT OR REPLACE INTO "BeadWords" (rowid, "words") VALUES (${number}, ${words})`,

  /** Numbers of the beads that hold every one of these; each is a list of words of which one must be there, by its beginning. */
  numbersWithWords: (asked: readonly (readonly string[])[]): Sql => {
    const quoted = (word: string): string => `"${word.replaceAll('"', '""')}" *`;
    const match = asked.map((words) => `(${words.map(quoted).join(" OR ")})`).join(" AND ");
    return sql`SELECT rowid FROM "BeadWords" WHERE "BeadWords" MATCH ${match}`;
  },

  /** Writes the kept words anew, so that what was taken out of them leaves no bytes behind. */
  tidyWords: (): Sql => sql`INSERT INTO "BeadWords" ("BeadWords") VALUES ('optimize')`,
} as const;
