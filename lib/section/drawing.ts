import { z } from "zod";
import { PhotoPointSchema } from "@/lib/marks";

/** Stored as JSON beside the photo's other drawing: bump when the shape changes. */
export const SECTION_VERSION = 1;

export const sectionJoints = ["fillet", "butt"] as const;
export type SectionJoint = (typeof sectionJoints)[number];

/**
 * The edges of the joint as it was before welding, as far as they can be drawn through the weld.
 *
 * Fillet (T, corner, lap): the two faces that make the corner, "plate-1" and "plate-2". Where they meet is the
 * theoretical root.
 * Butt: the line of the plates' "face" (the side welded last) and "back" (the root side), and the prepared joint faces
 * "groove-1" and "groove-2", where their old place is known.
 */
export const sectionEdgeRoles = ["plate-1", "plate-2", "face", "back", "groove-1", "groove-2"] as const;
export type SectionEdgeRole = (typeof sectionEdgeRoles)[number];

/** Which edges belong to which joint. */
export const edgeRolesOf: Readonly<Record<SectionJoint, readonly SectionEdgeRole[]>> = {
  fillet: ["plate-1", "plate-2"],
  butt: ["face", "back", "groove-1", "groove-2"],
};

/** As many as the screen lets anybody set. */
const path = (least: number) => z.array(PhotoPointSchema).min(least).max(200);

/**
 * What is drawn on the photo of a section, in upright photo pixels. Everything may still be missing: a figure that needs
 * it is null until it is there.
 */
export const SectionDrawingSchema = z.object({
  schemaVersion: z.literal(SECTION_VERSION),
  joint: z.enum(sectionJoints),
  /**
   * Around all the weld metal, the fused part of the plates included: a closed ring, either way round, the first point not
   * repeated. Points at both toes, and closer together where it bends.
   */
  outline: path(3).nullable().default(null),
  /**
   * Each role at most once. A straight edge is fitted through its points and taken as endless; "groove-1" and "groove-2"
   * are taken as drawn, from the face to the back, so that a land shows as its own piece.
   */
  edges: z
    .array(z.object({ role: z.enum(sectionEdgeRoles), points: path(2) }))
    .max(sectionEdgeRoles.length)
    .default([]),
  /** Deepest point at the root that the weld metal reaches: in front of the corner where it was not reached. */
  root: PhotoPointSchema.nullable().default(null),
  /**
   * Only when the toes are found in the wrong place: roughly where they are, on plate 1 and plate 2, or left and right on
   * the face of a butt. The nearest point of the outline is taken.
   */
  toes: z.tuple([PhotoPointSchema.nullable(), PhotoPointSchema.nullable()]).default([null, null]),
});
export type SectionDrawing = z.infer<typeof SectionDrawingSchema>;

export function emptySectionDrawing(joint: SectionJoint): SectionDrawing {
  return SectionDrawingSchema.parse({ schemaVersion: SECTION_VERSION, joint });
}
