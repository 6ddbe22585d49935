import { readFile, stat } from "node:fs/promises";
import path from "node:path";
import { errorCode } from "./disk";
import { META_FILE, originalPath, viewFolder } from "./paths";
import type { StoredPhoto } from "./types";

const SCHEMA_VERSION = 1;

/** What meta.json holds. It can be made anew from the original, so an unreadable one counts as absent. */
export function metaText(photo: StoredPhoto): string {
  return `${JSON.stringify({ schemaVersion: SCHEMA_VERSION, ...photo }, null, 2)}\n`;
}

/**
 * What is kept of a photo, or null when it is not completely there: no original, an original of another length, or
 * no derived pictures. `sha256` may be any text.
 */
export async function readStoredPhoto(dataDir: string, sha256: string): Promise<StoredPhoto | null> {
  const original = originalPath(dataDir, sha256);
  if (original === null) return null;
  try {
    const meta: unknown = JSON.parse(
      await readFile(path.join(viewFolder(dataDir, sha256), META_FILE), "utf8"),
    );
    const { size } = await stat(original);
    return isMeta(meta) && meta.sha256 === sha256 && meta.bytes === size ? withoutVersion(meta) : null;
  } catch (error) {
    if (error instanceof SyntaxError || errorCode(error) === "ENOENT") return null;
    throw error;
  }
}

type Meta = StoredPhoto & { readonly schemaVersion: number };

function isMeta(value: unknown): value is Meta {
  return (
    typeof value === "object" &&
    value !== null &&
    "schemaVersion" in value &&
    value.schemaVersion === SCHEMA_VERSION
  );
}

function withoutVersion({ schemaVersion: _version, ...photo }: Meta): StoredPhoto {
  return photo;
}
