import { createHash } from "node:crypto";
import { photoStore } from "./store";
import { photoSizes, type PhotoSize } from "./types";

/** SHA-256 of each derived picture's bytes; null for one that is not there. */
export async function viewDigests(
  place: string,
  sha256: string,
): Promise<Readonly<Record<PhotoSize, string | null>>> {
  const digests: Record<PhotoSize, string | null> = { view: null, small: null, thumb: null };
  for (const size of Object.keys(photoSizes) as PhotoSize[]) {
    const bytes = await photoStore(place).read(sha256, size);
    digests[size] = bytes && createHash("sha256").update(bytes).digest("hex");
  }
  return digests;
}

/** The digests as the log keeps them, one text for each picture: "PHOTO/view=DIGEST". */
export async function viewSeals(place: string, sha256: string): Promise<readonly string[]> {
  const digests = Object.entries(await viewDigests(place, sha256));
  return digests.flatMap(([size, digest]) => (digest === null ? [] : [`${sha256}/${size}=${digest}`]));
}
