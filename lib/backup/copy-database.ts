import { existsSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { fail, issue, ok, type Result } from "@/lib/base";
import { targetRefusal, type BackupIssue } from "./issue";

/** The one file of this room that knows which database there is. Another one needs another file like it. */
export const DATABASE = "toeline.db";

/**
 * Copies the database of a data folder while it serves: the database's own online backup, all pages in one step, so that
 * whoever writes meanwhile waits for milliseconds and the copy is one moment's.
 */
export async function copyDatabase(from: string, to: string): Promise<Result<null, BackupIssue>> {
  const file = path.join(from, DATABASE);
  if (!existsSync(file)) return fail(issue("source-not-here", [], { reason: `${file} is not there` }));
  const source = new Database(file, { fileMustExist: true, timeout: 30_000 });
  try {
    await source.backup(path.join(to, DATABASE), { progress: () => 0x7fff_fff0 });
  } catch (error) {
    return isDamage(error) ? damaged(error) : targetRefusal(to, error);
  } finally {
    source.close();
  }
  return checkDatabase(path.join(to, DATABASE));
}

/** Whether every page and index of a database file is sound. */
export function checkDatabase(file: string): Result<null, BackupIssue> {
  const copy = new Database(file, { readonly: true });
  try {
    const said = copy.pragma("integrity_check(1)", { simple: true });
    return said === "ok" ? ok(null) : fail(issue("source-damaged", [], { reason: String(said) }));
  } catch (error) {
    return isDamage(error) ? damaged(error) : targetRefusal(file, error);
  } finally {
    copy.close();
  }
}

const isDamage = (error: unknown): boolean =>
  /^SQLITE_(CORRUPT|NOTADB)/.test(String((error as { code?: unknown }).code));

const damaged = (error: unknown): Result<never, BackupIssue> =>
  fail(issue("source-damaged", [], { reason: error instanceof Error ? error.message : String(error) }));
