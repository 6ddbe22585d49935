import { createHash } from "node:crypto";
import { ok, type Result } from "@/lib/base";
import { storeRefusal } from "./disk";
import { refusal, type PhotoIssue } from "./issue";
import { photoStore } from "./store";

/** Hashes a stored original again: ok when it is still, bit for bit, what was taken in. Issues: missing, altered. */
export async function verifyOriginal(
  place: string,
  sha256: string,
): Promise<Result<{ readonly sha256: string }, PhotoIssue>> {
  const hash = createHash("sha256");
  try {
    const file = await photoStore(place).open(sha256, "original");
    if (file === null) return refusal("photo-missing");
    for await (const piece of file.body) hash.update(piece);
  } catch (error) {
    const refused = storeRefusal(error);
    if (refused === null) throw error;
    return refused;
  }
  return hash.digest("hex") === sha256 ? ok({ sha256 }) : refusal("photo-altered");
}
