import { z } from "zod";
import { ShopCriteriaSchema } from "@/lib/accept";
import { BeadJudgementSchema, PhotoSectionSchema, photoRoles } from "@/lib/assess";
import { DrawingSchema } from "@/lib/marks";
import { RunSetupSchema } from "@/lib/setup";
import { InspectionDraftSchema } from "./draft";
import { InstrumentSchema } from "./instrument";
import { JobContentSchema } from "./job";

/**
 * Version 1 held extents as free texts and neither the rule a verdict decided by nor the weld a point lies at. It is read
 * into the present shape; its text, and so its digest, stays what was signed.
 */
export const SIGNED_RECORD_VERSION = 2;

// What a record holds follows the list of ISO 17637:2003, clause 5: its heading was read, its lines are from memory.

export const results = ["accepted", "not-accepted", "open"] as const;
/** "accepted": nothing applicable failed and nothing is open. Acceptance itself is for the person and the code. */
export type InspectionResult = (typeof results)[number];

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const Size = z.object({ value: z.number(), expandedUncertainty: z.number() }).nullable();

/** A length in both units, as it stood on the record: metric first. */
const Both = z.object({ metric: z.string(), inch: z.string() });

export const SignedMarkSchema = z.object({
  photo: z.number().int(),
  numbers: z.string(),
  name: z.string(),
  iso6520: z.string().nullable(),
  place: z.string(),
  size: Both,
  note: z.string(),
});

export const SignedClauseSchema = z.object({
  result: z.string(),
  title: z.string(),
  detail: Both,
  clause: z.string(),
  checkYourCopy: z.boolean(),
});

export const SignedVerdictSchema = z.object({
  criteriaId: z.string(),
  criteria: z.string(),
  edition: z.string(),
  settings: z.record(z.string(), z.union([z.string(), z.boolean(), z.number()])),
  missing: z.array(z.string()),
  /** How gauge readings near a limit were decided, in words with the reference; empty in a record of version 1. */
  decisionRule: z.string().default(""),
  notLookedFor: z.array(z.string()),
  /** Clauses that the shop's own limits did not carry over, in a sentence; left out where none is known of. */
  notCarried: z.string().optional(),
  clauses: z.array(SignedClauseSchema),
  /** Every applicable clause with its numbers, mm or degrees: value, its U (k = 2) and the limit. */
  rows: z.array(
    z.object({
      ruleId: z.string(),
      clause: z.string(),
      edition: z.string(),
      result: z.string(),
      reason: z.string(),
      value: z.number().nullable(),
      expandedUncertainty: z.number().nullable(),
      limit: z.number().nullable(),
      unit: z.string().nullable(),
      formula: z.string().nullable(),
    }),
  ),
});

/** A cut and etched weld as it was drawn, read and judged then. */
export const SignedSectionSchema = z.object({
  drawing: PhotoSectionSchema,
  /** Value and U (k = 2) in `unit`: mm, mm2, degrees or a ratio. */
  figures: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      value: z.number(),
      expandedUncertainty: z.number(),
      unit: z.string(),
      text: Both,
    }),
  ),
  unread: z.array(z.string()),
  verdict: z
    .object({
      setId: z.string(),
      criteria: z.string(),
      result: z.enum(results),
      clauses: z.array(SignedClauseSchema),
      notCovered: z.array(z.string()),
    })
    .nullable(),
});
export type SignedSection = z.infer<typeof SignedSectionSchema>;

