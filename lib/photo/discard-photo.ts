import { rm } from "node:fs/promises";
import { oneByOne } from "./one-by-one";
import { originalPath, viewFolder } from "./paths";

/** How often each photo is being put somewhere just now, from the store's answer until the caller lets it go. */
const held = new Map<string, number>();

/** Keeps a photo in the store while its receiver has not yet said where it belongs. Call the answer once, when done. */
export function holdPhoto(sha256: string): () => void {
  held.set(sha256, (held.get(sha256) ?? 0) + 1);
  return () => {
    const left = (held.get(sha256) ?? 1) - 1;
    if (left > 0) held.set(sha256, left);
    else held.delete(sha256);
  };
}

/**
 * Takes a photo out of the store again if nobody holds it and nothing needs it. One by one with the receiving, so that
 * the same bytes arriving meanwhile are either kept or stored anew.
 */
export function discardPhoto(
  dataDir: string,
  sha256: string,
  isNeeded: () => Promise<boolean>,
): Promise<boolean> {
  return oneByOne(sha256, async () => {
    const original = originalPath(dataDir, sha256);
    if (original === null || (await isNeeded()) || held.has(sha256)) return false;
    // The views first: an original without them counts as not stored, views without an original would not.
    await rm(viewFolder(dataDir, sha256), { recursive: true, force: true });
    await rm(original, { force: true });
    return true;
  });
}
