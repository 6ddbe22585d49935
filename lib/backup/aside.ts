import type { Db } from "@/lib/db";
import { isDue } from "./nightly";
import { lastBackup, nightlyPlan } from "./nightly-plan";
import { runAside } from "./run-aside";

const LOOK_MS = 5 * 60_000;

/**
 * Makes a backup in a process of its own: copying and hashing thousands of photos takes minutes. What it says at its end; the
 * outcome is kept by the command itself (`lib/cli/backup.ts`).
 */
export async function backUpAside(
  dataFolder: string,
  args: readonly string[],
): Promise<{ readonly ok: boolean; readonly said: string }> {
  const { code, said } = await runAside("backup.ts", args, { TOELINE_DATA: dataFolder });
  return { ok: code === 0, said: said.slice(-2000) };
}

/** On globalThis, because a bundle may hold this module more than once. */
const watched = globalThis as { toelineNights?: NodeJS.Timeout };

/** Makes the nightly backup when it is due, as long as this process serves. */
export function watchNights(db: () => Db, dataFolder: () => string): void {
  let running = false;
  const look = async () => {
    if (running) return;
    running = true;
    try {
      const plan = await nightlyPlan(db());
      const last = plan && (await lastBackup(db()));
      if (plan && isDue(new Date(), plan.hour, last ? new Date(last.triedAt) : new Date(plan.since)))
        await backUpAside(dataFolder(), ["--nightly"]);
    } catch {
      // A database that does not answer just now is asked again in five minutes.
    } finally {
      running = false;
    }
  };
  watched.toelineNights ??= setInterval(() => void look(), LOOK_MS).unref();
}
