import { ofSite } from "@/lib/sites";
import { oneByOne } from "./one-by-one";
import { isSha256 } from "./paths";
import { photoStore } from "./store";

/** How often each photo is being put somewhere just now, from the store's answer until the caller lets it go. */
const held = new Map<string, number>();

/** Keeps a photo in the store while its receiver has not yet said where it belongs. Call the answer once, when done. */
export function holdPhoto(sha256: string): () => void {
  const photo = ofSite(sha256);
  held.set(photo, (held.get(photo) ?? 0) + 1);
  return () => {
    const left = (held.get(photo) ?? 1) - 1;
    if (left > 0) held.set(photo, left);
    else held.delete(photo);
  };
}

/**
 * Takes a photo out of the store again if nobody holds it and nothing needs it. One by one with the receiving, so that
 * the same bytes arriving meanwhile are either kept or stored anew.
 */
export function discardPhoto(
  place: string,
  sha256: string,
  isNeeded: () => Promise<boolean>,
): Promise<boolean> {
  return oneByOne(sha256, async () => {
    if (!isSha256(sha256) || (await isNeeded()) || held.has(ofSite(sha256))) return false;
    await photoStore(place).discard(sha256);
    return true;
  });
}
