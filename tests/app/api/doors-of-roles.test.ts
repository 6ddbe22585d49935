import { beforeAll, describe, expect, it, vi } from "vitest";
import { openApiDocument } from "@/app/api/openapi.json/document";
import { newId } from "@/lib/store";
import { heldRoles, roleColumns, roles, rolesWith, scopes, type HeldRoles, type Role } from "@/lib/people";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";
import { everySet } from "../../lib/people/every-set";
import { ask, type ApiDocument } from "./ask";
import { furnish, personWith } from "./shop";

const fresh = useFreshDb();
const store = vi.hoisted(() => ({ db: null as unknown }));
vi.mock("next/headers", () => ({ headers: async () => new Headers(), cookies: async () => new Map() }));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));
vi.mock("@/lib/db", async (original) => ({ ...(await original<object>()), db: () => store.db }));

const document = JSON.parse(JSON.stringify(openApiDocument())) as ApiDocument;
let places: Record<string, string> = {};
let [personId, token, ownBead] = ["", "", ""];
let tokenAnew = async (): Promise<string> => "";

beforeAll(async () => {
  const { db, pen, folder } = fresh();
  store.db = db;
  vi.stubEnv("TOELINE_DATA", folder);
  vi.stubEnv("TOELINE_ACCOUNTS", "required");
  const made = await personWith(pen, "welder", "imke");
  personId = made.id;
  tokenAnew = () => made.token(scopes);
  places = await furnish(pen, folder, personId);
  ownBead = newId();
  const bead = await db.bead.findUniqueOrThrow({ where: { id: places["beadId"] ?? "" } });
  await db.bead.create({
    data: { ...bead, id: ownBead, number: 9001, welderId: personId } as never,
  });
});

/**
 * Every address and method that a token reaches but those that draw a paper, erase or answer the same to everybody, with the
 * bead of nobody and the person's own.
 */
const doors = Object.entries(document.paths).flatMap(([at, methods]) =>
  Object.entries(methods)
    .filter(([method, { security }]) => security[0]?.token && method !== "delete" && !/pdf$|zip$/.test(at))
    .flatMap(([method]) =>
      (at.includes("{beadId}") ? ["nobody's", "own"] : ["any"]).map((whose) => ({ at, method, whose })),
    ),
);
type Door = (typeof doors)[number];

/** Whether one person, being this, gets through a door: what lies behind it may then not fit what was sent. */
async function opens({ at, method, whose }: Door): Promise<boolean> {
  const named: Record<string, string> = whose === "own" ? { ...places, beadId: ownBead } : places;
  const url = `http://shop:3000${at.replace(/\{(\w+)\}/g, (_, name: string) => named[name] ?? `no-${name}`)}`;
  const headers = { host: "shop:3000", "content-type": "application/json", authorization: `Bearer ${token}` };
  const body = method === "get" ? {} : { body: "{" };
  const answer = await ask(document, new Request(url, { method: method.toUpperCase(), headers, ...body }));
  await answer.arrayBuffer();
  return answer.status !== 401 && answer.status !== 403;
}

/** The person holds these roles from now on, with a token of their own: one is good for so many calls a minute. */
async function become(held: HeldRoles): Promise<void> {
  await fresh().db.person.update({ where: { id: personId }, data: roleColumns(held) });
  token = await tokenAnew();
}

/** The doors that are open to somebody with these roles, by name. */
async function openTo(held: HeldRoles): Promise<readonly string[]> {
  await become(held);
  const found: string[] = [];
  for (const door of doors) if (await opens(door)) found.push(`${door.method} ${door.at} ${door.whose}`);
  return found;
}

describe("the doors of the HTTP API", () => {
  it("are open to two roles of one person exactly where they are to either of them alone", async () => {
    const alone = new Map<Role, readonly string[]>();
    for (const role of roles) alone.set(role, await openTo(rolesWith(role, [])));
    expect(alone.get("welder")).toContain("get /api/beads/{beadId} own");
    expect(alone.get("welder")).not.toContain("get /api/beads/{beadId} nobody's");
    expect(new Set([...alone.values()].map((open) => open.join())).size).toBe(roles.length);
    // Which of two leads opens nothing. The ordinary run has those who teach and inspect.
    const few = [rolesWith("instructor", ["inspector"])];
    for (const held of inDepth(few, everySet))
      expect([...(await openTo(held))].toSorted(), heldRoles(held).join("+")).toEqual(
        [...new Set(heldRoles(held).flatMap((role) => alone.get(role) ?? []))].toSorted(),
      );
  });

  it("tell who asks all their roles, the leading one first", async () => {
    for (const held of inDepth(everySet.slice(0, 9), everySet)) {
      await become(held);
      const headers = { host: "shop:3000", authorization: `Bearer ${token}` };
      const answer = await ask(document, new Request("http://shop:3000/api/me", { headers }));
      expect(await answer.json()).toEqual({
        personId,
        mark: "WE-1",
        role: held.role,
        roles: heldRoles(held),
        scopes: [...scopes],
      });
    }
  });

  it("tell the news of each role: what was handed in, and what came back to oneself", async () => {
    const { db } = fresh();
    const exerciseId = places["exerciseId"] ?? "";
    const beadId = places["beadId"] ?? "";
    const at = new Date("2026-11-26T12:00:00.000Z");
    const of = { exerciseId, handedInAt: at };
    await db.handIn.create({ data: { ...of, id: "waits", beadId, secretHash: "waits" } });
    await db.handIn.create({ data: { ...of, id: "back", beadId: ownBead, personId, secretHash: "back" } });
    await db.feedback.create({ data: { handInId: "back", draft: {}, returnedAt: at } });
    const told = async (held: HeldRoles): Promise<readonly string[]> => {
      await become(held);
      const headers = { host: "shop:3000", authorization: `Bearer ${token}` };
      const url = "http://shop:3000/api/news?since=2026-11-01T00:00:00Z";
      const { news = [] } = (await (await ask(document, new Request(url, { headers }))).json()) as {
        news?: { handInId: string }[];
      };
      return news.map(({ handInId }) => handInId).toSorted();
    };
    const alone = new Map<Role, readonly string[]>();
    for (const role of roles) alone.set(role, await told(rolesWith(role, [])));
    expect(Object.fromEntries(alone)).toEqual({
      owner: ["waits"],
      instructor: ["waits"],
      inspector: [],
      welder: ["back"],
    });
    for (const held of inDepth(everySet.slice(0, 16), everySet))
      expect(await told(held), heldRoles(held).join("+")).toEqual(
        [...new Set(heldRoles(held).flatMap((role) => alone.get(role) ?? []))].toSorted(),
      );
  });
});
