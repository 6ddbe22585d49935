import { describe, expect, it } from "vitest";
import { enterForeignKey, listKeys } from "@/lib/keys";
import { newPrivatePart, signerOf } from "@/lib/keys/key-pair";
import { KEY_ALGORITHM, type PublicKey } from "@/lib/signature";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const [true1, forger] = [signerOf(newPrivatePart()), signerOf(newPrivatePart())];
const key: PublicKey = {
  id: true1.keyId,
  algorithm: KEY_ALGORITHM,
  publicKey: true1.publicKey,
  holder: "person",
  personId: "p1",
  from: "2026-11-25T08:00:00.000Z",
  reason: "one-time-code",
  until: null,
  untilReason: null,
};
const enter = (one: PublicKey) =>
  fresh().db.$transaction((tx) => enterForeignKey(tx, "test", one, "archive"));

describe("a key that comes with an archive", () => {
  it("is not entered under an id that is not its own, so that the true one still can be", async () => {
    await enter({ ...key, publicKey: forger.publicKey });
    expect(await listKeys(fresh().db)).toEqual([]);
    await enter(key);
    expect(await listKeys(fresh().db)).toMatchObject([{ ...key, origin: "archive", confirmed: null }]);
  });

  it("changes nothing of one that is known", async () => {
    await enter({ ...key, personId: "p2", until: "2026-11-25T09:00:00.000Z", untilReason: "x" });
    expect(await listKeys(fresh().db)).toMatchObject([{ ...key, origin: "archive" }]);
  });
});
