import {
  emptyBeadContent,
  emptyPhotoSection,
  PhotoSectionSchema,
  type BeadContent,
  type PhotoFacts,
  type PhotoSection,
} from "@/lib/assess";
import { emptyDrawing } from "@/lib/marks";
import { emptyRunSetup } from "@/lib/setup";
import { filletDrawing, scale } from "../section/known-shapes";

/** Legs of 8 mm, melted 1 mm deep along both plates and 1 mm beyond the corner, with a flat face. */
export const meltedFillet: PhotoSection = PhotoSectionSchema.parse({
  ...filletDrawing(
    [
      [8, 0],
      [4, 4],
      [0, 8],
      [-1, 6],
      [-1, 2],
      [-0.7, -0.7],
      [2, -1],
      [6, -1],
    ],
    [-0.7, -0.7],
  ),
});

export const facts: readonly PhotoFacts[] = [
  { id: "p1", sha256: "5".repeat(64), widthPx: 2400, heightPx: 2000 },
];

/** A T-joint with a 6 mm leg asked for, cut and etched, 20 px to the millimetre. */
export function sectionBead(
  section: PhotoSection | null = meltedFillet,
  change: Partial<BeadContent["judgement"]> = {},
): BeadContent {
  return {
    ...emptyBeadContent,
    setup: { ...emptyRunSetup, joint: "tee", thicknessMm: 10, targetLegMm: 6 },
    judgement: { ...emptyBeadContent.judgement, ...change },
    photos: [
      { id: "p1", role: "section", drawing: { ...emptyDrawing, scale }, ...(section ? { section } : {}) },
    ],
  };
}

export const emptyFillet = emptyPhotoSection("fillet");
