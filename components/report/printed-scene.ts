import { fitLabels, scene } from "@/lib/marks";
import { sectionScene, type PhotoCrop, type SheetDocument } from "@/lib/report";

/** Screen units across a printed photo: its numbers come out about 2.5 mm high on A4. */
export const ACROSS = 620;
/** Across the weld alone, printed half as wide as a page. */
export const ACROSS_CROP = 480;

/** The scene of the screen, without the words that find no place of their own at this size; the table has them all. */
export function printedScene(photo: SheetDocument["photos"][number], crop: PhotoCrop | null = null) {
  const { drawing, labels, scaleLabel, widthPx, section } = photo;
  const shapes = scene(drawing, { labels: (mark) => labels[mark.id] ?? "", scaleLabel, widthPx });
  const cut = section ? sectionScene(section.drawing, section.places, crop) : [];
  const unitPx = crop ? crop.width / ACROSS_CROP : widthPx / ACROSS;
  return fitLabels([...cut, ...shapes], unitPx, null, photo);
}
