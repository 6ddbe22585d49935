import { z } from "zod";
import { knownCounts } from "@/lib/assess";
import { dialect, noSql, rowsOf, sql, type Db, type Tx } from "@/lib/db";
import { readSetting, writeSetting, type Pen } from "@/lib/store";

const COUNTS_FROM = "shop.counts-from";

/**
 * What this shop's own confirmed cases say, since the counting was last started afresh. Cause id -> cases. Counted from the
 * facts that are kept of each bead; a bead that changed since its facts were worked out is read itself.
 */
export async function shopCounts(db: Db | Tx): Promise<ReturnType<typeof knownCounts>> {
  const from = await readSetting(db, COUNTS_FROM, z.iso.datetime());
  const since = from === null ? noSql : sql`AND b."updatedAt" > ${new Date(from)}`;
  const kept = from === null ? noSql : sql`JOIN "Bead" b ON b."id" = f."beadId" ${since}`;
  const said = (path: readonly string[]) => dialect.jsonText(sql`b."judgement"`, path);
  const rows = await rowsOf<{ cause: string; cases: unknown }>(
    db,
    sql`SELECT "cause", COUNT(*) AS "cases" FROM (
      SELECT f."triedCause" AS "cause" FROM "BeadFacts" f ${kept}
      WHERE f."outcome" = 'cured' AND f."stamp" <> '' AND f."triedCause" IS NOT NULL AND f."previousId" IS NOT NULL
      UNION ALL
      SELECT ${said(["tried", "causeId"])} AS "cause" FROM "BeadFacts" f
      JOIN "Bead" b ON b."id" = f."beadId" AND b."previousId" IS NOT NULL ${since}
      WHERE f."stamp" = '' AND ${said(["outcome"])} = 'cured'
    ) AS "cured" WHERE "cause" IS NOT NULL GROUP BY "cause"`,
  );
  return knownCounts(rows.map(({ cause, cases }) => ({ cause, cases: dialect.numberOut(cases) })));
}

/** Starts counting afresh. The beads keep what was said about them; they only stop weighing on the causes. */
export async function resetShopCounts(pen: Pen, now: Date): Promise<void> {
  await writeSetting(pen, COUNTS_FROM, now.toISOString());
}
