import type { Mark } from "@/lib/marks";
import type { MeasuredMark } from "@/lib/measure";
import type { BeadContent } from "./bead";

export interface PhotoMeasures {
  readonly photoId: string;
  readonly marks: readonly MeasuredMark[];
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
