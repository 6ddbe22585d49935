import type { Claimed, SignatureFault, SignatureVerdict } from "./check-signature";
import type { PublicKey } from "./public-key";

/** That the owner of this installation compared a fingerprint with its holder, when, and whose they say it is. */
export interface Confirmation {
  readonly at: string;
  readonly whose: string;
}

/**
 * How far a signed text can be relied on here.
 * - `signed-here`: by a key that was begun here for the very person it names
 * - `before-keys`: frozen here before keys were kept; only the digest and the log speak for it
 * - `signed-elsewhere`: by a key that travelled; `confirmed` null: nobody here compared whose it is
 * - `unverified`: nothing that this installation could check speaks for it
 */
export type Standing =
  | { readonly kind: "signed-here"; readonly key: PublicKey; readonly at: string }
  | { readonly kind: "before-keys" }
  | {
      readonly kind: "signed-elsewhere";
      readonly key: PublicKey;
      readonly at: string;
      readonly confirmed: Confirmation | null;
    }
  | {
      readonly kind: "unverified";
      readonly why: SignatureFault | "row-differs" | "text-changed";
      /** Whether the log says that it came with an archive. */
      readonly imported: boolean;
    };

/** Where a key came from, and what the owner said of it. */
export interface KnownKey extends PublicKey {
  /** "here": its private part was made by this installation; "archive": it came with one. */
  readonly origin: "here" | "archive";
  readonly confirmed: Confirmation | null;
}

export interface Circumstances {
  readonly claimed: Claimed;
  readonly verdict: SignatureVerdict;
  /** The key the verdict speaks of, as this installation knows it; null: it knows none. */
  readonly known: KnownKey | null;
  /** Whom the text names as its signer; null: it is the installation's own. */
  readonly signerId: string | null;
  /** Whether the log says that it was frozen here, before the first key was begun. */
  readonly frozenBeforeKeys: boolean;
  readonly imported: boolean;
  /** Whether the text has its digest, and the row beside it says what the text says. */
  readonly sound: "sound" | "row-differs" | "text-changed";
}

/** A local name may be shown with `signed-here` and `before-keys`, and with nothing else. */
export function standingOf({
  claimed,
  verdict,
  known,
  signerId,
  frozenBeforeKeys,
  imported,
  sound,
}: Circumstances): Standing {
  const unverified = (why: SignatureFault | "row-differs" | "text-changed"): Standing => ({
    kind: "unverified",
    why,
    imported,
  });
  if (sound !== "sound") return unverified(sound);
  if (!verdict.fits)
    return verdict.why === "none" && claimed.keyId === null && frozenBeforeKeys
      ? { kind: "before-keys" }
      : unverified(verdict.why);
  const { key, at } = verdict;
  if (known?.origin !== "here")
    return { kind: "signed-elsewhere", key, at, confirmed: known?.confirmed ?? null };
  const holds = signerId === null ? known.holder === "installation" : known.personId === signerId;
  return holds ? { kind: "signed-here", key, at } : unverified("other-key");
}

/** Whether the name of a person of this installation may stand beside it. */
export const mayNameSigner = ({ kind }: Standing): boolean =>
  kind === "signed-here" || kind === "before-keys";
