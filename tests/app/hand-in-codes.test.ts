import { beforeAll, describe, expect, it, vi } from "vitest";
import { POST } from "@/app/api/hand-in/[code]/route";
import { codeOf } from "@/app/hand-in/code-tries";
import { useFreshDb } from "../setup/fresh-db";

const fresh = useFreshDb();
const store = vi.hoisted(() => ({ db: null as unknown, headers: new Headers() }));
vi.mock("next/cache", () => ({ revalidatePath: () => {} }));
vi.mock("next/headers", () => ({ headers: async () => store.headers }));
vi.mock("@/lib/db", async (original) => ({ ...(await original<object>()), db: () => store.db }));
beforeAll(() => {
  store.db = fresh().db;
  vi.spyOn(console, "warn").mockImplementation(() => undefined);
});

const tryCode = async (code: string, address: string) => {
  const headers = { host: "localhost:3000", "x-forwarded-for": address };
  const request = new Request("http://localhost:3000/x", { method: "POST", headers });
  const answer = await POST(request, { params: Promise.resolve({ code }) });
  return [answer.status, answer.headers.get("retry-after") !== null];
};

describe("hand-in codes", () => {
  it("that lead nowhere are tried some thirty times from one address, and no more; other addresses go on", async () => {
    const statuses: unknown[] = [];
    for (let i = 0; i < 60; i += 1) statuses.push((await tryCode(`CCC${100 + i}`, "10.0.0.7"))[0]);
    expect(statuses.filter((one) => one === 404)).toHaveLength(30);
    expect(await tryCode("CCCCCC", "10.0.0.7")).toEqual([429, true]);
    expect(await tryCode("CCCCCC", "10.0.0.8")).toEqual([404, false]);
  });

  it("that are no text in an address are no code", async () => {
    expect(codeOf("%E0%A4%A")).toBe("");
    expect(codeOf("cd%20fg-hj")).toBe("CDFGHJ");
    expect(await tryCode("%E0%A4%A", "10.0.0.9")).toEqual([404, false]);
  });
});
