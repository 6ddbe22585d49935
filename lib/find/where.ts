import { staleFacts } from "@/lib/beads";
import { column, dialect, joined, sql, type Sql } from "@/lib/db";
import { filterableFields, filterName } from "@/lib/setup";
import { UNKNOWN, type BeadFilter } from "./bead-filter";
import type { Scope } from "./scope";
import { wordsAsked } from "./words-asked";

/** Every condition of this room speaks of "BeadFacts" under this name. */
const f = (name: string): Sql => column(name, "f");

const fits = (of: Sql, asked: string | undefined): readonly Sql[] =>
  asked === undefined ? [] : [asked === UNKNOWN ? sql`${of} IS NULL` : sql`${of} = ${asked}`];

/** What is marked stands in a table of its own. */
const marked = (imperfection: Sql): Sql =>
  sql`EXISTS (SELECT 1 FROM "BeadFound" b WHERE b."number" = f."number" AND ${imperfection})`;

/** The row was worked out by what this program works out by. */
export const isCurrent = (): Sql => sql`NOT ${staleFacts()}`;

/** A verdict is asked of rows alone whose verdict is current. */
function verdictWhere(asked: BeadFilter["verdict"]): readonly Sql[] {
  if (asked === undefined) return [];
  const verdict = f("verdict");
  if (asked === "none") return [sql`${verdict} IS NULL`, isCurrent()];
  const words = asked === "decided" ? ["accept", "reject"] : [asked];
  return [
    sql`${verdict} IN (${joined(
      words.map((word) => sql`${word}`),
      ",",
    )})`,
    isCurrent(),
  ];
}

/** A bead without a thickness lies in no span. */
function thicknessWhere({ minThickness, maxThickness }: BeadFilter): readonly Sql[] {
  const at = f("thicknessMm");
  return [
    ...(minThickness === undefined ? [] : [sql`${at} >= ${minThickness}`]),
    ...(maxThickness === undefined ? [] : [sql`${at} <= ${maxThickness}`]),
  ];
}

/** Whether a filter asks for words, which are looked up in their own index before anything else. */
export const asksWords = ({ q }: BeadFilter): boolean => wordsAsked(q).words.length > 0;

function wordsWhere(q: string | undefined, within: NumberRange | null): readonly Sql[] {
  const { numbers, words } = wordsAsked(q);
  return [
    ...numbers.map((number) => sql`${f("number")} = ${number}`),
    ...(words.length === 0 ? [] : [sql`${f("number")} IN (${dialect.numbersWithWords(words, within)})`]),
  ];
}

function markWhere({ imperfection, anyOf, cause, anyCause, photo }: BeadFilter): readonly Sql[] {
  return [
    ...(imperfection === undefined ? [] : [marked(sql`b."imperfection" = ${imperfection}`)]),
    ...(anyOf === undefined ? [] : [marked(dialect.isOneOf(sql`b."imperfection"`, anyOf))]),
    ...fits(f("confirmedCause"), cause),
    ...(anyCause === undefined ? [] : [dialect.isOneOf(f("confirmedCause"), anyCause)]),
    ...(photo === undefined ? [] : [photo === "yes" ? sql`${f("photos")} > 0` : sql`${f("photos")} = 0`]),
  ];
}

/** Whose beads: by the link alone a person is told from another of the same name. */
function whoWhere({ person, anyWelder }: BeadFilter): readonly Sql[] {
  const named = anyWelder === undefined ? [] : [dialect.isOneOf(f("welder"), anyWelder)];
  if (person === undefined) return named;
  const nobody = sql`${f("welderId")} IS NULL`;
  if (person === UNKNOWN) return [nobody, ...named];
  const theirs = sql`${f("welderId")} = ${person}`;
  return [named[0] === undefined ? theirs : sql`(${theirs} OR (${nobody} AND ${named[0]}))`];
}

/** Which trial or card a bead was run in stands beside it, not on it. */
function seriesWhere({ trial, card }: BeadFilter): readonly Sql[] {
  const ran = (table: string, of: string, asked: string | undefined): readonly Sql[] => {
    if (asked === undefined) return [];
    const rows = sql`SELECT 1 FROM ${column(table)} s WHERE s."beadId" = ${f("beadId")}`;
    if (asked === UNKNOWN) return [sql`NOT EXISTS (${rows})`];
    return [sql`EXISTS (${rows} AND ${column(of, "s")} = ${asked})`];
  };
  return [...ran("TrialBead", "trialId", trial), ...ran("CardBead", "cardId", card)];
}

/** The rows a person may see at all. */
export function scopeWhere({ welderId }: Scope): Sql {
  return welderId === undefined ? sql`1 = 1` : sql`${f("welderId")} = ${welderId}`;
}

/** Numbers of beads from one to another, both among them. */
export interface NumberRange {
  readonly least: number;
  readonly most: number;
}

/**
 * The rows that fit everything asked, as a condition on "BeadFacts" f. `within`: words are looked up among these numbers
 * alone, where whoever asks knows that no other row is meant.
 */
export function whereOf(filter: BeadFilter, scope: Scope, within: NumberRange | null = null): Sql {
  return joined([...wordsWhere(filter.q, within), ...plainParts(filter, scope)], " AND ");
}

/**
 * The same rows as what stands behind FROM, for whoever stops before the last of them: words come one after the other out of
 * their index, and none is looked up that nobody waits for.
 */
export function streamedWhere(filter: BeadFilter, scope: Scope): Sql {
  const { numbers, words } = wordsAsked(filter.q);
  if (words.length === 0) return sql`"BeadFacts" f WHERE ${whereOf(filter, scope)}`;
  const own = numbers.map((number) => sql`${f("number")} = ${number}`);
  const rest = joined([...own, ...plainParts(filter, scope)], " AND ");
  return sql`(${dialect.numbersWithWords(words)}) AS "worded" CROSS JOIN "BeadFacts" f
    WHERE f."number" = "worded"."number" AND ${rest}`;
}

/** Everything but the words. */
function plainParts(filter: BeadFilter, scope: Scope): readonly Sql[] {
  return [
    scopeWhere(scope),
    ...(filter.id === undefined ? [] : [dialect.isOneOf(f("beadId"), filter.id)]),
    ...fits(f("welder"), filter.welder),
    ...whoWhere(filter),
    ...filterableFields.flatMap((field) => fits(f(field), filter[filterName(field)])),
    ...thicknessWhere(filter),
    ...markWhere(filter),
    ...fits(f("criteriaId"), filter.criteria),
    ...fits(f("outcome"), filter.outcome),
    ...(filter.from === undefined ? [] : [sql`${f("day")} >= ${filter.from}`]),
    ...(filter.to === undefined ? [] : [sql`${f("day")} <= ${filter.to}`]),
    ...fits(f("jobId"), filter.job),
    ...seriesWhere(filter),
    ...verdictWhere(filter.verdict),
  ];
}
