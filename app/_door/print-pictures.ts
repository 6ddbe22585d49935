import { photoPlace } from "@/lib/db";
import { photoStore } from "@/lib/photo";

/** The pictures to print, by the SHA-256 of their originals; what prints says of those that cannot be read that they are missing. */
export async function printPictures(
  photos: readonly { readonly sha256: string }[],
): Promise<ReadonlyMap<string, Uint8Array>> {
  const found = new Map<string, Uint8Array>();
  for (const { sha256 } of photos) {
    const bytes = await photoStore(photoPlace())
      .read(sha256, "small")
      .catch(() => null);
    if (bytes) found.set(sha256, bytes);
  }
  return found;
}