/** One bead as it was when the record was signed, with what was said of it then. No welder's name. */
export const SignedBeadSchema = z.object({
  id: z.string(),
  number: z.number().int(),
  revision: z.number().int(),
  title: z.string(),
  weldId: z.string(),
  setup: RunSetupSchema,
  judgement: BeadJudgementSchema,
  photos: z.array(
    z.object({
      id: z.string(),
      sha256,
      role: z.enum(photoRoles),
      widthPx: z.number().int().positive(),
      heightPx: z.number().int().positive(),
      drawing: DrawingSchema,
      labels: z.record(z.string(), z.string()),
      scaleLabel: z.string(),
      hasScale: z.boolean(),
      /** Left out where there is none: a record of before there were any keeps its text. */
      section: SignedSectionSchema.optional(),
    }),
  ),
  marks: z.array(SignedMarkSchema),
  /** Every mark's sizes, mm, with expanded uncertainty (k = 2); null where there is none. */
  sizes: z.array(
    z.object({
      key: z.string(),
      imperfection: z.string(),
      length: Size,
      diameter: Size,
      depth: Size,
      height: Size,
    }),
  ),
  verdict: SignedVerdictSchema.nullable(),
  result: z.enum(results),
});
export type SignedBead = z.infer<typeof SignedBeadSchema>;

const Record = z.object({
  schemaVersion: z.literal(SIGNED_RECORD_VERSION),
  inspection: z.object({ id: z.string(), number: z.number().int() }),
  job: z.object({
    id: z.string(),
    number: z.number().int(),
    revision: z.number().int(),
    content: JobContentSchema,
    criteria: z.string().nullable(),
  }),
  /** The shop's own limits the job or a bead was judged by, whole, so that the record can be judged again without us. */
  shopSets: z.array(ShopCriteriaSchema).default([]),
  draft: InspectionDraftSchema,
  instruments: z.array(InstrumentSchema.extend({ id: z.string(), calibration: z.string() })),
  /** Marks of the welders by weld id, as they were then. */
  welderMarks: z.record(z.string(), z.string()),
  beads: z.array(SignedBeadSchema),
  weldResults: z.array(z.object({ weldId: z.string(), result: z.enum(results) })),
  /** What was open or worth a note, in words. */
  points: z.array(
    z.object({
      code: z.string(),
      weight: z.enum(["open", "note"]),
      /** The weld it keeps open; null where it is about the whole inspection. */
      weldId: z.string().nullable().default(null),
      sentence: z.string(),
    }),
  ),
  result: z.enum(results),
  statement: z.string(),
  /** Null while it is a draft. */
  signature: z
    .object({
      revision: z.number().int().positive(),
      /** ISO 8601, UTC. */
      signedAt: z.iso.datetime(),
      signer: z.object({ personId: z.string(), mark: z.string().nullable(), nameHash: sha256 }),
      /** Welds that the signer ran themself, by id; left out where there is none. Said, and not forbidden: small shops do so. */
      ranWelds: z.array(z.string()).optional(),
      /** What the signer said to the open points; empty where there were none. */
      acknowledgement: z.string(),
      /** Why there is a further revision; null for the first. */
      reason: z.string().nullable(),
      /** Digest of the revision before; null for the first. */
      previousDigest: sha256.nullable(),
      changes: z.array(z.string()),
      /**
       * The key it is signed by, and what is known of the passphrase that opened it; left out in a record of before keys
       * were kept. The signature itself lies beside the text: it is over the text.
       */
      key: z
        .object({
          id: sha256,
          algorithm: z.string(),
          /** ISO 8601, UTC: since when the signer has this key. */
          since: z.iso.datetime(),
          passphraseSetAt: z.iso.datetime(),
          /** "own", "first" or "code:BY": as `passphraseText` words it. */
          passphraseSetBy: z.string(),
        })
        .optional(),
    })
    .nullable(),
});

/** An inspection complete in itself: readable without the rows it was made from, by people and by programs. */
export const SignedRecordSchema = z.preprocess(
  (input) =>
    typeof input === "object" && input !== null && "schemaVersion" in input && input.schemaVersion === 1
      ? { ...input, schemaVersion: SIGNED_RECORD_VERSION }
      : input,
  Record,
);
export type SignedRecord = z.infer<typeof SignedRecordSchema>;
export type Signature = NonNullable<SignedRecord["signature"]>;
