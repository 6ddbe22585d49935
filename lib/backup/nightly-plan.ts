import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import { dataFolderOf, type Db } from "@/lib/db";
import { readSetting, writeSetting, type Pen } from "@/lib/store";
import type { BackupIssue } from "./issue";
import { chosenIssues } from "./target";

const PLAN = "backup.nightly";
const LAST = "backup.last";

/** Settings hold texts only. */
const number = z.string().regex(/^\d+$/).transform(Number);
const PlanSchema = z.object({ folder: z.string(), keep: number, hour: number, since: z.iso.datetime() });
const LastSchema = z.object({
  /** When the last one was tried, and what it said; when the last good one was made, and where. */
  triedAt: z.iso.datetime(),
  said: z.string(),
  goodAt: z.union([z.iso.datetime(), z.literal("")]),
  folder: z.string(),
});

export interface NightlyPlan {
  readonly folder: string;
  /** How many copies stay. */
  readonly keep: number;
  /** Hour of the machine's own day, 0 to 23. */
  readonly hour: number;
  /** When it was switched on: ISO 8601, UTC. */
  readonly since: string;
}

/** The nightly backup as it is switched on; null: it is off. */
export const nightlyPlan = (db: Db): Promise<NightlyPlan | null> => readSetting(db, PLAN, PlanSchema);

/** Switches the nightly backup on, or off with null. */
export async function writeNightlyPlan(
  pen: Pen,
  plan: Omit<NightlyPlan, "since"> | null,
  now: Date,
): Promise<Result<null, BackupIssue>> {
  if (plan === null) {
    await writeSetting(pen, PLAN, "off");
    return ok(null);
  }
  const { folder, keep, hour } = plan;
  const wrong = [...chosenIssues(dataFolderOf(pen.db), folder)];
  if (!(Number.isInteger(keep) && keep >= 1 && keep <= 60)) wrong.push(issue("copies-to-keep-wrong"));
  if (!(Number.isInteger(hour) && hour >= 0 && hour <= 23)) wrong.push(issue("hour-wrong"));
  if (wrong.length > 0) return fail(...wrong);
  const since = now.toISOString();
  await writeSetting(pen, PLAN, { folder, keep: String(keep), hour: String(hour), since });
  return ok(null);
}

export interface LastBackup {
  readonly triedAt: string;
  readonly said: string;
  /** null: none was good yet. */
  readonly goodAt: string | null;
  readonly folder: string | null;
}

/** What became of the last backups; null: none was ever made. */
export async function lastBackup(db: Db): Promise<LastBackup | null> {
  const last = await readSetting(db, LAST, LastSchema);
  return last && { ...last, goodAt: last.goodAt || null, folder: last.folder || null };
}

/** Keeps what became of a backup. `folder`: where a good one lies; null: it was none. */
export async function noteBackup(pen: Pen, said: string, folder: string | null, at: Date): Promise<void> {
  const before = await lastBackup(pen.db);
  await writeSetting(pen, LAST, {
    triedAt: at.toISOString(),
    said: said.slice(0, 600),
    goodAt: folder === null ? (before?.goodAt ?? "") : at.toISOString(),
    folder: folder ?? before?.folder ?? "",
  });
}
