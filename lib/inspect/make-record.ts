import { shopSetId, type ShopCriteria } from "@/lib/accept";
import type { Assessed } from "@/lib/assess";
import { canonicalJson } from "@/lib/base";
import type { InspectionDraft } from "./draft";
import { calibrationOn, type Instrument } from "./instrument";
import type { JobContent } from "./job";
import { lookedAt } from "./looked-at";
import { inspectionPoints } from "./points";
import { pointSentence, pointWeight, statement } from "./sentences";
import { signBead, type InspectedBead } from "./sign-bead";
import { recordChanges } from "./record-changes";
import { weldOf } from "./weld-points";
import { weldResults, worst } from "./weld-results";
import {
  SIGNED_RECORD_VERSION,
  SignedRecordSchema,
  type Signature,
  type SignedBead,
  type SignedRecord,
} from "./signed-record";

export interface RecordInput {
  readonly inspection: { readonly id: string; readonly number: number };
  readonly job: {
    readonly id: string;
    readonly number: number;
    readonly revision: number;
    readonly content: JobContent;
  };
  /** Title and edition of the job's criteria; null where none are named. */
  readonly criteria: string | null;
  /** Versions of the shop's own limits: those that the job or a bead names go into the record. */
  readonly shopSets?: readonly ShopCriteria[];
  readonly draft: InspectionDraft;
  /** Those the draft names. */
  readonly instruments: readonly (Instrument & { readonly id: string })[];
  /** Identification marks by person id, of those who have one. */
  readonly marks: Readonly<Record<string, string>>;
  /** Beads on the job; those on welds that were not looked at are left out. */
  readonly beads: readonly Assessed<InspectedBead>[];
}

/** The record as it would be signed now, without a signature. Never "accepted" while any point is open. */
export function makeRecord(input: RecordInput): SignedRecord {
  const { draft, job } = input;
  const welds = lookedAt(job.content, draft);
  const beads = input.beads.filter(({ weldId }) => welds.some(({ id }) => id === weldId)).map(signBead);
  const looked = { job: job.content, draft, instruments: input.instruments, beads };
  const points = inspectionPoints(looked);
  const results = weldResults(looked);
  const found = worst(results.map(({ result }) => result));
  const isOpen = points.some((point) => pointWeight(point) === "open");
  // Through its own schema, so that what is signed and what is read back are one thing.
  return SignedRecordSchema.parse({
    schemaVersion: SIGNED_RECORD_VERSION,
    inspection: input.inspection,
    job: { ...job, criteria: input.criteria },
    shopSets: setsNamed(input.shopSets ?? [], job.content, beads),
    draft: { ...draft, open: true },
    instruments: input.instruments.map((one) => ({
      ...one,
      calibration: draft.examinedOn === null ? "not-recorded" : calibrationOn(one, draft.examinedOn),
    })),
    welderMarks: welderMarks(input),
    beads,
    weldResults: results,
    points: points.map((one) => ({
      code: one.code,
      weight: pointWeight(one),
      weldId: weldOf(one),
      sentence: pointSentence(one),
    })),
    result: found === "accepted" && isOpen ? "open" : found,
    statement,
    signature: null,
  });
}

/** The shop's own limits that the job or a bead names, whole: nobody else publishes them. */
function setsNamed(
  sets: readonly ShopCriteria[],
  job: JobContent,
  beads: readonly SignedBead[],
): readonly ShopCriteria[] {
  const named = new Set([job.criteriaId, ...beads.map(({ judgement }) => judgement.criteriaId)]);
  return sets
    .filter((set) => named.has(shopSetId(set)))
    .toSorted((a, b) => (shopSetId(a) < shopSetId(b) ? -1 : 1));
}

function welderMarks({ job, marks }: RecordInput): Record<string, string> {
  return Object.fromEntries(
    job.content.welds.flatMap(({ id, welderId, welderMark }) => {
      const mark = (welderId !== null && marks[welderId]) || welderMark;
      return mark ? [[id, mark]] : [];
    }),
  );
}

/** The record with a signature, and its canonical text: exactly what is digested and kept. */
export function sealRecord(
  record: SignedRecord,
  before: SignedRecord | null,
  signature: Omit<Signature, "changes">,
): { readonly record: SignedRecord; readonly text: string } {
  const changes = before === null ? [] : [...recordChanges(before, record)];
  const sealed = SignedRecordSchema.parse({ ...record, signature: { ...signature, changes } });
  return { record: sealed, text: canonicalJson(sealed) };
}

/** A signed text read back. Throws on a text this version did not write: it was checked when it was signed. */
export function readRecord(text: string): SignedRecord {
  return SignedRecordSchema.parse(JSON.parse(text));
}

/** Points the signer must answer in words before signing. */
export const openPoints = (record: SignedRecord): SignedRecord["points"] =>
  record.points.filter(({ weight }) => weight === "open");
