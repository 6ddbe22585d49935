import { Readable } from "node:stream";
import sharp from "sharp";
import { emptyBeadContent } from "@/lib/assess";
import { addPhoto, attachPhoto, createBead, getBead, saveBead } from "@/lib/beads";
import { emptyDrawing } from "@/lib/marks";
import type { Pen } from "@/lib/store";

/** A small picture that no other number gives: bands of colour with a little noise, as a camera has it. */
export async function smallPhoto(number: number, widthPx = 160, heightPx = 120): Promise<Buffer> {
  const pixels = Buffer.alloc(widthPx * heightPx * 3);
  let state = (number * 2_654_435_761) >>> 0 || 1;
  for (let i = 0; i < pixels.length; i += 1) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    pixels[i] = 90 + ((i / 3) % widthPx) / 2 + (number % 23) + (state >>> 29);
  }
  return sharp(pixels, { raw: { width: widthPx, height: heightPx, channels: 3 } })
    .jpeg({ quality: 80 })
    .toBuffer();
}

export interface SmallBead {
  readonly id: string;
  readonly sha256: string;
}

/** A bead with one small photo, saved once: what a crash or a hand can spoil, at little cost. */
export async function smallBead(
  pen: Pen,
  folder: string,
  number: number,
  size: readonly [widthPx: number, heightPx: number] = [160, 120],
): Promise<SmallBead> {
  const made = await createBead(pen, { title: `Small ${number}` });
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  const { id } = made.value;
  const source = Readable.from([await smallPhoto(number, ...size)]);
  const attached = await attachPhoto(pen.db, { dataDir: folder, source, declaredBytes: null }, (photo) =>
    addPhoto(pen, id, photo, "face"),
  );
  if (!attached.ok) throw new Error(JSON.stringify(attached.issues));
  const photo = (await getBead(pen.db, id))?.photos[0];
  const photos = [{ id: photo?.id ?? "", role: "face" as const, drawing: emptyDrawing }];
  const saved = await saveBead(pen, id, 1, { ...emptyBeadContent, title: `Small ${number}, marked`, photos });
  if (!saved.ok) throw new Error(JSON.stringify(saved.issues));
  return { id, sha256: attached.photo.sha256 };
}
