import type { Mark } from "@/lib/marks";
import type { MeasuredMark, Quantity } from "@/lib/measure";
import type { BeadContent } from "./bead";

export interface PhotoMeasures {
  readonly photoId: string;
  readonly marks: readonly MeasuredMark[];
  readonly weldLengthMm: Quantity | null;
}

export interface NumberedMark {
  /** Unique on the bead: photo and mark. */
  readonly key: string;
  readonly photoId: string;
  /** 1..n on its own photo, as drawn. */
  readonly number: number;
  readonly mark: Mark;
  readonly measured: MeasuredMark | null;
}

/** Every mark of every photo, with its number and its sizes. */
export function marksAcrossPhotos(
  content: BeadContent,
  measured: readonly PhotoMeasures[],
): readonly NumberedMark[] {
  return content.photos.flatMap(({ id, drawing }) => {
    const sizes = new Map(measured.find((photo) => photo.photoId === id)?.marks.map((one) => [one.id, one]));
    return drawing.marks.map((mark, index) => ({
      key: `${id}:${mark.id}`,
      photoId: id,
      number: index + 1,
      mark,
      measured: sizes.get(mark.id) ?? null,
    }));
  });
}

/** Length of the weld, mm: read with a rule first, then along the line on the photo, then as it was recorded. */
export function weldLengthMm(content: BeadContent, measured: readonly PhotoMeasures[]): number | null {
  const ruled = content.judgement.readings.findLast(({ quantity }) => quantity === "weld-length")?.value;
  const seen = measured.find((photo) => photo.weldLengthMm !== null)?.weldLengthMm?.value;
  return ruled ?? seen ?? content.setup.weldLengthMm;
}
