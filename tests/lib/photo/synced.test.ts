import { mkdtempSync, rmSync } from "node:fs";
import type * as FileSystem from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { Readable } from "node:stream";
import { expect, it, vi } from "vitest";
import { receivePhoto } from "@/lib/photo";
import { smallPhoto } from "../../setup/small-shop";

/** What is done to the disk, in order: names inside the data folder. */
const told = vi.hoisted(() => [] as string[]);
vi.mock("node:fs/promises", async (original) => {
  const real = await original<typeof FileSystem>();
  return {
    ...real,
    rename: async (from: string, to: string) => (await real.rename(from, to), told.push(`place ${to}`)),
    open: async (file: string, flags: string) => {
      const handle = await real.open(file, flags);
      const sync = handle.sync.bind(handle);
      handle.sync = async () => (await sync(), void told.push(`sync ${file}`));
      return handle;
    },
  };
});

it("a photo and the names that lead to it are on the disk before anybody is told that it is there", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-synced-"));
  try {
    const taken = await receivePhoto(folder, Readable.from([await smallPhoto(1)]), { declaredBytes: null });
    if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
    const { sha256 } = taken.value;
    const order = told.map((one) => one.replace(`${folder}/photos/`, "").replace(/incoming\/[^/]+/, "desk"));
    const at = (what: string) => order.lastIndexOf(what);
    const original = order.indexOf(`place originals/${sha256}`);
    // The bytes before the name is, the name before the answer.
    expect(at("sync desk/original")).toBeGreaterThanOrEqual(0);
    expect(at("sync desk/original")).toBeLessThan(original);
    expect(at("sync originals")).toBeGreaterThan(original);
    expect(at("sync views")).toBeGreaterThan(order.indexOf(`place views/${sha256}`));
    for (const file of ["view.jpg", "small.jpg", "thumb.webp", "meta.json"])
      expect(at(`sync desk/views/${file}`), file).toBeGreaterThanOrEqual(0);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
