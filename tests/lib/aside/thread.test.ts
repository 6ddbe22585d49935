import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { onlyPiece } from "@/lib/aside/do-aside";
import { asideSentences, unlessStopped } from "@/lib/aside/stopped";
import { asideThread, type AsideThread, type ThreadLimits } from "@/lib/aside/thread";
import type { Done } from "@/lib/aside/words";
import { buildAside } from "@/lib/cli/build-aside.mjs";
import { inDepth } from "../../setup/in-depth";

const root = fileURLToPath(new URL("../../..", import.meta.url));
let script = "";
beforeAll(async () => {
  const to = path.join(root, "tests/.out/odd-worker.mjs");
  script = await buildAside(root, { from: "tests/lib/aside/odd-worker.ts", to });
});

const threads: AsideThread[] = [];
function thread(limits: Partial<ThreadLimits> = {}): AsideThread {
  const one = asideThread(script, { memoryMb: 64, deadlineMs: 600_000, restMs: 600_000, ...limits });
  threads.push(one);
  return one;
}
afterAll(() => Promise.all(threads.map((one) => one.end())));

const text = (piece: unknown): string => Buffer.from(piece as Uint8Array).toString("utf8");
async function all({ parts }: Done<unknown>): Promise<readonly string[]> {
  const found: string[] = [];
  for (let next = await parts.next(); !next.done; next = await parts.next()) found.push(text(next.value));
  return found;
}
const told = async (one: AsideThread) => (await one.do("told", null)).head;
const codeOf = async (work: Promise<unknown>) => {
  const done = await unlessStopped(() => work);
  return done.ok ? "done" : done.issues[0]?.code;
};

describe("a thread beside the one that serves", () => {
  it("starts when it is needed, stays warm, and makes a piece when it is asked for", async () => {
    const one = thread();
    expect(one.isWarm()).toBe(false);
    const counting = await one.do("count", 3);
    expect(counting.head).toEqual({ to: 3 });
    // Nobody asked for a piece yet, so none is made.
    expect(await told(one)).toEqual({ made: 0, closed: 0 });
    expect(text((await counting.parts.next()).value)).toBe("0");
    expect(await told(one)).toEqual({ made: 1, closed: 0 });
    expect(await all(counting)).toEqual(["1", "2"]);
    expect(await told(one)).toEqual({ made: 3, closed: 1 });
    expect(one.isWarm()).toBe(true);
  });

  it("serves many side by side, each its own pieces", async () => {
    const one = thread();
    const open = await Promise.all(Array.from({ length: 8 }, (_, i) => one.do("count", i)));
    const found = await Promise.all(open.map(all));
    expect(found).toEqual(
      Array.from({ length: 8 }, (_, i) => Array.from({ length: i }, (__, j) => String(j))),
    );
  });

  it("makes no more of what nobody reads on, and leaves the others", async () => {
    const one = thread();
    const [left, other] = await Promise.all([one.do("count", 1000), one.do("count", 2)]);
    await left.parts.next();
    await left.parts.return?.();
    expect(await told(one)).toEqual({ made: 1, closed: 1 });
    expect(await codeOf(left.parts.next())).toBe("aside-ended");
    expect(await all(other)).toEqual(["0", "1"]);
  });

  it("is ended at once where whoever asked went away, and starts again for the next", async () => {
    const one = thread();
    const gone = new AbortController();
    const spinning = codeOf(one.do("spin", null, gone.signal));
    gone.abort();
    expect(await spinning).toBe("aside-ended");
    expect(one.isWarm()).toBe(false);
    expect(await codeOf(one.do("count", 1, gone.signal))).toBe("aside-ended");
    expect(await all(await one.do("count", 1))).toEqual(["0"]);
  });

  it("does not take others along with one that went away", async () => {
    const one = thread();
    const gone = new AbortController();
    const [left, other] = await Promise.all([one.do("count", 5, gone.signal), one.do("count", 2)]);
    gone.abort();
    expect(await codeOf(left.parts.next())).toBe("aside-ended");
    expect(await all(other)).toEqual(["0", "1"]);
  });

  it("says what threw, and goes on", async () => {
    const one = thread();
    await expect(one.do("fail", null)).rejects.toThrow("ink is out");
    expect(await all(await one.do("count", 1))).toEqual(["0"]);
  });

  it("that takes too long or too much ends alone, in words; the next work finds another", async () => {
    const hung = thread({ deadlineMs: 300 });
    expect(await codeOf(hung.do("spin", null))).toBe("aside-time");
    const full = thread({ memoryMb: 16 });
    expect(await codeOf(full.do("hoard", null))).toBe("aside-memory");
    for (const one of [hung, full]) expect(one.isWarm()).toBe(false);
    expect(await all(await full.do("count", 1))).toEqual(["0"]);
    for (const sentence of Object.values(asideSentences)) expect(sentence).toMatch(/Ask .*\.$/);
  });

  it("is alone again after a paper, which ends with its only piece", async () => {
    const one = thread({ restMs: 1 });
    expect(text(await onlyPiece(await one.do("count", 5)))).toBe("0");
    await expect.poll(() => one.isWarm()).toBe(false);
    const other = thread();
    await onlyPiece(await other.do("count", 5));
    const gone = new AbortController();
    const spinning = codeOf(other.do("spin", null, gone.signal));
    gone.abort();
    expect(await spinning).toBe("aside-ended");
    expect(other.isWarm()).toBe(false);
  });

  it("gives its memory back when it has rested, and never what others share", async () => {
    const one = thread({ restMs: 1 });
    expect(await all(await one.do("pooled", null))).toEqual(["of a pool"]);
    await expect.poll(() => one.isWarm()).toBe(false);
    for (let i = 0; i < inDepth(3, 30); i += 1)
      expect(await all(await one.do("count", 2))).toEqual(["0", "1"]);
  });
});
