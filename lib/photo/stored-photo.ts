import { photoStore } from "./store";
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
export async function readStoredPhoto(place: string, sha256: string): Promise<StoredPhoto | null> {
  const store = photoStore(place);
  const text = await store.read(sha256, "meta");
  if (text === null) return null;
  try {
    const meta: unknown = JSON.parse(text.toString("utf8"));
    if (!isMeta(meta) || meta.sha256 !== sha256) return null;
    return meta.bytes === (await store.size(sha256, "original")) ? withoutVersion(meta) : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
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
