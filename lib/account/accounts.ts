import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { auth } from "./auth";
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

/** What is wrong with a sign-in name and a passphrase before anybody asks the database. */
export function checkAccount({ signInName, passphrase }: NewAccount): readonly AccountIssue[] {
  return [
    ...(isUsableName(signInName.toLowerCase())
      ? []
      : [issue("sign-in-name-not-usable" as const, ["signInName"])]),
    ...passphraseIssues(passphrase, [signInName]),
  ];
}

/** Opens an account and says its user id. The name on it is the sign-in name: the person's own stays with Person. */
export async function openAccount(db: Db, account: NewAccount): Promise<Result<string, AccountIssue>> {
  const wrong = checkAccount(account);
  if (wrong.length > 0) return fail(...wrong);
  const name = account.signInName.toLowerCase();
  if (await db.user.findUnique({ where: { username: name } })) return fail(issue("sign-in-name-taken"));
  const { internalAdapter, password } = await auth(db).$context;
  const hash = await password.hash(account.passphrase);
  const user = await internalAdapter.createUser(
    { name, email: address(name), username: name, emailVerified: true },
    { method: "admin" },
  );
  await internalAdapter.linkAccount({
    userId: user.id,
    providerId: "credential",
    accountId: user.id,
    password: hash,
  });
  return ok(user.id);
}

/** Sets a new passphrase and ends every session that was opened with the old one. */
export async function setPassphrase(
  db: Db,
  userId: string,
  passphrase: string,
): Promise<Result<null, AccountIssue>> {
  const user = await db.user.findUnique({ where: { id: userId }, select: { username: true } });
  const wrong = passphraseIssues(passphrase, user?.username ? [user.username] : []);
  if (wrong.length > 0) return fail(...wrong);
  const { internalAdapter, password } = await auth(db).$context;
  await internalAdapter.updatePassword(userId, await password.hash(passphrase));
  await db.session.deleteMany({ where: { userId } });
  return ok(null);
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
