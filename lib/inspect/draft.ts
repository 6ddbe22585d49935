import { z } from "zod";
import { SeenExtentSchema, withExtents } from "./extent";
import { DaySchema } from "./instrument";
import { tidyDraft } from "./later-fields";
import { QualificationSchema } from "./qualification";
import { SampleSchema } from "./sample";

/** Version 1 held how much was seen of a weld as a free text. */
export const INSPECTION_VERSION = 2;

const id = z.string().trim().min(1).max(40);
const line = (most: number) => z.string().trim().max(most).default("");

const Draft = z.object({
  schemaVersion: z.literal(INSPECTION_VERSION).default(INSPECTION_VERSION),
  /** Whether it can be written in: false once signed, true again while a correction is being made. */
  open: z.boolean().default(true),
  examinedOn: DaySchema.nullable().default(null),
  /** Who looked, where that is not the maker of the part. */
  examiningBody: line(120),
  /** "remote": by mirror, borescope or camera, where the eye cannot get there. */
  look: z.enum(["direct", "remote"]).nullable().default(null),
  remoteAid: line(120),
  lightLux: z.number().min(0).max(200_000).nullable().default(null),
  distanceMm: z.number().min(0).max(100_000).nullable().default(null),
  /** Between the line of sight and the surface. */
  angleDeg: z.number().min(0).max(90).nullable().default(null),
  surface: line(200),
  instrumentIds: z.array(id).max(60).default([]),
  /** Welds looked at, and how much of each was seen. */
  welds: z
    .array(
      z.object({
        weldId: id,
        seen: SeenExtentSchema.nullable().default(null),
        /** Which part it was, where it was not all; or what was written before it was a number. */
        seenNote: line(80),
      }),
    )
    .max(400)
    .default([]),
  remarks: z.string().max(4000).default(""),
  /** The firm's own number of the report. */
  reportNumber: z.string().trim().max(60).optional(),
  /** Of the inspector who is to sign. */
  qualification: QualificationSchema.nullable().optional(),
  /** Which welds were chosen, where not all of them were to be looked at. */
  sample: SampleSchema.nullable().optional(),
});

/** What an inspection says beside what the beads say. Null is "not recorded". Reads the older shape too. */
export const InspectionDraftSchema = z.preprocess(
  (input) => tidyDraft(withExtents(input, INSPECTION_VERSION, "seen", SeenExtentSchema)),
  Draft,
);
export type InspectionDraft = z.infer<typeof InspectionDraftSchema>;
export const emptyInspection: InspectionDraft = InspectionDraftSchema.parse({});
