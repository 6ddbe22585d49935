import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { pipeline } from "node:stream/promises";
import { ok, type Result } from "@/lib/base";
import { diskRefusal, errorCode } from "./disk";
import { refusal, type PhotoIssue } from "./issue";
import { originalPath } from "./paths";

/** Hashes a stored original again: ok when it is still, bit for bit, what was taken in. Issues: missing, altered. */
export async function verifyOriginal(
  dataDir: string,
  sha256: string,
): Promise<Result<{ readonly sha256: string }, PhotoIssue>> {
  const file = originalPath(dataDir, sha256);
  if (file === null) return refusal("photo-missing");
  const hash = createHash("sha256");
  try {
    await pipeline(createReadStream(file), hash);
  } catch (error) {
    const refused = errorCode(error) === "ENOENT" ? refusal("photo-missing") : diskRefusal(error);
    if (refused === null) throw error;
    return refused;
  }
  return hash.digest("hex") === sha256 ? ok({ sha256 }) : refusal("photo-altered");
}
