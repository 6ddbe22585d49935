import { z } from "zod";
import { canonicalJson } from "@/lib/base";
import { photoRoles } from "@/lib/assess";
import { DrawingSchema } from "@/lib/marks";
import { LayerSchema } from "./layer";
import { RubricMarksSchema, rubricScore, RubricSchema } from "./rubric";

/** Bump when the stored shape changes, and teach the parser the older one. */
export const FEEDBACK_VERSION = 1;

/** What an instructor answers, while it is a draft. */
export const FeedbackContentSchema = z.object({
  schemaVersion: z.literal(FEEDBACK_VERSION).default(FEEDBACK_VERSION),
  layers: z.array(LayerSchema).max(60).default([]),
  marks: RubricMarksSchema.default({}),
  /** Quick remarks, copied: a phrase changed later does not change what was said. */
  quick: z.array(z.string().trim().min(1).max(300)).max(30).default([]),
  remark: z.string().max(4000).default(""),
});
export type FeedbackContent = z.infer<typeof FeedbackContentSchema>;
export const emptyFeedback: FeedbackContent = FeedbackContentSchema.parse({});

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * What was returned, as it is frozen: everything the answer rests on, so that it can be read without the rows it was
 * made from. Ids stand for people; no name is in it, so a person can be removed and the digest still holds.
 */
export const ReturnedFeedbackSchema = FeedbackContentSchema.extend({
  schemaVersion: z.literal(FEEDBACK_VERSION),
  handInId: z.string(),
  exercise: z.object({
    id: z.string(),
    revision: z.number().int(),
    title: z.string(),
    aim: z.string(),
  }),
  bead: z.object({ id: z.string(), number: z.number().int(), revision: z.number().int() }),
  /** Person of the instructor; null for the owner of an installation without accounts. */
  authorId: z.string().nullable(),
  /** ISO 8601, UTC. */
  returnedAt: z.iso.datetime(),
  rubric: RubricSchema,
  score: z.object({
    points: z.number(),
    outOf: z.number(),
    open: z.number().int(),
    share: z.number().nullable(),
  }),
  /** The student's photos with the marks they had then. */
  photos: z.array(
    z.object({
      id: z.string(),
      sha256,
      role: z.enum(photoRoles),
      widthPx: z.number().int().positive(),
      heightPx: z.number().int().positive(),
      drawing: DrawingSchema,
    }),
  ),
});
export type ReturnedFeedback = z.infer<typeof ReturnedFeedbackSchema>;

/** The canonical text of an answer at the moment it is returned; exactly what is digested and kept. */
export function freezeFeedback(
  content: FeedbackContent,
  around: Omit<ReturnedFeedback, keyof FeedbackContent | "score">,
): string {
  const score = rubricScore(around.rubric, content.marks);
  const kept = around.photos.map(({ id }) => id);
  // A layer over a photo that was taken off meanwhile would be drawn over nothing.
  const layers = content.layers.filter(({ photoId }) => kept.includes(photoId));
  return canonicalJson(ReturnedFeedbackSchema.parse({ ...content, ...around, layers, score }));
}

/** A frozen answer read back. Throws on a text this version did not write: it was checked when it was frozen. */
export function thawFeedback(text: string): ReturnedFeedback {
  return ReturnedFeedbackSchema.parse(JSON.parse(text));
}

/** Whether anything was said yet: an empty answer is not returned by accident. */
export function saysSomething({ layers, marks, quick, remark }: FeedbackContent): boolean {
  return (
    layers.some(({ items }) => items.length > 0) ||
    Object.keys(marks).length > 0 ||
    quick.length > 0 ||
    remark.trim() !== ""
  );
}
