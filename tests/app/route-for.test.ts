import { beforeEach, describe, expect, it, vi } from "vitest";
import { beadRouteFor, routeFor } from "@/app/_door/route-for";
import type { Actor } from "@/lib/people";

const asking = vi.hoisted(() => ({ actor: { kind: "nobody" } as unknown, wait: null as number | null }));
vi.mock("next/headers", () => ({ headers: async () => new Headers() }));
vi.mock("@/lib/db", () => ({ db: () => ({}) }));
vi.mock("@/lib/account", async (original) => ({
  ...(await original<object>()),
  readActor: async () => asking.actor,
  waitOfToken: () => asking.wait,
}));
vi.mock("@/lib/classroom", () => ({ handInThing: async () => null }));
vi.mock("@/lib/beads", () => ({
  beadThing: async (_: unknown, beadId: string) => (beadId === "gone" ? null : { personId: beadId, beadId }),
}));

const welder: Actor = { kind: "person", personId: "mine", role: "welder", also: [], scopes: null };
const request = (headers: Record<string, string> = {}) =>
  new Request("http://localhost:3000/api/x", { headers: { host: "localhost:3000", ...headers } });
const work = vi.fn(() => Response.json("done"));

beforeEach(() => {
  work.mockClear();
  asking.actor = welder;
});

async function answer(sent: Promise<Response>): Promise<[number, unknown]> {
  const response = await sent;
  const body = (await response.json()) as string | { issues: { code: string }[] };
  return [response.status, typeof body === "string" ? body : body.issues[0]?.code];
}

describe("a route", () => {
  const open = routeFor("bead.read", work);
  const manage = routeFor("people.manage", work);

  it("works for whoever may", async () => {
    expect(await answer(open(request()))).toEqual([200, "done"]);
  });

  it("refuses nobody, whoever may not, and a page of another site, before the work begins", async () => {
    expect(await answer(manage(request()))).toEqual([403, "not-yours"]);
    expect(await answer(open(request({ origin: "http://elsewhere.example" })))).toEqual([
      403,
      "foreign-request",
    ]);
    asking.actor = { kind: "nobody" };
    expect(await answer(open(request()))).toEqual([401, "sign-in-first"]);
    asking.wait = 60;
    expect(await answer(open(request()))).toEqual([429, "too-many-requests"]);
    asking.wait = null;
    expect(work).not.toHaveBeenCalled();
  });
});

describe("a route on a bead", () => {
  const save = beadRouteFor("bead.write", work);
  const at = (beadId: string) => answer(save(request(), { params: Promise.resolve({ beadId }) }));

  it("works for whose it is, and for nobody else of their role; one that is not there is nobody's", async () => {
    expect(await at("mine")).toEqual([200, "done"]);
    expect(await at("other")).toEqual([403, "not-yours"]);
    expect(await at("gone")).toEqual([403, "not-yours"]);
    expect(work).toHaveBeenCalledTimes(1);
  });
});
