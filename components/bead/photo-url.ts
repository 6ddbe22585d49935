import type { KeptBeadSaving } from "@/components/offline";
import type { PhotoFacts } from "@/lib/assess";

/**
 * Longest side, px, up to which a photo's `view` has not twice the pixels of its `small` (1600): to show the small one first
 * would bring nearly the same bytes twice.
 */
const SOON_ENOUGH_PX = 2_200;

/** What is shown of it on a canvas until its view is here: the small picture of a large photo, the view itself of any other. */
export const firstSize = ({ widthPx, heightPx }: Pick<PhotoFacts, "widthPx" | "heightPx">) =>
  Math.max(widthPx, heightPx) > SOON_ENOUGH_PX ? "small" : "view";

/** Where a photo's picture is: on this device as long as it has one, else with the server. */
export function photoUrl(
  { id, sha256 }: Pick<PhotoFacts, "id" | "sha256">,
  size: "view" | "small" | "thumb",
  { urlOf }: Pick<KeptBeadSaving, "urlOf">,
): string {
  return urlOf(id) ?? (sha256 === "" ? "" : `/api/photos/${sha256}/${size}`);
}
