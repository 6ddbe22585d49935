import { existsSync } from "node:fs";
import { copyFile, mkdir } from "node:fs/promises";
import path from "node:path";
import { fail, issue, ok, type Issue, type Result } from "@/lib/base";
import { workAgain } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { ledgerSentence } from "@/lib/ledger";
import { verifyRecords, type Verification } from "@/lib/verify";
import { copyPhotos } from "./copy-photos";
import { copyTables, countTables } from "./copy-tables";

/** Everything of one Toeline: its database, the place of its photos, the folder with its keys. */
export interface Installation {
  readonly db: Db;
  readonly photos: string;
  readonly folder: string;
}

export interface Moved {
  readonly rows: number;
  readonly photos: number;
  /** The walk of the records where they arrived. */
  readonly verified: Verification;
}

/**
 * - `move-unsound`: what is to be moved does not verify (`data.findings`, `data.first`).
 * - `move-not-empty`: there are rows already where it is to go (`data.rows`).
 * - `move-changed`: somebody wrote meanwhile.
 * - `move-lost`: what arrived is not what left (`data.findings`, `data.first`).
 */
export type MoveIssue = Issue<"move-unsound" | "move-not-empty" | "move-changed" | "move-lost">;

const KEY_FILES = ["installation-key", "session-key"];
const sumOf = (counts: Readonly<Record<string, number>>): number =>
  Object.values(counts).reduce((sum, count) => sum + count, 0);

/**
 * Copies an installation into an empty one, every digest checked before and after: rows, photos, keys. The old one stays as
 * it is. Lists and figures are worked out anew. Where it fails the new one is incomplete and must be emptied.
 */
export async function moveInstallation(
  from: Installation,
  to: Installation,
  onProgress: (what: string, count: number) => void = () => undefined,
): Promise<Result<Moved, MoveIssue>> {
  const there = sumOf(await countTables(to.db));
  if (there > 0) return fail(issue("move-not-empty", [], { rows: there }));
  const before = await verified(from, onProgress);
  if (before.findings.length > 0) return fail(issue("move-unsound", [], told(before)));
  await copyTables(from.db, to.db, onProgress);
  const photos = await copyPhotos(from.db, from.photos, to.photos, onProgress);
  await mkdir(to.folder, { recursive: true, mode: 0o700 });
  for (const name of KEY_FILES)
    if (existsSync(path.join(from.folder, name)))
      await copyFile(path.join(from.folder, name), path.join(to.folder, name));
  await workAgain(to.db);
  const after = await verified(to, onProgress);
  if (after.findings.length > 0) return fail(issue("move-lost", [], told(after)));
  const [left, arrived] = [await countTables(from.db), await countTables(to.db)];
  const same = Object.keys(left).every((table) => left[table] === arrived[table]);
  if (after.head !== before.head || !same) return fail(issue("move-changed"));
  return ok({ rows: sumOf(arrived), photos, verified: after });
}

function verified(
  { db, folder, photos }: Installation,
  onProgress: (what: string, count: number) => void,
): Promise<Verification> {
  return verifyRecords(db, folder, { photos, watch: { onProgress } });
}

const told = ({ findings }: Verification) => ({
  findings: findings.length,
  first: findings[0] ? ledgerSentence(findings[0]) : "",
});

export function moveSentence({ code, data }: MoveIssue): string {
  switch (code) {
    case "move-unsound":
      return `What is to be moved does not verify (${data["findings"]} findings, the first: ${data["first"]}). Nothing was moved.`;
    case "move-not-empty":
      return `Where it is to go there are ${data["rows"]} rows already. Name an empty database; nothing was moved.`;
    case "move-changed":
      return "Somebody wrote while it was moved, so what arrived is not all. Stop Toeline, empty the new database and move again.";
    case "move-lost":
      return `What arrived does not verify (${data["findings"]} findings, the first: ${data["first"]}). The old one is as it was; empty the new one and move again.`;
  }
}
