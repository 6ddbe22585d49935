import { apiKey } from "@better-auth/api-key";
import { betterAuth } from "better-auth";
import { prismaAdapter } from "better-auth/adapters/prisma";
import { nextCookies } from "better-auth/next-js";
import { username } from "better-auth/plugins/username";
import { dataFolderOf, engineOf, type Db } from "@/lib/db";
import { isRefusal } from "./is-refusal";
import { publicAddress } from "./own-address";
import { passwords } from "./passwords";
import { accountSecret } from "./secret";

export const PASSPHRASE_LENGTH = { least: 10, most: 200 } as const;

function make(db: Db) {
  return betterAuth({
    database: prismaAdapter(db, { provider: engineOf(db) }),
    secret: accountSecret(dataFolderOf(db)),
    baseURL: publicAddress() ?? "http://127.0.0.1",
    emailAndPassword: {
      enabled: true,
      // People are entered by the owner or the instructor; nobody makes themselves an account.
      disableSignUp: true,
      minPasswordLength: PASSPHRASE_LENGTH.least,
      maxPasswordLength: PASSPHRASE_LENGTH.most,
      password: passwords,
    },
    session: { expiresIn: 60 * 60 * 12, updateAge: 60 * 60 },
    advanced: { cookiePrefix: "toeline" },
    telemetry: { enabled: false },
    logger: {
      level: "error",
      // The library calls a token that is none an error of its own; the asker's 401 says all there is to say.
      log: (level, message, ...rest) => {
        if (!rest.some(isRefusal)) console.error(`accounts, ${level}: ${message}`, ...(rest as unknown[]));
      },
    },
    plugins: [
      username({ minUsernameLength: 2, maxUsernameLength: 40 }),
      apiKey({
        defaultPrefix: "toe_",
        requireName: true,
        rateLimit: { enabled: true, timeWindow: 60_000, maxRequests: 600 },
      }),
      nextCookies(),
    ],
  });
}

type Auth = ReturnType<typeof make>;
const made = new WeakMap<Db, Auth>();

/** The accounts library, set up once per database client. */
export function auth(db: Db): Auth {
  const there = made.get(db) ?? make(db);
  made.set(db, there);
  return there;
}
