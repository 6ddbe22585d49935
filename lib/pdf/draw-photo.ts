import { fitLabels, primitives, scene, type ScenePalette } from "@/lib/marks";
import { sectionScene, type PhotoCrop, type SheetDocument } from "@/lib/report";
import { drawPrimitive } from "./draw-primitive";
import { asDecoration, asTag, drawBlock, putBlock, type Flow } from "./flow";
import { layText, run } from "./lay-text";
import { RULE } from "./page";

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** `section`: what is drawn over a cut weld; of a signed record without the places that were found on it. */
export type SheetPhoto = Omit<SheetDocument["photos"][number], "section"> & {
  readonly section?: { readonly drawing: SectionLines; readonly places: SectionFound } | undefined;
};
type SectionLines = Parameters<typeof sectionScene>[0];
type SectionFound = Parameters<typeof sectionScene>[1];

export interface PhotoPaint {
  readonly photos: ReadonlyMap<string, Uint8Array>;
  readonly palette: ScenePalette;
  /** Only numbers at the marks: words and sizes stand beside the photo, so that none lies over the bead. */
  readonly numbersOnly?: boolean;
}

/** Points per screen unit: the numbers at the marks come out 2.6 mm high, on a small photo as on a large one. */
const UNIT_PT = 0.5;
export const CAPTION_HEIGHT = 14;

/** The size of a photo in a box, points. */
export function photoSize(
  photo: Pick<SheetPhoto, "widthPx" | "heightPx">,
  width: number,
  height: number,
): { width: number; height: number } {
  const scale = Math.min(width / photo.widthPx, height / photo.heightPx);
  return { width: photo.widthPx * scale, height: photo.heightPx * scale };
}

/**
 * A photo with its marks and its caption, top left at x, y. The marks are vectors over the picture; words that would
 * lie on each other at this size are left to the table, as on the screen.
 */
export function drawPhoto(
  flow: Flow,
  photo: SheetPhoto,
  number: number,
  paint: PhotoPaint,
  box: Box,
  more = "",
): void {
  const words = Object.values(photo.labels).join("; ");
  const alt = `Photo ${number} of the bead, ${photo.role}. ${words === "" ? "Nothing marked." : `Marked: ${words}.`}`;
  const caption = `Photo ${number}, ${photo.role}. ${photo.hasScale ? "Scale set." : "No scale."}${more}`;
  drawFramed(flow, box, alt, () => {
    drawPicture(flow, paint.photos.get(photo.sha256), box);
    drawMarks(flow, photo, paint, box);
  });
  const block = layText(flow.faces, [run(caption, "text", 8.5)], Math.max(box.width, 120));
  putBlock(flow, flow.root, "Caption", block, box.x, box.y + box.height + 2);
}

/** What `draw` draws, cut off at the box, as one figure with words for it, and a hairline round it. */
function drawFramed(flow: Flow, box: Box, alt: string, draw: () => void): void {
  const { doc } = flow;
  const inside = () => {
    doc.save();
    doc.rect(box.x, box.y, box.width, box.height).clip();
    draw();
    doc.restore();
  };
  asTag(flow, flow.root, "Figure", inside, alt);
  asDecoration(doc, () => {
    doc.lineWidth(RULE.hair).strokeColor(flow.ink).undash();
    doc.rect(box.x, box.y, box.width, box.height).stroke();
  });
}

function drawPicture(flow: Flow, jpeg: Uint8Array | undefined, box: Box): void {
  if (jpeg) {
    flow.doc.image(Buffer.from(jpeg), box.x, box.y, { width: box.width, height: box.height });
    return;
  }
  const block = layText(flow.faces, [run("The picture is missing.", "text", 9)], box.width - 12);
  drawBlock(flow, block, box.x + 6, box.y + 6);
}

/** Part of a photo with what is drawn there, as large as the box; its top left at x, y. */
export function drawCrop(
  flow: Flow,
  photo: SheetPhoto,
  crop: PhotoCrop,
  alt: string,
  paint: PhotoPaint,
  box: Box,
): void {
  const k = box.width / crop.width;
  const whole = {
    x: box.x - crop.x * k,
    y: box.y - crop.y * k,
    width: photo.widthPx * k,
    height: photo.heightPx * k,
  };
  drawFramed(flow, box, alt, () => {
    drawPicture(flow, paint.photos.get(photo.sha256), whole);
    drawMarks(flow, photo, paint, whole, crop);
  });
}

function drawMarks(
  flow: Flow,
  photo: SheetPhoto,
  { palette, numbersOnly = false }: PhotoPaint,
  box: { readonly x: number; readonly y: number; readonly width: number },
  crop: PhotoCrop | null = null,
): void {
  const { drawing, labels, scaleLabel, widthPx, section } = photo;
  const frame = { x: box.x, y: box.y, width: box.width, pointsPerPx: box.width / widthPx };
  const unitPx = UNIT_PT / frame.pointsPerPx;
  const shapes = scene(drawing, {
    labels: (mark) => (numbersOnly ? "" : (labels[mark.id] ?? "")),
    scaleLabel,
    widthPx,
  });
  const cut = section ? sectionScene(section.drawing, section.places, crop) : [];
  for (const shape of fitLabels([...cut, ...shapes], unitPx, null, photo))
    for (const primitive of primitives(shape, palette, unitPx)) drawPrimitive(flow, primitive, frame);
}
