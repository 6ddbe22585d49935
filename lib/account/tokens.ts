import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { scopes, type Scope } from "@/lib/people";
import { auth } from "./auth";
import type { AccountIssue } from "./issue";

/** The window in which a token's requests are counted; `auth` says how many there may be. */
const TOKEN_WINDOW_S = 60;

/** Under which name the scopes stand among a key's permissions. */
const AREA = "toeline";

export interface TokenRecord {
  readonly id: string;
  readonly name: string;
  /** Its first characters, to tell tokens apart; the token itself is not kept. */
  readonly start: string;
  readonly scopes: readonly Scope[];
  readonly createdAt: string;
  readonly expiresAt: string | null;
  readonly lastUsedAt: string | null;
}

/** Makes a token and says it this once; what is stored is its hash. */
export async function makeToken(
  db: Db,
  userId: string,
  asked: { readonly name: string; readonly scopes: readonly Scope[]; readonly days: number | null },
): Promise<Result<string, AccountIssue>> {
  const name = asked.name.trim();
  if (name.length === 0 || name.length > 32) return fail(issue("token-name-missing", ["name"]));
  const made = await auth(db).api.createApiKey({
    body: {
      userId,
      name,
      permissions: { [AREA]: [...asked.scopes] },
      ...(asked.days === null ? {} : { expiresIn: asked.days * 86_400 }),
    },
  });
  return ok(made.key);
}

function scopesOf(permissions: unknown): readonly Scope[] {
  const read: unknown = typeof permissions === "string" ? JSON.parse(permissions) : permissions;
  const list = (read as Record<string, unknown> | null)?.[AREA];
  return Array.isArray(list) ? scopes.filter((scope) => list.includes(scope)) : [];
}

/** Whose token this is and how far it reaches; how long to wait, where it is used too often; null when it is none, ended or switched off. */
export async function readToken(
  db: Db,
  token: string,
): Promise<
  { readonly userId: string; readonly scopes: readonly Scope[] } | { readonly waitSeconds: number } | null
> {
  const answer = await auth(db).api.verifyApiKey({ body: { key: token } });
  if (answer.error?.code === "RATE_LIMITED") return { waitSeconds: TOKEN_WINDOW_S };
  if (!answer.valid || !answer.key) return null;
  return { userId: answer.key.referenceId, scopes: scopesOf(answer.key.permissions) };
}

export async function listTokens(db: Db, userId: string): Promise<readonly TokenRecord[]> {
  const rows = await db.apikey.findMany({ where: { referenceId: userId }, orderBy: { createdAt: "asc" } });
  return rows.map((row) => ({
    id: row.id,
    name: row.name ?? "",
    start: row.start ?? "",
    scopes: scopesOf(row.permissions),
    createdAt: row.createdAt.toISOString(),
    expiresAt: row.expiresAt?.toISOString() ?? null,
    lastUsedAt: row.lastRequest?.toISOString() ?? null,
  }));
}

/** Ends a token of this user. */
export async function endToken(db: Db, userId: string, id: string): Promise<Result<null, AccountIssue>> {
  const { count } = await db.apikey.deleteMany({ where: { id, referenceId: userId } });
  return count === 0 ? fail(issue("token-gone")) : ok(null);
}
