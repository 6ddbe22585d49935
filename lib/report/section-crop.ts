import type { SectionDrawing } from "@/lib/section";

/** A part of a photo, in its upright pixels. */
export interface PhotoCrop {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Of the weld's extent, left free on every side: enough to see the plates it joins. Own choice. */
const MARGIN = 0.4;

/** The part of the photo that shows the cut weld, so that a small weld in a large photo can be read on paper. */
export function sectionCrop(
  { outline, root }: SectionDrawing,
  photo: { readonly widthPx: number; readonly heightPx: number },
): PhotoCrop | null {
  if (outline === null) return null;
  const points = root === null ? outline : [...outline, root];
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const margin = MARGIN * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const [left, right] = [
    Math.max(0, Math.min(...xs) - margin),
    Math.min(photo.widthPx, Math.max(...xs) + margin),
  ];
  const [top, bottom] = [
    Math.max(0, Math.min(...ys) - margin),
    Math.min(photo.heightPx, Math.max(...ys) + margin),
  ];
  const [width, height] = [right - left, bottom - top];
  return width > 0 && height > 0 ? { x: left, y: top, width, height } : null;
}
