import { randomUUID } from "node:crypto";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import { auth, PASSPHRASE_LENGTH } from "./auth";
import type { AccountIssue } from "./issue";
import { passphraseIssues } from "./passphrase";

/** Whether a sign-in name in small letters can be one at all. */
export const isUsableName = (name: string): boolean => /^[a-z0-9._]{2,40}$/.test(name);

/** The library wants an address per account; a shop has none to give. `.invalid` is reserved never to exist. */
const address = (signInName: string): string => `${signInName}@accounts.invalid`;

export interface NewAccount {
  readonly signInName: string;
  readonly passphrase: string;
}

/**
 * Opens an account nobody can sign in to yet, and says its user id: whoever it is for chooses the passphrase. The name on
 * it is the sign-in name: the person's own stays with Person.
 */
export async function openAccount(db: Db, signInName: string): Promise<Result<string, AccountIssue>> {
  const name = signInName.toLowerCase();
  if (!isUsableName(name)) return fail(issue("sign-in-name-not-usable", ["signInName"]));
  if (await db.user.findUnique({ where: { username: name } })) return fail(issue("sign-in-name-taken"));
  const { internalAdapter } = await auth(db).$context;
  const user = await internalAdapter.createUser(
    { name, email: address(name), username: name, emailVerified: true },
    { method: "admin" },
  );
  return ok(user.id);
}

/**
 * A passphrase of a user as it is kept, if it is not among those that are guessed first. Costs a fraction of a second: keep
 * it out of a transaction.
 */
export async function passphraseHash(
  db: Db,
  userId: string,
  passphrase: string,
): Promise<Result<string, AccountIssue>> {
  if (passphrase.length > PASSPHRASE_LENGTH.most) return fail(issue("passphrase-long", ["passphrase"]));
  const user = await db.user.findUnique({ where: { id: userId }, select: { username: true } });
  const wrong = passphraseIssues(passphrase, user?.username ? [user.username] : []);
  if (wrong.length > 0) return fail(...wrong);
  const { password } = await auth(db).$context;
  return ok(await password.hash(passphrase));
}

/** Sets a passphrase and ends every session that was opened with the old one. `hash`: of `passphraseHash`. */
export async function writePassphrase(tx: Tx, userId: string, hash: string): Promise<void> {
  const where = { userId, providerId: "credential" };
  const { count } = await tx.account.updateMany({ where, data: { password: hash } });
  if (count === 0)
    await tx.account.create({ data: { id: randomUUID(), accountId: userId, ...where, password: hash } });
  await tx.session.deleteMany({ where: { userId } });
}

/** Whether a passphrase is that of a user: asked again before anything is signed. */
export async function passphraseFits(db: Db, userId: string, passphrase: string): Promise<boolean> {
  const { internalAdapter, password } = await auth(db).$context;
  const accounts = await internalAdapter.findAccounts(userId);
  const hash = accounts.find((one) => one.providerId === "credential")?.password;
  return hash ? password.verify({ hash, password: passphrase }) : false;
}

/** Removes an account with its sessions and tokens. */
export async function closeAccount(db: Db, userId: string): Promise<void> {
  await db.apikey.deleteMany({ where: { referenceId: userId } });
  await db.user.deleteMany({ where: { id: userId } });
}
