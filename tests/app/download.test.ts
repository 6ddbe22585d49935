import { describe, expect, it } from "vitest";
import { download } from "@/app/_door/download";
import { takeExport } from "@/app/_door/open-exports";

/** So many pieces, and what became of them. */
function counted(to: number) {
  const seen = { made: 0, closed: 0, ended: 0 };
  async function* parts(): AsyncGenerator<string, void, void> {
    try {
      for (let i = 0; i < to; i += 1) {
        seen.made += 1;
        yield `${i};`;
      }
    } finally {
      seen.closed += 1;
    }
  }
  const file = { type: "text/csv", name: "a.csv", ended: () => void (seen.ended += 1) };
  return { seen, file, parts: parts() };
}

describe("a file that is sent while it is made", () => {
  it("is whole, says its length where it is known, and gives its place back", async () => {
    const { seen, file, parts } = counted(3);
    const answer = download(parts, { ...file, bytes: 6 });
    expect(answer.headers.get("content-length")).toBe("6");
    expect(await answer.text()).toBe("0;1;2;");
    expect(seen).toEqual({ made: 3, closed: 1, ended: 1 });
  });

  it("is made no further where whoever reads breaks off", async () => {
    const { seen, file, parts } = counted(1000);
    const reader = download(parts, file).body!.getReader();
    await reader.read();
    await reader.cancel();
    expect(seen.made).toBeLessThan(4);
    expect([seen.closed, seen.ended]).toEqual([1, 1]);
  });

  it("is broken off where nobody reads on for long", async () => {
    const { seen, file, parts } = counted(1000);
    const reader = download(parts, file, 20).body!.getReader();
    await reader.read();
    await expect.poll(() => seen.closed).toBe(1);
    expect(seen.ended).toBe(1);
    await expect(reader.read().then(() => reader.read())).rejects.toThrow("nobody reads on");
  });

  it("that fails on its way is no whole file, and gives its place back", async () => {
    let ended = 0;
    const parts = { next: () => Promise.reject(new Error("altered")) };
    const answer = download(parts, { type: "text/csv", name: "a.csv", ended: () => void (ended += 1) });
    await expect(answer.text()).rejects.toThrow("altered");
    expect(ended).toBe(1);
  });
});

describe("exports that are open at once", () => {
  it("are four of one sender and twelve of all; a place given back can be taken again, and is given back once", () => {
    const mine = Array.from({ length: 4 }, () => takeExport("a")!);
    expect(takeExport("a")).toBeNull();
    const others = ["b", "c"].flatMap((who) => Array.from({ length: 4 }, () => takeExport(who)!));
    expect(takeExport("d")).toBeNull();
    mine[0]!();
    mine[0]!();
    const again = takeExport("d")!;
    expect(again).not.toBeNull();
    expect(takeExport("d")).toBeNull();
    for (const give of [...mine, ...others, again]) give();
    for (const give of Array.from({ length: 4 }, () => takeExport("d")!)) give();
  });
});
