import { describe, expect, it } from "vitest";
import { LOCK_COST } from "@/lib/keys/lock-cost";
import { lock, unlock, type LockedBox } from "@/lib/keys/locked-box";
import { inDepth } from "../../setup/in-depth";

const secret = Buffer.from("the private part of a key");

describe("a locked box", () => {
  it("opens with its passphrase, however its letters are composed, for what it belongs to", async () => {
    const box = await lock(secret, "café at dawn", "key-1");
    expect(await unlock(box, "café at dawn", "key-1")).toEqual(secret);
    expect(await unlock(box, "cafe\u0301 at dawn", "key-1")).toEqual(secret);
    expect(await unlock(box, "café at dusk", "key-1")).toBeNull();
    expect(await unlock(box, "café at dawn", "key-2")).toBeNull();
    expect(JSON.stringify(box)).not.toContain(secret.toString("base64url"));
  });

  it("stays shut when any part of it was changed, and asks for no more memory than it may", async () => {
    const box = await lock(secret, "eleven copper kettles", "key-1");
    const touched = (text: string) => (text.startsWith("A") ? "B" : "A") + text.slice(1);
    const changed: LockedBox[] = [
      { ...box, locked: touched(box.locked) },
      { ...box, kdf: { ...box.kdf, salt: touched(box.kdf.salt) } },
      { ...box, kdf: { ...box.kdf, p: 4 } },
      { ...box, cipher: { ...box.cipher, iv: touched(box.cipher.iv) } },
      { ...box, cipher: { ...box.cipher, tag: touched(box.cipher.tag) } },
      { ...box, cipher: { ...box.cipher, tag: box.cipher.tag.slice(0, 6) } },
      { ...box, kdf: { ...box.kdf, N: 2 ** 30 } },
    ];
    for (const one of changed) expect(await unlock(one, "eleven copper kettles", "key-1")).toBeNull();
    expect(await unlock(null, "eleven copper kettles", "key-1")).toBeNull();
  });

  // OWASP's cheat sheet on storing passwords, from memory: scrypt with N = 2^15, r = 8 and p = 3.
  it("costs whoever guesses what it should, and tells the cost it was locked at", async () => {
    expect(LOCK_COST).toEqual({ N: 32_768, r: 8, p: 3 });
    const { kdf } = await lock(secret, "eleven copper kettles", "key-1");
    expect(kdf).toMatchObject(inDepth({ N: 1024, r: 8, p: 1 }, LOCK_COST));
    const box = { ...(await lock(secret, "eleven copper kettles", "key-1")) };
    expect(await unlock(box, "eleven copper kettles", "key-1")).toEqual(secret);
  });

  it("is never twice the same", async () => {
    const [one, two] = [await lock(secret, "same words", "k"), await lock(secret, "same words", "k")];
    expect(one.locked).not.toBe(two.locked);
    expect(one.kdf.salt).not.toBe(two.kdf.salt);
  });
});
