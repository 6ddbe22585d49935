import { beforeAll, describe, expect, it } from "vitest";
import { countOwners } from "@/lib/cli/count-owners.mjs";
import { ledgerSentence } from "@/lib/ledger";
import { listKeys, preparePersonKey, writePersonKey } from "@/lib/keys";
import { heldRoles, holds, roles, rolesWith, signs, type HeldRoles } from "@/lib/people";
import { addPerson, changePerson, getPerson, isLastOwner, listPeople, setAccount } from "@/lib/roster";
import { stateDigest, subjectState, type Pen } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";
import { everySet } from "../people/every-set";

const fresh = useFreshDb();
let pen: Pen;
beforeAll(() => (pen = fresh().pen));

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const added = async (name: string, held: HeldRoles, account: string | null = null): Promise<string> => {
  const { id } = value(await addPerson(pen, { name, mark: null, ...held }));
  if (account !== null) value(await setAccount(pen, id, account));
  return id;
};
const become = (id: string, held: HeldRoles) =>
  changePerson(pen, id, { name: "Imke Tal", mark: null, ...held });
const only = (role: (typeof roles)[number]): HeldRoles => rolesWith(role, []);

describe("people by what they hold", () => {
  it("are found by each role, leading or not, and none by one they lack", async () => {
    for (const held of everySet) await added(heldRoles(held).join("+"), held);
    for (const role of roles) {
      const found = (await listPeople(pen.db, { holds: role })).map(({ name }) => name);
      const expected = everySet.filter((held) => holds(held, role)).map((held) => heldRoles(held).join("+"));
      expect(found.toSorted()).toEqual(expected.toSorted());
    }
    for (const person of await listPeople(pen.db)) expect(heldRoles(person).join("+")).toBe(person.name);
  });
});

describe("the last owner", () => {
  it("stays one, whether they lead by it or hold it besides, and nobody without an account is one", async () => {
    const [first, second] = [
      await added("Orla Brandt", rolesWith("instructor", ["owner"]), "a1"),
      await added("Per Sund", only("owner"), "a2"),
    ];
    const { folder, url } = fresh();
    const counted = () => countOwners(folder, url.startsWith("file:") ? null : url);
    expect(await counted()).toBe(2);
    expect(await isLastOwner(pen.db, first)).toBe(false);
    value(await become(second, only("inspector")));
    expect(await counted()).toBe(1);
    expect([await isLastOwner(pen.db, first), await isLastOwner(pen.db, second)]).toEqual([true, false]);
    for (const held of everySet) {
      const changed = await become(first, held);
      if (holds(held, "owner")) expect(changed.ok).toBe(true);
      else expect(changed).toMatchObject({ ok: false, issues: [{ code: "last-owner" }] });
      expect(holds((await getPerson(pen.db, first))!, "owner")).toBe(true);
    }
    value(await become(second, rolesWith("welder", ["owner"])));
    value(await become(first, only("welder")));
    expect(await isLastOwner(pen.db, second)).toBe(true);
  });
});

describe("a signing key", () => {
  const inUse = (personId: string) =>
    pen.db.signingKey.findMany({ where: { personId, events: { none: { what: "ended" } } } });
  const give = async (id: string): Promise<void> => {
    const prepared = await preparePersonKey(pen.db, id, null, "eleven copper kettles");
    const how = { at: new Date().toISOString(), setBy: "code:owner" };
    await pen.db.$transaction((tx) => writePersonKey(tx, pen.by, id, prepared, how));
  };

  it("ends exactly when no role that is left signs, and one is to begin exactly when the first comes", async () => {
    const id = await added("Imke Tal", only("welder"), "a3");
    const few = [
      only("welder"),
      only("inspector"),
      rolesWith("instructor", ["inspector"]),
      rolesWith("inspector", ["welder"]),
      rolesWith("instructor", ["welder"]),
    ];
    const sets = inDepth(few, everySet);
    for (const before of sets)
      for (const after of sets) {
        value(await become(id, before));
        if (signs(before) && (await inUse(id)).length === 0) await give(id);
        const [key] = await inUse(id);
        expect(key !== undefined).toBe(signs(before));
        const { keyToBegin } = value(await become(id, after));
        const kept = (await inUse(id)).map((one) => one.id);
        expect(kept, `${heldRoles(before).join("+")} to ${heldRoles(after).join("+")}`).toEqual(
          key && signs(after) ? [key.id] : [],
        );
        expect(keyToBegin).toBe(!signs(before) && signs(after));
      }
    const ended = (await listKeys(pen.db)).filter(({ personId, until }) => personId === id && until !== null);
    expect(new Set(ended.map(({ untilReason }) => untilReason))).toEqual(new Set(["role-ended"]));
    // Without an account there is no passphrase to begin it with.
    value(await setAccount(pen, id, null));
    value(await become(id, only("welder")));
    expect(value(await become(id, only("inspector"))).keyToBegin).toBe(false);
  });
});

describe("the log of further roles", () => {
  it("seals somebody with one role as before there were others, and finds roles changed behind its back", async () => {
    const { db, folder } = fresh();
    const id = await added("Joss Lund", only("welder"));
    const state = (await db.$transaction((tx) => subjectState(tx, `person:${id}`))) as object;
    expect(Object.keys(state).toSorted()).toEqual(
      ["createdAt", "id", "mark", "name", "removedAt", "role", "salt", "userId"].toSorted(),
    );
    const sealed = () => db.$transaction((tx) => stateDigest(tx, `person:${id}`));
    const before = await sealed();
    value(
      await changePerson(pen, id, { name: "Joss Lund", mark: null, role: "welder", also: ["inspector"] }),
    );
    expect(await sealed()).not.toBe(before);
    value(await changePerson(pen, id, { name: "Joss Lund", mark: null, role: "welder" }));
    expect(await sealed()).toBe(before);
    value(
      await changePerson(pen, id, { name: "Joss Lund", mark: null, role: "welder", also: ["inspector"] }),
    );
    const found = async () => (await verifyRecords(db, folder)).findings.map(ledgerSentence);
    expect(await found()).toEqual([]);
    for (const also of ["owner", "inspector owner", null]) {
      await db.person.update({ where: { id }, data: { also } });
      expect(await found()).toEqual([
        expect.stringContaining(`person:${id} is not as the log last recorded it`),
      ]);
    }
    await db.person.update({ where: { id }, data: { also: "inspector" } });
    expect(await found()).toEqual([]);
    const said = await db.logEntry.findMany({ where: { subject: `person:${id}` }, orderBy: { seq: "asc" } });
    expect(said.map(({ detail }) => detail)).toEqual([
      '{"role":"welder"}',
      '{"also":"inspector","role":"welder"}',
      '{"role":"welder"}',
      '{"also":"inspector","role":"welder"}',
    ]);
  });
});
