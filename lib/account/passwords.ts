import { hashPassword, verifyPassword } from "@better-auth/utils/password";

/**
 * How a passphrase is kept: `salt:key`, by scrypt at the accounts library's own cost (N 16384, r 16, p 1: 32 MB and about a tenth
 * of a second each time), which OWASP's cheat sheet counts as enough (from memory).
 */
export const passwords = {
  hash: hashPassword,
  verify: ({ hash, password }: { readonly hash: string; readonly password: string }): Promise<boolean> =>
    verifyPassword(hash, password),
};
