import { fail, issue, type Result } from "@/lib/base";
import type { RecordIssue } from "./record-issue";

const fullDisk = /SQLITE_FULL|ENOSPC|EDQUOT|database or disk is full/i;
const busy =
  /SQLITE_BUSY|SQLITE_LOCKED|SQLITE_READONLY|SQLITE_IOERR|SQLITE_CANTOPEN|disk I\/O error|unable to open database|EMFILE|ENFILE|readonly database|database is locked|Timed out|SocketTimeout/i;

/**
 * Runs one command against the store. A full disk or a locked file is the world's ordinary no and becomes an issue;
 * anything else is our own mistake and is thrown on.
 */
export async function guardStore<T>(
  work: () => Promise<Result<T, RecordIssue>>,
): Promise<Result<T, RecordIssue>> {
  try {
    return await work();
  } catch (error) {
    const text = describe(error);
    if (fullDisk.test(text)) return fail(issue("store-full"));
    if (busy.test(text)) return fail(issue("store-unusable"));
    throw error;
  }
}

/** Prisma wraps the driver's error several layers deep, so the whole chain is read. */
function describe(error: unknown, depth = 0): string {
  if (depth > 5 || error === null || typeof error !== "object") return String(error);
  const { message, code, cause, meta } = error as Record<string, unknown>;
  return [message, code, describe(cause, depth + 1), JSON.stringify(meta ?? null)].join(" ");
}
