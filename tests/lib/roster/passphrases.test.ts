import { beforeAll, describe, expect, it } from "vitest";
import { openAccount, passphraseFits } from "@/lib/account";
import { listKeys } from "@/lib/keys";
import { openPersonKey } from "@/lib/keys/person-keys";
import {
  addPerson,
  changePerson,
  chooseByCode,
  chooseOwnPassphrase,
  giveOneTimeCode,
  removePerson,
  setAccount,
} from "@/lib/roster";
import type { Pen } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { serveFrom, useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const OWN = "eleven copper kettles";
const NEXT = "twelve tin lanterns";
const noon = new Date("2026-11-26T12:00:00.000Z");
let pen: Pen;
let personId = "";
let userId = "";

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const codes = (result: { ok: boolean; issues?: readonly { code: string }[] }) =>
  (result.issues ?? []).map(({ code }) => code);
const inUse = async () => (await listKeys(pen.db)).filter(({ until }) => until === null);
const code = async (now = noon) => value(await giveOneTimeCode(pen, personId, now)).code;

beforeAll(async () => {
  serveFrom(fresh().folder);
  pen = { db: fresh().db, by: "owner" };
  const person = value(await addPerson(pen, { name: "Vesna Ling", mark: "I-03", role: "inspector" }));
  personId = person.id;
  userId = value(await openAccount(pen.db, "vesna"));
  value(await setAccount(pen, personId, userId));
});

describe("an inspector's passphrase", () => {
  it("is chosen by the inspector alone: an account is opened without one, and nothing in it signs", async () => {
    for (const guess of ["", OWN]) expect(await passphraseFits(pen.db, userId, guess)).toBe(false);
    expect(await openPersonKey(pen.db, personId, OWN)).toBe("key-missing");
  });

  it("is chosen with a one-time code that works once, for three days, however it is typed", async () => {
    const given = await code();
    expect(codes(await chooseByCode(pen.db, "ABCDE-FGHJK-MNPQR-STVWX", OWN, noon))).toEqual(["code-unknown"]);
    expect(codes(await chooseByCode(pen.db, given, "short", noon))).toEqual(["passphrase-short"]);
    const late = new Date(noon.getTime() + 73 * 3600 * 1000);
    expect(codes(await chooseByCode(pen.db, given, OWN, late))).toEqual(["code-unknown"]);
    value(await chooseByCode(pen.db, given.toLowerCase().replaceAll("-", " "), OWN, noon));
    expect(codes(await chooseByCode(pen.db, given, NEXT, noon))).toEqual(["code-unknown"]);
    expect(await passphraseFits(pen.db, userId, OWN)).toBe(true);
    const opened = await openPersonKey(pen.db, personId, OWN);
    expect(opened).toMatchObject({ passphraseSetBy: "code:owner", passphraseSetAt: noon.toISOString() });
    expect(await openPersonKey(pen.db, personId, NEXT)).toBe("key-closed");
    // Neither the code nor the passphrase is kept as it was said.
    const rows = JSON.stringify([await pen.db.verification.findMany(), await pen.db.sealedKey.findMany()]);
    for (const secret of [given, given.replaceAll("-", ""), OWN]) expect(rows).not.toContain(secret);
  });

  it("may be changed by whoever knows it, and the key goes on", async () => {
    const before = (await inUse())[0]?.id;
    const change = (old: string) =>
      chooseOwnPassphrase(pen, personId, { before: old, passphrase: NEXT }, noon);
    expect(codes(await change("not the one"))).toEqual(["passphrase-before-wrong"]);
    value(await change(OWN));
    expect(await openPersonKey(pen.db, personId, NEXT)).toMatchObject({ passphraseSetBy: "own" });
    expect(await openPersonKey(pen.db, personId, OWN)).toBe("key-closed");
    expect((await inUse()).map(({ id }) => id)).toEqual([before]);
  });

  it("set anew with another code ends the key, so that nobody signs by the old one for somebody else", async () => {
    const before = (await inUse())[0]?.id;
    value(await chooseByCode(pen.db, await code(), OWN, new Date("2026-11-26T13:00:00.000Z")));
    const keys = await listKeys(pen.db);
    expect(keys.find(({ id }) => id === before)).toMatchObject({ untilReason: "passphrase-by-code" });
    expect(await pen.db.sealedKey.count()).toBe(1);
    const [now] = await inUse();
    expect(now).toMatchObject({ reason: "one-time-code", personId });
    expect(now?.id).not.toBe(before);
    const entries = await pen.db.logEntry.findMany({ where: { subject: `person:${personId}` } });
    expect(entries.filter(({ action }) => action === "passphrase.code-given").map(({ by }) => by)).toEqual([
      "owner",
      "owner",
    ]);
    expect(
      entries.filter(({ action }) => action === "passphrase.chosen").map(({ detail }) => detail),
    ).toEqual(['{"by":"code:owner"}', '{"by":"own"}', '{"by":"code:owner"}']);
  });

  it("put into the accounts behind the program's back opens no key", async () => {
    const hash = await pen.db.account.findFirstOrThrow({ where: { userId } });
    const other = value(await addPerson(pen, { name: "Odo Marsh", mark: null, role: "owner" }));
    const otherId = value(await openAccount(pen.db, "odo"));
    value(await setAccount(pen, other.id, otherId));
    const { code: odos } = value(await giveOneTimeCode(pen, other.id, noon));
    value(await chooseByCode(pen.db, odos, NEXT, noon));
    const odo = await pen.db.account.findFirstOrThrow({ where: { userId: otherId } });
    await pen.db.account.update({ where: { id: hash.id }, data: { password: odo.password } });
    expect(await passphraseFits(pen.db, userId, NEXT)).toBe(true);
    expect(await openPersonKey(pen.db, personId, NEXT)).toBe("key-closed");
    // Changing it from there begins another key, and says that somebody else may have known the one before.
    value(await chooseOwnPassphrase(pen, personId, { before: NEXT, passphrase: OWN }, noon));
    expect(await openPersonKey(pen.db, personId, OWN)).toMatchObject({ passphraseSetBy: "first" });
    expect(
      (await listKeys(pen.db)).filter(({ untilReason }) => untilReason === "passphrase-by-other"),
    ).toHaveLength(1);
  });

  it("begins a key where inspecting is a further role, which ends with that role and begins anew with it", async () => {
    const person = { name: "Imke Tal", mark: null, role: "instructor" };
    const { id } = value(await addPerson(pen, { ...person, also: ["inspector"] }));
    value(await setAccount(pen, id, value(await openAccount(pen.db, "imke"))));
    value(await chooseByCode(pen.db, value(await giveOneTimeCode(pen, id, noon)).code, OWN, noon));
    const opened = () => openPersonKey(pen.db, id, OWN);
    expect(await opened()).toMatchObject({ passphraseSetBy: "code:owner" });
    value(await changePerson(pen, id, person));
    expect(await opened()).toBe("key-missing");
    expect(value(await changePerson(pen, id, { ...person, also: ["inspector"] }))).toEqual({
      keyToBegin: true,
    });
    expect(await opened()).toBe("key-missing");
    value(await chooseOwnPassphrase(pen, id, { before: OWN, passphrase: OWN }, noon));
    expect(await opened()).toMatchObject({ passphraseSetBy: "first" });
    value(await removePerson(pen, id, noon));
  });

  it("goes with the person, and their key ends", async () => {
    value(await removePerson(pen, personId, noon));
    expect(await inUse()).toEqual([]);
    expect(await pen.db.sealedKey.count()).toBe(0);
    expect((await verifyRecords(fresh().db, fresh().folder)).findings).toEqual([]);
  });
});
