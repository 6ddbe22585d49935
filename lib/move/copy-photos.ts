import { createHash, randomUUID } from "node:crypto";
import { open, mkdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Db } from "@/lib/db";
import { photosNamed } from "@/lib/inspect";
import { deskFiles, photoStore, type PhotoFile } from "@/lib/photo";

const SLICE = 200;

/** The photos that beads carry, and those that deleted beads and signed texts name; some may come twice. */
async function* photosIn(db: Db): AsyncGenerator<string> {
  for (let after = ""; ;) {
    const rows = await db.photo.findMany({
      where: { id: { gt: after } },
      orderBy: { id: "asc" },
      take: SLICE,
      select: { id: true, sha256: true },
    });
    const last = rows.at(-1);
    if (!last) break;
    for (const { sha256 } of rows) yield sha256;
    after = last.id;
  }
  for (const { id } of await db.deletedBead.findMany({
    where: { content: { not: null } },
    select: { id: true },
  })) {
    const row = await db.deletedBead.findUnique({ where: { id }, select: { content: true } });
    yield* photosNamed(row?.content ?? "");
  }
  for (const { id } of await db.signedRevision.findMany({ select: { id: true } })) {
    const row = await db.signedRevision.findUnique({ where: { id }, select: { content: true } });
    yield* photosNamed(row?.content ?? "");
  }
}

/**
 * Copies every photo whole, from place to place. An original that is not what its name says is not taken along: the walk of
 * the records that follows tells of it. Says how many were copied.
 */
export async function copyPhotos(
  db: Db,
  from: string,
  to: string,
  onProgress: (what: string, count: number) => void,
): Promise<number> {
  const seen = new Set<string>();
  let copied = 0;
  for await (const sha256 of photosIn(db)) {
    if (seen.has(sha256)) continue;
    seen.add(sha256);
    if (await copyPhoto(from, to, sha256)) copied += 1;
    onProgress("photos", copied);
  }
  return copied;
}

async function copyPhoto(from: string, to: string, sha256: string): Promise<boolean> {
  // Beside the photos where that is a folder, because there a photo is kept by a rename.
  const desk = path.join(to.startsWith("s3://") ? tmpdir() : to, `moving-${randomUUID()}`);
  const { original, views } = deskFiles(desk);
  try {
    await mkdir(views, { recursive: true });
    if ((await fetchTo(from, sha256, "original", original)) !== sha256) return false;
    for (const file of ["view", "small", "thumb", "meta"] as const) {
      const bytes = await photoStore(from).read(sha256, file);
      if (bytes === null) return false;
      await writeFile(deskFiles(desk)[file], bytes);
    }
    await photoStore(to).keep(sha256, { original, views });
    return true;
  } finally {
    await rm(desk, { recursive: true, force: true });
  }
}

/** Writes a file of a photo and says its SHA-256; null: it is not there. */
async function fetchTo(from: string, sha256: string, file: PhotoFile, name: string): Promise<string | null> {
  const there = await photoStore(from).open(sha256, file);
  if (there === null) return null;
  const hash = createHash("sha256");
  const handle = await open(name, "wx");
  try {
    for await (const piece of there.body) {
      hash.update(piece);
      await handle.writeFile(piece);
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
  return hash.digest("hex");
}
