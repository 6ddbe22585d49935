import { z } from "zod";
import { DrawingSchema, emptyDrawing, ReadingStudySchema } from "@/lib/marks";
import { beadQuantities } from "@/lib/measure";
import { emptyRunSetup, RunSetupSchema } from "@/lib/setup";
import { imperfectionIds } from "@/lib/trade";
import { PhotoSectionSchema } from "./photo-section";

/** Which side of the weld a photo shows. */
export const photoRoles = ["face", "back", "section"] as const;
export type PhotoRole = (typeof photoRoles)[number];

/** Read with an instrument. Values and resolution in mm; in degrees for the toe angle. */
export const BeadReadingSchema = z.object({
  quantity: z.enum(beadQuantities),
  value: z.number().min(0).max(20_000),
  instrument: z.string().trim().min(1).max(80),
  resolution: z.number().positive().max(10),
  /** In the reading's unit; left out where the gauge had no study then. */
  study: ReadingStudySchema.optional(),
});
export type BeadReading = z.infer<typeof BeadReadingSchema>;

const yes = z.boolean().nullable().default(null);
/** No table of ours has as many rows as would be answered or set here. */
const few = (list: object): boolean => Object.keys(list).length <= 200;

/** How the weld lies on the part, where a code judges one differently from the other. */
export const seams = ["plate", "longitudinal", "girth", "branch"] as const;
export type Seam = (typeof seams)[number];

/** What a code asks about the weld beyond joint and thickness. Null: not known, and a clause that needs it stays open. */
export const WeldQuestionsSchema = z.object({
  /** Goes round and closes on itself. */
  closed: z.boolean().default(false),
  singleSided: yes,
  transverseToTension: yes,
  stiffenerToWeb: yes,
  completePenetration: yes,
  alongLapEdge: yes,
  seam: z.enum(seams).nullable().default(null),
  /** Width of the root reinforcement, as read on the back. */
  rootWidthMm: z.number().positive().max(20_000).nullable().default(null),
});
export type WeldQuestions = z.infer<typeof WeldQuestionsSchema>;

/** What was changed for this bead, as it was proposed on the one before. */
export const TriedChangeSchema = z.object({
  causeId: z.string().max(60),
  sentence: z.string().max(300),
  /** In the units of whoever pressed the button; it is a note of what was proposed, not a reading. */
  step: z.string().max(200),
});
export type TriedChange = z.infer<typeof TriedChangeSchema>;

export const outcomes = ["cured", "better", "no-difference", "worse"] as const;
export type Outcome = (typeof outcomes)[number];

/** Bump when the stored shape changes, and teach the parser the older one. */
export const BEAD_JUDGEMENT_VERSION = 1;

/** Everything said about a bead that is neither how it was run nor drawn on a photo. */
export const BeadJudgementSchema = z.object({
  schemaVersion: z.literal(BEAD_JUDGEMENT_VERSION).default(BEAD_JUDGEMENT_VERSION),
  /** Id of a criteria set in lib/accept; null: none chosen. */
  criteriaId: z.string().max(60).nullable().default(null),
  /** Settings of that set where a code leaves a choice; unknown keys are ignored by the judge. */
  criteriaSettings: z
    .record(z.string().max(60), z.union([z.string().max(60), z.boolean(), z.number().min(-1e6).max(1e6)]))
    .refine(few)
    .default({}),
  /** What a section of this bead is judged by (lib/section); null, or left out as before there were any: nothing. */
  sectionSetId: z.string().max(60).nullable().optional(),
  weld: WeldQuestionsSchema.default(() => WeldQuestionsSchema.parse({})),
  /** Looked for and not found. What is neither here nor marked was not looked for. */
  lookedFor: z.array(z.enum(imperfectionIds)).max(imperfectionIds.length).default([]),
  readings: z.array(BeadReadingSchema).max(40).default([]),
  /** Answers to the diagnosis' questions: question id -> answer id. */
  answers: z.record(z.string().max(60), z.string().max(60)).refine(few).default({}),
  /** null: a first try. */
  tried: TriedChangeSchema.nullable().default(null),
  /** What the change did; null: not said yet. Only "cured" confirms a cause. */
  outcome: z.enum(outcomes).nullable().default(null),
  note: z.string().max(4000).default(""),
  /**
   * What the bead was to be run with, by a plan, a trial or a card; null, or left out as before there were any: nothing. It
   * says nothing of how it was run: that is the set-up.
   */
  planned: RunSetupSchema.nullable().optional(),
});
export type BeadJudgement = z.infer<typeof BeadJudgementSchema>;

/** Letters of a bead's title. */
export const MOST_TITLE = 120;

export const BeadContentSchema = z.object({
  title: z.string().trim().min(1).max(MOST_TITLE),
  welder: z.string().trim().max(80).nullable(),
  setup: RunSetupSchema,
  judgement: BeadJudgementSchema,
  photos: z
    .array(
      z.object({
        id: z.string().max(40),
        role: z.enum(photoRoles),
        drawing: DrawingSchema,
        /** Left out where nobody worked on one: what was stored, archived and signed before keeps its text. */
        section: PhotoSectionSchema.optional(),
      }),
    )
    .max(60),
});
/** What a person edits about a bead, and what one save writes. */
export type BeadContent = z.infer<typeof BeadContentSchema>;

export const emptyBeadJudgement: BeadJudgement = BeadJudgementSchema.parse({});

export const emptyBeadContent: BeadContent = {
  title: "Untitled bead",
  welder: null,
  setup: emptyRunSetup,
  judgement: emptyBeadJudgement,
  photos: [],
};

/** What is fixed about a photo once it is stored. Pixels are those of the upright original, the frame of its drawing. */
export interface PhotoFacts {
  readonly id: string;
  readonly sha256: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

export function newPhotoContent(id: string, role: PhotoRole): BeadContent["photos"][number] {
  return { id, role, drawing: emptyDrawing };
}
