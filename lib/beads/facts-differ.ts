import { canonicalJson } from "@/lib/base";
import { dialect, rowsOf, sql, type Db } from "@/lib/db";
import { filterableFields } from "@/lib/setup";
import { assessContext } from "@/lib/shop";
import { factsStamp, workOutFacts } from "./keep-facts";
import { getBead } from "./read-bead";

const compared = [
  ...["place", "day", "titleKey", "welder", "welderKey", "thicknessMm", "criteriaId", "verdict"],
  ...["triedCause", "outcome", "firstCause", "photos", "marks"],
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
    if (canonicalJson(dialect.jsonOut(row["card"])) !== canonicalJson(facts.card)) return true;
    if (row["firstCause"] !== facts.firstCause) return true;
  }
  const now: Readonly<Record<string, unknown>> = { ...facts, ...facts.setup };
  const plain = (value: unknown): unknown => (typeof value === "bigint" ? Number(value) : value);
  const columns = [...compared, ...filterableFields].filter((name) => name !== "firstCause");
  return columns.some((name) => plain(row[name]) !== now[name]) || (await foundDiffers(db, row, facts.found));
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
