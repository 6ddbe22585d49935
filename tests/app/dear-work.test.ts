import { describe, expect, it } from "vitest";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { dear, inDearTurn } from "@/app/_door/dear-work";
import type { Here } from "@/app/_door/here";
import { Stopped } from "@/lib/aside/stopped";

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
      expect(readFileSync(path.join(app, route), "utf8"), route).toMatch(
        /\bdear\(|dearAnswer\(|inDearTurn\(/,
      );
    expect(readFileSync(path.join(app, "api/log/verify/route.ts"), "utf8")).toMatch(/standInLine\(/);
  });

  it("is made aside: no file of the server draws a paper or writes an export on its own thread", () => {
    const files = readdirSync(app, { recursive: true, encoding: "utf8" }).filter((name) =>
      /\.tsx?$/.test(name),
    );
    const draws =
      /import \{[^}]*\b\w+Pdf\b[^}]*\} from "@\/lib\/pdf"|\b(archiveOf|beadTable|markTable|beadsFileText)\(/;
    expect(files.filter((name) => draws.test(readFileSync(path.join(app, name), "utf8")))).toEqual([]);
    const aside = files.filter((name) =>
      /\b(drawPaper|doAside|tableRoute)\(/.test(readFileSync(path.join(app, name), "utf8")),
    );
    // Eight papers, three tables, one archive; the helper the tables share.
    expect(aside.length).toBeGreaterThanOrEqual(13);
  });

  it("is not begun for whoever went away, and says in words that it was stopped", async () => {
    const gone = new Request("http://localhost:3000/x", { signal: AbortSignal.abort() });
    const never = dear(async () => expect.unreachable());
    await never(by("gone"), gone);
    const stopped = dear(async () => {
      throw new Stopped("aside-memory");
    });
    const answer = await stopped(by("other"), request);
    expect(answer.status).toBe(503);
    expect(JSON.stringify(await answer.json())).toMatch(/fewer beads/);
    const broken = dear(async () => {
      throw new Error("our own mistake");
    });
    await expect(broken(by("other"), request)).rejects.toThrow("our own mistake");
  });
});
