import { createHash } from "node:crypto";
import { strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { archiveOf, importArchive } from "@/lib/archive";
import { createBead } from "@/lib/beads";
import { useFreshDb } from "../../setup/fresh-db";
import { bytesOf, listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();
let entries: Record<string, Uint8Array>;

beforeAll(async () => {
  const made = await createBead(fresh().pen, { title: "Lap" });
  if (!made.ok) throw new Error("no bead");
  const archive = await archiveOf(fresh().folder, await listBeads(fresh().db), []);
  if (!archive.ok) throw new Error("no archive");
  entries = unzipSync(await bytesOf(archive.value));
});

/** The archive again with one thing changed in its only bead, and every checksum right. */
function changed(change: (bead: Record<string, unknown>) => void): Uint8Array {
  const manifest = JSON.parse(Buffer.from(entries["manifest.json"]!).toString()) as {
    beads: Record<string, unknown>[];
  };
  manifest.beads[0]!["id"] = `other${Math.random().toString(36).slice(2, 8)}`;
  change(manifest.beads[0]!);
  const text = JSON.stringify(manifest);
  const digest = createHash("sha256").update(text).digest("hex");
  return zipSync({
    ...entries,
    "manifest.json": strToU8(text),
    "manifest.json.sha256": strToU8(`${digest}  manifest.json\n`),
  });
}

const takeIn = (bytes: Uint8Array) => importArchive(fresh().pen, fresh().folder, bytes);

describe("an archive of a stranger", () => {
  it("comes in where nothing is wrong with it, so that what follows is refused for its own sake", async () => {
    expect((await takeIn(changed(() => {}))).ok).toBe(true);
  });

  it.each([9007199254740991, 2 ** 31 - 1, 2 ** 31, 0, -1, 1.5])(
    "with the number %d is refused or leaves room to count on",
    async (number) => {
      const done = await takeIn(changed((bead) => (bead["number"] = number)));
      expect(done.ok ? [] : done.issues.map(({ code }) => code)).toContain("malformed");
      expect((await createBead(fresh().pen, {})).ok).toBe(true);
    },
  );

  it.each(["a/b?c#d", "../../x", "__proto__", "constructor", "a b", "\u202e", "x".repeat(61), "-rf", ""])(
    "with the id %j is refused",
    async (id) => {
      const done = await takeIn(changed((bead) => (bead["id"] = id)));
      expect(done.ok ? [] : done.issues.map(({ code }) => code)).toContain("malformed");
    },
  );

  it("with the highest number there can be is taken in, and beads go on being made", async () => {
    expect((await takeIn(changed((bead) => (bead["number"] = 1_000_000_000)))).ok).toBe(true);
    for (let i = 0; i < 3; i += 1) expect((await createBead(fresh().pen, {})).ok).toBe(true);
  });
});

it("a bead whose number left no room, from an archive taken in long ago, stops no other", async () => {
  await fresh().db.bead.create({
    data: { id: "old", number: 2 ** 31 - 1, title: "Old", setup: {}, judgement: {} },
  });
  // A number beyond it is stored by one database and refused by another.
  const next = await createBead(fresh().pen, {});
  expect(next.ok && next.value.number).toBeLessThan(2 ** 31 - 1);
  expect(next.ok && next.value.number).toBeGreaterThan(0);
});
