import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { errorCode } from "./disk";
import { viewPath } from "./paths";
import { photoSizes, type PhotoSize } from "./types";

/** SHA-256 of each derived picture's bytes; null for one that is not there. */
export async function viewDigests(
  dataDir: string,
  sha256: string,
): Promise<Readonly<Record<PhotoSize, string | null>>> {
  const digests: Record<PhotoSize, string | null> = { view: null, small: null, thumb: null };
  for (const size of Object.keys(photoSizes) as PhotoSize[]) {
    const file = viewPath(dataDir, sha256, size);
    const bytes = file && (await readFile(file).catch(absent));
    digests[size] = bytes && createHash("sha256").update(bytes).digest("hex");
  }
  return digests;
}

function absent(error: unknown): null {
  if (errorCode(error) === "ENOENT") return null;
  throw error;
}

/** The digests as the log keeps them, one text for each picture: "PHOTO/view=DIGEST". */
export async function viewSeals(dataDir: string, sha256: string): Promise<readonly string[]> {
  const digests = Object.entries(await viewDigests(dataDir, sha256));
  return digests.flatMap(([size, digest]) => (digest === null ? [] : [`${sha256}/${size}=${digest}`]));
}
