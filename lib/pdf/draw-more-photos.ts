import type { SheetDocument } from "@/lib/report";
import { CAPTION_HEIGHT, drawPhoto, photoSize, type PhotoPaint } from "./draw-photo";
import { drawHeading, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { BODY_WIDTH, LEFT } from "./page";

const GAP = 14;
const WIDTH = (BODY_WIDTH - GAP) / 2;
const HEIGHT = 200;

/** The photos after the first, two to a row. They stand at the end, so that the change stays near the front. */
export function drawMorePhotos(flow: Flow, sheet: SheetDocument, paint: PhotoPaint): void {
  const more = sheet.photos
    .slice(1)
    .map((photo, i) => ({ photo, number: i + 2, size: photoSize(photo, WIDTH, HEIGHT) }));
  if (more.length === 0) return;
  for (let i = 0; i < more.length; i += 2) {
    const row = more.slice(i, i + 2);
    const height = Math.max(...row.map(({ size }) => size.height)) + CAPTION_HEIGHT + 8;
    makeRoom(flow, height + (i === 0 ? HEADING_HEIGHT : 0));
    if (i === 0) drawHeading(flow, "More photos");
    row.forEach(({ photo, number, size }, column) =>
      drawPhoto(flow, photo, number, paint, { x: LEFT + column * (WIDTH + GAP), y: flow.y, ...size }),
    );
    flow.y += height;
  }
  flow.y += 4;
}
