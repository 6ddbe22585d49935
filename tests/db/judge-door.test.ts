import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { POST } from "@/app/api/judge/route";
import { answerCase } from "@/lib/case";
import { db } from "@/lib/db";
import { saveShopSet } from "@/lib/shop";
import { useFreshDb } from "../setup/fresh-db";

const fresh = useFreshDb();
const before = process.env["TOELINE_DATA"];
beforeAll(() => {
  process.env["TOELINE_DATA"] = fresh().folder;
});
afterAll(async () => {
  await db().$disconnect();
  if (before === undefined) delete process.env["TOELINE_DATA"];
  else process.env["TOELINE_DATA"] = before;
});

/** Invented: undercut of 0.4 mm by limits of which the second version is the stricter. */
const limits = (limit: number) => ({
  title: "Harrow Basin",
  note: "",
  rows: [{ id: "a", title: "Undercut", imperfections: ["undercut"], quantity: "depth", limit, note: "" }],
});
const asked = (version: number, more: object = {}) => ({
  criteriaId: `shop-harrow-basin@${version}`,
  weld: { kind: "butt", thicknessMm: 10 },
  observations: [{ id: "u1", imperfection: "undercut", depthMm: 0.4 }],
  ...more,
});
async function post(json: object) {
  const headers = { host: "localhost" };
  const body = JSON.stringify(json);
  const answer = await POST(new Request("http://localhost/api/judge", { method: "POST", body, headers }));
  const said = (await answer.json()) as { verdict?: string; errors?: string[] };
  return { status: answer.status, said: said.verdict ?? said.errors };
}

describe("judging over HTTP by the shop's own limits", () => {
  it("takes the version that the case names out of the store", async () => {
    expect((await saveShopSet(fresh().pen, null, 0, limits(0.5), "Instructor")).ok).toBe(true);
    expect((await saveShopSet(fresh().pen, "shop-harrow-basin", 1, limits(0.3), "Instructor")).ok).toBe(true);
    expect(await post(asked(1))).toEqual({ status: 200, said: "accept" });
    expect(await post(asked(2))).toEqual({ status: 200, said: "reject" });
  });

  it("refuses what is not understood as the command line does, which has no store", async () => {
    for (const json of [asked(3), asked(1, { setings: {} }), asked(1, { settings: { unit: "si" } })]) {
      const alone = answerCase("judge", json);
      expect(await post(json)).toEqual({ status: 422, said: alone.ok ? null : alone.lines });
    }
  });
});
