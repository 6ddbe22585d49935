import { z } from "zod";
import { BeadJudgementSchema, confirmedCounts } from "@/lib/assess";
import type { Db } from "@/lib/db";
import { readSetting, writeSetting, type Pen } from "@/lib/store";

const COUNTS_FROM = "shop.counts-from";

/** What this shop's own confirmed cases say, since the counting was last started afresh. Cause id -> cases. */
export async function shopCounts(db: Db): Promise<ReturnType<typeof confirmedCounts>> {
  const from = await readSetting(db, COUNTS_FROM, z.iso.datetime());
  const rows = await db.bead.findMany({
    where: { previousId: { not: null }, ...(from ? { updatedAt: { gt: new Date(from) } } : {}) },
    select: { judgement: true },
  });
  return confirmedCounts(rows.map(({ judgement }) => BeadJudgementSchema.parse(judgement)));
}

/** Starts counting afresh. The beads keep what was said about them; they only stop weighing on the causes. */
export async function resetShopCounts(pen: Pen, now: Date): Promise<void> {
  await writeSetting(pen, COUNTS_FROM, now.toISOString());
}
