import { readFileSync } from "node:fs";
import path from "node:path";
import { z } from "zod";
import { writeFile } from "node:fs/promises";

const MANIFEST = "backup.json";

/** What a backup says of itself. It is written last, so a folder with one in it is a finished backup. */
const ManifestSchema = z.object({
  format: z.literal(1),
  /** ISO 8601, UTC */
  madeAt: z.iso.datetime(),
  /** The log's newest entry in it: "SEQ:HASH"; null: the log was empty. */
  head: z.string().nullable(),
  photos: z.int().min(0),
  files: z.int().min(0),
});
export type Manifest = z.infer<typeof ManifestSchema>;

export async function writeManifest(folder: string, manifest: Manifest): Promise<void> {
  await writeFile(path.join(folder, MANIFEST), `${JSON.stringify(manifest, null, 2)}\n`, {
    flag: "wx",
    flush: true,
  });
}

/** What a folder says of itself as a backup; null: it is none, or not a finished one. */
export function readManifest(folder: string): Manifest | null {
  try {
    return ManifestSchema.parse(JSON.parse(readFileSync(path.join(folder, MANIFEST), "utf8")));
  } catch {
    return null;
  }
}
