import type { KeptBeadSaving } from "@/components/offline";
import type { PhotoFacts } from "@/lib/assess";

/** Where a photo's picture is: on this device as long as it has one, else with the server. */
export function photoUrl(
  { id, sha256 }: Pick<PhotoFacts, "id" | "sha256">,
  size: "view" | "small" | "thumb",
  { urlOf }: Pick<KeptBeadSaving, "urlOf">,
): string {
  return urlOf(id) ?? (sha256 === "" ? "" : `/api/photos/${sha256}/${size}`);
}
