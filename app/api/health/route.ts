import { isOverdue, lastBackup, nightlyPlan } from "@/lib/backup";
import { staleBeads, unreadableBeads, workInBackground } from "@/lib/beads";
import { dataFolderOf, db, type Db } from "@/lib/db";
import { roomLeft } from "@/lib/photo";
import { clockBehindMs } from "@/lib/store";

export const dynamic = "force-dynamic";

/**
 * Whether it serves (200; 503 where the database does not answer) and whether all is well (`ok`): a bead that cannot be read
 * stops nobody, and is no health; nor is a nightly backup that has not come about for two nights, a clock that stands behind
 * the newest entry of the log, or a data folder that takes little more or nothing. The start script asks until this answers;
 * so what the migrations left to be worked out begins with the start.
 */
export async function GET(): Promise<Response> {
  try {
    const stale = await staleBeads(db());
    if (stale > 0) workInBackground(db());
    const unreadable = (await unreadableBeads(db())).length;
    const backup = await backupHealth(db());
    const behindS = Math.round((await clockBehindMs(db(), new Date())) / 1000);
    const room = await roomLeft(dataFolderOf(db()));
    const ok = unreadable === 0 && backup.backup !== "overdue" && behindS === 0 && room === "enough";
    return Response.json({
      ...{ ok, unreadableBeads: unreadable, beadsBeingWorkedOut: stale, clockBehindLogSeconds: behindS },
      ...{ roomInDataFolder: room, ...backup },
    });
  } catch {
    return Response.json({ ok: false, message: "The database does not answer." }, { status: 503 });
  }
}

async function backupHealth(store: Db) {
  const [plan, last] = await Promise.all([nightlyPlan(store), lastBackup(store)]);
  const goodAt = last?.goodAt ?? null;
  const overdue = plan && isOverdue(new Date(), goodAt ? new Date(goodAt) : null, new Date(plan.since));
  return { backup: plan ? (overdue ? "overdue" : "nightly") : "by-hand", lastGoodBackup: goodAt };
}
