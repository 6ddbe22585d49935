import { createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import { dataDir } from "@/lib/db";
import { accountSecret } from "./secret";

/** The cookie under which a browser keeps it. */
export const KNOWN_COOKIE = "toeline-known";

/**
 * What a browser keeps after a good sign-in: that this name signed in with it once. It opens nothing; tries that show it
 * are counted by themselves, so that strangers who guess keep nobody out of their own account.
 */
export function knownBrowser(name: string): string {
  const nonce = randomBytes(16).toString("base64url");
  return `${nonce}.${seal(name, nonce)}`;
}

/** The mark of this browser where it belongs to the name; null: it shows none, somebody else's, or a made-up one. */
export function readKnownBrowser(name: string, shown: string | null): string | null {
  const [nonce = "", mac = ""] = (shown ?? "").split(".");
  const wanted = Buffer.from(seal(name, nonce));
  const got = Buffer.from(mac);
  return wanted.length === got.length && timingSafeEqual(wanted, got) ? nonce : null;
}

const seal = (name: string, nonce: string): string =>
  createHmac("sha256", accountSecret(dataDir())).update(`known-browser ${name} ${nonce}`).digest("base64url");
