import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import { makeBackup, restoreBackup } from "@/lib/backup";
import { workNow } from "@/lib/beads";
import { migrateAside } from "@/lib/cli/migrate-aside.mjs";
import { openDb, type Db } from "@/lib/db";
import { checkData, collectStrays } from "@/lib/mend";
import { adoptUnlogged } from "@/lib/store";
import type { OneDeed } from "./deeds";
import { bundleVictim, chances, countPhase, startVictim, type PhaseCounts } from "./kills";

const older = fileURLToPath(new URL("../fixtures/older/data-with-keys.zip", import.meta.url));

/** What is killed while it is brought up to date or back: a folder of an earlier version, and a backup of it. */
export interface CutOffGround {
  readonly script: string;
  readonly old: string;
  readonly backup: string;
  /** Rows of every table that must be there afterwards. */
  readonly holds: string;
  readonly work: string;
}

export async function cutOffGround(work: string): Promise<CutOffGround> {
  const [old, current] = [path.join(work, "old"), path.join(work, "current")];
  for (const [file, bytes] of Object.entries(unzipSync(readFileSync(older)))) {
    mkdirSync(path.dirname(path.join(old, file)), { recursive: true });
    writeFileSync(path.join(old, file), bytes);
  }
  cpSync(old, current, { recursive: true });
  const backup = path.join(work, "backup");
  const { holds } = await broughtUp(current);
  const made = await makeBackup({ dataFolder: current, target: backup, now: new Date() });
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  return { script: await bundleVictim("cut-off-victim"), old, backup, holds, work };
}

const rowsOf = async (db: Db): Promise<string> =>
  JSON.stringify([
    ...[await db.bead.count(), await db.photo.count(), await db.signedRevision.count()],
    ...[
      await db.feedback.count(),
      await db.keySignature.count({ where: { subject: { not: { startsWith: "log:" } } } }),
    ],
  ]);

/** Does what a start does to a folder, and says what it holds and what is wrong with it then. */
async function broughtUp(
  folder: string,
): Promise<{ readonly holds: string; readonly wrong: readonly string[] }> {
  await migrateAside(folder);
  const db = openDb(`file:${path.join(folder, "toeline.db")}`);
  try {
    await adoptUnlogged(db);
    await collectStrays(db, folder, new Date());
    await workNow(
      db,
      (await db.bead.findMany({ select: { number: true } })).map(({ number }) => number),
    );
    const found = await checkData(db, folder, { isServed: false });
    return {
      holds: await rowsOf(db),
      wrong: found.map(({ code, path: where }) => `${code} ${where.join(" ")}`),
    };
  } finally {
    await db.$disconnect();
  }
}

/** Each so many moments the process is really killed. */
const KILL_EVERY = 5;

interface CutOffAsked {
  readonly deed: OneDeed;
  readonly seed: number;
  readonly moments: number;
  /** Put in on purpose; ends at the first wrong thing. */
  readonly fault?: string;
  /** Each moment is counted here by what was under way. */
  readonly during?: PhaseCounts;
}

/** A start that does not come through is wrong, whatever it says. */
const refused = (error: unknown) => ({
  holds: "nothing that opens",
  wrong: [error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error)],
});

/** After the kill somebody does the same again; where there is nothing to do any more, that is said. */
async function again(deed: OneDeed, { backup }: CutOffGround, folder: string): Promise<string | null> {
  if (deed === "migrate") return null;
  const up = async (one: string) => void (await migrateAside(one));
  const done = await restoreBackup({ from: backup, dataFolder: folder, now: new Date(), migrate: up });
  const codes = done.ok ? [] : done.issues.map(({ code }) => code);
  const isWhole = codes[0] === "data-folder-used" && existsSync(path.join(folder, "toeline.db"));
  return done.ok || isWhole ? null : `no way out: ${codes.join(" ")}`;
}

/** A victim that has begun, in a folder of its own. */
async function startOn(ground: CutOffGround, folder: string, deed: OneDeed, fault: string) {
  if (deed === "migrate") cpSync(ground.old, folder, { recursive: true });
  else mkdirSync(folder);
  const victim = startVictim(ground.script, folder, [deed, ground.backup, fault]);
  await victim.untilBegan(1);
  return victim;
}

/** How long the deed takes where nobody stops it, on this machine as it is now, ms. */
async function lastsHere(ground: CutOffGround, deed: OneDeed, fault: string): Promise<number> {
  const folder = path.join(ground.work, `${deed}-whole`);
  const victim = await startOn(ground, folder, deed, fault);
  const since = performance.now();
  await victim.untilEnded();
  const lasts = performance.now() - since;
  rmSync(folder, { recursive: true, force: true });
  return lasts;
}

/**
 * Takes a process that brings a folder up to date, or a backup back, at so many random moments, and looks each time whether
 * the same done again leaves everything there, and nothing wrong. Moments behind its end look at the finished thing.
 */
export async function cutOffAtRandom(ground: CutOffGround, asked: CutOffAsked): Promise<readonly string[]> {
  const { deed, moments, fault = "" } = asked;
  const next = chances(asked.seed);
  const wrong: string[] = [];
  // The moments of one life are spread over the time that the deed takes, and a little more.
  const within = Math.ceil((2.2 * (await lastsHere(ground, deed, fault))) / KILL_EVERY);
  for (let moment = 0; moment < moments && !(fault !== "" && wrong.length > 0);) {
    const folder = path.join(ground.work, `${deed}-${moment}`);
    const victim = await startOn(ground, folder, deed, fault);
    for (let isLast = false; !isLast && moment < moments; moment += 1) {
      await pause(next(within));
      const hasEnded = victim.hasEnded();
      isLast = hasEnded || moment === moments - 1 || moment % KILL_EVERY === KILL_EVERY - 1;
      const taken = isLast ? await victim.kill() : await victim.freeze(`${folder}-frozen-${moment}`);
      const stuck = await again(deed, ground, taken.folder);
      const looked =
        stuck === null
          ? await broughtUp(taken.folder).catch(refused)
          : { holds: ground.holds, wrong: [stuck] };
      const lost = looked.holds === ground.holds ? [] : [`lost: ${looked.holds}, was ${ground.holds}`];
      const all = [...looked.wrong, ...lost];
      wrong.push(...all.map((text) => `${deed}, moment ${moment}: ${text}`));
      countPhase(asked.during ?? {}, hasEnded ? "nothing" : deed, isLast, all.length);
      rmSync(taken.folder, { recursive: true, force: true });
      victim.goOn();
    }
    await victim.kill();
    rmSync(folder, { recursive: true, force: true });
  }
  return wrong;
}
