import { PhotoSectionSchema, type BeadContent } from "@/lib/assess";
import { DrawingSchema } from "@/lib/marks";

type Drawn = Pick<BeadContent["photos"][number], "drawing" | "section">;

/**
 * A photo's drawing and its section share one column: a photo without a section is stored, and sealed in the log, as it
 * was before there were sections.
 */
export function photoColumn({ drawing, section }: Drawn) {
  return section ? { ...drawing, section } : drawing;
}

/** Throws on a column nothing of ours wrote. */
export function readPhotoColumn(column: unknown): Drawn {
  const drawing = DrawingSchema.parse(column);
  const found = (column as { readonly section?: unknown }).section;
  return found === undefined ? { drawing } : { drawing, section: PhotoSectionSchema.parse(found) };
}
