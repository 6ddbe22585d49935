import sharp from "sharp";
import { attachPhoto, type NewPhoto } from "@/lib/beads";
import type { Db } from "@/lib/db";

/** Three plain pictures in the store: bytes to be kept, exported and verified, nothing to look at. */
export async function storePlainPhotos(db: Db, dataDir: string): Promise<readonly NewPhoto[]> {
  const photos: NewPhoto[] = [];
  for (const shade of [90, 120, 150]) {
    const background = { r: shade, g: 90, b: 60 };
    const bytes = await sharp({ create: { width: 1600, height: 1200, channels: 3, background } })
      .jpeg()
      .toBuffer();
    const one = async function* () {
      yield new Uint8Array(bytes);
    };
    await attachPhoto(db, { dataDir, source: one(), declaredBytes: bytes.length }, async (photo) => {
      photos.push(photo);
      return { ok: true, value: null };
    });
  }
  return photos;
}
