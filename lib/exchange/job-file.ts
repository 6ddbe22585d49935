import { z } from "zod";
import { issue } from "@/lib/base";
import { KeySignatureSchema, type PublicKey } from "@/lib/signature";
import { InspectionDraftSchema, InstrumentSchema, JobContentSchema } from "@/lib/inspect";
import { CountedSchema, SafeIdSchema, Sha256Schema, type ExchangeBead } from "./bead-file";
import type { ExchangeIssue } from "./issue";
import { repeated } from "./read-versioned";

const time = z.iso.datetime();
const id = SafeIdSchema;

/** A signed revision travels as the very text that was digested. */
export const ExchangeSignedSchema = z.object({
  id,
  revision: CountedSchema,
  content: z.string().max(20_000_000),
  digest: Sha256Schema,
  signedById: id,
  signedAt: time,
  reason: z.string().max(4000).nullable(),
  /** Over the text, by a key of `keys`; no field in what was signed before keys were kept. */
  signature: KeySignatureSchema.optional(),
});

export const ExchangeInspectionSchema = z.object({
  id,
  number: CountedSchema,
  revision: CountedSchema,
  createdAt: time,
  updatedAt: time,
  draft: InspectionDraftSchema,
  signed: z.array(ExchangeSignedSchema).max(100).readonly(),
});
export type ExchangeInspection = z.infer<typeof ExchangeInspectionSchema>;

/** A job with its inspections. People stay in their shop: a weld carries its welder's mark, never the person. */
export const ExchangeJobSchema = z.object({
  id,
  number: CountedSchema,
  revision: CountedSchema,
  createdAt: time,
  updatedAt: time,
  content: JobContentSchema,
  /** Which bead is which weld's, sorted by bead. */
  beads: z
    .array(z.object({ beadId: id, weldId: id }))
    .max(2000)
    .readonly(),
  inspections: z.array(ExchangeInspectionSchema).max(200).readonly(),
  /** Photos that a signed revision names and no bead carries any more; they are evidence and come along. */
  evidence: z
    .array(
      z.object({
        sha256: Sha256Schema,
        format: z.string().regex(/^[a-z0-9]{1,8}$/),
        bytes: z
          .int()
          .positive()
          .max(2 ** 31),
      }),
    )
    .max(2000)
    .readonly(),
});
export type ExchangeJob = z.infer<typeof ExchangeJobSchema>;

export const ExchangeInstrumentSchema = z.object({
  id,
  content: InstrumentSchema,
  createdAt: time,
  retiredAt: time.nullable(),
});
export type ExchangeInstrument = z.infer<typeof ExchangeInstrumentSchema>;

/** Jobs, the instruments their inspections name, and the public keys of those who signed with what became of them. */
export interface JobsAlong {
  readonly jobs: readonly ExchangeJob[];
  readonly instruments: readonly ExchangeInstrument[];
  readonly keys: readonly PublicKey[];
}
export const noJobs: JobsAlong = { jobs: [], instruments: [], keys: [] };

/** What a schema cannot say: ids are unique, beads and welds are there, a signed text has its digest. */
export function jobIssues(
  { jobs, instruments, keys }: JobsAlong,
  beads: readonly ExchangeBead[],
): readonly ExchangeIssue[] {
  const known = new Set(beads.map((bead) => bead.id));
  const inspections = jobs.flatMap((job) => job.inspections);
  const astray = jobs.flatMap(({ content, beads: places }, i) => {
    const welds = new Set(content.welds.map((weld) => weld.id));
    const lost = places.some(({ beadId, weldId }) => !known.has(beadId) || !welds.has(weldId));
    return lost
      ? [issue("malformed" as const, ["jobs", i, "beads"], { problem: "bead-or-weld-missing" })]
      : [];
  });
  return [
    ...repeated(jobs, ["jobs"]),
    ...repeated(instruments, ["instruments"]),
    ...repeated(keys, ["keys"]),
    ...repeated(inspections, ["jobs", "inspections"]),
    ...repeated(
      inspections.flatMap(({ signed }) => signed),
      ["jobs", "inspections", "signed"],
    ),
    ...astray,
  ];
}
