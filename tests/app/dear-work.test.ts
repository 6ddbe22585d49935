import { describe, expect, it } from "vitest";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { dear, inDearTurn } from "@/app/_door/dear-work";
import type { Here } from "@/app/_door/here";

const app = fileURLToPath(new URL("../../app/", import.meta.url));
const by = (who: string) => ({ pen: { by: who } }) as unknown as Here;
const request = new Request("http://localhost:3000/x");

describe("work that costs seconds", () => {
  it("is done for others while somebody's heap waits, and a heap too large is refused in words", async () => {
    let open = (): void => undefined;
    const gate = new Promise<void>((resolve) => (open = resolve));
    const told: string[] = [];
    const paper = dear(async (now) => {
      if (now.pen.by === "heap") await gate;
      told.push(now.pen.by);
      return Response.json("done");
    });
    const heap = Array.from({ length: 11 }, () => paper(by("heap"), request));
    const refused = await paper(by("heap"), request);
    expect([refused.status, refused.headers.get("retry-after")]).toEqual([429, "10"]);
    expect(JSON.stringify(await refused.json())).toMatch(/Wait until they are there/);
    expect((await paper(by("other"), request)).status).toBe(200);
    expect(told).toEqual(["other"]);
    open();
    expect((await Promise.all(heap)).map(({ status }) => status)).toEqual(heap.map(() => 200));
    expect(await inDearTurn("heap", async () => 1)).toBe(1);
  });

  it("stands in line wherever it is a paper, an archive or a check", () => {
    const routes = readdirSync(app, { recursive: true, encoding: "utf8" })
      .map((name) => name.replaceAll("\\", "/"))
      .filter((name) => /(\.pdf|\/pdf|\.zip|\/import|\/check)\/route\.tsx?$/.test(name));
    expect(routes.length).toBeGreaterThanOrEqual(12);
    for (const route of routes)
      expect(readFileSync(path.join(app, route), "utf8"), route).toMatch(/\bdear\(|inDearTurn\(/);
    expect(readFileSync(path.join(app, "log/actions.ts"), "utf8")).toMatch(/inDearTurn\(/);
  });
});
