import { createHash } from "node:crypto";
import { createReadStream, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { layMigrated } from "../../setup/migrated";
import { openDb } from "@/lib/db";
import { receivePhoto } from "@/lib/photo";
import { viewPath } from "@/lib/photo/paths";
import { isSha256 } from "@/lib/photo/paths";
import { archiveOf, checkArchive, importArchive, importSentence } from "@/lib/archive";
import { ARCHIVE_VERSION } from "@/lib/exchange/archive-manifest";
import { addPhoto, createBead, getBead, saveBead } from "@/lib/beads";
import type { Pen } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { bytesOf, listBeads } from "../../setup/stored-beads";

const set = path.join(fileURLToPath(new URL("../../..", import.meta.url)), "demo-images/set");

/** One installation: a data folder with a migrated database and a photo store of its own. */
interface Shop {
  readonly folder: string;
  readonly pen: Pen;
  close(): Promise<void>;
}

async function openShop(): Promise<Shop> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-shop-"));
  const url = `file:${path.join(folder, "toeline.db")}`;
  await layMigrated(url.slice("file:".length));
  const db = openDb(url);
  return {
    folder,
    pen: { db, by: "test" },
    async close() {
      await db.$disconnect();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function addBead(shop: Shop, title: string, picture: string | null, previousId?: string) {
  const made = await createBead(shop.pen, { title, ...(previousId ? { previousId } : {}) });
  if (!made.ok) throw new Error("no bead");
  if (picture === null) return made.value;
  const stored = await receivePhoto(shop.folder, createReadStream(path.join(set, `${picture}.jpg`)), {
    declaredBytes: null,
  });
  if (!stored.ok) throw new Error("no photo");
  const { sha256, format, bytes, widthPx, heightPx } = stored.value;
  const added = await addPhoto(shop.pen, made.value.id, { sha256, format, bytes, widthPx, heightPx }, "face");
  if (!added.ok) throw new Error("not added");
  const bead = await getBead(shop.pen.db, made.value.id);
  if (!bead) throw new Error("gone");
  const drawing = {
    ...bead.content.photos[0]!.drawing,
    marks: [
      {
        id: "m1",
        imperfection: "undercut" as const,
        shape: { kind: "point" as const, at: { x: 320.5, y: 241.25 }, radius: 7.5 },
        place: "upper-toe" as const,
        stretch: null,
        patterns: [],
        gauge: [],
        note: "Seen from the left",
      },
    ],
  };
  const saved = await saveBead(shop.pen, bead.id, 1, {
    ...bead.content,
    photos: [{ ...bead.content.photos[0]!, drawing }],
  });
  if (!saved.ok) throw new Error("not saved");
  return made.value;
}

async function packed(shop: Shop): Promise<Uint8Array> {
  const archive = await archiveOf(shop.folder, await listBeads(shop.pen.db), []);
  if (!archive.ok) throw new Error(archive.issues[0]?.code);
  return bytesOf(archive.value);
}

const originalsIn = (shop: Shop): readonly string[] => {
  const folder = path.join(shop.folder, "photos", "originals");
  return existsSync(folder) ? readdirSync(folder) : [];
};

let from: Shop;
let archive: Uint8Array;
const shops: Shop[] = [];
async function emptyShop(): Promise<Shop> {
  const shop = await openShop();
  shops.push(shop);
  return shop;
}

beforeAll(async () => {
  from = await emptyShop();
  // Numbers with a gap: the first bead is deleted again, as happens.
  const gone = await addBead(from, "Spoilt", null);
  const first = await addBead(from, "Lap on 2 mm", "tee-undercut");
  await addBead(from, "Lap on 2 mm, try 2", "tee-porosity-soot", first.id);
  await from.pen.db.bead.delete({ where: { id: gone.id } });
  archive = await packed(from);
});
afterAll(async () => {
  for (const shop of shops) await shop.close();
});

describe("an archive", () => {
  it("out, into an empty installation, out again: identical bytes", async () => {
    const to = await emptyShop();
    const plan = await importArchive(to.pen, to.folder, archive);
    expect(plan).toMatchObject({ ok: true, value: { fresh: 2, same: 0, conflicts: 0, renumbered: 0 } });
    const again = await packed(to);
    expect(Buffer.compare(Buffer.from(again), Buffer.from(archive))).toBe(0);
    // Beads keep ids, numbers and the pointer back; each picture has its derived views again.
    const beads = await listBeads(to.pen.db);
    expect(beads.map(({ number }) => number).sort()).toEqual([2, 3]);
    expect(beads.find(({ number }) => number === 3)?.previous?.number).toBe(2);
    for (const sha256 of originalsIn(to)) {
      expect(isSha256(sha256)).toBe(true);
      expect(existsSync(viewPath(to.folder, sha256, "thumb") ?? "")).toBe(true);
    }
    const log = await to.pen.db.logEntry.findMany({ where: { action: "bead.imported" } });
    expect(log.map(({ subject }) => subject).sort()).toEqual(beads.map(({ id }) => `bead:${id}`).sort());
    // The log seals exactly what was written, and the originals are what they were.
    const verified = await verifyRecords(to.pen.db, to.folder);
    expect(verified).toMatchObject({ findings: [], subjects: 2, photos: 2 });
  });

  it("says first what it would do, and writes nothing while it says it", async () => {
    const to = await emptyShop();
    const plan = await checkArchive(to.pen.db, archive);
    expect(plan.ok && plan.value.beads.map(({ fate, number }) => [fate, number])).toEqual([
      ["new", 2],
      ["new", 3],
    ]);
    expect(await to.pen.db.bead.count()).toBe(0);
    expect(originalsIn(to)).toEqual([]);
  });

  it("again changes nothing; changed beads are a conflict, left alone only when that is said", async () => {
    const to = await emptyShop();
    await importArchive(to.pen, to.folder, archive);
    expect(await importArchive(to.pen, to.folder, archive)).toMatchObject({ value: { fresh: 0, same: 2 } });
    const [bead] = await listBeads(to.pen.db);
    await saveBead(to.pen, bead!.id, bead!.revision, { ...bead!.content, title: "Corrected here" });
    expect(await importArchive(to.pen, to.folder, archive)).toMatchObject({
      ok: false,
      issues: [{ code: "import-conflicts", data: { conflicts: 1 } }],
    });
    const left = await importArchive(to.pen, to.folder, archive, { leaveConflicts: true });
    expect(left).toMatchObject({ value: { fresh: 0, same: 1, conflicts: 1 } });
    expect((await getBead(to.pen.db, bead!.id))?.content.title).toBe("Corrected here");
  });

  it("gives the next free number where its own is taken, and says so", async () => {
    const to = await emptyShop();
    for (const title of ["Ours 1", "Ours 2"]) await addBead(to, title, null);
    const plan = await importArchive(to.pen, to.folder, archive);
    expect(plan.ok && plan.value.renumbered).toBe(1);
    expect(plan.ok && plan.value.beads.map(({ ownNumber, number }) => [ownNumber, number])).toEqual([
      [2, 4],
      [3, 3],
    ]);
    expect(await importArchive(to.pen, to.folder, archive)).toMatchObject({ value: { fresh: 0, same: 2 } });
  });
});

/** The archive with one of its files replaced, and its manifest's checksum put right where asked. */
function tampered(change: (files: Record<string, Uint8Array>) => void): Uint8Array {
  const files = unzipSync(archive);
  change(files);
  return zipSync(files, { level: 0 });
}

describe("a bad archive", () => {
  const aPhoto = (files: Record<string, Uint8Array>): string =>
    Object.keys(files).find((name) => name.startsWith("photos/")) ?? "";
  it.each([
    ["cut short", () => archive.slice(0, archive.length - 4000), "archive-not-zip"],
    [
      "no ZIP at all",
      () => new Uint8Array(readFileSync(path.join(set, "tee-undercut.jpg"))),
      "archive-not-zip",
    ],
    ["a foreign ZIP", () => zipSync({ "notes.txt": strToU8("hello") }), "archive-file-missing"],
    [
      "one byte of a photo changed",
      () =>
        tampered((files) => {
          files[aPhoto(files)]![5000]! ^= 1;
        }),
      "archive-checksum",
    ],
    [
      "one word of the manifest changed",
      () =>
        tampered((files) => {
          const text = new TextDecoder().decode(files["manifest.json"]);
          files["manifest.json"] = strToU8(text.replace("Lap on 2 mm", "Lap on 3 mm"));
        }),
      "archive-checksum",
    ],
    [
      "a later version",
      () =>
        tampered((files) => {
          const text = new TextDecoder().decode(files["manifest.json"]);
          reseal(
            files,
            text.replace(
              /"schemaVersion":1,"tablesDigest"/,
              `"schemaVersion":${ARCHIVE_VERSION + 1},"tablesDigest"`,
            ),
          );
        }),
      "version-newer",
    ],
    [
      "a picture of other size than listed",
      () =>
        tampered((files) => {
          const text = new TextDecoder().decode(files["manifest.json"]);
          reseal(files, text.replaceAll(/"widthPx":\d+/g, '"widthPx":4321'));
        }),
      "import-photo-facts",
    ],
  ] as const)("%s is refused in a sentence, and leaves nothing behind", async (_, make, code) => {
    const to = await emptyShop();
    const refused = await importArchive(to.pen, to.folder, make());
    expect(refused.ok ? null : refused.issues[0]?.code).toBe(code);
    expect(refused.ok ? "" : importSentence(refused.issues[0]!)).toMatch(/^.{20,}\.$/s);
    expect(await to.pen.db.bead.count()).toBe(0);
    expect(await to.pen.db.logEntry.count()).toBe(0);
    expect(originalsIn(to)).toEqual([]);
  });

  it("whose second bead cannot be written leaves the first unwritten as well", async () => {
    const to = await emptyShop();
    // The database's own refusal in the middle of the transaction.
    await to.pen.db.$executeRawUnsafe(
      `CREATE TRIGGER stop BEFORE INSERT ON Bead WHEN NEW.number = 3 BEGIN SELECT RAISE(ABORT, 'no'); END`,
    );
    await expect(importArchive(to.pen, to.folder, archive)).rejects.toThrow();
    expect(await to.pen.db.bead.count()).toBe(0);
    expect(await to.pen.db.logEntry.count()).toBe(0);
    expect(originalsIn(to)).toEqual([]);
  });
});

describe("packing", () => {
  it("refuses an original that is no longer what was taken in", async () => {
    const shop = await emptyShop();
    await importArchive(shop.pen, shop.folder, archive);
    const [name] = originalsIn(shop);
    const file = path.join(shop.folder, "photos", "originals", name!);
    const { chmodSync, writeFileSync } = await import("node:fs");
    const bytes = readFileSync(file);
    bytes[1000]! ^= 1;
    chmodSync(file, 0o644);
    writeFileSync(file, bytes);
    expect(await archiveOf(shop.folder, await listBeads(shop.pen.db), [])).toMatchObject({
      ok: false,
      issues: [{ code: "archive-photo" }],
    });
  });
});

function reseal(files: Record<string, Uint8Array>, manifest: string): void {
  files["manifest.json"] = strToU8(manifest);
  files["manifest.json.sha256"] = strToU8(`${sha256Hex(files["manifest.json"])}  manifest.json\n`);
}

function sha256Hex(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}
