import { z } from "zod";
import { emptySectionDrawing, SectionDrawingSchema, type SectionJoint } from "@/lib/section";
import { imperfectionIds, type Joint } from "@/lib/trade";
import { weldKind } from "./weld-kind";

/** Everything worked out on the photo of a cut and etched weld, beside the marks on it. */
export const PhotoSectionSchema = SectionDrawingSchema.extend({
  /** Looked for in the section and not found. The face was looked at by other eyes: that list is the bead's. */
  lookedFor: z.array(z.enum(imperfectionIds)).max(imperfectionIds.length).default([]),
  /** Where the drawing states a throat. Null: it follows from the leg that is asked for. */
  askedThroatMm: z.number().positive().max(500).nullable().default(null),
  /** Free texts of the report: field -> what was written. */
  report: z
    .record(z.string().max(60), z.string().max(500))
    .refine((fields) => Object.keys(fields).length <= 60)
    .default({}),
});
export type PhotoSection = z.infer<typeof PhotoSectionSchema>;

export function emptyPhotoSection(joint: SectionJoint): PhotoSection {
  return PhotoSectionSchema.parse(emptySectionDrawing(joint));
}

/** How a joint is cut: null for a bead on a plate, or where nobody said which it is. */
export function sectionJointOf(joint: Joint | null): SectionJoint | null {
  const kind = weldKind(joint);
  return kind === "surfacing" ? null : kind;
}

/**
 * The section of a photo as it is worked on: what was drawn, else an empty one of the joint that the set-up names. Null:
 * no section, or nobody has said what was cut.
 */
export function sectionOf(
  photo: { readonly role: string; readonly section?: PhotoSection | undefined },
  joint: Joint | null,
): PhotoSection | null {
  if (photo.role !== "section") return null;
  if (photo.section) return photo.section;
  const kind = sectionJointOf(joint);
  return kind && emptyPhotoSection(kind);
}
