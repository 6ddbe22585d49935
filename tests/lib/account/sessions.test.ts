import { beforeAll, describe, expect, it, vi } from "vitest";
import { endSession, listSessions, makeToken, readActor, waitOfToken } from "@/lib/account";
import { auth } from "@/lib/account/auth";
import { sessionOf } from "@/lib/account/sessions";
import { addPerson } from "@/lib/roster";
import { openAccountOf } from "../../setup/account";
import { serveFrom, useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const owner = { signInName: "orla", passphrase: "a bead of slag and rain" };
const DAY = 24 * 3_600_000;
let userId = "";

beforeAll(async () => {
  serveFrom(fresh().folder);
  vi.stubEnv("TOELINE_ACCOUNTS", "required");
  const person = await addPerson(fresh().pen, { name: "Orla", mark: null, role: "owner" });
  if (!person.ok) throw new Error("nobody");
  userId = await openAccountOf(fresh().pen, person.value.id, owner.signInName, owner.passphrase);
});

/** Headers of a browser that has just signed in. */
async function browser(): Promise<Headers> {
  const body = { username: owner.signInName, password: owner.passphrase };
  const { headers } = await auth(fresh().db).api.signInUsername({ body, returnHeaders: true });
  const cookie = headers
    .getSetCookie()
    .map((one) => one.split(";")[0])
    .join("; ");
  return new Headers({ cookie, host: "shop:3000" });
}

describe("sessions", () => {
  it("are listed, with the one that asks, and each can be ended by its owner alone", async () => {
    const [here, there] = [await browser(), await browser()];
    const list = await listSessions(fresh().db, userId, here);
    expect(list.filter(({ isThis }) => isThis)).toHaveLength(1);
    const other = list.find(({ isThis }) => !isThis)!;
    expect((await endSession(fresh().db, "somebody-else", other.id)).ok).toBe(false);
    expect((await readActor(fresh().db, there)).kind).toBe("person");
    expect((await endSession(fresh().db, userId, other.id)).ok).toBe(true);
    expect((await readActor(fresh().db, there)).kind).toBe("nobody");
    expect((await readActor(fresh().db, here)).kind).toBe("person");
  });

  it("end after a week, however busy they were, and are gone then", async () => {
    const headers = await browser();
    const soon = Date.now() + 7 * DAY - 60_000;
    const own = await sessionOf(fresh().db, headers, soon);
    expect(own?.userId).toBe(userId);
    // Somebody worked all the time: what slides has slid.
    await fresh().db.session.updateMany({ data: { expiresAt: new Date(Date.now() + 30 * DAY) } });
    expect(await sessionOf(fresh().db, headers, soon + 120_000)).toBeNull();
    expect(await fresh().db.session.count({ where: { id: own!.id } })).toBe(0);
  });
});

describe("a token", () => {
  const ask = async (token: string) => {
    const headers = new Headers({ authorization: `Bearer ${token}`, host: "shop:3000" });
    const actor = await readActor(fresh().db, headers);
    return [actor.kind, waitOfToken(headers)];
  };

  it("that is used too often is told from one that is none", async () => {
    vi.spyOn(console, "warn").mockImplementation(() => undefined);
    const token = await makeToken(fresh().db, userId, { name: "desk", scopes: ["beads:read"], days: null });
    if (!token.ok) throw new Error("no token");
    expect(await ask(token.value)).toEqual(["person", null]);
    await fresh().db.apikey.updateMany({ data: { requestCount: 600, lastRequest: new Date() } });
    expect(await ask(token.value)).toEqual(["nobody", 60]);
    expect(await ask("toe_none")).toEqual(["nobody", null]);
  });
});
