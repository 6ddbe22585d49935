import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { doAside, drawPaper } from "@/lib/aside";
import { asideThread, type AsideThread } from "@/lib/aside/thread";
import type { Done } from "@/lib/aside/words";
import { buildAside } from "@/lib/cli/build-aside.mjs";
import { readFilter } from "@/lib/find";
import { serveFrom, useFreshDb } from "../../setup/fresh-db";
import { smallBead } from "../../setup/small-shop";
import { inputFor, jpeg, sheetOf } from "../pdf/sheet-of";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const fresh = useFreshDb();
let thread: AsideThread;
beforeAll(async () => {
  const { pen, folder } = fresh();
  serveFrom(folder);
  for (const number of [1, 2]) await smallBead(pen, folder, number);
  const script = await buildAside(root, { to: path.join(root, "tests/.out/toeline-aside.mjs") });
  thread = asideThread(script, { memoryMb: 512, deadlineMs: 600_000, restMs: 600_000 });
});
afterAll(() => thread?.end());

async function bytesOf({ parts }: Done<unknown>): Promise<Buffer> {
  const found: Buffer[] = [];
  for (let next = await parts.next(); !next.done; next = await parts.next())
    found.push(typeof next.value === "string" ? Buffer.from(next.value) : Buffer.from(next.value));
  return Buffer.concat(found);
}

describe("what the server makes aside", () => {
  it("is a paper of the same bytes as one drawn in place", async () => {
    const input = inputFor(sheetOf(2), await jpeg());
    const here = Buffer.from(await drawPaper("sheet", input));
    const there = await bytesOf(await thread.do("sheet", input));
    expect(here.subarray(0, 5).toString()).toBe("%PDF-");
    expect(there.equals(here)).toBe(true);
  });

  it("is a table, a file and an archive of the same bytes, from a database of its own", async () => {
    const { filter } = readFilter(new URLSearchParams());
    const asked = { filter, scope: {}, picked: new Set<string>(), seesJobs: true };
    for (const name of ["beadsCsv", "marksCsv", "beadsJson", "archive"] as const) {
      const here = await doAside(name, asked);
      const there = await thread.do(name, asked);
      expect(there.head, name).toEqual(here.head);
      const [one, other] = [await bytesOf(here), await bytesOf(there)];
      expect(other.equals(one), name).toBe(true);
      if (name === "archive") expect(here.head).toMatchObject({ ok: true, bytes: one.length });
      else expect(one.toString("utf8").length, name).toBeGreaterThan(100);
    }
    // How often it says how far it is depends on the time it takes; what it comes to does not.
    const lookEnd = async (done: Done<unknown>) => (await bytesOf(done)).toString().trim().split("\n").at(-1);
    const [one, other] = [
      await lookEnd(await doAside("look", { noted: null })),
      await lookEnd(await thread.do("look", { noted: null })),
    ];
    expect(other).toBe(one);
    expect(one).toContain('"says":"ended"');
    const none = { ...asked, scope: { welderId: "nobody" } };
    expect((await thread.do("archive", none)).head).toMatchObject({
      ok: false,
      issues: [{ code: "archive-empty" }],
    });
  });
});
