import { assessBead, type Assessed } from "@/lib/assess";
import { change, column, dialect, joined, sql, type Sql, type Tx } from "@/lib/db";
import { beadFacts, FACTS_VERSION, type BeadFacts } from "@/lib/facts";
import { filterableFields } from "@/lib/setup";
import { assessContext, tablesDigest, type ShopContext } from "@/lib/shop";
import { sha256Text } from "@/lib/store";
import type { BeadRecord } from "./bead-record";
import { getBead } from "./read-bead";

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
export async function workOutFacts(tx: Tx, bead: BeadRecord, context: ShopContext): Promise<BeadFacts> {
  const around = { welder: await welderOf(tx, bead), atMs: Date.parse(bead.createdAt) };
  return beadFacts(assessBead(bead, context), around);
}

/** By what a person is known; null where none is kept. */
async function welderOf(tx: Tx, { welderId }: BeadRecord): Promise<string | null> {
  if (welderId === null) return null;
  const select = { mark: true, name: true } as const;
  const person = await tx.person.findUnique({ where: { id: welderId }, select });
  return person?.mark ?? person?.name ?? null;
}

/**
 * Works out what a bead is asked by and keeps it, in the transaction that changed the bead. Nothing of it is typed or
 * sealed: it follows from the bead. A bead that is not there has no facts.
 */
export async function keepFacts(tx: Tx, beadId: string): Promise<void> {
  const bead = await getBead(tx, beadId);
  if (!bead) return;
  const context = await assessContext(tx, [bead.content.judgement.criteriaId]);
  await writeFacts(tx, bead, await workOutFacts(tx, bead, context), context.weighedBy);
}

/**
 * As `keepFacts`, for whoever made many beads alike and has assessed one of them: what a bead is called, who ran it and when
 * change nothing of what is said of it.
 */
export async function keepAssessed(
  tx: Tx,
  bead: Assessed<BeadRecord>,
  { weighedBy }: Pick<ShopContext, "weighedBy">,
): Promise<void> {
  const facts = beadFacts(bead, { welder: await welderOf(tx, bead), atMs: Date.parse(bead.createdAt) });
  await writeFacts(tx, bead, facts, weighedBy);
}

async function writeFacts(tx: Tx, bead: BeadRecord, facts: BeadFacts, weighedBy: string): Promise<void> {
  const { number } = bead;
  await change(tx, upsert("BeadFacts", factColumns(bead, facts, weighedBy)));
  await change(tx, sql`DELETE FROM "BeadFound" WHERE "number" = ${number}`);
  if (facts.found.length > 0) {
    const rows = facts.found.map((one) => sql`(${number}, ${one.imperfection}, ${one.count}, ${one.rank})`);
    await change(
      tx,
      sql`INSERT INTO "BeadFound" ("number", "imperfection", "count", "rank") VALUES ${joined(rows, ",")}`,
    );
  }
  await change(
    tx,
    upsert("BeadCard", [
      ["number", sql`${number}`],
      ["card", dialect.jsonIn(facts.card)],
    ]),
  );
  await change(tx, dialect.keepWords(number, facts.words));
}

type Cell = readonly [name: string, value: Sql];

function factColumns(bead: BeadRecord, facts: BeadFacts, weighedBy: string): readonly Cell[] {
  const { place, day, titleKey, welder, welderKey, thicknessMm, criteriaId, verdict } = facts;
  const { triedCause, outcome, firstCause, photos, marks, setup } = facts;
  const around = { number: bead.number, beadId: bead.id, stamp: factsStamp(), weighedBy };
  const owned = { welderId: bead.welderId, jobId: bead.jobId, previousId: bead.previous?.id ?? null };
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
  return Object.entries(all).map(([name, value]) => [name, sql`${value}`]);
}

/** A row by its number, new or in place of the one there. */
function upsert(table: "BeadFacts" | "BeadCard", cells: readonly Cell[]): Sql {
  const names = joined(
    cells.map(([name]) => column(name)),
    ",",
  );
  const values = joined(
    cells.map(([, value]) => value),
    ",",
  );
  const again = cells
    .filter(([name]) => name !== "number")
    .map(([name]) => sql`${column(name)} = excluded.${column(name)}`);
  return sql`INSERT INTO ${column(table)} (${names}) VALUES (${values})
    ON CONFLICT ("number") DO UPDATE SET ${joined(again, ",")}`;
}
