import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkSignature, KEY_ALGORITHM, type Claimed, type KeyPort, type PublicKey } from "@/lib/signature";
import { faultWords, standingOf, standingTitle, type KnownKey } from "@/lib/signature";
import { nodeKeys } from "@/lib/keys/node-port";
import { newPrivatePart, signerOf } from "@/lib/keys/key-pair";

const [own, other] = [signerOf(newPrivatePart()), signerOf(newPrivatePart())];
const digest = "ab".repeat(32);
const at = "2026-11-25T10:00:00.000Z";
const claimed: Claimed = { subject: "signed:a", digest, keyId: own.keyId };
const keyOf = ({ keyId: id, publicKey }: typeof own, change: Partial<KnownKey> = {}): KnownKey => ({
  id,
  publicKey,
  algorithm: KEY_ALGORITHM,
  holder: "person",
  personId: "p1",
  from: "2026-11-01T00:00:00.000Z",
  reason: "one-time-code",
  until: null,
  untilReason: null,
  origin: "here",
  confirmed: null,
  ...change,
});
const keys: ReadonlyMap<string, PublicKey> = new Map([
  [own.keyId, keyOf(own)],
  [other.keyId, keyOf(other)],
]);
const head = { seq: 7, hash: "cd".repeat(32) };
const signature = own.sign({ subject: "signed:a", digest, at, head });

describe("a signature", () => {
  it("fits what it was given for, by the key that the text names", () => {
    expect(checkSignature(claimed, signature, keys, nodeKeys)).toMatchObject({ fits: true, at });
    expect(checkSignature({ ...claimed, keyId: null }, signature, keys, nodeKeys).fits).toBe(true);
  });

  it.each<[string, () => ReturnType<typeof checkSignature>, string]>([
    [
      "no signature where the text names a key",
      () => checkSignature(claimed, null, keys, nodeKeys),
      "missing",
    ],
    [
      "no signature where it names none",
      () => checkSignature({ ...claimed, keyId: null }, null, keys, nodeKeys),
      "none",
    ],
    [
      "another subject",
      () => checkSignature({ ...claimed, subject: "signed:b" }, signature, keys, nodeKeys),
      "other-subject",
    ],
    [
      "another text",
      () => checkSignature({ ...claimed, digest: "00".repeat(32) }, signature, keys, nodeKeys),
      "other-digest",
    ],
    [
      "another key than the text names",
      () => checkSignature({ ...claimed, keyId: other.keyId }, signature, keys, nodeKeys),
      "other-key",
    ],
    ["a key nobody knows", () => checkSignature(claimed, signature, new Map(), nodeKeys), "key-unknown"],
    [
      "another key under its id",
      () => {
        const swapped = new Map([[own.keyId, { ...keyOf(own), publicKey: other.publicKey }]]);
        return checkSignature(claimed, signature, swapped, nodeKeys);
      },
      "key-false",
    ],
    [
      "a day after the key's end",
      () => {
        const ended = keyOf(own, { until: "2026-11-24T00:00:00.000Z", untilReason: "passphrase-by-code" });
        return checkSignature(claimed, signature, new Map([[own.keyId, ended]]), nodeKeys);
      },
      "after-end",
    ],
  ])("does not fit: %s", (_, check, why) => expect(check()).toEqual({ fits: false, why }));

  it("fits no other statement, whatever of it is changed", () => {
    const hex = fc.stringMatching(/^[0-9a-f]{64}$/);
    const changes = fc.oneof(
      fc.record({ at: fc.date({ noInvalidDate: true }).map((date) => date.toISOString()) }),
      fc.record({ head: fc.record({ seq: fc.integer({ min: 1 }), hash: hex }) }),
      fc.constant({ head: null }),
      fc.record({ digest: hex }),
      fc.record({ subject: fc.string({ minLength: 1 }) }),
      fc.record({ signature: fc.constant(other.sign({ subject: "signed:a", digest, at, head }).signature) }),
    );
    fc.assert(
      fc.property(changes, (change) => {
        const changed = { ...signature, ...change };
        fc.pre(JSON.stringify(changed) !== JSON.stringify(signature));
        const asked = { ...claimed, subject: changed.subject, digest: changed.digest };
        expect(checkSignature(asked, changed, keys, nodeKeys).fits).toBe(false);
      }),
      { seed: 16, numRuns: 300 },
    );
  });

  it("would be noticed by that law where the arithmetic believed everything", () => {
    const credulous: KeyPort = { ...nodeKeys, verifies: () => true };
    const changed = { ...signature, at: "2026-11-25T11:00:00.000Z" };
    expect(checkSignature(claimed, changed, keys, credulous).fits).toBe(true);
  });
});

describe("what a record stands on", () => {
  const verdict = checkSignature(claimed, signature, keys, nodeKeys);
  const around = { claimed, verdict, signerId: "p1", frozenBeforeKeys: false, imported: false } as const;

  it("is a local signature only by a key begun here for the person it names", () => {
    const kinds = (known: KnownKey | null, signerId = "p1") =>
      standingOf({ ...around, known, signerId, sound: "sound" }).kind;
    expect(kinds(keyOf(own))).toBe("signed-here");
    expect(kinds(keyOf(own), "p2")).toBe("unverified");
    expect(kinds(keyOf(own, { origin: "archive" }))).toBe("signed-elsewhere");
    expect(kinds(keyOf(own, { origin: "archive", confirmed: { at, whose: "somebody" } }))).toBe(
      "signed-elsewhere",
    );
    expect(kinds(null)).toBe("signed-elsewhere");
  });

  it("is never more than its text and row allow", () => {
    for (const sound of ["row-differs", "text-changed"] as const)
      expect(standingOf({ ...around, known: keyOf(own), sound })).toMatchObject({
        kind: "unverified",
        why: sound,
      });
  });

  it("is from before keys only where the log says so and the text names none", () => {
    const none = checkSignature({ ...claimed, keyId: null }, null, keys, nodeKeys);
    const asked = { ...around, verdict: none, known: null, sound: "sound" } as const;
    const old = { ...claimed, keyId: null };
    expect(standingOf({ ...asked, claimed: old, frozenBeforeKeys: true }).kind).toBe("before-keys");
    expect(standingOf({ ...asked, claimed: old }).kind).toBe("unverified");
    const missing = checkSignature(claimed, null, keys, nodeKeys);
    expect(standingOf({ ...asked, verdict: missing, frozenBeforeKeys: true }).kind).toBe("unverified");
  });

  it("has a title and a reason in words for each case", () => {
    expect(Object.values(faultWords).every((words) => words.length > 10)).toBe(true);
    expect(standingTitle({ kind: "unverified", why: "none", imported: true })).toBe("Imported, unverified");
    expect(standingTitle({ kind: "unverified", why: "none", imported: false })).toBe("Unverified");
  });
});
