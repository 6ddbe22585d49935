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

async function backUpWhenDue(db: Db, dataFolder: string): Promise<void> {
  const plan = await nightlyPlan(db);
  const last = plan && (await lastBackup(db));
  if (plan && isDue(new Date(), plan.hour, last ? new Date(last.triedAt) : new Date(plan.since)))
    await backUpAside(dataFolder, ["--nightly"]);
}

/** Runs work as one of those that are looked after: the installation, or one of its sites. */
export type Within = <T>(work: () => T) => T;

/** Looks at each in turn and makes the backups that are due, one at a time. One that fails holds up none of the others. */
export async function lookAtNights(
  all: readonly Within[],
  db: () => Db,
  dataFolder: () => string,
): Promise<void> {
  for (const within of all)
    // A database that does not answer just now is asked again in five minutes.
    await within(async () => backUpWhenDue(db(), dataFolder())).catch(() => undefined);
}

/** Makes the nightly backups when they are due, as long as this process serves. */
export function watchNights(all: readonly Within[], db: () => Db, dataFolder: () => string): void {
  let running = false;
  const look = async () => {
    if (running) return;
    running = true;
    await lookAtNights(all, db, dataFolder).finally(() => {
      running = false;
    });
  };
  watched.toelineNights ??= setInterval(() => void look(), LOOK_MS).unref();
}
