import { column, dialect, rowsOf, sql, type Db, type Sql } from "@/lib/db";
import { filterableFields, type FilterableField } from "@/lib/setup";
import { imperfectionIds } from "@/lib/trade";
import type { Scope } from "./scope";
import { scopeWhere } from "./where";

/** What the records answer to one question; null among them: some do not say. */
export type Answers = readonly (string | null)[];
export type ChoiceColumn = FilterableField | "welder" | "confirmedCause" | "criteriaId";
export type Choices = Readonly<Record<ChoiceColumn | "imperfection", Answers>>;

const columns: readonly ChoiceColumn[] = ["welder", ...filterableFields, "confirmedCause", "criteriaId"];

/**
 * The answers of one column. Over all beads by stepping through the index from one answer to the next, which costs as much
 * as there are answers, not beads; of one person's beads by reading those.
 */
async function answersIn(db: Db, name: ChoiceColumn, scope: Scope): Promise<Answers> {
  const of = column(name, "f");
  const where = scopeWhere(scope);
  const one = (more: Sql, order: Sql): Sql =>
    sql`(SELECT ${of} FROM "BeadFacts" f WHERE ${of} IS NOT NULL AND ${where} ${more} ${order})`;
  const first = sql`ORDER BY ${of} LIMIT 1`;
  const query =
    scope.welderId === undefined
      ? sql`WITH RECURSIVE "answers" ("value") AS (
          SELECT ${one(sql``, first)}
          UNION ALL
          SELECT ${one(sql`AND ${of} > "answers"."value"`, first)} FROM "answers" WHERE "answers"."value" IS NOT NULL
        ) SELECT "value" FROM "answers" WHERE "value" IS NOT NULL`
      : sql`SELECT DISTINCT ${of} AS "value" FROM "BeadFacts" f WHERE ${of} IS NOT NULL AND ${where}`;
  const rows = await rowsOf<{ value: string }>(db, query);
  const open = await rowsOf(
    db,
    sql`SELECT 1 AS "open" FROM "BeadFacts" f WHERE ${of} IS NULL AND ${where} LIMIT 1`,
  );
  return [...rows.map(({ value }) => value), ...(open.length > 0 ? [null] : [])];
}

async function imperfectionsIn(db: Db, scope: Scope): Promise<Answers> {
  const marked = sql`SELECT 1 FROM "BeadFound" b JOIN "BeadFacts" f ON f."number" = b."number"
    WHERE b."imperfection" = "asked"."value" AND ${scopeWhere(scope)}`;
  const query = sql`SELECT "asked"."value" FROM (${dialect.rowEach(imperfectionIds)}) AS "asked" WHERE EXISTS (${marked})`;
  return (await rowsOf<{ value: string }>(db, query)).map(({ value }) => value);
}

/** What stands in the records of those beads a person may see, so that no answer a filter offers finds nothing. */
export async function recordedChoices(db: Db, scope: Scope): Promise<Choices> {
  const answers: [ChoiceColumn | "imperfection", Answers][] = [
    ["imperfection", await imperfectionsIn(db, scope)],
  ];
  for (const name of columns) answers.push([name, await answersIn(db, name, scope)]);
  return Object.fromEntries(answers) as Choices;
}
