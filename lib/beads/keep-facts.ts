import { assessBead, type Assessed } from "@/lib/assess";
import { canonicalJson } from "@/lib/base";
import { change, column, dialect, joined, rowsOf, sql, type Sql, type Tx } from "@/lib/db";
import { beadFacts, FACTS_VERSION, type BeadFacts } from "@/lib/facts";
import { filterableFields } from "@/lib/setup";
import { assessContext, tablesDigest, type ShopContext } from "@/lib/shop";
import { sha256Text } from "@/lib/store";
import type { BeadRecord, OwnBead } from "./bead-record";
import { readOwn } from "./read-bead";

let once: string | null = null;

/**
 * What this program works facts out by: its tables and its own way of doing so. A row with another stamp is stale. The
 * shop's own limits need no place in it: a version never changes, and one that comes later marks its beads itself.
 */
export function factsStamp(): string {
  once ??= sha256Text(`${FACTS_VERSION} ${tablesDigest()}`).slice(0, 16);
  return once;
}

/** The facts of a stored bead as they are to be now. */
export async function workOutFacts(tx: Tx, bead: OwnBead, context: ShopContext): Promise<BeadFacts> {
  const welder = (await welderNames(tx, [bead])).get(bead.welderId ?? "") ?? null;
  return beadFacts(assessBead(bead, context), { welder, atMs: Date.parse(bead.createdAt) });
}

/** By what the people are known who ran these beads, by the person's id; of one that is not kept it says nothing. */
export async function welderNames(
  tx: Tx,
  beads: readonly Pick<BeadRecord, "welderId">[],
): Promise<ReadonlyMap<string, string | null>> {
  const ids = new Set(beads.map(({ welderId }) => welderId).filter((id) => id !== null));
  const select = { id: true, mark: true, name: true } as const;
  if (ids.size === 0) return new Map();
  const people = await tx.person.findMany({ where: { id: { in: [...ids] } }, select });
  return new Map(people.map(({ id, mark, name }) => [id, mark ?? name]));
}

/**
 * Works out what a bead is asked by and keeps it, in the transaction that changed the bead. Nothing of it is typed or
 * sealed: it follows from the bead. A bead that is not there has no facts.
 */
export async function keepFacts(tx: Tx, beadId: string): Promise<void> {
  const bead = await readOwn(tx, beadId);
  if (!bead || bead === "unreadable") return;
  const context = await assessContext(tx, [bead.content.judgement.criteriaId]);
  await writeFacts(tx, bead, await workOutFacts(tx, bead, context), context.weighedBy);
}

/** Beads written by one statement: their columns stay below the 999 parameters that a database may be held to. */
const ROWS = 25;

/**
 * As `keepFacts`, for whoever made many beads alike and has assessed one of them: what a bead is called, who ran it and when
 * change nothing of what is said of it. The beads are new: their rows are there, and empty.
 */
export async function keepAssessed(
  tx: Tx,
  beads: readonly Assessed<BeadRecord>[],
  { weighedBy }: Pick<ShopContext, "weighedBy">,
): Promise<void> {
  const names = await welderNames(tx, beads);
  const rows = beads.map((bead) => {
    const welder = names.get(bead.welderId ?? "") ?? null;
    const own = { ...bead, previousId: bead.previous?.id ?? null };
    return { bead: own, facts: beadFacts(bead, { welder, atMs: Date.parse(bead.createdAt) }) };
  });
  for (let from = 0; from < rows.length; from += ROWS)
    await writeNewFacts(tx, rows.slice(from, from + ROWS), weighedBy);
}

async function writeNewFacts(
  tx: Tx,
  rows: readonly { readonly bead: OwnBead; readonly facts: BeadFacts }[],
  weighedBy: string,
): Promise<void> {
  const cells = rows.map(({ bead, facts }) => factColumns(bead, facts, weighedBy));
  const set = (cells[0] ?? []).map(([name]) => sql`${column(name)} = excluded.${column(name)}`);
  await change(tx, sql`${insert(cells)} ON CONFLICT ("number") DO UPDATE SET ${joined(set, ",")}`);
  const found = rows.flatMap(({ bead: { number }, facts }) => facts.found.map((one) => ({ number, ...one })));
  await tx.beadFound.createMany({ data: found });
  const cards = rows.map(
    ({ bead: { number }, facts }) => sql`(${number}, ${dialect.jsonIn(keptValue(facts))})`,
  );
  await change(tx, sql`INSERT INTO "BeadCard" ("number", "card") VALUES ${joined(cards, ",")}`);
  for (const { bead, facts } of rows) await change(tx, dialect.keepWords(bead.number, facts.words));
}

