import { z } from "zod";
import { joints, positions, processes } from "@/lib/trade";
import { AskedExtentSchema, LONGEST_WELD_MM, wholeWeld, withExtents } from "./extent";
import { tidyJob } from "./later-fields";

/** Bump when the stored shape changes, and teach the parser the older one: 1 held the extent as a free text. */
export const JOB_VERSION = 2;

const id = z.string().trim().min(1).max(40);
const line = (most: number) => z.string().trim().max(most).default("");
const askedSize = z.number().positive().max(100).nullable().optional();

export const JobPartSchema = z.object({
  id,
  /** "Bracket, left" */
  name: z.string().trim().min(1).max(80),
  drawing: line(80),
  material: line(80),
  /** Of the thinner plate at the weld. */
  thicknessMm: z.number().positive().max(500).nullable().default(null),
});
export type JobPart = z.infer<typeof JobPartSchema>;

export const JobWeldSchema = z.object({
  id,
  /** As on the drawing: "W3". */
  number: z.string().trim().min(1).max(40),
  partId: id.nullable().default(null),
  joint: z.enum(joints).nullable().default(null),
  position: z.enum(positions).nullable().default(null),
  /** Person who welded it; their mark goes on the record, never their name. */
  welderId: id.nullable().default(null),
  /** Identification mark, where the welder is not among the people kept here. */
  welderMark: line(20),
  /** Of the whole weld; lets percent and mm of it be compared. */
  lengthMm: z.number().positive().max(LONGEST_WELD_MM).nullable().default(null),
  /** How much of it is to be looked at. Null only where an older job said it in words. */
  asked: AskedExtentSchema.nullable().default(wholeWeld),
  /** Which part, where it is not all; or the words an older job said it in. */
  askedNote: line(80),
  /** Size asked for on the drawing. Left out where none is; so are the others that came later (`later-fields`). */
  legMm: askedSize,
  throatMm: askedSize,
  /** Criteria of this weld where they are not those of the job. */
  criteriaId: z.string().max(60).nullable().optional(),
});
export type JobWeld = z.infer<typeof JobWeldSchema>;

const distinct = (name: "id" | "number") => (rows: readonly Record<"id", string>[]) =>
  new Set(rows.map((row) => (row as Record<string, string>)[name])).size === rows.length;

/** A job as a form or a machine writes it: every field, none of them from before. */
export const JobFieldsSchema = z.object({
  schemaVersion: z.literal(JOB_VERSION).default(JOB_VERSION),
  title: z.string().trim().min(1).max(120),
  /** Who made the part. */
  maker: line(120),
  /** Who it was made for. */
  customer: z.string().trim().max(120).optional(),
  /** Contract or order reference. */
  contract: line(80),
  /** Welding procedure specification reference. */
  procedure: line(80),
  process: z.enum(processes).nullable().default(null),
  /** Id of a criteria set in lib/accept; null: not chosen. */
  criteriaId: z.string().max(60).nullable().default(null),
  parts: z.array(JobPartSchema).max(200).refine(distinct("id")).default([]),
  welds: z
    .array(JobWeldSchema)
    .max(400)
    .refine(distinct("id"))
    .refine(distinct("number"), "each weld needs its own number")
    .default([]),
});

/** Reads the older shape too. */
export const JobContentSchema = z.preprocess(
  (input) => tidyJob(withExtents(input, JOB_VERSION, "asked", AskedExtentSchema)),
  JobFieldsSchema,
);
/** Work to be inspected, as it is written down before anybody looks. */
export type JobContent = z.infer<typeof JobContentSchema>;

/** By what a weld is judged: its own criteria, or those of the job. */
export const criteriaOf = (
  job: Pick<JobContent, "criteriaId">,
  weld: Pick<JobWeld, "criteriaId">,
): string | null => weld.criteriaId ?? job.criteriaId;
