import { createCipheriv, createDecipheriv, randomBytes, scrypt } from "node:crypto";
import { z } from "zod";
import { LOCK_COST } from "./lock-cost";

const base64url = z.string().regex(/^[A-Za-z0-9_-]+$/);

/** Something locked by a passphrase: everything that is needed to open it but the passphrase. Bytes as base64url. */
export const LockedBoxSchema = z.object({
  schemaVersion: z.literal(1),
  /** RFC 7914. `N`, `r` and `p` are bounded, so that a row somebody changed cannot ask for all the memory there is. */
  kdf: z.object({
    name: z.literal("scrypt"),
    N: z
      .int()
      .min(1024)
      .max(2 ** 18),
    r: z.int().min(1).max(16),
    p: z.int().min(1).max(8),
    salt: base64url,
  }),
  /** NIST SP 800-38D: a wrong passphrase and a changed byte are both found at opening. */
  cipher: z.object({ name: z.literal("aes-256-gcm"), iv: base64url, tag: base64url }),
  locked: base64url,
});
export type LockedBox = z.infer<typeof LockedBoxSchema>;

const kept = (text: string) => Buffer.from(text, "base64url");

function keyFrom(passphrase: string, { N, r, p, salt }: Omit<LockedBox["kdf"], "name">): Promise<Buffer> {
  const maxmem = 256 * N * r;
  return new Promise((resolve, reject) =>
    scrypt(passphrase.normalize("NFC"), kept(salt), 32, { N, r, p, maxmem }, (error, key) =>
      error ? reject(error) : resolve(key),
    ),
  );
}

/** Locks bytes by a passphrase. `binds`: what the box belongs to; it opens for nothing else. */
export async function lock(bytes: Uint8Array, passphrase: string, binds: string): Promise<LockedBox> {
  const kdf = { name: "scrypt", ...LOCK_COST, salt: randomBytes(16).toString("base64url") } as const;
  const iv = randomBytes(12);
  const cipher = createCipheriv("aes-256-gcm", await keyFrom(passphrase, kdf), iv).setAAD(Buffer.from(binds));
  const locked = Buffer.concat([cipher.update(bytes), cipher.final()]).toString("base64url");
  const tag = cipher.getAuthTag().toString("base64url");
  return {
    schemaVersion: 1,
    kdf,
    cipher: { name: "aes-256-gcm", iv: iv.toString("base64url"), tag },
    locked,
  };
}

/** What was locked; null for a wrong passphrase, another belonging or a box somebody changed. */
export async function unlock(box: unknown, passphrase: string, binds: string): Promise<Buffer | null> {
  const parsed = LockedBoxSchema.safeParse(box);
  if (!parsed.success) return null;
  const { kdf, cipher, locked } = parsed.data;
  const tag = kept(cipher.tag);
  if (tag.length !== 16) return null;
  try {
    const opening = createDecipheriv("aes-256-gcm", await keyFrom(passphrase, kdf), kept(cipher.iv));
    opening.setAAD(Buffer.from(binds)).setAuthTag(tag);
    return Buffer.concat([opening.update(kept(locked)), opening.final()]);
  } catch {
    return null;
  }
}
