import { BeadJudgementSchema } from "@/lib/assess";
import { canonicalJson } from "@/lib/base";
import { dialect, rowsOf, sql, type Db } from "@/lib/db";
import { filterableFields } from "@/lib/setup";
import { assessContext } from "@/lib/shop";
import { factsStamp, keptValue, plainOf, workOutFacts } from "./keep-facts";
import { getBead } from "./read-bead";

const compared = [
  ...["place", "day", "titleKey", "welder", "welderKey", "thicknessMm", "criteriaId", "verdict"],
  ...["triedCause", "outcome", "photos", "marks", "welderId", "jobId", "previousId", "confirmedCause"],
] as const;

/**
 * Whether the facts kept of a bead say something else than working them out now does. A row that counts as stale says
 * nothing, so it never differs; advice alone may be weighed anew without that.
 */
export async function factsDiffer(db: Db, beadId: string): Promise<boolean> {
  const [row] = await rowsOf<Record<string, unknown>>(
    db,
    sql`SELECT f.*, c."card" FROM "BeadFacts" f LEFT JOIN "BeadCard" c ON c."number" = f."number"
      WHERE f."beadId" = ${beadId}`,
  );
  const bead = await getBead(db, beadId);
  if (!row || !bead) return bead !== null;
  if (row["stamp"] !== factsStamp()) return false;
  const context = await assessContext(db, [bead.content.judgement.criteriaId]);
  const facts = await workOutFacts(db, bead, context);
  if (row["weighedBy"] === context.weighedBy) {
    if (canonicalJson(dialect.jsonOut(row["card"])) !== canonicalJson(keptValue(facts))) return true;
    if (row["firstCause"] !== facts.firstCause) return true;
  }
  const owned = { welderId: bead.welderId, jobId: bead.jobId, previousId: bead.previous?.id ?? null };
  const confirmedCause = await confirmedBy(db, beadId);
  const now: Readonly<Record<string, unknown>> = { ...facts, ...facts.setup, ...owned, confirmedCause };
  return (
    [...compared, ...filterableFields].some((name) => plainOf(row[name]) !== now[name]) ||
    (await foundDiffers(db, row, facts.found))
  );
}

/** What the beads run after this one confirmed, out of those beads themselves: the oldest try's answer stands. */
async function confirmedBy(db: Db, beadId: string): Promise<string | null> {
  const tries = await db.bead.findMany({
    where: { previousId: beadId },
    orderBy: [{ createdAt: "asc" }, { number: "asc" }],
    select: { judgement: true },
  });
  for (const { judgement } of tries) {
    const { tried, outcome } = BeadJudgementSchema.parse(judgement);
    if (tried && outcome === "cured") return tried.causeId;
  }
  return null;
}

async function foundDiffers(
  db: Db,
  { number }: Record<string, unknown>,
  found: readonly unknown[],
): Promise<boolean> {
  const rows = await db.beadFound.findMany({
    where: { number: dialect.numberOut(number) },
    orderBy: { rank: "asc" },
    select: { imperfection: true, count: true, rank: true },
  });
  return canonicalJson(rows) !== canonicalJson(found);
}
