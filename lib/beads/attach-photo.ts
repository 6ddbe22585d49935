import { issue, type Issue, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import {
  discardPhoto,
  holdPhoto,
  photoStore,
  receivePhoto,
  viewSeals,
  type PhotoIssue,
  type ReceivedPhoto,
} from "@/lib/photo";
import type { NewPhoto } from "./beads";

/** What arrives: where the store is, the bytes, and the length they were announced with (null: none). */
export interface Arriving {
  readonly dataDir: string;
  readonly source: Parameters<typeof receivePhoto>[1];
  readonly declaredBytes: number | null;
  /** Who sends it; left out: this machine itself. */
  readonly sender?: string;
}

export type Attached<T, I extends Issue> =
  | { readonly ok: true; readonly value: T; readonly photo: ReceivedPhoto }
  | { readonly ok: false; readonly from: "photo"; readonly issues: readonly PhotoIssue[] }
  | { readonly ok: false; readonly from: "record"; readonly issues: readonly I[] };

/**
 * Takes a photo in and puts it where it belongs, both or neither: if `attach` refuses or throws, a photo that this
 * upload brought leaves the store again.
 */
export async function attachPhoto<T, I extends Issue>(
  db: Db,
  { dataDir, source, declaredBytes, sender }: Arriving,
  attach: (photo: NewPhoto) => Promise<Result<T, I>>,
): Promise<Attached<T, I>> {
  const stored = await receivePhoto(dataDir, source, {
    declaredBytes,
    ...(sender === undefined ? {} : { sender }),
  });
  if (!stored.ok) return { ok: false, from: "photo", issues: stored.issues };
  const { sha256, format, bytes, widthPx, heightPx } = stored.value;
  const letGo = holdPhoto(sha256);
  let attached = false;
  try {
    const views = await viewSeals(dataDir, sha256);
    const done = await attach({ sha256, format, bytes, widthPx, heightPx, views });
    attached = done.ok;
    if (done.ok && !(await isStillThere(dataDir, sha256))) return again;
    return done.ok
      ? { ok: true, value: done.value, photo: stored.value }
      : { ok: false, from: "record", issues: done.issues };
  } finally {
    letGo();
    if (!attached && !stored.value.alreadyStored) await letGoPhoto(db, dataDir, sha256);
  }
}

const again = {
  ok: false,
  from: "photo",
  issues: [issue("photo-store-unusable" as const)],
} as const;

/**
 * Another server may have discarded the same photo between our look and our row; it is sent again then, and the row is
 * there already. One server's own upload and discarding take turns by themselves (`holdPhoto`).
 */
async function isStillThere(place: string, sha256: string): Promise<boolean> {
  const store = photoStore(place);
  return !store.shared || (await store.size(sha256, "original")) !== null;
}

/** Takes a photo out of the store that no bead carries, no deleted one either, and no signed record names. */
export async function letGoPhoto(db: Db, dataDir: string, sha256: string): Promise<void> {
  await discardPhoto(dataDir, sha256, async () => {
    try {
      if ((await db.photo.count({ where: { sha256 } })) > 0) return true;
      if ((await db.deletedBead.count({ where: { content: { contains: sha256 } } })) > 0) return true;
      return (await db.signedRevision.count({ where: { content: { contains: sha256 } } })) > 0;
    } catch {
      // A database that does not answer cannot say that nobody needs it; one photo too many harms nobody.
      return true;
    }
  });
}
