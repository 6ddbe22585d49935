import { readFile } from "node:fs/promises";
import { dataDir } from "@/lib/db";
import { viewPath } from "@/lib/photo";

/** The pictures to print, by the SHA-256 of their originals; what prints says of those that cannot be read that they are missing. */
export async function printPictures(
  photos: readonly { readonly sha256: string }[],
): Promise<ReadonlyMap<string, Uint8Array>> {
  const found = new Map<string, Uint8Array>();
  for (const { sha256 } of photos) {
    const file = viewPath(dataDir(), sha256, "small");
    const bytes = file === null ? null : await readFile(file).catch(() => null);
    if (bytes) found.set(sha256, bytes);
  }
  return found;
}
