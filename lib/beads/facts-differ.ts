import { assessBead, BeadJudgementSchema } from "@/lib/assess";
import { canonicalJson } from "@/lib/base";
import { column, dialect, rowsOf, sql, type Db, type Tx } from "@/lib/db";
import { beadFacts, type BeadFacts } from "@/lib/facts";
import { filterableFields } from "@/lib/setup";
import { assessContext, type ShopContext } from "@/lib/shop";
import type { BeadRecord } from "./bead-record";
import { factsStamp, keptValue, plainOf, welderNames } from "./keep-facts";
import { getBeads, isSpoilt } from "./read-bead";

const compared = [
  ...["place", "day", "titleKey", "welder", "welderKey", "thicknessMm", "criteriaId", "verdict"],
  ...["triedCause", "outcome", "photos", "marks", "welderId", "jobId", "previousId", "confirmedCause"],
] as const;

type Row = Readonly<Record<string, unknown>>;

/** What is kept of some beads and what it follows from, by the bead's id; of what was found on it, by its number. */
interface Around {
  readonly context: ShopContext;
  readonly rows: ReadonlyMap<string, Row>;
  readonly found: ReadonlyMap<number, readonly object[]>;
  readonly welders: ReadonlyMap<string, string | null>;
  readonly confirmed: ReadonlyMap<string, string>;
}

/**
 * Those of these beads (200 at most) of which the facts that are kept say something else than working them out now does. A
 * row that counts as stale says nothing, so it never differs; advice alone may be weighed anew without that. Of a bead that
 * nobody can read, or that cannot be worked out, nothing is said.
 */
export async function factsDiffering(db: Db | Tx, beadIds: readonly string[]): Promise<ReadonlySet<string>> {
  try {
    return await differingTogether(db, beadIds);
  } catch (error) {
    if (!isSpoilt(error)) throw error;
  }
  // Something of one of them cannot be read: the others one by one.
  const differing = new Set<string>();
  if (beadIds.length > 1)
    for (const id of beadIds) for (const one of await factsDiffering(db, [id])) differing.add(one);
  return differing;
}

async function differingTogether(db: Db | Tx, beadIds: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await keptRows(db, beadIds);
  const isStale = (id: string) => rows.has(id) && rows.get(id)?.["stamp"] !== factsStamp();
  const beads = await getBeads(
    db,
    beadIds.filter((id) => !isStale(id)),
  );
  if (beads.length === 0) return new Set();
  const around = await readAround(db, beads, rows);
  return new Set(beads.filter((bead) => differs(bead, around)).map(({ id }) => id));
}

async function keptRows(db: Db | Tx, beadIds: readonly string[]): Promise<ReadonlyMap<string, Row>> {
  const rows = await rowsOf<Row & { readonly beadId: string }>(
    db,
    sql`SELECT f.*, c."card" FROM "BeadFacts" f LEFT JOIN "BeadCard" c ON c."number" = f."number"
      WHERE ${dialect.isOneOf(sql`f.${column("beadId")}`, beadIds)}`,
  );
  return new Map(rows.map((row) => [row.beadId, row]));
}

/** Everything else that the facts of these beads follow from, read for all of them together. */
async function readAround(db: Db | Tx, beads: readonly BeadRecord[], rows: Around["rows"]): Promise<Around> {
  return {
    context: await assessContext(
      db,
      beads.map(({ content }) => content.judgement.criteriaId),
    ),
    rows,
    found: await foundOn(db, rows),
    welders: await welderNames(db, beads),
    confirmed: await confirmedBy(
      db,
      beads.map(({ id }) => id),
    ),
  };
}

function differs(bead: BeadRecord, around: Around): boolean {
  const row = around.rows.get(bead.id);
  if (!row) return true;
  try {
    const welder = around.welders.get(bead.welderId ?? "") ?? null;
    const assessed = assessBead(bead, around.context);
    return saysElse(row, bead, beadFacts(assessed, { welder, atMs: Date.parse(bead.createdAt) }), around);
  } catch {
    return false;
  }
}

function saysElse(row: Row, bead: BeadRecord, facts: BeadFacts, around: Around): boolean {
  if (row["weighedBy"] === around.context.weighedBy) {
    if (canonicalJson(dialect.jsonOut(row["card"])) !== canonicalJson(keptValue(facts))) return true;
    if (row["firstCause"] !== facts.firstCause) return true;
  }
  const owned = { welderId: bead.welderId, jobId: bead.jobId, previousId: bead.previous?.id ?? null };
  const confirmedCause = around.confirmed.get(bead.id) ?? null;
  const now: Row = { ...facts, ...facts.setup, ...owned, confirmedCause };
  const found = around.found.get(dialect.numberOut(row["number"])) ?? [];
  return (
    [...compared, ...filterableFields].some((name) => plainOf(row[name]) !== now[name]) ||
    canonicalJson(found) !== canonicalJson(facts.found)
  );
}

/** What the beads run after these confirmed, out of those beads themselves: the oldest try's answer stands. */
async function confirmedBy(db: Db | Tx, beadIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const tries = await db.bead.findMany({
    where: { previousId: { in: [...beadIds] } },
    orderBy: [{ createdAt: "asc" }, { number: "asc" }],
    select: { previousId: true, judgement: true },
  });
  const confirmed = new Map<string, string>();
  for (const { previousId, judgement } of tries) {
    const { tried, outcome } = BeadJudgementSchema.parse(judgement);
    if (previousId !== null && tried && outcome === "cured" && !confirmed.has(previousId))
      confirmed.set(previousId, tried.causeId);
  }
  return confirmed;
}

async function foundOn(db: Db | Tx, rows: Around["rows"]): Promise<Around["found"]> {
  const kept = await db.beadFound.findMany({
    where: { number: { in: [...rows.values()].map((row) => dialect.numberOut(row["number"])) } },
    orderBy: { rank: "asc" },
  });
  const found = new Map<number, object[]>();
  for (const { number, imperfection, count, rank } of kept)
    found.set(number, [...(found.get(number) ?? []), { imperfection, count, rank }]);
  return found;
}
