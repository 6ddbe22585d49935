import { z } from "zod";

/** RFC 8032: the one algorithm there is here. It is named all the same, so that a later one can stand beside it. */
export const KEY_ALGORITHM = "Ed25519";

/** SHA-256 of the 32 bytes of a public key, lower-case hexadecimal. Who holds the key follows from nothing in it. */
export const KeyIdSchema = z.string().regex(/^[0-9a-f]{64}$/);
const time = z.iso.datetime();

/**
 * A public key with what is known of its life. `holder`: the installation that keeps a log, or a person who signs; then
 * `personId` is their id where they signed, never a name.
 */
export const PublicKeySchema = z.object({
  id: KeyIdSchema,
  algorithm: z.literal(KEY_ALGORITHM),
  /** The 32 bytes as base64url without padding. */
  publicKey: z.string().regex(/^[A-Za-z0-9_-]{43}$/),
  holder: z.enum(["installation", "person"]),
  personId: z.string().min(1).max(60).nullable(),
  /** ISO 8601, UTC. */
  from: time,
  /** Why it was begun: a code, put into words by `keyReason`. */
  reason: z.string().max(60),
  /** Null while it is in use. */
  until: time.nullable(),
  untilReason: z.string().max(60).nullable(),
});
export type PublicKey = z.infer<typeof PublicKeySchema>;

/** The key's first 80 bits in groups of four, to be read aloud and compared. `id`: hexadecimal. */
export function fingerprint(id: string): string {
  return (id.slice(0, 20).match(/.{4}/g) ?? []).join(" ");
}
