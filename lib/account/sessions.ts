import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { auth } from "./auth";
import type { AccountIssue } from "./issue";

/** After so long one signs in again, however busy one was: a cookie that was copied must not open the shop for ever. Own estimate. */
const LONGEST_MS = 7 * 24 * 3_600_000;

export interface SessionRecord {
  readonly id: string;
  /** ISO 8601. */
  readonly createdAt: string;
  readonly lastUsedAt: string;
  readonly address: string | null;
  /** What the browser calls itself. */
  readonly browser: string | null;
  /** The one that asks. */
  readonly isThis: boolean;
}

/** Whose session these headers carry; null: none, ended, or older than any may get, which ends it. */
export async function sessionOf(
  db: Db,
  headers: Headers,
  now = Date.now(),
): Promise<{ readonly id: string; readonly userId: string } | null> {
  const found = await auth(db).api.getSession({ headers });
  if (!found) return null;
  const { id, userId, createdAt } = found.session;
  if (now - createdAt.getTime() < LONGEST_MS) return { id, userId };
  await db.session.deleteMany({ where: { id } });
  return null;
}

/** Where this user is signed in, the newest first. */
export async function listSessions(
  db: Db,
  userId: string,
  headers: Headers,
  now = new Date(),
): Promise<readonly SessionRecord[]> {
  const own = await sessionOf(db, headers);
  const rows = await db.session.findMany({
    where: { userId, expiresAt: { gt: now }, createdAt: { gt: new Date(now.getTime() - LONGEST_MS) } },
    orderBy: { createdAt: "desc" },
  });
  return rows.map((row) => ({
    id: row.id,
    createdAt: row.createdAt.toISOString(),
    lastUsedAt: row.updatedAt.toISOString(),
    address: row.ipAddress || null,
    browser: row.userAgent || null,
    isThis: row.id === own?.id,
  }));
}

/** Ends one session of this user. */
export async function endSession(db: Db, userId: string, id: string): Promise<Result<null, AccountIssue>> {
  const { count } = await db.session.deleteMany({ where: { id, userId } });
  return count === 0 ? fail(issue("session-gone")) : ok(null);
}
