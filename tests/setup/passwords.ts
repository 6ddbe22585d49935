import { randomBytes, scryptSync } from "node:crypto";

/**
 * In place of lib/account/passwords.ts in the ordinary run, where people sign in by the hundred: the same form at a small part
 * of the cost. The shipped one is the affair of passwords.test.ts, of the browser tests and of the deep run.
 */
const keyOf = (password: string, salt: string): string =>
  scryptSync(password.normalize("NFKC"), salt, 64, { N: 128, r: 8, p: 1 }).toString("hex");

export const passwords = {
  hash: async (password: string): Promise<string> => {
    const salt = randomBytes(16).toString("hex");
    return `${salt}:${keyOf(password, salt)}`;
  },
  verify: async ({
    hash,
    password,
  }: {
    readonly hash: string;
    readonly password: string;
  }): Promise<boolean> => {
    const [salt = "", key] = hash.split(":");
    return keyOf(password, salt) === key;
  },
};