/** What is kept as one value: the card, and what tells whether the words still are those that are kept to be found. */
export const keptValue = ({ card, words }: BeadFacts) => ({
  ...card,
  wordsKey: sha256Text(words).slice(0, 16),
});

/** Writes what differs from what is there, because each column that is written costs its indexes. */
async function writeFacts(tx: Tx, bead: OwnBead, facts: BeadFacts, weighedBy: string): Promise<void> {
  const { number } = bead;
  const [row] = await rowsOf<Readonly<Record<string, unknown>>>(
    tx,
    sql`SELECT f.*, c."card" FROM "BeadFacts" f LEFT JOIN "BeadCard" c ON c."number" = f."number"
      WHERE f."number" = ${number}`,
  );
  const cells = factColumns(bead, facts, weighedBy).filter(
    ([name, value]) => name === "number" || !row || plainOf(row[name]) !== value,
  );
  // There is none only where somebody took the row out behind the program's back: a bead is made with one.
  if (cells.length > 1) await change(tx, row ? update(number, cells) : insert([cells]));
  const value = keptValue(facts);
  const before = row?.["card"] ?? null;
  // Marks stand in the card in their order, so that what is found on the bead is the same where the card is.
  if (before !== null && canonicalJson(dialect.jsonOut(before)) === canonicalJson(value)) return;
  await writeFound(tx, number, facts);
  await change(
    tx,
    sql`INSERT INTO "BeadCard" ("number", "card") VALUES (${number}, ${dialect.jsonIn(value)})
      ON CONFLICT ("number") DO UPDATE SET "card" = excluded."card"`,
  );
  await change(tx, dialect.keepWords(number, facts.words));
}

async function writeFound(tx: Tx, number: number, { found }: BeadFacts): Promise<void> {
  await change(tx, sql`DELETE FROM "BeadFound" WHERE "number" = ${number}`);
  if (found.length === 0) return;
  const rows = found.map((one) => sql`(${number}, ${one.imperfection}, ${one.count}, ${one.rank})`);
  const into = sql`INSERT INTO "BeadFound" ("number", "imperfection", "count", "rank")`;
  await change(tx, sql`${into} VALUES ${joined(rows, ",")}`);
}

/** A whole number as the schema's columns hold it, whatever the driver hands out. */
export const plainOf = (value: unknown): unknown => (typeof value === "bigint" ? Number(value) : value);

type Cell = readonly [name: string, value: string | number | null];

function factColumns(bead: OwnBead, facts: BeadFacts, weighedBy: string): readonly Cell[] {
  const { place, day, titleKey, welder, welderKey, thicknessMm, criteriaId, verdict } = facts;
  const { triedCause, outcome, firstCause, photos, marks, setup } = facts;
  const around = { number: bead.number, beadId: bead.id, stamp: factsStamp(), weighedBy };
  const owned = { welderId: bead.welderId, jobId: bead.jobId, previousId: bead.previousId };
  const asked = { place, day, titleKey, welder, welderKey, thicknessMm, criteriaId, verdict };
  const told = { triedCause, outcome, firstCause, photos, marks };
  const closed = Object.fromEntries(filterableFields.map((field) => [field, setup[field]]));
  const all: Readonly<Record<string, string | number | null>> = {
    ...around,
    ...owned,
    ...asked,
    ...told,
    ...closed,
  };
  return Object.entries(all);
}

function update(number: number, cells: readonly Cell[]): Sql {
  const set = cells
    .filter(([name]) => name !== "number")
    .map(([name, value]) => sql`${column(name)} = ${value}`);
  return sql`UPDATE "BeadFacts" SET ${joined(set, ",")} WHERE "number" = ${number}`;
}

function insert(rows: readonly (readonly Cell[])[]): Sql {
  const names = (rows[0] ?? []).map(([name]) => column(name));
  const values = (cells: readonly Cell[]): Sql =>
    joined(
      cells.map(([, value]) => sql`${value}`),
      ",",
    );
  const all = rows.map((cells) => sql`(${values(cells)})`);
  return sql`INSERT INTO "BeadFacts" (${joined(names, ",")}) VALUES ${joined(all, ",")}`;
}
