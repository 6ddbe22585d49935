import { writeTogether, type Db } from "@/lib/db";
import { writeLog } from "./log";
import { allSubjects } from "./subjects";

/**
 * Enters what was there before there was a log, once: as long as the log is empty. Afterwards anything the log does
 * not know was put there behind the program's back, and the verifier says so. Says how many were entered.
 */
export async function adoptUnlogged(db: Db): Promise<number> {
  return writeTogether(
    db,
    async (tx) => {
      if (await tx.logEntry.findFirst({ select: { seq: true } })) return 0;
      const subjects = await allSubjects(tx);
      for (const subject of subjects) await writeLog(tx, { by: "system", subject, action: "entered" });
      return subjects.length;
    },
    { timeout: 300_000 },
  );
}
