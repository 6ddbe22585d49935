import { column, dialect, joined, rowsOf, sql, type Db, type Sql } from "@/lib/db";
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
 * The answers of one column, as rows (question, answer). Over all beads by stepping through the index from one answer to the
 * next, which costs as much as there are answers, not beads; of one person's beads by reading those.
 */
function answersTo(name: ChoiceColumn, scope: Scope): Sql {
  const of = column(name, "f");
  const where = scopeWhere(scope);
  const one = (more: Sql): Sql =>
    sql`(SELECT ${of} FROM "BeadFacts" f WHERE ${of} IS NOT NULL AND ${where} ${more} ORDER BY ${of} LIMIT 1)`;
  const answers =
    scope.welderId === undefined
      ? sql`WITH RECURSIVE "answers" ("value") AS (
          SELECT ${one(sql``)}
          UNION ALL
          SELECT ${one(sql`AND ${of} > "answers"."value"`)} FROM "answers" WHERE "answers"."value" IS NOT NULL
        ) SELECT "value" FROM "answers" WHERE "value" IS NOT NULL`
      : sql`SELECT DISTINCT ${of} AS "value" FROM "BeadFacts" f WHERE ${of} IS NOT NULL AND ${where}`;
  return sql`SELECT ${name} AS "question", "value" FROM (${answers}) AS "given"
    UNION ALL
    SELECT ${name}, NULL WHERE EXISTS (SELECT 1 FROM "BeadFacts" f WHERE ${of} IS NULL AND ${where})`;
}

/** One row for each word of the vocabulary that is on any bead: as a value, because EXISTS is made one join over all beads. */
function imperfectionsMarked(scope: Scope): Sql {
  const marked = sql`SELECT 1 FROM "BeadFound" b JOIN "BeadFacts" f ON f."number" = b."number"
    WHERE b."imperfection" = "asked"."value" AND ${scopeWhere(scope)} LIMIT 1`;
  return sql`SELECT 'imperfection' AS "question", "asked"."value" FROM (${dialect.rowEach(imperfectionIds)}) AS "asked"
    WHERE (${marked}) = 1`;
}

/** What stands in the records of those beads a person may see, so that no answer a filter offers finds nothing. */
export async function recordedChoices(db: Db, scope: Scope): Promise<Choices> {
  const asked = columns.map((name) => answersTo(name, scope));
  const query = joined([imperfectionsMarked(scope), ...asked], " UNION ALL ");
  const rows = await rowsOf<{ question: keyof Choices; value: string | null }>(db, query);
  const answers = (question: keyof Choices): Answers =>
    rows.filter((row) => row.question === question).map(({ value }) => value);
  // A database returns them in any order it likes; the vocabulary has one.
  const marked = new Set(answers("imperfection"));
  return {
    ...(Object.fromEntries(columns.map((name) => [name, answers(name)])) as Record<ChoiceColumn, Answers>),
    imperfection: imperfectionIds.filter((id) => marked.has(id)),
  };
}
